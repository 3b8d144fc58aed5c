//! Exact fractions on the way to an amount; the only rounding is [`Exact::to_money`].

use measure::{Area, Length, Money};
use working::{Decimal, FinePrice, Round};

/// `top ÷ bottom`, the bottom number above zero.
///
/// Errors: an operation gives `None` where the result can't be held in 128 bits, also after reducing.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Exact {
    top: i128,
    bottom: i128,
}

impl Exact {
    pub(crate) const ONE: Self = Self { top: 1, bottom: 1 };
    pub(crate) const ZERO: Self = Self { top: 0, bottom: 1 };

    pub(crate) fn whole(number: impl Into<i128>) -> Self {
        Self {
            top: number.into(),
            bottom: 1,
        }
    }

    pub(crate) fn times(self, other: impl Into<Self>) -> Option<Self> {
        let other = other.into();
        let plain = |one: Self, other: Self| {
            Some(Self {
                top: one.top.checked_mul(other.top)?,
                bottom: one.bottom.checked_mul(other.bottom)?,
            })
        };
        plain(self, other).or_else(|| {
            let first = Self::reduced(self.top, other.bottom)?;
            let second = Self::reduced(other.top, self.bottom)?;
            plain(first, second)
        })
    }

    /// `None` also where `other` is not above zero.
    pub(crate) fn over(self, other: impl Into<Self>) -> Option<Self> {
        let other = other.into();
        (other.top > 0).then_some(())?;
        self.times(Self {
            top: other.bottom,
            bottom: other.top,
        })
    }

    pub(crate) fn plus(self, other: impl Into<Self>) -> Option<Self> {
        let other = other.into();
        if self.bottom == other.bottom {
            let top = self.top.checked_add(other.top)?;
            return Some(Self { top, ..self });
        }
        let left = self.top.checked_mul(other.bottom)?;
        let right = other.top.checked_mul(self.bottom)?;
        Some(Self {
            top: left.checked_add(right)?,
            bottom: self.bottom.checked_mul(other.bottom)?,
        })
    }

    /// Whether it is at most another.
    pub(crate) fn at_most(self, other: impl Into<Self>) -> Option<bool> {
        let other = other.into();
        let left = self.top.checked_mul(other.bottom)?;
        let right = other.top.checked_mul(self.bottom)?;
        Some(left <= right)
    }

    /// A whole number, rounded this way.
    pub(crate) fn to_whole(self, way: Round) -> Option<i64> {
        i64::try_from(way.whole(self.top, self.bottom)?).ok()
    }

    /// A multiple of `step`, rounded this way; `self` in one of the step's currency.
    pub(crate) fn to_money(self, step: Money, way: Round) -> Option<Money> {
        let steps = self.over(step)?.to_whole(way)?;
        step.checked_times(steps).ok()
    }

    fn reduced(top: i128, bottom: i128) -> Option<Self> {
        let (mut one, mut other) = (top.unsigned_abs(), bottom.unsigned_abs());
        while other != 0 {
            (one, other) = (other, one.checked_rem(other)?);
        }
        let shared = i128::try_from(one.max(1)).ok()?;
        Some(Self {
            top: top.checked_div(shared)?,
            bottom: bottom.checked_div(shared)?,
        })
    }
}

impl From<Money> for Exact {
    fn from(money: Money) -> Self {
        Self {
            top: i128::from(money.minor),
            bottom: i128::from(money.currency.minor_in_one()),
        }
    }
}

impl From<FinePrice> for Exact {
    fn from(price: FinePrice) -> Self {
        Self {
            top: i128::from(price.millionths),
            bottom: i128::from(FinePrice::ONE),
        }
    }
}

impl From<Decimal> for Exact {
    fn from(decimal: Decimal) -> Self {
        Self {
            top: i128::from(decimal.top()),
            bottom: i128::from(decimal.bottom()),
        }
    }
}

impl From<Length> for Exact {
    fn from(length: Length) -> Self {
        Self::whole(length.quanta())
    }
}

impl From<Area> for Exact {
    fn from(area: Area) -> Self {
        Self::whole(area.square_quanta())
    }
}

impl From<i64> for Exact {
    fn from(number: i64) -> Self {
        Self::whole(number)
    }
}
