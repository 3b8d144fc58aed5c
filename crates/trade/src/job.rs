//! The job document: one piece, described once.

use std::collections::BTreeMap;

use measure::Unit;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::{
    Art, Attachment, Backing, Borders, BuildUp, Clips, Cover, Glazing, Hardware, Layer, Layout,
    Mat, Material, Member, Opening, Pair, Sink, Site, Spacer, Strainer, Walls, Wrap,
};

/// One piece of framing, from the art to the frame's outside.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// Version of the document's form.
    pub rabbet: u32,
    /// What a bare number means: `in` or `mm`.
    #[serde(default)]
    pub units: Units,
    /// Number of sides of the frame; with other than four, sizes are across the flats.
    #[serde(default = "four", skip_serializing_if = "is_four")]
    pub sides: u32,
    /// Seen from both sides: everything before the art is repeated behind it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub double_sided: bool,
    /// Who it is for and when.
    #[serde(default)]
    pub identity: Identity,
    /// A size that is given instead of worked out: a frame at hand, an alcove.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fit: Option<Fit>,
    /// The art, one or several pieces.
    #[serde(default)]
    pub art: Vec<Art>,
    /// Frame members, outside in.
    #[serde(default)]
    pub frame: Vec<Member>,
    /// Glazing, front to back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub glazing: Vec<Glazing>,
    /// Strips behind the glazing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spacer: Option<Spacer>,
    /// Walls of a shadowbox.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub walls: Option<Walls>,
    /// Borders of the outermost mat.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub borders: Option<Borders>,
    /// Mats, front to back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub mat: Vec<Mat>,
    /// Openings; left out: one, over the art.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub opening: Vec<Opening>,
    /// How several openings are arranged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub layout: Option<Layout>,
    /// Board built up round thick art.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sink: Option<Sink>,
    /// Cloth-covered board under a textile.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wrap: Option<Wrap>,
    /// How the art is held.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub attachment: Option<Attachment>,
    /// Board the art is attached to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mount: Option<Layer>,
    /// Backing, front to back.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub backing: Vec<Backing>,
    /// Clips for a package standing proud.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clips: Option<Clips>,
    /// Strips that deepen the rabbet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub build_up: Option<BuildUp>,
    /// A stiffening frame in the back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strainer: Option<Strainer>,
    /// What it hangs by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hardware: Option<Hardware>,
    /// The sheet that closes the back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cover: Option<Cover>,
    /// Where it will hang.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Site>,
    /// Materials of this job only, beside the shop's catalogue.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub material: Vec<Material>,
    /// Settings of this job only, by id.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub settings: BTreeMap<String, String>,
}

impl Job {
    /// An empty document in the given units.
    pub fn empty(units: Units) -> Self {
        Self {
            rabbet: crate::VERSION,
            units,
            sides: four(),
            double_sided: false,
            identity: Identity::default(),
            fit: None,
            art: Vec::new(),
            frame: Vec::new(),
            glazing: Vec::new(),
            spacer: None,
            walls: None,
            borders: None,
            mat: Vec::new(),
            opening: Vec::new(),
            layout: None,
            sink: None,
            wrap: None,
            attachment: None,
            mount: None,
            backing: Vec::new(),
            clips: None,
            build_up: None,
            strainer: None,
            hardware: None,
            cover: None,
            place: None,
            material: Vec::new(),
            settings: BTreeMap::new(),
        }
    }
}

fn four() -> u32 {
    4
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde passes a reference"
)]
fn is_four(sides: &u32) -> bool {
    *sides == four()
}

/// What a bare number means, and which unit is printed first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum Units {
    /// Inches.
    #[default]
    #[serde(rename = "in")]
    Inches,
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetres,
}

impl Units {
    /// The unit a bare number is in.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Inches => Unit::Inch,
            Self::Millimetres => Unit::Millimetre,
        }
    }
}

/// Who a piece is for, and what was promised.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Identity {
    /// Order number or code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub order: Option<String>,
    /// Customer's name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub customer: Option<String>,
    /// Revision of this document.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub revision: Option<u32>,
    /// Day it was taken in, `2026-11-25`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_in: Option<String>,
    /// Who took it in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taken_by: Option<String>,
    /// Day it is promised for, `2026-12-04`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub due: Option<String>,
    /// Where the art lies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bin: Option<String>,
    /// Framing level promised.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub level: Option<Level>,
    /// What the bench must know.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
}

/// Framing levels, lowest first (Fine Art Trade Guild's five, seen second-hand).
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Minimum.
    Minimum,
    /// Budget.
    Budget,
    /// Commended.
    Commended,
    /// Conservation.
    Conservation,
    /// Museum.
    Museum,
}

impl Level {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Minimum => "minimum",
            Self::Budget => "budget",
            Self::Commended => "commended",
            Self::Conservation => "conservation",
            Self::Museum => "museum",
        }
    }
}

/// A size that is given; name exactly one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fit {
    /// Size between the rabbet walls of the frame at hand.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rabbet: Option<Pair>,
    /// A "frame size" as suppliers write it; the setting `frame.size_means` says which it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub frame: Option<Pair>,
    /// The package.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub package: Option<Pair>,
    /// The opening seen through the frame.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sight: Option<Pair>,
    /// The outside of the outermost member: an alcove, a gap between windows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outside: Option<Pair>,
}
