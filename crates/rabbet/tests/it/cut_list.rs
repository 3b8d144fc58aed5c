use std::fs;

use serde_json::Value;

use crate::bench::{Bench, Ran};
use crate::reference::check_plans;

/// The same answer on every machine.
const STEADY: [&str; 2] = ["--effort", "300000"];

/// A day of another kind: instances and what is known of them.
const DAY: &str = include_str!("../../../../suite/ref/cutting/day.json");

fn cut(bench: &Bench, args: &[&str]) -> Ran {
    bench.run(&[&["cut", "list"], args, &STEADY].concat())
}

#[test]
fn a_list_is_planned_in_the_order_it_is_cut() {
    let bench = Bench::new();
    insta::assert_snapshot!(cut(&bench, &["list.toml"]));
}

#[test]
fn the_same_seed_and_effort_give_the_same_answer_on_any_number_of_threads() {
    let bench = Bench::new();
    bench.file("day.json", DAY);
    let one = cut(&bench, &["day.json", "--json", "--threads", "1"]);
    let two = cut(&bench, &["day.json", "--json", "--threads", "2"]);
    assert_eq!(one.exit, 0, "{one}");
    assert_eq!(one.stdout, two.stdout);
}

#[test]
fn plans_in_a_file_and_on_stdout_hold_before_an_independent_checker() {
    let bench = Bench::new();
    bench.file("day.json", DAY);
    let ran = cut(&bench, &["day.json", "--plan", "plans.json"]);
    assert_eq!(
        (ran.exit, ran.stderr.as_str()),
        (0, "plans.json: written\n"),
        "{ran}"
    );
    check_plans(&bench.path("day.json"), &bench.path("plans.json"));
    let from_stdin = bench.run_with(
        &[&["cut", "list", "-", "--json"][..], &STEADY].concat(),
        DAY.as_bytes(),
    );
    assert_eq!(from_stdin.stdout, bench.text("plans.json"));
    assert_eq!(from_stdin.json()["format"], "cutting-plans/1");
    let lines: Vec<&str> = from_stdin.stdout.lines().collect();
    let [_, plans @ .., _] = lines.as_slice() else {
        panic!("{from_stdin}");
    };
    let json = from_stdin.json();
    let listed = json["plans"].as_array().expect("plans");
    assert_eq!(plans.len(), listed.len(), "one plan a line");
    for (line, plan) in plans.iter().zip(listed) {
        let line: Value = serde_json::from_str(line.trim_end_matches(',')).expect("a plan");
        assert_eq!(line, *plan);
    }
}

const STICKS: &str = r#"{"format":"cutting-instance/1","name":"rails","dim":1,"kerf":3,
    "objective":"cost","stock":[{"id":"long","l":1000,"cost":70},{"id":"short","l":600,"cost":40}],
    "pieces":[{"id":"a","l":301,"qty":3},{"id":"b","l":250,"qty":4}]}"#;

#[test]
fn one_instance_gives_one_plan() {
    let bench = Bench::new();
    bench.file("rails.json", STICKS);
    let ran = cut(&bench, &["rails.json", "--json"]);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    let plan = ran.json();
    assert_eq!(plan["format"], "cutting-plan/1");
    // By hand: a long one holds three of any (4 × 250 and three kerfs are 1009), a short one two
    // (two of 301 are 605). Seven need 70 + 2 × 40; 140, 120 and 110 hold six, six and five.
    assert_eq!(
        (&plan["objective"], &plan["bound"]),
        (&150.into(), &150.into()),
        "{plan}"
    );
    bench.file("plan.json", &ran.stdout);
    check_plans(&bench.path("rails.json"), &bench.path("plan.json"));
    insta::assert_snapshot!("rails", cut(&bench, &["rails.json"]));
}

/// The list's problem once more as an instance, counted by hand in 1/64 in.
#[test]
fn the_plan_of_a_list_holds_in_its_own_ticks() {
    let bench = Bench::new();
    bench.file(
        "own.toml",
        "kerf = \"1/8\"\n[[stick]]\nname = \"s\"\nlength = 100\ncost = \"9 USD\"\ntrim = [\"1/2\", 0]\n\
         [[piece]]\nname = \"p\"\nlength = \"22 7/8\"\ncount = 9\n",
    );
    bench.file(
        "own.json",
        r#"{"name":"cut list","dim":1,"objective":"cost","kerf":8,
            "stock":[{"id":"s","l":6400,"cost":900,"trim":[32,0]}],
            "pieces":[{"id":"p","l":1464,"qty":9}]}"#,
    );
    let ran = cut(&bench, &["own.toml", "--json"]);
    // Four of 22 7/8 and three kerfs are 91 7/8, five are more than 99 1/2: three sticks.
    assert_eq!(ran.json()["objective"], 2700);
    assert_eq!(ran.json()["unit"], "1/64 in");
    bench.file("plan.json", &ran.stdout);
    check_plans(&bench.path("own.json"), &bench.path("plan.json"));
}

