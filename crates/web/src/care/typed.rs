//! Fields read: each value with where it came from, and every fault kept.

use std::collections::BTreeMap;

use conservation::within;
use measure::{Length, Mass, ReadError, Size, Unit, read_length, read_size};
use trade::settings::Setting;
use trade::{Settings, Units};
use working::{Figure, Stated};

use super::answer::Answer;
use super::field::{Choice, Field, Kind, Usual};
use super::read::{Unread, chosen, difference, number, temperature};

/// What is wrong with a field, or with all of them together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The field; empty where it is no single one.
    pub field: &'static str,
    /// The field as people read it; empty likewise.
    pub label: &'static str,
    /// Stable code for programs.
    pub code: String,
    /// What is wrong.
    pub sentence: String,
    /// What to type; may be empty.
    pub hint: String,
    /// The text with a mark under what can't be read.
    pub shown: Option<String>,
}

impl Fault {
    /// The whole of it in one sentence: field, fault, cure.
    pub fn whole(&self) -> String {
        let hint = if self.hint.is_empty() {
            String::new()
        } else {
            format!("; {}", self.hint)
        };
        if self.label.is_empty() {
            format!("{}{hint}.", self.sentence)
        } else {
            format!("{}: {}{hint}.", self.label, self.sentence)
        }
    }
}

/// What was typed for a question, being read.
pub struct Typed<'a> {
    fields: &'static [Field],
    texts: &'a BTreeMap<String, String>,
    /// The shop's settings.
    pub settings: &'a Settings,
    /// What a bare number is in.
    pub unit: Unit,
    faults: Vec<Fault>,
}

impl<'a> Typed<'a> {
    pub(super) fn of(
        fields: &'static [Field],
        texts: &'a BTreeMap<String, String>,
        settings: &'a Settings,
        units: Units,
    ) -> Self {
        Self {
            fields,
            texts,
            settings,
            unit: units.unit(),
            faults: Vec::new(),
        }
    }

    pub(super) fn finish(mut self, answer: Option<Answer>) -> Result<Answer, Vec<Fault>> {
        let order = |fault: &Fault| {
            self.fields
                .iter()
                .position(|field| field.name == fault.field)
        };
        self.faults.sort_by_key(order);
        match answer {
            Some(answer) if self.faults.is_empty() => Ok(answer),
            _ => Err(self.faults),
        }
    }

    /// Keeps what an engine refuses, as a fault of the whole question.
    pub(super) fn keep<T, E: std::fmt::Display>(&mut self, found: Result<T, E>) -> Option<T> {
        found
            .map_err(|refusal| {
                self.faults.push(Fault {
                    field: "",
                    label: "",
                    code: "care.refused".to_owned(),
                    sentence: refusal.to_string(),
                    hint: String::new(),
                    shown: None,
                });
            })
            .ok()
    }

