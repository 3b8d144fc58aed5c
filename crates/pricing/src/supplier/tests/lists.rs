use trade::{Catalogue, Material, Supply};

use super::*;
use crate::supplier::News;

/// A catalogue file over the starter, as the program opens it.
fn opened(text: &str) -> Catalogue {
    #[derive(serde::Deserialize)]
    struct File {
        material: Vec<Material>,
    }
    let file: File = toml::from_str(text).unwrap();
    Catalogue::starter().with(&file.material).unwrap()
}

#[test]
fn a_list_of_mouldings_is_read_row_by_row() {
    let preview = preview(MILLRACE, MILLRACE_MAPPING, COSTS);
    check_sum(&preview);
    assert_eq!((preview.rows, preview.left_out, preview.same), (10, 2, 0));
    let codes: Vec<&str> = preview
        .articles
        .iter()
        .map(|article| article.code.as_str())
        .collect();
    assert_eq!(
        codes,
        [
            "millrace-M-1001",
            "oak-wide",
            "millrace-M-1003",
            "millrace-M-2010",
            "millrace-M-2011"
        ]
    );
    let oak = &preview.articles[1];
    assert_eq!(oak.news, News::Changed { returns: false });
    assert_eq!(oak.offers.len(), 1, "the chop's price stays: {oak:?}");
    assert_eq!(
        oak.offers[0].before.as_ref().unwrap().price.to_string(),
        "3.20 USD"
    );
    assert_eq!(oak.offers[0].cost.price.to_string(), "3.40 USD");
    // 0.20 / 3.20 = 6.25 %, halves away from zero.
    assert_eq!(oak.offers[0].tenths_of_percent(), Some(63));
    let gone: Vec<&str> = preview.gone.iter().map(|gone| gone.code.as_str()).collect();
    assert_eq!(gone, ["old-ash"]);
    assert_eq!(
        refusals(&preview),
        [
            "row 11, Length $/ft \"call\": this is no amount; write one as 1,234.50, or leave the row out with `skip = [11]`",
            "row 12, Length $/ft \"10.2O\": this is no amount; write one as 1,234.50, or leave the row out with `skip = [12]`",
            "row 13, Item \"M-1002\": the same code stands in row 6; keep one of them, or leave this out with `skip = [13]`",
        ]
    );
}

#[test]
fn applied_it_reads_as_the_list_says_and_keeps_what_was() {
    let preview = preview(MILLRACE, MILLRACE_MAPPING, COSTS);
    let catalogue = opened(&preview.apply(&shelf(COSTS)).unwrap().text);
    let cost = |code: &str, on: &str, supply: Supply| {
        let material = catalogue.find(code).unwrap();
        material
            .cost_on(day(on), supply)
            .map(|cost| cost.price.to_string())
    };
    let oak = |on: &str| cost("oak-wide", on, Supply::Length).unwrap_or_default();
    assert_eq!(oak("2025-01-31"), "");
    assert_eq!(oak("2025-02-01"), "3.05 USD");
    assert_eq!(oak("2026-11-24"), "3.20 USD");
    assert_eq!(oak("2026-11-25"), "3.40 USD");
    let on = "2026-12-01";
    assert_eq!(cost("oak-wide", on, Supply::Chop).unwrap(), "4.95 USD");
    assert_eq!(
        cost("millrace-M-2010", on, Supply::Chop).unwrap(),
        "9.75 USD"
    );
    let gilt = catalogue.find("millrace-M-2010").unwrap();
    assert_eq!(gilt.name.as_deref(), Some("Cove, \"old gilt\", 2 in"));
    assert_eq!(
        gilt.profile
            .as_ref()
            .unwrap()
            .face
            .exact(measure::Unit::Inch),
        "2 in"
    );
    let boxed = gilt
        .costs_on(day(on))
        .find(|cost| cost.per == trade::Per::Box)
        .unwrap();
    assert_eq!(
        (boxed.price.to_string().as_str(), boxed.pack),
        ("1224.00 USD", Some(10))
    );
    assert!(
        catalogue
            .find("old-ash")
            .unwrap()
            .is_discontinued(day("2026-11-25"))
    );
    assert!(
        !catalogue
            .find("old-ash")
            .unwrap()
            .is_discontinued(day("2026-11-24"))
    );
}

#[test]
fn every_line_of_the_catalogue_stays() {
    let applied = preview(MILLRACE, MILLRACE_MAPPING, COSTS)
        .apply(&shelf(COSTS))
        .unwrap();
    for line in COSTS.lines() {
        assert!(applied.text.contains(line), "{line} stays");
    }
}

#[test]
fn applied_twice_nothing_is_left_to_change() {
    let first = preview(MILLRACE, MILLRACE_MAPPING, COSTS)
        .apply(&shelf(COSTS))
        .unwrap();
    let again = preview(MILLRACE, MILLRACE_MAPPING, &first.text);
    check_sum(&again);
    assert!(again.is_idle(), "{:?}", again.articles);
    assert_eq!(again.same, 5);
    assert_eq!(again.apply(&shelf(&first.text)).unwrap().text, first.text);
}

