//! Glazing: the transparent sheets in front.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// One sheet of glazing.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Glazing {
    /// Glass or acrylic, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sheet: Option<String>,
    /// Thickness, where it differs from the catalogue's or there is no code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
    /// How much smaller than the package it is cut, in total; left out: the shop's rule.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub undersize: Option<Measured>,
    /// Which face of a coated sheet looks at the art.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inward: Option<Inward>,
    /// The frame member whose rabbet holds it, by name; left out: the one nearest the art.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held_in: Option<String>,
}

/// Which face of a coated sheet is turned to the art.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Inward {
    /// The coated, filtering or treated face.
    Coated,
    /// The plain face.
    Plain,
    /// Either way: both faces are alike.
    Either,
}
