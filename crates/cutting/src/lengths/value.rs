//! The most value out of one stick.
//!
//! Every kind of stick has an answer at once: a fill by worth for its length, and the bound of
//! pieces that could be cut through. The exact knapsack takes the place of both as far as the pace
//! allows; where flaws keep the two apart and the ways to fill the stick are few, all are tried.

use std::cmp::Reverse;

use super::Plan;
use super::core::{Core, Draft, Fill, Fit, Kind};
use super::pricing::{Priced, Pricer, grow};
use super::reduce::{Reduced, Want, reduce};
use super::start::Rest;
use super::{Problem, realise};
use crate::pace::Pace;

/// Ways to fill one stick that are all tried, at most.
const MOST_WAYS: u64 = 60_000;

/// The best single stick: of the most value, then of the least cost.
pub(super) fn best(problem: &Problem, wants: &[Want], kinds: &[Kind], pace: &mut Pace<'_>) -> Plan {
    let take: Vec<u64> = wants.iter().map(|want| want.count).collect();
    let worth_of = |want: &Want| -> u64 {
        want.pieces
            .iter()
            .map(|&piece| problem.pieces[piece].value)
            .sum()
    };
    let reduced = split_by_worth(problem, wants, kinds, &take, &worth_of);
    let of = |origin: &Vec<(usize, u64)>| worth_of(&wants[origin[0].0]);
    let worth: Vec<u64> = reduced.origin.iter().map(of).collect();
    let core = &reduced.core;
    let priced = priced(core, &worth, pace);
    let rank = |&kind: &usize| {
        let cost = Reverse(problem.stock[core.kinds[kind].stock].cost);
        (total(&worth, &priced[kind].parts), cost, Reverse(kind))
    };
    let (mut draft, mut objective) = (Draft::default(), 0);
    if let Some(kind) = (0..priced.len()).max_by_key(rank) {
        let parts = priced[kind].parts.clone();
        objective = total(&worth, &parts);
        if !parts.is_empty() {
            draft.push(core, Fill { kind, parts }, 1);
        }
    }
    let most = priced.iter().map(|priced| priced.most).max().unwrap_or(0);
    // A bound below a value reached is refuted by it: a fault of ours.
    debug_assert!(
        most >= objective,
        "at most {most}, but {objective} is reached"
    );
    Plan {
        layouts: realise::layouts(problem, wants, &reduced, &draft),
        objective,
        bound: if most < objective { u64::MAX } else { most },
        uncut: Vec::new(),
    }
}

fn total(worth: &[u64], parts: &[(usize, u64)]) -> u64 {
    parts.iter().map(|&(item, times)| worth[item] * times).sum()
}

/// The best fill known of each kind, and what none is worth more than.
fn priced(core: &Core, worth: &[u64], pace: &mut Pace<'_>) -> Vec<Priced> {
    let kinds = 0..core.kinds.len();
    let mut priced: Vec<Priced> = kinds.map(|kind| at_once(core, kind, worth)).collect();
    let first = priced.clone();
    let rest = Rest::new(core);
    // What is not answered any more keeps what it had.
    let _ = Pricer::new(core, &rest.demands).price_into(worth, &rest.counts, &mut priced, pace);
    for (kind, first) in first.into_iter().enumerate() {
        let own = &mut priced[kind];
        own.most = own.most.min(first.most);
        if total(worth, &first.parts) > total(worth, &own.parts) {
            own.parts = first.parts;
        }
        if total(worth, &own.parts) < own.most {
            by_every_way(core, kind, worth, own, pace);
        }
    }
    priced
}

