//! Why a value is what it is: its line, the lines behind it, and so on down.

use crate::trace::{LineId, LineView, Working};
use crate::value::Origin;

/// One line of an explanation.
#[derive(Clone, Copy, Debug)]
pub struct Step<'a> {
    /// How many lines it lies below the one that was asked about.
    pub depth: usize,
    /// The line.
    pub line: LineView<'a>,
}

/// A value's line and every line behind it.
///
/// Shape:  depth first, inputs in the order they were recorded; each line once, where it is first met.
#[derive(Clone, Debug)]
pub struct Explanation<'a> {
    steps: Vec<Step<'a>>,
}

impl<'a> Explanation<'a> {
    /// The lines, the one that was asked about first.
    pub fn steps(&self) -> &[Step<'a>] {
        &self.steps
    }
}

impl Working {
    /// Why the line holds what it holds.
    ///
    /// Errors: an id of another working, past the end of this one, panics.
    pub fn explain(&self, id: LineId) -> Explanation<'_> {
        let mut told = vec![false; self.len()];
        let mut waiting = vec![(0, id)];
        let mut steps = Vec::new();
        while let Some((depth, id)) = waiting.pop() {
            let line = self.line(id);
            if std::mem::replace(&mut told[id.index()], true) {
                continue;
            }
            steps.push(Step { depth, line });
            waiting.extend(
                line.inputs
                    .iter()
                    .rev()
                    .filter_map(|input| match input.origin {
                        Origin::Line(earlier) => Some((depth + 1, earlier)),
                        Origin::Setting(_)
                        | Origin::Job
                        | Origin::Material
                        | Origin::Table(_)
                        | Origin::Search
                        | Origin::Prices => None,
                    }),
            );
        }
        Explanation { steps }
    }
}
