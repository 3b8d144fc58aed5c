//! Formulas that people read and the program computes.

mod evaluate;
mod expression;
mod number;
mod parse;
mod quantity;
mod ratio;
#[cfg(test)]
mod tests;
mod token;

pub use quantity::{Quantity, Unit};

use crate::value::Input;
use expression::Expression;

/// A formula, read and ready to be worked out.
///
/// Shape:  `result = expression`. Names are letters, digits and `_`; numbers are `3` or `0.125`, with a
///         unit straight after them where they have one: `25.4 mm`, `1 m²`, `45°` (`in`, `ft`, `mm`, `cm`,
///         `m`, `mg`, `g`, `kg`, `oz`, `lb`). Signs, strongest first: `²`; `−`; `× ÷`; `+ −`; `< ≤ > ≥ = ≠`; `and`; `or`
///         (`* / - <= >=` read the same). Functions:
///
/// | written | gives |
/// |---|---|
/// | `sum(x)`, `count(x)` | over all inputs recorded under the names; nothing recorded gives 0 |
/// | `max(a, b)`, `min(a, b)` | over all values of all arguments |
/// | `up_to(x, step)`, `down_to(x, step)`, `nearest_to(x, step)` | a multiple of the step; halves go away from zero |
/// | `round_to(x, step, way)` | a multiple of the step, rounded the way that is an input |
/// | `up(x)`, `down(x)`, `nearest(x)` | a whole quantum, or a whole number; halves go away from zero |
/// | `half_down(x)` | half of x, down to a whole quantum or whole number |
/// | `tan(x)`, `sin(x)`, `cos(x)` | a number from an angle |
/// | `atan(x)`, `asin(x)` | an angle from a number |
/// | `sqrt(x)`, `abs(x)`, `pi` | as in school |
/// | `if(yes, a, b)`, `not(yes)` | only the argument that is chosen is worked out |
///
/// Units:  length, area, mass, angle, money and number are kept apart; a plain `0` fits any of them.
/// Errors: [`Fault`].
#[derive(Clone, Debug, PartialEq)]
pub struct Formula {
    text: String,
    result: String,
    expression: Expression,
}

impl Formula {
    /// Reads a formula.
    ///
    /// # Errors
    /// A [`Fault`] with the byte where reading stopped.
    pub fn read(text: &str) -> Result<Self, Fault> {
        parse::parse(text)
    }

    /// The formula as written.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The name left of the first `=`.
    pub fn result(&self) -> &str {
        &self.result
    }

    /// Whether the right-hand side uses this name.
    pub fn mentions(&self, name: &str) -> bool {
        self.expression.mentions(name)
    }

    /// Works the formula out: exactly, unless it takes a curve (`pi`, `tan`, a root that isn't a fraction).
    ///
    /// # Errors
    /// A [`Fault`] where an input is missing, is recorded and not used, or doesn't fit its place.
    pub fn evaluate(&self, inputs: &[Input]) -> Result<Quantity, Fault> {
        if let Some(unused) = inputs.iter().find(|input| !self.mentions(input.name)) {
            return Err(Fault::Unused { name: unused.name });
        }
        self.expression.evaluate(inputs)
    }
}

/// Why a formula can't be read or worked out.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[allow(missing_docs, reason = "each variant's sentence names its fields")]
pub enum Fault {
    /// A sign the language doesn't have.
    #[error("“{character}” at byte {at} is no sign of a formula")]
    Character { character: char, at: usize },
    /// Digits that don't make a number.
    #[error("“{text}” at byte {at} is not a number: write 3 or 0.125")]
    Number { text: String, at: usize },
    /// Something else was needed here.
    #[error("{found} stands at byte {at} where {wanted} is needed")]
    Wanted {
        wanted: &'static str,
        found: String,
        at: usize,
    },
    /// A word after a number that is no unit.
    #[error(
        "“{name}” at byte {at} follows a number: write ×, or one of in, ft, mm, cm, m, mg, g, kg, oz, lb"
    )]
    UnknownUnit { name: String, at: usize },
    /// A function the language doesn't have.
    #[error("there is no function “{name}” (byte {at})")]
    UnknownFunction { name: String, at: usize },
    /// Too many or too few arguments.
    #[error("{function} at byte {at} takes {wanted} arguments and has {given}")]
    Arguments {
        function: &'static str,
        wanted: usize,
        given: usize,
        at: usize,
    },
    /// `sum` and `count` of an expression.
    #[error("{function} at byte {at} takes names of inputs only")]
    NamesOnly { function: &'static str, at: usize },
    /// `a < b < c`.
    #[error("a second comparison stands at byte {at}: join two with “and”")]
    Chained { at: usize },
    /// A name without an input.
    #[error("no input is recorded under “{name}”")]
    Missing { name: String },
    /// A name with several inputs, used as one.
    #[error("{times} inputs are recorded under “{name}”: use sum, count, max or min")]
    Several { name: String, times: usize },
    /// An input that the formula doesn't use.
    #[error("the input “{name}” is recorded and the formula doesn't use it")]
    Unused { name: &'static str },
    /// Two quantities that can't be added or compared.
    #[error("{by} stands between {left} and {right}")]
    Unlike {
        by: &'static str,
        left: Unit,
        right: Unit,
    },
    /// A quantity of the wrong kind.
    #[error("{by} needs {wanted} and has {given}")]
    Needs {
        by: &'static str,
        wanted: &'static str,
        given: String,
    },
    /// `max` or `min` of no value at all.
    #[error("{by} has no value to choose from")]
    Nothing { by: &'static str },
    /// A division by zero.
    #[error("it divides by zero")]
    ByZero,
    /// A step that isn't above zero.
    #[error("{by} needs a step above zero")]
    Step { by: &'static str },
    /// The root of a negative number.
    #[error("it takes the root of a number below zero")]
    RootOfNegative,
    /// No angle has this sine.
    #[error("{by} has no angle for this number")]
    NoAngle { by: &'static str },
    /// A number past what can be held.
    #[error("a number grows past 128 bits")]
    TooLarge,
}
