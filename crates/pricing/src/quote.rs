//! A quote: a price frozen with everything it was made from.

mod freeze;
mod open;

use measure::Money;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::{Date, Material, Units};

use crate::desk::Asked;
use crate::rules::RuleSet;
use crate::scalar::{Amount, Rate};

pub use open::{Difference, Opened, QuoteFault, Verdict};

/// The version of a quote's form that this program writes.
pub const QUOTE_VERSION: u32 = 1;

/// A quote as it was given.
///
/// Shape:  JSON; it holds the job, the materials with their costs, the rules, the settings, the sizes in short,
///         and every number that was printed. What it prints are its own numbers, for ever; pricing it again
///         only says whether they still come out the same.
/// Units:  amounts with their currency, lengths with their unit.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Quote {
    /// Version of the form.
    pub quote: u32,
    /// Its number.
    pub number: String,
    /// The day it was given.
    pub given: Date,
    /// The last day it stands; none: until it is withdrawn.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub valid_to: Option<Date>,
    /// What stands under it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub terms: Vec<String>,
    /// What was asked beside the piece.
    pub asked: AskedDocument,
    /// The units the job speaks in.
    pub units: Units,
    /// The job document, as JSON.
    pub job: serde_json::Value,
    /// The materials it uses, whole, with their costs.
    pub materials: Vec<Material>,
    /// Every setting it was derived with.
    pub settings: BTreeMap<String, String>,
    /// The rules it was priced by.
    pub rules: RuleSet,
    /// Its sizes in short: parts with their materials and sizes.
    pub sizes: Vec<PartDocument>,
    /// Its lines.
    pub lines: Vec<LineDocument>,
    /// Its totals.
    pub totals: TotalsDocument,
    /// The shop's own side.
    pub shop: ShopDocument,
}

/// What was asked, as a document holds it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskedDocument {
    /// The day its costs were taken on.
    pub day: Date,
    /// Whether it is wanted sooner than usual.
    #[serde(default)]
    pub rush: bool,
    /// The discounts given, by id.
    #[serde(default)]
    pub discounts: Vec<String>,
    /// Whether the customer is exempt from tax.
    #[serde(default)]
    pub exempt: bool,
}

/// A part with its material and size, in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PartDocument {
    /// Which part.
    pub part: String,
    /// Its material and size.
    pub is: String,
}

/// A line as printed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LineDocument {
    /// The rule's id.
    pub rule: String,
    /// Which part.
    pub part: String,
    /// What the customer reads.
    pub says: String,
    /// Why it is charged.
    pub why: String,
    /// How much of it.
    pub quantity: String,
    /// The price of one unit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unit: Option<Amount>,
    /// The line.
    pub amount: Amount,
    /// Its part of the discounts.
    pub discount: Amount,
}

/// Totals as printed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TotalsDocument {
    /// The lines together.
    pub subtotal: Amount,
    /// What is charged for haste.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rush: Option<Amount>,
    /// Discounts: what the customer reads, and the amount above zero.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub discounts: Vec<NamedAmount>,
    /// What brings a small order to the least.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minimum: Option<Amount>,
    /// What the shown price adds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rounding: Option<Amount>,
    /// Without tax.
    pub net: Amount,
    /// Tax, rate by rate.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<TaxDocument>,
    /// Whether the lines hold their tax.
    #[serde(default)]
    pub tax_inside: bool,
    /// The tax an exempt customer is spared.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub relief: Option<Amount>,
    /// What is paid.
    pub total: Amount,
    /// What is paid when the work is ordered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub deposit: Option<Amount>,
    /// What is left to pay.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub balance: Option<Amount>,
}

/// An amount with a name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NamedAmount {
    /// What the customer reads.
    pub says: String,
    /// The amount.
    pub amount: Amount,
}

/// A tax as printed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TaxDocument {
    /// What the customer reads.
    pub says: String,
    /// The rate.
    pub share: Rate,
    /// What it is reckoned on.
    pub base: Amount,
    /// The tax.
    pub amount: Amount,
}

/// The shop's side as frozen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ShopDocument {
    /// What the piece costs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<Amount>,
    /// What is left of the net price; may be below zero.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub margin: Option<Amount>,
    /// Minutes of the bench's checklist.
    pub minutes: i64,
}

/// What a quote is headed with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Heading {
    /// Its number.
    pub number: String,
    /// The day it is given.
    pub given: Date,
}

impl From<&Asked> for AskedDocument {
    fn from(asked: &Asked) -> Self {
        Self {
            day: asked.day,
            rush: asked.rush,
            discounts: asked.discounts.clone(),
            exempt: asked.exempt,
        }
    }
}

impl From<&AskedDocument> for Asked {
    fn from(asked: &AskedDocument) -> Self {
        Self {
            day: asked.day,
            rush: asked.rush,
            discounts: asked.discounts.clone(),
            exempt: asked.exempt,
        }
    }
}

impl Quote {
    /// Whether it still stands on a day.
    pub fn stands_on(&self, day: Date) -> bool {
        self.given <= day && self.valid_to.is_none_or(|last| day <= last)
    }

    /// What is paid.
    pub fn total(&self) -> Money {
        self.totals.total.0
    }

    /// Writes it as JSON; opening it gives the same quote.
    pub fn to_json(&self) -> String {
        let mut text = serde_json::to_string_pretty(self).expect("a quote writes as JSON");
        text.push('\n');
        text
    }

    /// The JSON Schema (2020-12) of the document.
    pub fn schema() -> serde_json::Value {
        schemars::schema_for!(Self).to_value()
    }
}
