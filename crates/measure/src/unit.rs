//! The units people type lengths in.

use std::fmt;

use crate::Length;

/// A unit of length.
///
/// Units:  each is a whole number of quanta of 1/16 000 mm.
/// Source: 1 in = 25.4 mm and 1 ft = 12 in exactly (international yard and pound agreement, 1959).
///
/// ```
/// use measure::{Length, Unit};
/// assert_eq!(Unit::Foot.one(), Length::inches(12));
/// assert_eq!(Unit::Centimetre.symbol(), "cm");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Unit {
    /// 25.4 mm.
    Inch,
    /// 1/1000 m.
    Millimetre,
    /// 10 mm.
    Centimetre,
    /// 1000 mm.
    Metre,
    /// 12 in.
    Foot,
    /// 36 in.
    Yard,
    /// 1/1000 mm.
    Micrometre,
}

impl Unit {
    /// Every unit, largest first.
    pub const ALL: [Self; 7] = [
        Self::Metre,
        Self::Yard,
        Self::Foot,
        Self::Inch,
        Self::Centimetre,
        Self::Millimetre,
        Self::Micrometre,
    ];

    /// The quanta of 1/16 000 mm in one of this unit.
    pub const fn quanta(self) -> i64 {
        match self {
            Self::Inch => 406_400,
            Self::Millimetre => 16_000,
            Self::Centimetre => 160_000,
            Self::Metre => 16_000_000,
            Self::Foot => 4_876_800,
            Self::Yard => 14_630_400,
            Self::Micrometre => 16,
        }
    }

    /// One of this unit.
    pub const fn one(self) -> Length {
        Length::from_quanta(self.quanta())
    }

    /// The symbol it is printed with, which also reads back.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
            Self::Foot => "ft",
            Self::Yard => "yd",
            Self::Micrometre => "µm",
        }
    }

    /// Whether it belongs to the inch family rather than the metre's.
    pub const fn is_inch_family(self) -> bool {
        matches!(self, Self::Inch | Self::Foot | Self::Yard)
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol())
    }
}
