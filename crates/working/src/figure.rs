//! Figures: numbers of nature that are no length, mass, angle or money.

use std::fmt;
use std::hash::{Hash, Hasher};

/// A number with the unit it is in, for quantities that physics knows and a tape does not: a dose of
/// light, a humidity, a force, a temperature.
///
/// Shape:  always finite. A formula reads it as a plain number in that unit, so a formula that takes one
///         names the unit of every length and mass it is mixed with (`width ÷ 1 mm`).
/// Units:  the one it carries; empty for a plain ratio.
/// Errors: what is not finite panics; callers bound their inputs first.
///
/// ```
/// use working::Figure;
/// assert_eq!(Figure::of(34.801, "N").to_string(), "34.8 N");
/// assert_eq!(Figure::of(0.000_072, "1/K").to_string(), "0.000072 1/K");
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Figure {
    value: f64,
    unit: &'static str,
}

/// Significant digits that are printed: none of these quantities is known better.
const DIGITS: i32 = 4;

impl Figure {
    /// A figure in this unit.
    pub fn of(value: f64, unit: &'static str) -> Self {
        assert!(value.is_finite(), "a figure in {unit} is finite");
        // One zero, so that equal figures have equal bits.
        Self {
            value: value + 0.0,
            unit,
        }
    }

    /// The number.
    pub const fn value(self) -> f64 {
        self.value
    }

    /// Its unit.
    pub const fn unit(self) -> &'static str {
        self.unit
    }

    /// The number to four significant digits, nearest, without its unit; whole numbers in full.
    pub fn number_nearest(self) -> String {
        if self.value == 0.0 {
            return "0".to_owned();
        }
        let mut places = 0_usize;
        let mut size = self.value.abs();
        while size < 10_f64.powi(DIGITS - 1) && places < 12 {
            size *= 10.0;
            places += 1;
        }
        let text = format!("{:.places$}", self.value);
        if places == 0 {
            return text;
        }
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }
}

impl PartialEq for Figure {
    fn eq(&self, other: &Self) -> bool {
        self.value.to_bits() == other.value.to_bits() && self.unit == other.unit
    }
}

impl Eq for Figure {}

impl Hash for Figure {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.value.to_bits().hash(state);
        self.unit.hash(state);
    }
}

/// To four significant digits, with its unit.
impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let number = self.number_nearest();
        match self.unit {
            "" => f.pad(&number),
            "%" => f.pad(&format!("{number}%")),
            unit => f.pad(&format!("{number} {unit}")),
        }
    }
}
