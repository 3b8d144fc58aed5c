//! What is to be bought for a plan: how many, and for how much.

use measure::{Currency, Money};

use super::counted;

/// Sticks and sheets to buy, and what they cost.
///
/// Units:  minor units of each currency, as the stock's own costs are written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Bought {
    sticks: u64,
    sheets: u64,
    costs: Vec<(Currency, u128)>,
    /// How many have no cost.
    unpriced: u64,
}

impl Bought {
    /// Adds so many sticks, each at its cost where that is known.
    pub fn sticks(&mut self, count: u64, each: Option<Money>) {
        self.sticks = self.sticks.saturating_add(count);
        self.cost(count, each);
    }

    /// Adds so many sheets.
    pub fn sheets(&mut self, count: u64, each: Option<Money>) {
        self.sheets = self.sheets.saturating_add(count);
        self.cost(count, each);
    }

    /// Adds all of another.
    pub fn and(&mut self, other: &Self) {
        self.sticks = self.sticks.saturating_add(other.sticks);
        self.sheets = self.sheets.saturating_add(other.sheets);
        self.unpriced = self.unpriced.saturating_add(other.unpriced);
        for (currency, minor) in &other.costs {
            self.pay(*currency, *minor);
        }
    }

    /// `2 sticks and 1 sheet, 64.50 USD`; nothing where nothing is bought.
    ///
    /// Shape:  what has no cost is said beside the sum, where anything has one.
    pub fn words(&self) -> Option<String> {
        let counts = [counted(self.sticks, "stick"), counted(self.sheets, "sheet")];
        let counts: Vec<String> = counts.into_iter().flatten().collect();
        if counts.is_empty() {
            return None;
        }
        let mut words = counts.join(" and ");
        let costs = self.costs.iter().map(|(currency, minor)| {
            i64::try_from(*minor).map_or_else(
                |_| format!("more {currency} than can be counted"),
                |minor| Money::new(minor, *currency).to_string(),
            )
        });
        let costs: Vec<String> = costs.collect();
        if !costs.is_empty() {
            words = format!("{words}, {}", costs.join(" and "));
            if self.unpriced > 0 {
                words = format!("{words}; {} of them without a cost", self.unpriced);
            }
        }
        Some(words)
    }

    fn cost(&mut self, count: u64, each: Option<Money>) {
        let minor = each.and_then(|each| Some((u128::try_from(each.minor).ok()?, each.currency)));
        match minor {
            Some((minor, currency)) => {
                self.pay(currency, minor.saturating_mul(u128::from(count)));
            }
            None => self.unpriced = self.unpriced.saturating_add(count),
        }
    }

    fn pay(&mut self, currency: Currency, minor: u128) {
        match self.costs.iter_mut().find(|(known, _)| *known == currency) {
            Some((_, sum)) => *sum = sum.saturating_add(minor),
            None => self.costs.push((currency, minor)),
        }
    }
}

#[cfg(test)]
mod tests {
    use measure::Money;

    use super::Bought;

    fn money(text: &str) -> Money {
        Money::read(text).expect("money")
    }

    /// By hand: 3 × 21.50 + 2 × 9.75 = 64.50 + 19.50 = 84.00.
    #[test]
    fn what_is_bought_is_summed_with_what_has_no_cost() {
        let mut bought = Bought::default();
        assert_eq!(bought.words(), None);
        bought.sticks(1, None);
        assert_eq!(bought.words().as_deref(), Some("1 stick"));
        let mut priced = Bought::default();
        priced.sticks(3, Some(money("21.50 USD")));
        priced.sheets(2, Some(money("9.75 USD")));
        assert_eq!(
            priced.words().as_deref(),
            Some("3 sticks and 2 sheets, 84.00 USD")
        );
        priced.and(&bought);
        assert_eq!(
            priced.words().as_deref(),
            Some("4 sticks and 2 sheets, 84.00 USD; 1 of them without a cost")
        );
        priced.sheets(1, Some(money("5.00 EUR")));
        assert_eq!(
            priced.words().as_deref(),
            Some("4 sticks and 3 sheets, 84.00 USD and 5.00 EUR; 1 of them without a cost")
        );
    }
}
