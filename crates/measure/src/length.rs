//! Exact lengths.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// A length held exactly, as a whole number of quanta of 1/16 000 mm.
///
/// Shape:  one dimension; may be negative (a gap that closed, a slack that ran out).
/// Units:  1/16 000 mm, in which 1/128 in (3 175) and 1 µm (16) are both whole.
/// Errors: sums beyond 5 × 10¹¹ mm panic; every door refuses lengths far below that.
/// Source: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);
    /// The smallest length that can be held: 1/16 000 mm.
    pub const QUANTUM: Self = Self(1);
    /// One inch, 25.4 mm.
    pub const INCH: Self = Self(406_400);
    /// One millimetre.
    pub const MILLIMETRE: Self = Self(16_000);

    /// A length of `quanta` quanta of 1/16 000 mm.
    pub const fn from_quanta(quanta: i64) -> Self {
        Self(quanta)
    }

    /// The length in quanta of 1/16 000 mm.
    pub const fn quanta(self) -> i64 {
        self.0
    }

    /// The longest length the doors take, either way from zero: 1000 m.
    ///
    /// [`read_length`](crate::read_length) and the functions that turn floats into lengths refuse
    /// anything longer; sums of such lengths stay far within what can be held.
    pub const LIMIT: Self = Self(16_000_000_000);

    /// `n` inches.
    pub const fn inches(n: i64) -> Self {
        Self::INCH.times(n)
    }

    /// `n` millimetres.
    pub const fn mm(n: i64) -> Self {
        Self::MILLIMETRE.times(n)
    }

    /// `top / bottom` of an inch, for a bottom number that divides 128.
    ///
    /// Errors: panics (while compiling, in a constant) when `bottom` does not divide 128.
    ///
    /// ```
    /// use measure::Length;
    /// const BIT: Length = Length::inch_fraction(1, 16);
    /// assert_eq!(BIT, Length::inch_128ths(8));
    /// ```
    pub const fn inch_fraction(top: i64, bottom: i64) -> Self {
        let per_step = match 128_i64.checked_div(bottom) {
            Some(n) if bottom > 0 && 128_i64.wrapping_rem(bottom) == 0 => n,
            _ => panic!("the bottom number divides 128"),
        };
        Self::from_quanta(3_175).times(per_step).times(top)
    }

    /// `n` 128ths of an inch.
    #[allow(clippy::arithmetic_side_effects, reason = "used for constants")]
    pub const fn inch_128ths(n: i64) -> Self {
        Self(n * 3_175)
    }

    /// `n` micrometres.
    #[allow(clippy::arithmetic_side_effects, reason = "used for constants")]
    pub const fn micrometres(n: i64) -> Self {
        Self(n * 16)
    }

    /// Whether the length is below zero.
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// Whether the length is above zero.
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// Whether the length is exactly zero.
    pub const fn is_zero(self) -> bool {
        self.0 == 0
    }

    /// The length without its sign.
    #[must_use]
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// The length, or zero where it is negative.
    #[must_use]
    pub fn or_zero(self) -> Self {
        self.max(Self::ZERO)
    }

    /// The length `n` times over.
    #[must_use]
    pub const fn times(self, n: i64) -> Self {
        match self.0.checked_mul(n) {
            Some(quanta) => Self(quanta),
            None => panic!("length out of range"),
        }
    }

    /// The length twice over.
    #[must_use]
    pub const fn twice(self) -> Self {
        self.times(2)
    }

    /// Millimetres, to the nearest float.
    #[allow(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        clippy::float_arithmetic,
        reason = "the name says it is approximate"
    )]
    pub fn approx_mm(self) -> f64 {
        self.0 as f64 / 16_000.0
    }

    /// Inches, to the nearest float.
    #[allow(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        clippy::float_arithmetic,
        reason = "the name says it is approximate"
    )]
    pub fn approx_inches(self) -> f64 {
        self.0 as f64 / 406_400.0
    }

    /// The length nearest to this many millimetres, a tie going away from zero.
    ///
    /// `None` when not finite or beyond [`LIMIT`](Self::LIMIT).
    #[allow(clippy::float_arithmetic, reason = "the name says how it rounds")]
    pub fn nearest_from_mm(mm: f64) -> Option<Self> {
        Self::nearest_from_quanta(mm * 16_000.0)
    }

    /// The length times a factor, to the nearest quantum, a tie going away from zero.
    ///
    /// `None` when not finite or beyond [`LIMIT`](Self::LIMIT).
    #[allow(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        clippy::float_arithmetic,
        reason = "the name says how it rounds"
    )]
    pub fn scaled_nearest(self, factor: f64) -> Option<Self> {
        Self::nearest_from_quanta(self.0 as f64 * factor)
    }

    /// The long side of a right triangle with these two short sides, to the nearest quantum.
    ///
    /// long = √(one² + other²)
    ///
    /// Shape:  exact before it is rounded; signs do not matter. A wire's two slopes together are the long
    ///         side over their span and twice their rise.
    /// Errors: `None` past what a length holds.
    /// Source: Pythagoras.
    pub fn long_side_nearest(one: Self, other: Self) -> Option<Self> {
        let square = |side: Self| i128::from(side.0).checked_mul(i128::from(side.0));
        let square = square(one)?.checked_add(square(other)?)?;
        let down = square.isqrt();
        // Halfway between two whole roots lies the square down² + down + 1/4.
        let over = square.checked_sub(down.checked_mul(down)?)?;
        let near = down.checked_add(i128::from(over > down))?;
        i64::try_from(near).ok().map(Self)
    }

    #[allow(
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        clippy::cast_precision_loss,
        reason = "the name says how it rounds"
    )]
    fn nearest_from_quanta(quanta: f64) -> Option<Self> {
        // Comparing with the limit also drops what is not a number.
        let nearest = quanta.round();
        (nearest.abs() <= Self::LIMIT.0 as f64).then_some(Self(nearest as i64))
    }

    /// Sum, or `None` when it can't be held.
    pub const fn checked_add(self, other: Self) -> Option<Self> {
        match self.0.checked_add(other.0) {
            Some(quanta) => Some(Self(quanta)),
            None => None,
        }
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        self.checked_add(other).expect("length out of range")
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.checked_sub(other.0).expect("length out of range"))
    }
}

impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Sub::sub(Self::ZERO, self)
    }
}

impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, n: i64) -> Self {
        self.times(n)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Self) {
        *self = Add::add(*self, other);
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Self) {
        *self = Sub::sub(*self, other);
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Add::add)
    }
}
