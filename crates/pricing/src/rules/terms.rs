//! What is reckoned on the lines together: rounding, discounts, rush, tax, deposit.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Class;
use crate::scalar::{Amount, Coin, Rate, Way};

/// How amounts are rounded, each to the cent unless it says a step.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rounding {
    /// The price of one unit.
    #[serde(default)]
    pub unit: Way,
    /// A line.
    #[serde(default)]
    pub line: Way,
    /// A discount, and what is charged for haste.
    #[serde(default)]
    pub discount: Way,
    /// Tax.
    #[serde(default)]
    pub tax: Way,
    /// The price that is shown; left out: as it comes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shown: Option<Shown>,
}

/// The price that is shown goes to a multiple of a step, and is split again into net and tax.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Shown {
    /// Of what it is a multiple.
    pub step: Amount,
    /// Which way.
    pub way: Way,
}

/// What is paid when the work is ordered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Deposit {
    /// Of the total.
    pub share: Rate,
    /// Of what it is a multiple; left out: the cent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub step: Option<Amount>,
    /// Which way; left out: up.
    #[serde(default = "up")]
    pub way: Way,
}

fn up() -> Way {
    Way::Up
}

/// What a piece costs more that is wanted sooner, of the sum of its lines before any discount.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rush {
    /// What the customer reads.
    pub says: String,
    /// Why it is charged.
    pub why: String,
    /// Of the lines.
    pub share: Rate,
}

/// A discount that may be given, on the lines it names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Discount {
    /// A short name, unique in the set.
    pub id: String,
    /// What the customer reads.
    pub says: String,
    /// Of the lines it is on.
    pub share: Rate,
    /// The rules whose lines it is on, by id; left out: all that may be discounted.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub on: Vec<String>,
}

/// What one of another currency is worth.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Exchange {
    /// The other currency.
    pub from: Coin,
    /// One of it in the currency of the rule set.
    pub rate: Rate,
}

/// Tax.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Taxes {
    /// Whether the prices hold it already; left out: it is added.
    #[serde(default)]
    pub inside: bool,
    /// Whether it is rounded line by line; left out: once on each total.
    #[serde(default)]
    pub per_line: bool,
    /// The rates.
    #[serde(default, rename = "rate", skip_serializing_if = "Vec::is_empty")]
    pub rates: Vec<TaxRate>,
    /// What an invoice says of lines that no rate is on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub untaxed: Option<Untaxed>,
}

/// One rate of tax.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TaxRate {
    /// What the customer reads.
    pub says: String,
    /// The rate.
    pub share: Rate,
    /// The classes of line it is on; left out: all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub on: Vec<Class>,
    /// What a structured invoice calls it; left out: standard.
    #[serde(default)]
    pub category: TaxCategory,
}

impl TaxRate {
    /// Whether it is on lines of this class.
    pub fn is_on(&self, class: Class) -> bool {
        self.on.is_empty() || self.on.contains(&class)
    }
}

/// Why a line is not taxed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Untaxed {
    /// The category.
    pub category: TaxCategory,
    /// The reason, as the law words it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
}

/// Categories of tax, by the codes of UNCL 5305 that EN 16931 uses.
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
pub enum TaxCategory {
    /// Standard rate.
    #[default]
    S,
    /// Zero rated.
    Z,
    /// Exempt.
    E,
    /// Outside the scope of tax.
    O,
}

impl TaxCategory {
    /// The code.
    pub const fn code(self) -> &'static str {
        match self {
            Self::S => "S",
            Self::Z => "Z",
            Self::E => "E",
            Self::O => "O",
        }
    }
}
