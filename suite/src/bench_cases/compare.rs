//! Comparing what was found with what a row expects.

use std::collections::BTreeMap;

use measure::{Angle, Length, Mass, Unit, read_length};

use super::row::Row;

/// A value found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Found {
    /// An exact length.
    Length(Length),
    /// Exact lengths in order.
    Lengths(Vec<Length>),
    /// A length that went through a curve and was rounded to the nearest quantum.
    Nearest(Length),
    /// An angle.
    Angle(Angle),
    /// A mass in kilograms.
    Kilograms(Mass),
    /// A mass in pounds.
    Pounds(Mass),
    /// A plain whole number.
    Count(u128),
}

/// Everything found, by name.
pub(super) type Answers = BTreeMap<String, Found>;

/// Compares every expected output: how many there were, and a sentence for each that differs.
pub(super) fn compare(row: &Row, found: &Answers) -> (usize, Vec<String>) {
    let mut differences = Vec::new();
    let mut compared = 0;
    for (name, expected) in row.outputs() {
        compared += 1;
        match found.get(name) {
            Some(found) if found.agrees(expected) => {}
            Some(found) => differences.push(format!(
                "{name}: expected {expected}, found {}",
                found.shown(places(expected))
            )),
            None => {
                let known: Vec<&str> = found.keys().map(String::as_str).collect();
                differences.push(format!(
                    "{name}: kind {} gives no such output; it gives {}",
                    row.kind,
                    known.join(", ")
                ));
            }
        }
    }
    (compared, differences)
}

/// Decimals a number is written with.
fn places(text: &str) -> Option<u32> {
    let (_, decimals) = text.split_once('.')?;
    u32::try_from(decimals.len()).ok()
}

impl Found {
    /// Exact values must be equal, rounded ones in every place that is printed.
    fn agrees(&self, expected: &str) -> bool {
        match self {
            Self::Length(found) => length_agrees(*found, expected),
            Self::Lengths(found) => {
                let parts: Vec<&str> = expected.split('|').collect();
                let each = found.iter().zip(&parts);
                parts.len() == found.len()
                    && each.fold(true, |all, (found, part)| {
                        all && length_agrees(*found, part)
                    })
            }
            Self::Nearest(found) if places(expected).is_none() => length_agrees(*found, expected),
            Self::Count(found) => expected.parse() == Ok(*found),
            Self::Nearest(_) | Self::Angle(_) | Self::Kilograms(_) | Self::Pounds(_) => {
                self.shown(places(expected)) == expected
            }
        }
    }

    /// As a table would write it; `places` is how many decimals of a rounded value.
    fn shown(&self, places: Option<u32>) -> String {
        let (decimals, width) = (places.unwrap_or(0), width(places));
        match self {
            Self::Length(length) => plain(*length),
            Self::Lengths(lengths) => {
                let each: Vec<String> = lengths.iter().map(|length| plain(*length)).collect();
                each.join("|")
            }
            Self::Nearest(length) if places.is_none() => plain(*length),
            Self::Nearest(length) => format!("{:.width$}", length.approx_inches()),
            Self::Angle(angle) => format!("{:.width$}", angle.approx_degrees()),
            Self::Kilograms(mass) => bare(&mass.print_kg_nearest(decimals)),
            Self::Pounds(mass) => bare(&mass.print_lb_nearest(decimals)),
            Self::Count(count) => count.to_string(),
        }
    }
}

fn width(places: Option<u32>) -> usize {
    let places = usize::try_from(places.unwrap_or(0));
    places.expect("a number has few decimals")
}

fn plain(length: Length) -> String {
    bare(&length.exact_inches())
}

/// The number without its unit.
fn bare(printed: &str) -> String {
    let number = printed
        .rsplit_once(' ')
        .map_or(printed, |(number, _)| number);
    number.to_owned()
}

/// Exactly equal; a decimal that no quantum holds must agree in every place it prints.
fn length_agrees(found: Length, expected: &str) -> bool {
    if let Ok(length) = read_length(expected, Unit::Inch) {
        return length == found;
    }
    let width = width(places(expected));
    format!("{:.width$}", found.approx_inches()) == expected
}
