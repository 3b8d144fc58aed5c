use std::collections::BTreeSet;

use demand::{Stock, StockFault};
use serde_json::Value;

use crate::bench::{Bench, Ran};

/// The same answer on every machine.
const STEADY: [&str; 2] = ["--effort", "100000"];

fn cut(bench: &Bench, args: &[&str]) -> Ran {
    bench.run(&[&["cut", "jobs"], args, &STEADY].concat())
}

/// The invented shop in `shop`, and the names of three of its jobs.
fn shop() -> (Bench, [&'static str; 3]) {
    let bench = Bench::new();
    let ran = bench.run(&["demo", "write", "shop"]);
    assert_eq!(ran.exit, 0, "{ran}");
    let jobs = [
        "shop/jobs/harbour.toml",
        "shop/jobs/fern.toml",
        "shop/jobs/summer-dunes.toml",
    ];
    (bench, jobs)
}

/// What is said beside the cuts themselves: among plans that are equally good any will do.
#[test]
fn a_day_is_planned_from_the_rack() {
    let (bench, [harbour, fern, _]) = shop();
    let ran = cut(&bench, &[harbour, fern, "--stock", "shop/stock.toml"]);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    let cuts = |line: &&str| {
        let line = line.trim_start();
        line.starts_with(|sign: char| sign.is_ascii_digit()) && line.contains("  ")
            || ["pieces ", "rest: ", "All ", "Sheet ", "Stick ", "keep "]
                .iter()
                .any(|word| line.starts_with(word))
    };
    let beside: Vec<&str> = ran.stdout.lines().filter(|line| !cuts(line)).collect();
    insta::assert_snapshot!(beside.join("\n"));
    for part in [
        "Frame, left",
        "Frame, right",
        "Frame, top",
        "Frame, bottom",
        "Mount",
        "Glazing",
    ] {
        for job in ["2026-411", "2026-412"] {
            let found = ran.stdout.matches(&format!("{job}, {part}")).count();
            assert_eq!(found, 1, "{job}, {part} in {ran}");
        }
    }
}

/// By hand: a window of 9 1/4 x 13 1/4 in through 1.4 mm of board at 45 degrees is 2.8 mm smaller at
/// its foot; less the shop's 1/8 in at every edge that leaves 225.8 x 327.4 mm, 8.89 x 12.89 in. The
/// sixteenths below are 14/16 of both.
#[test]
fn what_drops_from_a_window_is_never_said_larger_than_it_is() {
    let (bench, [_, fern, _]) = shop();
    let ran = cut(&bench, &[fern, "--stock", "shop/stock.toml"]);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    let mut lines = ran.stdout.lines();
    let found = lines.find(|line| line.ends_with(", drops from 2026-412: Mat 1"));
    let (_, size) = found
        .and_then(|line| line.split_once(": "))
        .unwrap_or_else(|| panic!("{ran}"));
    assert_eq!(
        size,
        "8 7/8 × 12 7/8 in (exactly 225.8 × 327.4 mm), drops from 2026-412: Mat 1"
    );
}

#[test]
fn the_whole_shop_is_cut_as_its_readers_are_told() {
    let (bench, _) = shop();
    let jobs: Vec<String> = demo::JOBS
        .iter()
        .map(|job| format!("shop/jobs/{}.toml", job.name))
        .collect();
    let jobs: Vec<&str> = jobs.iter().map(String::as_str).collect();
    let more = ["--stock", "shop/stock.toml", "--json"];
    let ran = cut(&bench, &[jobs.as_slice(), &more].concat());
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    let day = ran.json();
    assert_eq!(day["jobs"].as_array().map(Vec::len), Some(demo::JOBS.len()));
    for material in list(&day, "materials") {
        balanced(material);
        let cost = |field: &str| material[field]["count"].as_u64().expect("a number");
        assert!(cost("bound") <= cost("cost"), "{material}");
        assert_eq!(list(material, "missing").len(), 0, "{material}");
    }
}

fn list<'a>(value: &'a Value, field: &str) -> &'a Vec<Value> {
    value[field]
        .as_array()
        .unwrap_or_else(|| panic!("no list of {field} in {value}"))
}

/// pieces + cuts + trim + remnants + waste + rounding = stock, in quanta.
fn balanced(material: &Value) {
    let account = &material["account"];
    let amount = |field: &str| -> i128 {
        let quanta = account[field]["quanta"].as_str().expect("quanta");
        quanta.parse().expect("a whole number")
    };
    let parts = ["pieces", "cuts", "trim", "remnants", "waste", "rounding"];
    assert_eq!(
        parts.map(amount).iter().sum::<i128>(),
        amount("stock"),
        "{material}"
    );
}

#[test]
fn the_json_shape_only_grows() {
    let (bench, [harbour, fern, _]) = shop();
    let args = [harbour, fern, "--stock", "shop/stock.toml", "--json"];
    let ran = cut(&bench, &args);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{ran}");
    let mut names = BTreeSet::new();
    shape(&ran.json(), "", &mut names);
    let names: Vec<String> = names.into_iter().collect();
    insta::assert_snapshot!(names.join("\n"));
}

