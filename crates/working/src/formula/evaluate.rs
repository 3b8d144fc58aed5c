//! Working a formula out.

use std::cmp::Ordering;

use super::Fault;
use super::expression::{Expression, Function};
use super::number::{Number, finite};
use super::quantity::{Quantity, Unit};
use super::token::Sign;
use crate::value::Input;

/// Radians in a millionth of a degree.
const RADIANS: f64 = std::f64::consts::PI / 180.0 / 1_000_000.0;

impl Expression {
    /// What the expression comes to with these inputs.
    pub(crate) fn evaluate(&self, inputs: &[Input]) -> Result<Quantity, Fault> {
        match self {
            Self::Literal(quantity) => Ok(*quantity),
            Self::Name(name) => single(name, inputs),
            Self::Negative(inside) => inside.evaluate(inputs)?.negated(),
            Self::Pair(sign, left, right) => pair(*sign, left, right, inputs),
            Self::Call(function, arguments) => call(*function, arguments, inputs),
        }
    }
}

/// All values recorded under a name.
fn all<'a>(name: &'a str, inputs: &'a [Input]) -> impl Iterator<Item = Quantity> + 'a {
    inputs
        .iter()
        .filter(move |input| input.name == name)
        .map(|input| Quantity::from(input.value))
}

/// The one value recorded under a name.
fn single(name: &str, inputs: &[Input]) -> Result<Quantity, Fault> {
    let mut values = all(name, inputs);
    let first = values.next().ok_or_else(|| Fault::Missing {
        name: name.to_owned(),
    })?;
    match values.count() {
        0 => Ok(first),
        more => Err(Fault::Several {
            name: name.to_owned(),
            times: more + 1,
        }),
    }
}

fn pair(
    sign: Sign,
    left: &Expression,
    right: &Expression,
    inputs: &[Input],
) -> Result<Quantity, Fault> {
    let (left, right) = (left.evaluate(inputs)?, right.evaluate(inputs)?);
    let compared = |holds: fn(Ordering) -> bool| {
        left.compare(right, sign.text())
            .map(|ordering| Quantity::yes(holds(ordering)))
    };
    match sign {
        Sign::Plus => left.plus(right),
        Sign::Minus => left.minus(right),
        Sign::Times => left.times(right),
        Sign::Over => left.over(right),
        Sign::Less => compared(Ordering::is_lt),
        Sign::AtMost => compared(Ordering::is_le),
        Sign::More => compared(Ordering::is_gt),
        Sign::AtLeast => compared(Ordering::is_ge),
        Sign::Equal => compared(Ordering::is_eq),
        Sign::Unequal => compared(Ordering::is_ne),
        Sign::And => Ok(Quantity::yes(left.is_yes("and")? & right.is_yes("and")?)),
        Sign::Or => Ok(Quantity::yes(left.is_yes("or")? | right.is_yes("or")?)),
    }
}

fn call(function: Function, arguments: &[Expression], inputs: &[Input]) -> Result<Quantity, Fault> {
    let by = function.name();
    let argument = |at: usize| arguments[at].evaluate(inputs);
    match function {
        Function::Sum => spread(arguments, inputs)?
            .into_iter()
            .try_fold(Quantity::nothing(), Quantity::plus),
        Function::Count => Ok(count(arguments, inputs)),
        Function::Max => furthest(function, Ordering::Greater, arguments, inputs),
        Function::Min => furthest(function, Ordering::Less, arguments, inputs),
        Function::UpTo => stepped(argument(0)?, argument(1)?, by, Number::ceiling),
        Function::DownTo => stepped(argument(0)?, argument(1)?, by, |steps| Ok(steps.floor())),
        Function::NearestTo => stepped(argument(0)?, argument(1)?, by, Number::nearest),
        Function::RoundTo => {
            let way = argument(2)?.way(by)?;
            stepped(argument(0)?, argument(1)?, by, |steps| steps.rounded(way))
        }
        Function::Up => whole(argument(0)?, by, Number::ceiling),
        Function::Down => whole(argument(0)?, by, |number| Ok(number.floor())),
        Function::Nearest => whole(argument(0)?, by, Number::nearest),
        Function::HalfDown => whole(argument(0)?, by, |number| {
            Ok(number.over(Number::whole(2))?.floor())
        }),
        Function::Tan => of_angle(argument(0)?, by, f64::tan),
        Function::Sin => of_angle(argument(0)?, by, f64::sin),
        Function::Cos => of_angle(argument(0)?, by, f64::cos),
        Function::Atan => angle_of(argument(0)?, by, f64::atan),
        Function::Asin => angle_of(argument(0)?, by, f64::asin),
        Function::Sqrt => argument(0)?.root(),
        Function::Exp => of_number(argument(0)?, by, f64::exp),
        Function::Ln => of_number(argument(0)?, by, f64::ln),
        Function::If => argument(if argument(0)?.is_yes(by)? { 1 } else { 2 }),
        Function::Abs => absolute(argument(0)?),
        Function::Not => Ok(Quantity::yes(!argument(0)?.is_yes(by)?)),
    }
}

