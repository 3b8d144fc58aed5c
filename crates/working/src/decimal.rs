//! Exact decimal numbers: rates, factors, percentages.

use std::cmp::Ordering;
use std::fmt;

/// A decimal number held exactly: a markup of 3.5, a tax of 8.25 %.
///
/// Shape:  `digits ÷ 10^places`, without trailing zeros, so equal numbers are equal values.
/// Units:  none.
/// Errors: texts with more than 18 digits or 9 places are not read.
///
/// ```
/// use working::Decimal;
/// assert_eq!(Decimal::read("3.50"), Decimal::read("3.5"));
/// assert_eq!(Decimal::read("8.25 %").map(|rate| rate.to_string()), Some("0.0825".to_owned()));
/// assert_eq!(Decimal::read("about 3"), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Decimal {
    digits: i64,
    places: u8,
}

/// Most digits that are read.
const DIGITS: usize = 18;
/// Most places after the point.
const PLACES: usize = 9;

impl Decimal {
    /// Nothing.
    pub const ZERO: Self = Self::whole(0);
    /// One.
    pub const ONE: Self = Self::whole(1);

    /// A whole number.
    pub const fn whole(number: i64) -> Self {
        Self {
            digits: number,
            places: 0,
        }
    }

    /// `digits ÷ 10^places`.
    ///
    /// Errors: more than 9 places panic.
    pub const fn new(digits: i64, places: u8) -> Self {
        assert!(places <= 9, "a decimal has at most nine places");
        let mut plain = Self { digits, places };
        while plain.places > 0 && plain.digits % 10 == 0 {
            plain.digits /= 10;
            plain.places -= 1;
        }
        plain
    }

    /// Reads `3.5`, `-0.25`, `8.25 %`; a point is the only decimal mark.
    pub fn read(text: &str) -> Option<Self> {
        let text = text.trim();
        let (number, hundredths) = match text.strip_suffix('%') {
            Some(number) => (number.trim_end(), 2),
            None => (text, 0),
        };
        let (negative, number) = match number.strip_prefix(['-', '−']) {
            Some(number) => (true, number),
            None => (false, number),
        };
        let (whole, part) = number.split_once('.').unwrap_or((number, "0"));
        let plain = |text: &str| !text.is_empty() && text.bytes().all(|c| c.is_ascii_digit());
        let places = part.len() + hundredths;
        if !plain(whole) || !plain(part) || whole.len() + part.len() > DIGITS {
            return None;
        }
        let digits: i64 = format!("{whole}{part}").parse().ok()?;
        let digits = if negative { -digits } else { digits };
        let (mut digits, mut places) = (digits, places);
        while places > 0 && digits % 10 == 0 {
            digits /= 10;
            places -= 1;
        }
        if places > PLACES {
            return None;
        }
        Some(Self {
            digits,
            places: u8::try_from(places).ok()?,
        })
    }

    /// The number over 10 to its places.
    pub const fn top(self) -> i64 {
        self.digits
    }

    /// 10 to its places.
    pub const fn bottom(self) -> i64 {
        let mut bottom = 1_i64;
        let mut left = self.places;
        while left > 0 {
            bottom *= 10;
            left -= 1;
        }
        bottom
    }

    /// Whether it is below zero.
    pub const fn is_negative(self) -> bool {
        self.digits < 0
    }

    /// Whether it is zero.
    pub const fn is_zero(self) -> bool {
        self.digits == 0
    }

    /// As a percentage: `8.25 %` of 0.0825.
    pub fn percent(self) -> String {
        let shown = match self.places {
            0 => self.digits.checked_mul(100).map(Self::whole),
            1 => self.digits.checked_mul(10).map(Self::whole),
            places => Some(Self {
                digits: self.digits,
                places: places - 2,
            }),
        };
        match shown {
            Some(shown) => format!("{shown} %"),
            None => self.to_string(),
        }
    }
}

impl PartialOrd for Decimal {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Decimal {
    fn cmp(&self, other: &Self) -> Ordering {
        let scaled = |one: &Self, by: &Self| i128::from(one.digits) * i128::from(by.bottom());
        scaled(self, other).cmp(&scaled(other, self))
    }
}

impl fmt::Display for Decimal {
    /// In full: `3.5`, `-0.0825`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.digits < 0 { "-" } else { "" };
        let size = self.digits.unsigned_abs().to_string();
        let places = usize::from(self.places);
        if places == 0 {
            return f.pad(&format!("{sign}{size}"));
        }
        let size = format!("{size:0>width$}", width = places + 1);
        let (whole, part) = size.split_at(size.len() - places);
        f.pad(&format!("{sign}{whole}.{part}"))
    }
}

/// How an exact number becomes a multiple of a step, by the names of IEEE 754-2008, clause 4.3.
///
/// Source: IEEE 754-2008, *Floating-Point Arithmetic*, 4.3.1 and 4.3.2 (names from memory); the results
///         are compared with a decimal library in `pricing`'s tests.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Round {
    /// The nearest; halves away from zero (`roundTiesToAway`).
    #[default]
    TiesToAway,
    /// The nearest; halves to the even one (`roundTiesToEven`).
    TiesToEven,
    /// Never below (`roundTowardPositive`).
    TowardPositive,
    /// Never above (`roundTowardNegative`).
    TowardNegative,
    /// Never further from zero (`roundTowardZero`).
    TowardZero,
}

impl Round {
    /// Every way.
    pub const ALL: [Self; 5] = [
        Self::TiesToAway,
        Self::TiesToEven,
        Self::TowardPositive,
        Self::TowardNegative,
        Self::TowardZero,
    ];

    /// The standard's name.
    pub const fn ieee(self) -> &'static str {
        match self {
            Self::TiesToAway => "roundTiesToAway",
            Self::TiesToEven => "roundTiesToEven",
            Self::TowardPositive => "roundTowardPositive",
            Self::TowardNegative => "roundTowardNegative",
            Self::TowardZero => "roundTowardZero",
        }
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::TiesToAway => "nearest, halves away from zero",
            Self::TiesToEven => "nearest, halves to even",
            Self::TowardPositive => "up",
            Self::TowardNegative => "down",
            Self::TowardZero => "toward zero",
        }
    }

    /// `top ÷ bottom` as a whole number.
    ///
    /// Errors: `None` where `bottom` is not above zero or the number can't be held.
    pub fn whole(self, top: i128, bottom: i128) -> Option<i128> {
        if bottom <= 0 {
            return None;
        }
        let down = top.checked_div_euclid(bottom)?;
        let left = top.checked_rem_euclid(bottom)?;
        if left == 0 {
            return Some(down);
        }
        let half = left.cmp(&bottom.checked_sub(left)?);
        let up = match self {
            Self::TowardPositive => true,
            Self::TowardNegative => false,
            Self::TowardZero => top < 0,
            Self::TiesToAway => half.is_gt() || (half.is_eq() && top > 0),
            Self::TiesToEven => half.is_gt() || (half.is_eq() && down.rem_euclid(2) == 1),
        };
        down.checked_add(i128::from(up))
    }
}

impl fmt::Display for Round {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}
