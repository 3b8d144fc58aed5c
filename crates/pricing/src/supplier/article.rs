//! A row of a list, read as an article of the supplier.

mod facts;
mod money;

use std::borrow::Cow;

use trade::{Date, Kind, Material};

use super::columns::Columns;
use super::mapping::{Field, Mapping};
use super::rejected::{Reason, Rejected, clipped};
use super::rows::{Cell, Row};

/// What a row turned out to be.
pub(super) enum Read {
    /// Left out on purpose; what stands where the code would.
    LeftOut(Option<String>),
    /// An article.
    Article(Box<Offered>),
    /// Refused, with everything wrong in it.
    Rejected(Vec<Rejected>),
}

/// An article as a supplier offers it.
pub(super) struct Offered {
    /// The row.
    pub row: u32,
    /// The supplier's code.
    pub code: String,
    /// What the row says of it; its own code is prefix and supplier's code.
    pub material: Material,
    /// Whether the row says that it is no longer sold.
    pub gone: bool,
    /// What the code's column is called.
    pub column: String,
}

/// A list being read.
pub(super) struct ArticleReader<'a> {
    pub mapping: &'a Mapping,
    pub columns: Columns,
    /// The day its prices hold from.
    pub on: Date,
}

impl ArticleReader<'_> {
    /// Reads a row; one without any price and with nothing, or nothing else, in the place of its code
    /// is a heading and is left out.
    pub fn read(&self, row: &Row) -> Read {
        let cell = |place: usize| row.cells.get(place).unwrap_or(&Cell::Blank);
        let code = self.columns.fields.get(&Field::Code).copied().unwrap_or(0);
        let code = cell(code);
        let priceless = self
            .columns
            .prices
            .iter()
            .all(|at| *cell(at.price) == Cell::Blank);
        let filled = row
            .cells
            .iter()
            .filter(|cell| **cell != Cell::Blank)
            .count();
        // With nothing but code and price in the mapping, a code alone is an article without a price.
        let more = self.columns.fields.len() + self.columns.prices.len() > 2;
        let heading = priceless && (*code == Cell::Blank || more && filled == 1);
        if heading || self.mapping.skip.contains(&row.number) {
            return Read::LeftOut(match code {
                Cell::Text(text) | Cell::Number(text) => Some(text.clone()),
                _ => None,
            });
        }
        let mut reading = Reading {
            list: self,
            row,
            faults: Vec::new(),
        };
        let offered = reading.article();
        match offered {
            Some(offered) if reading.faults.is_empty() => Read::Article(Box::new(offered)),
            _ => Read::Rejected(reading.faults),
        }
    }
}

/// A value of a row, and where it stands.
struct Value<'a> {
    text: Cow<'a, str>,
    /// A number of the spreadsheet itself, which no habit of writing applies to.
    number: bool,
    column: String,
}

/// A row being read; faults gather.
struct Reading<'a> {
    list: &'a ArticleReader<'a>,
    row: &'a Row,
    faults: Vec<Rejected>,
}

/// The most signs of a code.
const LONGEST_CODE: usize = 64; // geometry: of a line on the screen

impl<'a> Reading<'a> {
    fn article(&mut self) -> Option<Offered> {
        let code = self.code();
        let kind = self.kind();
        let mut material = Material::named(&format!(
            "{}{}",
            self.list.mapping.prefix,
            code.as_ref().map_or("", |value| &value.text)
        ));
        material.kind = kind;
        material.supplier = Some(self.list.mapping.supplier.trim().to_owned());
        material.supplier_code = code.as_ref().map(|value| value.text.clone().into_owned());
        self.facts(&mut material);
        let gone = self.gone();
        if !gone {
            material.cost = self.costs(kind);
        }
        let code = code?;
        for fault in &mut self.faults {
            fault.code = Some(code.text.clone().into_owned());
        }
        Some(Offered {
            row: self.row.number,
            code: code.text.into_owned(),
            material,
            gone,
            column: code.column,
        })
    }

