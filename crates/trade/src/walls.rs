//! What holds glazing away from the art: spacers, and the walls of a shadowbox.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::{Measured, Pair};

/// Strips between glazing and what lies behind it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Spacer {
    /// Spacer, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strip: Option<String>,
    /// Width seen from the front, which must hide under the lip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Measured>,
    /// Front to back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
}

/// The walls of a shadowbox, between glazing and mount.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Walls {
    /// Board the walls are cut from, by catalogue code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub board: Option<String>,
    /// Thickness of a wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Measured>,
    /// Front to back; left out: the deepest object plus the shop's air.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Measured>,
    /// The ground inside the walls; left out: as large as the (first) piece of art.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub display: Option<Pair>,
}
