//! Where the openings of a mat stand, and the borders round them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// How several openings are arranged.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Layout {
    /// The arrangement.
    #[serde(default)]
    pub arrange: Arrangement,
    /// Columns of a grid.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub columns: Option<u32>,
    /// Strip between neighbours across, measured between the outermost windows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gutter_x: Option<Measured>,
    /// Strip between neighbours down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gutter_y: Option<Measured>,
    /// How unequal neighbours line up.
    #[serde(default)]
    pub align: Align,
}

/// The arrangement of openings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Arrangement {
    /// Side by side, left to right.
    #[default]
    Row,
    /// One below the other.
    Column,
    /// Rows and columns, filled left to right, top to bottom; each cell fits the largest.
    Grid,
    /// Each opening says its own `x` and `y`.
    Free,
}

/// How unequal neighbours line up in a row (or column).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Align {
    /// Centres on one line.
    #[default]
    Centre,
    /// Tops (or lefts) on one line.
    Start,
    /// Bottoms (or rights) on one line.
    End,
}

/// Borders of the outermost mat, each measured as the setting `mat.border_measured` says.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Borders {
    /// All four, unless one is named.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub all: Option<Measured>,
    /// Left border.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<Measured>,
    /// Right border.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub right: Option<Measured>,
    /// Top border.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub top: Option<Measured>,
    /// Bottom border.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bottom: Option<Measured>,
    /// How much wider the bottom border is than the top, where `bottom` is not named.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bottom_extra: Option<Measured>,
}
