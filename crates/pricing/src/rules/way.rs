//! The ways of charging.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use trade::Measured;

use crate::scalar::{Amount, Rate};

/// By the length charged: a price for a foot or a metre, times the length.
///
/// unit = cost × (1 + waste) × factor, rounded; line = unit × length charged, rounded
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Lengths {
    /// What the price is for; left out: as the shop's step of the length charged has it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub per: Option<Per>,
    /// A fixed price, instead of one made from the cost.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Amount>,
    /// What is lost of a stick, beside what is charged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waste: Option<Rate>,
    /// What the cost is multiplied by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub factor: Option<Rate>,
    /// Factors by cost, the cheapest first, instead of one for all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub factors: Vec<Tier>,
}

/// A factor for costs up to an amount.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Tier {
    /// The dearest it holds for; left out on the last.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<Amount>,
    /// What the cost is multiplied by.
    pub factor: Rate,
}

/// A unit of length that a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// A foot.
    Foot,
    /// A metre.
    Metre,
}

/// Chopped to size by the supplier: his price for the length, times the factor, and handling.
///
/// line = cost × (1 + premium) × length charged × factor, rounded; and handling
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Chop {
    /// What a chop costs more than the same length in sticks, where the catalogue has no price for chops.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub premium: Option<Rate>,
    /// What the cost is multiplied by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub factor: Option<Rate>,
    /// For ordering and unpacking.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub handling: Option<Amount>,
}

/// What it costs, and so much more; only the line is rounded.
///
/// line = cost × quantity × (1 + waste) × factor, rounded; and plus
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cost {
    /// What is lost beside what is used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waste: Option<Rate>,
    /// What the cost is multiplied by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub factor: Option<Rate>,
    /// Factors by cost, the cheapest first, instead of one for all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub factors: Vec<Tier>,
    /// Added to each part.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plus: Option<Amount>,
}

/// By a table: width and height together (united inches, half the perimeter), and a price for each band.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Bands {
    /// What width and height together are rounded up to before the table is read; left out: not rounded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Measured>,
    /// The bands, the smallest first.
    pub band: Vec<Band>,
    /// What is added above the last band; left out: nothing larger is priced.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beyond: Option<Beyond>,
}

/// One band.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Band {
    /// Above this; left out: from where the band before ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<Measured>,
    /// Up to this, included.
    pub to: Measured,
    /// The price.
    pub price: Amount,
}

/// Steps above the last band.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Beyond {
    /// How large a step is.
    pub each: Measured,
    /// What each one begun adds.
    pub add: Amount,
}

/// By area.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Areas {
    /// What the price is for.
    pub per: PerArea,
    /// A fixed price, instead of one made from the cost.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Amount>,
    /// What is lost of a sheet, beside what is charged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waste: Option<Rate>,
    /// What the cost is multiplied by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub factor: Option<Rate>,
    /// The least that is charged, in the same unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<Rate>,
}

/// A unit of area that a price is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum PerArea {
    /// A square foot.
    #[serde(rename = "ft2")]
    Foot,
    /// A square metre.
    #[serde(rename = "m2")]
    Metre,
}

/// By the part of a stock sheet, up to the next of the parts that are sold.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sheets {
    /// The parts that are sold, the smallest first, the last of them the whole: `["0.125", "0.25", "0.5", "1"]`.
    pub parts: Vec<Rate>,
    /// A fixed price for the whole sheet, instead of one made from the cost.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<Amount>,
    /// What the cost is multiplied by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub factor: Option<Rate>,
}

/// By the piece.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Each {
    /// For one.
    pub price: Amount,
}

/// By time, at the shop's rate for an hour.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Minutes {
    /// For one; left out, for `work` only: the minutes of the bench's checklist.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub each: Option<u32>,
    /// For an hour, where it is another than the shop's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hour: Option<Amount>,
}
