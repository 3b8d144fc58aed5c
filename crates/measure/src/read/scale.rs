//! The units of each quantity, as people spell them.

use crate::{Angle, Length, Mass, Tape, Unit, decimal};

use super::Wanted;
use super::token::Mark;

/// A family of units of one quantity.
pub(super) trait Scale: Copy + Eq + 'static {
    /// What is read.
    const WANTED: Wanted;
    /// The most that is read, in quanta, and as text.
    const LIMIT: (i128, &'static str);
    /// Every spelling in lower case, without a final point.
    const WORDS: &'static [(&'static str, Self)];
    /// Whether a number must be a whole number of quanta; otherwise what is finer is cut off.
    const EXACT: bool = true;

    fn quanta(self) -> i64;
    fn symbol(self) -> &'static str;
    /// The unit of a foot or inch mark.
    fn of_mark(mark: Mark) -> Option<Self>;
    /// The unit of a bare number after this one, as in `5' 6`.
    fn next(self) -> Option<Self>;
    /// Units a bare number after this one may be in, where it has no usual one.
    fn smaller(self) -> &'static [Self];
    /// Whether a fraction may follow its mark, as in `3" 1/2`.
    fn takes_fraction(self) -> bool;
    /// A value that is held, in this unit if that is exact, as text that reads back.
    fn print(self, quanta: i64) -> String;
    /// The unit whose decimals reach every value that is held.
    fn finest() -> Self;
    /// Coarser values near it that people measure in.
    fn near(quanta: i64) -> Vec<String>;

    /// The unit of a word, in any case, with or without its final point.
    fn of_word(word: &str) -> Option<Self> {
        let word = word.to_lowercase();
        let word = word.trim_end_matches('.');
        Self::WORDS
            .iter()
            .find(|(spelling, _)| *spelling == word)
            .map(|(_, unit)| *unit)
    }
}

impl Scale for Unit {
    const WANTED: Wanted = Wanted::Length;
    const LIMIT: (i128, &'static str) = (16_000_000_000, "1000 m");
    const WORDS: &'static [(&'static str, Self)] = &[
        ("in", Self::Inch),
        ("ins", Self::Inch),
        ("inch", Self::Inch),
        ("inches", Self::Inch),
        ("ft", Self::Foot),
        ("foot", Self::Foot),
        ("feet", Self::Foot),
        ("yd", Self::Yard),
        ("yds", Self::Yard),
        ("yard", Self::Yard),
        ("yards", Self::Yard),
        ("mm", Self::Millimetre),
        ("mms", Self::Millimetre),
        ("millimetre", Self::Millimetre),
        ("millimetres", Self::Millimetre),
        ("millimeter", Self::Millimetre),
        ("millimeters", Self::Millimetre),
        ("cm", Self::Centimetre),
        ("cms", Self::Centimetre),
        ("centimetre", Self::Centimetre),
        ("centimetres", Self::Centimetre),
        ("centimeter", Self::Centimetre),
        ("centimeters", Self::Centimetre),
        ("m", Self::Metre),
        ("metre", Self::Metre),
        ("metres", Self::Metre),
        ("meter", Self::Metre),
        ("meters", Self::Metre),
        // The micro sign, the Greek letter, and the letter that stands in for both.
        ("\u{b5}m", Self::Micrometre),
        ("\u{3bc}m", Self::Micrometre),
        ("um", Self::Micrometre),
        ("micrometre", Self::Micrometre),
        ("micrometres", Self::Micrometre),
        ("micrometer", Self::Micrometre),
        ("micrometers", Self::Micrometre),
        ("micron", Self::Micrometre),
        ("microns", Self::Micrometre),
    ];

    fn quanta(self) -> i64 {
        self.one().quanta()
    }
    fn symbol(self) -> &'static str {
        Self::symbol(self)
    }
    fn of_mark(mark: Mark) -> Option<Self> {
        match mark {
            Mark::Foot => Some(Self::Foot),
            Mark::Inch => Some(Self::Inch),
            Mark::Degree => None,
        }
    }
    fn next(self) -> Option<Self> {
        (self == Self::Foot).then_some(Self::Inch)
    }
    fn smaller(self) -> &'static [Self] {
        match self {
            Self::Metre => &[Self::Centimetre, Self::Millimetre],
            Self::Yard => &[Self::Foot, Self::Inch],
            Self::Foot => &[Self::Inch],
            Self::Inch | Self::Centimetre => &[Self::Millimetre],
            Self::Millimetre => &[Self::Micrometre],
            Self::Micrometre => &[],
        }
    }
    fn takes_fraction(self) -> bool {
        self == Self::Inch
    }
    fn print(self, quanta: i64) -> String {
        Length::from_quanta(quanta).exact(self)
    }
    fn finest() -> Self {
        Self::Millimetre
    }
    fn near(quanta: i64) -> Vec<String> {
        let length = Length::from_quanta(quanta).nearest_to(Tape::SixtyFourths.step());
        if length.is_zero() {
            Vec::new()
        } else {
            vec![length.exact_inches()]
        }
    }
}

