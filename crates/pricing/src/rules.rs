//! The shop's rule set: what is charged for, how, and why.

mod check;
mod read;
mod terms;
mod way;
mod when;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::sync::Arc;

use measure::{Currency, Money};
use trade::Date;

use crate::scalar::{Amount, Coin};

pub use read::RulesFault;
pub use terms::{
    Deposit, Discount, Exchange, Rounding, Rush, Shown, TaxCategory, TaxRate, Taxes, Untaxed,
};
pub use way::{
    Areas, Band, Bands, Beyond, Chop, Cost, Each, Lengths, Minutes, Per, PerArea, Sheets, Tier,
};
pub(crate) use when::Piece;
pub use when::When;

/// The version of the rule set's form that this program writes.
pub const RULES_VERSION: u32 = 1;

/// A shop's prices, from a day on.
///
/// Shape:  the order of the rules does not matter to any total.
/// Units:  one currency; costs in others are turned at the rates it states.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RuleSet {
    /// Version of the form.
    pub prices: u32,
    /// What the shop calls it.
    pub name: String,
    /// The currency of every price in it.
    pub currency: Coin,
    /// The first day it holds.
    pub holds_from: Date,
    /// What an hour of labour is charged at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hour: Option<Amount>,
    /// What an hour of labour costs the shop.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wage: Option<Amount>,
    /// The least that is charged for a piece, before tax that is added.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minimum_order: Option<Amount>,
    /// For how many days a quote stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valid_days: Option<u32>,
    /// What stands under every quote.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub terms: Vec<String>,
    /// How amounts are rounded.
    #[serde(default)]
    pub rounding: Rounding,
    /// What is paid when the work is ordered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub deposit: Option<Deposit>,
    /// What a piece costs more that is wanted sooner.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rush: Option<Rush>,
    /// Tax.
    #[serde(default)]
    pub tax: Taxes,
    /// What other currencies are worth.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub exchange: Vec<Exchange>,
    /// Discounts that may be given.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub discount: Vec<Discount>,
    /// What is charged for.
    #[serde(default, rename = "rule")]
    pub rules: Vec<Arc<Rule>>,
}

/// One rule: what it charges for, when, how much, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// A short name, unique in the set.
    pub id: String,
    /// What the customer reads.
    pub says: String,
    /// Why it is charged.
    pub why: String,
    /// The part or work it charges for.
    pub charges: Part,
    /// Other parts that its price covers.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub includes: Vec<Part>,
    /// Whether it comes on top of the rule that charges for the part.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub on_top: bool,
    /// What tax and discounts know the line as.
    #[serde(default)]
    pub class: Class,
    /// Whether no discount touches it: conservation work.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub never_discounted: bool,
    /// When it applies; left out: always.
    #[serde(default, skip_serializing_if = "When::is_always")]
    pub when: When,
    /// The least that is charged for the part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<Amount>,
    /// By the foot or metre.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Lengths>,
    /// Chopped to size by the supplier.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chop: Option<Chop>,
    /// What it costs, and so much more.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<Cost>,
    /// By a table of sizes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bands: Option<Bands>,
    /// By area.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub area: Option<Areas>,
    /// By the part of a sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sheet: Option<Sheets>,
    /// By the piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub each: Option<Each>,
    /// By time.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes: Option<Minutes>,
}

/// What a rule may charge for: a part of the piece, or work on it.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// A frame member's moulding.
    Frame,
    /// Cutting and joining a member.
    Joining,
    /// A fillet, in a frame or in a mat.
    Fillet,
    /// A mat.
    Mat,
    /// Each opening of a mat after its first.
    Opening,
    /// A sheet of glazing.
    Glazing,
    /// Spacers.
    Spacer,
    /// Walls of a shadowbox.
    Walls,
    /// The build-up round thick art.
    Sink,
    /// The mount.
    Mount,
    /// A backing board.
    Backing,
    /// A stiffening frame in the back.
    Strainer,
    /// Cloth over a board.
    Cloth,
    /// The dust cover.
    Cover,
    /// Attaching a piece of art.
    Attachment,
    /// Hanging hardware.
    Hanging,
    /// Fitting the piece together.
    Fitting,
    /// All work of the bench's checklist.
    Work,
}

impl Part {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Frame => "frame",
            Self::Joining => "joining",
            Self::Fillet => "fillet",
            Self::Mat => "mat",
            Self::Opening => "opening",
            Self::Glazing => "glazing",
            Self::Spacer => "spacer",
            Self::Walls => "walls",
            Self::Sink => "sink",
            Self::Mount => "mount",
            Self::Backing => "backing",
            Self::Strainer => "strainer",
            Self::Cloth => "cloth",
            Self::Cover => "cover",
            Self::Attachment => "attachment",
            Self::Hanging => "hanging",
            Self::Fitting => "fitting",
            Self::Work => "work",
        }
    }

    /// Whether it is something the piece is made of, which some rule must charge for.
    pub const fn is_material(self) -> bool {
        !matches!(
            self,
            Self::Joining
                | Self::Opening
                | Self::Attachment
                | Self::Hanging
                | Self::Fitting
                | Self::Work
        )
    }
}

impl Part {
    /// Whether a job may name a material for it.
    pub(crate) const fn names_material(self) -> bool {
        matches!(self, Self::Joining | Self::Opening)
            || self.is_material() && !matches!(self, Self::Strainer | Self::Cloth | Self::Cover)
    }

    /// Whether it is measured along its length.
    pub(crate) const fn has_length(self) -> bool {
        matches!(
            self,
            Self::Frame
                | Self::Joining
                | Self::Fillet
                | Self::Spacer
                | Self::Walls
                | Self::Strainer
        )
    }

    /// Whether it is measured by its area.
    pub(crate) const fn has_area(self) -> bool {
        matches!(self, Self::Walls | Self::Sink | Self::Cloth | Self::Cover)
            || self.is_cut_from_sheet()
    }

    /// Whether the bill says which stock sheet it is cut from.
    pub(crate) const fn is_cut_from_sheet(self) -> bool {
        matches!(
            self,
            Self::Mat | Self::Glazing | Self::Mount | Self::Backing
        )
    }
}

/// What tax and discounts know a line as.
#[derive(
    Clone,
    Copy,
    Debug,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize,
    JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// Something that is handed over.
    #[default]
    Goods,
    /// Work.
    Labour,
    /// What is charged for haste.
    Rush,
    /// What brings a small order to the least.
    Minimum,
}

impl RuleSet {
    /// The currency of its prices.
    pub fn currency(&self) -> Currency {
        self.currency.0
    }

    /// The least amount of its currency: what is meant by "to the cent".
    pub fn cent(&self) -> Money {
        Money::new(1, self.currency.0)
    }

    /// The rule of this id.
    pub fn rule(&self, id: &str) -> Option<&Arc<Rule>> {
        self.rules.iter().find(|rule| rule.id == id)
    }
}