    fn code(&mut self) -> Option<Value<'a>> {
        let row = self.row.number;
        let Some(code) = self.value(Field::Code) else {
            if self.faults.is_empty() {
                let place = self
                    .list
                    .columns
                    .fields
                    .get(&Field::Code)
                    .copied()
                    .unwrap_or(0);
                let column = self.list.columns.name(place);
                self.refuse(column, "", Reason::Blank { row });
            }
            return None;
        };
        if code.text.chars().count() > LONGEST_CODE || code.text.contains(char::is_control) {
            self.reject(&code, Reason::Code);
            return None;
        }
        Some(code)
    }

    fn kind(&mut self) -> Option<Kind> {
        let Some(value) = self.value(Field::Kind) else {
            if self.list.mapping.kind.is_none() {
                let row = self.row.number;
                self.refuse(Field::Kind.word().to_owned(), "", Reason::Blank { row });
            }
            return self.list.mapping.kind;
        };
        let words = &self.list.mapping.words.kind;
        let known = words
            .iter()
            .find(|(word, _)| same_word(word, &value.text))
            .map(|(_, kind)| *kind);
        let known = known.or_else(|| {
            KINDS
                .into_iter()
                .find(|kind| same_word(kind.word(), &value.text))
        });
        if known.is_none() {
            let word = clipped(&value.text);
            self.reject(&value, Reason::Word { word, list: "kind" });
        }
        known
    }

    fn gone(&mut self) -> bool {
        let words = &self.list.mapping.words.discontinued;
        self.value(Field::Discontinued)
            .is_some_and(|value| words.iter().any(|word| same_word(word, &value.text)))
    }

    /// What a field has in this row: what is fixed, else its cell, else its default.
    fn value(&mut self, field: Field) -> Option<Value<'a>> {
        let stated = |text: &'a String| Value {
            text: Cow::Borrowed(text.trim()),
            number: false,
            column: field.word().to_owned(),
        };
        if let Some(fixed) = self.list.mapping.fixed.get(&field) {
            return Some(stated(fixed));
        }
        let place = self.list.columns.fields.get(&field).copied();
        match place.map(|place| self.cell(place)) {
            Some(Ok(Some(value))) => Some(value),
            Some(Err(())) => None,
            Some(Ok(None)) | None => self.list.mapping.defaults.get(&field).map(stated),
        }
    }

    /// A cell's value; an error where it is refused, which is noted.
    fn cell(&mut self, place: usize) -> Result<Option<Value<'a>>, ()> {
        let cell = self.row.cells.get(place).unwrap_or(&Cell::Blank);
        let (text, number) = match cell {
            Cell::Blank => return Ok(None),
            Cell::Text(text) => (text, false),
            Cell::Number(text) => (text, true),
            Cell::Date => return self.unreadable(place, "", Reason::IsDate),
            Cell::Failed(text) => return self.unreadable(place, text, Reason::IsError),
            Cell::NotText => return self.unreadable(place, "", Reason::NotText),
        };
        let column = self.list.columns.name(place);
        Ok(Some(Value {
            text: Cow::Borrowed(text.as_str()),
            number,
            column,
        }))
    }

    fn unreadable(
        &mut self,
        place: usize,
        text: &str,
        reason: Reason,
    ) -> Result<Option<Value<'a>>, ()> {
        self.refuse(self.list.columns.name(place), text, reason);
        Err(())
    }

    fn reject(&mut self, value: &Value<'_>, reason: Reason) {
        self.refuse(value.column.clone(), &value.text, reason);
    }

    fn refuse(&mut self, column: String, text: &str, reason: Reason) {
        self.faults.push(Rejected {
            row: self.row.number,
            code: None,
            column,
            value: clipped(text),
            reason,
        });
    }
}

/// Every kind, for words that are its own.
const KINDS: [Kind; 8] = [
    Kind::Board,
    Kind::Backing,
    Kind::Glazing,
    Kind::Moulding,
    Kind::Fillet,
    Kind::Spacer,
    Kind::Hardware,
    Kind::Service,
];

/// Whether two words are the same but for case and spaces.
fn same_word(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}
