//! Exact areas.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Sub, SubAssign};

use crate::{Length, decimal};

/// An area held exactly, in square quanta of (1/16 000 mm)².
///
/// Shape:  a surface; may be negative (a remainder that ran out).
/// Units:  square quanta; 1 m² = 2.56 × 10¹⁴.
/// Errors: sums beyond an `i128` panic; no product of two lengths comes near.
///
/// ```
/// use measure::{Area, Length};
/// let pane = Area::of(Length::inches(12), Length::inches(12));
/// assert_eq!(pane.print_square_feet_nearest(2), "1.00 sq ft");
/// assert_eq!(pane.print_m2_nearest(4), "0.0929 m²");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area(i128);

/// Square quanta in a square metre.
const SQUARE_METRE: i128 = 256_000_000_000_000;
/// Square quanta in a square inch.
const SQUARE_INCH: i128 = 165_160_960_000;
/// Square quanta in a square foot.
const SQUARE_FOOT: i128 = 23_783_178_240_000;

impl Area {
    /// No area at all.
    pub const ZERO: Self = Self(0);
    /// One square metre.
    pub const SQUARE_METRE: Self = Self(SQUARE_METRE);
    /// One square inch.
    pub const SQUARE_INCH: Self = Self(SQUARE_INCH);
    /// One square foot.
    pub const SQUARE_FOOT: Self = Self(SQUARE_FOOT);

    /// An area of this many square quanta.
    pub const fn from_square_quanta(square_quanta: i128) -> Self {
        Self(square_quanta)
    }

    /// The area in square quanta.
    pub const fn square_quanta(self) -> i128 {
        self.0
    }

    /// One length times another.
    pub fn of(width: Length, height: Length) -> Self {
        let product = i128::from(width.quanta()).checked_mul(i128::from(height.quanta()));
        Self(product.expect("two lengths multiply within an i128"))
    }

    /// The area `n` times over.
    #[must_use]
    pub fn times(self, n: i64) -> Self {
        Self(
            self.0
                .checked_mul(i128::from(n))
                .expect("area out of range"),
        )
    }

    /// Whether the area is exactly zero.
    pub const fn is_zero(self) -> bool {
        self.0 == 0
    }

    /// Square metres, to the nearest float.
    pub fn approx_m2(self) -> f64 {
        self.approx_in(SQUARE_METRE)
    }

    /// Square feet, to the nearest float.
    pub fn approx_square_feet(self) -> f64 {
        self.approx_in(SQUARE_FOOT)
    }

    /// Square inches, to the nearest float.
    pub fn approx_square_inches(self) -> f64 {
        self.approx_in(SQUARE_INCH)
    }

    /// `0.0929 m²`: square metres to the nearest of `places` decimals, ties away from zero.
    pub fn print_m2_nearest(self, places: u32) -> String {
        format!("{} m²", decimal::nearest(self.0, SQUARE_METRE, places))
    }

    /// `1.25 sq ft`: square feet to the nearest of `places` decimals, ties away from zero.
    pub fn print_square_feet_nearest(self, places: u32) -> String {
        format!("{} sq ft", decimal::nearest(self.0, SQUARE_FOOT, places))
    }

    /// `80.0 sq in`: square inches to the nearest of `places` decimals, ties away from zero.
    pub fn print_square_inches_nearest(self, places: u32) -> String {
        format!("{} sq in", decimal::nearest(self.0, SQUARE_INCH, places))
    }

    #[allow(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        clippy::float_arithmetic,
        reason = "only the approx functions call it, and their name says so"
    )]
    fn approx_in(self, one: i128) -> f64 {
        self.0 as f64 / one as f64
    }
}

/// Square metres to the nearest of four decimals: `0.0929 m²`.
impl fmt::Display for Area {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.print_m2_nearest(4))
    }
}

impl Add for Area {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.checked_add(other.0).expect("area out of range"))
    }
}

impl Sub for Area {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.checked_sub(other.0).expect("area out of range"))
    }
}

impl AddAssign for Area {
    fn add_assign(&mut self, other: Self) {
        *self = Add::add(*self, other);
    }
}

impl SubAssign for Area {
    fn sub_assign(&mut self, other: Self) {
        *self = Sub::sub(*self, other);
    }
}

impl Sum for Area {
    fn sum<I: Iterator<Item = Self>>(areas: I) -> Self {
        areas.fold(Self::ZERO, Add::add)
    }
}
