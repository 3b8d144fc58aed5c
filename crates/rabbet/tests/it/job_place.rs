use crate::bench::Bench;

#[test]
fn a_print_on_a_wall_at_home() {
    let bench = Bench::new();
    insta::assert_snapshot!("job_place", bench.run(&["job", "place", "print.toml"]));
    let json = bench.run(&["job", "place", "print.toml", "--json"]).json();
    assert!(json["answer"]["years"]["low"]["value"].is_f64(), "{json}");
}

#[test]
fn the_outside_wall_of_a_cold_house() {
    let bench = Bench::new();
    let text = bench.text("print.toml");
    bench.file(
        "cold.toml",
        format!("{text}\n[place]\nwall = \"outer\"\noutdoors = -10\nlux = 50\n"),
    );
    let ran = bench.run(&["job", "place", "cold.toml"]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(
        ran.stdout.contains("outside wall") && ran.stdout.contains("50 lx"),
        "{ran}"
    );
}
