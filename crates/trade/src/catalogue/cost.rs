//! What a material costs the shop, per what, and since when.

use std::borrow::Cow;
use std::fmt;

use measure::{Currency, Money};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::Date;

/// What a supplier asks for a material from a day on; the next one follows it, none is overwritten.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Cost {
    /// The amount, with its currency: `"3.40 USD"`.
    pub price: Price,
    /// What the amount is for.
    pub per: Per,
    /// How it comes: in full lengths, chopped to size, or joined.
    #[serde(default, rename = "as", skip_serializing_if = "Supply::is_length")]
    pub supply: Supply,
    /// With `per = "box"`: how many pieces are in the box. Otherwise: the price holds for whole
    /// packs of this many.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pack: Option<u32>,
    /// The first day it holds.
    pub since: Date,
}

impl Cost {
    /// Whether it is a price for whole packs only, and not one for any number.
    pub fn is_for_packs(&self) -> bool {
        self.pack.is_some_and(|pack| pack > 1) && self.per != Per::Box
    }

    /// Whether the two are prices for the same thing, at different times.
    pub fn follows(&self, other: &Self) -> bool {
        (self.per, self.supply, self.pack) == (other.per, other.supply, other.pack)
    }
}

/// What a price is for.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// A foot of length.
    Foot,
    /// A metre of length.
    Metre,
    /// A whole stick.
    Stick,
    /// A whole sheet.
    Sheet,
    /// A single piece; for a service, doing it once.
    Each,
    /// A box or pack, of as many pieces as `pack` says.
    Box,
    /// A square metre.
    #[serde(rename = "m2")]
    SquareMetre,
    /// A square foot.
    #[serde(rename = "ft2")]
    SquareFoot,
}

impl Per {
    /// Every one of them, in the order they are listed.
    pub const ALL: [Self; 8] = [
        Self::Foot,
        Self::Metre,
        Self::Stick,
        Self::Sheet,
        Self::Each,
        Self::Box,
        Self::SquareMetre,
        Self::SquareFoot,
    ];

    /// The word a document has for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Foot => "foot",
            Self::Metre => "metre",
            Self::Stick => "stick",
            Self::Sheet => "sheet",
            Self::Each => "each",
            Self::Box => "box",
            Self::SquareMetre => "m2",
            Self::SquareFoot => "ft2",
        }
    }
}

/// How a moulding comes from its supplier.
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
pub enum Supply {
    /// As it is sold: full lengths, sheets, pieces.
    #[default]
    Length,
    /// Chopped to size, mitres cut.
    Chop,
    /// Chopped and joined to a frame.
    Join,
}

impl Supply {
    /// The word a document has for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Chop => "chop",
            Self::Join => "join",
        }
    }

    #[allow(
        clippy::trivially_copy_pass_by_ref,
        reason = "serde asks for a reference"
    )]
    const fn is_length(&self) -> bool {
        matches!(self, Self::Length)
    }
}

/// A supplier's price: an exact amount, to the millionth of its currency.
///
/// Screws and board by the square foot are priced in parts of a cent, which [`Money`] does not hold.
///
/// Units:  millionths of the currency's own unit, 0 or more.
/// Example: `3.40 USD` is 3 400 000 millionths.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Price {
    millionths: u64,
    currency: Currency,
}

/// Why a text is no price.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "`{typed}` is no price; write an amount with at most six decimals and its currency, such as \"3.40 USD\""
)]
pub struct PriceFault {
    /// What was typed.
    pub typed: String,
}

/// Millionths in one, decimals they take, and the most that is held: a thousand million.
const ONE: u64 = 1_000_000;
const PLACES: usize = 6;
const LIMIT: u64 = 1_000_000_000 * ONE;

/// How much of what was typed is shown.
const SHOWN: usize = 40;

impl Price {
    /// So many millionths of this currency; none beyond a thousand million.
    pub fn new(millionths: u64, currency: Currency) -> Option<Self> {
        (millionths <= LIMIT).then_some(Self {
            millionths,
            currency,
        })
    }

    /// Reads `3.40 USD`, `USD 3.40`, `0.0345 EUR`; the decimals follow a point.
    ///
    /// Errors: no number, no code of ISO 4217, below zero, more than six decimals, more than a
    /// thousand million.
    pub fn read(text: &str) -> Result<Self, PriceFault> {
        Self::of_words(text).ok_or_else(|| PriceFault {
            typed: text.chars().take(SHOWN).collect(),
        })
    }

    /// The price that is this amount of money; none below zero or beyond a thousand million.
    pub fn of(money: Money) -> Option<Self> {
        let minor = u64::try_from(money.minor).ok()?;
        let one = u64::try_from(money.currency.minor_in_one()).ok()?;
        let whole = u128::from(minor) * u128::from(ONE);
        let exact = whole.is_multiple_of(u128::from(one));
        let millionths = u64::try_from(whole.checked_div(u128::from(one))?).ok()?;
        exact
            .then(|| Self::new(millionths, money.currency))
            .flatten()
    }

    /// Millionths of the currency's own unit.
    pub const fn millionths(self) -> u64 {
        self.millionths
    }

    /// The currency.
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// The same amount as money; none where it has parts of a minor unit.
    pub fn as_money(self) -> Option<Money> {
        let one = u64::try_from(self.currency.minor_in_one()).ok()?;
        let minor = u128::from(self.millionths) * u128::from(one);
        let whole = minor.is_multiple_of(u128::from(ONE));
        let minor = i64::try_from(minor.checked_div(u128::from(ONE))?).ok()?;
        whole.then(|| Money::new(minor, self.currency))
    }

    fn of_words(text: &str) -> Option<Self> {
        let text = text.trim();
        let (first, second) = text.split_once(char::is_whitespace)?;
        let second = second.trim_start();
        let (number, code) = if first.starts_with(|c: char| c.is_ascii_digit()) {
            (first, second)
        } else {
            (second, first)
        };
        let currency = Currency::from_code(code)?;
        let (whole, decimals) = number.split_once('.').unwrap_or((number, "0"));
        let digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        if !digits(whole) || !digits(decimals) || decimals.len() > PLACES {
            return None;
        }
        let whole = whole.parse::<u64>().ok()?.checked_mul(ONE)?;
        let part: u64 = format!("{decimals:0<PLACES$}").parse().ok()?;
        Self::new(whole.checked_add(part)?, currency)
    }
}

/// The exact amount with at least its currency's decimals, which reads back: `3.40 USD`.
impl fmt::Display for Price {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let whole = self.millionths.checked_div(ONE).unwrap_or(0);
        let part = format!("{:0PLACES$}", self.millionths.checked_rem(ONE).unwrap_or(0));
        let least = usize::try_from(self.currency.places()).unwrap_or(0);
        let told = part.trim_end_matches('0').len().max(least).min(PLACES);
        match part.get(..told).filter(|part| !part.is_empty()) {
            Some(part) => write!(f, "{whole}.{part} {}", self.currency),
            None => write!(f, "{whole} {}", self.currency),
        }
    }
}

impl Serialize for Price {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Price {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_str(Reader)
    }
}

impl JsonSchema for Price {
    fn schema_name() -> Cow<'static, str> {
        "Price".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string",
            "description": "An amount with at most six decimals and its ISO 4217 currency.",
            "examples": ["3.40 USD", "0.0345 EUR"]
        })
    }
}

struct Reader;

impl Visitor<'_> for Reader {
    type Value = Price;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("write the amount and currency in quotes, \"6.40 USD\"")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Price, E> {
        Price::read(text).map_err(E::custom)
    }
}

#[cfg(test)]
mod tests;
