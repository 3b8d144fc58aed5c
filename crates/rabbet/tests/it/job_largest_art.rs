use crate::bench::Bench;

#[test]
fn the_largest_art_for_a_frame_at_hand() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&["job", "largest-art", "fit.toml"]));
    let json = bench
        .run(&["job", "largest-art", "fit.toml", "--json"])
        .json();
    // By hand, the rabbet being 16 x 20: less 1/8 of allowance, less two borders of 2 1/2, plus an
    // overlap of 1/8 on both sides, is 11 1/8 x 15 1/8 in.
    let eighth = 50_800;
    assert_eq!(json["art"]["width"]["quanta"], 89 * eighth);
    assert_eq!(json["art"]["height"]["quanta"], 121 * eighth);
}

#[test]
fn its_working_is_shown_where_it_is_asked_for() {
    let bench = Bench::new();
    let args = ["job", "largest-art", "fit.toml", "--working"];
    let words = bench.run(&args);
    assert!(words.stdout.contains("  formula  "), "{words}");
    let json = bench.run(&[&args[..], &["--json"]].concat()).json();
    let lines = json["working"].as_array().expect("lines");
    assert!(
        lines
            .iter()
            .any(|line| line["path"] == "package.size.width"),
        "{json}"
    );
}

#[test]
fn a_job_that_gives_no_size_to_fit_is_refused() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&["job", "largest-art", "print.toml"]));
}
