//! Textiles on a wrapped board.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// A board covered with cloth that carries a textile.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Wrap {
    /// Ground left round the textile on each side.
    #[serde(default)]
    pub ground: Measured,
    /// Thickness of the cloth, which adds to each edge of the board.
    #[serde(default)]
    pub cloth: Measured,
    /// Cloth turned to the back on each side; left out: the shop's habit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turn: Option<Measured>,
    /// What the cloth is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fabric: Option<String>,
}
