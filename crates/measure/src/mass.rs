//! Exact masses.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign, Sub};

use crate::read::{self, ReadError};
use crate::{Area, Length, decimal};

/// A mass held exactly, in nanograms.
///
/// Units:  ng, in which the pound and the ounce are whole.
/// Errors: sums beyond 9.2 × 10⁹ g panic.
/// Source: 1 lb = 0.453 592 37 kg exactly (international yard and pound agreement, 1959).
///
/// ```
/// use measure::Mass;
/// let framed = Mass::read_nearest("5 lb 4 oz")?;
/// assert_eq!(framed, Mass::POUND.times(5) + Mass::OUNCE.times(4));
/// assert_eq!(framed.print_kg_nearest(2), "2.38 kg");
/// assert_eq!(framed.print_lb_nearest(2), "5.25 lb");
/// # Ok::<(), measure::ReadError>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Mass(i64);

impl Mass {
    /// No mass at all.
    pub const ZERO: Self = Self(0);
    /// One gram.
    pub const GRAM: Self = Self(1_000_000_000);
    /// One kilogram.
    pub const KILOGRAM: Self = Self(1_000_000_000_000);
    /// One pound, 0.453 592 37 kg.
    pub const POUND: Self = Self(453_592_370_000);
    /// One ounce, a sixteenth of a pound.
    pub const OUNCE: Self = Self(28_349_523_125);

    /// A mass of `n` nanograms.
    pub const fn from_nanograms(n: i64) -> Self {
        Self(n)
    }

    /// The mass in nanograms.
    pub const fn nanograms(self) -> i64 {
        self.0
    }

    /// `n` grams.
    pub const fn grams(n: i64) -> Self {
        Self::GRAM.times(n)
    }

    /// The mass `n` times over.
    #[must_use]
    pub const fn times(self, n: i64) -> Self {
        match self.0.checked_mul(n) {
            Some(nanograms) => Self(nanograms),
            None => panic!("mass out of range"),
        }
    }

    /// The mass of a sheet, to the nearest nanogram, ties away from zero.
    ///
    /// mass = area × areal mass
    ///
    /// ```
    /// use measure::{Area, ArealMass, Mass};
    /// let sheet = Mass::of_sheet_nearest(Area::SQUARE_METRE, ArealMass::grams_per_m2(800));
    /// assert_eq!(sheet, Mass::grams(800));
    /// ```
    pub fn of_sheet_nearest(area: Area, areal: ArealMass) -> Self {
        let nanograms = i128::from(areal.0).checked_mul(1_000_000);
        let product = nanograms.and_then(|n| area.square_quanta().checked_mul(n));
        let one = Area::SQUARE_METRE.square_quanta();
        let mass = decimal::ratio_nearest(product.expect("mass out of range"), one);
        Self(i64::try_from(mass).expect("mass out of range"))
    }

    /// Reads `5 lb 4 oz`, `2.4 kg`, `850 g`, to the nearest nanogram; a unit is always typed.
    ///
    /// Half an ounce is no whole number of nanograms, so unlike a length a mass is rounded as it
    /// is read: each number is cut off at 1/16 ng, and their sum goes to the nearest nanogram, a
    /// tie going away from zero.
    ///
    /// # Errors
    /// As [`read_length`](crate::read_length), with spans in bytes of `text`.
    pub fn read_nearest(text: &str) -> Result<Self, ReadError> {
        read::read_mass_nearest(text)
    }

    /// The exact mass in kilograms, as text that reads back: `2.4 kg`.
    pub fn exact_kg(self) -> String {
        let number = decimal::exact(i128::from(self.0), i128::from(Self::KILOGRAM.0));
        format!(
            "{} kg",
            number.expect("a whole number of nanograms is a finite decimal of a kilogram")
        )
    }

    /// Kilograms to the nearest of `places` decimals, ties away from zero: `2.38 kg`.
    pub fn print_kg_nearest(self, places: u32) -> String {
        let number = decimal::nearest(i128::from(self.0), i128::from(Self::KILOGRAM.0), places);
        format!("{number} kg")
    }

    /// Pounds to the nearest of `places` decimals, ties away from zero: `5.25 lb`.
    pub fn print_lb_nearest(self, places: u32) -> String {
        let number = decimal::nearest(i128::from(self.0), i128::from(Self::POUND.0), places);
        format!("{number} lb")
    }

    /// Both, kilograms to two decimals and pounds to one, nearest: `2.38 kg (5.3 lb)`.
    pub fn print_both_nearest(self) -> String {
        format!(
            "{} ({})",
            self.print_kg_nearest(2),
            self.print_lb_nearest(1)
        )
    }

    /// Kilograms, to the nearest float.
    #[allow(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        clippy::float_arithmetic,
        reason = "the name says it is approximate"
    )]
    pub fn approx_kg(self) -> f64 {
        self.0 as f64 / Self::KILOGRAM.0 as f64
    }
}

/// As [`Mass::print_both_nearest`].
impl fmt::Display for Mass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.print_both_nearest())
    }
}

impl Add for Mass {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.checked_add(other.0).expect("mass out of range"))
    }
}

impl Sub for Mass {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.checked_sub(other.0).expect("mass out of range"))
    }
}

impl AddAssign for Mass {
    fn add_assign(&mut self, other: Self) {
        *self = Add::add(*self, other);
    }
}

impl Sum for Mass {
    fn sum<I: Iterator<Item = Self>>(masses: I) -> Self {
        masses.fold(Self::ZERO, Add::add)
    }
}

/// The mass of one square metre of a sheet, in whole milligrams.
///
/// Units:  mg/m²; a board of 800 g/m² is 800 000.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ArealMass(i64);

impl ArealMass {
    /// No mass at all.
    pub const ZERO: Self = Self(0);

    /// `n` milligrams to the square metre.
    pub const fn mg_per_m2(n: i64) -> Self {
        Self(n)
    }

    /// `n` grams to the square metre.
    pub const fn grams_per_m2(n: i64) -> Self {
        match n.checked_mul(1_000) {
            Some(milligrams) => Self(milligrams),
            None => panic!("areal mass out of range"),
        }
    }

    /// A slab's areal mass to the nearest milligram per square metre, ties away from zero.
    ///
    /// areal mass = density × thickness
    ///
    /// ```
    /// use measure::{ArealMass, Length};
    /// let glass = ArealMass::of_slab_nearest(2_500, Length::mm(2));
    /// assert_eq!(glass, ArealMass::grams_per_m2(5_000));
    /// ```
    pub fn of_slab_nearest(density_kg_per_m3: i64, thickness: Length) -> Self {
        // 1 kg/m³ × 1 quantum = 10⁶ mg ÷ 16 000 000 to the square metre.
        let product = i128::from(density_kg_per_m3).checked_mul(i128::from(thickness.quanta()));
        let milligrams = decimal::ratio_nearest(product.expect("areal mass out of range"), 16);
        Self(i64::try_from(milligrams).expect("areal mass out of range"))
    }

    /// The areal mass in milligrams to the square metre.
    pub const fn in_mg_per_m2(self) -> i64 {
        self.0
    }
}

impl Add for ArealMass {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(
            self.0
                .checked_add(other.0)
                .expect("areal mass out of range"),
        )
    }
}

impl Sum for ArealMass {
    fn sum<I: Iterator<Item = Self>>(masses: I) -> Self {
        masses.fold(Self::ZERO, Add::add)
    }
}
