//! Hanging hardware and the cover on the back.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// What the piece hangs by.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Hardware {
    /// The kind of hanger.
    #[serde(default)]
    pub hanger: Hanger,
    /// Down from the top of the frame to the ring; left out: the shop's share of the height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub down: Option<Measured>,
    /// In from the outside edge to the ring; left out: the middle of the outermost rail.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inset: Option<Measured>,
    /// Length of the screws.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub screw: Option<Measured>,
    /// How far bumpers hold its back off the wall; left out: as thick as they come.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bumpers: Option<Measured>,
    /// What the finished piece weighs, in grams, once it was put on a scale; left out: the sum of its parts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grams: Option<u32>,
}

/// The kinds of hanger.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Hanger {
    /// D-rings and wire.
    #[default]
    Wire,
    /// Rings set straight on two hooks.
    Rings,
    /// Mirror plates or keyed plates at the edge.
    Plates,
    /// A bevelled rail on the frame and one on the wall.
    Cleat,
    /// None: it stands, or the customer hangs it otherwise.
    None,
}

/// The sheet that closes the back.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cover {
    /// What it is: paper, cloth, vented board; `none` leaves the back open.
    pub sheet: String,
    /// How far inside the outer edge it is trimmed; left out: the shop's habit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inside: Option<Measured>,
}
