//! The whole cut list of the invented shop, beside `tests/golden/shop.ref.cuts`.
//!
//! With `RABBET_BLESS=1` the reference is written anew; read the difference before keeping it.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use demand::{Batch, Day, Work};

use crate::bench::{day, pieces};

#[test]
fn the_shop_s_cut_list_is_as_it_was() {
    let names: Vec<&str> = demo::JOBS.iter().map(|job| job.name).collect();
    let found = text(&day(&names, "", &[]));
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/shop.ref.cuts");
    if std::env::var_os("RABBET_BLESS").is_some() {
        fs::write(&file, &found).unwrap();
    }
    let kept = fs::read_to_string(&file).unwrap();
    let differing = found
        .lines()
        .zip(kept.lines())
        .find(|(found, kept)| found != kept);
    assert_eq!(differing, None, "found, kept");
    assert_eq!(found, kept);
}

fn text(day: &Day) -> String {
    let mut text = format!("counted in {}\n", day.tick.name());
    for batch in &day.batches {
        writeln!(
            text,
            "\n{} {}, {}",
            batch.ware.kind.word(),
            batch.ware,
            rules(batch)
        )
        .unwrap();
        for piece in pieces(batch) {
            writeln!(text, "  {piece}").unwrap();
        }
    }
    text.push_str("\nnot planned\n");
    for left in &day.unplanned {
        writeln!(text, "  {}: {}", day.jobs[left.job].name, left.part).unwrap();
    }
    text
}

fn rules(batch: &Batch) -> String {
    let stock = batch.sources.iter().map(|s| s.name.as_str());
    let stock = stock.collect::<Vec<_>>().join("; ");
    match &batch.work {
        Work::Lengths { problem, .. } => format!("cut {}, from {stock}", problem.kerf),
        Work::Sheets { problem, .. } => {
            let rules = problem.rules;
            format!(
                "cut {}, least strip {}, from {stock}",
                rules.kerf, rules.least_strip
            )
        }
    }
}
