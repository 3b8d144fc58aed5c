//! Mats, front to back.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// One mat. The first in the document is the one nearest the glazing.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Mat {
    /// Board, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub board: Option<String>,
    /// Thickness, where it differs from the catalogue's or there is no board code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
    /// Colour, for drawings and the ticket, where it differs from the catalogue's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    /// How far this mat's windows stand back from those of the mat below, on each side.
    /// Not used on the mat nearest the art.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reveal: Option<Measured>,
    /// Openings of this mat that span several of the mat below: each is a list of opening names.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub around: Vec<Vec<String>>,
    /// How the window edge is cut.
    #[serde(default)]
    pub bevel: Bevel,
    /// A thin decorative moulding fitted inside this mat's windows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fillet: Option<MatFillet>,
    /// A line cut into the face, this far outside the window.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub groove: Option<Measured>,
}

/// How the edge of a window is cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Bevel {
    /// Sloped so that the core shows; the foot stands inside the face edge.
    #[default]
    Normal,
    /// Sloped the other way; the core is hidden.
    Reverse,
    /// Cut square.
    Square,
}

/// A fillet in a mat window.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MatFillet {
    /// Fillet, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fillet: Option<String>,
    /// Width seen inside the window.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Measured>,
    /// Width hidden behind the mat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tuck: Option<Measured>,
    /// Thickness of the hidden part, which adds to the stack.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
}