/// Longest first would waste worth: the most worth for the length, or for the piece, first.
fn at_once(core: &Core, kind: usize, worth: &[u64]) -> Priced {
    let density = |item: usize| {
        let length = u128::from(core.items[item].length);
        (u128::from(worth[item]) << 32) / length
    };
    let mut order: Vec<usize> = (0..core.items.len()).filter(|&at| worth[at] > 0).collect();
    order.sort_by_key(|&item| (Reverse(density(item)), item));
    let mut best = Vec::new();
    for dearest in [false, true] {
        let mut own = order.clone();
        if dearest {
            own.sort_by_key(|&item| Reverse(worth[item]));
        }
        let mut parts = Vec::new();
        for item in own {
            grow(core, kind, &mut parts, item, core.items[item].demand);
        }
        if total(worth, &parts) > total(worth, &best) {
            best = parts;
        }
    }
    Priced {
        most: cut_through(core, core.kinds[kind].room, worth, order),
        parts: best,
    }
}

/// The most worth in a room if the last piece could be cut through; the densest come first.
fn cut_through(core: &Core, room: u64, worth: &[u64], mut order: Vec<usize>) -> u64 {
    let wide = |a: u64, b: u64| u128::from(a) * u128::from(b);
    order.sort_by(|&a, &b| {
        let cross = |one: usize, other: usize| wide(worth[one], core.items[other].length);
        cross(b, a).cmp(&cross(a, b))
    });
    let (mut left, mut most) = (room, 0_u128);
    for item in order {
        let length = core.items[item].length;
        let all = wide(length, core.items[item].demand);
        if all > u128::from(left) {
            most += wide(worth[item], left) / u128::from(length);
            break;
        }
        most += wide(worth[item], core.items[item].demand);
        left -= u64::try_from(all).unwrap_or(left);
    }
    u64::try_from(most).unwrap_or(u64::MAX)
}

/// Tries every fill that is worth more than the one known, where they are few.
fn by_every_way(core: &Core, kind: usize, worth: &[u64], own: &mut Priced, pace: &mut Pace<'_>) {
    let room = core.kinds[kind].room;
    let limits: Vec<u64> = (core.items.iter().zip(worth))
        .map(|(item, &worth)| {
            if worth > 0 {
                item.demand.min(room / item.length)
            } else {
                0
            }
        })
        .collect();
    let ways = limits
        .iter()
        .try_fold(1_u64, |ways, &limit| ways.checked_mul(limit + 1));
    let Some(ways) = ways.filter(|&ways| ways <= MOST_WAYS) else {
        return;
    };
    let mut known = total(worth, &own.parts);
    let mut unknown = 0;
    for way in 1..ways {
        let mut left = way;
        let mut parts = Vec::new();
        for (item, &limit) in limits.iter().enumerate() {
            if left % (limit + 1) > 0 {
                parts.push((item, left % (limit + 1)));
            }
            left /= limit + 1;
        }
        let held = total(worth, &parts);
        let mut steps = 1;
        if held > known {
            let (fit, taken) = core.may_fit(kind, &parts);
            steps += taken;
            match fit {
                Fit::Known => (known, own.parts) = (held, parts),
                Fit::Open => unknown = unknown.max(held),
                Fit::Never => {}
            }
        }
        if !pace.spend(steps) {
            return;
        }
    }
    own.most = own.most.min(known.max(unknown));
}

/// Like [`reduce`], but equal lengths of different worth stay apart.
fn split_by_worth(
    problem: &Problem,
    wants: &[Want],
    kinds: &[Kind],
    take: &[u64],
    worth: &dyn Fn(&Want) -> u64,
) -> Reduced {
    let whole = reduce(problem, wants, kinds, take, None);
    let mut split = Reduced {
        core: whole.core.clone(),
        origin: Vec::new(),
    };
    split.core.items.clear();
    for (item, sources) in whole.core.items.iter().zip(&whole.origin) {
        let mut worths: Vec<u64> = sources.iter().map(|of| worth(&wants[of.0])).collect();
        worths.sort_unstable_by(|a, b| b.cmp(a));
        worths.dedup();
        for each in worths {
            let alike = |of: &&(usize, u64)| worth(&wants[of.0]) == each;
            let own: Vec<(usize, u64)> = sources.iter().filter(alike).copied().collect();
            let mut item = item.clone();
            item.demand = own.iter().fold(0, |sum: u64, of| sum.saturating_add(of.1));
            split.core.items.push(item);
            split.origin.push(own);
        }
    }
    split
}
