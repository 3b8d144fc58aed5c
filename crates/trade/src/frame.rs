//! Frame members, outside in.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::{Measured, Turned};

/// One frame member: a moulding joined into a frame, a liner, or a floater.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Member {
    /// What other parts of the document call it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What kind of member it is.
    #[serde(default)]
    pub role: Role,
    /// Moulding, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub moulding: Option<String>,
    /// Full width seen from the front, where it differs from the catalogue's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Measured>,
    /// The lip: rabbet width in plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lip: Option<Measured>,
    /// Rabbet depth, front to back; for a floater, the recess above the ledge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rabbet_depth: Option<Measured>,
    /// Full height of the moulding, front to back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Measured>,
    /// Rabbet size minus package size, in total; left out: the shop's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub allowance: Option<Measured>,
    /// Bare rabbet wall left behind the backing for points; left out: the shop's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tail: Option<Measured>,
    /// Longest stick at hand; left out: the catalogue's, else the shop's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stick: Option<Measured>,
    /// Tilt of the sides from flat, for coves and boxes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tilt: Option<Turned>,
    /// For a floater: gap between canvas and wall, on each side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gap: Option<Measured>,
    /// For a floater: thickness of the wall seen from the front.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<Measured>,
    /// For a floater: width of the ledge the canvas is screwed to, from the wall inward.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ledge: Option<Measured>,
    /// A fillet under this member's lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fillet: Option<FrameFillet>,
}

/// What kind of member a frame member is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// A frame with a rabbet.
    #[default]
    Frame,
    /// An inner frame, often cloth-covered.
    Liner,
    /// An L-section frame with a gap round a canvas.
    Floater,
}

/// A fillet under a frame's lip.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FrameFillet {
    /// Fillet, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fillet: Option<String>,
    /// Width seen inside the lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Measured>,
    /// Thickness, which adds to the stack.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
}
