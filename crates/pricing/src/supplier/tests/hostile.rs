use super::*;
use crate::supplier::{ListFault, MappingFault};

fn refused(list: &[u8], layout: &str) -> String {
    let result = Preview::of_csv(list, &mapping(layout), &shelf(""), day("2026-11-25"));
    result.expect_err("it is refused").to_string()
}

/// One cell that is wrong, and the sentence it gets.
fn check(price: &str, wanted: &str) {
    let preview = preview(format!("Code,Price\n1,{price}\n"), PLAIN, "");
    assert_eq!(refusals(&preview), [wanted], "{price}");
    assert!(preview.articles.is_empty());
}

#[test]
fn every_wrong_price_is_told_with_what_to_do() {
    let skip = "leave the row out with `skip = [2]`";
    check(
        "",
        "row 2, Price: there is no price; write one, or say `optional = true` under this [[price]]",
    );
    check(
        "POA",
        &format!("row 2, Price \"POA\": this is no amount; write one as 1,234.50, or {skip}"),
    );
    check(
        "0.00",
        &format!("row 2, Price \"0.00\": the price is nothing; ask the supplier, or {skip}"),
    );
    check(
        "-3.00",
        "row 2, Price \"-3.00\": the price is below zero; ask the supplier what is meant",
    );
    check(
        "3.1234567",
        "row 2, Price \"3.1234567\": it has more than six decimals; say `round = 4` in the mapping to round half up to four",
    );
    check(
        "\"1.234,50\"",
        "row 2, Price \"1.234,50\": points and commas stand otherwise than in 1,234.50; mend the cell, or change `numbers` in the mapping",
    );
    check(
        "€3.40",
        "row 2, Price \"€3.40\": the sign € is not that of USD; change `currency` in the mapping, or mend the cell",
    );
    check(
        "99999999999",
        "row 2, Price \"99999999999\": it is more than a thousand million; is it the right column?",
    );
    check(
        "99999999999999999999999999",
        "row 2, Price \"99999999999999999999999999\": it is more than a thousand million; is it the right column?",
    );
}

#[test]
fn every_fault_of_a_row_is_told_at_once() {
    let layout = PLAIN.replace(
        "[[price]]",
        "face = \"Face\"\nheight = \"Height\"\ncolour = \"Tint\"\n[[price]]",
    );
    let preview = preview(
        "Code,Price,Face,Height,Tint\n1,call,16 7/,,brown\n,2.00,0,1,\n",
        &layout,
        "",
    );
    let refusals = refusals(&preview);
    assert_eq!(preview.rejected_rows, 2);
    for (told, part) in refusals.iter().zip([
        "row 2, Tint \"brown\": this is no colour",
        "row 2, Face \"16 7/\": the fraction has no bottom number; type",
        "row 2, Price \"call\": this is no amount",
        "row 3, Code: nothing stands here",
        "row 3, Face \"0\": a dimension is more than nothing",
    ]) {
        assert!(told.starts_with(part), "{told}\nis not {part}");
    }
    assert_eq!(refusals.len(), 5, "{refusals:#?}");
}

#[test]
fn rows_are_numbered_as_a_spreadsheet_shows_them() {
    let list = "Code,Price\n\n1,2.00\n\"2\na\",3.00\n\n3,call\n";
    let preview = preview(list, PLAIN, "");
    let rows: Vec<u32> = preview
        .rejected
        .iter()
        .map(|rejected| rejected.row)
        .collect();
    // Row 4 holds a line break within its quotes; row 5 is blank.
    assert_eq!(rows, [4, 6], "{:?}", refusals(&preview));
}

#[test]
fn text_that_is_not_utf_8_is_refused_row_by_row() {
    let layout = PLAIN.replace("[[price]]", "name = \"Name\"\n[[price]]");
    let list = b"Code,Price,Name\n1,2.00,Ch\xeane\n2,2.00,Oak\n";
    let preview = preview(list, &layout, "");
    assert_eq!(
        refusals(&preview),
        [
            "row 2, Name: this is not UTF-8 text; say `encoding = \"windows-1252\"` in the mapping, or save the list as UTF-8"
        ]
    );
    assert_eq!(preview.articles.len(), 1);
    let layout = format!("encoding = \"latin-1\"\n{layout}");
    assert_eq!(
        super::preview(list, &layout, "").articles[0]
            .name
            .as_deref(),
        Some("Chêne")
    );
}

#[test]
fn a_mark_of_the_encoding_before_the_first_heading_is_no_part_of_it() {
    for layout in [
        PLAIN.to_owned(),
        format!("encoding = \"windows-1252\"\n{PLAIN}"),
    ] {
        let preview = preview("\u{feff}Code,Price\n1,2.00\n", &layout, "");
        assert_eq!(preview.articles.len(), 1);
    }
    assert_eq!(
        refused(b"\xff\xfeC\0o\0", PLAIN),
        ListFault::Utf16.to_string()
    );
}

#[test]
fn lists_that_are_none_are_refused() {
    let start = |list: &[u8]| refused(list, PLAIN).chars().take(60).collect::<String>();
    assert_eq!(
        start(b""),
        "it ends before row 1, where the mapping has the headings; ch"
    );
    assert_eq!(
        start(b"Code,Price\n"),
        "there are no rows below the headings in row 1; is it the rig"
    );
    assert_eq!(
        start(b"Code;Price\n1;2\n"),
        "row 1 has no heading \"Code\"; it has \"Code;Price\". Change the"
    );
    assert_eq!(
        start(b"Code,Price,code\n1,2,3\n"),
        "row 1 has the heading \"Code\" twice, in A and C; name the col"
    );
    assert_eq!(
        start(b"\n\nCode,Price\n1,2\n"),
        "it ends before row 1, where the mapping has the headings; ch"
    );
}

