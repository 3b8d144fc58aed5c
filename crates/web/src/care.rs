//! Questions about light, air and hanging that need no job document, and what is told of a piece.
//!
//! A question is a list of fields that people type into; its answer is rows of worked values. The
//! terminal, the pages and the API ask the same questions and lay out the same answers.

mod air;
mod answer;
mod field;
mod hang;
mod light;
mod patch;
mod piece;
mod read;
mod screw;
mod trust;
mod typed;
mod weight;

use std::collections::BTreeMap;

use trade::Settings;

pub use answer::{Amount, Answer, Group, Row};
pub use field::{Choice, Field, Kind, Usual};
pub use patch::document_with;
pub(crate) use piece::advised_on;
pub use piece::{Authority, Cure, authority, cure_named, cures};
pub use typed::{Fault, Typed};
pub use weight::{place, weight};

/// A question somebody may ask at the bench.
#[derive(Debug)]
pub struct Question {
    /// What it is about: `light`, `air`, `hang`.
    pub noun: &'static str,
    /// Its own word.
    pub verb: &'static str,
    /// The question as people ask it.
    pub asks: &'static str,
    /// What it tells, in a sentence without a full stop.
    pub tells: &'static str,
    /// What is typed.
    pub fields: &'static [Field],
    /// One that can be asked as it stands: field and text.
    pub example: &'static [(&'static str, &'static str)],
    work: fn(&mut Typed<'_>) -> Option<Answer>,
}

/// Every question, in the order they are shown.
pub static QUESTIONS: [Question; 12] = [
    light::FADE,
    light::BUDGET,
    air::WOOD,
    air::SHEET,
    air::DEW,
    air::WALL,
    air::PACK,
    hang::WIRE,
    screw::SCREW,
    hang::RAIL,
    hang::HARDWARE,
    hang::LIFT,
];

/// The nouns with their headings, in the order they are shown.
pub const NOUNS: [(&str, &str); 3] = [("light", "Light"), ("air", "Air"), ("hang", "Hanging")];

/// The question of this name.
pub fn question(noun: &str, verb: &str) -> Option<&'static Question> {
    let mut of_noun = of_noun(noun);
    of_noun.find(|question| question.verb == verb)
}

/// Questions of one noun.
pub fn of_noun(noun: &str) -> impl Iterator<Item = &'static Question> {
    QUESTIONS.iter().filter(move |one| one.noun == noun)
}

impl Question {
    /// The answer to what was typed; fields that are empty or left out take what is usual.
    ///
    /// Errors: everything that can't be read, is missing or lies outside what can be, together.
    pub fn answer(
        &self,
        typed: &BTreeMap<String, String>,
        settings: &Settings,
        units: trade::Units,
    ) -> Result<Answer, Vec<Fault>> {
        let mut typed = Typed::of(self.fields, typed, settings, units);
        let answer = (self.work)(&mut typed);
        typed.finish(answer)
    }

    /// The command that asks its example.
    pub fn command(&self) -> String {
        let asked = self.example.iter().map(|(name, text)| {
            if text.contains([' ', '"', ',']) {
                format!(" --{name} '{text}'")
            } else {
                format!(" --{name} {text}")
            }
        });
        format!(
            "rabbet {} {}{}",
            self.noun,
            self.verb,
            asked.collect::<String>()
        )
    }
}

#[cfg(test)]
mod tests;
