//! Exact angles.

use std::fmt;
use std::ops::{Add, Neg, Sub};

use crate::decimal;
use crate::read::{self, ReadError};

/// An angle held exactly, in millionths of a degree.
///
/// Units:  10⁻⁶ degree, about 0.02 µm at the end of a metre.
///
/// ```
/// use measure::Angle;
/// assert_eq!(Angle::read("22 1/2°")?, Angle::from_millionths(22_500_000));
/// assert_eq!(Angle::degrees(45).to_string(), "45°");
/// assert_eq!(Angle::degrees(45).print_four_decimals_nearest(), "45.0000°");
/// # Ok::<(), measure::ReadError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Angle(i64);

/// Millionths in a degree.
const DEGREE: i64 = 1_000_000;

impl Angle {
    /// No turn at all.
    pub const ZERO: Self = Self(0);
    /// A quarter turn, 90°.
    pub const RIGHT: Self = Self(90_000_000);

    /// `n` degrees.
    pub const fn degrees(n: i64) -> Self {
        match n.checked_mul(DEGREE) {
            Some(millionths) => Self(millionths),
            None => panic!("angle out of range"),
        }
    }

    /// `n` millionths of a degree.
    pub const fn from_millionths(n: i64) -> Self {
        Self(n)
    }

    /// The angle in millionths of a degree.
    pub const fn millionths(self) -> i64 {
        self.0
    }

    /// The nearest angle to this many degrees; `None` when not finite or beyond a million turns.
    #[allow(
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        clippy::float_arithmetic,
        reason = "the name says how it rounds"
    )]
    pub fn nearest_from_degrees(degrees: f64) -> Option<Self> {
        let millionths = (degrees * 1e6).round();
        (millionths.abs() <= 3.6e14).then_some(Self(millionths as i64))
    }

    /// Reads `45`, `45.5°`, `45 deg`, `22 1/2 degrees`.
    ///
    /// # Errors
    /// As [`read_length`](crate::read_length), with spans in bytes of `text`.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        read::read_angle(text)
    }

    /// Degrees, to the nearest float.
    #[allow(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        clippy::float_arithmetic,
        reason = "the name says it is approximate"
    )]
    pub fn approx_degrees(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// Radians, to the nearest float.
    pub fn approx_radians(self) -> f64 {
        self.approx_degrees().to_radians()
    }

    /// Degrees to four decimals, nearest, ties away from zero: `22.5000°`.
    pub fn print_four_decimals_nearest(self) -> String {
        format!(
            "{}°",
            decimal::nearest(i128::from(self.0), i128::from(DEGREE), 4)
        )
    }
}

/// The exact angle, which reads back: `22.5°`.
impl fmt::Display for Angle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let number = decimal::exact(i128::from(self.0), i128::from(DEGREE));
        write!(f, "{}°", number.expect("millionths are a finite decimal"))
    }
}

impl Add for Angle {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.checked_add(other.0).expect("angle out of range"))
    }
}

impl Sub for Angle {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.checked_sub(other.0).expect("angle out of range"))
    }
}

impl Neg for Angle {
    type Output = Self;
    fn neg(self) -> Self {
        Sub::sub(Self::ZERO, self)
    }
}
