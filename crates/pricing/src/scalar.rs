//! Rates, amounts and ways of rounding as a rule set writes them.

use std::borrow::Cow;
use std::fmt;
use std::ops::Deref;

use measure::{Currency, Money};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use working::{Decimal, Round};

/// A rate, a factor or a share: `"3.5"`, `"8.25 %"`, or a whole number.
///
/// Units:  none; a percentage is held as the number it stands for.
/// Errors: a number with a point outside quotes is refused, since it would pass through a float.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Rate(pub Decimal);

/// An amount of money with its currency: `"12.00 USD"`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Amount(pub Money);

/// A currency by its code of ISO 4217.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Coin(pub Currency);

impl Rate {
    /// Nothing.
    pub const ZERO: Self = Self(Decimal::ZERO);
    /// One.
    pub const ONE: Self = Self(Decimal::ONE);
}

impl Deref for Rate {
    type Target = Decimal;
    fn deref(&self) -> &Decimal {
        &self.0
    }
}

impl Deref for Amount {
    type Target = Money;
    fn deref(&self) -> &Money {
        &self.0
    }
}

impl Deref for Coin {
    type Target = Currency;
    fn deref(&self) -> &Currency {
        &self.0
    }
}

/// How an amount is rounded to its step; the names in brackets are those of IEEE 754-2008.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Way {
    /// The nearest, halves away from zero (`roundTiesToAway`).
    #[default]
    HalfAway,
    /// The nearest, halves to the even one (`roundTiesToEven`).
    HalfEven,
    /// Never below (`roundTowardPositive`).
    Up,
    /// Never above (`roundTowardNegative`).
    Down,
    /// Never further from zero (`roundTowardZero`).
    TowardZero,
}

impl From<Way> for Round {
    fn from(way: Way) -> Self {
        match way {
            Way::HalfAway => Self::TiesToAway,
            Way::HalfEven => Self::TiesToEven,
            Way::Up => Self::TowardPositive,
            Way::Down => Self::TowardNegative,
            Way::TowardZero => Self::TowardZero,
        }
    }
}

/// Writes a scalar as text, reads it from text, and describes it as text with a pattern of its own.
macro_rules! as_text {
    ($type:ident, $name:literal, $words:literal, |$text:ident| $read:expr, |$own:ident| $write:expr) => {
        impl Serialize for $type {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                let $own = self;
                to.collect_str(&$write)
            }
        }

        impl<'de> Deserialize<'de> for $type {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                from.deserialize_any(Reader {
                    wanted: $words,
                    read: |$text| $read,
                })
            }
        }

        impl JsonSchema for $type {
            fn schema_name() -> Cow<'static, str> {
                $name.into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                json_schema!({ "type": ["string", "integer"], "description": $words })
            }
        }
    };
}

as_text!(
    Rate,
    "Rate",
    "a number in quotes such as \"3.5\" or \"15 %\"",
    |text| Decimal::read(text).map(Rate).ok_or_else(|| format!(
        "“{text}” is no number; write one with a point, such as \"3.5\" or \"15 %\""
    )),
    |own| own.0
);
as_text!(
    Amount,
    "Amount",
    "an amount with its currency such as \"12.00 USD\"",
    |text| Money::read(text)
        .map(Amount)
        .map_err(|error| error.to_string()),
    |own| own.0
);
as_text!(
    Coin,
    "Coin",
    "a currency such as \"USD\"",
    |text| {
        Currency::from_code(text).map(Coin).ok_or_else(|| format!(
        "“{text}” is no currency of ISO 4217 that has a minor unit; write three letters such as \"USD\""
    ))
    },
    |own| own.0
);

/// Reads a scalar from text; whole numbers are taken as text, numbers with a point are refused.
struct Reader<T> {
    wanted: &'static str,
    read: fn(&str) -> Result<T, String>,
}

impl<T> Visitor<'_> for Reader<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.wanted)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        (self.read)(text).map_err(E::custom)
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<T, E> {
        (self.read)(&number.to_string()).map_err(E::custom)
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<T, E> {
        (self.read)(&number.to_string()).map_err(E::custom)
    }

    fn visit_f64<E: Error>(self, _: f64) -> Result<T, E> {
        Err(E::custom(format!(
            "put the number in quotes, so that it is read exactly; this wants {}",
            self.wanted
        )))
    }
}
