//! The kinds of question, and how each is put to the program.

mod cutting_up;
mod mats;
mod moulding;
mod sheets;
mod walls;

use trade::Catalogue;

use super::compare::{Answers, Found};
use super::row::Row;

/// How a kind is answered: from a row's inputs to everything it gives, by name.
type Answer = fn(&Row, &Catalogue) -> Result<Answers, String>;

/// Every kind.
pub(super) const KINDS: [(&str, Answer); 13] = [
    ("mirror_cut", mats::mirror_cut),
    ("mirror_cut_row", mats::mirror_cut_row),
    ("bevel", mats::bevel),
    ("sloped_sides", moulding::sloped_sides),
    ("round_arch_window", mats::round_arch),
    ("low_arch_window", mats::low_arch),
    ("wire_tension", walls::wire_tension),
    ("nail_height", walls::nail_height),
    ("wall_row", walls::wall_row),
    ("acrylic_growth", sheets::acrylic_growth),
    ("glass_weight", sheets::glass_weight),
    ("four_legs_one_stick", moulding::four_legs),
    ("straight_cuts_from_sheet", cutting_up::straight_cuts),
];

/// Everything the row's kind gives.
///
/// Errors: inputs that are missing, can't be read or are not used, and what the program refuses.
pub(super) fn answer(row: &Row, catalogue: &Catalogue) -> Result<Answers, String> {
    let (_, answer) = KINDS
        .iter()
        .find(|(kind, _)| *kind == row.kind)
        .ok_or_else(|| format!("kind {} is not known", row.kind))?;
    let found = answer(row, catalogue)?;
    match row.unused().as_slice() {
        [] => Ok(found),
        unused => Err(format!(
            "kind {} does not use the input {}",
            row.kind,
            unused.join(", ")
        )),
    }
}

/// Answers by name.
fn named<const N: usize>(answers: [(&str, Found); N]) -> Answers {
    let each = answers.into_iter();
    each.map(|(name, found)| (name.to_owned(), found)).collect()
}
