//! One material.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Cost, Sourced, Supply};
use crate::Date;
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
    /// What it is, in a sentence: the supplier's, or the shop's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub description: Option<String>,
    /// Who sells it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supplier: Option<String>,
    /// The supplier's own code for it; not taken from a material it is like.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supplier_code: Option<String>,
    /// The day from which it is no longer made or sold; not taken from a material it is like.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub discontinued: Option<Date>,
    /// Composition class of a board: standard, conservation, cotton core, museum, unbuffered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub class: Option<String>,
    /// Whether its core is foam, which some refuse inside the package; left out: nobody said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub foam: Option<bool>,
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
    /// The colours it is one of: `gold`, `warm white`, `black`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour_family: Option<String>,
    /// More words for its look: `antique`, `matt`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub colour_words: Vec<String>,
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
    /// The numbers it is bought in: 1, 10, 25.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub packs: Vec<u32>,
    /// Minutes of work a service takes, each time.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<u32>,
    /// The cross-section of a moulding, fillet or spacer.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub profile: Option<Profile>,
    /// Where sheet and stick sizes are from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sizes_from: Option<String>,
    /// What else must be known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// What it costs, with its history, in any order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cost: Vec<Cost>,
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
    /// Hangers, wire, points, anything bought by the piece or the box.
    Hardware,
    /// Work charged by the piece or by its minutes.
    Service,
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
            Self::Hardware => "hardware",
            Self::Service => "service",
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
            description: None,
            supplier: None,
            supplier_code: None,
            discontinued: None,
            class: None,
            foam: None,
            wood: None,
            pane: None,
            coating: None,
            colour: None,
            colour_family: None,
            colour_words: Vec::new(),
            core: None,
            thickness: None,
            grams_per_m2: None,
            kg_per_m3: None,
            sheets: Vec::new(),
            one_way: None,
            sticks: Vec::new(),
            packs: Vec::new(),
            minutes: None,
            profile: None,
            sizes_from: None,
            note: None,
            cost: Vec::new(),
        }
    }

    /// This material, with everything it leaves unsaid taken from `base`.
    pub(super) fn over(&self, base: &Self) -> Self {
        Self {
            code: self.code.clone(),
            like: None,
            kind: self.kind.or(base.kind),
            name: self.name.clone().or_else(|| base.name.clone()),
            description: self
                .description
                .clone()
                .or_else(|| base.description.clone()),
            supplier: self.supplier.clone().or_else(|| base.supplier.clone()),
            supplier_code: self.supplier_code.clone(),
            discontinued: self.discontinued,
            class: self.class.clone().or_else(|| base.class.clone()),
            foam: self.foam.or(base.foam),
            wood: self.wood.clone().or_else(|| base.wood.clone()),
            pane: self.pane.or(base.pane),
            coating: self.coating.or(base.coating),
            colour: self.colour.clone().or_else(|| base.colour.clone()),
            colour_family: self
                .colour_family
                .clone()
                .or_else(|| base.colour_family.clone()),
            colour_words: said(&self.colour_words, &base.colour_words),
            core: self.core.clone().or_else(|| base.core.clone()),
            thickness: self.thickness.clone().or_else(|| base.thickness.clone()),
            grams_per_m2: self
                .grams_per_m2
                .clone()
                .or_else(|| base.grams_per_m2.clone()),
            kg_per_m3: self.kg_per_m3.clone().or_else(|| base.kg_per_m3.clone()),
            sheets: said(&self.sheets, &base.sheets),
            one_way: self.one_way.or(base.one_way),
            sticks: said(&self.sticks, &base.sticks),
            packs: said(&self.packs, &base.packs),
            minutes: self.minutes.or(base.minutes),
            profile: self.profile.clone().or_else(|| base.profile.clone()),
            sizes_from: self.sizes_from.clone().or_else(|| base.sizes_from.clone()),
            note: self.note.clone().or_else(|| base.note.clone()),
            cost: said(&self.cost, &base.cost),
        }
    }

    /// The cost that holds on a day: the newest that began by then.
    ///
    /// Shape:  prices for whole packs only are taken where there is no other; of two that began on
    ///         one day, the later written.
    pub fn cost_on(&self, day: Date, supply: Supply) -> Option<&Cost> {
        let held = |cost: &&Cost| cost.since <= day && cost.supply == supply;
        let held = self.cost.iter().filter(held);
        held.max_by_key(|cost| (!cost.is_for_packs(), cost.since))
    }

    /// Every cost that holds on a day: for each unit, supply and pack the newest that began by then.
    pub fn costs_on(&self, day: Date) -> impl Iterator<Item = &Cost> {
        let held = move |cost: &Cost| cost.since <= day;
        self.cost
            .iter()
            .enumerate()
            .filter_map(move |(place, cost)| {
                let newer = |(other, later): (usize, &Cost)| {
                    held(later) && later.follows(cost) && (later.since, other) > (cost.since, place)
                };
                let newest = !self.cost.iter().enumerate().any(newer);
                (held(cost) && newest).then_some(cost)
            })
    }

    /// Whether it is no longer sold on a day.
    pub fn is_discontinued(&self, day: Date) -> bool {
        self.discontinued.is_some_and(|since| since <= day)
    }

    /// What people call it, or its code.
    pub fn title(&self) -> &str {
        self.name.as_deref().unwrap_or(&self.code)
    }
}

/// A list as this material says it, or as the one it is like does.
fn said<T: Clone>(own: &[T], base: &[T]) -> Vec<T> {
    if own.is_empty() {
        base.to_vec()
    } else {
        own.to_vec()
    }
}