/// Every value of every argument: a name gives all recorded under it, anything else gives one.
fn spread(arguments: &[Expression], inputs: &[Input]) -> Result<Vec<Quantity>, Fault> {
    let mut values = Vec::new();
    for argument in arguments {
        match argument {
            Expression::Name(name) => values.extend(all(name, inputs)),
            other => values.push(other.evaluate(inputs)?),
        }
    }
    Ok(values)
}

fn count(arguments: &[Expression], inputs: &[Input]) -> Quantity {
    let named = |input: &&Input| {
        arguments
            .iter()
            .any(|argument| argument.mentions(input.name))
    };
    let count =
        i128::try_from(inputs.iter().filter(named).count()).expect("a list's length fits 128 bits");
    Quantity::new(Number::whole(count), Unit::NUMBER)
}

fn furthest(
    function: Function,
    side: Ordering,
    arguments: &[Expression],
    inputs: &[Input],
) -> Result<Quantity, Fault> {
    let by = function.name();
    let mut values = spread(arguments, inputs)?.into_iter();
    let mut best = values.next().ok_or(Fault::Nothing { by })?;
    for value in values {
        let (left, right, unit) = value.alike(best, by)?;
        let number = if left.compare(right)? == side {
            left
        } else {
            right
        };
        best = Quantity::new(number, unit);
    }
    Ok(best)
}

/// A number of steps, made whole by `rounded`, times the step.
fn stepped(
    quantity: Quantity,
    step: Quantity,
    by: &'static str,
    rounded: impl Fn(Number) -> Result<Number, Fault>,
) -> Result<Quantity, Fault> {
    let (number, step, unit) = quantity.alike(step, by)?;
    if step.is_zero() || step.is_negative() {
        return Err(Fault::Step { by });
    }
    Ok(Quantity::new(
        rounded(number.over(step)?)?.times(step)?,
        unit,
    ))
}

fn whole(
    quantity: Quantity,
    by: &'static str,
    rounded: fn(Number) -> Result<Number, Fault>,
) -> Result<Quantity, Fault> {
    let (number, unit) = quantity.amount(by)?;
    Ok(Quantity::new(rounded(number)?, unit))
}

fn of_angle(angle: Quantity, by: &'static str, curve: fn(f64) -> f64) -> Result<Quantity, Fault> {
    let millionths = angle.number_in(Unit::ANGLE, by, "an angle")?.float();
    Ok(Quantity::new(
        finite(curve(millionths * RADIANS))?,
        Unit::NUMBER,
    ))
}

fn of_number(number: Quantity, by: &'static str, curve: fn(f64) -> f64) -> Result<Quantity, Fault> {
    let number = number.number_in(Unit::NUMBER, by, "a number")?.float();
    Ok(Quantity::new(finite(curve(number))?, Unit::NUMBER))
}

fn angle_of(number: Quantity, by: &'static str, curve: fn(f64) -> f64) -> Result<Quantity, Fault> {
    let radians = curve(number.number_in(Unit::NUMBER, by, "a number")?.float());
    if radians.is_nan() {
        return Err(Fault::NoAngle { by });
    }
    Ok(Quantity::new(finite(radians / RADIANS)?, Unit::ANGLE))
}

fn absolute(quantity: Quantity) -> Result<Quantity, Fault> {
    let (number, unit) = quantity.amount("abs")?;
    let number = if number.is_negative() {
        number.negated()?
    } else {
        number
    };
    Ok(Quantity::new(number, unit))
}
