//! Exact money.

use std::fmt;
use std::num::NonZeroU32;

use crate::decimal;
use crate::read::{self, ReadError};

/// A currency of ISO 4217 that has a minor unit.
///
/// Metals, testing codes and the like, for which the standard gives no minor unit, are not held.
/// Source: ISO 4217, through `iso_currency`; `tests/it/currency.rs` compares it with the standard's
/// own table.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Currency(iso_currency::Currency);

impl Currency {
    /// The currency of this code, in either case; `None` when there is none with a minor unit.
    ///
    /// ```
    /// use measure::Currency;
    /// assert_eq!(Currency::from_code("eur").map(Currency::places), Some(2));
    /// assert_eq!(Currency::from_code("JPY").map(Currency::places), Some(0));
    /// assert_eq!(Currency::from_code("XAU"), None);
    /// ```
    pub fn from_code(code: &str) -> Option<Self> {
        let currency = iso_currency::Currency::from_code(&code.to_ascii_uppercase())?;
        currency.exponent().map(|_| Self(currency))
    }

    /// The three letters: `USD`.
    pub fn code(self) -> &'static str {
        self.0.code()
    }

    /// The English name.
    pub fn name(self) -> String {
        self.0.name().to_owned()
    }

    /// How many decimals its minor unit takes: 2 where 100 make one.
    pub fn places(self) -> u32 {
        self.0.exponent().map_or(0, u32::from)
    }

    /// How many minor units make one.
    pub fn minor_in_one(self) -> i64 {
        10_i64
            .checked_pow(self.places())
            .expect("no minor unit takes 18 decimals")
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl fmt::Debug for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

/// An amount of one currency, held exactly in its minor unit.
///
/// Units:  minor units as ISO 4217 gives them (cents, pence; whole yen).
/// Errors: two currencies never add; sums that can't be held are refused.
///
/// ```
/// use measure::{Currency, Money};
/// let dollars = Currency::from_code("USD").expect("USD is listed");
/// let price = Money::read("12.50 USD")?;
/// assert_eq!(price, Money::new(1_250, dollars));
/// assert_eq!(price.to_string(), "12.50 USD");
/// # Ok::<(), measure::ReadError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Money {
    /// Minor units; below zero where it is owed back.
    pub minor: i64,
    /// Which currency.
    pub currency: Currency,
}

impl Money {
    /// This many minor units of this currency.
    pub const fn new(minor: i64, currency: Currency) -> Self {
        Self { minor, currency }
    }

    /// Nothing, in this currency.
    pub const fn zero(currency: Currency) -> Self {
        Self::new(0, currency)
    }

    /// The sum.
    ///
    /// # Errors
    /// [`MoneyError::Mixed`] for two currencies, [`MoneyError::OutOfRange`] beyond an `i64`.
    pub fn checked_add(self, other: Self) -> Result<Self, MoneyError> {
        self.with(other, i64::checked_add)
    }

    /// The difference.
    ///
    /// # Errors
    /// [`MoneyError::Mixed`] for two currencies, [`MoneyError::OutOfRange`] beyond an `i64`.
    pub fn checked_sub(self, other: Self) -> Result<Self, MoneyError> {
        self.with(other, i64::checked_sub)
    }

    /// The amount `n` times over.
    ///
    /// # Errors
    /// [`MoneyError::OutOfRange`] beyond an `i64`.
    pub fn checked_times(self, n: i64) -> Result<Self, MoneyError> {
        let minor = self.minor.checked_mul(n).ok_or(MoneyError::OutOfRange)?;
        Ok(Self { minor, ..self })
    }

    /// The amount in `n` parts that sum to it; earlier parts are at most one minor unit larger.
    pub fn split(self, n: NonZeroU32) -> impl Iterator<Item = Self> {
        let parts = i64::from(n.get());
        let each = self
            .minor
            .checked_div_euclid(parts)
            .expect("the parts are not zero");
        let larger = self
            .minor
            .checked_rem_euclid(parts)
            .expect("the parts are not zero");
        (0..parts).map(move |part| Self {
            minor: each.saturating_add(i64::from(part < larger)),
            ..self
        })
    }

    /// The number alone, with its currency's decimals: `12.50`.
    pub fn number(self) -> String {
        let one = i128::from(self.currency.minor_in_one());
        decimal::nearest(i128::from(self.minor), one, self.currency.places())
    }

    /// Reads `12.50 USD`, `USD 12.50`, `12,5 EUR`; the code is always typed.
    ///
    /// # Errors
    /// More decimals than the currency has, an unlisted code, or a number with two readings.
    pub fn read(text: &str) -> Result<Self, ReadError> {
        read::read_money(text)
    }

    fn with(self, other: Self, sum: fn(i64, i64) -> Option<i64>) -> Result<Self, MoneyError> {
        if self.currency != other.currency {
            return Err(MoneyError::Mixed {
                first: self.currency,
                second: other.currency,
            });
        }
        let minor = sum(self.minor, other.minor).ok_or(MoneyError::OutOfRange)?;
        Ok(Self { minor, ..self })
    }
}

/// The exact amount, which reads back: `12.50 USD`.
impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.number(), self.currency)
    }
}

/// Why two amounts were not added.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum MoneyError {
    /// Two currencies.
    #[error("{first} and {second} are added only after one is exchanged into the other")]
    Mixed {
        /// That of the left amount.
        first: Currency,
        /// That of the right amount.
        second: Currency,
    },
    /// Too large to hold.
    #[error("the amount is larger than can be held; split it into smaller amounts")]
    OutOfRange,
}
