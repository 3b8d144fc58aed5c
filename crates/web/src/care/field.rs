//! What is typed for a question.

use trade::{Key, Settings};

/// One field.
#[derive(Debug)]
pub struct Field {
    /// Its name in commands and addresses.
    pub name: &'static str,
    /// Its name as people read it.
    pub label: &'static str,
    /// What it is, in a few words; empty where the label says it.
    pub hint: &'static str,
    /// What can be typed.
    pub kind: Kind,
    /// What is taken where nothing is typed.
    pub usual: Usual,
}

/// What can be typed into a field.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A length above zero: `16 7/8`, `428.6 mm`.
    Length,
    /// A width and a height: `16 x 20`.
    Size,
    /// A mass above zero: `8 lb 4 oz`, `3.8 kg`.
    Mass,
    /// A temperature with its unit: `20 °C`, `68 F`.
    Temperature,
    /// A difference of temperature: `10 K`, `18 F`.
    Warmer,
    /// A number, with one of these units or none; each worth so many of the first.
    Number {
        /// The units, as they may be typed.
        units: &'static [(&'static str, f64)],
        /// The unit it is worked in.
        unit: &'static str,
        /// Which bounds hold for it.
        bound: &'static str,
    },
    /// One of a list.
    Choice(fn() -> Vec<Choice>),
}

/// One of a list.
#[derive(Clone, Copy, Debug)]
pub struct Choice {
    /// As it is typed.
    pub word: &'static str,
    /// As it is read; often the same.
    pub label: &'static str,
    /// The heading it stands under; empty where there are no headings.
    pub under: &'static str,
}

impl Choice {
    /// A word that says everything itself.
    pub const fn plain(word: &'static str) -> Self {
        Self {
            word,
            label: word,
            under: "",
        }
    }

    /// A word with its meaning.
    pub const fn meant(word: &'static str, label: &'static str) -> Self {
        Self {
            word,
            label,
            under: "",
        }
    }
}

/// What is taken where nothing is typed.
#[derive(Clone, Copy, Debug)]
pub enum Usual {
    /// It must be typed.
    Asked,
    /// Nothing: a part of the answer is left out.
    Nothing,
    /// This text.
    Text(&'static str),
    /// The shop's setting.
    Setting(Key),
}

impl Field {
    /// What is taken where nothing is typed, in words; none where it must be.
    pub fn left_out(&self, settings: &Settings, unit: measure::Unit) -> Option<String> {
        match self.usual {
            Usual::Asked => None,
            Usual::Nothing => Some("may be left out".to_owned()),
            Usual::Text(text) => Some(format!("left out: {text}")),
            Usual::Setting(key) => {
                let value = crate::wire::setting_text(settings.get(key), unit);
                let unit = key.definition().unit;
                let space = if unit.is_empty() { "" } else { " " };
                Some(format!(
                    "left out: {value}{space}{unit}, the setting {}",
                    key.id()
                ))
            }
        }
    }

    /// Whether it must be typed.
    pub const fn is_asked(&self) -> bool {
        matches!(self.usual, Usual::Asked)
    }

    /// What to type, as an example.
    pub const fn such_as(&self) -> &'static str {
        match self.kind {
            Kind::Length => "16 7/8 or 428.6 mm",
            Kind::Size => "16 x 20 or 400 x 500 mm",
            Kind::Mass => "8 lb 4 oz or 3.8 kg",
            Kind::Temperature => "20 °C or 68 °F",
            Kind::Warmer => "10 K or 18 °F",
            Kind::Number { .. } | Kind::Choice(_) => "",
        }
    }
}

/// A length that must be typed.
pub(super) const fn length(name: &'static str, label: &'static str, hint: &'static str) -> Field {
    Field {
        name,
        label,
        hint,
        kind: Kind::Length,
        usual: Usual::Asked,
    }
}

/// A mass that must be typed.
pub(super) const fn mass(name: &'static str, label: &'static str, hint: &'static str) -> Field {
    Field {
        kind: Kind::Mass,
        ..length(name, label, hint)
    }
}

/// A temperature that must be typed.
pub(super) const fn temperature(
    name: &'static str,
    label: &'static str,
    hint: &'static str,
) -> Field {
    Field {
        kind: Kind::Temperature,
        ..length(name, label, hint)
    }
}

/// A number that must be typed.
pub(super) const fn number(
    name: &'static str,
    label: &'static str,
    units: &'static [(&'static str, f64)],
    (unit, bound): (&'static str, &'static str),
) -> Field {
    Field {
        kind: Kind::Number { units, unit, bound },
        ..length(name, label, "")
    }
}

/// One of a list that must be chosen.
pub(super) const fn choice(
    name: &'static str,
    label: &'static str,
    hint: &'static str,
    list: fn() -> Vec<Choice>,
) -> Field {
    Field {
        kind: Kind::Choice(list),
        ..length(name, label, hint)
    }
}

impl Field {
    /// The same, with what is taken where nothing is typed.
    pub(super) const fn or(self, usual: Usual) -> Self {
        Self { usual, ..self }
    }
}

/// Per cent of relative humidity.
pub(super) const HUMIDITY: &[(&str, f64)] = &[("%", 1.0), ("% RH", 1.0), ("RH", 1.0)];
