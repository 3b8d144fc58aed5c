//! Lower bounds at once: what the parts cost at prices that no sheet can exceed.
//!
//! For a size of sheet a pair of dual feasible functions (see [`scale`]) says which share of
//! the sheet a part takes at least; the part's price is the least of share times cost over all
//! sheets that can take it. So the parts of any one sheet are worth no more than the sheet, and
//! all parts together no more than any plan. Sheets of which there are only so many may well hold
//! more than they cost; that surplus is taken off again, and so windows count as well.

mod scale;
mod totals;

pub(crate) use totals::{Totals, gcd};

use scale::{Scale, scales};

use super::{Reduced, Stock};
use crate::{Goal, Pace};

/// A cost that no plan can go below.
pub(crate) fn quick(reduced: &Reduced, pace: &mut Pace) -> u64 {
    if reduced.goal == Goal::Value || reduced.parts.is_empty() || reduced.stock.is_empty() {
        return 0;
    }
    let bound = prices(reduced, pace).bound;
    let most = reduced
        .stock
        .iter()
        .map(|stock| stock.cost)
        .max()
        .unwrap_or(0);
    let costs: Vec<(u64, u64)> = reduced
        .stock
        .iter()
        .map(|stock| (stock.cost, stock.count))
        .collect();
    Totals::new(&costs, bound.saturating_add(most)).from(bound)
}

/// Prices at which no sheet is worth more than it costs, but for limited ones.
#[derive(Clone, Debug, Default)]
pub(crate) struct Prices {
    /// One unit of cost in prices.
    pub(crate) unit: u64,
    /// Per part.
    pub(crate) parts: Vec<u64>,
    /// Per stock: what a sheet may be worth beyond its cost. 0 for stock without end.
    pub(crate) surplus: Vec<u64>,
    /// The cost that no plan can go below, in units of cost.
    pub(crate) bound: u64,
}

/// The better of two price lists.
pub(crate) fn prices(reduced: &Reduced, pace: &mut Pace) -> Prices {
    // Remnants and windows hold more than they cost: the price list is that of the endless stock.
    let copies = reduced
        .parts
        .iter()
        .fold(0_u64, |sum, part| sum.saturating_add(part.count));
    let endless = |stock: &Stock| stock.count >= copies;
    let prices = priced(reduced, &endless, pace);
    if reduced.stock.iter().all(endless) {
        return prices;
    }
    // Or of all that has a cost.
    let others = priced(reduced, &|stock: &Stock| stock.cost > 0, pace);
    if others.bound > prices.bound {
        others
    } else {
        prices
    }
}

/// Prices that fit all the stock named.
fn priced(reduced: &Reduced, named: &dyn Fn(&Stock) -> bool, pace: &mut Pace) -> Prices {
    let mut pricing = Pricing::new(reduced, named);
    let passes = if pricing.open.len() == 1 { 1 } else { 2 };
    for _ in 0..passes {
        for sheet in 0..pricing.open.len() {
            pricing.improve(sheet, pace);
        }
    }
    let mut parts = pricing.prices_without(usize::MAX);
    let bound = u64::try_from(pricing.best.div_ceil(u128::from(pricing.unit)));
    let mut surplus = vec![0; reduced.stock.len()];
    for (stock, _, beyond) in pricing.surplus(&parts) {
        surplus[stock] = u64::try_from(beyond).unwrap_or(u64::MAX);
    }
    for price in &mut parts {
        if *price == u64::MAX {
            *price = 0;
        }
    }
    Prices {
        unit: pricing.unit,
        parts,
        surplus,
        bound: bound.unwrap_or(u64::MAX >> 8),
    }
}

/// Steps for all pairs of functions of all sheets.
const MOST_WORK: usize = 1 << 22;
/// Functions along one side of a sheet.
const MOST_SCALES: usize = 180;

struct Pricing<'a> {
    reduced: &'a Reduced,
    counts: Vec<u64>,
    sides: Vec<(u32, u32)>,
    /// One unit of cost in prices.
    unit: u64,
    /// Stock that the prices fit, and per such stock the price of every part there.
    open: Vec<usize>,
    shares: Vec<Vec<u64>>,
    /// All other stock, and how many of it there are.
    limited: Vec<(usize, u64)>,
    /// The best bound, in prices.
    best: u128,
}

impl<'a> Pricing<'a> {
    fn new(reduced: &'a Reduced, named: &dyn Fn(&Stock) -> bool) -> Self {
        let counts: Vec<u64> = reduced.parts.iter().map(|part| part.count).collect();
        let most = reduced.stock.iter().map(|stock| stock.cost).max();
        let all = 0..reduced.stock.len();
        let (open, limited): (Vec<usize>, Vec<usize>) =
            all.partition(|&stock| named(&reduced.stock[stock]));
        let mut pricing = Self {
            reduced,
            counts,
            sides: reduced
                .parts
                .iter()
                .map(|part| (part.width, part.height))
                .collect(),
            unit: ((1_u64 << 44) / most.unwrap_or(1).max(1)).max(1),
            open,
            shares: Vec::new(),
            limited: limited
                .into_iter()
                .map(|stock| (stock, reduced.stock[stock].count))
                .collect(),
            best: 0,
        };
        for at in 0..pricing.open.len() {
            let stock = &reduced.stock[pricing.open[at]];
            // Plain areas to begin with.
            let across = scales(stock.width, &pricing.sides, &pricing.counts, 0);
            let up = scales(stock.height, &pricing.sides, &pricing.counts, 0);
            let shares = pricing.prices_in(stock, &across[0], &up[0]);
            pricing.shares.push(shares);
        }
        pricing.best = pricing.bound(&pricing.prices_without(usize::MAX));
        pricing
    }

