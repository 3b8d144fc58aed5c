//! The stock document as it is written: every length still text.

use std::fmt;

use serde::de::{Error, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use trade::Units;

use super::Buy;

/// The whole file.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct File {
    pub stock: u32,
    #[serde(default)]
    pub units: Units,
    #[serde(default)]
    pub buy: Buy,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub next_label: Option<u32>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stick: Vec<Stick>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sheet: Vec<Sheet>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub remnant: Vec<Remnant>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cut: Vec<Cut>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Stick {
    pub material: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    pub length: Written,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub run: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bin: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trim: Option<Vec<Written>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub flaws: Vec<Vec<Written>>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Sheet {
    pub material: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    pub size: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cost: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bin: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trim: Option<Written>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Remnant {
    pub label: String,
    pub material: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub colour: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length: Option<Written>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub run: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bin: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trim: Option<Vec<Written>>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub flaws: Vec<Vec<Written>>,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Cut {
    pub material: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kerf: Option<Written>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trim: Option<Written>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_strip: Option<Written>,
}

/// A length as somebody wrote it: text, or a number in the document's units.
#[derive(Debug)]
pub(super) struct Written(pub String);

impl Serialize for Written {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Written {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(Reader).map(Self)
    }
}

struct Reader;

impl Visitor<'_> for Reader {
    type Value = String;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("write a length such as \"16 7/8\", \"428.6 mm\" or 12")
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<String, E> {
        Ok(text.to_owned())
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<String, E> {
        Ok(number.to_string())
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<String, E> {
        Ok(number.to_string())
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<String, E> {
        // The shortest decimal that reads back as this number is the one that was typed.
        Ok(number.to_string())
    }
}
