//! Proven bounds in integers.
//!
//! Give every item a worth, whatever it be, and let V be the most worth that one stick of a kind
//! can hold, from the exact knapsack. Then any plan that takes n sticks of each kind has
//! Σ V · n ≥ Σ worth · demand, so the cheapest n that satisfies this one row bounds every plan.
//! With the worths from a linear program this is its bound, rounded up to a total that sticks
//! can really cost; that the worths were rounded and the program solved in doubles cannot hurt.

use super::core::{Core, ENDLESS, common};
use crate::pace::Pace;

/// Cells of the table of total costs.
const MOST_CELLS: u64 = 3_000_000;

/// Σ worth · demand.
pub(super) fn need(worth: &[u64], demands: &[u64]) -> u128 {
    let each = |(&worth, &demand): (&u64, &u64)| u128::from(worth) * u128::from(demand);
    worth.iter().zip(demands).map(each).sum()
}

/// Fractions of a cost are counted in this many to one.
pub(super) const FINE: u128 = 4096;

/// The least cost of sticks, in fractions of sticks, that together hold the need; in parts of
/// 1/[`FINE`], rounded up. `None`: all sticks together cannot hold it.
pub(super) fn in_fractions(core: &Core, counts: &[u64], need: u128, most: &[u64]) -> Option<u128> {
    let mut left = need;
    let mut cost: u128 = 0;
    for kind in by_price(core, counts, most) {
        if left == 0 {
            break;
        }
        let (each, price) = (
            u128::from(most[kind]),
            u128::from(core.kinds[kind].cost) * FINE,
        );
        let all = match counts[kind] {
            ENDLESS => u128::MAX,
            count => each.saturating_mul(u128::from(count)),
        };
        if all < left {
            cost = cost.saturating_add(price * u128::from(counts[kind]));
            left -= all;
        } else {
            let part = (left % each * price).div_ceil(each);
            cost = cost
                .saturating_add((left / each).saturating_mul(price))
                .saturating_add(part);
            left = 0;
        }
    }
    (left == 0).then_some(cost)
}

/// What each stick of each kind must hold at least, in worth, in a plan of whole sticks that holds
/// the need exactly for at most `budget`: the price of the one row, and what a stick holds less
/// than it should, add up to the whole cost. `None`: there is no such plan.
pub(super) fn least_held(
    core: &Core,
    counts: &[u64],
    need: u128,
    most: &[u64],
    budget: u64,
) -> Option<Vec<u64>> {
    let nothing = vec![0; core.kinds.len()];
    if need == 0 {
        return Some(nothing);
    }
    // All sticks together may hold only so much less than they could.
    let spare = spare(counts, need, most)?;
    let lowest = |kind: usize| u128::from(most[kind]).saturating_sub(spare);
    let lowest = |kind: usize| u64::try_from(lowest(kind)).unwrap_or(u64::MAX);
    let marginal = marginal(core, counts, need, most)?;
    let Some(lack) = lack(core, counts, need, most, (marginal, budget)) else {
        // Numbers beyond reckoning say nothing.
        return Some(nothing);
    };
    if lack.slack < 0 {
        return None;
    }
    let least = |kind: usize| lack.least(core, kind);
    Some(
        (0..core.kinds.len())
            .map(|kind| least(kind).max(lowest(kind)))
            .collect(),
    )
}

/// The dearest kind that is needed when the cheapest worth is taken first.
fn marginal(core: &Core, counts: &[u64], need: u128, most: &[u64]) -> Option<usize> {
    let mut left = need;
    let mut end = None;
    for kind in by_price(core, counts, most) {
        end = Some(kind);
        let all = match counts[kind] {
            ENDLESS => break,
            count => u128::from(most[kind]) * u128::from(count),
        };
        if all >= left {
            break;
        }
        left -= all;
    }
    end
}

/// What a plan may lose; everything times what a stick of the marginal kind holds.
struct Lack {
    held: i128,
    price: i128,
    /// What each limited kind saves against the marginal one.
    saves: Vec<i128>,
    slack: i128,
}

