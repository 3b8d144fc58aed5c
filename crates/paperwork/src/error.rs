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
    /// The quote or invoice has no number, so its pages could not be told apart.
    #[error("The quote has no number: give it one, so that each page can carry it.")]
    NoQuoteNumber,
    /// Too few or too many quotes for one sheet.
    #[error("{given} quotes are not a sheet of choices: give two to {most}.")]
    Choices {
        /// How many there are.
        given: usize,
        /// How many a sheet holds.
        most: usize,
    },
    /// Choices in two currencies.
    #[error("Quote {number} is in {currency}, the first in {first}: give quotes of one currency.")]
    OtherCurrency {
        /// Which quote.
        number: String,
        /// Its currency.
        currency: measure::Currency,
        /// That of the first.
        first: measure::Currency,
    },
    /// A payment that is none of the total.
    #[error("{paid} was paid of {total}: state what was paid in its currency, at most the total.")]
    Paid {
        /// What was paid.
        paid: measure::Money,
        /// What is to be paid in all.
        total: measure::Money,
    },
    /// The plan has no name, so its pages could not be told apart.
    #[error("The plan has no name: give it one, so that each page can carry it.")]
    NoPlan,
    /// A sheet or stick of the plan does not hold together.
    #[error("{0}.")]
    Cuts(#[from] drawing::CutError),
    /// A figure could not be worked out.
    #[error("A figure on the card could not be worked out: {0}.")]
    Figures(String),
    /// A mark lies outside its art.
    #[error(
        "Mark {mark} lies off the art: its place is measured from the left and top edges, inside its size."
    )]
    MarkOff {
        /// Which, from 1.
        mark: usize,
    },
    /// Nothing is to be printed.
    #[error("There is nothing to print: {0}.")]
    Nothing(&'static str),
    /// More is cut than can be counted.
    #[error("The plan cuts more than can be counted: split it into several plans.")]
    TooMany,
    /// A text is longer than a code holds.
    #[error(
        "A text of {letters} letters does not go into one code. This is a fault in the program; report it."
    )]
    LongCode {
        /// How long it is.
        letters: usize,
    },
    /// A plan for sheets where sticks were asked, or the other way: a fault in the program.
    #[error("{0}. This is a fault in the program; report it.")]
    OtherKind(#[from] cutting::OtherKind),
    /// The typesetter refused the sheet: a fault in the template.
    #[error("The sheet could not be set: {0}. This is a fault in the program; report it.")]
    Setting(String),
    /// The finished file could not be completed: a fault in the program.
    #[error(
        "The sheet was set but its print settings could not be written: {0}. This is a fault in the program; report it."
    )]
    Finishing(String),
}
