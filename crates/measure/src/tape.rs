//! Printing lengths: exactly, and as a tape shows them.

use std::cmp::Ordering;
use std::fmt;

use crate::{Length, Unit, decimal};

/// The marks of a tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Tape {
    /// Inches by 1/8.
    Eighths,
    /// Inches by 1/16.
    Sixteenths,
    /// Inches by 1/32.
    ThirtySeconds,
    /// Inches by 1/64.
    SixtyFourths,
    /// Millimetres by 0.5.
    HalfMillimetre,
    /// Whole millimetres.
    Millimetre,
}

impl Tape {
    /// The distance between two marks.
    pub const fn step(self) -> Length {
        match self {
            Self::Eighths => Length::inch_fraction(1, 8),
            Self::Sixteenths => Length::inch_fraction(1, 16),
            Self::ThirtySeconds => Length::inch_fraction(1, 32),
            Self::SixtyFourths => Length::inch_fraction(1, 64),
            Self::HalfMillimetre => Length::micrometres(500),
            Self::Millimetre => Length::MILLIMETRE,
        }
    }

    /// The unit its numbers are in.
    pub const fn unit(self) -> Unit {
        match self {
            Self::HalfMillimetre | Self::Millimetre => Unit::Millimetre,
            _ => Unit::Inch,
        }
    }
}

/// Which mark of a tape is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Toward {
    /// The nearest; a tie goes away from zero.
    Nearest,
    /// The mark below, for what must go into a space.
    Down,
    /// The mark above, for a space that something must go into.
    Up,
}

/// How far a print lies from the true length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Rounding {
    /// Not at all.
    Exact,
    /// The print lies above the true length by this much.
    Up(Length),
    /// The print lies below the true length by this much.
    Down(Length),
}

/// A length as a tape shows it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Printed {
    /// The mark, with its unit: `16 7/8 in`.
    pub text: String,
    /// How far the mark lies from the true length.
    pub rounding: Rounding,
}

/// The mark, and which way it was rounded if it was: `16 13/16 in (rounded down)`.
impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)?;
        match self.rounding {
            Rounding::Exact => Ok(()),
            Rounding::Up(_) => f.write_str(" (rounded up)"),
            Rounding::Down(_) => f.write_str(" (rounded down)"),
        }
    }
}

#[allow(
    clippy::arithmetic_side_effects,
    reason = "the operators of Length are checked"
)]
impl Length {
    /// The length as a tape shows it, with how far that lies from the truth.
    ///
    /// ```
    /// use measure::{Length, Rounding, Tape, Toward};
    /// let printed = Length::mm(300).on_tape(Tape::Eighths, Toward::Up);
    /// assert_eq!(printed.text, "11 7/8 in");
    /// assert_eq!(printed.rounding, Rounding::Up(Length::micrometres(1_625)));
    /// assert_eq!(printed.to_string(), "11 7/8 in (rounded up)");
    /// ```
    pub fn on_tape(self, tape: Tape, toward: Toward) -> Printed {
        let mark = match toward {
            Toward::Nearest => self.nearest_to(tape.step()),
            Toward::Down => self.down_to(tape.step()),
            Toward::Up => self.up_to(tape.step()),
        };
        let rounding = match mark.cmp(&self) {
            Ordering::Equal => Rounding::Exact,
            Ordering::Greater => Rounding::Up(mark - self),
            Ordering::Less => Rounding::Down(self - mark),
        };
        Printed {
            text: mark.exact(tape.unit()),
            rounding,
        }
    }

    /// The exact length in a unit, as text that reads back to the same length.
    ///
    /// Inches, feet and yards print fractions down to 1/128; where those do not reach, inches print
    /// an exact decimal if there is one, and anything else its exact millimetres.
    ///
    /// ```
    /// use measure::{Length, Unit};
    /// let length = Length::inches(16) + Length::inch_fraction(7, 8);
    /// assert_eq!(length.exact(Unit::Inch), "16 7/8 in");
    /// assert_eq!(length.exact(Unit::Foot), "1 ft 4 7/8 in");
    /// assert_eq!(length.exact(Unit::Centimetre), "42.8625 cm");
    /// assert_eq!(Length::mm(10).exact(Unit::Inch), "10 mm");
    /// ```
    pub fn exact(self, unit: Unit) -> String {
        match unit {
            Unit::Inch | Unit::Foot | Unit::Yard => self
                .exact_in_inch_family(unit)
                .unwrap_or_else(|| self.exact_mm()),
            Unit::Millimetre | Unit::Centimetre | Unit::Metre | Unit::Micrometre => {
                let number = decimal::exact(i128::from(self.quanta()), i128::from(unit.quanta()));
                format!(
                    "{} {unit}",
                    number.expect("a quantum is a finite decimal of a metre")
                )
            }
        }
    }

