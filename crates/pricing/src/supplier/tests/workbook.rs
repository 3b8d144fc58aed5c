//! Workbooks made by hand, part by part (ECMA-376, Office Open XML).

use std::io::{Cursor, Write as _};

use zip::write::SimpleFileOptions;

use super::*;
use crate::supplier::ListFault;

/// A workbook with one sheet of these rows, its first in `texts` shared.
fn workbook(sheet: &str, rows: &str) -> Vec<u8> {
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let spreadsheet = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    let relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    let package = "http://schemas.openxmlformats.org/package/2006/relationships";
    let parts = [
        (
            "[Content_Types].xml",
            "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"/>"
                .to_owned(),
        ),
        (
            "_rels/.rels",
            format!(
                "<Relationships xmlns=\"{package}\"><Relationship Id=\"r1\" Type=\"{relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"
            ),
        ),
        (
            "xl/workbook.xml",
            format!(
                "<workbook xmlns=\"{spreadsheet}\" xmlns:r=\"{relations}\"><sheets><sheet name=\"{sheet}\" sheetId=\"1\" r:id=\"r1\"/></sheets></workbook>"
            ),
        ),
        (
            "xl/_rels/workbook.xml.rels",
            format!(
                "<Relationships xmlns=\"{package}\"><Relationship Id=\"r1\" Type=\"{relations}/worksheet\" Target=\"worksheets/sheet1.xml\"/><Relationship Id=\"r2\" Type=\"{relations}/sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>"
            ),
        ),
        (
            "xl/sharedStrings.xml",
            format!("<sst xmlns=\"{spreadsheet}\"><si><t>Code</t></si><si><t>Price</t></si></sst>"),
        ),
        (
            "xl/worksheets/sheet1.xml",
            format!("<worksheet xmlns=\"{spreadsheet}\"><sheetData>{rows}</sheetData></worksheet>"),
        ),
    ];
    for (name, text) in parts {
        zip.start_file(name, SimpleFileOptions::default()).unwrap();
        zip.write_all(text.as_bytes()).unwrap();
    }
    zip.finish().unwrap().into_inner()
}

const ROWS: &str = "<row r=\"1\"><c r=\"B1\" t=\"s\"><v>0</v></c><c r=\"D1\" t=\"s\"><v>1</v></c></row>\
    <row r=\"2\"><c r=\"B2\"><v>4410</v></c><c r=\"D2\"><v>3.4000000000000004</v></c></row>\
    <row r=\"4\"><c r=\"B4\" t=\"inlineStr\"><is><t>M-7</t></is></c><c r=\"D4\" t=\"str\"><v>$1,234.50</v></c></row>\
    <row r=\"5\"><c r=\"B5\"><v>8</v></c><c r=\"D5\" t=\"e\"><v>#N/A</v></c></row>\
    <row r=\"6\"><c r=\"B6\"><v>9</v></c><c r=\"D6\"><v>3.3333333333333335</v></c></row>";

fn read(book: Vec<u8>, layout: &str) -> Result<Preview, ListFault> {
    Preview::of_workbook(
        Cursor::new(book),
        &mapping(layout),
        &shelf(""),
        day("2026-11-25"),
    )
}

#[test]
fn a_sheet_is_read_like_any_list() {
    let preview = read(workbook("Prices", ROWS), PLAIN).unwrap();
    check_sum(&preview);
    let told: Vec<(u32, &str, String)> = preview
        .articles
        .iter()
        .map(|article| {
            (
                article.row,
                article.supplier_code.as_str(),
                article.offers[0].cost.price.to_string(),
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            (2, "4410", "3.40 USD".to_owned()),
            (4, "M-7", "1234.50 USD".to_owned())
        ]
    );
    assert_eq!(
        refusals(&preview),
        [
            "row 5, Price \"#N/A\": the spreadsheet holds an error here; mend its formula",
            "row 6, Price \"3.33333333333333\": it has more than six decimals; say `round = 4` in the mapping to round half up to four",
        ]
    );
    let rounded = read(workbook("Prices", ROWS), &format!("round = 2\n{PLAIN}")).unwrap();
    assert_eq!(
        rounded.articles[2].offers[0].cost.price.to_string(),
        "3.33 USD"
    );
}

/// A sheet's own numbers are read as numbers, whatever the list's habit of writing them.
#[test]
fn the_habit_of_writing_is_for_what_is_written() {
    let preview = read(
        workbook("Prices", ROWS),
        &format!("numbers = \"1.234,50\"\n{PLAIN}"),
    )
    .unwrap();
    assert_eq!(preview.articles.len(), 1);
    assert_eq!(
        preview.articles[0].offers[0].cost.price.to_string(),
        "3.40 USD"
    );
}

#[test]
fn sheets_are_found_by_name() {
    let named = |name: &str| {
        read(
            workbook("Prices", ROWS),
            &format!("sheet = \"{name}\"\n{PLAIN}"),
        )
    };
    assert!(named("Prices").is_ok());
    assert_eq!(
        named("Old").unwrap_err().to_string(),
        "the workbook has no sheet \"Old\"; it has \"Prices\". Change `sheet` in the mapping"
    );
}

#[test]
fn what_is_no_workbook_is_refused() {
    let whole = workbook("Prices", ROWS);
    for cut in [0, 1, 30, whole.len().div_euclid(2), whole.len() - 1] {
        let told = read(whole[..cut].to_vec(), PLAIN).unwrap_err().to_string();
        assert!(
            told.starts_with("it can't be read as a workbook: "),
            "{told}"
        );
        assert!(!told.to_lowercase().contains("invalid"), "{told}");
    }
    let backwards =
        "<row r=\"2\"><c r=\"A2\"><v>1</v></c></row><row r=\"1\"><c r=\"A1\"><v>1</v></c></row>";
    let told = read(
        workbook("Prices", backwards),
        &format!("header = 0\n{PLAIN}")
            .replace("\"Code\"", "{ letter = \"A\" }")
            .replace("\"Price\"", "{ letter = \"B\" }"),
    )
    .unwrap_err();
    assert!(told.to_string().contains("not in order"), "{told}");
}
