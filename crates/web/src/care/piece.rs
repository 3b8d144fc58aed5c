//! What is told of a piece: advice with its cures, weight and hanging, light and air where it hangs.

use conservation::advice::{Advice, Advised, Change};
use sizing::Sizes;

use super::trust::{source_of, status_of};
use crate::desk::Desk;
use crate::piece::Piece;

/// A change that would cure something, as it is asked for.
#[derive(Clone, Debug)]
pub struct Cure {
    /// Its number among all cures, from 1.
    pub number: usize,
    /// Its lasting name: the code of what it cures, and its number among the cures of that code.
    pub name: String,
    /// Which advice it belongs to, from 0.
    pub advice: usize,
    /// What it changes.
    pub change: Change,
    /// The code of what it cures.
    pub code: &'static str,
    /// The part it is about.
    pub part: String,
}

impl Cure {
    /// Whether what it cures is gone from this advice.
    pub fn is_gone(&self, after: &Advised) -> bool {
        let same =
            |advice: &Advice| advice.fault.code == self.code && advice.fault.part == self.part;
        !after.advice.iter().any(same)
    }
}

/// Every cure of every advice, numbered.
pub fn cures(advised: &Advised) -> Vec<Cure> {
    let mut cures: Vec<Cure> = Vec::new();
    for (index, advice) in advised.advice.iter().enumerate() {
        for change in &advice.changes {
            let code = advice.fault.code;
            let before = cures.iter().filter(|cure| cure.code == code).count();
            cures.push(Cure {
                number: cures.len() + 1,
                name: format!("{code}:{}", before + 1),
                advice: index,
                change: change.clone(),
                code,
                part: advice.fault.part.clone(),
            });
        }
    }
    cures
}

/// The cure of this number or name.
///
/// Errors: no such cure, in a sentence that names those there are.
pub fn cure_named(name: &str, advised: &Advised) -> Result<Cure, String> {
    let cures = cures(advised);
    let names: Vec<String> = cures.iter().map(|cure| cure.name.clone()).collect();
    let wanted = name.trim();
    let found = cures
        .into_iter()
        .find(|cure| cure.name == wanted || cure.number.to_string() == wanted);
    found.ok_or_else(|| {
        let wanted: String = wanted.chars().take(SHOWN).collect();
        if names.is_empty() {
            format!("There is no cure “{wanted}”, for no advice on this piece has one.")
        } else {
            format!(
                "There is no cure “{wanted}”; name one of: {}.",
                names.join(", ")
            )
        }
    })
}

/// How much of a name is shown again.
const SHOWN: usize = 40;

/// Whose rule an advice is, and how far its numbers can be trusted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Authority {
    /// Whose rule it is.
    pub source: String,
    /// The weakest status behind its numbers.
    pub status: String,
}

/// Whose rule an advice is, and how far its numbers can be trusted.
pub fn authority(advice: &Advice, advised: &Advised, sizes: &Sizes) -> Authority {
    let (working, lines) = match (advice.lines.as_slice(), advice.fault.line) {
        ([], Some(line)) => (&sizes.working, vec![line]),
        (lines, _) => (&advised.working, lines.to_vec()),
    };
    let source = if advice.source.is_empty() {
        source_of(working, &lines)
    } else {
        advice.source.clone()
    };
    Authority {
        source,
        status: status_of(working, &lines),
    }
}

/// All advice on a piece of the shop that is served, every cure tried.
pub(crate) fn advised_on(desk: &Desk, piece: &Piece) -> Advised {
    let shop = desk.options.habits.of(piece.job.units);
    hanging::advice::advice(&piece.job, &piece.sizes, &desk.options.catalogue, shop)
}
