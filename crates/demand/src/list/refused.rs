//! What the cutting room refuses of a cut list.

use measure::Unit;

use super::ListBatch;
use super::fault::{ListFault, ListReason};
use crate::refusal::{About, Counted, Named, about};

impl ListBatch {
    /// A fault of its problem in the list's own lengths and money, with the line of its entry.
    ///
    /// Units:  `unit`; exact. Areas to the whole square foot or square metre.
    pub fn fault(&self, fault: &cutting::Fault, unit: Unit) -> ListFault {
        let counted = Counted {
            tick: self.tick,
            unit,
            basis: self.basis,
            sheets: matches!(self.problem, cutting::Problem::Sheets(_)),
        };
        let line = match about(fault) {
            About::Piece(name) => self.pieces.iter().find(|p| p.name == name).map(|p| p.line),
            About::Stock(name) => self.stock.iter().find(|s| s.name == name).map(|s| s.line),
            About::Whole => None,
        };
        let reason = match fault {
            cutting::Fault::TooLongTogether {
                group,
                length,
                room,
            } => ListReason::TooLongTogether {
                group: group.clone(),
                material: self.material.clone(),
                length: counted.length(*length),
                room: counted.length(*room),
            },
            fault => ListReason::Refused {
                why: counted.sentence(fault, self),
            },
        };
        ListFault {
            line,
            column: None,
            reason: Box::new(reason),
        }
    }

    fn of(&self, name: &str) -> String {
        match &self.material {
            Some(material) => format!("{name} of {material}"),
            None => name.to_owned(),
        }
    }
}

impl Named for ListBatch {
    fn piece(&self, name: &str) -> String {
        self.of(name)
    }

    fn stock(&self, name: &str) -> String {
        self.of(name)
    }

    fn whole(&self) -> String {
        self.material
            .clone()
            .unwrap_or_else(|| "the list".to_owned())
    }

    fn strip(&self, least: &str) -> String {
        format!(
            "a strip narrower than {least} does not come off: write a smaller least_strip, or make the piece wider"
        )
    }

    fn divide(&self) -> &'static str {
        "divide the list"
    }
}
