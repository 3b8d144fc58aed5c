//! One material.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Sourced;
use crate::written::{Measured, Pair};

/// A material of the catalogue.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// The shop's code for it.
    pub code: String,
    /// A material it is like; whatever this one does not say is taken from there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub like: Option<String>,
    /// What kind of material it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<Kind>,
    /// What people call it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Composition class of a board: standard, conservation, cotton core, museum, unbuffered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub class: Option<String>,
    /// Wood of a moulding, as the table of woods names it: `basswood, American`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wood: Option<String>,
    /// Glass or acrylic.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pane: Option<Pane>,
    /// What is on its surface.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coating: Option<Coating>,
    /// Colour for drawings, `#rrggbb`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    /// Colour of a board's core, seen on the bevel, `#rrggbb`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub core: Option<String>,
    /// Thickness, front to back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Sourced<Measured>>,
    /// Mass of a sheet, grams per square metre.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grams_per_m2: Option<Sourced<u32>>,
    /// Density of a solid, kilograms per cubic metre.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kg_per_m3: Option<Sourced<u32>>,
    /// Sheet sizes it is sold in.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sheets: Vec<Pair>,
    /// The grain or pattern forbids turning a part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub one_way: Option<bool>,
    /// Stick lengths it is sold in.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sticks: Vec<Measured>,
    /// The cross-section of a moulding, fillet or spacer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<Profile>,
    /// Where sheet and stick sizes are from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sizes_from: Option<String>,
    /// What else must be known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
}

/// What kind of thing a material is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Mat or mount board.
    Board,
    /// Backing board.
    Backing,
    /// Glazing.
    Glazing,
    /// Moulding sold in sticks.
    Moulding,
    /// Fillet sold in sticks.
    Fillet,
    /// Spacer strip.
    Spacer,
}

impl Kind {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Board => "board",
            Self::Backing => "backing",
            Self::Glazing => "glazing",
            Self::Moulding => "moulding",
            Self::Fillet => "fillet",
            Self::Spacer => "spacer",
        }
    }
}

/// What a sheet of glazing is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Pane {
    /// Glass.
    Glass,
    /// Acrylic.
    Acrylic,
}

/// What is on a sheet's surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Coating {
    /// Nothing.
    Plain,
    /// Etched against glare; must lie close.
    NonGlare,
    /// Filters ultraviolet, on one face.
    Ultraviolet,
    /// Optical coating on both faces.
    Optical,
    /// Drains static.
    Antistatic,
}

impl Coating {
    /// Whether it matters which face is turned to the art.
    pub const fn has_a_side(self) -> bool {
        matches!(self, Self::NonGlare | Self::Ultraviolet)
    }

    /// Whether cleaning takes the care a coating asks for.
    pub const fn is_delicate(self) -> bool {
        matches!(self, Self::Ultraviolet | Self::Optical | Self::Antistatic)
    }
}

/// The cross-section of a moulding.
///
/// Measured as it lies in the section drawing: `x` from the outside edge towards the sight edge,
/// `y` from the back towards the front.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Profile {
    /// Full width seen from the front.
    pub face: Measured,
    /// Full height, back to front.
    pub height: Measured,
    /// Rabbet width in plan: the lip.
    #[serde(default)]
    pub lip: Measured,
    /// Rabbet depth, front to back.
    #[serde(default)]
    pub rabbet_depth: Measured,
    /// The true outline, corner by corner, where it is known; left out: a plain section.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub outline: Vec<[Measured; 2]>,
}

impl Material {
    /// A material of which nothing but its code is known.
    pub fn named(code: &str) -> Self {
        Self {
            code: code.to_owned(),
            like: None,
            kind: None,
            name: None,
            class: None,
            wood: None,
            pane: None,
            coating: None,
            colour: None,
            core: None,
            thickness: None,
            grams_per_m2: None,
            kg_per_m3: None,
            sheets: Vec::new(),
            one_way: None,
            sticks: Vec::new(),
            profile: None,
            sizes_from: None,
            note: None,
        }
    }

    /// This material, with everything it leaves unsaid taken from `base`.
    pub(super) fn over(&self, base: &Self) -> Self {
        Self {
            code: self.code.clone(),
            like: None,
            kind: self.kind.or(base.kind),
            name: self.name.clone().or_else(|| base.name.clone()),
            class: self.class.clone().or_else(|| base.class.clone()),
            wood: self.wood.clone().or_else(|| base.wood.clone()),
            pane: self.pane.or(base.pane),
            coating: self.coating.or(base.coating),
            colour: self.colour.clone().or_else(|| base.colour.clone()),
            core: self.core.clone().or_else(|| base.core.clone()),
            thickness: self.thickness.clone().or_else(|| base.thickness.clone()),
            grams_per_m2: self
                .grams_per_m2
                .clone()
                .or_else(|| base.grams_per_m2.clone()),
            kg_per_m3: self.kg_per_m3.clone().or_else(|| base.kg_per_m3.clone()),
            sheets: if self.sheets.is_empty() {
                base.sheets.clone()
            } else {
                self.sheets.clone()
            },
            one_way: self.one_way.or(base.one_way),
            sticks: if self.sticks.is_empty() {
                base.sticks.clone()
            } else {
                self.sticks.clone()
            },
            profile: self.profile.clone().or_else(|| base.profile.clone()),
            sizes_from: self.sizes_from.clone().or_else(|| base.sizes_from.clone()),
            note: self.note.clone().or_else(|| base.note.clone()),
        }
    }

    /// What people call it, or its code.
    pub fn title(&self) -> &str {
        self.name.as_deref().unwrap_or(&self.code)
    }
}