/// The units of mass people type.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum MassUnit {
    Kilogram,
    Pound,
    Ounce,
    Gram,
    Milligram,
}

/// Quanta of a mass being read in one nanogram: enough to tell which nanogram is nearest.
const MASS_QUANTA: i64 = 16;

/// The mass of a sum that was read, to the nearest nanogram, a tie going away from zero.
pub(super) fn mass_nearest(quanta: i64) -> Mass {
    let nanograms = decimal::ratio_nearest(i128::from(quanta), i128::from(MASS_QUANTA));
    Mass::from_nanograms(i64::try_from(nanograms).expect("a rounded part is no larger"))
}

impl Scale for MassUnit {
    const WANTED: Wanted = Wanted::Mass;
    const LIMIT: (i128, &'static str) = (16_000_000_000_000_000, "1000 kg");
    const EXACT: bool = false;
    const WORDS: &'static [(&'static str, Self)] = &[
        ("kg", Self::Kilogram),
        ("kgs", Self::Kilogram),
        ("kilogram", Self::Kilogram),
        ("kilograms", Self::Kilogram),
        ("lb", Self::Pound),
        ("lbs", Self::Pound),
        ("pound", Self::Pound),
        ("pounds", Self::Pound),
        ("oz", Self::Ounce),
        ("ounce", Self::Ounce),
        ("ounces", Self::Ounce),
        ("g", Self::Gram),
        ("gram", Self::Gram),
        ("grams", Self::Gram),
        ("mg", Self::Milligram),
        ("milligram", Self::Milligram),
        ("milligrams", Self::Milligram),
    ];

    fn quanta(self) -> i64 {
        let one = match self {
            Self::Kilogram => Mass::KILOGRAM,
            Self::Pound => Mass::POUND,
            Self::Ounce => Mass::OUNCE,
            Self::Gram => Mass::GRAM,
            Self::Milligram => Mass::from_nanograms(1_000_000),
        };
        one.times(MASS_QUANTA).nanograms()
    }
    fn symbol(self) -> &'static str {
        match self {
            Self::Kilogram => "kg",
            Self::Pound => "lb",
            Self::Ounce => "oz",
            Self::Gram => "g",
            Self::Milligram => "mg",
        }
    }
    fn of_mark(_: Mark) -> Option<Self> {
        None
    }
    fn next(self) -> Option<Self> {
        (self == Self::Pound).then_some(Self::Ounce)
    }
    fn smaller(self) -> &'static [Self] {
        match self {
            Self::Kilogram => &[Self::Gram],
            Self::Pound => &[Self::Ounce],
            Self::Gram => &[Self::Milligram],
            Self::Ounce | Self::Milligram => &[],
        }
    }
    fn takes_fraction(self) -> bool {
        false
    }
    fn print(self, quanta: i64) -> String {
        let (value, one) = (i128::from(quanta), i128::from(self.quanta()));
        let number = decimal::exact(value, one).map(|number| format!("{number} {}", self.symbol()));
        number.unwrap_or_else(|| mass_nearest(quanta).exact_kg())
    }
    fn finest() -> Self {
        Self::Kilogram
    }
    fn near(_: i64) -> Vec<String> {
        Vec::new()
    }
}

/// The one unit of angle people type.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum AngleUnit {
    Degree,
}

impl Scale for AngleUnit {
    const WANTED: Wanted = Wanted::Angle;
    const LIMIT: (i128, &'static str) = (360_000_000_000, "360000 degrees");
    const WORDS: &'static [(&'static str, Self)] = &[
        ("deg", Self::Degree),
        ("degs", Self::Degree),
        ("degree", Self::Degree),
        ("degrees", Self::Degree),
    ];

    fn quanta(self) -> i64 {
        Angle::degrees(1).millionths()
    }
    fn symbol(self) -> &'static str {
        "deg"
    }
    fn of_mark(mark: Mark) -> Option<Self> {
        (mark == Mark::Degree).then_some(Self::Degree)
    }
    fn next(self) -> Option<Self> {
        None
    }
    fn smaller(self) -> &'static [Self] {
        &[]
    }
    fn takes_fraction(self) -> bool {
        false
    }
    fn finest() -> Self {
        Self::Degree
    }
    fn print(self, quanta: i64) -> String {
        Angle::from_millionths(quanta).to_string()
    }
    fn near(_: i64) -> Vec<String> {
        Vec::new()
    }
}
