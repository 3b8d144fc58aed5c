use crate::bench::Bench;

#[test]
fn a_length_is_shown_on_every_tape() {
    insta::assert_snapshot!(Bench::new().run(&["length", "read", "16 7/8"]));
}

#[test]
fn a_bare_number_is_in_the_units_named() {
    let bench = Bench::new();
    let quanta = |args: &[&str]| bench.run(args).json()["length"]["quanta"].clone();
    assert_eq!(quanta(&["length", "read", "12", "--json"]), 12 * 406_400);
    assert_eq!(
        quanta(&["length", "read", "12", "--units", "mm", "--json"]),
        12 * 16_000
    );
    assert_eq!(quanta(&["length", "read", "-1/4", "--json"]), -101_600);
}

#[test]
fn the_json_shape() {
    insta::assert_snapshot!(Bench::new().run(&["length", "read", "300 mm", "--json"]));
}

#[test]
fn a_refusal_marks_its_place() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&["length", "read", "16 7/"]));
    let json = bench.run(&["length", "read", "11/2", "--json"]);
    assert_eq!(json.exit, 1, "{json}");
    assert_eq!(
        json.problem()["errors"][0]["code"],
        "measure.fraction.improper"
    );
}

#[test]
fn no_text_makes_it_fall_over() {
    let bench = Bench::new();
    let long = "9".repeat(10_000);
    for text in [
        "",
        " ",
        "x",
        "1e999",
        "9999999999999999999 m",
        "-",
        "\u{7}",
        "½½",
        "1/0",
        "∞",
        &long,
    ] {
        let ran = bench.run(&["length", "read", text]);
        assert_eq!(ran.exit, 1, "{text:?}: {ran}");
        assert!(ran.stderr.contains("code: measure."), "{text:?}: {ran}");
    }
}