#[test]
fn a_list_in_windows_text_with_decimal_commas_is_read() {
    let preview = preview(LINDENAU, LINDENAU_MAPPING, "");
    check_sum(&preview);
    let told: Vec<(&str, String)> = preview
        .articles
        .iter()
        .map(|article| {
            (
                article.name.as_deref().unwrap(),
                article.offers[0].cost.price.to_string(),
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            ("Museumskarton weiß, 4-lagig", "18.90 EUR".to_owned()),
            ("Museumskarton elfenbein, 4-lagig", "18.90 EUR".to_owned()),
            ("Kartonrücken, schwer", "1002.50 EUR".to_owned()),
        ]
    );
    assert_eq!(preview.left_out, 1, "one that is gone and was never known");
    assert_eq!(
        refusals(&preview),
        [
            "row 5, Einheit \"Bg.\": this word is not explained; add \"Bg.\" = \"...\" under [words.per] in the mapping",
            "row 6, Preis \"6.40\": points and commas stand otherwise than in 1.234,50; mend the cell, or change `numbers` in the mapping",
            "row 8, Preis \"$ 5,10\": the sign $ is not that of EUR; change `currency` in the mapping, or mend the cell",
        ]
    );
    let applied = preview.apply(&shelf("")).unwrap();
    let board = opened(&applied.text);
    let board = board.find("lindenau-4711").unwrap();
    assert_eq!(
        board
            .thickness
            .as_ref()
            .unwrap()
            .is()
            .exact(measure::Unit::Millimetre),
        "1.4 mm"
    );
    assert_eq!(
        board.sheets[0].width.exact(measure::Unit::Millimetre),
        "815 mm"
    );
}

#[test]
fn what_comes_back_is_no_longer_discontinued() {
    let catalogue = "[[material]]\ncode = \"x\"\nkind = \"moulding\"\nsupplier = \"Acorn\"\n\
        supplier_code = \"1\"\ndiscontinued = \"2026-01-01\"  # spring";
    let preview = preview("Code,Price\n1,2.50\n", PLAIN, catalogue);
    assert_eq!(preview.articles[0].news, News::Changed { returns: true });
    let applied = preview.apply(&shelf(catalogue)).unwrap();
    assert_eq!(opened(&applied.text).find("x").unwrap().discontinued, None);
    assert_eq!(applied.undo.take_back(&applied.text).unwrap(), catalogue);
}

#[test]
fn costs_of_a_material_that_is_like_another_keep_their_history() {
    let catalogue = "[[material]]\ncode = \"y\"\nlike = \"x\"\nsupplier_code = \"2\"\n\n[[material]]\n\
        code = \"x\"\nkind = \"moulding\"\nsupplier = \"Acorn\"\nsupplier_code = \"1\"\n\
        [[material.cost]]\nprice = \"2.00 USD\"\nper = \"foot\"\nsince = \"2026-01-01\"\n";
    let preview = preview("Code,Price\n1,2.00\n2,3.00\n", PLAIN, catalogue);
    assert_eq!(preview.same, 1);
    let applied = preview.apply(&shelf(catalogue)).unwrap();
    let catalogue = opened(&applied.text);
    let y = catalogue.find("y").unwrap();
    let on = |on| {
        y.cost_on(day(on), Supply::Length)
            .unwrap()
            .price
            .to_string()
    };
    assert_eq!(
        (on("2026-02-01"), on("2026-12-01")),
        ("2.00 USD".to_owned(), "3.00 USD".to_owned())
    );
}

#[test]
fn a_part_of_a_range_and_other_kinds_leave_the_rest_as_it_is() {
    let catalogue = "[[material]]\ncode = \"w\"\nkind = \"hardware\"\nsupplier = \"Acorn\"\nsupplier_code = \"9\"\n\
        [[material]]\ncode = \"m\"\nkind = \"moulding\"\nsupplier = \"Acorn\"\nsupplier_code = \"8\"\n";
    let list = "Code,Price\n1,2.00\n";
    let whole = preview(list, PLAIN, catalogue);
    let gone: Vec<&str> = whole.gone.iter().map(|gone| gone.code.as_str()).collect();
    assert_eq!(gone, ["m"], "hardware is on another list");
    let part = preview(list, &format!("missing = \"keep\"\n{PLAIN}"), catalogue);
    assert!(part.gone.is_empty());
    let refused = preview("Code,Price\n8,call\n1,2.00\n", PLAIN, catalogue);
    assert!(
        refused.gone.is_empty(),
        "a refused row still names what it names"
    );
}

#[test]
fn facts_that_differ_are_told_and_stay() {
    let layout = PLAIN.replace(
        "[[price]]",
        "face = \"Face\"\nheight = \"Height\"\n[[price]]",
    );
    let catalogue = "[[material]]\ncode = \"m\"\nkind = \"moulding\"\nsupplier = \"Acorn\"\n\
        supplier_code = \"8\"\nprofile = { face = \"1 in\", height = \"1 in\" }\n";
    let preview = preview(
        "Code,Price,Face,Height\n8,2.00,1 1/4,1\n",
        &layout,
        catalogue,
    );
    let told: Vec<String> = preview.differing.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        ["row 2, m: face is 31.75 mm in the list and 25.4 mm in the catalogue, which stays"]
    );
    assert!(
        preview
            .apply(&shelf(catalogue))
            .unwrap()
            .text
            .contains("face = \"1 in\"")
    );
}
