//! A day of the calendar.

use std::borrow::Cow;
use std::fmt;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A day of the calendar, written `2026-11-25`; only days that exist are held.
///
/// Units:  days from 1970 to 9999.
/// Source: the Gregorian calendar as ISO 8601 writes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: u16,
    month: u8,
    day: u8,
}

/// Why a text is no day.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("`{typed}` is no day of the calendar; write one as 2026-11-25, from 1970 on")]
pub struct DateFault {
    /// What was typed.
    pub typed: String,
}

impl Date {
    /// The day of this year, month (from 1) and day of the month (from 1); none where there is no such day.
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let within = (FIRST_YEAR..=LAST_YEAR).contains(&year) && month >= 1 && day >= 1;
        let length = months(year)
            .get(usize::from(month).checked_sub(1)?)
            .copied()?;
        (within && day <= length).then_some(Self { year, month, day })
    }

    /// Reads `2026-11-25`.
    ///
    /// Errors: another form, or a day the calendar has not.
    pub fn read(text: &str) -> Result<Self, DateFault> {
        Self::of_fields(text.trim()).ok_or_else(|| DateFault {
            typed: text.chars().take(SHOWN).collect(),
        })
    }

    /// Year, month and day of the month, both from 1.
    pub const fn parts(self) -> (u16, u8, u8) {
        (self.year, self.month, self.day)
    }

    /// Days since 1 January 1970.
    pub fn days(self) -> u32 {
        let years: u32 = (FIRST_YEAR..self.year).map(days_of).sum();
        let before = usize::from(self.month).saturating_sub(1);
        let months: u32 = months(self.year)
            .iter()
            .take(before)
            .copied()
            .map(u32::from)
            .sum();
        years + months + u32::from(self.day) - 1
    }

    /// The day this many days later; none beyond the year 9999.
    pub fn after(self, days: u32) -> Option<Self> {
        let mut left = self.days().checked_add(days)?;
        let mut year = FIRST_YEAR;
        while left >= days_of(year) {
            left -= days_of(year);
            year = (year < LAST_YEAR).then_some(year + 1)?;
        }
        for (month, length) in (1..).zip(months(year)) {
            let length = u32::from(length);
            if left < length {
                return Self::new(year, month, u8::try_from(left + 1).ok()?);
            }
            left -= length;
        }
        None
    }

    fn of_fields(text: &str) -> Option<Self> {
        let mut fields = text.split('-');
        let (year, month, day) = (fields.next()?, fields.next()?, fields.next()?);
        let plain = [(year, 4), (month, 2), (day, 2)]
            .iter()
            .all(|(text, long)| text.len() == *long && text.bytes().all(|b| b.is_ascii_digit()));
        if !plain || fields.next().is_some() {
            return None;
        }
        Self::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)
    }
}

/// The year days are counted from.
const FIRST_YEAR: u16 = 1970;

/// The last year of four digits.
const LAST_YEAR: u16 = 9999;

/// How much of what was typed is shown.
const SHOWN: usize = 40;

/// Days of the months of a year.
fn months(year: u16) -> [u8; 12] {
    let divides = |by: u16| year.rem_euclid(by) == 0;
    let leap = divides(4) && (!divides(100) || divides(400));
    let february = if leap { 29 } else { 28 };
    [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
}

fn days_of(year: u16) -> u32 {
    months(year).iter().copied().map(u32::from).sum()
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

impl Serialize for Date {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Date {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_str(Reader)
    }
}

impl JsonSchema for Date {
    fn schema_name() -> Cow<'static, str> {
        "Date".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string",
            "format": "date",
            "description": "A day of the calendar, from 1970 on.",
            "examples": ["2026-11-25"]
        })
    }
}

struct Reader;

impl Visitor<'_> for Reader {
    type Value = Date;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("write a day in quotes, such as \"2026-11-25\"")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Date, E> {
        Date::read(text).map_err(E::custom)
    }
}

#[cfg(test)]
mod tests;
