//! The form of a wall document.

use std::fmt;

use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer};
use toml::Spanned;

/// A wall document.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Form {
    /// What a bare number means.
    #[serde(default)]
    pub units: UnitsWord,
    /// What the wall is called.
    pub title: Option<String>,
    /// From its left corner to its right.
    pub width: Typed,
    /// From the floor to the ceiling.
    pub height: Option<Typed>,
    /// From the floor to the centre of what hangs there; left out: the shop's habit.
    pub centre: Option<Typed>,
    /// Left between neighbours; left out: the shop's habit.
    pub gap: Option<Typed>,
    /// From the seat of a hook up to its nail; left out: the shop's habit.
    pub seat_to_nail: Option<Typed>,
    /// How the pieces are laid out.
    #[serde(default)]
    pub layout: LayoutWord,
    /// How unequal neighbours line up.
    #[serde(default)]
    pub align: AlignWord,
    /// Columns of a grid.
    pub columns: Option<usize>,
    /// One tread of a stairway.
    pub run: Option<Typed>,
    /// One riser; below zero where it climbs to the left.
    pub rise: Option<Typed>,
    /// From the left corner to the first frame on stairs.
    pub first_left: Option<Typed>,
    /// Hooks for each piece; left out: as its weight asks.
    pub hooks: Option<u32>,
    /// What hangs there.
    #[serde(default)]
    pub piece: Vec<PieceForm>,
}

/// A piece of a wall document.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PieceForm {
    /// Its job file, beside the wall's.
    pub job: Option<String>,
    /// What it is called; left out: the title of its art.
    pub name: Option<String>,
    /// Which row of a block it hangs in, from 1 at the top.
    pub row: Option<u32>,
    /// Outside width, where there is no job.
    pub width: Option<Typed>,
    /// Outside height.
    pub height: Option<Typed>,
    /// From its top down to the seat of its hooks, under load.
    pub seat: Option<Typed>,
    /// Between two hooks; left out: one in the middle.
    pub hooks_apart: Option<Typed>,
    /// Hooks for this piece.
    pub hooks: Option<u32>,
}

/// What a bare number means.
#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UnitsWord {
    #[default]
    In,
    Mm,
}

impl From<UnitsWord> for trade::Units {
    fn from(word: UnitsWord) -> Self {
        match word {
            UnitsWord::In => Self::Inches,
            UnitsWord::Mm => Self::Millimetres,
        }
    }
}

/// How pieces are laid out.
#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LayoutWord {
    One,
    #[default]
    Row,
    Rows,
    Block,
    Grid,
    Stairs,
}

/// How unequal neighbours line up.
#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AlignWord {
    #[default]
    Centre,
    Top,
    Bottom,
    Line,
}

/// A length as it was typed, with its place.
pub type Typed = Spanned<Text>;

/// A text, or a number as the text somebody would have typed for it.
pub struct Text(pub String);

impl<'de> Deserialize<'de> for Text {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(TextVisitor)
    }
}

struct TextVisitor;

impl Visitor<'_> for TextVisitor {
    type Value = Text;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a length such as \"16 7/8\", \"428.6 mm\" or 12")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Text, E> {
        Ok(Text(text.to_owned()))
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<Text, E> {
        Ok(Text(number.to_string()))
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<Text, E> {
        Ok(Text(number.to_string()))
    }
}
