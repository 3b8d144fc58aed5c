//! The bench checklist for exactly this piece, with its numbers and its minutes.

mod finishing;
mod making;

use measure::{Length, Size, Toward};
use trade::{Job, Key};

use crate::sizes::Sizes;

/// One step of the checklist.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// What to do, with this piece's numbers.
    pub text: String,
    /// Labour standard, where there is one.
    pub minutes: Option<i64>,
    /// The usual caution, shown with the step.
    pub caution: Option<&'static str>,
}

/// Minutes of all steps together.
pub fn minutes(steps: &[Step]) -> i64 {
    steps.iter().filter_map(|step| step.minutes).sum()
}

/// The checklist, in the order of the bench.
pub fn steps(job: &Job, sizes: &Sizes) -> Vec<Step> {
    let mut list = List {
        job,
        sizes,
        steps: Vec::new(),
    };
    list.check();
    list.frame();
    list.boards();
    list.glazing();
    list.mounting();
    list.closing();
    list.hanging();
    list.steps
}

/// A checklist being written.
struct List<'a> {
    job: &'a Job,
    sizes: &'a Sizes,
    steps: Vec<Step>,
}

impl List<'_> {
    fn step(&mut self, minutes: i64, text: impl Into<String>) {
        self.steps.push(Step {
            text: text.into(),
            minutes: (minutes > 0).then_some(minutes),
            caution: None,
        });
    }

    fn careful(&mut self, minutes: i64, text: impl Into<String>, caution: &'static str) {
        self.step(minutes, text);
        if let Some(last) = self.steps.last_mut() {
            last.caution = Some(caution);
        }
    }

    fn min(&self, key: Key) -> i64 {
        self.sizes.settings.count(key)
    }

    /// A length as the tape shows it, marked where it is rounded.
    fn tape(&self, length: Length) -> String {
        on_tape(self.sizes, length, Toward::Nearest)
    }

    fn size(&self, size: Size) -> String {
        format!("{} × {}", self.tape(size.width), self.tape(size.height))
    }
}

/// A length for the shop's tape; a rounded one carries its exact value.
pub(crate) fn on_tape(sizes: &Sizes, length: Length, toward: Toward) -> String {
    let printed = length.on_tape(sizes.tape(), toward);
    if printed.rounding == measure::Rounding::Exact {
        printed.text
    } else {
        format!("{} (exactly {})", printed.text, length.exact(sizes.unit()))
    }
}
