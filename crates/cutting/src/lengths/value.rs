//! The most value out of one stick.

use super::Plan;
use super::core::Kind;
use super::core::{Draft, Fill};
use super::pricing::Pricer;
use super::reduce::{Reduced, Want, reduce};
use super::start::Rest;
use super::{Problem, realise};
use crate::pace::Pace;

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
    let worth: Vec<u64> = reduced
        .origin
        .iter()
        .map(|of| worth_of(&wants[of[0].0]))
        .collect();
    let core = &reduced.core;
    let rest = Rest::new(core);
    let priced = Pricer::new(core, &rest.demands).price(&worth, &rest.counts, pace);
    let total = |parts: &[(usize, u64)]| -> u64 {
        parts.iter().map(|&(item, times)| worth[item] * times).sum()
    };
    let (mut draft, mut objective, mut bound) = (Draft::default(), 0, u64::MAX);
    if let Some(priced) = priced {
        bound = priced.iter().map(|priced| priced.most).max().unwrap_or(0);
        let rank = |&kind: &usize| {
            let cost = std::cmp::Reverse(problem.stock[core.kinds[kind].stock].cost);
            (total(&priced[kind].parts), cost, std::cmp::Reverse(kind))
        };
        if let Some(kind) = (0..priced.len()).max_by_key(rank) {
            let parts = priced[kind].parts.clone();
            objective = total(&parts);
            if !parts.is_empty() {
                draft.push(core, Fill { kind, parts }, 1);
            }
        }
    }
    Plan {
        layouts: realise::layouts(problem, wants, &reduced, &draft),
        objective,
        bound,
        uncut: Vec::new(),
    }
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
