//! Lists of invented suppliers, read against invented catalogues.

mod hostile;
mod lists;
mod numbers;
mod properties;
mod taking_back;
mod workbook;

use trade::Date;

use super::{Mapping, Preview, Shelf};

const MILLRACE: &str = include_str!("../../../../demo/lists/millrace.csv");
const MILLRACE_MAPPING: &str = include_str!("../../../../demo/lists/millrace.mapping.toml");
const LINDENAU: &[u8] = include_bytes!("../../../../demo/lists/lindenau.csv");
const LINDENAU_MAPPING: &str = include_str!("../../../../demo/lists/lindenau.mapping.toml");
const COSTS: &str = include_str!("../../../../demo/costs.toml");

/// The smallest mapping: code, price by the foot.
const PLAIN: &str = "mapping = 1\nsupplier = \"Acorn\"\nkind = \"moulding\"\nprefix = \"a-\"\n\
    currency = \"USD\"\n[columns]\ncode = \"Code\"\n[[price]]\ncolumn = \"Price\"\nper = \"foot\"\n";

fn day(text: &str) -> Date {
    Date::read(text).unwrap()
}

fn mapping(text: &str) -> Mapping {
    Mapping::read(text).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn shelf(text: &str) -> Shelf<'_> {
    Shelf::read(text).unwrap_or_else(|fault| panic!("{fault}"))
}

fn preview(list: impl AsRef<[u8]>, layout: &str, catalogue: &str) -> Preview {
    let on = day("2026-11-25");
    Preview::of_csv(list.as_ref(), &mapping(layout), &shelf(catalogue), on)
        .unwrap_or_else(|fault| panic!("{fault}"))
}

/// Every refusal, a line each.
fn refusals(preview: &Preview) -> Vec<String> {
    preview.rejected.iter().map(ToString::to_string).collect()
}

/// New, changed, same, gone by their own word, rejected and left out are all the rows there are.
fn check_sum(preview: &Preview) {
    let told = preview
        .gone
        .iter()
        .filter(|gone| gone.row.is_some())
        .count();
    let articles = u32::try_from(preview.articles.len() + told).unwrap();
    let counted = articles + preview.same + preview.rejected_rows + preview.left_out;
    assert_eq!(counted, preview.rows, "{preview:#?}");
}
