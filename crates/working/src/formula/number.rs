//! Numbers that stay exact until a curve is asked of them.

use std::cmp::Ordering;

use super::Fault;
use super::ratio::Ratio;
use crate::decimal::Round;

/// A number: exact, or a float once a sine, a root or π was taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Number {
    Exact(Ratio),
    Float(f64),
}

impl Number {
    pub(crate) const ZERO: Self = Self::Exact(Ratio::ZERO);

    pub(crate) const fn whole(number: i128) -> Self {
        Self::Exact(Ratio::whole(number))
    }

    /// The nearest float.
    #[allow(
        clippy::cast_precision_loss,
        clippy::as_conversions,
        reason = "a float is asked for"
    )]
    pub(crate) fn float(self) -> f64 {
        match self {
            Self::Exact(ratio) => ratio.top() as f64 / ratio.bottom() as f64,
            Self::Float(float) => float,
        }
    }

    pub(crate) fn is_exact(self) -> bool {
        matches!(self, Self::Exact(_))
    }

    pub(crate) fn is_zero(self) -> bool {
        match self {
            Self::Exact(ratio) => ratio.is_zero(),
            Self::Float(float) => float.abs() < f64::MIN_POSITIVE,
        }
    }

    pub(crate) fn is_negative(self) -> bool {
        match self {
            Self::Exact(ratio) => ratio.is_negative(),
            Self::Float(float) => float < 0.0,
        }
    }

    pub(crate) fn negated(self) -> Result<Self, Fault> {
        match self {
            Self::Exact(ratio) => exact(ratio.negated()),
            Self::Float(float) => Ok(Self::Float(-float)),
        }
    }

    pub(crate) fn plus(self, other: Self) -> Result<Self, Fault> {
        match (self, other) {
            (Self::Exact(left), Self::Exact(right)) => exact(left.plus(right)),
            _ => finite(self.float() + other.float()),
        }
    }

    pub(crate) fn minus(self, other: Self) -> Result<Self, Fault> {
        self.plus(other.negated()?)
    }

    pub(crate) fn times(self, other: Self) -> Result<Self, Fault> {
        match (self, other) {
            (Self::Exact(left), Self::Exact(right)) => exact(left.times(right)),
            _ => finite(self.float() * other.float()),
        }
    }

    pub(crate) fn over(self, other: Self) -> Result<Self, Fault> {
        if other.is_zero() {
            return Err(Fault::ByZero);
        }
        match (self, other) {
            (Self::Exact(left), Self::Exact(right)) => exact(left.over(right)),
            _ => finite(self.float() / other.float()),
        }
    }

    pub(crate) fn compare(self, other: Self) -> Result<Ordering, Fault> {
        match (self, other) {
            (Self::Exact(left), Self::Exact(right)) => left.compare(right).ok_or(Fault::TooLarge),
            _ => self
                .float()
                .partial_cmp(&other.float())
                .ok_or(Fault::TooLarge),
        }
    }

    /// The largest whole number not above it.
    pub(crate) fn floor(self) -> Self {
        match self {
            Self::Exact(ratio) => Self::Exact(ratio.floor()),
            Self::Float(float) => Self::Float(float.floor()),
        }
    }

    /// The smallest whole number not below it.
    pub(crate) fn ceiling(self) -> Result<Self, Fault> {
        self.negated()?.floor().negated()
    }

    /// The nearest whole number, halves away from zero.
    pub(crate) fn nearest(self) -> Result<Self, Fault> {
        let half = Self::whole(1).over(Self::whole(2))?;
        if self.is_negative() {
            return self.minus(half)?.ceiling();
        }
        Ok(self.plus(half)?.floor())
    }

    /// A whole number, rounded this way; only an exact number is rounded so.
    pub(crate) fn rounded(self, way: Round) -> Result<Self, Fault> {
        let Self::Exact(ratio) = self else {
            return Err(Fault::Needs {
                by: "round_to",
                wanted: "an exact number",
                given: "a float".to_owned(),
            });
        };
        let whole = way.whole(ratio.top(), ratio.bottom());
        whole.map(Self::whole).ok_or(Fault::TooLarge)
    }

    /// The square root; exact where the root is a fraction.
    pub(crate) fn root(self) -> Result<Self, Fault> {
        if self.is_negative() {
            return Err(Fault::RootOfNegative);
        }
        if let Self::Exact(ratio) = self
            && let Some(root) = ratio.root()
        {
            return Ok(Self::Exact(root));
        }
        finite(self.float().sqrt())
    }
}

fn exact(ratio: Option<Ratio>) -> Result<Number, Fault> {
    ratio.map(Number::Exact).ok_or(Fault::TooLarge)
}

/// The float as a number; a fault where it ran past what a float can hold.
pub(crate) fn finite(float: f64) -> Result<Number, Fault> {
    if float.is_finite() {
        Ok(Number::Float(float))
    } else {
        Err(Fault::TooLarge)
    }
}
