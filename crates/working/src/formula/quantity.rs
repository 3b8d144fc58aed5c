//! Numbers with a unit, so that a length is never added to a count.

use std::cmp::Ordering;
use std::fmt;

use measure::{Angle, Area, Length, Mass, Unit as Named};

use super::Fault;
use super::number::Number;
use super::ratio::Ratio;
use super::token::Sign;
use crate::decimal::Round;
use crate::fine::FinePrice;
use crate::value::Value;

/// What a quantity measures: powers of length, mass, angle and money.
///
/// Shape:  zero written as a literal, and the sum of nothing, fit any unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unit(Option<Powers>);

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Powers {
    length: i8,
    mass: i8,
    angle: i8,
    money: i8,
}

impl Unit {
    const ANY: Self = Self(None);
    pub(crate) const NUMBER: Self = Self::of(0, 0, 0, 0);
    pub(crate) const LENGTH: Self = Self::of(1, 0, 0, 0);
    pub(crate) const AREA: Self = Self::of(2, 0, 0, 0);
    pub(crate) const MASS: Self = Self::of(0, 1, 0, 0);
    pub(crate) const ANGLE: Self = Self::of(0, 0, 1, 0);
    pub(crate) const MONEY: Self = Self::of(0, 0, 0, 1);

    const fn of(length: i8, mass: i8, angle: i8, money: i8) -> Self {
        Self(Some(Powers {
            length,
            mass,
            angle,
            money,
        }))
    }

    /// The unit of a product, or of a quotient where `sign` is -1.
    fn joined(self, other: Self, sign: i8) -> Option<Self> {
        let (Some(left), Some(right)) = (self.0, other.0) else {
            return Some(Self(self.0.or(other.0)));
        };
        let join = |left: i8, right: i8| left.checked_add(right.checked_mul(sign)?);
        Some(Self::of(
            join(left.length, right.length)?,
            join(left.mass, right.mass)?,
            join(left.angle, right.angle)?,
            join(left.money, right.money)?,
        ))
    }

    /// The unit both can be read in.
    fn shared(self, other: Self) -> Option<Self> {
        match (self.0, other.0) {
            (Some(left), Some(right)) => (left == right).then_some(self),
            (left, right) => Some(Self(left.or(right))),
        }
    }

    fn halved(self) -> Option<Self> {
        let Some(Powers {
            length,
            mass,
            angle,
            money,
        }) = self.0
        else {
            return Some(self);
        };
        let even = [length, mass, angle, money]
            .iter()
            .all(|power| power % 2 == 0);
        even.then(|| Self::of(length / 2, mass / 2, angle / 2, money / 2))
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::ANY => f.write_str("zero"),
            Self::NUMBER => f.write_str("a number"),
            Self::LENGTH => f.write_str("a length"),
            Self::AREA => f.write_str("an area"),
            Self::MASS => f.write_str("a mass"),
            Self::ANGLE => f.write_str("an angle"),
            Self::MONEY => f.write_str("money"),
            Self(Some(Powers {
                length,
                mass,
                angle,
                money,
            })) => {
                write!(
                    f,
                    "length^{length} × mass^{mass} × angle^{angle} × money^{money}"
                )
            }
        }
    }
}

/// What an expression comes to: yes or no, a way of rounding, or a number with a unit.
///
/// Units:  quanta of 1/16 000 mm and their powers, nanograms, millionths of a degree, one of a currency.
///         A working keeps to one currency, so which it is is not told apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quantity(Kind);

#[derive(Clone, Copy, Debug, PartialEq)]
enum Kind {
    Yes(bool),
    Round(Round),
    Amount(Number, Unit),
}

impl Quantity {
    pub(crate) const fn new(number: Number, unit: Unit) -> Self {
        Self(Kind::Amount(number, unit))
    }

    pub(crate) const fn yes(yes: bool) -> Self {
        Self(Kind::Yes(yes))
    }

    pub(crate) const fn nothing() -> Self {
        Self::new(Number::ZERO, Unit::ANY)
    }

    pub(crate) const fn pi() -> Self {
        Self::new(Number::Float(std::f64::consts::PI), Unit::NUMBER)
    }

    /// One of the unit of this name.
    pub(crate) fn unit(name: &str) -> Option<Self> {
        let length = |unit: Named| (i128::from(unit.quanta()), Unit::LENGTH);
        let mass = |mass: Mass| (i128::from(mass.nanograms()), Unit::MASS);
        let (quanta, unit) = match name {
            "in" => length(Named::Inch),
            "ft" => length(Named::Foot),
            "mm" => length(Named::Millimetre),
            "cm" => length(Named::Centimetre),
            "m" => length(Named::Metre),
            "mg" => mass(MILLIGRAM),
            "g" => mass(Mass::GRAM),
            "kg" => mass(Mass::KILOGRAM),
            "oz" => mass(Mass::OUNCE),
            "lb" => mass(Mass::POUND),
            "degrees" => (i128::from(Angle::degrees(1).millionths()), Unit::ANGLE),
            _ => return None,
        };
        Some(Self::new(Number::whole(quanta), unit))
    }

