//! Equal pieces from one sheet.

use cutting::straight_yield;
use measure::{Length, Unit, read_length};
use trade::Catalogue;

use super::super::compare::{Answers, Found};
use super::super::row::Row;
use super::named;

/// Pieces by straight cuts: unturned, turned, and the best of two stages.
///
/// The counts along one side are named by the lengths they come from: `across_32_by_11`.
pub(super) fn straight_cuts(row: &Row, _: &Catalogue) -> Result<Answers, String> {
    let (sheet, piece) = (row.size("sheet")?, row.size("piece")?);
    let (kerf, trim) = (row.length("kerf")?, row.length("trim")?);
    if !piece.short_side().is_positive() {
        return Err("piece: a piece has two sides above zero".to_owned());
    }
    let found = straight_yield(
        (quanta(sheet.width)?, quanta(sheet.height)?),
        (quanta(piece.width)?, quanta(piece.height)?),
        quanta(kerf)?,
        quanta(trim)?,
    );
    let mut answers = named([
        ("yield_unturned", Found::Count(found.unturned)),
        ("turned_yield", Found::Count(found.turned)),
        ("best_two_stage", Found::Count(found.best_two_stage)),
    ]);
    let counts = [
        ("across_", sheet.width, piece.width, found.across),
        ("along_", sheet.height, piece.height, found.along),
        (
            "turned_across_",
            sheet.width,
            piece.height,
            found.turned_across,
        ),
        (
            "turned_along_",
            sheet.height,
            piece.width,
            found.turned_along,
        ),
    ];
    for (name, _) in row.outputs() {
        for (prefix, whole, part, count) in counts {
            if names(name, prefix, whole, part) {
                answers.insert(name.to_owned(), Found::Count(u128::from(count)));
            }
        }
    }
    Ok(answers)
}

/// Whether a name is the prefix and both lengths: `across_32_by_11`, `along_40_by_8_1/2`.
fn names(name: &str, prefix: &str, whole: Length, part: Length) -> bool {
    let reads = |text: &str, length| {
        read_length(&text.replace('_', " "), Unit::Inch).is_ok_and(|read| read == length)
    };
    name.strip_prefix(prefix)
        .and_then(|lengths| lengths.split_once("_by_"))
        .is_some_and(|(first, second)| reads(first, whole) && reads(second, part))
}

fn quanta(length: Length) -> Result<u64, String> {
    u64::try_from(length.quanta()).map_err(|_| format!("{} is below zero", length.exact_inches()))
}
