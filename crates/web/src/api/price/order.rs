//! What a body asks, field by field; all its faults together.

use std::sync::Arc;

use measure::{Currency, Money};
use pricing::{Asked, RuleSet};
use serde_json::{Map, Value};
use trade::Date;

use super::rules_of;
use crate::clock;
use crate::desk::Desk;
use crate::problem::{Entry, Kind, Problem};

/// A body being read.
pub(super) struct Order {
    fields: Map<String, Value>,
    faults: Vec<Entry>,
}

impl Order {
    /// Reads an object with these fields only.
    pub fn read(body: &[u8], own: &[&str], beside: &[&str]) -> Result<Self, Problem> {
        let detail = match serde_json::from_slice(body) {
            Ok(Value::Object(fields)) => {
                let known = || own.iter().chain(beside);
                let strange = fields
                    .keys()
                    .filter(|name| !known().any(|known| known == name));
                let words: Vec<&str> = known().copied().collect();
                let detail = format!("There is no such field; send {}.", words.join(", "));
                let faults = strange
                    .map(|name| {
                        let pointer = name.replace('~', "~0").replace('/', "~1");
                        fault(format!("/{pointer}"), "order.unknown", detail.clone())
                    })
                    .collect();
                return Ok(Self { fields, faults });
            }
            Ok(_) => "Send an object.".to_owned(),
            Err(error) => format!(
                "The text is no JSON from line {}, column {} on; mend it there.",
                error.line(),
                error.column()
            ),
        };
        let entry = fault("", "order.form", detail);
        Err(Problem::with(Kind::Document, vec![entry]))
    }

    /// Rules, what is asked beside the piece, and whether the shop's side is wanted.
    pub fn asked(&mut self, desk: &Desk) -> Result<(Arc<RuleSet>, Asked, bool), Problem> {
        let typed = self.optional_text("rules");
        let rules = rules_of(desk, typed);
        let day = self.day("on").or_else(clock::today);
        if day.is_none() {
            self.fault("on", "order.today", clock::NO_DAY);
        }
        let (rush, exempt, shop) = (self.flag("rush"), self.flag("exempt"), self.flag("shop"));
        let discounts = self.texts("discounts");
        match (rules, day) {
            (Ok(rules), Some(day)) => {
                let asked = Asked {
                    day,
                    rush,
                    discounts,
                    exempt,
                };
                Ok((rules, asked, shop))
            }
            (rules, _) => {
                self.faults.extend(rules.err().unwrap_or_default());
                let faults = std::mem::take(&mut self.faults);
                Err(Problem::with(Kind::Input, faults))
            }
        }
    }

    /// All faults so far, where there are any.
    pub fn faultless(&mut self) -> Result<(), Problem> {
        if self.faults.is_empty() {
            return Ok(());
        }
        let faults = std::mem::take(&mut self.faults);
        Err(Problem::with(Kind::Input, faults))
    }

    /// A job document: an object, or text.
    pub fn document(&mut self, name: &str) -> Vec<u8> {
        let found = self.fields.get(name).and_then(bytes);
        found.unwrap_or_else(|| {
            self.fault(
                name,
                "order.job",
                "Send a job document here: JSON as an object, or TOML as text.",
            );
            Vec::new()
        })
    }

    /// Documents with a name each.
    pub fn named_documents(&mut self, name: &str) -> Vec<(String, Vec<u8>)> {
        let list = self.fields.get(name).and_then(Value::as_array);
        let read = |one: &Value| {
            let named = one.get("name").and_then(Value::as_str)?;
            Some((named.to_owned(), one.get("job").and_then(bytes)?))
        };
        let found: Option<Vec<_>> = list.and_then(|list| list.iter().map(read).collect());
        found.unwrap_or_else(|| {
            self.fault(
                name,
                "order.alternatives",
                "Send a list of objects with a name and a job document each.",
            );
            Vec::new()
        })
    }

    /// A text that must be there.
    pub fn text(&mut self, name: &str, wanted: &str) -> String {
        match self.fields.get(name).and_then(Value::as_str) {
            Some(text) if !text.trim().is_empty() => text.trim().to_owned(),
            _ => {
                self.fault(name, "order.text", wanted);
                String::new()
            }
        }
    }

    /// A day of the calendar.
    pub fn day(&mut self, name: &str) -> Option<Date> {
        let text = self.optional_text(name)?;
        let day = Date::read(&text).ok();
        if day.is_none() {
            self.fault(
                name,
                "order.day",
                "Write a day of the calendar as 2030-11-25.",
            );
        }
        day
    }

    /// An amount with its currency.
    pub fn money(&mut self, name: &str) -> Money {
        let text = self.optional_text(name).unwrap_or_default();
        Money::read(&text).unwrap_or_else(|error| {
            let detail = format!("{error}; write it as 180.00 USD.");
            self.fault(name, "order.amount", &detail);
            Money::zero(Currency::from_code("USD").expect("a currency of ISO 4217"))
        })
    }

    /// One of some words.
    pub fn words(&mut self, name: &str, known: &[&str]) -> Option<String> {
        let text = self.optional_text(name)?;
        if !known.contains(&text.as_str()) {
            let detail = format!("It takes one of: {}.", known.join(", "));
            self.fault(name, "order.word", &detail);
        }
        Some(text)
    }

    fn optional_text(&mut self, name: &str) -> Option<String> {
        match self.fields.get(name) {
            None | Some(Value::Null) => None,
            Some(Value::String(text)) => Some(text.clone()),
            Some(_) => {
                self.fault(name, "order.text", "Send text here.");
                None
            }
        }
    }

    fn flag(&mut self, name: &str) -> bool {
        match self.fields.get(name) {
            None | Some(Value::Null) => false,
            Some(Value::Bool(flag)) => *flag,
            Some(_) => {
                self.fault(name, "order.flag", "Send true or false here.");
                false
            }
        }
    }

    fn texts(&mut self, name: &str) -> Vec<String> {
        let list = match self.fields.get(name) {
            None | Some(Value::Null) => return Vec::new(),
            Some(list) => list.as_array(),
        };
        let texts = list.and_then(|list| {
            let each = list.iter().map(|one| one.as_str().map(str::to_owned));
            each.collect::<Option<Vec<_>>>()
        });
        texts.unwrap_or_else(|| {
            self.fault(name, "order.texts", "Send a list of texts here.");
            Vec::new()
        })
    }

    fn fault(&mut self, name: &str, code: &str, detail: &str) {
        self.faults.push(fault(format!("/{name}"), code, detail));
    }
}

fn bytes(value: &Value) -> Option<Vec<u8>> {
    match value {
        Value::Object(_) => Some(value.to_string().into_bytes()),
        Value::String(text) => Some(text.clone().into_bytes()),
        _ => None,
    }
}

/// A fault of a field.
pub(super) fn fault(pointer: impl Into<String>, code: &str, detail: impl Into<String>) -> Entry {
    Entry {
        pointer: pointer.into(),
        code: code.to_owned(),
        detail: detail.into(),
        ..Entry::default()
    }
}
