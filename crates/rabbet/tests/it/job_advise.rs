use crate::bench::{Bench, Ran};

/// A print whose glazing lets ultraviolet through: the cure names a sheet that filters it.
fn plain(bench: &Bench) {
    let text = bench.text("print.toml");
    let (front, glazing) = text.split_once("[[glazing]]").expect("a glazing");
    let sheet = glazing
        .lines()
        .find(|line| line.starts_with("sheet = "))
        .expect("its sheet");
    let plain = glazing.replacen(sheet, "sheet = \"glass-2.5\" # what the shop had", 1);
    let text = format!("{front}[[glazing]]{plain}");
    bench.file("plain.toml", text);
}

fn advice(ran: &Ran) -> Vec<serde_json::Value> {
    ran.json()["advice"].as_array().expect("advice").clone()
}

/// The first cure of any advice, by its name.
fn first_cure(bench: &Bench) -> (String, String) {
    let ran = bench.run(&["job", "advise", "plain.toml", "--json"]);
    let advice = advice(&ran);
    let cured = advice.iter().find(|advice| {
        advice["cures"]
            .as_array()
            .is_some_and(|cures| !cures.is_empty())
    });
    let cured = cured.expect("some advice has a cure");
    let name = cured["cures"][0]["cure"].as_str().expect("a name");
    (
        name.to_owned(),
        cured["code"].as_str().expect("a code").to_owned(),
    )
}

#[test]
fn everything_is_told_with_its_number_source_and_cures() {
    let bench = Bench::new();
    plain(&bench);
    insta::assert_snapshot!("job_advise", bench.run(&["job", "advise", "plain.toml"]));
    let ran = bench.run(&["job", "advise", "plain.toml", "--json"]);
    insta::assert_snapshot!("job_advise_json", format!("{:#}", ran.json()));
    for advice in advice(&ran) {
        for word in ["severity", "found", "source", "status"] {
            assert!(advice[word].is_string(), "{advice:#}");
        }
    }
}

#[test]
fn a_cure_is_written_and_shown_to_cure() {
    let bench = Bench::new();
    plain(&bench);
    let (name, code) = first_cure(&bench);
    let ran = bench.run(&[
        "job",
        "advise",
        "plain.toml",
        "--apply",
        &name,
        "-o",
        "cured.toml",
    ]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(ran.stderr.contains("cured"), "{ran}");
    assert!(
        bench.text("cured.toml").contains("# what the shop had"),
        "a remark is lost"
    );
    let left = advice(&bench.run(&["job", "advise", "cured.toml", "--json"]));
    assert!(
        left.iter().all(|advice| advice["code"] != code.as_str()),
        "{left:#?}"
    );
}

#[test]
fn a_cure_by_its_number_goes_to_stdout_or_into_the_file() {
    let bench = Bench::new();
    plain(&bench);
    let before = bench.text("plain.toml");
    let shown = bench.run(&["job", "advise", "plain.toml", "--apply", "1"]);
    assert_eq!(
        (shown.exit, bench.text("plain.toml")),
        (0, before.clone()),
        "{shown}"
    );
    let dry = bench.run(&[
        "job",
        "advise",
        "plain.toml",
        "--apply",
        "1",
        "--in-place",
        "--dry-run",
    ]);
    assert_eq!((dry.exit, bench.text("plain.toml")), (0, before), "{dry}");
    let placed = bench.run(&["job", "advise", "plain.toml", "--apply", "1", "--in-place"]);
    assert_eq!(
        (placed.exit, bench.text("plain.toml")),
        (0, shown.stdout),
        "{placed}"
    );
}

#[test]
fn a_cure_that_nobody_offers_is_refused() {
    let bench = Bench::new();
    plain(&bench);
    let ran = bench.run(&["job", "advise", "plain.toml", "--apply", "light.uv:99"]);
    assert_eq!(ran.exit, 1, "{ran}");
    assert!(ran.stderr.contains("code: advice.no_cure"), "{ran}");
    let wrong = bench.run(&["job", "advise", "plain.toml", "--in-place"]);
    assert_eq!(wrong.exit, 2, "{wrong}");
}
