//! Which column, by heading or by letter.

use std::fmt;

use measure::Currency;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer};

/// A column of a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Column {
    /// The one with this heading; case and spaces do not matter.
    Heading(String),
    /// The one of this letter, counted from 0: `A` is 0, `AA` is 26.
    Letter(usize),
}

impl Column {
    /// Its heading, where it is named by one.
    pub fn heading(&self) -> Option<&str> {
        match self {
            Self::Heading(heading) => Some(heading),
            Self::Letter(_) => None,
        }
    }
}

/// Letters of the alphabet, and of the last column a spreadsheet has (`XFD`).
const LETTERS: usize = 26; // geometry: of the alphabet
const MOST: usize = 3; // geometry: of a spreadsheet

/// The letters of a column: 0 is `A`.
pub fn letters(column: usize) -> String {
    let mut left = column + 1;
    let mut letters = Vec::new();
    while left > 0 {
        left -= 1;
        let place = u8::try_from(left.rem_euclid(LETTERS)).unwrap_or(0);
        letters.push(char::from(b'A' + place));
        left = left.div_euclid(LETTERS);
    }
    letters.iter().rev().collect()
}

fn of_letters(text: &str) -> Option<usize> {
    let text = text.trim();
    if text.is_empty() || text.len() > MOST {
        return None;
    }
    let mut column = 0;
    for letter in text.chars() {
        let place = u32::from(letter.to_ascii_uppercase()).checked_sub(u32::from('A'))?;
        let place = usize::try_from(place)
            .ok()
            .filter(|place| *place < LETTERS)?;
        column = column * LETTERS + place + 1;
    }
    Some(column - 1)
}

/// A heading without what does not matter in it.
pub fn plain(heading: &str) -> String {
    heading
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_lowercase()
}

impl<'de> Deserialize<'de> for Column {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Either)
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ByLetter {
    letter: String,
}

struct Either;

impl<'de> Visitor<'de> for Either {
    type Value = Column;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("write a column's heading in quotes, or { letter = \"C\" }")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Column, E> {
        if text.trim().is_empty() {
            return Err(E::custom(
                "a heading is blank; write it as the list has it, or { letter = \"C\" }",
            ));
        }
        Ok(Column::Heading(text.to_owned()))
    }
    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Column, A::Error> {
        let ByLetter { letter } = ByLetter::deserialize(MapAccessDeserializer::new(map))?;
        of_letters(&letter).map(Column::Letter).ok_or_else(|| {
            A::Error::custom(format!(
                "`{letter}` is no column's letter; write A to Z, or AA to XFD"
            ))
        })
    }
}

/// Reads the code of a currency.
pub fn currency<'de, D: Deserializer<'de>>(from: D) -> Result<Currency, D::Error> {
    let code = String::deserialize(from)?;
    Currency::from_code(&code).ok_or_else(|| {
        D::Error::custom(format!(
            "`{code}` is no currency of ISO 4217; write its three letters, such as USD"
        ))
    })
}

/// Reads what parts the cells.
pub fn delimiter<'de, D: Deserializer<'de>>(from: D) -> Result<Option<u8>, D::Error> {
    let text = String::deserialize(from)?;
    match text.as_bytes() {
        _ if text == "tab" => Ok(Some(b'\t')),
        [one] if one.is_ascii_punctuation() && *one != b'"' || *one == b'\t' => Ok(Some(*one)),
        _ => Err(D::Error::custom(format!(
            "`{text}` does not part cells; write one of \",\", \";\", \"|\" or \"tab\""
        ))),
    }
}

/// The first row.
pub const fn first() -> u32 {
    1
}
