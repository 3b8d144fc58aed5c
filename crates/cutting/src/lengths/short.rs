//! Stock that does not reach: what is cut and what is left.
//!
//! Rule: more urgent pieces (higher priority, then earlier due) go before less urgent ones; among
//! equally urgent pieces as many as possible are cut; what is less urgent fills the rest.

use super::Problem;
use super::columns::{Depth, Mix};
use super::core::{Core, ENDLESS, Kind};
use super::dive::{Style, dive};
use super::reduce::{Reduced, Want, reduce};
use super::start::{Rest, Taste, greedy};
use super::tiny::{self, Tiny};
use crate::chance::Chance;
use crate::pace::Pace;

/// Searches for the longest list that still fits, at most.
const MOST_TURNS: usize = 64;

/// What there is to choose from.
pub(super) struct Choice<'a> {
    pub(super) problem: &'a Problem,
    pub(super) wants: &'a [Want],
    pub(super) kinds: &'a [Kind],
    pub(super) runs: Option<&'a [usize]>,
}

impl Choice<'_> {
    pub(super) fn reduced(&self, take: &[u64]) -> Reduced {
        reduce(self.problem, self.wants, self.kinds, take, self.runs)
    }

    /// How many of each want are to be cut.
    pub(super) fn take(&self, chance: &mut Chance, pace: &mut Pace<'_>) -> Vec<u64> {
        let all: Vec<u64> = self.wants.iter().map(|want| want.count).collect();
        let reduced = self.reduced(&all);
        let core = &reduced.core;
        if never_short(core) || holds(core, pace) {
            return all;
        }
        let rest = Rest::new(core);
        if tiny::work(&rest).is_some()
            && let Some(table) = Tiny::new(core, &rest, pace)
        {
            if table.whole().is_some() {
                return all;
            }
            let counted = table.most(|counted| self.levels(&reduced, counted));
            return self.shared_out(&reduced, &counted);
        }
        if found_by_mix(core, chance, pace) {
            return all;
        }
        self.longest_list(&all, pace)
    }

    /// Distinct urgencies, most urgent first.
    fn urgencies(&self) -> Vec<(std::cmp::Reverse<u32>, u32)> {
        let mut urgencies: Vec<_> = self.wants.iter().map(Want::urgency).collect();
        urgencies.sort_unstable();
        urgencies.dedup();
        urgencies
    }

    /// Pieces cut of each urgency.
    fn levels(&self, reduced: &Reduced, counted: &[u64]) -> Vec<u64> {
        let urgencies = self.urgencies();
        let mut levels = vec![0; urgencies.len()];
        for (want, taken) in self.shared_out(reduced, counted).into_iter().enumerate() {
            let want = &self.wants[want];
            if let Ok(level) = urgencies.binary_search(&want.urgency()) {
                let parts = u64::try_from(want.pieces.len()).unwrap_or(u64::MAX);
                levels[level] += taken * parts;
            }
        }
        levels
    }

    /// Items counted, shared out to their wants, most urgent first.
    fn shared_out(&self, reduced: &Reduced, counted: &[u64]) -> Vec<u64> {
        let mut take = vec![0; self.wants.len()];
        for (sources, &count) in reduced.origin.iter().zip(counted) {
            let mut left = count;
            for &(want, most) in sources {
                take[want] = left.min(most);
                left -= take[want];
            }
        }
        take
    }

    /// Goes down the list of wants, most urgent and shortest first, and takes as many as still
    /// fit by quick means.
    fn longest_list(&self, all: &[u64], pace: &mut Pace<'_>) -> Vec<u64> {
        let length = |want: usize| -> u64 {
            let pieces = self.wants[want].pieces.iter();
            pieces.map(|&piece| self.problem.pieces[piece].length).sum()
        };
        let mut order: Vec<usize> = (0..self.wants.len()).collect();
        order.sort_by_cached_key(|&want| (self.wants[want].urgency(), length(want), want));
        let mut take = vec![0; self.wants.len()];
        let mut from = 0;
        for _ in 0..MOST_TURNS {
            let list = &order[from..];
            let total: u64 = list.iter().map(|&want| all[want]).sum();
            let longer = |count: u64| {
                let mut longer = take.clone();
                let mut left = count;
                for &want in list {
                    longer[want] = all[want].min(left);
                    left -= longer[want];
                }
                longer
            };
            let (mut fits, mut fails) = (0, total + 1);
            while fails - fits > 1 {
                let middle = fits + (fails - fits) / 2;
                if holds(&self.reduced(&longer(middle)).core, pace) {
                    fits = middle;
                } else {
                    fails = middle;
                }
            }
            take = longer(fits);
            let mut passed = fits;
            let stuck = list.iter().position(|&want| {
                let here = passed >= all[want];
                passed = passed.saturating_sub(all[want]);
                !here
            });
            match stuck {
                Some(at) if from + at + 1 < order.len() && !pace.is_over() => from += at + 1,
                _ => break,
            }
        }
        take
    }
}

/// True when every item can come from stock without a count.
fn never_short(core: &Core) -> bool {
    let endless = |item| {
        (0..core.kinds.len())
            .any(|kind| core.kinds[kind].count == ENDLESS && core.takes(kind, item))
    };
    (0..core.items.len()).all(endless)
}

/// Whether a plan for everything is found at once.
fn holds(core: &Core, pace: &mut Pace<'_>) -> bool {
    [Taste::Dense, Taste::Cheap, Taste::Long]
        .iter()
        .any(|&taste| {
            let mut rest = Rest::new(core);
            greedy(core, &mut rest, taste, pace);
            rest.is_done()
        })
}

/// Whether rounding a mix leads to a plan for everything.
fn found_by_mix(core: &Core, chance: &mut Chance, pace: &mut Pace<'_>) -> bool {
    let mut mix = Mix::new(core);
    let Some(reached) = mix.generate(&Rest::new(core), u64::MAX, Depth::ROUNDED, pace) else {
        return false;
    };
    if reached.bound == u64::MAX || mix.lacks() {
        return false;
    }
    let style = Style::STRAIGHT;
    dive(&mut mix, u64::MAX, style, chance, pace).is_some()
}
