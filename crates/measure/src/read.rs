//! Reading what people type, exactly, or saying why not.

mod error;
mod hint;
mod money;
mod number;
mod quantity;
mod scale;
mod size;
mod terms;
mod token;

use crate::{Angle, Length, Mass, Money, Size, Unit};

pub use error::{ReadError, Refusal, Wanted};

use scale::{AngleUnit, MassUnit};

/// Reads a length as people type it; a number without a unit is in `bare`.
///
/// Accepted, among others: `16 7/8`, `16-7/8`, `16⅞`, `16.875`, `16,5`, `1' 4 7/8"`, `1 ft 4 in`,
/// `428.6 mm`, `1 m 25 cm`, `16 in 3 mm`, `-1/4`. A single comma before three digits, two numbers
/// side by side, and anything else with two readings is refused with both readings.
///
/// Shape:  a minus before the first number counts for the whole: `-1 ft 4 in` is −16 in.
/// Units:  exact; nothing is rounded, and what is not a whole number of quanta is refused with the
///         nearest lengths that can be typed instead.
///
/// # Errors
/// A [`ReadError`] with a code, the span in bytes of `text`, a sentence and a hint.
///
/// ```
/// use measure::{Length, Unit, read_length};
/// assert_eq!(read_length("1' 4 7/8\"", Unit::Millimetre)?, Length::inch_fraction(135, 8));
/// assert_eq!(read_length("428,6 mm", Unit::Inch)?, Length::micrometres(428_600));
///
/// let error = read_length("16 7/", Unit::Inch).expect_err("no bottom number");
/// assert_eq!(error.to_string(), "the fraction has no bottom number");
/// assert_eq!(error.caret("16 7/"), "16 7/\n   ^^");
/// assert_eq!(error.hint(), "type 16 7/8, 16.875 or 428.6 mm");
/// assert_eq!(error.code(), "measure.fraction.no_bottom");
/// # Ok::<(), measure::ReadError>(())
/// ```
pub fn read_length(text: &str, bare: Unit) -> Result<Length, ReadError> {
    let quanta = terms::read(text, Some(bare))?;
    Ok(Length::from_quanta(quanta))
}

/// Reads a width and a height, width first: `8 x 10`, `8×10`, `8 by 10`, `200 x 250 mm`.
///
/// A unit typed only at the end is that of both numbers; with no unit at all both are in `bare`.
///
/// # Errors
/// As [`read_length`]; also one length or three, a side below zero, and a first number with a unit
/// beside a second without, where `bare` is another unit.
///
/// ```
/// use measure::{Length, Size, Unit, read_size};
/// let print = Size::new(Length::mm(200), Length::mm(250));
/// assert_eq!(read_size("200 x 250 mm", Unit::Inch)?, print);
/// # Ok::<(), measure::ReadError>(())
/// ```
pub fn read_size(text: &str, bare: Unit) -> Result<Size, ReadError> {
    size::read(text, bare)
}

pub(crate) fn read_mass_nearest(text: &str) -> Result<Mass, ReadError> {
    terms::read::<MassUnit>(text, None).map(scale::mass_nearest)
}

pub(crate) fn read_angle(text: &str) -> Result<Angle, ReadError> {
    terms::read(text, Some(AngleUnit::Degree)).map(Angle::from_millionths)
}

pub(crate) fn read_money(text: &str) -> Result<Money, ReadError> {
    money::read(text)
}
