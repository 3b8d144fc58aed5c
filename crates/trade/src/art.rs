//! Art: what came over the counter.

use measure::Length;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::ConditionMark;
use crate::written::{Measured, Pair};

/// One piece of art (or one object of a shadowbox).
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Art {
    /// What openings call this piece; needed only when there are several.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Title as it is to stand on the ticket and the label.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub title: Option<String>,
    /// Artist or maker.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub artist: Option<String>,
    /// What it is made of.
    #[serde(default)]
    pub medium: Medium,
    /// Its colours, by a name of the table of media that light fades: `colour pencil`; left out: what
    /// the medium is usually taken for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colours: Option<String>,
    /// Weight of its sheet, in grams to the square metre; left out: the shop's usual sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grammage: Option<u32>,
    /// What it weighs by itself, in grams: a stretched canvas, a panel, an object.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grams: Option<u32>,
    /// What carries it: wove paper, linen, panel.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub support: Option<String>,
    /// Width of the rectangle that matters: image, sheet, plate mark or chosen crop.
    pub width: Measured,
    /// Height of the same rectangle; left out for a polygon, where width is across the flats.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Measured>,
    /// Further width readings of the same rectangle (other end, middle), for art out of square.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub width_readings: Vec<Measured>,
    /// Further height readings.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub height_readings: Vec<Measured>,
    /// Both diagonals, to find how far the art leans.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diagonals: Option<[Measured; 2]>,
    /// The whole sheet, where the rectangle above is only part of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sheet: Option<Pair>,
    /// Deckle: how deep the valleys run in from the extreme tips, on each edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub deckle: Option<Deckle>,
    /// Thickness at the deepest point; for a canvas the stretcher's depth with its folds.
    #[serde(default)]
    pub thickness: Measured,
    /// How it is shown. Left out: under a window when there are mats, else to the frame's lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub show: Option<Show>,
    /// How far a window covers it on each side; negative leaves paper showing round the image.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub overlap: Option<Measured>,
    /// For a float: bare ground left on each side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub margin: Option<Measured>,
    /// For a float: thickness of the hidden board that lifts it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lift: Option<Measured>,
    /// Where the signature stands, measured from the rectangle's left and top edges.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub signature: Option<Box4>,
    /// Place on the ground of a shadowbox, left edge from the display's left.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub x: Option<Measured>,
    /// Place on the ground of a shadowbox, top edge from the display's top.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub y: Option<Measured>,
    /// `portrait`, `landscape` or `square` as the photograph shows it; checked against the sizes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub orientation: Option<Orientation>,
    /// Which edge is the top, where it can be doubted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub top: Option<String>,
    /// Condition as taken in: tears, creases, foxing, old tape, losses.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub condition: Option<String>,
    /// What was seen on it when it was taken in, each thing at its place.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub marks: Vec<ConditionMark>,
    /// Picture file that drawings may show, beside the job document.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<String>,
}

impl Art {
    /// Art of this size, of which nothing else is known.
    pub fn sized(width: Length, height: Length) -> Self {
        Self {
            name: None,
            title: None,
            artist: None,
            medium: Medium::default(),
            colours: None,
            grammage: None,
            grams: None,
            support: None,
            width: Measured(width),
            height: Some(Measured(height)),
            width_readings: Vec::new(),
            height_readings: Vec::new(),
            diagonals: None,
            sheet: None,
            deckle: None,
            thickness: Measured::default(),
            show: None,
            overlap: None,
            margin: None,
            lift: None,
            signature: None,
            x: None,
            y: None,
            orientation: None,
            top: None,
            condition: None,
            marks: Vec::new(),
            picture: None,
        }
    }
}

/// Which way a piece stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Orientation {
    /// Taller than wide.
    Portrait,
    /// Wider than tall.
    Landscape,
    /// As wide as tall.
    Square,
}

/// How a piece of art is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Show {
    /// Under the edge of a window: the window is smaller than the art.
    Window,
    /// Whole, its edges visible, on a board larger than itself.
    Float,
    /// To the edge of the package, under the frame's lip.
    Bleed,
    /// On a board wrapped with cloth (textiles).
    Wrapped,
    /// An object on the ground of a shadowbox.
    Object,
}

/// What a piece of art is, as far as framing must know.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Medium {
    /// A print or drawing on paper with fast media.
    #[default]
    Print,
    /// A watercolour or gouache.
    Watercolour,
    /// Pastel, charcoal, chalk: anything that dusts off.
    Pastel,
    /// A photograph on photographic paper.
    Photograph,
    /// A letter, certificate or map.
    Document,
    /// A painting on stretched canvas.
    Canvas,
    /// A painting or print on a rigid panel.
    Panel,
    /// Needlework, a flag, a jersey.
    Textile,
    /// A thing with depth: medals, shells, a violin bow.
    Object,
    /// A looking glass.
    Mirror,
    /// A reproduction of no lasting value.
    Reproduction,
}

impl Medium {
    /// Whether glazing must stay well clear because the surface sticks or dusts off.
    pub const fn needs_clear_air(self) -> bool {
        matches!(self, Self::Pastel | Self::Photograph | Self::Watercolour)
    }
}

/// Depth of a deckle's valleys below its tips, edge by edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Deckle {
    /// Left edge.
    #[serde(default)]
    pub left: Measured,
    /// Right edge.
    #[serde(default)]
    pub right: Measured,
    /// Top edge.
    #[serde(default)]
    pub top: Measured,
    /// Bottom edge.
    #[serde(default)]
    pub bottom: Measured,
}

/// A box on the art, from its left and top edges.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Box4 {
    /// Left edge from the art's left.
    pub x: Measured,
    /// Top edge from the art's top.
    pub y: Measured,
    /// Width of the box.
    pub width: Measured,
    /// Height of the box.
    pub height: Measured,
}
