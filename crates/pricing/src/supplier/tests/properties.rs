use proptest::prelude::*;

use super::*;

/// A line of a list, and whether the catalogue had it, at which price in cents.
fn line() -> impl Strategy<Value = (u32, Option<u32>, String)> {
    (
        1..500_000_u32,
        prop::option::of(1..500_000_u32),
        "[ -~äß€]{0,30}",
    )
}

fn price(cents: u32) -> String {
    format!("{}.{:02}", cents.div_euclid(100), cents.rem_euclid(100))
}

fn catalogue_of(lines: &[(u32, Option<u32>, String)]) -> String {
    let mut text = String::from("# Ours.\n");
    for (place, (_, before, _)) in lines.iter().enumerate() {
        if let Some(before) = before {
            let price = price(*before);
            let table = format!(
                "\n# Number {place}.\n[[material]]\nsupplier = \"Acorn\"\ncode = \"own-{place}\" # ours\n\
                 supplier_code = \"{place}\"\nkind = \"moulding\"\n[[material.cost]]\nprice = \"{price} USD\"\n\
                 per = \"foot\"\nsince = \"2026-01-01\"\n"
            );
            text.push_str(&table);
        }
    }
    text
}

fn list_of(lines: &[(u32, Option<u32>, String)]) -> Vec<u8> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(["Code", "Price", "Name"]).unwrap();
    for (place, (now, _, name)) in lines.iter().enumerate() {
        writer
            .write_record([&place.to_string(), &price(*now), name])
            .unwrap();
    }
    writer.into_inner().unwrap()
}

proptest! {
    /// Whatever the names and prices: counts add up, the applied text reads as the list says, a
    /// second import finds nothing to do, and undo gives back every byte.
    #[test]
    fn an_import_is_whole_and_can_be_taken_back(lines in prop::collection::vec(line(), 1..20)) {
        let layout = PLAIN.replace("[[price]]", "name = \"Name\"\n[[price]]");
        let (catalogue, list) = (catalogue_of(&lines), list_of(&lines));
        let first = preview(&list, &layout, &catalogue);
        check_sum(&first);
        prop_assert!(first.rejected.is_empty(), "{:?}", first.rejected);
        let new = lines.iter().filter(|(_, before, _)| before.is_none()).count();
        let same = lines.iter().filter(|(now, before, _)| *before == Some(*now)).count();
        prop_assert_eq!(first.new_articles(), new);
        prop_assert_eq!(usize::try_from(first.same).unwrap(), same);
        prop_assert!(first.gone.is_empty());
        let applied = first.apply(&shelf(&catalogue)).unwrap();
        for article in &first.articles {
            let place: usize = article.supplier_code.parse().unwrap();
            let words = lines[place].2.split_whitespace().collect::<Vec<_>>().join(" ");
            if lines[place].1.is_none() {
                prop_assert_eq!(article.name.clone().unwrap_or_default(), words);
            }
        }
        let second = preview(&list, &layout, &applied.text);
        prop_assert!(second.is_idle());
        prop_assert_eq!(applied.undo.take_back(&applied.text).unwrap(), catalogue);
    }
}
