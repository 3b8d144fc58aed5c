//! Openings: the windows of a mat.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::{Measured, Pair};

/// One window through the mats, described at the mat nearest the art.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Opening {
    /// What other parts of the document call this opening.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The art seen through it, by name; left out: the only piece, or the next in order.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub art: Option<String>,
    /// Window size at the mat nearest the art, where it is given instead of worked out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub window: Option<Pair>,
    /// Its shape.
    #[serde(default)]
    pub shape: Shape,
    /// Radius of rounded corners (`rounded`).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub radius: Option<Measured>,
    /// Rise of the curve above the straight sides (`low-arch`).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rise: Option<Measured>,
    /// How far each corner is cut off along both edges (`octagon`); left out: a regular one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub corner: Option<Measured>,
    /// Number of sides (`polygon`), the bottom one level.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sides: Option<u32>,
    /// Corners of a free polygon, clockwise from any corner, from the window's left and top.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub points: Vec<[Measured; 2]>,
    /// Left edge of the outermost window from the mat's left edge (`free` layouts).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub x: Option<Measured>,
    /// Top edge of the outermost window from the mat's top edge (`free` layouts).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub y: Option<Measured>,
    /// No art behind it on purpose: a title window, a look through to the mat below.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub empty: bool,
}

/// The outline of a window.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Shape {
    /// Four square corners.
    #[default]
    Rectangle,
    /// A rectangle with rounded corners; give `radius`.
    Rounded,
    /// An ellipse; width and height are its axes.
    Oval,
    /// A circle; width and height must agree.
    Circle,
    /// Straight sides under a half circle of radius half the width.
    RoundArch,
    /// Straight sides under a flatter arc; give `rise`.
    LowArch,
    /// A rectangle with its corners cut off; `corner` says how far.
    Octagon,
    /// A regular polygon fitted to the width; give `sides`.
    Polygon,
    /// Any polygon; give `points`.
    Free,
}
