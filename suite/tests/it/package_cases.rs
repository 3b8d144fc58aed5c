//! The package tables: `cases.csv`, the trade handbook's worked cases P01 to P30 (its §14), which
//! are plain geometry and can be checked with a pencil; and `independent.csv`, made-up pieces of
//! every kind, worked by `suite/python/package_cases.py` from the handbook's formulas alone.

use suite::package::{INPUTS, OUTPUTS, Table, TableFault, Verdict, judge};
use trade::Catalogue;

fn table(name: &str) -> String {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/ref/package");
    std::fs::read_to_string(format!("{folder}/{name}")).expect("the table is there")
}

fn text() -> String {
    table("cases.csv")
}

fn verdicts(text: &str) -> Vec<Verdict> {
    let table = Table::read(text).expect("the table reads");
    let catalogue = Catalogue::default();
    table
        .rows
        .iter()
        .map(|row| judge(row, &catalogue))
        .collect()
}

/// Judges a table of this many rows; `least` expected columns must have been compared.
fn check(name: &str, rows: usize, least: usize) {
    let verdicts = verdicts(&table(name));
    let amiss: Vec<String> = verdicts
        .iter()
        .flat_map(|verdict| {
            let each = verdict.differences.iter();
            each.map(|difference| format!("{} ({}): {difference}", verdict.id, verdict.kind))
        })
        .collect();
    assert!(amiss.is_empty(), "{}", amiss.join("\n"));
    assert_eq!(verdicts.len(), rows);
    let compared: usize = verdicts.iter().map(|verdict| verdict.compared).sum();
    assert!(compared >= least, "only {compared} columns were compared");
    assert!(verdicts.iter().all(|verdict| verdict.compared > 0));
}

/// 937 columns were filled when the table was last read by hand.
#[test]
fn every_worked_case_agrees() {
    check("cases.csv", 30, 900);
}

#[test]
fn every_independent_case_agrees() {
    check("independent.csv", 240, 7_000);
}

/// The table with one cell of one row changed.
fn with(id: &str, column: &str, value: &str) -> String {
    let text = text();
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let headers = reader.headers().expect("headers").clone();
    let at = headers
        .iter()
        .position(|header| header == column)
        .expect("the column is there");
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(&headers).expect("writing to memory");
    for record in reader.records() {
        let record = record.expect("a row");
        let hit = record.get(0) == Some(id);
        let fields = record.iter().enumerate();
        let fields = fields.map(|(i, field)| if hit && i == at { value } else { field });
        writer.write_record(fields).expect("writing to memory");
    }
    let bytes = writer.into_inner().expect("flushed");
    String::from_utf8(bytes).expect("it was text")
}

/// Why the row `id` failed, after one cell of it was changed.
fn why(id: &str, column: &str, value: &str) -> String {
    let verdicts = verdicts(&with(id, column, value));
    let verdict = verdicts
        .iter()
        .find(|verdict| verdict.id == id)
        .expect("the row is there");
    let each = verdict.differences.iter().map(ToString::to_string);
    each.collect::<Vec<_>>().join("\n")
}

#[test]
fn an_unchanged_table_stays_as_it_is() {
    assert_eq!(why("P01", "kind", "mat"), "");
}

#[test]
fn a_wrong_expected_value_fails() {
    assert_eq!(
        why("P01", "package_w", "11 7/8"),
        "package_w: expected 11 7/8, found 11 3/4"
    );
    assert_eq!(
        why("P26", "side_short", "7.8665"),
        "side_short: expected 7.8665, found 199.8065 mm"
    );
    assert_eq!(
        why("P05", "flags", "none"),
        "flags: expected none, found too deep"
    );
    assert_eq!(
        why("P10", "opening_xs", "2"),
        "opening_xs: expected 2, found 2|6 1/2"
    );
}

#[test]
fn an_expected_value_nothing_was_found_for_fails() {
    assert_eq!(
        why("P01", "clip", "1/8"),
        "clip: expected 1/8, found nothing"
    );
}

#[test]
fn a_filled_input_that_is_not_used_fails() {
    assert_eq!(
        why("P18", "gutter_x", "1"),
        "input column gutter_x is filled, and kind canvas does not use it"
    );
}

#[test]
fn a_blank_input_that_is_needed_fails() {
    let why = why("P01", "face_w", "");
    assert_eq!(why, "input column face_w is blank, and kind mat needs it");
}

#[test]
fn an_input_that_is_no_length_fails() {
    let why = why("P01", "face_w", "wide");
    assert!(why.starts_with("face_w: "), "{why}");
}

#[test]
fn an_unknown_kind_fails() {
    let refused = Table::read(&with("P01", "kind", "hologram"));
    let Err(TableFault::UnknownKind { id, kind }) = refused else {
        panic!("{refused:?}");
    };
    assert_eq!((id.as_str(), kind.as_str()), ("P01", "hologram"));
}

#[test]
fn an_unknown_column_fails() {
    let text = text().replacen("art_w,", "art_breadth,", 1);
    let refused = Table::read(&text);
    assert!(
        matches!(&refused, Err(TableFault::UnknownColumn(column)) if column == "art_breadth"),
        "{refused:?}"
    );
}

#[test]
fn rows_without_id_kind_or_company_fail() {
    let missing = Table::read("id,art_w\nP01,8\n");
    assert!(
        matches!(missing, Err(TableFault::MissingColumn("kind"))),
        "{missing:?}"
    );
    let twice = Table::read("id,kind\nP01,mat\nP01,mat\n");
    assert!(
        matches!(&twice, Err(TableFault::Twice(id)) if id == "P01"),
        "{twice:?}"
    );
    assert!(matches!(Table::read("id,kind\n"), Err(TableFault::Empty)));
}

#[test]
fn no_column_is_both_stated_and_expected() {
    assert!(INPUTS.iter().all(|column| !OUTPUTS.contains(column)));
}
