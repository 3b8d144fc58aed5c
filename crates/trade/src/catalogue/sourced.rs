//! A value together with where it is from.

use std::borrow::Cow;

use std::fmt;
use std::marker::PhantomData;

use schemars::JsonSchema;
use serde::de::value::MapAccessDeserializer;
use serde::de::{Error, IntoDeserializer, MapAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize};

/// A value of the catalogue with its source and status.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum Sourced<T> {
    /// With its source.
    Cited {
        /// The value.
        is: T,
        /// Code of its source, where there is one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        source: Option<Cow<'static, str>>,
        /// Its status.
        status: Status,
    },
    /// As somebody at the shop wrote it down.
    Plain(T),
}

/// How far a value of the catalogue can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Status {
    /// Stands in the source named.
    Published,
    /// Measured at the shop.
    Measured,
    /// Workshop custom, no source.
    CommonPractice,
    /// Known, not looked up for this.
    FromMemory,
    /// Worked out from others.
    Computed,
    /// Ours to change.
    ShopChoice,
}

impl Status {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::Measured => "measured",
            Self::CommonPractice => "common practice, no source",
            Self::FromMemory => "from memory",
            Self::Computed => "computed",
            Self::ShopChoice => "shop choice",
        }
    }
}

impl<T> Sourced<T> {
    /// The value itself.
    pub const fn is(&self) -> &T {
        match self {
            Self::Cited { is, .. } | Self::Plain(is) => is,
        }
    }

    /// Code of its source.
    pub fn source(&self) -> Option<&str> {
        match self {
            Self::Cited { source, .. } => source.as_deref(),
            Self::Plain(_) => None,
        }
    }

    /// Its status.
    pub const fn status(&self) -> Status {
        match self {
            Self::Cited { status, .. } => *status,
            Self::Plain(_) => Status::ShopChoice,
        }
    }
}

/// The long form, as it is written.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Long<T> {
    is: T,
    source: Option<Cow<'static, str>>,
    status: Status,
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Sourced<T> {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Either(PhantomData))
    }
}

/// Reads either form, so that a refusal speaks of the value and not of forms.
struct Either<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for Either<T> {
    type Value = Sourced<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value, or { is = value, source = code, status = word }")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
        T::deserialize(text.into_deserializer()).map(Sourced::Plain)
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<Self::Value, E> {
        T::deserialize(number.into_deserializer()).map(Sourced::Plain)
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<Self::Value, E> {
        T::deserialize(number.into_deserializer()).map(Sourced::Plain)
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<Self::Value, E> {
        T::deserialize(number.into_deserializer()).map(Sourced::Plain)
    }
    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        let Long { is, source, status } = Long::deserialize(MapAccessDeserializer::new(map))?;
        Ok(Sourced::Cited { is, source, status })
    }
}
