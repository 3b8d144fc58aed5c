use std::fs;

use crate::bench::{Bench, Ran};

const LIST: &str = include_str!("../../../../demo/lists/millrace.csv");
const MAPPING: &str = include_str!("../../../../demo/lists/millrace.mapping.toml");
const COSTS: &str = include_str!("../../../../demo/costs.toml");

/// A bench with the invented supplier's list, its mapping and a catalogue.
fn bench() -> Bench {
    let bench = Bench::new();
    bench.file("millrace.csv", LIST);
    bench.file("millrace.mapping.toml", MAPPING);
    bench.file("shop.toml", COSTS);
    bench
}

fn import(bench: &Bench, list: &str, more: &[&str]) -> Ran {
    let mapping = [
        "--mapping",
        "millrace.mapping.toml",
        "--catalogue",
        "shop.toml",
    ];
    let args = [
        &["prices", "import", list],
        &mapping[..],
        &["--on", "2026-11-25"],
        more,
    ];
    bench.run(&args.concat())
}

fn undo(bench: &Bench, more: &[&str]) -> Ran {
    bench.run(&[&["prices", "undo", "--catalogue", "shop.toml"], more].concat())
}

#[test]
fn rejected_rows_are_told_and_nothing_is_written() {
    let bench = bench();
    let before = bench.names();
    insta::assert_snapshot!(import(&bench, "millrace.csv", &[]));
    assert_eq!(bench.text("shop.toml"), COSTS);
    assert_eq!(bench.names(), before);
}

#[test]
fn a_dry_run_shows_what_would_change_and_writes_nothing() {
    let bench = bench();
    let before = bench.names();
    let ran = import(&bench, "millrace.csv", &["--leave-rejected", "--dry-run"]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert_eq!(ran.stderr, "shop.toml: nothing is written (--dry-run)\n");
    assert!(
        ran.stdout.contains("3.20 USD -> 3.40 USD per foot, +6.3 %"),
        "{ran}"
    );
    assert_eq!(bench.text("shop.toml"), COSTS);
    assert_eq!(bench.names(), before);
}

#[test]
fn imports_are_taken_back_one_by_one_to_the_byte() {
    let bench = bench();
    let first = import(&bench, "millrace.csv", &["--leave-rejected"]);
    assert_eq!(first.exit, 0, "{first}");
    let after_first = bench.text("shop.toml");
    assert!(after_first.contains("millrace-M-2010") && after_first.contains("\"3.40 USD\""));
    let shown = bench.run(&[
        "material",
        "show",
        "oak-wide",
        "--json",
        "--materials",
        "shop.toml",
    ]);
    assert_eq!(shown.json()["cost"][3]["price"], "3.40 USD", "{shown}");
    bench.file("dearer.csv", LIST.replace("3.40,4.95", "3.60,5.20"));
    assert_eq!(import(&bench, "dearer.csv", &["--leave-rejected"]).exit, 0);
    assert_ne!(bench.text("shop.toml"), after_first);
    let dry = undo(&bench, &["--dry-run"]);
    assert!(
        dry.exit == 0 && dry.stderr.contains("would take back"),
        "{dry}"
    );
    let ran = undo(&bench, &[]);
    assert_eq!(
        ran.stderr,
        "shop.toml: the list of Millrace Mouldings from 2026-11-25 is taken back\n"
    );
    assert_eq!(bench.text("shop.toml"), after_first);
    assert_eq!(
        undo(&bench, &["--json"]).json()["supplier"],
        "Millrace Mouldings"
    );
    assert_eq!(bench.text("shop.toml"), COSTS);
    assert!(!bench.names().contains(&"shop.toml.undo".to_owned()));
    insta::assert_snapshot!("none_left", undo(&bench, &[]));
}

#[test]
fn a_catalogue_that_was_not_there_is_made_and_taken_back() {
    let bench = bench();
    fs::remove_file(bench.path("shop.toml")).expect("it was there");
    let before = bench.names();
    assert_eq!(
        import(&bench, "millrace.csv", &["--leave-rejected"]).exit,
        0
    );
    assert!(bench.text("shop.toml").starts_with("[[material]]\n"));
    assert_eq!(undo(&bench, &[]).exit, 0);
    assert_eq!(bench.names(), before);
}

#[test]
fn a_second_import_of_the_same_list_changes_nothing() {
    let bench = bench();
    assert_eq!(
        import(&bench, "millrace.csv", &["--leave-rejected"]).exit,
        0
    );
    let after = bench.text("shop.toml");
    let again = import(&bench, "millrace.csv", &["--leave-rejected"]);
    assert!(
        again.stderr.contains("stays as it is, no price is new"),
        "{again}"
    );
    assert_eq!(bench.text("shop.toml"), after);
}

#[test]
fn what_was_written_by_hand_since_is_not_lost() {
    let bench = bench();
    assert_eq!(
        import(&bench, "millrace.csv", &["--leave-rejected"]).exit,
        0
    );
    let mine = format!("{}# mine\n", bench.text("shop.toml"));
    bench.file("shop.toml", &mine);
    insta::assert_snapshot!("by_hand", undo(&bench, &[]));
    assert_eq!(bench.text("shop.toml"), mine);
    bench.file("shop.toml.undo", "{}");
    let ran = undo(&bench, &[]);
    assert!(
        ran.exit == 1 && ran.stderr.contains("prices.history"),
        "{ran}"
    );
}

#[test]
fn an_import_broken_off_before_the_catalogue_was_written_is_dropped() {
    let bench = bench();
    assert_eq!(
        import(&bench, "millrace.csv", &["--leave-rejected"]).exit,
        0
    );
    bench.file("shop.toml", COSTS);
    assert_eq!(undo(&bench, &[]).exit, 0);
    assert_eq!(bench.text("shop.toml"), COSTS);
    assert!(!bench.names().contains(&"shop.toml.undo".to_owned()));
}

#[test]
fn the_json_shape_only_grows() {
    let bench = bench();
    let ran = import(
        &bench,
        "millrace.csv",
        &["--json", "--dry-run", "--leave-rejected"],
    );
    assert_eq!(ran.exit, 0, "{ran}");
    insta::assert_snapshot!("json", format!("{:#}", ran.json()));
    let refused = import(&bench, "millrace.csv", &["--json"]);
    assert_eq!(refused.problem()["errors"][0]["code"], "prices.rejected");
}

#[test]
fn what_can_not_be_read_is_told() {
    let bench = bench();
    bench.file("old.xls", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1");
    bench.file("cut.xlsx", b"PK\x03\x04half");
    bench.file("other.csv", "a;b\n1;2\n");
    bench.file("empty.csv", "");
    for name in [
        "old.xls",
        "cut.xlsx",
        "other.csv",
        "empty.csv",
        "nowhere.csv",
    ] {
        let stem = name.replace('.', "_");
        insta::assert_snapshot!(stem, import(&bench, name, &[]));
    }
    bench.file(
        "millrace.mapping.toml",
        MAPPING.replace("per = \"foot\"", "per = \"yard\""),
    );
    insta::assert_snapshot!("mapping", import(&bench, "millrace.csv", &[]));
    bench.file(
        "millrace.mapping.toml",
        MAPPING.replace("code = \"Item\"\n", ""),
    );
    insta::assert_snapshot!("mapping_lacks", import(&bench, "millrace.csv", &[]));
    bench.file("millrace.mapping.toml", MAPPING);
    bench.file("shop.toml", COSTS.replace("3.20 USD", "3,20 USD"));
    insta::assert_snapshot!("catalogue", import(&bench, "millrace.csv", &[]));
}