#[test]
fn cut_sheets_and_drawings_are_written() {
    let bench = Bench::new();
    let args = [
        "list.toml",
        "-o",
        "cut.pdf",
        "--svg",
        "drawn",
        "--date",
        "2030-11-25",
    ];
    let ran = cut(&bench, &args);
    assert_eq!(ran.exit, 0, "{ran}");
    assert_eq!(ran.stderr, "cut.pdf: written\ndrawn: 3 drawings written\n");
    let pdf = fs::read(bench.path("cut.pdf")).expect("cut sheets");
    assert!(pdf.starts_with(b"%PDF-") && pdf.trim_ascii_end().ends_with(b"%%EOF"));
    let names = names(&bench, "drawn");
    assert_eq!(
        names,
        [
            "01-pine-1-x-3-stick-001.svg",
            "01-pine-1-x-3-stick-002.svg",
            "02-birch-plywood-sheet-001.svg"
        ]
    );
    let again = cut(&bench, &[&args[..2], &["again.pdf"], &args[5..]].concat());
    assert_eq!(again.exit, 0, "{again}");
    assert!(
        pdf == fs::read(bench.path("again.pdf")).expect("cut sheets"),
        "one day, two files"
    );
}

fn names(bench: &Bench, folder: &str) -> Vec<String> {
    let entries = fs::read_dir(bench.path(folder)).expect("a folder");
    let name = |entry: std::io::Result<fs::DirEntry>| entry.expect("an entry").file_name();
    let mut names: Vec<String> = entries
        .map(|entry| name(entry).to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

#[test]
fn drawings_of_two_plans_do_not_lie_in_one_folder() {
    let bench = Bench::new();
    fs::create_dir(bench.path("drawn")).expect("a folder");
    bench.file("drawn/01-oak-stick-001.svg", "<svg/>");
    let ran = cut(&bench, &["list.toml", "--svg", "drawn", "-o", "cut.pdf"]);
    insta::assert_snapshot!(ran);
    assert_eq!(names(&bench, "drawn"), ["01-oak-stick-001.svg"]);
    assert!(
        !bench.path("cut.pdf").exists(),
        "nothing is written where something is refused"
    );
}

#[test]
fn a_dry_run_writes_nothing() {
    let bench = Bench::new();
    let before = bench.names();
    let args = [
        "list.toml",
        "-o",
        "cut.pdf",
        "--svg",
        "drawn",
        "--plan",
        "p.json",
        "--dry-run",
    ];
    let ran = cut(&bench, &args);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(
        ran.stderr
            .contains("drawn: 3 drawings would be written; none is (--dry-run)"),
        "{ran}"
    );
    assert_eq!(bench.names(), before);
}

#[test]
fn what_it_is_made_from_stays() {
    let bench = Bench::new();
    let before = bench.text("list.toml");
    for flag in ["-o", "--plan"] {
        let ran = cut(&bench, &["list.toml", flag, "list.toml"]);
        assert_eq!(ran.exit, 1, "{ran}");
        assert!(ran.stderr.contains("code: file.own_input"), "{ran}");
    }
    assert_eq!(bench.text("list.toml"), before);
    let ran = cut(&bench, &["list.toml", "-o", "nowhere/cut.pdf"]);
    assert_eq!(ran.exit, 3, "{ran}");
    let ran = cut(&bench, &["list.toml", "-o", "-", "--plan", "-"]);
    assert_eq!((ran.exit, ran.stdout.as_str()), (2, ""), "{ran}");
}

#[test]
fn a_sheet_is_filled_with_what_is_worth_most() {
    let bench = Bench::new();
    bench.file(
        "fill.json",
        r#"{"name":"fill","dim":2,"objective":"value","stock":[{"id":"s","w":10,"h":10,"qty":1}],
            "pieces":[{"id":"big","w":10,"h":6,"qty":1,"value":9},
                      {"id":"small","w":5,"h":5,"qty":4,"value":3}]}"#,
    );
    let ran = cut(&bench, &["fill.json"]);
    // Four small ones are worth 12; the big one leaves no room for any small one.
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    assert!(
        ran.stdout.contains("Value 12, cannot be above 12: proven"),
        "{ran}"
    );
}

#[test]
fn pieces_the_stock_does_not_reach_for_are_named() {
    let bench = Bench::new();
    bench.file(
        "few.toml",
        "[[stick]]\nlength = 100\ncount = 1\n[[piece]]\nname = \"p\"\nlength = 40\ncount = 5\n",
    );
    let ran = cut(&bench, &["few.toml", "--plan", "few.json"]);
    insta::assert_snapshot!(ran);
    assert!(
        bench.path("few.json").exists(),
        "what can be cut is planned"
    );
}

/// Lists nobody should have to give.
#[test]
fn lists_that_cannot_be_read() {
    let stock = "[[stick]]\nlength = 100\n";
    let cases = [
        (
            "no_bottom",
            "[[stick]]\nlength = \"16 7/\"\n[[piece]]\nlength = \"11 / 2\"\ncount = -1\n"
                .to_owned(),
        ),
        (
            "zero",
            format!("{stock}[[piece]]\nlength = 0\n[[piece]]\nlength = -3\n"),
        ),
        (
            "too_large",
            format!(
                "{stock}trim = [\"1/2\", \"1/2\"]\n[[piece]]\nname = \"beam\"\nlength = \"99 1/2\"\n"
            ),
        ),
        (
            "twice",
            format!(
                "{stock}[[piece]]\nname = \"a\"\nlength = 3\n[[piece]]\nname = \"a\"\nlength = 4\n"
            ),
        ),
        (
            "unknown_stock",
            format!("{stock}[[piece]]\nmaterial = \"oka\"\nlength = 3\n"),
        ),
        (
            "unknown_field",
            format!("{stock}lenght = 3\n[[piece]]\nlength = 3\n"),
        ),
        (
            "two_kinds",
            format!("{stock}[[piece]]\nlength = 3\nsize = \"3 x 4\"\n"),
        ),
        ("nothing", stock.to_owned()),
        (
            "prose",
            "A shelf for my aunt, about this wide.\n".to_owned(),
        ),
        ("empty", String::new()),
    ];
    for (name, text) in cases {
        refused(name, "bad.toml", text.as_bytes());
    }
    refused("noise", "bad.toml", b"\xff\xfe\x00list");
}

#[test]
fn instances_that_cannot_be_read() {
    let cases = [
        ("broken_json", "{\"name\": \"a\", "),
        ("no_fields", "{}"),
        ("no_instances", "[]"),
        (
            "json_too_large",
            r#"{"name":"a","dim":1,"stock":[{"id":"s","l":10}],"pieces":[{"id":"p","l":11}]}"#,
        ),
        (
            "json_overflow",
            r#"{"name":"a","dim":1,"stock":[{"id":"s","l":1e30}],"pieces":[{"id":"p","l":18446744073709551616}]}"#,
        ),
        (
            "json_no_end",
            r#"{"name":"a","dim":2,"stock":[{"id":"s","w":9,"h":9}],"pieces":[{"id":"p","w":1,"h":1,"qty":null}]}"#,
        ),
        (
            "json_millions",
            r#"{"name":"a","dim":1,"stock":[{"id":"s","l":10}],"pieces":[{"id":"p","l":3,"qty":9000000000000000000},{"id":"q","l":4,"qty":9000000000000000000}]}"#,
        ),
    ];
    for (name, text) in cases {
        refused(name, "bad.json", text.as_bytes());
    }
}

/// Holds a refusal to exit code 1, a sentence with its code, and nothing written.
fn refused(name: &str, file: &str, bytes: &[u8]) {
    let bench = Bench::new();
    bench.file(file, bytes);
    bench.file("x.pdf", "an older plan");
    let before = bench.names();
    let ran = cut(
        &bench,
        &[file, "-o", "x.pdf", "--plan", "x.json", "--svg", "drawn"],
    );
    assert_eq!((ran.exit, ran.stdout.as_str()), (1, ""), "{name}: {ran}");
    assert!(ran.stderr.contains("code: "), "{name}: {ran}");
    for word in ["invalid", "illegal", "please", "sorry", "oops", "panicked"] {
        assert!(!ran.stderr.to_lowercase().contains(word), "{name}: {ran}");
    }
    assert_eq!(bench.names(), before, "{name}");
    assert_eq!(bench.text("x.pdf"), "an older plan", "{name}");
    insta::assert_snapshot!(name, ran);
    let json = cut(&bench, &[file, "--json"]);
    assert_eq!(json.exit, 1, "{name}: {json}");
    let problem = json.problem();
    assert_eq!(problem["exit"], 1, "{name}: {problem}");
    assert!(
        problem["errors"]
            .as_array()
            .is_some_and(|all| !all.is_empty()),
        "{name}"
    );
}

/// Many pieces of one kind are planned by the kind, not one by one.
#[test]
fn a_million_pieces_are_planned_at_once() {
    let bench = Bench::new();
    bench.file(
        "many.toml",
        "[[stick]]\nlength = 100\n[[piece]]\nlength = 30\ncount = 1000000\n",
    );
    let ran = cut(&bench, &["many.toml", "--json"]);
    assert_eq!(ran.exit, 0, "{ran}");
    let plan: Value = ran.json();
    // Three to a stick: 333 334 sticks of 100 in, 6400 ticks each.
    assert_eq!(plan["objective"], 333_334_u64 * 6400, "{plan}");
}

#[test]
fn numbers_that_are_none_are_told() {
    let bench = Bench::new();
    for args in [
        ["--seconds", "soon"],
        ["--effort", "-3"],
        ["--threads", "0"],
        ["--seed", "x"],
    ] {
        let ran = bench.run(&[&["cut", "list", "list.toml"][..], &args].concat());
        assert_eq!((ran.exit, ran.stdout.as_str()), (2, ""), "{ran}");
        assert!(!ran.stderr.contains("invalid"), "{ran}");
    }
    let both = cut(&bench, &["list.toml", "--seconds", "1"]);
    assert_eq!(both.exit, 2, "{both}");
}
