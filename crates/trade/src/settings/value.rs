//! What a setting may be, and how its text is read.

use std::fmt;

use measure::{Angle, Length, Unit, read_length};
use working::Status;

use crate::Units;

/// The value of a setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// A length.
    Length(Length),
    /// A whole number: minutes, pieces, united inches, parts per million.
    Count(i64),
    /// An angle.
    Angle(Angle),
    /// One of a few words.
    Choice(&'static str),
}

impl fmt::Display for Setting {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length(length) => f.write_str(&length.in_both(Unit::Inch)),
            Self::Count(count) => write!(f, "{count}"),
            Self::Angle(angle) => write!(f, "{angle}"),
            Self::Choice(word) => f.write_str(word),
        }
    }
}

/// The default of a setting.
#[derive(Clone, Copy, Debug)]
pub enum Default {
    /// A length, one habit for shops that measure in inches and one for millimetres.
    Length {
        /// For inches.
        inch: Length,
        /// For millimetres.
        metric: Length,
    },
    /// A whole number.
    Count(i64),
    /// An angle.
    Angle(Angle),
    /// One of the range's words.
    Choice(&'static str),
    /// A word for shops that measure in inches, another for millimetres.
    ChoiceBy {
        /// For inches.
        inch: &'static str,
        /// For millimetres.
        metric: &'static str,
    },
}

/// What a setting may be set to.
#[derive(Clone, Copy, Debug)]
pub enum Range {
    /// From, to, both included.
    Length(Length, Length),
    /// From, to, both included.
    Count(i64, i64),
    /// From, to, both included.
    Angle(Angle, Angle),
    /// One of these words.
    Words(&'static [&'static str]),
}

/// All that is known of a setting.
#[derive(Clone, Copy, Debug)]
pub struct Definition {
    /// Its id, as people write it.
    pub id: &'static str,
    /// What it does, in a sentence.
    pub words: &'static str,
    /// Its default.
    pub default: Default,
    /// What it may be set to.
    pub range: Range,
    /// Unit of a count; empty where the value says its own.
    pub unit: &'static str,
    /// Code of the source of the default; empty for common practice.
    pub source: &'static str,
    /// Status of the default.
    pub status: Status,
}

impl Definition {
    /// The default for a shop that measures in `units`.
    pub fn default_in(&self, units: Units) -> Setting {
        match (self.default, units) {
            (Default::Length { inch, .. }, Units::Inches) => Setting::Length(inch),
            (Default::Length { metric, .. }, Units::Millimetres) => Setting::Length(metric),
            (Default::Count(count), _) => Setting::Count(count),
            (Default::Angle(angle), _) => Setting::Angle(angle),
            (Default::Choice(word), _)
            | (Default::ChoiceBy { inch: word, .. }, Units::Inches)
            | (Default::ChoiceBy { metric: word, .. }, Units::Millimetres) => Setting::Choice(word),
        }
    }

    /// Reads a value as people write it.
    ///
    /// Errors: what can't be read, and what lies outside the range, which is named.
    pub fn read(&self, text: &str, bare: Unit) -> Result<Setting, Refused> {
        let refuse = |why: String| Refused {
            id: self.id.to_owned(),
            text: text.to_owned(),
            why,
        };
        let value = match self.range {
            Range::Length(..) => read_length(text, bare)
                .map(Setting::Length)
                .map_err(|e| e.to_string()),
            Range::Count(..) => text
                .trim()
                .parse()
                .map(Setting::Count)
                .map_err(|_| "type a whole number".to_owned()),
            Range::Angle(..) => Angle::read(text)
                .map(Setting::Angle)
                .map_err(|e| e.to_string()),
            Range::Words(words) => words
                .iter()
                .find(|word| **word == text.trim())
                .map(|word| Setting::Choice(word))
                .ok_or_else(|| format!("type one of: {}", words.join(", "))),
        };
        let value = value.map_err(refuse)?;
        if self.range.holds(value) {
            Ok(value)
        } else {
            Err(refuse(format!("it may be {}", self.range)))
        }
    }
}

impl Range {
    /// Whether `value` lies inside.
    pub fn holds(&self, value: Setting) -> bool {
        match (self, value) {
            (Self::Length(from, to), Setting::Length(length)) => (*from..=*to).contains(&length),
            (Self::Count(from, to), Setting::Count(count)) => (*from..=*to).contains(&count),
            (Self::Angle(from, to), Setting::Angle(angle)) => (*from..=*to).contains(&angle),
            (Self::Words(words), Setting::Choice(word)) => words.contains(&word),
            _ => false,
        }
    }
}

impl fmt::Display for Range {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length(from, to) => {
                write!(
                    f,
                    "{} to {}",
                    from.in_both(Unit::Inch),
                    to.in_both(Unit::Inch)
                )
            }
            Self::Count(from, to) => write!(f, "{from} to {to}"),
            Self::Angle(from, to) => write!(f, "{from} to {to}"),
            Self::Words(words) => f.write_str(&words.join(", ")),
        }
    }
}

/// A setting that was refused.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("setting {id} = \"{text}\": {why}")]
pub struct Refused {
    /// The id as typed.
    pub id: String,
    /// The value as typed.
    pub text: String,
    /// What would do.
    pub why: String,
}

impl Refused {
    pub(super) fn unknown(id: &str, text: &str) -> Self {
        let near = super::KEYS
            .iter()
            .map(|key| key.id())
            .min_by_key(|known| distance(known, id))
            .unwrap_or_default();
        Self {
            id: id.to_owned(),
            text: text.to_owned(),
            why: format!("there is no such setting; the nearest name is {near}"),
        }
    }
}

/// How many single-letter changes turn one word into another (Levenshtein).
fn distance(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (i, a) in from.chars().enumerate() {
        let mut diagonal = i;
        row[0] = i + 1;
        for (j, b) in to.iter().enumerate() {
            let swap = diagonal + usize::from(a != *b);
            diagonal = row[j + 1];
            row[j + 1] = swap.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[to.len()]
}