    /// Tries all pairs of functions for one open sheet.
    fn improve(&mut self, at: usize, pace: &mut Pace) {
        let stock = &self.reduced.stock[self.open[at]];
        let work = self.sides.len() * (1 + self.limited.len());
        let most = (MOST_WORK / work / self.open.len())
            .isqrt()
            .min(MOST_SCALES);
        let across = scales(stock.width, &self.sides, &self.counts, most);
        let up = scales(stock.height, &self.sides, &self.counts, most);
        let others = self.prices_without(at);
        for across in &across {
            for up in &up {
                if !pace.spend(work as u64 / 8 + 1) {
                    return;
                }
                let shares = self.prices_in(stock, across, up);
                let least = |(&one, &other): (&u64, &u64)| one.min(other);
                let prices: Vec<u64> = shares.iter().zip(&others).map(least).collect();
                let bound = self.bound(&prices);
                if bound > self.best {
                    self.best = bound;
                    self.shares[at] = shares;
                }
            }
        }
    }

    /// Least prices over the open sheets but one.
    fn prices_without(&self, without: usize) -> Vec<u64> {
        let mut least = vec![u64::MAX; self.sides.len()];
        for (at, shares) in self.shares.iter().enumerate() {
            if at != without {
                for (least, &share) in least.iter_mut().zip(shares) {
                    *least = share.min(*least);
                }
            }
        }
        least
    }

    /// What each part costs as a share of this sheet; `u64::MAX` where it does not fit.
    fn prices_in(&self, stock: &Stock, across: &Scale, up: &Scale) -> Vec<u64> {
        let whole = u128::from(across.whole) * u128::from(up.whole);
        let cost = u128::from(stock.cost) * u128::from(self.unit);
        let each = |(number, part): (usize, &super::Part)| {
            let (x, y) = (across.sides[number], up.sides[number]);
            let mut least = u128::MAX;
            if part.width <= stock.width && part.height <= stock.height {
                least = u128::from(x.0) * u128::from(y.1);
            }
            if part.turn && part.height <= stock.width && part.width <= stock.height {
                least = least.min(u128::from(x.1) * u128::from(y.0));
            }
            if least == u128::MAX || whole == 0 {
                return if least == u128::MAX { u64::MAX } else { 0 };
            }
            u64::try_from(least * cost / whole).unwrap_or(u64::MAX - 1)
        };
        self.reduced.parts.iter().enumerate().map(each).collect()
    }

    /// What all parts cost at these prices, less what limited sheets can hold beyond their cost.
    fn bound(&self, prices: &[u64]) -> u128 {
        let worth = |(&price, &count): (&u64, &u64)| match price {
            // Only other sheets take it; it counts nothing.
            u64::MAX => 0,
            _ => u128::from(price) * u128::from(count),
        };
        let sum: u128 = prices.iter().zip(&self.counts).map(worth).sum();
        if self.limited.is_empty() || sum <= self.best {
            return sum;
        }
        let surplus = self.surplus(prices).into_iter();
        let surplus = surplus.map(|(_, count, beyond)| u128::from(count) * beyond);
        sum.saturating_sub(surplus.sum())
    }

    /// What each limited sheet can be worth beyond its cost: stock, how many, surplus.
    fn surplus(&self, prices: &[u64]) -> Vec<(usize, u64, u128)> {
        let mut order: Vec<usize> = (0..prices.len())
            .filter(|&part| prices[part] < u64::MAX)
            .collect();
        let area = |part: usize| u128::from(self.sides[part].0) * u128::from(self.sides[part].1);
        order.sort_by(|&a, &b| {
            let left = u128::from(prices[b]) * area(a);
            left.cmp(&(u128::from(prices[a]) * area(b)))
        });
        let each = |&(number, count): &(usize, u64)| {
            let stock = &self.reduced.stock[number];
            let cost = u128::from(stock.cost) * u128::from(self.unit);
            let held = self.most_held(stock, &order, prices);
            (number, count, held.saturating_sub(cost))
        };
        self.limited.iter().map(each).collect()
    }

    /// No parts out of this sheet are worth more: filled by area, the last part in fraction.
    fn most_held(&self, stock: &Stock, order: &[usize], prices: &[u64]) -> u128 {
        let mut left = u64::from(stock.width) * u64::from(stock.height);
        let mut sum = 0;
        for &part in order {
            if !super::reduce::takes(stock, &self.reduced.parts[part]) {
                continue;
            }
            let area = u64::from(self.sides[part].0) * u64::from(self.sides[part].1);
            let whole = self.counts[part].min(left / area);
            sum += u128::from(whole) * u128::from(prices[part]);
            left -= whole * area;
            if whole < self.counts[part] {
                let rest = u128::from(prices[part]) * u128::from(left);
                return sum + rest.div_ceil(u128::from(area));
            }
        }
        sum
    }
}

#[cfg(test)]
mod tests;
