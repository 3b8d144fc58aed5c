//! Which class of sensitivity a medium belongs to, and how light places are.

use std::sync::LazyLock;

use serde::Deserialize;
use trade::{Medium, SourcedStatus};

use crate::refusal::Refusal;
use crate::table::{Text, Trust, lasting, rows, status};

/// Classes of sensitivity to light.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// Light does not change it.
    #[serde(alias = "insensitive")]
    None,
    /// Blue wools 7 and 8.
    Low,
    /// Blue wools 4 to 6.
    Medium,
    /// Blue wools 1 to 3.
    High,
}

impl Class {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::None => "not sensitive",
            Self::Low => "low sensitivity",
            Self::Medium => "medium sensitivity",
            Self::High => "high sensitivity",
        }
    }

    /// What schemes call it.
    pub(super) const fn names(self) -> &'static [&'static str] {
        match self {
            Self::None => &["insensitive", "none"],
            Self::Low => &["low"],
            Self::Medium => &["medium", "sensitive", "moderately susceptible"],
            Self::High => &["high", "very sensitive", "highly susceptible"],
        }
    }
}

/// A row of the table of media.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Media {
    /// What it is.
    #[serde(deserialize_with = "lasting")]
    pub medium: Text,
    /// Its class.
    pub category: Class,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
    /// What else must be known.
    #[serde(deserialize_with = "lasting")]
    pub note: Text,
}

impl Media {
    /// Where its class is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }
}

/// The table of media.
pub static MEDIA: LazyLock<Vec<Media>> =
    LazyLock::new(|| rows(include_str!("../../data/light_media.csv")));

/// The row of the table of media that a name means.
///
/// Shape:  the whole name, in any case; a part of it, where it stands in one name only.
/// Errors: no such medium, or several; those there are.
pub fn media_named(name: &str) -> Result<&'static Media, Refusal> {
    let wanted = name.trim().to_lowercase();
    let whole = MEDIA
        .iter()
        .find(|media| media.medium.to_lowercase() == wanted);
    if let Some(found) = whole {
        return Ok(found);
    }
    let holds =
        |media: &&Media| !wanted.is_empty() && media.medium.to_lowercase().contains(&wanted);
    let found: Vec<&'static Media> = MEDIA.iter().filter(holds).collect();
    match found.as_slice() {
        [only] => Ok(only),
        [] => Err(unknown_media(name, MEDIA.iter())),
        several => Err(unknown_media(name, several.iter().copied())),
    }
}

fn unknown_media<'a>(name: &str, known: impl Iterator<Item = &'a Media>) -> Refusal {
    Refusal::unknown(
        "medium that light fades",
        name,
        known.map(|media| media.medium),
    )
}

#[derive(Deserialize)]
struct TakenAs {
    medium: Medium,
    #[serde(rename = "taken_as")]
    likely: String,
    #[serde(rename = "could_be")]
    worse: String,
}

/// What a document's medium is taken for where nothing better is known.
pub fn media_of(medium: Medium) -> &'static Media {
    taken(medium, |row| &row.likely)
}

/// The worse medium that a document's medium may turn out to be.
pub fn media_or_worse(medium: Medium) -> &'static Media {
    taken(medium, |row| &row.worse)
}

fn taken(medium: Medium, name: impl Fn(&TakenAs) -> &String) -> &'static Media {
    static ROWS: LazyLock<Vec<TakenAs>> =
        LazyLock::new(|| rows(include_str!("../../data/medium_class.csv")));
    let row = ROWS.iter().find(|row| row.medium == medium);
    let row = row.expect("every medium of the document stands in the table");
    let found = MEDIA.iter().find(|media| media.medium == name(row));
    found.expect("it is taken for a medium of the table")
}

/// How light a place is.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Place {
    /// The place.
    #[serde(deserialize_with = "lasting")]
    pub place: Text,
    /// Its light at least, lux.
    pub lux_lo: f64,
    /// Its light at most, lux.
    pub lux_hi: f64,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
}

impl Place {
    /// Where its light is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }
}

/// The table of places.
pub static PLACES: LazyLock<Vec<Place>> =
    LazyLock::new(|| rows(include_str!("../../data/light_room_lux.csv")));

/// The place of this name.
///
/// Errors: no such place; those there are.
pub fn place(name: &str) -> Result<&'static Place, Refusal> {
    let found = PLACES.iter().find(|place| place.place == name);
    found.ok_or_else(|| Refusal::unknown("place", name, PLACES.iter().map(|place| place.place)))
}
