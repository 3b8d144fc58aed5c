//! Comparing what was found with what a table expects.

use std::collections::BTreeMap;
use std::fmt;

use measure::{Length, Unit, read_length};

use super::columns::OUTPUTS;
use super::outputs::Found;
use super::row::Row;

/// A column that differs, or a row that could not be judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// The column; none where the whole row failed.
    pub column: Option<&'static str>,
    /// What the table expects.
    pub expected: String,
    /// What was found.
    pub found: String,
}

impl Difference {
    pub(super) fn row(why: String) -> Self {
        Self {
            column: None,
            expected: String::new(),
            found: why,
        }
    }
}

impl fmt::Display for Difference {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.column {
            Some(column) => write!(
                f,
                "{column}: expected {}, found {}",
                self.expected, self.found
            ),
            None => f.write_str(&self.found),
        }
    }
}

/// Compares every expected column that is filled: how many there were, and those that differ.
pub(super) fn compare(
    row: &Row,
    found: &BTreeMap<&'static str, Found>,
) -> (usize, Vec<Difference>) {
    let mut compared = 0;
    let mut differences = Vec::new();
    for column in OUTPUTS {
        let Some(expected) = row.expected(column) else {
            continue;
        };
        compared += 1;
        let same = found
            .get(column)
            .is_some_and(|found| agrees(expected, found));
        if !same {
            let shown = found.get(column).map_or_else(|| "nothing".to_owned(), show);
            differences.push(Difference {
                column: Some(column),
                expected: expected.to_owned(),
                found: shown,
            });
        }
    }
    (compared, differences)
}

fn agrees(expected: &str, found: &Found) -> bool {
    match found {
        Found::Length(length) => length_agrees(expected, *length),
        Found::Lengths(lengths) => {
            let parts: Vec<&str> = expected.split('|').collect();
            parts.len() == lengths.len()
                && parts
                    .iter()
                    .zip(lengths)
                    .all(|(part, length)| length_agrees(part, *length))
        }
        Found::Angle(angle) => decimal_agrees(expected, angle.approx_degrees()),
        Found::Count(count) => expected.parse() == Ok(*count),
        Found::Text(text) => expected == text,
        Found::Flags(flags) => {
            let mut expected: Vec<&str> = expected
                .split(['|', ';', ','])
                .map(str::trim)
                .filter(|flag| *flag != "none")
                .collect();
            let mut flags = flags.clone();
            expected.sort_unstable();
            flags.sort_unstable();
            expected == flags
        }
    }
}

/// A decimal with this many places was rounded by whoever wrote it: tables of angles and of
/// polygons print four.
const ROUNDED_PLACES: usize = 4;

/// Exactly equal; a rounded decimal must agree in every place it prints.
fn length_agrees(expected: &str, found: Length) -> bool {
    let decimals = expected
        .split_once('.')
        .map_or(0, |(_, decimals)| decimals.len());
    let exact = read_length(expected, Unit::Inch).is_ok_and(|length| length == found);
    exact || (decimals >= ROUNDED_PLACES && decimal_agrees(expected, found.approx_inches()))
}

fn decimal_agrees(expected: &str, found: f64) -> bool {
    let places = expected
        .split_once('.')
        .map_or(0, |(_, decimals)| decimals.len());
    format!("{found:.places$}") == expected
}

fn show(found: &Found) -> String {
    let plain = |length: &Length| length.exact_inches().trim_end_matches(" in").to_owned();
    match found {
        Found::Length(length) => plain(length),
        Found::Lengths(lengths) => lengths.iter().map(plain).collect::<Vec<_>>().join("|"),
        Found::Angle(angle) => angle.print_four_decimals_nearest(),
        Found::Count(count) => count.to_string(),
        Found::Text(text) => text.clone(),
        Found::Flags(flags) if flags.is_empty() => "none".to_owned(),
        Found::Flags(flags) => flags.join("|"),
    }
}
