use std::io::{Cursor, Write as _};

use zip::write::SimpleFileOptions;

use super::{Cell, ListFault, number_of, refuse_what_swells, said};

fn check(number: f64, plain: &str) {
    assert_eq!(
        number_of(number),
        Cell::Number(plain.to_owned()),
        "{number}"
    );
}

/// What a spreadsheet shows of these: fifteen significant digits (ECMA-376 stores binary64).
#[test]
fn numbers_of_a_sheet_are_what_it_shows() {
    check(3.4, "3.4");
    check(1.1 * 3.0, "3.3");
    check(0.1 + 0.2, "0.3");
    check(1_234.5, "1234.5");
    check(4_410.0, "4410");
    check(0.0345, "0.0345");
    check(10.0, "10");
    check(-0.5, "-0.5");
    check(0.0, "0");
    check(10.0 / 3.0, "3.33333333333333");
    check(1e21, "1000000000000000000000");
    assert_eq!(
        number_of(1e300),
        Cell::Text("1.00000000000000e300".to_owned())
    );
}

#[test]
fn a_librarys_words_are_put_otherwise() {
    assert_eq!(
        said("invalid Zip archive: Invalid EOCD"),
        "unreadable Zip archive: Unreadable EOCD"
    );
}

#[test]
fn a_small_file_that_unpacks_to_a_large_one_is_refused() {
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    for part in ["xl/sharedStrings.xml", "xl/workbook.xml"] {
        zip.start_file(part, SimpleFileOptions::default()).unwrap();
        zip.write_all(&vec![b' '; 100_000]).unwrap();
    }
    let book = zip.finish().unwrap().into_inner();
    assert!(book.len() < 1_000, "{} bytes", book.len());
    let refused = |largest| refuse_what_swells(&mut Cursor::new(&book), largest);
    assert_eq!(refused(200_000), Ok(()));
    assert_eq!(refused(199_999), Err(ListFault::TooLarge));
}