/// `None` where a number is too large to be reckoned.
fn lack(
    core: &Core,
    counts: &[u64],
    need: u128,
    most: &[u64],
    (marginal, budget): (usize, u64),
) -> Option<Lack> {
    let wide = |number: u64| i128::from(number);
    let (held, price) = (wide(most[marginal]), wide(core.kinds[marginal].cost));
    let needed = i128::try_from(need).ok()?.checked_mul(price)?;
    let mut slack = wide(budget).checked_mul(held)?.checked_sub(needed)?;
    let mut saves = vec![0; counts.len()];
    for (kind, &count) in counts.iter().enumerate() {
        if count != ENDLESS {
            let own = wide(core.kinds[kind].cost).checked_mul(held)?;
            saves[kind] = wide(most[kind])
                .checked_mul(price)?
                .checked_sub(own)?
                .max(0);
            slack = slack.checked_add(saves[kind].checked_mul(wide(count))?)?;
        }
    }
    Some(Lack {
        held,
        price,
        saves,
        slack,
    })
}

impl Lack {
    /// The least that a stick of this kind holds.
    fn least(&self, core: &Core, kind: usize) -> u64 {
        let cost = i128::from(core.kinds[kind].cost);
        let all = cost.saturating_mul(self.held);
        let lack = all.saturating_add(self.saves[kind]) - self.slack;
        if lack <= 0 || self.price == 0 {
            return 0;
        }
        u64::try_from((lack - 1) / self.price + 1).unwrap_or(u64::MAX)
    }
}

/// What all sticks held could hold beyond the need; without end where a kind is.
fn spare(counts: &[u64], need: u128, most: &[u64]) -> Option<u128> {
    let mut held: u128 = 0;
    for (&count, &most) in counts.iter().zip(most) {
        if most > 0 && count == ENDLESS {
            return Some(u128::MAX);
        }
        held = held.saturating_add(u128::from(count) * u128::from(most));
    }
    held.checked_sub(need)
}

/// A cost in fine parts, rounded up to a whole one.
pub(super) fn whole(fine: u128) -> u64 {
    u64::try_from(fine.div_ceil(FINE)).unwrap_or(u64::MAX)
}

/// Kinds that hold anything, cheapest worth first.
fn by_price(core: &Core, counts: &[u64], most: &[u64]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..core.kinds.len())
        .filter(|&kind| most[kind] > 0 && counts[kind] > 0)
        .collect();
    order.sort_by(|&a, &b| {
        let cross = |x: usize, y: usize| u128::from(core.kinds[x].cost) * u128::from(most[y]);
        cross(a, b).cmp(&cross(b, a)).then(a.cmp(&b))
    });
    order
}

/// The least cost of whole sticks that together hold the need; `below` is the cost of a plan for
/// it, or without end. Falls back on fractions where the table would be too large.
///
/// More than `below` cannot be if plan and worths are right; it is answered all the same, for the
/// caller to see that something is wrong.
pub(super) fn in_whole(
    core: &Core,
    counts: &[u64],
    need: u128,
    most: &[u64],
    below: u64,
    pace: &mut Pace<'_>,
) -> u64 {
    let fraction = in_fractions(core, counts, need, most).map_or(u64::MAX, whole);
    if fraction >= below || below == u64::MAX {
        return fraction;
    }
    let grain = grain(core);
    let rounded = fraction.div_ceil(grain).saturating_mul(grain);
    let Some(held) = held_by_cost(core, counts, most, below, pace) else {
        return rounded;
    };
    let enough = held.iter().position(|&held| holds(held, need));
    let least = enough.and_then(|least| u64::try_from(least).ok());
    least.map_or(u64::MAX, |least| (least * grain).max(rounded))
}

/// Total costs that a better plan might have.
pub(super) struct Costs {
    pub(super) list: Vec<u64>,
    /// Whether no other cost is possible; else they are a selection, the least one always in it.
    every: bool,
    grain: u64,
}

impl Costs {
    /// The least cost possible once no plan costs `cost` or less; `None`: none of these.
    pub(super) fn after(&self, cost: u64) -> Option<u64> {
        if self.every {
            self.list.iter().copied().find(|&other| other > cost)
        } else {
            Some(cost.saturating_add(self.grain))
        }
    }
}

