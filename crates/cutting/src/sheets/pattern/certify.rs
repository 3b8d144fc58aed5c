//! From prices to a bound that holds, in integers.
//!
//! With a price for every part, and for every kind of sheet the most that a layout of it can be
//! worth, every plan costs at least  θ · Σ demand · price − Σ count · max(0, θ · most − cost),
//! for any θ ≥ 0 for which θ · most ≤ cost on sheets without a limit (the sum is over limited
//! ones). So prices from a linear program need not be right, only these sums (Farley, "A note on
//! bounding a class of linear programming problems, including cutting stock problems", 1990).

use super::super::bound::{Totals, gcd};
use super::super::{Reduced, Stock};

/// Whole prices: `num / den` price units are one unit of cost.
#[derive(Clone, Debug)]
pub(super) struct Prices {
    /// Per part.
    pub(super) each: Vec<u64>,
    pub(super) num: u128,
    pub(super) den: u128,
}

/// Demands at these prices, and per stock the most that a layout is worth: what every plan costs
/// at least, rounded up. 0 when the numbers grow beyond reckoning.
pub(super) fn least_cost(reduced: &Reduced, prices: &Prices, most: &[u64]) -> u64 {
    reckoned(reduced, prices, most).unwrap_or(0)
}

/// A part of the whole, as a numerator and a denominator.
type Ratio = (u128, u128);

fn reckoned(reduced: &Reduced, prices: &Prices, most: &[u64]) -> Option<u64> {
    let sum = |acc: u128, (part, &price): (&super::super::Part, &u64)| {
        acc.checked_add(u128::from(part.count).checked_mul(u128::from(price))?)
    };
    let wanted = reduced.parts.iter().zip(&prices.each).try_fold(0, sum)?;
    let endless = usable_count(reduced);
    let ratio = |(stock, &most): (&Stock, &u64)| {
        // θ = num · cost ÷ (den · most), never above 1.
        let top = prices.num.checked_mul(u128::from(stock.cost))?;
        let bottom = prices.den.checked_mul(u128::from(most))?;
        Some(if top >= bottom {
            (1, 1)
        } else {
            lowest(top, bottom)
        })
    };
    let pairs = || reduced.stock.iter().zip(most);
    let ratios = pairs().map(ratio).collect::<Option<Vec<Ratio>>>()?;
    let unlimited = |stock: &Stock| stock.count >= endless && stock.window_of.is_none();
    // The largest θ allowed, by cross multiplication.
    let mut largest = (1, 1);
    for ((stock, _), &ratio) in pairs().zip(&ratios) {
        if unlimited(stock) && less(ratio, largest)? {
            largest = ratio;
        }
    }
    let mut best = 0;
    for &theta in ratios.iter().chain([&largest]) {
        if !less(largest, theta)? {
            let bound = at(reduced, prices, most, wanted, theta, endless);
            best = best.max(bound.unwrap_or(0));
        }
    }
    Some(best)
}

/// A count of sheets that no plan needs more of: one for every part.
fn usable_count(reduced: &Reduced) -> u64 {
    let counts = reduced.parts.iter().map(|part| part.count);
    counts.fold(0, u64::saturating_add)
}

/// Whether one ratio is below another; `None` when they are too large to compare.
fn less(a: Ratio, b: Ratio) -> Option<bool> {
    Some(a.0.checked_mul(b.1)? < b.0.checked_mul(a.1)?)
}

fn lowest(top: u128, bottom: u128) -> Ratio {
    let by = gcd(top, bottom).max(1);
    (top / by, bottom / by)
}

fn at(
    reduced: &Reduced,
    prices: &Prices,
    most: &[u64],
    wanted: u128,
    (top, bottom): Ratio,
    endless: u64,
) -> Option<u64> {
    // All in units of 1 ÷ (bottom · num).
    let scaled = top.checked_mul(prices.den)?;
    let unit = bottom.checked_mul(prices.num)?;
    let mut sum = wanted.checked_mul(scaled)?;
    for (stock, &most) in reduced.stock.iter().zip(most) {
        let worth = u128::from(most).checked_mul(scaled)?;
        let cost = u128::from(stock.cost).checked_mul(unit)?;
        if worth > cost {
            // What is worth more than it costs counts as often as there are such sheets.
            let count = u128::from(stock.count.min(endless));
            sum = sum.saturating_sub((worth - cost).checked_mul(count)?);
        }
    }
    u64::try_from(sum.div_ceil(unit)).ok()
}

/// What sheets can add up to, as far as plans of a usual waste go.
pub(super) fn totals(reduced: &Reduced) -> Totals {
    let area = |width: u32, height: u32| u128::from(width) * u128::from(height);
    let wanted = reduced.parts.iter().fold(0_u128, |sum, part| {
        let one = area(part.width, part.height);
        sum.saturating_add(one.saturating_mul(u128::from(part.count)))
    });
    let costs: Vec<(u64, u64)> = reduced
        .stock
        .iter()
        .map(|stock| (stock.cost, stock.count))
        .collect();
    // Twice the area at the dearest sheet's price, and a sheet more.
    let dear = reduced.stock.iter().map(|stock| {
        let cost = u128::from(stock.cost);
        let sheets = wanted.saturating_mul(2) / area(stock.width, stock.height).max(1);
        sheets.saturating_add(1).saturating_mul(cost)
    });
    let limit = u64::try_from(dear.max().unwrap_or(0)).unwrap_or(u64::MAX);
    Totals::new(&costs, limit)
}