    /// A number as it is written, with the unit after it, if any.
    pub(crate) fn literal(number: Number, unit: Option<Self>) -> Result<Self, Fault> {
        match unit {
            Some(unit) => Self::new(number, Unit::NUMBER).times(unit),
            None if number.is_zero() => Ok(Self::nothing()),
            None => Ok(Self::new(number, Unit::NUMBER)),
        }
    }

    /// The value, where it is a whole number of quanta in a unit that has a value.
    pub fn value(&self) -> Option<Value> {
        let (number, unit) = match self.0 {
            Kind::Yes(yes) => return Some(Value::Yes(yes)),
            Kind::Round(round) => return Some(Value::Round(round)),
            Kind::Amount(number, unit) => (number, unit),
        };
        let Number::Exact(ratio) = number else {
            return None;
        };
        let whole = ratio.as_whole()?;
        let narrow = || i64::try_from(whole).ok();
        match unit {
            Unit::LENGTH => narrow().map(|quanta| Value::Length(Length::from_quanta(quanta))),
            Unit::AREA => Some(Value::Area(Area::from_square_quanta(whole))),
            Unit::MASS => narrow().map(|nanograms| Value::Mass(Mass::from_nanograms(nanograms))),
            Unit::ANGLE => {
                narrow().map(|millionths| Value::Angle(Angle::from_millionths(millionths)))
            }
            Unit::NUMBER | Unit::ANY => narrow().map(Value::Count),
            _ => None,
        }
    }

    /// Whether no float was needed to get it.
    pub fn is_exact(&self) -> bool {
        match self.0 {
            Kind::Yes(_) | Kind::Round(_) => true,
            Kind::Amount(number, _) => number.is_exact(),
        }
    }

    pub(crate) fn is_zero(&self) -> bool {
        matches!(self.0, Kind::Amount(number, _) if number.is_zero())
    }

    /// The number in quanta, as the nearest float; `None` for yes and no.
    pub(crate) fn float(&self) -> Option<f64> {
        match self.0 {
            Kind::Yes(_) | Kind::Round(_) => None,
            Kind::Amount(number, _) => Some(number.float()),
        }
    }

    pub(crate) fn is_yes(&self, by: &'static str) -> Result<bool, Fault> {
        match self.0 {
            Kind::Yes(yes) => Ok(yes),
            Kind::Round(_) | Kind::Amount(..) => Err(Fault::Needs {
                by,
                wanted: "yes or no",
                given: self.kind(),
            }),
        }
    }

    /// The way of rounding it is.
    pub(crate) fn way(&self, by: &'static str) -> Result<Round, Fault> {
        match self.0 {
            Kind::Round(round) => Ok(round),
            Kind::Yes(_) | Kind::Amount(..) => Err(Fault::Needs {
                by,
                wanted: "a way of rounding",
                given: self.kind(),
            }),
        }
    }

    /// The number and unit, for `by`.
    pub(crate) fn amount(&self, by: &'static str) -> Result<(Number, Unit), Fault> {
        match self.0 {
            Kind::Amount(number, unit) => Ok((number, unit)),
            Kind::Yes(_) | Kind::Round(_) => Err(Fault::Needs {
                by,
                wanted: "an amount",
                given: self.kind(),
            }),
        }
    }

    /// The number, where the unit is `unit` or it is zero of any unit.
    pub(crate) fn number_in(
        &self,
        unit: Unit,
        by: &'static str,
        wanted: &'static str,
    ) -> Result<Number, Fault> {
        match self.0 {
            Kind::Amount(number, own) if own.shared(unit).is_some() => Ok(number),
            _ => Err(Fault::Needs {
                by,
                wanted,
                given: self.kind(),
            }),
        }
    }

    /// What it is, in words: `a length`.
    pub(crate) fn kind(&self) -> String {
        match self.0 {
            Kind::Yes(_) => "yes or no".to_owned(),
            Kind::Round(_) => "a way of rounding".to_owned(),
            Kind::Amount(_, unit) => unit.to_string(),
        }
    }

    /// Both numbers and the unit they share.
    pub(crate) fn alike(
        self,
        other: Self,
        by: &'static str,
    ) -> Result<(Number, Number, Unit), Fault> {
        let ((left, own), (right, others)) = (self.amount(by)?, other.amount(by)?);
        let unit = own.shared(others).ok_or(Fault::Unlike {
            by,
            left: own,
            right: others,
        })?;
        Ok((left, right, unit))
    }

    pub(crate) fn plus(self, other: Self) -> Result<Self, Fault> {
        let (left, right, unit) = self.alike(other, Sign::Plus.text())?;
        Ok(Self::new(left.plus(right)?, unit))
    }