/// Total costs from one up to, without, another at which whole sticks can hold the need; a
/// selection where they are too many.
pub(super) fn costs_between(
    core: &Core,
    counts: &[u64],
    need: u128,
    most: &[u64],
    (from, below): (u64, u64),
    pace: &mut Pace<'_>,
) -> Costs {
    let grain = grain(core);
    if let Some(held) = held_by_cost(core, counts, most, below, pace) {
        let costs = (0..).map(|number: u64| number * grain).zip(held);
        let good = |&(cost, held): &(u64, u64)| (from..below).contains(&cost) && holds(held, need);
        return Costs {
            list: costs.filter(good).map(|(cost, _)| cost).collect(),
            every: true,
            grain,
        };
    }
    let (first, last) = (from.div_ceil(grain), below.div_ceil(grain));
    let step = (last.saturating_sub(first) / 64).max(1);
    let numbers = (0..=128).map(|number: u64| first.saturating_add(number.saturating_mul(step)));
    Costs {
        list: numbers
            .take_while(|&number| number < last)
            .map(|number| number * grain)
            .collect(),
        every: false,
        grain,
    }
}

/// Every total cost is a multiple of this.
pub(super) fn grain(core: &Core) -> u64 {
    let costs = core.kinds.iter().map(|kind| kind.cost);
    costs.fold(0, common).max(1)
}

/// The most that whole sticks of exactly each total cost up to a limit can hold, in grains, and
/// one more; 0 where no sticks cost that. `None` when the table would be too large.
fn held_by_cost(
    core: &Core,
    counts: &[u64],
    most: &[u64],
    limit: u64,
    pace: &mut Pace<'_>,
) -> Option<Vec<u64>> {
    let grain = grain(core);
    // Kinds that hold nothing of worth may still be needed: their cost counts.
    let mut kinds: Vec<usize> = (0..core.kinds.len())
        .filter(|&kind| counts[kind] > 0)
        .collect();
    // What costs nothing comes first: it is in the table's first cell only.
    kinds.sort_by_key(|&kind| (core.kinds[kind].cost, kind));
    let cells = limit / grain;
    let work = cells.saturating_mul(u64::try_from(kinds.len()).ok()?);
    if cells >= MOST_CELLS || !pace.spend(work / 2) {
        return None;
    }
    let mut held = vec![0_u64; usize::try_from(cells).ok()? + 1];
    held[0] = 1;
    for kind in kinds {
        let stick = &core.kinds[kind];
        add_kind(&mut held, stick.cost / grain, most[kind], counts[kind]);
    }
    Some(held)
}

/// Whether an entry of the table reaches the need; one at the end of what can be counted may.
fn holds(entry: u64, need: u128) -> bool {
    entry == u64::MAX || u128::from(entry) > need
}

/// Lets so many sticks of one price be used besides what is in the table.
fn add_kind(held: &mut [u64], price: u64, each: u64, count: u64) {
    let cells = held.len();
    let Ok(step) = usize::try_from(price) else {
        return;
    };
    if step == 0 {
        if let Some(free) = held.first_mut() {
            *free = free.saturating_add(each.saturating_mul(count));
        }
        return;
    }
    let useful = u64::try_from(cells / step).unwrap_or(u64::MAX);
    if count >= useful {
        for at in step..cells {
            if held[at - step] > 0 {
                held[at] = held[at].max(held[at - step].saturating_add(each));
            }
        }
        return;
    }
    let (mut left, mut batch) = (count, 1);
    while left > 0 {
        let here = batch.min(left);
        let times = usize::try_from(here).unwrap_or(usize::MAX);
        let step = step.saturating_mul(times);
        for at in (step..cells).rev() {
            if held[at - step] > 0 {
                held[at] = held[at].max(held[at - step].saturating_add(each.saturating_mul(here)));
            }
        }
        left -= here;
        batch *= 2;
    }
}

#[cfg(test)]
mod tests;
