use crate::bench::Bench;

#[test]
fn sound_jobs_pass() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&["job", "check", "print.toml", "canvas.toml"]));
}

#[test]
fn one_that_cannot_be_made_fails_the_check() {
    let bench = Bench::new();
    bench.too_deep("deep.toml");
    insta::assert_snapshot!(bench.run(&["job", "check", "print.toml", "deep.toml", "canvas.toml"]));
}

#[test]
fn what_can_be_made_may_still_want_minding() {
    let bench = Bench::new();
    bench.file(
        "side.toml",
        bench.text("print.toml").replace("inward = \"coated\"", ""),
    );
    let ran = bench.run(&["job", "check", "side.toml"]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(
        ran.stderr.contains("Mind: ") && ran.stderr.contains("code: glazing.face"),
        "{ran}"
    );
    assert!(
        ran.stderr
            .ends_with("side.toml: it can be made; mind the one above\n"),
        "{ran}"
    );
}

#[test]
fn a_file_that_is_missing_outweighs_one_that_is_refused() {
    let bench = Bench::new();
    bench.too_deep("deep.toml");
    let ran = bench.run(&["job", "check", "missing.toml", "deep.toml"]);
    assert_eq!(ran.exit, 3, "{ran}");
    assert!(
        ran.stderr.contains("stack.too_deep") && ran.stderr.contains("file.missing"),
        "{ran}"
    );
}

#[test]
fn as_json_every_file_has_its_entry() {
    let bench = Bench::new();
    bench.too_deep("deep.toml");
    bench.file("bad.toml", "rabbet = 1\n[[art]]\nwidth = \"16 7/\"\n");
    let ran = bench.run(&[
        "job",
        "check",
        "--json",
        "print.toml",
        "deep.toml",
        "bad.toml",
    ]);
    assert_eq!(ran.exit, 1, "{ran}");
    let checked = ran.json()["checked"].clone();
    assert_eq!(checked[0]["refused"], false);
    assert_eq!(checked[1]["faults"][0]["code"], "stack.too_deep");
    assert_eq!(checked[1]["faults"][0]["severity"], "stop");
    assert_eq!(checked[2]["problem"]["errors"][0]["line"], 3);
}
