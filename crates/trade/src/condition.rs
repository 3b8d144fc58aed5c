//! Condition: what is seen on a piece of art, each thing at its place.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::written::Measured;

/// Something seen on the art, at its place.
///
/// Shape:  the place is measured from the left and top edges of the rectangle that matters, as that
///         side is looked at: a mark on the back from the back's own left.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ConditionMark {
    /// Which side it is seen on.
    #[serde(default, skip_serializing_if = "ArtSide::is_front")]
    pub side: ArtSide,
    /// What kind of thing it is.
    pub kind: Blemish,
    /// From the left edge, as that side is looked at.
    pub x: Measured,
    /// From the top edge.
    pub y: Measured,
    /// How wide it is; left out: a point. The place is its left top corner then.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Measured>,
    /// How high it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Measured>,
    /// What else is to be said of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub words: Option<String>,
}

/// A side of the art.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ArtSide {
    /// The side that is shown.
    #[default]
    Front,
    /// The side that is not.
    Back,
}

impl ArtSide {
    #[allow(
        clippy::trivially_copy_pass_by_ref,
        reason = "serde passes a reference"
    )]
    fn is_front(side: &Self) -> bool {
        *side == Self::Front
    }

    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
        }
    }
}

/// The kinds of things that are seen on art.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Blemish {
    /// Torn through.
    Tear,
    /// Folded and flattened.
    Crease,
    /// Something is missing.
    Loss,
    /// A hole: a pin's, an insect's.
    Hole,
    /// Rubbed or scratched.
    Abrasion,
    /// Brown spots that grew.
    Foxing,
    /// A stain or a tide line.
    Stain,
    /// Faded by light.
    Fading,
    /// A brown line along an old window.
    MatBurn,
    /// Waves of the sheet.
    Cockle,
    /// Paint or emulsion that lifts or has come off.
    Flaking,
    /// Cracks of the surface.
    Cracks,
    /// Mould, alive or dead.
    Mould,
    /// Insects or what they left.
    Insects,
    /// Tape, or what its adhesive left.
    Tape,
    /// An old mend.
    Repair,
    /// Writing, a stamp, a label: to be kept as it is.
    Inscription,
    /// Anything else; the words say what.
    Other,
}

impl Blemish {
    /// The word printed for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Tear => "tear",
            Self::Crease => "crease",
            Self::Loss => "loss",
            Self::Hole => "hole",
            Self::Abrasion => "abrasion",
            Self::Foxing => "foxing",
            Self::Stain => "stain",
            Self::Fading => "fading",
            Self::MatBurn => "mat burn",
            Self::Cockle => "cockle",
            Self::Flaking => "flaking",
            Self::Cracks => "cracks",
            Self::Mould => "mould",
            Self::Insects => "insects",
            Self::Tape => "old tape",
            Self::Repair => "old repair",
            Self::Inscription => "inscription",
            Self::Other => "other",
        }
    }

    /// What may be caught from it, or what it may spread to: said where the piece is handled.
    pub const fn caution(self) -> Option<&'static str> {
        match self {
            Self::Mould => Some(
                "Mould: keep it apart from other work, wear a fitted mask and gloves, brush nothing dry; \
                 a paper or paintings conservator treats it.",
            ),
            Self::Insects => Some(
                "Insects: bag it and keep it apart until someone who treats pests has looked at it.",
            ),
            Self::Flaking => Some(
                "Flaking: keep it flat, face up, and let nothing touch the surface; a conservator secures it.",
            ),
            _ => None,
        }
    }
}
