//! How long a supplier's list of 50 000 rows takes; the target is under 5 s for the whole import.

use std::fmt::Write as _;
use std::io::{Cursor, Write as _};

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use pricing::supplier::{Mapping, Preview, Shelf};
use trade::Date;
use zip::write::SimpleFileOptions;

const ROWS: usize = 50_000;

const MAPPING: &str = "mapping = 1\nsupplier = \"Acorn\"\nkind = \"moulding\"\nprefix = \"a-\"\n\
    currency = \"USD\"\n[columns]\ncode = \"Code\"\nname = \"Name\"\nface = \"Face\"\nheight = \"Height\"\n\
    [[price]]\ncolumn = \"Foot\"\nper = \"foot\"\n[[price]]\ncolumn = \"Chop\"\nper = \"foot\"\nas = \"chop\"\n";

fn main() {
    divan::main();
}

fn on() -> Date {
    Date::new(2026, 11, 25).expect("a day")
}

fn mapping() -> Mapping {
    Mapping::read(MAPPING).expect("a mapping")
}

/// A list whose prices have all gone up by `more` cents.
fn list(more: usize) -> String {
    let mut text = String::from("Code,Name,Face,Height,Foot,Chop\n");
    for row in 0..ROWS {
        let cents = row % 90 + 10 + more;
        let line = format!(
            "M-{row},\"Moulding, number {row}\",1 1/2,1 1/4,3.{cents:02},\"1,204.{cents:02}\""
        );
        writeln!(text, "{line}").expect("text grows");
    }
    text
}

/// The rows of that list as a sheet has them, texts within their cells.
fn sheet_rows() -> String {
    let mut rows = String::new();
    let list = list(0);
    let reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .from_reader(list.as_bytes());
    for (row, record) in (1..).zip(reader.into_records()) {
        write!(rows, "<row r=\"{row}\">").expect("text grows");
        for (column, cell) in ('A'..).zip(&record.expect("it reads")) {
            write!(
                rows,
                "<c r=\"{column}{row}\" t=\"inlineStr\"><is><t>{cell}</t></is></c>"
            )
            .expect("text grows");
        }
        rows.push_str("</row>");
    }
    rows
}

/// The same list as a workbook.
fn workbook() -> Vec<u8> {
    let rows = sheet_rows();
    let sheet = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    let relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    let package = "http://schemas.openxmlformats.org/package/2006/relationships";
    let parts = [
        (
            "_rels/.rels",
            format!(
                "<Relationships xmlns=\"{package}\"><Relationship Id=\"r1\" Type=\"{relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            ),
        ),
        (
            "xl/workbook.xml",
            format!(
                "<workbook xmlns=\"{sheet}\" xmlns:r=\"{relations}\"><sheets><sheet name=\"Prices\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>"
            ),
        ),
        (
            "xl/_rels/workbook.xml.rels",
            format!(
                "<Relationships xmlns=\"{package}\"><Relationship Id=\"r1\" Type=\"{relations}/worksheet\" Target=\"worksheets/sheet1.xml\"/></Relationships>"
            ),
        ),
        (
            "xl/worksheets/sheet1.xml",
            format!("<worksheet xmlns=\"{sheet}\"><sheetData>{rows}</sheetData></worksheet>"),
        ),
    ];
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for (name, text) in parts {
        zip.start_file(name, SimpleFileOptions::default())
            .expect("a part");
        zip.write_all(text.as_bytes()).expect("it is written");
    }
    zip.finish().expect("a workbook").into_inner()
}

fn catalogue() -> String {
    let empty = Shelf::read("").expect("an empty shelf");
    let preview =
        Preview::of_csv(list(0).as_bytes(), &mapping(), &empty, on()).expect("it is read");
    assert!(
        preview.rejected.is_empty() && preview.new_articles() == ROWS,
        "{:?}",
        preview.rejected.first()
    );
    preview.apply(&empty).expect("it is applied").text
}

/// Everything new: read, previewed, applied, checked.
#[divan::bench(sample_count = 10)]
fn all_new_from_csv(bencher: Bencher) {
    let (list, mapping) = (list(0), mapping());
    bencher.counter(ItemsCount::new(ROWS)).bench(|| {
        let shelf = Shelf::read("").expect("an empty shelf");
        let preview = Preview::of_csv(black_box(list.as_bytes()), &mapping, &shelf, on())
            .expect("it is read");
        preview.apply(&shelf).expect("it is applied")
    });
}

/// Every price changed, against a catalogue of as many materials.
#[divan::bench(sample_count = 10)]
fn all_changed_from_csv(bencher: Bencher) {
    let (text, list, mapping) = (catalogue(), list(5), mapping());
    let later = Date::new(2027, 1, 1).expect("a day");
    bencher.counter(ItemsCount::new(ROWS)).bench(|| {
        let shelf = Shelf::read(black_box(&text)).expect("a shelf");
        let preview =
            Preview::of_csv(list.as_bytes(), &mapping, &shelf, later).expect("it is read");
        assert_eq!(preview.articles.len(), ROWS);
        preview.apply(&shelf).expect("it is applied")
    });
}

/// The preview alone, nothing new in it.
#[divan::bench(sample_count = 10)]
fn all_the_same_from_csv(bencher: Bencher) {
    let (text, list, mapping) = (catalogue(), list(0), mapping());
    let shelf = Shelf::read(&text).expect("a shelf");
    bencher.counter(ItemsCount::new(ROWS)).bench(|| {
        let preview = Preview::of_csv(black_box(list.as_bytes()), &mapping, &shelf, on())
            .expect("it is read");
        assert!(preview.is_idle());
        preview
    });
}

/// The preview of a workbook.
#[divan::bench(sample_count = 10)]
fn preview_of_a_workbook(bencher: Bencher) {
    let (book, mapping) = (workbook(), mapping());
    let shelf = Shelf::read("").expect("an empty shelf");
    bencher.counter(ItemsCount::new(ROWS)).bench(|| {
        let preview = Preview::of_workbook(Cursor::new(black_box(&book)), &mapping, &shelf, on())
            .expect("it is read");
        assert_eq!(preview.new_articles(), ROWS);
        preview
    });
}
