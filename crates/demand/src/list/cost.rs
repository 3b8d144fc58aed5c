//! What one of each stock of a cut list counts in a plan.

use measure::Currency;
use trade::{Key, Settings};

use super::ListStock;
use crate::source::{Basis, Origin};
use crate::stock::Extent;
use crate::tick::Tick;

/// All of a hundred.
const WHOLE: u128 = 100;

/// What one of each counts.
///
/// Shape:  what has a cost counts it; where only some has one, the rest counts the least cost by
///         size of those; where none has, its size in ticks. A remnant without a cost counts
///         `remnant.price_share` of that.
/// Units:  minor units or ticks, rounded up.
/// Errors: costs in two currencies: both.
pub(super) fn costs(
    stock: &[&ListStock],
    tick: Tick,
    settings: &Settings,
) -> Result<(Basis, Vec<u64>), (Currency, Currency)> {
    let mut currencies = stock
        .iter()
        .filter_map(|one| one.cost.map(|cost| cost.currency));
    let basis = match currencies.next() {
        None => Basis::Measure,
        Some(first) => match currencies.find(|other| *other != first) {
            Some(second) => return Err((first, second)),
            None => Basis::Money(first),
        },
    };
    let rates = stock.iter().filter_map(|one| {
        let cost = u128::try_from(one.cost?.minor).ok()?;
        Some((cost, size(one.extent, tick).max(1)))
    });
    let rate = rates.min_by(|(a, of_a), (b, of_b)| (a * of_b).cmp(&(b * of_a)));
    let share = u128::try_from(settings.count(Key::RemnantShare)).unwrap_or(WHOLE);
    let counted = stock.iter().map(|one| {
        let own = one.cost.and_then(|cost| u128::try_from(cost.minor).ok());
        let share = if one.origin == Origin::Remnant {
            share
        } else {
            WHOLE
        };
        let (top, bottom) = match (own, rate) {
            (Some(cost), _) => (cost, 1),
            (None, Some((cost, of))) => (cost * size(one.extent, tick) * share, of * WHOLE),
            (None, None) => (size(one.extent, tick) * share, WHOLE),
        };
        u64::try_from(top.div_ceil(bottom)).unwrap_or(u64::MAX)
    });
    Ok((basis, counted.collect()))
}

/// Its length in ticks, or its area in square ticks.
fn size(extent: Extent, tick: Tick) -> u128 {
    match extent {
        Extent::Stick(length) => u128::from(tick.down(length)),
        Extent::Sheet(size) => {
            u128::from(tick.down(size.width)) * u128::from(tick.down(size.height))
        }
    }
}
