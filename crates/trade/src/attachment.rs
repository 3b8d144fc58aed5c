//! How the art is held to its mount so that it can still move.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What holds the art.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Attachment {
    /// The kind of hold.
    #[serde(default)]
    pub hold: Hold,
    /// Paper or material of the hinges, corners or strips.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub material: Option<String>,
    /// Adhesive, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive: Option<String>,
    /// Weight of the hinges' paper, in grams to the square metre.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grammage: Option<u32>,
    /// How many; left out: the shop's rule.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
    /// The customer's written consent to an irreversible step.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub consent: bool,
}

/// The kinds of hold.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Hold {
    /// A strip behind the art's top edge, crossed by a second on the mount.
    #[default]
    THinge,
    /// A folded strip hidden behind a float.
    VHinge,
    /// A strip passed through a slot in the mount.
    SHinge,
    /// Corners without adhesive on the art.
    Corners,
    /// Edge strips without adhesive on the art.
    Strips,
    /// Stitched, pinned or laced (textiles).
    Stitched,
    /// Screwed through a ledge or held by clips (canvases).
    Mechanical,
    /// Bonded with heat and pressure: irreversible.
    DryMount,
    /// Held by the package alone.
    Loose,
}
