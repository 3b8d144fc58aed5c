//! Groups whose pieces must come from one run: which run each group comes from.

use std::collections::{BTreeMap, BTreeSet};

use super::core::{Core, ENDLESS, Kind};
use super::reduce::{NOWHERE, Want};
use super::search::quick;
use super::short::Choice;
use crate::pace::Pace;

/// Ways to share groups out to runs that are all tried.
const MOST_WAYS: usize = 256;
/// Steps for a better choice where there are more.
const SHARING: u64 = 1 << 26;

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
    let several = runs.len() > 1 || choice.kinds.iter().any(|kind| kind.own > 0);
    several && wants.iter().any(|want| want.flock.is_some())
}

/// Chooses a run for each group: all ways where they are few, else by room and then whatever
/// makes a quick plan cheaper.
pub(super) fn share(choice: &Choice<'_>, pace: &mut Pace<'_>) -> Shared {
    let places = Places::new(choice);
    let options: Vec<Vec<usize>> = (0..places.flocks.len())
        .map_while(|flock| places.options(flock))
        .collect();
    let ways = options.iter().try_fold(1_usize, |ways, options| {
        ways.checked_mul(options.len())
            .filter(|&ways| ways <= MOST_WAYS)
    });
    if let Some(ways) = ways.filter(|_| options.len() == places.flocks.len())
        && let Some(shared) = all_ways(choice, &options, ways, pace)
    {
        return shared;
    }
    let mut runs = places.by_room();
    let mut slice = pace.slice(SHARING);
    better(choice, &places, &mut runs, &mut slice);
    pace.rejoin(SHARING, &slice);
    Shared { runs, proven: None }
}

/// Moves one group after the other to another run where that makes a quick plan cheaper.
fn better(choice: &Choice<'_>, places: &Places, runs: &mut [usize], pace: &mut Pace<'_>) {
    let mut least = cost(choice, runs, pace).map_or(u64::MAX, |(cost, _)| cost);
    for flock in 0..runs.len() {
        for &at in &places.flocks[flock].sources {
            let source = &places.sources[at];
            let taken: BTreeSet<usize> = runs.iter().copied().collect();
            for run in source.candidates(&taken) {
                if pace.is_over() {
                    return;
                }
                let before = std::mem::replace(&mut runs[flock], run);
                match cost(choice, runs, pace) {
                    Some((cost, _)) if cost < least => least = cost,
                    _ => runs[flock] = before,
                }
            }
        }
    }
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
            exact &= way + 1 == ways;
            break;
        }
    }
    // Where no way serves for everything, room decides.
    let (cost, runs) = best.filter(|best| best.0 < u64::MAX)?;
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

/// Where groups can come from.
struct Places {
    /// Endless ones first, then the largest.
    sources: Vec<Source>,
    flocks: Vec<Flock>,
}

/// One run, or equal sticks of which each is one.
struct Source {
    run: usize,
    own: usize,
    endless: bool,
    /// What one run holds.
    room: u128,
}

struct Flock {
    /// Of all its pieces together.
    length: u128,
    /// The sources that can take each of its pieces; those that take the most kinds of them where
    /// none takes all.
    sources: Vec<usize>,
}

