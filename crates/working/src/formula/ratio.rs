//! Exact fractions.

use std::cmp::Ordering;

/// A fraction in lowest terms, its bottom number above zero.
///
/// Errors: every operation gives `None` where the result doesn't fit 128 bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Ratio {
    top: i128,
    bottom: i128,
}

impl Ratio {
    pub(crate) const ZERO: Self = Self::whole(0);

    pub(crate) const fn whole(top: i128) -> Self {
        Self { top, bottom: 1 }
    }

    /// `top ÷ bottom`; `None` where `bottom` is zero.
    pub(crate) fn new(top: i128, bottom: i128) -> Option<Self> {
        if bottom == 0 {
            return None;
        }
        let shared =
            i128::try_from(shared_divisor(top.unsigned_abs(), bottom.unsigned_abs())).ok()?;
        let sign = bottom.signum();
        let top = (top / shared).checked_mul(sign)?;
        let bottom = (bottom / shared).checked_mul(sign)?;
        Some(Self { top, bottom })
    }

    pub(crate) const fn top(self) -> i128 {
        self.top
    }

    pub(crate) const fn bottom(self) -> i128 {
        self.bottom
    }

    /// The whole number it is, if it is one.
    pub(crate) fn as_whole(self) -> Option<i128> {
        (self.bottom == 1).then_some(self.top)
    }

    pub(crate) fn is_zero(self) -> bool {
        self.top == 0
    }

    pub(crate) fn is_negative(self) -> bool {
        self.top < 0
    }

    pub(crate) fn negated(self) -> Option<Self> {
        Some(Self {
            top: self.top.checked_neg()?,
            bottom: self.bottom,
        })
    }

    pub(crate) fn plus(self, other: Self) -> Option<Self> {
        let shared = i128::try_from(shared_divisor(
            self.bottom.unsigned_abs(),
            other.bottom.unsigned_abs(),
        ))
        .ok()?;
        let scale = other.bottom / shared;
        let left = self.top.checked_mul(scale)?;
        let right = other.top.checked_mul(self.bottom / shared)?;
        Self::new(left.checked_add(right)?, self.bottom.checked_mul(scale)?)
    }

    pub(crate) fn minus(self, other: Self) -> Option<Self> {
        self.plus(other.negated()?)
    }

    pub(crate) fn times(self, other: Self) -> Option<Self> {
        let first = Self::new(self.top, other.bottom)?;
        let second = Self::new(other.top, self.bottom)?;
        Self::new(
            first.top.checked_mul(second.top)?,
            first.bottom.checked_mul(second.bottom)?,
        )
    }

    /// `None` also where `other` is zero.
    pub(crate) fn over(self, other: Self) -> Option<Self> {
        self.times(Self::new(other.bottom, other.top)?)
    }

    pub(crate) fn compare(self, other: Self) -> Option<Ordering> {
        Some(self.minus(other)?.top.cmp(&0))
    }

    /// The largest whole number not above it.
    pub(crate) fn floor(self) -> Self {
        Self::whole(self.top.div_euclid(self.bottom))
    }

    /// The root, where it is a fraction itself.
    pub(crate) fn root(self) -> Option<Self> {
        let (top, bottom) = (self.top.checked_isqrt()?, self.bottom.checked_isqrt()?);
        (top * top == self.top && bottom * bottom == self.bottom).then_some(Self { top, bottom })
    }
}

fn shared_divisor(mut one: u128, mut other: u128) -> u128 {
    while other != 0 {
        (one, other) = (other, one % other);
    }
    one.max(1)
}
