//! What the cutting room refuses of a day's work.

use measure::Unit;

use super::{Batch, Work};
use crate::fault::Fault;
use crate::refusal::{About, Counted, Named, about};
use crate::ware::WareKind;

impl Batch {
    /// A fault of its problem in the shop's own lengths and money, with the job and the part.
    ///
    /// Units:  `unit`; exact. Areas to the whole square foot or square metre.
    pub fn fault(&self, fault: &cutting::Fault, unit: Unit) -> Fault {
        let counted = Counted {
            tick: self.tick,
            unit,
            basis: self.basis,
            sheets: matches!(self.work, Work::Sheets { .. }),
        };
        let job = match about(fault) {
            About::Piece(name) => self.part(name).map(|(job, _)| job.to_owned()),
            About::Stock(_) | About::Whole => None,
        };
        Fault::Cutting {
            job,
            ware: self.ware.to_string(),
            sentence: counted.sentence(fault, self),
        }
    }

    /// The job and the part behind a piece of the problem.
    fn part(&self, name: &str) -> Option<(&str, &str)> {
        let (job, part) = match &self.work {
            Work::Lengths { problem, parts } => {
                let at = problem.pieces.iter().position(|piece| piece.name == name)?;
                (parts[at].job, &parts[at].part)
            }
            Work::Sheets { problem, parts } => {
                let at = problem.pieces.iter().position(|piece| piece.name == name)?;
                (parts[at].job, &parts[at].part)
            }
        };
        Some((self.jobs.get(job)?, part))
    }
}

impl Named for Batch {
    fn piece(&self, name: &str) -> String {
        self.part(name)
            .map_or_else(|| name.to_owned(), |(job, part)| format!("{part} of {job}"))
    }

    fn stock(&self, name: &str) -> String {
        format!("{name} of {}", self.ware)
    }

    fn whole(&self) -> String {
        self.ware.to_string()
    }

    fn strip(&self, least: &str) -> String {
        let code = &self.ware.code;
        if self.ware.kind == WareKind::Glazing {
            format!(
                "a strip of {code} narrower than {least} does not break off cleanly: cut it from thinner glazing, or write a smaller least strip (settings glazing.least_strip and glazing.strip_thickness, or least_strip in the [[cut]] of {code} in the stock document)"
            )
        } else {
            format!(
                "a strip of {code} narrower than {least} does not come off cleanly: write a smaller least_strip in its [[cut]] in the stock document"
            )
        }
    }

    fn divide(&self) -> &'static str {
        "plan fewer jobs at once"
    }
}
