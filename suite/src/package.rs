//! Package cases: a table of inputs and expected sizes, one piece a row.
//!
//! A row is turned into a job document with every number it names and no other; the job is derived
//! like any other; each expected column that is not blank is compared. An input column that is
//! filled and not used fails the row, and so does a column nobody knows.

mod build;
mod columns;
mod compare;
mod outputs;
mod row;

use sizing::derive;
use trade::{Catalogue, Settings, Units};

pub use columns::{INPUTS, OUTPUTS};
pub use compare::Difference;
pub use row::{Row, Table, TableFault};

/// What came of one row.
#[derive(Clone, Debug)]
pub struct Verdict {
    /// The row's id.
    pub id: String,
    /// The row's kind.
    pub kind: String,
    /// How many expected columns were compared.
    pub compared: usize,
    /// Columns that differ, or why the row could not be sized.
    pub differences: Vec<Difference>,
}

/// Sizes one row and compares it.
pub fn judge(row: &Row, catalogue: &Catalogue) -> Verdict {
    let mut verdict = Verdict {
        id: row.id().to_owned(),
        kind: row.kind().to_owned(),
        compared: 0,
        differences: Vec::new(),
    };
    let job = match build::job(row) {
        Ok(job) => job,
        Err(why) => {
            verdict
                .differences
                .extend(why.into_iter().map(Difference::row));
            return verdict;
        }
    };
    match derive(&job, catalogue, &Settings::defaults(Units::Inches)) {
        Ok(sizes) => {
            let found = outputs::read_out(row, &job, &sizes);
            let (compared, differences) = compare::compare(row, &found);
            verdict.compared = compared;
            verdict.differences = differences;
        }
        Err(faults) => {
            verdict
                .differences
                .extend(faults.iter().map(|fault| Difference::row(fault.sentence())));
        }
    }
    verdict
}
