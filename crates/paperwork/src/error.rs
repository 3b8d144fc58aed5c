//! Why a sheet could not be made, in sentences.

use thiserror::Error;

use crate::typeset::Stamp;

/// What stopped a sheet from being made.
///
/// Shape:  one variant a cause; the sentence says what to do about it.
/// Errors: this is the error; all but the last two can be cured by the caller, those
///         mean a fault in this crate.
#[derive(Debug, Error)]
pub enum PaperworkError {
    /// A drawing came without the words that stand for it.
    #[error("The {drawing} has no words beside it: give it a text that says what it shows.")]
    NoWords {
        /// Which drawing.
        drawing: &'static str,
    },
    /// A drawing is not an SVG the typesetter can read.
    #[error("The {drawing} could not be read as SVG: {why}. Draw it again, then print.")]
    Drawing {
        /// Which drawing.
        drawing: &'static str,
        /// What the reader said.
        why: String,
    },
    /// The time given is not on the calendar.
    #[error("{0} is not a time on the calendar: give a real date and a time of day.")]
    NotATime(Stamp),
    /// The sheet has no order number, so its pages could not be told apart.
    #[error("The ticket has no order number: give it one, so that each page can carry it.")]
    NoOrder,
    /// The plan has no name, so its pages could not be told apart.
    #[error("The plan has no name: give it one, so that each page can carry it.")]
    NoPlan,
    /// A sheet or stick of the plan does not hold together.
    #[error("{0}.")]
    Cuts(#[from] drawing::CutError),
    /// More is cut than can be counted.
    #[error("The plan cuts more than can be counted: split it into several plans.")]
    TooMany,
    /// The typesetter refused the sheet: a fault in the template.
    #[error("The sheet could not be set: {0}. This is a fault in the program; report it.")]
    Setting(String),
    /// The finished file could not be completed: a fault in the program.
    #[error(
        "The sheet was set but its print settings could not be written: {0}. This is a fault in the program; report it."
    )]
    Finishing(String),
}