    pub(crate) fn minus(self, other: Self) -> Result<Self, Fault> {
        let (left, right, unit) = self.alike(other, Sign::Minus.text())?;
        Ok(Self::new(left.minus(right)?, unit))
    }

    pub(crate) fn times(self, other: Self) -> Result<Self, Fault> {
        let ((left, own), (right, others)) = (
            self.amount(Sign::Times.text())?,
            other.amount(Sign::Times.text())?,
        );
        Ok(Self::new(
            left.times(right)?,
            own.joined(others, 1).ok_or(Fault::TooLarge)?,
        ))
    }

    pub(crate) fn over(self, other: Self) -> Result<Self, Fault> {
        let ((left, own), (right, others)) = (
            self.amount(Sign::Over.text())?,
            other.amount(Sign::Over.text())?,
        );
        Ok(Self::new(
            left.over(right)?,
            own.joined(others, -1).ok_or(Fault::TooLarge)?,
        ))
    }

    pub(crate) fn negated(self) -> Result<Self, Fault> {
        let (number, unit) = self.amount(Sign::Minus.text())?;
        Ok(Self::new(number.negated()?, unit))
    }

    pub(crate) fn compare(self, other: Self, by: &'static str) -> Result<Ordering, Fault> {
        let (left, right, _) = self.alike(other, by)?;
        left.compare(right)
    }

    pub(crate) fn root(self) -> Result<Self, Fault> {
        let (number, unit) = self.amount("sqrt")?;
        let halved = unit.halved().ok_or(Fault::Needs {
            by: "sqrt",
            wanted: "a square",
            given: unit.to_string(),
        })?;
        Ok(Self::new(number.root()?, halved))
    }
}

/// A thousandth of a gram.
const MILLIGRAM: Mass = Mass::from_nanograms(1_000_000);

/// A fraction whose bottom number is a power of ten.
fn part(top: i128, bottom: i128) -> Number {
    Number::Exact(Ratio::new(top, bottom).expect("a power of ten is above zero"))
}

impl From<Value> for Quantity {
    fn from(value: Value) -> Self {
        let (quanta, unit) = match value {
            Value::Length(length) => (i128::from(length.quanta()), Unit::LENGTH),
            Value::Area(area) => (area.square_quanta(), Unit::AREA),
            Value::Mass(mass) => (i128::from(mass.nanograms()), Unit::MASS),
            Value::Angle(angle) => (i128::from(angle.millionths()), Unit::ANGLE),
            Value::Count(count) => (i128::from(count), Unit::NUMBER),
            Value::Yes(yes) => return Self::yes(yes),
            Value::Figure(figure) => {
                return Self::new(Number::Float(figure.value()), Unit::NUMBER);
            }
            Value::Money(money) => {
                let minor = i128::from(money.currency.minor_in_one());
                return Self::new(part(i128::from(money.minor), minor), Unit::MONEY);
            }
            Value::Price(price) => {
                let (top, one) = (i128::from(price.millionths), i128::from(FinePrice::ONE));
                return Self::new(part(top, one), Unit::MONEY);
            }
            Value::Decimal(decimal) => {
                let (top, bottom) = (i128::from(decimal.top()), i128::from(decimal.bottom()));
                return Self::new(part(top, bottom), Unit::NUMBER);
            }
            Value::Round(round) => return Self(Kind::Round(round)),
        };
        Self::new(Number::whole(quanta), unit)
    }
}

impl fmt::Display for Quantity {
    /// Finer than a [`Value`] is printed, so that the least difference shows: lengths as values are where
    /// they are whole quanta, areas in mm², masses in g.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (number, unit) = match self.0 {
            Kind::Yes(yes) => return Value::Yes(yes).fmt(f),
            Kind::Round(round) => return round.fmt(f),
            Kind::Amount(number, unit) => (number, unit),
        };
        match (unit, number, self.value()) {
            (Unit::LENGTH | Unit::ANGLE, _, Some(value)) => value.fmt(f),
            (Unit::LENGTH, ..) => write!(f, "{:.6} mm", self.in_units("mm", 1)),
            (Unit::AREA, ..) => write!(f, "{:.9} mm²", self.in_units("mm", 2)),
            (Unit::MASS, ..) => write!(f, "{:.9} g", self.in_units("g", 1)),
            (Unit::ANGLE, ..) => write!(f, "{:.9}°", self.in_units("degrees", 1)),
            (_, Number::Exact(ratio), _) if ratio.bottom() == 1 => write!(f, "{}", ratio.top()),
            (_, Number::Exact(ratio), _) => write!(f, "{}/{}", ratio.top(), ratio.bottom()),
            (_, Number::Float(float), _) => write!(f, "{float}"),
        }
    }
}

impl Quantity {
    /// As a float in a power of a named unit, for printing only.
    fn in_units(&self, name: &str, power: i32) -> f64 {
        let one = Self::unit(name)
            .and_then(|unit| unit.float())
            .expect("a unit of this table");
        self.float().expect("an amount") / one.powi(power)
    }
}
