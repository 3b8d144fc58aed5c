//! The cut list as it is written: every length still text, every value with its place.

use serde::Deserialize;
use toml::Spanned;
use trade::Units;

/// The whole file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct File {
    pub cut_list: Option<Spanned<i64>>,
    #[serde(default)]
    pub units: Units,
    pub tick: Option<Spanned<String>>,
    pub goal: Option<Spanned<String>>,
    pub kerf: Option<Spanned<Typed>>,
    pub trim: Option<Spanned<Typed>>,
    pub least_strip: Option<Spanned<Typed>>,
    pub stages: Option<Spanned<i64>>,
    pub first_cut: Option<Spanned<String>>,
    pub turn: Option<bool>,
    #[serde(default)]
    pub cut: Vec<Spanned<Cut>>,
    #[serde(default)]
    pub stick: Vec<Spanned<Stick>>,
    #[serde(default)]
    pub sheet: Vec<Spanned<Sheet>>,
    #[serde(default)]
    pub piece: Vec<Spanned<Piece>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(clippy::struct_field_names, reason = "the names people type")]
pub(super) struct Cut {
    pub material: Option<String>,
    pub kerf: Option<Spanned<Typed>>,
    pub trim: Option<Spanned<Typed>>,
    pub least_strip: Option<Spanned<Typed>>,
    pub stages: Option<Spanned<i64>>,
    pub first_cut: Option<Spanned<String>>,
    pub turn: Option<bool>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Stick {
    pub name: Option<String>,
    pub material: Option<String>,
    pub length: Spanned<Typed>,
    pub count: Option<Spanned<i64>>,
    pub cost: Option<Spanned<String>>,
    #[serde(default)]
    pub remnant: bool,
    pub trim: Option<Ends>,
    pub run: Option<String>,
    #[serde(default)]
    pub flaws: Vec<Ends>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Sheet {
    pub name: Option<String>,
    pub material: Option<String>,
    pub size: Spanned<String>,
    pub count: Option<Spanned<i64>>,
    pub cost: Option<Spanned<String>>,
    #[serde(default)]
    pub remnant: bool,
    pub trim: Option<Spanned<Typed>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Piece {
    pub name: Option<String>,
    pub material: Option<String>,
    pub length: Option<Spanned<Typed>>,
    pub size: Option<Spanned<String>>,
    pub count: Option<Spanned<i64>>,
    pub turn: Option<bool>,
    pub window: Option<Spanned<String>>,
    pub group: Option<String>,
    #[serde(rename = "match")]
    pub matched: Option<Spanned<String>>,
    pub priority: Option<Spanned<i64>>,
    pub due: Option<Spanned<String>>,
}

/// What should be two lengths, however many they are.
pub(super) type Ends = Spanned<Vec<Spanned<Typed>>>;

/// A length as somebody typed it; a number's own text is read at its place in the file.
#[derive(Debug, Deserialize)]
#[serde(
    untagged,
    expecting = "found no length where one belongs; write one such as \"16 7/8\", \"428.6 mm\" or 12"
)]
pub(super) enum Typed {
    Text(String),
    #[allow(dead_code, reason = "told apart by its kind, read from the text")]
    Whole(i64),
    #[allow(dead_code, reason = "told apart by its kind, read from the text")]
    Decimal(f64),
}
