//! The shop's habits: every number the trade leaves open, with its default, unit, range,
//! reason and source. Rules read numbers from here and from nowhere else.

mod citations;
mod keys;
mod print;
mod value;

use std::collections::BTreeMap;

use measure::{Angle, Length, Unit};

pub use citations::{CITATIONS, citation, cited};
pub use keys::{KEYS, Key, standard_clips};
pub use print::as_markdown;
pub use value::{Default, Definition, Range, Refused, Setting};

use crate::Units;

/// A full set of settings: a value for every key, and where each came from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Settings {
    values: Vec<Setting>,
    changed: Vec<Option<Layer>>,
}

/// Who set a value that is not the default.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// The shop's settings file.
    Shop,
    /// The job document.
    Job,
}

impl Settings {
    /// The defaults as a shop measuring in `units` finds them.
    pub fn defaults(units: Units) -> Self {
        let values = KEYS
            .iter()
            .map(|key| key.definition().default_in(units))
            .collect();
        Self {
            values,
            changed: vec![None; KEYS.len()],
        }
    }

    /// These settings with `changes` (id to text, as people write them) laid over.
    ///
    /// Errors: every id that is unknown and every value that can't be read or is out of range,
    /// all of them, none applied.
    pub fn with(
        &self,
        changes: &BTreeMap<String, String>,
        layer: Layer,
        bare: Unit,
    ) -> Result<Self, Vec<Refused>> {
        let mut next = self.clone();
        let mut refused = Vec::new();
        for (id, text) in changes {
            match Key::named(id)
                .ok_or_else(|| Refused::unknown(id, text))
                .and_then(|key| {
                    key.definition()
                        .read(text, bare)
                        .map(|value| (key.index(), value))
                }) {
                Ok((index, value)) => {
                    next.values[index] = value;
                    next.changed[index] = Some(layer);
                }
                Err(error) => refused.push(error),
            }
        }
        if refused.is_empty() {
            Ok(next)
        } else {
            Err(refused)
        }
    }

    /// The value of `key`.
    pub fn get(&self, key: Key) -> Setting {
        self.values[key.index()]
    }

    /// Who changed `key` from its default.
    pub fn changed(&self, key: Key) -> Option<Layer> {
        self.changed[key.index()]
    }

    /// A setting that is a length.
    pub fn length(&self, key: Key) -> Length {
        match self.get(key) {
            Setting::Length(length) => length,
            other => unreachable!("{} is {other:?}, not a length", key.id()),
        }
    }

    /// A setting that is a whole number.
    pub fn count(&self, key: Key) -> i64 {
        match self.get(key) {
            Setting::Count(count) => count,
            other => unreachable!("{} is {other:?}, not a count", key.id()),
        }
    }

    /// A setting that is an angle.
    pub fn angle(&self, key: Key) -> Angle {
        match self.get(key) {
            Setting::Angle(angle) => angle,
            other => unreachable!("{} is {other:?}, not an angle", key.id()),
        }
    }

    /// A setting that is one of a few words.
    pub fn choice(&self, key: Key) -> &'static str {
        match self.get(key) {
            Setting::Choice(word) => word,
            other => unreachable!("{} is {other:?}, not a choice", key.id()),
        }
    }
}
