//! Making rules, and the two ends of a range.

use std::fmt;

use working::{Figure, Given, Rule, Seen, Source, Status, Subject, Worked, Working};

/// An uncertain figure: its two ends, each with its line, the lower first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// The lowest it may be.
    pub low: Worked<Figure>,
    /// The highest it may be.
    pub high: Worked<Figure>,
}

impl Span {
    /// The two in order.
    pub fn of(one: Worked<Figure>, other: Worked<Figure>) -> Self {
        if one.value.value() <= other.value.value() {
            Self {
                low: one,
                high: other,
            }
        } else {
            Self {
                low: other,
                high: one,
            }
        }
    }
}

/// `1.5 to 20 years`: two significant digits, for nobody knows more.
impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (low, high) = (
            rough(self.low.value.value()),
            rough(self.high.value.value()),
        );
        let unit = self.low.value.unit();
        if low == high {
            write!(f, "about {low} {unit}")
        } else {
            write!(f, "{low} to {high} {unit}")
        }
    }
}

/// A number to two significant digits, nearest.
pub fn rough(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let size = value.abs().log10().floor();
    let step = 10_f64.powf(size - 1.0); // geometry: decimals
    let near = (value / step).round() * step;
    Figure::of(near, "").number_nearest()
}

/// A rule of plain geometry or arithmetic.
pub const fn geometry(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::Geometry,
        status: Status::Geometry,
    }
}

/// A rule of the trade without a source.
pub const fn custom(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::CommonPractice,
        status: Status::CommonPractice,
    }
}

/// A rule that the source of this code states; one known from memory alone is only assumed.
pub const fn cited(
    id: &'static str,
    words: &'static str,
    formula: &'static str,
    code: &str,
) -> Rule {
    let citation = trade::settings::cited(code);
    Rule {
        id,
        words,
        formula,
        source: Source::Cited(citation),
        status: match citation.seen {
            Seen::FromMemory => Status::Assumed,
            _ => Status::Published,
        },
    }
}

/// A rule that the source of this code is remembered to state, where that part of it was not seen.
pub const fn remembered(
    id: &'static str,
    words: &'static str,
    formula: &'static str,
    code: &str,
) -> Rule {
    Rule {
        status: Status::Assumed,
        ..cited(id, words, formula, code)
    }
}

/// Records a figure.
pub fn figure(
    working: &mut Working,
    rule: &'static Rule,
    subject: Subject,
    inputs: &[(&'static str, Given)],
    (value, unit): (f64, &'static str),
) -> Worked<Figure> {
    working.by(rule, subject, inputs, Figure::of(value, unit))
}
