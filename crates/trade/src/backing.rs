//! What lies behind the art: mount, sink, backing, clips, build-ups, strainers.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// A board of the package: mount or lift.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Layer {
    /// Board, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub board: Option<String>,
    /// Thickness, where it differs from the catalogue's or there is no code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
}

/// One board of the backing, front to back.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Backing {
    /// Board, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub board: Option<String>,
    /// Thickness, where it differs from the catalogue's or there is no code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
    /// How much smaller than the package it is cut, in total; left out: the shop's rule.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub undersize: Option<Measured>,
}

/// Board built up round thick art so that the window clears it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sink {
    /// Board, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub board: Option<String>,
    /// Depth of the build-up, front to back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Measured>,
    /// Room left round the art on each side; left out: the shop's habit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub room: Option<Measured>,
}

/// Offset clips that hold a package standing proud of the frame's back.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Clips {
    /// Offsets at hand; left out: the shop's.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub offsets: Vec<Measured>,
}

/// Strips glued to a frame's back to deepen its rabbet.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BuildUp {
    /// How much depth the strips add; left out: just enough.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Measured>,
    /// Width of the strips.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Measured>,
}

/// A fixed-corner support inside the back of a frame that stiffens it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Strainer {
    /// Width of a bar.
    pub width: Measured,
    /// Depth of a bar, front to back.
    pub depth: Measured,
    /// Upright bars between the sides.
    #[serde(default)]
    pub uprights: u32,
    /// Level bars between top and bottom.
    #[serde(default)]
    pub cross_bars: u32,
}
