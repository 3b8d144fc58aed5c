//! What the program answers to a row.

use working::{Figure, Stated, Working};

/// A value found, under the column it answers.
pub(super) type Answers = Vec<(&'static str, Found)>;

/// A value found.
#[derive(Clone, Debug)]
pub(super) enum Found {
    /// A number in the column's unit.
    Number(f64),
    /// A word.
    Word(String),
    /// Yes or no, written 1 or 0.
    Yes(bool),
}

/// A number.
pub(super) fn number(column: &'static str, value: f64) -> (&'static str, Found) {
    (column, Found::Number(value))
}

/// A word.
pub(super) fn word(column: &'static str, value: impl Into<String>) -> (&'static str, Found) {
    (column, Found::Word(value.into()))
}

/// Yes or no.
pub(super) fn yes(column: &'static str, value: bool) -> (&'static str, Found) {
    (column, Found::Yes(value))
}

/// A figure as someone asks.
pub(super) fn asked(value: f64, unit: &'static str) -> Stated<Figure> {
    Stated::job(Figure::of(value, unit))
}

/// Why something was refused, as a sentence.
pub(super) fn refused(refusal: impl std::fmt::Display) -> String {
    refusal.to_string()
}

/// Every line of a working must come out again from its recorded inputs.
pub(super) fn comes_out(working: &Working) -> Result<(), String> {
    match working.recheck().first() {
        Some(mismatch) => Err(mismatch.to_string()),
        None => Ok(()),
    }
}