impl Places {
    fn new(choice: &Choice<'_>) -> Self {
        let all: Vec<u64> = choice.wants.iter().map(|want| want.count).collect();
        let free = Choice {
            runs: None,
            ..*choice
        };
        let reduced = free.reduced(&all);
        let core = Core {
            kinds: choice.kinds.to_vec(),
            ..reduced.core.clone()
        };
        let sources = sources(choice.kinds);
        let count = choice.wants.iter().filter_map(|want| want.flock).max();
        let mut flocks = Vec::new();
        for flock in 0..count.map_or(0, |last| last + 1) {
            let within = |&(want, _): &(usize, u64)| choice.wants[want].flock == Some(flock);
            let mut items: Vec<usize> = Vec::new();
            let mut length: u128 = 0;
            for (item, origin) in reduced.origin.iter().enumerate() {
                let own = origin.iter().copied().filter(within);
                let times: u128 = own.map(|of| u128::from(of.1)).sum();
                if times > 0 {
                    items.push(item);
                    length += times * u128::from(core.items[item].length);
                }
            }
            let takes = |source: &Source| {
                let takes = |&&item: &&usize| {
                    (0..core.kinds.len())
                        .any(|kind| core.kinds[kind].run == source.run && core.may_take(kind, item))
                };
                items.iter().filter(takes).count()
            };
            let counts: Vec<usize> = sources.iter().map(takes).collect();
            let most = counts.iter().copied().max().unwrap_or(0);
            flocks.push(Flock {
                length,
                sources: (0..sources.len())
                    .filter(|&at| counts[at] == most)
                    .collect(),
            });
        }
        Self { sources, flocks }
    }

    /// Every run a group may come from; of equal sticks only so many as groups before it can have
    /// taken, and one more: which of them it is makes no difference. `None` when they are too
    /// many to try all.
    fn options(&self, flock: usize) -> Option<Vec<usize>> {
        let mut options = Vec::new();
        for &at in &self.flocks[flock].sources {
            let source = &self.sources[at];
            let copies = source.own.max(1).min(flock + 1);
            options.extend(source.run..source.run + copies);
            if options.len() > MOST_WAYS {
                return None;
            }
        }
        Some(options)
    }

    /// The longest groups first, each to the first run that has room left for it.
    fn by_room(&self) -> Vec<usize> {
        let mut left: BTreeMap<usize, u128> = BTreeMap::new();
        let mut runs = vec![NOWHERE; self.flocks.len()];
        let mut order: Vec<usize> = (0..runs.len()).collect();
        order.sort_by_key(|&flock| (std::cmp::Reverse(self.flocks[flock].length), flock));
        for flock in order {
            let length = self.flocks[flock].length;
            let taken: BTreeSet<usize> = left.keys().copied().collect();
            let mut best: Option<(u128, usize, u128)> = None;
            for &at in &self.flocks[flock].sources {
                let source = &self.sources[at];
                for run in source.candidates(&taken) {
                    let room = *left.get(&run).unwrap_or(&source.room);
                    let served = if source.endless {
                        length
                    } else {
                        room.min(length)
                    };
                    if best.is_none_or(|(most, ..)| served > most) {
                        best = Some((served, run, room));
                    }
                }
            }
            if let Some((served, run, room)) = best {
                runs[flock] = run;
                left.insert(run, room.saturating_sub(served));
            }
        }
        runs
    }
}

impl Source {
    /// Its runs that are taken already, and one that is not.
    fn candidates(&self, taken: &BTreeSet<usize>) -> Vec<usize> {
        let runs = self.run..self.run + self.own.max(1);
        let mut candidates: Vec<usize> = taken.range(runs.clone()).copied().collect();
        candidates.extend(runs.into_iter().find(|run| !taken.contains(run)));
        candidates
    }
}

fn sources(kinds: &[Kind]) -> Vec<Source> {
    let mut sources: Vec<Source> = Vec::new();
    for kind in kinds.iter().filter(|kind| kind.shared || kind.own > 0) {
        let copies = if kind.own > 0 { 1 } else { kind.count };
        let endless = copies == ENDLESS;
        let room = if endless {
            0
        } else {
            u128::from(kind.room) * u128::from(copies)
        };
        match sources.iter_mut().find(|source| source.run == kind.run) {
            Some(known) => {
                known.endless |= endless;
                known.room += room;
            }
            None => sources.push(Source {
                run: kind.run,
                own: kind.own,
                endless,
                room,
            }),
        }
    }
    sources.sort_by_key(|source| std::cmp::Reverse((source.endless, source.room)));
    sources
}
