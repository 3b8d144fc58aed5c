//! Lengths, sizes and angles as a person writes them in a job document.

use std::borrow::Cow;
use std::cell::Cell;
use std::fmt;
use std::ops::Deref;

use measure::{Angle, Length, ReadError, Size, Unit, read_length, read_size};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

thread_local! {
    /// What a bare number means while a document is being read or written on this thread.
    static BARE: Cell<Unit> = const { Cell::new(Unit::Millimetre) };
}

/// Runs `work` with bare numbers meaning `unit`.
pub(crate) fn with_bare<T>(unit: Unit, work: impl FnOnce() -> T) -> T {
    let before = BARE.replace(unit);
    let done = work();
    BARE.set(before);
    done
}

/// What a bare number means at this moment.
pub(crate) fn bare() -> Unit {
    BARE.get()
}

/// A length in a job document, written as people write it: `"16 7/8"`, `"428.6 mm"`.
///
/// Units:  bare numbers are in the document's `units`; a unit typed beside the number wins.
/// Errors: whatever [`read_length`] refuses, in its words.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Measured(pub Length);

impl Deref for Measured {
    type Target = Length;
    fn deref(&self) -> &Length {
        &self.0
    }
}

impl From<Length> for Measured {
    fn from(length: Length) -> Self {
        Self(length)
    }
}

impl Serialize for Measured {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0.exact(bare()))
    }
}

impl<'de> Deserialize<'de> for Measured {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reader {
            wanted: "a length such as \"16 7/8\", \"428.6 mm\" or 12",
            read: |text| read_length(text, bare()).map_err(|e| refusal(&e)),
        })
        .map(Self)
    }
}

impl JsonSchema for Measured {
    fn schema_name() -> Cow<'static, str> {
        "Length".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": ["string", "number"],
            "description": "A length as people write it: \"16 7/8\", \"1' 4 7/8\\\"\", \"428.6 mm\". A bare number is in the document's units. Read exactly, never rounded.",
            "examples": ["16 7/8", "428.6 mm", 12]
        })
    }
}

/// A width and a height in a job document, written `"8 x 10"`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Pair(pub Size);

impl Deref for Pair {
    type Target = Size;
    fn deref(&self) -> &Size {
        &self.0
    }
}

impl Serialize for Pair {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        let (width, height) = (self.0.width.exact(bare()), self.0.height.exact(bare()));
        to.serialize_str(&format!("{width} x {height}"))
    }
}

impl<'de> Deserialize<'de> for Pair {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reader {
            wanted: "a size such as \"8 x 10\", width first",
            read: |text| read_size(text, bare()).map_err(|e| refusal(&e)),
        })
        .map(Self)
    }
}

impl JsonSchema for Pair {
    fn schema_name() -> Cow<'static, str> {
        "Size".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "string",
            "description": "Width and height, width first: \"8 x 10\", \"200 x 250 mm\".",
            "examples": ["8 x 10", "200 x 250 mm"]
        })
    }
}

/// An angle in a job document, in degrees: `45`, `"22.5°"`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Turned(pub Angle);

impl Deref for Turned {
    type Target = Angle;
    fn deref(&self) -> &Angle {
        &self.0
    }
}

impl Serialize for Turned {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0.to_string())
    }
}

impl<'de> Deserialize<'de> for Turned {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reader {
            wanted: "an angle in degrees such as 45 or \"22.5\"",
            read: |text| Angle::read(text).map_err(|e| e.to_string()),
        })
        .map(Self)
    }
}

impl JsonSchema for Turned {
    fn schema_name() -> Cow<'static, str> {
        "Angle".into()
    }
    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": ["string", "number"],
            "description": "An angle in degrees.",
            "examples": [45, "22.5"]
        })
    }
}

/// The sentence of a refusal, with its hint and what was typed.
fn refusal(error: &ReadError) -> String {
    let hint = error.hint();
    if hint.is_empty() {
        error.to_string()
    } else {
        format!("{error}; {hint}")
    }
}

/// Reads text, or a number as the text a person would have typed for it.
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
        self.visit_str(&number.to_string())
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<T, E> {
        self.visit_str(&number.to_string())
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<T, E> {
        if !number.is_finite() {
            let wanted = self.wanted;
            return Err(E::custom(format!("{number} is no number; write {wanted}")));
        }
        // The shortest decimal that reads back as this number is the one that was typed.
        self.visit_str(&number.to_string())
    }
}
