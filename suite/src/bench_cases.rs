//! Bench cases: single questions of the bench, one a row, each answered by the program itself.
//!
//! A table has the columns `id`, `kind`, `inputs` and `outputs`, and may have `note`. Inputs and
//! outputs are written `name=value; name=value`; a value is a number as people write it, a list
//! `a|b|c` or a size `WxH`, bare numbers in inches. Every input must be used and every output
//! named must be found; what the kind does not know fails the row.
//!
//! Where a question is one of sizing, a job that asks it is derived and the answer read from its
//! sizes; nothing is worked out here that a room of the program works out.

mod arch;
mod compare;
mod kinds;
mod piece;
mod row;

use trade::Catalogue;

pub use row::{Row, Table, TableFault};

/// What came of one row.
#[derive(Clone, Debug)]
pub struct Verdict {
    /// The row's id.
    pub id: String,
    /// The row's kind.
    pub kind: String,
    /// How many outputs were compared.
    pub compared: usize,
    /// A sentence for each output that differs, or why the row could not be judged.
    pub differences: Vec<String>,
}

/// Every kind of row.
pub fn kinds() -> impl Iterator<Item = &'static str> {
    kinds::KINDS.iter().map(|(kind, _)| *kind)
}

/// Answers one row and compares it.
pub fn judge(row: &Row, catalogue: &Catalogue) -> Verdict {
    let (compared, differences) = match kinds::answer(row, catalogue) {
        Ok(found) => compare::compare(row, &found),
        Err(why) => (0, vec![why]),
    };
    Verdict {
        id: row.id.clone(),
        kind: row.kind.clone(),
        compared,
        differences,
    }
}

#[cfg(test)]
mod tests;
