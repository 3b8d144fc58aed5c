//! Where a piece will hang, as far as somebody said.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The place a piece will hang in: its wall, its light, its air, who passes under it.
///
/// Shape:  whatever is left out is taken as the shop's settings have it, and cautions nobody.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[allow(
    clippy::struct_excessive_bools,
    reason = "a place may be public, on a stairway and where the ground shakes, all at once"
)]
pub struct Site {
    /// Which side of the house the wall is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wall: Option<WallSide>,
    /// What the wall is made of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub made_of: Option<WallMake>,
    /// What stands under it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub above: Option<Above>,
    /// A public place: a shop, a school, a waiting room, a corridor.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub public: bool,
    /// Along a stairway.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub stairs: bool,
    /// Where water is used: a bathroom, a kitchen, a pool.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub bathroom: bool,
    /// Where children play.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub children: bool,
    /// Where the ground shakes.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub earthquakes: bool,
    /// What lights it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lamp: Option<Lamp>,
    /// Light on the art, in lux.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lux: Option<u32>,
    /// Hours of light a day.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hours: Option<u32>,
    /// Days of display a year.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub days: Option<u32>,
    /// Temperature of the room, in degrees Celsius.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub celsius: Option<i32>,
    /// Relative humidity of the room while it is cold outdoors, in per cent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub humidity: Option<u32>,
    /// The coldest week outdoors, in degrees Celsius.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub outdoors: Option<i32>,
}

/// Which side of the house a wall is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WallSide {
    /// Rooms on both sides.
    Inner,
    /// Outdoors behind it, without insulation.
    Outer,
    /// Outdoors behind it, insulated.
    OuterInsulated,
}

/// What a wall is made of, as far as fixings must know.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum WallMake {
    /// Plasterboard, hollow behind.
    Plasterboard,
    /// Studs where the fixings go.
    Studs,
    /// Brick, block or concrete.
    Masonry,
    /// Lath and plaster.
    Lath,
    /// A picture rail.
    PictureRail,
}

/// What stands under a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Above {
    /// A bed or a cot.
    Bed,
    /// A sofa, a chair, a bench.
    Seat,
    /// A door that people pass through.
    Door,
    /// Furniture that nobody sits on.
    Furniture,
    /// A radiator.
    Radiator,
    /// A fireplace or a stove.
    Fire,
}

impl Above {
    /// Whether people lie, sit or pass under the piece.
    pub const fn is_over_people(self) -> bool {
        matches!(self, Self::Bed | Self::Seat | Self::Door)
    }

    /// Whether it is hot under the piece.
    pub const fn is_hot(self) -> bool {
        matches!(self, Self::Radiator | Self::Fire)
    }

    /// As it is said: `a bed`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Bed => "a bed",
            Self::Seat => "a seat",
            Self::Door => "a door",
            Self::Furniture => "furniture",
            Self::Radiator => "a radiator",
            Self::Fire => "a fireplace",
        }
    }
}

/// What lights a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Lamp {
    /// Daylight through a window.
    Daylight,
    /// White light-emitting diodes.
    Led,
    /// A glowing filament, halogen among them.
    Incandescent,
    /// Fluorescent tubes.
    Fluorescent,
}

impl Lamp {
    /// As it is said: `daylight`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Daylight => "daylight",
            Self::Led => "white LED lamps",
            Self::Incandescent => "incandescent lamps",
            Self::Fluorescent => "fluorescent tubes",
        }
    }
}
