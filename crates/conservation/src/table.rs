//! The tables of constants, each row with its source and how much of it was seen.

use std::sync::LazyLock;

use serde::Deserialize;
use serde::de::{DeserializeOwned, Deserializer, Error};
use trade::SourcedStatus;
use working::{Figure, Stated};

use crate::refusal::Refusal;

/// Where a constant is from and how far it can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trust {
    /// Codes of its sources, the first the one it rests on; `CP` is common practice.
    pub source: &'static str,
    /// How much of the source was seen.
    pub status: SourcedStatus,
}

impl Trust {
    /// The code of the source it rests on.
    pub fn code(self) -> &'static str {
        self.source.split(';').next().unwrap_or(self.source)
    }

    /// In words: `from memory; CIE 157:2004 …`.
    ///
    /// Errors: a code that is not listed panics; every table's codes are tried by a test.
    pub fn sentence(self) -> String {
        if self.code() == "CP" {
            return self.status.word().to_owned();
        }
        let citation = trade::settings::cited(self.code());
        format!("{}; {citation}", self.status.word())
    }
}

/// A constant that stands in no table of its own.
#[derive(Clone, Debug, Deserialize)]
pub struct Fact {
    /// Its name in the program.
    #[serde(deserialize_with = "lasting")]
    pub id: Text,
    first: f64,
    second: Option<f64>,
    third: Option<f64>,
    #[serde(deserialize_with = "lasting")]
    unit: Text,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
    /// What it is for.
    #[serde(deserialize_with = "lasting")]
    pub words: Text,
    /// What its source calls it; empty where it stands in no such table.
    #[serde(deserialize_with = "lasting")]
    pub name: Text,
}

impl Fact {
    /// Every constant.
    pub fn all() -> &'static [Self] {
        static FACTS: LazyLock<Vec<Fact>> =
            LazyLock::new(|| rows(include_str!("../data/facts.csv")));
        &FACTS
    }

    /// The constant with this name.
    ///
    /// Errors: a name that is not in the table panics; every name is tried by a test.
    pub fn named(id: &str) -> &'static Self {
        let found = Self::all().iter().find(|fact| fact.id == id);
        found.unwrap_or_else(|| panic!("the constant {id} stands in the table"))
    }

    /// Its lowest, or only, value.
    pub const fn low(&self) -> f64 {
        self.first
    }

    /// Its middle value, where three stand.
    pub fn middle(&self) -> f64 {
        match (self.second, self.third) {
            (Some(middle), Some(_)) => middle,
            _ => self.first,
        }
    }

    /// Its highest value.
    pub fn high(&self) -> f64 {
        self.third.or(self.second).unwrap_or(self.first)
    }

    /// Its values, lowest first.
    pub fn values(&self) -> Vec<f64> {
        let rest = [self.second, self.third].into_iter().flatten();
        std::iter::once(self.first).chain(rest).collect()
    }

    /// Where it is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }

    /// A value of it, on its way into a line of working.
    pub fn stated(&self, value: f64) -> Stated<Figure> {
        Stated::table(self.trust().code(), Figure::of(value, self.unit))
    }

    /// Its lowest, or only, value, on its way into a line of working.
    pub fn only(&self) -> Stated<Figure> {
        self.stated(self.first)
    }
}

/// What an input may be.
#[derive(Clone, Debug, Deserialize)]
struct Bound {
    id: String,
    from: f64,
    to: f64,
    #[serde(deserialize_with = "lasting")]
    unit: Text,
    #[serde(deserialize_with = "lasting")]
    words: Text,
}

/// Refuses a figure outside the bounds of this name.
///
/// Errors: outside; the bounds are named. A name that is not in the table panics; a test tries all.
pub fn within(id: &str, figure: Figure) -> Result<f64, Refusal> {
    static BOUNDS: LazyLock<Vec<Bound>> =
        LazyLock::new(|| rows(include_str!("../data/bounds.csv")));
    let found = BOUNDS.iter().find(|bound| bound.id == id);
    let bound = found.unwrap_or_else(|| panic!("the bounds of {id} stand in the table"));
    if (bound.from..=bound.to).contains(&figure.value()) {
        return Ok(figure.value());
    }
    Err(Refusal::Outside {
        what: bound.words,
        given: figure,
        from: Figure::of(bound.from, bound.unit),
        to: Figure::of(bound.to, bound.unit),
    })
}

/// Reads a table that is part of the program.
pub fn rows<T: DeserializeOwned>(text: &str) -> Vec<T> {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let rows = reader.deserialize().collect::<Result<Vec<T>, _>>();
    rows.unwrap_or_else(|fault| panic!("a table of the program reads: {fault}"))
}

/// A text of a table, kept as long as the program runs.
///
/// An alias, so that a row that holds one is not taken to borrow from the file it is read from.
pub type Text = &'static str;

/// Reads a text kept as long as the program runs, as its tables are.
pub fn lasting<'de, D: Deserializer<'de>>(from: D) -> Result<&'static str, D::Error> {
    Ok(String::deserialize(from)?.leak())
}

/// The status as the tables write it; the first word counts where several stand.
pub fn status<'de, D: Deserializer<'de>>(from: D) -> Result<SourcedStatus, D::Error> {
    let text = String::deserialize(from)?;
    let known = [
        ("SEEN", SourcedStatus::Published),
        ("MEMORY", SourcedStatus::FromMemory),
        ("COMPUTED", SourcedStatus::Computed),
        ("COMMON PRACTICE", SourcedStatus::CommonPractice),
    ];
    let found = known.iter().find(|(word, _)| text.starts_with(word));
    found
        .map(|(_, status)| *status)
        .ok_or_else(|| D::Error::custom(format!("{text} is no status")))
}

/// The tables of constants by file name, as they are part of the program.
pub const TABLES: [(&str, &str); 11] = [
    (
        "light_blue_wool_dose.csv",
        include_str!("../data/light_blue_wool_dose.csv"),
    ),
    ("light_limits.csv", include_str!("../data/light_limits.csv")),
    ("light_media.csv", include_str!("../data/light_media.csv")),
    (
        "light_room_lux.csv",
        include_str!("../data/light_room_lux.csv"),
    ),
    ("light_uv.csv", include_str!("../data/light_uv.csv")),
    (
        "light_grey_scale.csv",
        include_str!("../data/light_grey_scale.csv"),
    ),
    (
        "wood_properties.csv",
        include_str!("../data/wood_properties.csv"),
    ),
    (
        "glass_thickness_astm.csv",
        include_str!("../data/glass_thickness_astm.csv"),
    ),
    (
        "glass_thickness_en.csv",
        include_str!("../data/glass_thickness_en.csv"),
    ),
    ("board_mass.csv", include_str!("../data/board_mass.csv")),
    ("board_specs.csv", include_str!("../data/board_specs.csv")),
];

#[cfg(test)]
mod tests;
