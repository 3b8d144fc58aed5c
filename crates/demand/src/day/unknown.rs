//! Stock whose code no material has: a slip that would leave it unused without a word.

use std::collections::BTreeSet;

use measure::{Unit, read_size};
use trade::Catalogue;
use trade::reading::nearest;

use super::Batch;
use crate::stock::Stock;

/// A sentence for each code of the stock document that neither the catalogue nor the day knows.
///
/// Shape:  strainer bars are called by their size, and need not be known.
pub(super) fn of(stock: &Stock, catalogue: &Catalogue, batches: &[Batch]) -> Vec<String> {
    let mut known: BTreeSet<&str> = catalogue.iter().map(|one| one.code.as_str()).collect();
    known.extend(batches.iter().map(|batch| batch.ware.code.as_str()));
    let sticks = stock.sticks.iter().map(|one| one.material.as_str());
    let sheets = stock.sheets.iter().map(|one| one.material.as_str());
    let remnants = stock.remnants.iter().map(|one| one.material.as_str());
    let cuts = stock.cuts.iter().map(|one| one.material.as_str());
    let written: BTreeSet<&str> = sticks.chain(sheets).chain(remnants).chain(cuts).collect();
    let unknown = written
        .into_iter()
        .filter(|code| !known.contains(code) && read_size(code, Unit::Inch).is_err());
    unknown
        .map(|code| {
            let cure = match nearest(code, known.iter().copied()) {
                Some(near) => format!("did you mean {near}?"),
                None => "write the code as the catalogue has it".to_owned(),
            };
            format!("what the stock document says of {code} is not used: no material has this code; {cure}")
        })
        .collect()
}