#[test]
fn a_quote_left_open_does_not_swallow_the_list() {
    let mut list = b"Code,Price\n1,2.00\n2,\"3.00\n".to_vec();
    list.resize(8_000_000, b'x');
    let told = refused(&list, PLAIN);
    assert!(
        told.starts_with("after row 2 more than a million bytes follow without"),
        "{told}"
    );
}

#[test]
fn bytes_that_are_anything_are_read_or_refused() {
    let mut state = 1_u32;
    for length in 0..400 {
        let noise: Vec<u8> = (0..length)
            .map(|_| {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                state.to_be_bytes()[0]
            })
            .collect();
        let list = [b"Code,Price\n".as_slice(), &noise].concat();
        if let Ok(preview) = Preview::of_csv(
            list.as_slice(),
            &mapping(PLAIN),
            &shelf(""),
            day("2026-11-25"),
        ) {
            check_sum(&preview);
            let applied = preview.apply(&shelf("")).unwrap();
            assert_eq!(applied.undo.take_back(&applied.text).unwrap(), "");
        }
    }
}

#[test]
fn codes_never_take_the_place_of_something_else() {
    let catalogue = "[[material]]\ncode = \"a-1\"\nkind = \"board\"\n";
    let told = refusals(&preview("Code,Price\n1,2.00\n", PLAIN, catalogue));
    assert!(
        told[0].contains("the catalogue's a-1 is something else"),
        "{told:?}"
    );
    let bare = PLAIN.replace("prefix = \"a-\"\n", "");
    let told = refusals(&preview("Code,Price\noak-square-1,2.00\n", &bare, ""));
    assert!(
        told[0].contains("the catalogue's oak-square-1 is something else"),
        "{told:?}"
    );
    let twice = "[[material]]\ncode = \"x\"\nsupplier = \"Acorn\"\nsupplier_code = \"1\"\n\
        [[material]]\ncode = \"y\"\nsupplier = \"Acorn\"\nsupplier_code = \"1\"\n";
    let told = refusals(&preview("Code,Price\n1,2.00\n", PLAIN, twice));
    assert!(told[0].contains("twice, as x and y"), "{told:?}");
}

#[test]
fn everything_a_mapping_lacks_is_told_together() {
    let faults = |text: &str| Mapping::read(text).expect_err("it is refused");
    let all = faults(
        "mapping = 1\nsupplier = \" \"\ncurrency = \"USD\"\nround = 9\n[columns]\nface = \"F\"\n[fixed]\ncode = \"1\"\n",
    );
    let all: Vec<String> = all.iter().map(ToString::to_string).collect();
    for part in [
        "`supplier` is blank",
        "no column holds the supplier's code",
        "no column holds a price",
        "what the list holds",
        "`round = 9`",
        "`face` needs `height`",
        "`code` differs from row to row",
    ] {
        assert!(
            all.iter().any(|told| told.contains(part)),
            "{part}: {all:#?}"
        );
    }
    assert_eq!(all.len(), 7);
    let form = |text: &str| match faults(text).as_slice() {
        [MappingFault::Form { sentence, place }] => format!("{:?}: {sentence}", place.line),
        other => panic!("{other:?}"),
    };
    assert!(
        form(&PLAIN.replace("USD", "DOLLARS")).starts_with("Some(5): `DOLLARS` is no currency")
    );
    assert!(
        form(&PLAIN.replace("\"Code\"", "{ letter = \"7\" }"))
            .contains("`7` is no column's letter")
    );
    assert!(form(&PLAIN.replace("per =", "par =")).contains("there is no field `par`"));
    assert!(form(&format!("delimiter = \"ab\"\n{PLAIN}")).contains("does not part cells"));
    assert!(form(&format!("numbers = \"1;5\"\n{PLAIN}")).contains("there is no choice"));
    let newer = PLAIN.replace("mapping = 1", "mapping = 2");
    assert!(faults(&newer)[0].to_string().contains("`mapping = 2`"));
    let lettered = format!("header = 0\n{PLAIN}");
    assert_eq!(faults(&lettered).len(), 2);
}

#[test]
fn columns_are_found_by_letter_where_there_are_no_headings() {
    let layout = format!("header = 0\n{PLAIN}")
        .replace("\"Code\"", "{ letter = \"B\" }")
        .replace("\"Price\"", "{ letter = \"A\" }");
    let preview = preview("2.00,1\ncall,2\n", &layout, "");
    assert_eq!(preview.articles[0].supplier_code, "1");
    assert!(
        refusals(&preview)[0].starts_with("row 2, column A \"call\""),
        "{:?}",
        refusals(&preview)
    );
}

#[test]
fn units_go_with_what_is_sold() {
    let sheets = PLAIN.replace("\"foot\"", "\"sheet\"");
    let told = refusals(&preview("Code,Price\n1,2.00\n", &sheets, ""));
    assert!(
        told[0].contains("a moulding is not priced by sheet"),
        "{told:?}"
    );
    let boxes = PLAIN.replace("\"foot\"", "\"box\"");
    let told = refusals(&preview("Code,Price\n1,2.00\n", &boxes, ""));
    assert!(told[0].contains("needs the number in it"), "{told:?}");
}