    /// The exact length in inches, `16 7/8 in`, or exact millimetres where no inch numeral ends.
    pub fn exact_inches(self) -> String {
        self.exact(Unit::Inch)
    }

    /// The exact length in millimetres, always a finite decimal: `428.625 mm`.
    pub fn exact_mm(self) -> String {
        self.exact(Unit::Millimetre)
    }

    /// The exact length in a unit, and in the other family beside it: `16 7/8 in (428.625 mm)`.
    ///
    /// Where no inch numeral ends, the exact metric length comes first and the nearest 1/64 in
    /// beside it says which way it was rounded.
    ///
    /// ```
    /// use measure::{Length, Unit};
    /// assert_eq!(Length::inch_fraction(1, 2).in_both(Unit::Inch), "1/2 in (12.7 mm)");
    /// assert_eq!(Length::inch_fraction(1, 2).in_both(Unit::Millimetre), "12.7 mm (1/2 in)");
    /// assert_eq!(Length::mm(300).in_both(Unit::Inch), "300 mm (11 13/16 in rounded up)");
    /// ```
    pub fn in_both(self, first: Unit) -> String {
        let (inches, metric) = if first.is_inch_family() {
            (self.exact_in_inch_family(first), self.exact_mm())
        } else {
            (self.exact_in_inch_family(Unit::Inch), self.exact(first))
        };
        match inches {
            Some(inches) if first.is_inch_family() => format!("{inches} ({metric})"),
            Some(inches) => format!("{metric} ({inches})"),
            None => format!("{metric} ({})", self.near_inches()),
        }
    }

    /// The nearest 1/64 in and which way it was rounded.
    fn near_inches(self) -> String {
        let printed = self.on_tape(Tape::SixtyFourths, Toward::Nearest);
        printed.to_string().replace(['(', ')'], "")
    }

    /// The exact length in inches or feet, or `None` where no inch numeral ends.
    fn exact_in_inch_family(self, unit: Unit) -> Option<String> {
        if unit == Unit::Inch {
            let decimals = || decimal::exact(i128::from(self.quanta()), i128::from(unit.quanta()));
            return self
                .inch_numeral()
                .or_else(decimals)
                .map(|number| format!("{number} in"));
        }
        let feet = self.abs().down_to(Unit::Foot.one());
        let inches = self.abs() - feet;
        let Some(number) = inches.inch_numeral() else {
            return self.exact_in_inch_family(Unit::Inch);
        };
        let sign = if self.is_negative() { "-" } else { "" };
        let whole = feet.quanta().checked_div(Unit::Foot.quanta())?;
        Some(match (whole, inches.is_zero()) {
            (0, _) => format!("{sign}{number} in"),
            (_, true) => format!("{sign}{whole} ft"),
            (_, false) => format!("{sign}{whole} ft {number} in"),
        })
    }

    /// The number of inches as a whole number and a fraction down to 1/128: `16 7/8`.
    fn inch_numeral(self) -> Option<String> {
        let size = self.abs();
        if size.down_to(Self::inch_128ths(1)) != size {
            return None;
        }
        let whole = size.down_to(Self::INCH);
        let inches = whole.quanta().checked_div(Unit::Inch.quanta())?;
        let mut top = (size - whole).quanta().checked_div(3_175)?;
        let mut bottom = 128_i64;
        while top != 0 && top.rem_euclid(2) == 0 {
            top = top.div_euclid(2);
            bottom = bottom.div_euclid(2);
        }
        let sign = if self.is_negative() { "-" } else { "" };
        Some(match (inches, top) {
            (_, 0) => format!("{sign}{inches}"),
            (0, _) => format!("{sign}{top}/{bottom}"),
            (_, _) => format!("{sign}{inches} {top}/{bottom}"),
        })
    }
}

/// The exact length in inches, as [`Length::exact_inches`].
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.exact_inches())
    }
}
