//! From prices to a bound that holds, in integers.
//!
//! With a price for every part, and for every kind of sheet the most that a layout of it can be
//! worth, every plan costs at least  θ · Σ demand · price − Σ count · max(0, θ · most − cost),
//! for any θ ≥ 0 for which θ · most ≤ cost on sheets without a limit (the sum is over limited
//! ones). So prices from a linear program need not be right, only these sums (Farley, "A note on
//! bounding a class of linear programming problems, including cutting stock problems", 1990).

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
    let sum = |acc: Option<u128>, (part, &price): (&super::super::Part, &u64)| {
        acc?.checked_add(u128::from(part.count).checked_mul(u128::from(price))?)
    };
    let Some(wanted) = reduced.parts.iter().zip(&prices.each).fold(Some(0), sum) else {
        return 0;
    };
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
    let Some(ratios) = pairs().map(ratio).collect::<Option<Vec<(u128, u128)>>>() else {
        return 0;
    };
    let unlimited = |stock: &Stock| stock.count >= endless && stock.window_of.is_none();
    // The largest θ allowed, by cross multiplication.
    let mut largest = (1, 1);
    for ((stock, _), &ratio) in pairs().zip(&ratios) {
        if unlimited(stock) && less(ratio, largest) {
            largest = ratio;
        }
    }
    let mut best = 0;
    for &theta in ratios.iter().chain([&largest]) {
        if !less(largest, theta) {
            let bound = at(reduced, prices, most, wanted, theta, endless);
            best = best.max(bound.unwrap_or(0));
        }
    }
    best
}

/// A count of sheets that no plan needs more of: one for every part.
fn usable_count(reduced: &Reduced) -> u64 {
    let counts = reduced.parts.iter().map(|part| part.count);
    counts.fold(0, u64::saturating_add)
}

fn less(a: (u128, u128), b: (u128, u128)) -> bool {
    match (a.0.checked_mul(b.1), b.0.checked_mul(a.1)) {
        (Some(left), Some(right)) => left < right,
        // Too large to compare: as if smaller, which is safe for the least of them.
        _ => true,
    }
}

fn lowest(top: u128, bottom: u128) -> (u128, u128) {
    let (mut a, mut b) = (top, bottom);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    (top / a.max(1), bottom / a.max(1))
}

fn at(
    reduced: &Reduced,
    prices: &Prices,
    most: &[u64],
    wanted: u128,
    (top, bottom): (u128, u128),
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

/// Sums of costs above this are not all tried.
const UNITS: u64 = 2 << 20;
/// Most steps to try sums of costs.
const STEPS: u64 = 60 << 20;

/// The least total cost of any choice of sheets that is not below the bound.
pub(super) fn next_reachable(reduced: &Reduced, bound: u64) -> u64 {
    let mut costs: Vec<(u64, u64)> = Vec::new();
    for stock in reduced.stock.iter().filter(|stock| stock.cost > 0) {
        match costs.iter_mut().find(|(cost, _)| *cost == stock.cost) {
            Some((_, count)) => *count = count.saturating_add(stock.count),
            None => costs.push((stock.cost, stock.count)),
        }
    }
    let unit = costs.iter().fold(0, |a, &(cost, _)| gcd(a, cost)).max(1);
    let least = bound.div_ceil(unit);
    let largest = costs
        .iter()
        .map(|&(cost, _)| cost / unit)
        .max()
        .unwrap_or(1);
    let end = least.saturating_add(largest);
    let simple = least.saturating_mul(unit);
    if costs.len() < 2 || end > UNITS || end.saturating_mul(costs.len() as u64) > STEPS {
        return simple;
    }
    let Ok(end) = usize::try_from(end) else {
        return simple;
    };
    let mut reached = vec![false; end + 1];
    reached[0] = true;
    let mut used = vec![0_u64; end + 1];
    for (cost, count) in costs {
        let Ok(step) = usize::try_from(cost / unit) else {
            return simple;
        };
        used.fill(0);
        for sum in step..=end {
            if !reached[sum] && reached[sum - step] && used[sum - step] < count {
                reached[sum] = true;
                used[sum] = used[sum - step] + 1;
            }
        }
    }
    let found = (least..).zip(reached.iter().skip(usize::try_from(least).unwrap_or(end)));
    let mut found = found.filter(|(_, reached)| **reached).map(|(sum, _)| sum);
    found.next().map_or(simple, |sum| sum * unit)
}

/// A total cost below this one, with none between them that any choice of sheets could cost.
pub(super) fn next_below(reduced: &Reduced, cost: u64) -> u64 {
    let unit = reduced.stock.iter().fold(0, |a, stock| gcd(a, stock.cost));
    cost.saturating_sub(unit.max(1))
}

fn gcd(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