    fn field(&self, name: &str) -> &'static Field {
        let found = self.fields.iter().find(|field| field.name == name);
        found.unwrap_or_else(|| panic!("the question has a field {name}"))
    }

    /// The text of a field; none where nothing is typed and nothing usual stands for it.
    fn text(&mut self, field: &'static Field) -> Option<&'a str> {
        let typed = self.texts.get(field.name).map(|text| text.trim());
        if let Some(text) = typed.filter(|text| !text.is_empty()) {
            return Some(text);
        }
        match field.usual {
            Usual::Text(text) => Some(text),
            Usual::Asked => {
                let hint = match (field.such_as(), field.kind) {
                    ("", Kind::Choice(_)) => "choose one of the list".to_owned(),
                    ("", _) => "type a number".to_owned(),
                    (example, _) => format!("type {example}"),
                };
                self.fault(field, "care.missing", "nothing is typed".to_owned(), hint);
                None
            }
            Usual::Nothing | Usual::Setting(_) => None,
        }
    }

    fn fault(&mut self, field: &Field, code: &str, sentence: String, hint: String) {
        self.faults.push(Fault {
            field: field.name,
            label: field.label,
            code: code.to_owned(),
            sentence,
            hint,
            shown: None,
        });
    }

    fn unread(&mut self, field: &Field, text: &str, error: &ReadError) {
        self.fault(field, error.code(), error.to_string(), error.hint());
        if let Some(fault) = self.faults.last_mut() {
            fault.shown = Some(error.caret(text));
        }
    }

    fn unread_number(&mut self, field: &Field, unread: Unread) {
        self.fault(field, unread.code, unread.sentence, unread.hint);
    }

    /// Whether something was typed into a field.
    pub(super) fn has(&self, name: &str) -> bool {
        self.texts
            .get(name)
            .is_some_and(|text| !text.trim().is_empty())
    }

    /// A length above zero.
    pub(super) fn length(&mut self, name: &str) -> Option<Stated<Length>> {
        let field = self.field(name);
        let Some(text) = self.text(field) else {
            return match field.usual {
                Usual::Setting(key) => match self.settings.get(key) {
                    Setting::Length(length) => Some(Stated::setting(key.id(), length)),
                    _ => None,
                },
                _ => None,
            };
        };
        match read_length(text, self.unit) {
            Ok(length) if length.is_positive() => Some(Stated::job(length)),
            Ok(length) => {
                let sentence = format!("it is {}", length.in_both(self.unit));
                self.not_positive(field, sentence)
            }
            Err(error) => {
                self.unread(field, text, &error);
                None
            }
        }
    }

    /// A field that must be typed too.
    pub(super) fn lacks(&mut self, name: &str, cure: &str) {
        let field = self.field(name);
        let sentence = "nothing is typed".to_owned();
        self.fault(field, "care.missing", sentence, cure.to_owned());
    }

    fn not_positive<T>(&mut self, field: &'static Field, sentence: String) -> Option<T> {
        let cure = "type more than zero".to_owned();
        self.fault(field, "care.not_positive", sentence, cure);
        None
    }

    /// A width and a height above zero.
    pub(super) fn size(&mut self, name: &str) -> Option<Size> {
        let field = self.field(name);
        let text = self.text(field)?;
        match read_size(text, self.unit) {
            Ok(size) if size.width.is_positive() && size.height.is_positive() => Some(size),
            Ok(_) => {
                let sentence = "a side is not above zero".to_owned();
                self.not_positive(field, sentence)
            }
            Err(error) => {
                self.unread(field, text, &error);
                None
            }
        }
    }

    /// A mass above zero.
    pub(super) fn mass(&mut self, name: &str) -> Option<Stated<Mass>> {
        let field = self.field(name);
        let text = self.text(field)?;
        match Mass::read_nearest(text) {
            Ok(mass) if mass > Mass::ZERO => Some(Stated::job(mass)),
            Ok(mass) => {
                let sentence = format!("it is {}", mass.print_both_nearest());
                self.not_positive(field, sentence)
            }
            Err(error) => {
                self.unread(field, text, &error);
                None
            }
        }
    }

    /// A temperature or a number, within its bounds.
    pub(super) fn figure(&mut self, name: &str) -> Option<Stated<Figure>> {
        let field = self.field(name);
        let (unit, bound) = match field.kind {
            Kind::Number { unit, bound, .. } => (unit, bound),
            Kind::Warmer => ("K", "swing"),
            _ => ("°C", "temperature"),
        };
        let Some(text) = self.text(field) else {
            return match field.usual {
                Usual::Setting(key) => {
                    let count = i32::try_from(self.settings.count(key)).unwrap_or(i32::MAX);
                    Some(Stated::setting(
                        key.id(),
                        Figure::of(f64::from(count), unit),
                    ))
                }
                _ => None,
            };
        };
        let read = match field.kind {
            Kind::Number { units, .. } => number(text, units),
            Kind::Warmer => difference(text),
            _ => temperature(text),
        };
        let value = match read {
            Ok(value) => value,
            Err(unread) => {
                self.unread_number(field, unread);
                return None;
            }
        };
        let figure = Figure::of(value, unit);
        match within(bound, figure) {
            Ok(_) => Some(Stated::job(figure)),
            Err(conservation::Refusal::Outside {
                given, from, to, ..
            }) => {
                let sentence = format!("it is {given}");
                self.fault(
                    field,
                    "care.outside",
                    sentence,
                    format!("type {from} to {to}"),
                );
                None
            }
            Err(other) => self.keep(Err(other)),
        }
    }

    /// One of a list, by its word or by words that only one has.
    pub(super) fn choice(&mut self, name: &str) -> Option<Choice> {
        let field = self.field(name);
        let text = self.text(field)?;
        let Kind::Choice(list) = field.kind else {
            unreachable!("{name} is a choice");
        };
        match chosen(text, &list()) {
            Ok(choice) => Some(choice),
            Err(unread) => {
                self.unread_number(field, unread);
                None
            }
        }
    }
}
