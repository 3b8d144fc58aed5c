//! The values a line holds and where its inputs came from.

use std::fmt;

use measure::{Angle, Area, Length, Mass, Money, Unit};

use crate::decimal::{Decimal, Round};
use crate::figure::Figure;
use crate::fine::FinePrice;
use crate::trace::{LineId, Worked};

/// A value on a line of working.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Value {
    /// A length.
    Length(Length),
    /// An area.
    Area(Area),
    /// A mass.
    Mass(Mass),
    /// An angle.
    Angle(Angle),
    /// A plain whole number: pieces, parts per million.
    Count(i64),
    /// Yes or no.
    Yes(bool),
    /// A number of nature, with its unit.
    Figure(Figure),
    /// An amount of money.
    Money(Money),
    /// A price finer than its currency's minor unit.
    Price(FinePrice),
    /// An exact decimal number: a rate, a factor.
    Decimal(Decimal),
    /// How something is rounded.
    Round(Round),
}

impl fmt::Display for Value {
    /// Lengths in inches and millimetres: `11 3/4 in (298.45 mm)`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length(length) => f.pad(&length.in_both(Unit::Inch)),
            Self::Area(area) => area.fmt(f),
            Self::Mass(mass) => mass.fmt(f),
            Self::Angle(angle) => angle.fmt(f),
            Self::Count(count) => count.fmt(f),
            Self::Yes(yes) => f.pad(if *yes { "yes" } else { "no" }),
            Self::Figure(figure) => figure.fmt(f),
            Self::Money(money) => f.pad(&money.to_string()),
            Self::Price(price) => price.fmt(f),
            Self::Decimal(decimal) => decimal.fmt(f),
            Self::Round(round) => round.fmt(f),
        }
    }
}

impl Value {
    /// The value in one unit, for a column of inputs: `11 3/4 in`.
    pub(crate) fn brief(&self) -> String {
        match self {
            Self::Length(length) => length.exact(Unit::Inch),
            other => other.to_string(),
        }
    }
}

impl From<Length> for Value {
    fn from(length: Length) -> Self {
        Self::Length(length)
    }
}

impl From<Area> for Value {
    fn from(area: Area) -> Self {
        Self::Area(area)
    }
}

impl From<Mass> for Value {
    fn from(mass: Mass) -> Self {
        Self::Mass(mass)
    }
}

impl From<Angle> for Value {
    fn from(angle: Angle) -> Self {
        Self::Angle(angle)
    }
}

impl From<i64> for Value {
    fn from(count: i64) -> Self {
        Self::Count(count)
    }
}

impl From<i32> for Value {
    fn from(count: i32) -> Self {
        Self::Count(i64::from(count))
    }
}

impl From<u32> for Value {
    fn from(count: u32) -> Self {
        Self::Count(i64::from(count))
    }
}

impl From<bool> for Value {
    fn from(yes: bool) -> Self {
        Self::Yes(yes)
    }
}

impl From<Figure> for Value {
    fn from(figure: Figure) -> Self {
        Self::Figure(figure)
    }
}

impl From<Money> for Value {
    fn from(money: Money) -> Self {
        Self::Money(money)
    }
}

impl From<FinePrice> for Value {
    fn from(price: FinePrice) -> Self {
        Self::Price(price)
    }
}

impl From<Decimal> for Value {
    fn from(decimal: Decimal) -> Self {
        Self::Decimal(decimal)
    }
}

impl From<Round> for Value {
    fn from(round: Round) -> Self {
        Self::Round(round)
    }
}

impl<T: Into<Value>> From<Worked<T>> for Value {
    fn from(worked: Worked<T>) -> Self {
        worked.value.into()
    }
}

/// Where an input came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Origin {
    /// An earlier line of the same working.
    Line(LineId),
    /// The setting of this id.
    Setting(&'static str),
    /// What the job says.
    Job,
    /// What the catalogue says of a material.
    Material,
    /// A table of constants; the code of the source it was taken from.
    Table(&'static str),
    /// A search for the value that satisfies the line's formula, which checks it.
    Search,
    /// What the shop's rule set of prices says.
    Prices,
}

/// A value on its way into a line, with where it came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Given {
    /// The value.
    pub value: Value,
    /// Where it came from.
    pub origin: Origin,
}

impl Given {
    /// A value the job states.
    pub fn job(value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Job,
        }
    }

    /// The value of the setting of this id.
    pub fn setting(id: &'static str, value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Setting(id),
        }
    }

    /// A constant of a table, with the code of its source.
    pub fn table(source: &'static str, value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Table(source),
        }
    }

    /// A value found by a search that the line's formula checks.
    pub fn search(value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Search,
        }
    }

    /// A value the shop's rule set of prices states.
    pub fn prices(value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Prices,
        }
    }

    /// A value the catalogue states of a material.
    pub fn material(value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            origin: Origin::Material,
        }
    }
}

impl<T: Into<Value>> From<Worked<T>> for Given {
    fn from(worked: Worked<T>) -> Self {
        Self {
            value: worked.value.into(),
            origin: Origin::Line(worked.line),
        }
    }
}

/// An input as a line records it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Input {
    /// Its name in the formula.
    pub name: &'static str,
    /// Its value.
    pub value: Value,
    /// Where it came from.
    pub origin: Origin,
}
