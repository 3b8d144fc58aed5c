//! Groups whose pieces must come from one run: which run each group comes from.

use super::core::{Core, ENDLESS};
use super::reduce::{NO_RUN, Want};
use super::search::quick;
use super::short::Choice;
use crate::pace::Pace;

/// Ways to share groups out to runs that are all tried.
const MOST_WAYS: usize = 256;

/// Runs chosen for the groups.
pub(super) struct Shared {
    pub(super) runs: Vec<usize>,
    /// The least cost over all ways to choose, when all were tried exactly.
    pub(super) proven: Option<u64>,
}

/// Whether there is anything to choose.
pub(super) fn matter(wants: &[Want], choice: &Choice<'_>) -> bool {
    let mut runs: Vec<usize> = choice.kinds.iter().map(|kind| kind.run).collect();
    runs.sort_unstable();
    runs.dedup();
    runs.len() > 1 && wants.iter().any(|want| want.flock.is_some())
}

/// Chooses a run for each group: all ways where they are few, else the largest run first and then
/// whatever makes a quick plan cheaper.
pub(super) fn share(choice: &Choice<'_>, pace: &mut Pace<'_>) -> Shared {
    let options = options(choice);
    let ways = options.iter().try_fold(1_usize, |ways, options| {
        ways.checked_mul(options.len())
            .filter(|&ways| ways <= MOST_WAYS)
    });
    if let Some(shared) = ways.and_then(|ways| all_ways(choice, &options, ways, pace)) {
        return shared;
    }
    let mut runs: Vec<usize> = options.iter().map(|options| options[0]).collect();
    let mut least = cost(choice, &runs, pace).map_or(u64::MAX, |(cost, _)| cost);
    for flock in 0..runs.len() {
        for &run in &options[flock][1..] {
            if pace.is_over() {
                break;
            }
            let before = std::mem::replace(&mut runs[flock], run);
            match cost(choice, &runs, pace) {
                Some((cost, _)) if cost < least => least = cost,
                _ => runs[flock] = before,
            }
        }
    }
    Shared { runs, proven: None }
}

fn all_ways(
    choice: &Choice<'_>,
    options: &[Vec<usize>],
    ways: usize,
    pace: &mut Pace<'_>,
) -> Option<Shared> {
    let mut best: Option<(u64, Vec<usize>)> = None;
    let mut exact = true;
    for way in 0..ways {
        let mut left = way;
        let pick = |options: &Vec<usize>| {
            let run = options[left % options.len()];
            left /= options.len();
            run
        };
        let runs: Vec<usize> = options.iter().map(pick).collect();
        match cost(choice, &runs, pace) {
            Some((cost, proven)) => {
                exact &= proven;
                if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                    best = Some((cost, runs));
                }
            }
            None => exact = false,
        }
        if pace.is_over() {
            exact = false;
            break;
        }
    }
    let (cost, runs) = best?;
    let proven = exact.then_some(cost);
    Some(Shared { runs, proven })
}

/// The cost of a quick plan for everything, and whether it is the least.
fn cost(choice: &Choice<'_>, runs: &[usize], pace: &mut Pace<'_>) -> Option<(u64, bool)> {
    let choice = Choice {
        runs: Some(runs),
        ..*choice
    };
    let all: Vec<u64> = choice.wants.iter().map(|want| want.count).collect();
    quick(&choice.reduced(&all).core, pace)
}

/// Per flock the runs that can take each of its pieces: endless ones first, then the largest.
fn options(choice: &Choice<'_>) -> Vec<Vec<usize>> {
    let flocks = choice.wants.iter().filter_map(|want| want.flock).max();
    let all: Vec<u64> = choice.wants.iter().map(|want| want.count).collect();
    let free = Choice {
        runs: None,
        ..*choice
    };
    let reduced = free.reduced(&all);
    let mut runs: Vec<usize> = choice.kinds.iter().map(|kind| kind.run).collect();
    runs.retain(|&run| run != NO_RUN);
    runs.sort_unstable();
    runs.dedup();
    runs.sort_by_key(|&run| std::cmp::Reverse(capacity(&reduced.core, run)));
    let of = |flock: usize| -> Vec<usize> {
        let items: Vec<usize> = (0..reduced.origin.len())
            .filter(|&item| {
                let within = |&(want, _): &(usize, u64)| choice.wants[want].flock == Some(flock);
                reduced.origin[item].iter().any(within)
            })
            .collect();
        let takes = |&run: &usize| {
            let core = &reduced.core;
            items.iter().all(|&item| {
                (0..core.kinds.len())
                    .any(|kind| core.kinds[kind].run == run && core.takes(kind, item))
            })
        };
        runs.iter().copied().filter(takes).collect()
    };
    (0..=flocks.unwrap_or(0)).map(of).collect()
}

/// Whether a run has endless stock, and how much it holds otherwise.
fn capacity(core: &Core, run: usize) -> (bool, u128) {
    let kinds = core.kinds.iter().filter(|kind| kind.run == run);
    let mut sum = (false, 0);
    for kind in kinds {
        if kind.count == ENDLESS {
            sum.0 = true;
        } else {
            sum.1 += u128::from(kind.room) * u128::from(kind.count);
        }
    }
    sum
}
