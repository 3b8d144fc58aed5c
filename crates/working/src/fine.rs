//! Prices finer than a currency's minor unit.

use std::fmt;

use measure::Currency;

/// An amount of money to the millionth of its currency: what a screw costs, or a square foot of board.
///
/// Units:  millionths of the currency's own unit.
///
/// ```
/// use measure::Currency;
/// use working::FinePrice;
/// let dollars = Currency::from_code("USD").expect("USD is listed");
/// assert_eq!(FinePrice::new(3_400_000, dollars).to_string(), "3.40 USD");
/// assert_eq!(FinePrice::new(34_500, dollars).to_string(), "0.0345 USD");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FinePrice {
    /// Millionths of one.
    pub millionths: i64,
    /// Which currency.
    pub currency: Currency,
}

impl FinePrice {
    /// How many of its parts make one.
    pub const ONE: i64 = 1_000_000;

    /// So many millionths of this currency.
    pub const fn new(millionths: i64, currency: Currency) -> Self {
        Self {
            millionths,
            currency,
        }
    }
}

impl fmt::Display for FinePrice {
    /// With the currency's decimals, and more only where they are needed.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.millionths < 0 { "-" } else { "" };
        let size = self.millionths.unsigned_abs();
        let one = Self::ONE.unsigned_abs();
        let part = format!("{:06}", size % one);
        let needed = part.trim_end_matches('0').len();
        let places = usize::try_from(self.currency.places()).unwrap_or(needed);
        let part = &part[..needed.max(places.min(part.len()))];
        let point = if part.is_empty() { "" } else { "." };
        let whole = size / one;
        f.pad(&format!("{sign}{whole}{point}{part} {}", self.currency))
    }
}
