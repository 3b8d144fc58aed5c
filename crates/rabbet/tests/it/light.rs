use crate::bench::Bench;

const FADE: [&str; 8] = [
    "light",
    "fade",
    "--medium",
    "watercolour",
    "--lux",
    "150",
    "--hours",
    "8",
];

#[test]
fn how_long_a_watercolour_lasts() {
    let bench = Bench::new();
    insta::assert_snapshot!("light_fade", bench.run(&FADE));
    let json = bench.run(&[&FADE[..], &["--json"]].concat()).json();
    insta::assert_snapshot!("light_fade_json", format!("{json:#}"));
}

/// By hand: wool 4 takes 11 Mlx h without ultraviolet less than with none; 150 lx for 8 h on 365 days
/// are 438 000 lx h a year.
#[test]
fn its_exposure_is_light_times_time() {
    let json = Bench::new().run(&[&FADE[..], &["--json"]].concat()).json();
    assert_eq!(json["answer"]["yearly"]["value"], 438_000.0);
}

#[test]
fn the_year_of_a_photograph_by_every_scheme() {
    let args = [
        "light",
        "budget",
        "--medium",
        "photograph",
        "--lux",
        "10 fc",
        "--hours",
        "10",
    ];
    insta::assert_snapshot!("light_budget", Bench::new().run(&args));
}

#[test]
fn a_number_opens_its_working() {
    let bench = Bench::new();
    let ran = bench.run(&[&FADE[..], &["--why", "light.yearly"]].concat());
    assert!(
        ran.stdout.contains("exposure = lux × hours × days"),
        "{ran}"
    );
    let json = bench
        .run(&[&FADE[..], &["--why", "light.yearly", "--json"]].concat())
        .json();
    assert_eq!(json["why"][0]["path"], "light.yearly");
}

#[test]
fn all_that_is_wrong_is_told_at_once() {
    let args = [
        "light", "fade", "--medium", "print on", "--lux", "bright", "--hours", "30", "--days",
        "1,500",
    ];
    let bench = Bench::new();
    insta::assert_snapshot!("light_wrong", bench.run(&args));
    let problem = bench.run(&[&args[..], &["--json"]].concat()).problem();
    assert_eq!(problem["errors"].as_array().map(Vec::len), Some(4));
    assert_eq!(problem["errors"][1]["pointer"], "/lux");
}