/// Every path of a value and what kind of thing stands there, whatever the plan is.
fn shape(value: &Value, path: &str, names: &mut BTreeSet<String>) {
    let kind = match value {
        Value::Object(object) => {
            for (name, value) in object {
                shape(value, &format!("{path}.{name}"), names);
            }
            return;
        }
        Value::Array(list) => {
            for value in list {
                shape(value, &format!("{path}[]"), names);
            }
            return;
        }
        Value::Null => return,
        Value::Bool(_) => "true or false",
        Value::Number(number) if number.is_u64() || number.is_i64() => "whole number",
        Value::Number(_) => "float",
        Value::String(_) => "text",
    };
    names.insert(format!("{path}: {kind}"));
}

#[test]
fn everything_is_written_at_once() {
    let (bench, [harbour, fern, dunes]) = shop();
    let jobs = [
        harbour,
        fern,
        dunes,
        "--stock",
        "shop/stock.toml",
        "--date",
        "2030-11-25",
    ];
    let outputs = ["-o", "cut.pdf", "--svg", "drawn", "--plan", "plan.json"];
    let after = ["--stock-after", "after.toml"];
    let ran = cut(&bench, &[&jobs[..], &outputs, &after].concat());
    assert_eq!(ran.exit, 0, "{ran}");
    let pdf = std::fs::read(bench.path("cut.pdf")).expect("cut sheets");
    assert!(pdf.starts_with(b"%PDF-") && pdf.trim_ascii_end().ends_with(b"%%EOF"));
    let plan: Value = serde_json::from_str(&bench.text("plan.json")).expect("JSON");
    let sheets: usize = list(&plan, "materials")
        .iter()
        .map(|one| list(one, "taken").len())
        .sum();
    let drawn = std::fs::read_dir(bench.path("drawn"))
        .expect("a folder")
        .count();
    assert_eq!(drawn, sheets);
    assert!(
        ran.stderr
            .contains(&format!("drawn: {sheets} drawings written")),
        "{ran}"
    );
}

/// What was taken from the rack is gone, what is kept lies there, and it can be planned with again.
#[test]
fn the_stock_afterwards_is_the_stock_before_less_what_was_taken() -> Result<(), Vec<StockFault>> {
    let (bench, [harbour, fern, _]) = shop();
    let args = [harbour, fern, "--stock", "shop/stock.toml"];
    let more = ["--stock-after", "after.toml", "--plan", "plan.json"];
    let ran = cut(&bench, &[&args[..], &more].concat());
    assert_eq!(ran.exit, 0, "{ran}");
    let before = Stock::read(bench.text("shop/stock.toml").as_bytes())?;
    let after = Stock::read(bench.text("after.toml").as_bytes())?;
    let plan: Value = serde_json::from_str(&bench.text("plan.json")).expect("JSON");
    let materials = list(&plan, "materials");
    let used = |origin: &str| -> u64 {
        let used = materials.iter().flat_map(|one| list(one, "used"));
        used.filter(|one| one["origin"] == origin)
            .filter_map(|one| one["count"].as_u64())
            .sum()
    };
    let held = |stock: &Stock| -> u64 {
        let sticks = stock.sticks.iter().filter_map(|one| one.count);
        sticks
            .chain(stock.sheets.iter().filter_map(|one| one.count))
            .sum()
    };
    assert_eq!(held(&before) - held(&after), used("rack"));
    let labelled = materials.iter().flat_map(|one| list(one, "remnants"));
    let kept = labelled.filter(|one| one["label"].is_string()).count();
    let gone = usize::try_from(used("remnant")).expect("few");
    assert_eq!(after.remnants.len(), before.remnants.len() - gone + kept);
    assert!(
        kept > 0 && used("rack") + used("remnant") > 0,
        "the day tries both"
    );
    let again = cut(&bench, &["shop/jobs/pears.toml", "--stock", "after.toml"]);
    assert_eq!(again.exit, 0, "{again}");
    Ok(())
}

#[test]
fn jobs_and_stock_that_cannot_be_read_are_named_together() {
    let (bench, [harbour, ..]) = shop();
    bench.file(
        "bad.toml",
        "rabbet = 1\n[[art]]\nwidth = \"16 7/\"\nheight = 9\n",
    );
    insta::assert_snapshot!(
        "bad_jobs",
        cut(&bench, &["bad.toml", "missing.toml", harbour])
    );
    insta::assert_snapshot!(
        "twice",
        cut(&bench, &[harbour, "shop/../shop/jobs/harbour.toml"])
    );
    bench.file(
        "rack.toml",
        "stock = 1\n[[stick]]\nmaterial = \"oak-square-1\"\nlength = 0\n",
    );
    insta::assert_snapshot!("bad_stock", cut(&bench, &[harbour, "--stock", "rack.toml"]));
    bench.file(
        "short.toml",
        "stock = 1\nbuy = \"listed\"\n[[stick]]\nmaterial = \"oak-square-1\"\nlength = 20\n",
    );
    insta::assert_snapshot!(
        "too_large",
        cut(&bench, &[harbour, "--stock", "short.toml"])
    );
    let ran = cut(&bench, &[harbour, "--stock-after", "after.toml"]);
    assert_eq!(ran.exit, 2, "{ran}");
    assert!(!bench.path("after.toml").exists());
}

#[test]
fn a_piece_that_cannot_be_made_is_not_cut() {
    let bench = Bench::new();
    bench.too_deep("deep.toml");
    let ran = cut(&bench, &["print.toml", "deep.toml", "-o", "x.pdf"]);
    assert_eq!((ran.exit, ran.stdout.as_str()), (1, ""), "{ran}");
    assert!(ran.stderr.contains("code: demand.refused"), "{ran}");
    assert!(!bench.path("x.pdf").exists());
}
