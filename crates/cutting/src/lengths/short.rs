//! Stock that does not reach: what is cut and what is left.
//!
//! What is left is what no plan was found for by the means at hand; unless a table of all ways says
//! so, nobody knows that there is none.
//!
//! Rule: more urgent pieces (higher priority, then earlier due) go before less urgent ones; among
//! equally urgent pieces as many as possible are cut; what is less urgent fills the rest.

use super::Problem;
use super::columns::{Depth, Mix};
use super::core::{Core, Draft, ENDLESS, Kind};
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

/// What is cut.
pub(super) struct Taken {
    /// How many of each want.
    pub(super) take: Vec<u64>,
    /// A plan for just that; `None`: the first plan by quick means will be one.
    pub(super) draft: Option<Draft>,
}

impl Choice<'_> {
    pub(super) fn reduced(&self, take: &[u64]) -> Reduced {
        reduce(self.problem, self.wants, self.kinds, take, self.runs)
    }

    /// What is to be cut, and a first plan for it.
    pub(super) fn take(&self, chance: &mut Chance, pace: &mut Pace<'_>) -> Taken {
        let all: Vec<u64> = self.wants.iter().map(|want| want.count).collect();
        let reduced = self.reduced(&all);
        let core = &reduced.core;
        let whole = |draft| Taken {
            take: all.clone(),
            draft,
        };
        if never_short(core) {
            return whole(None);
        }
        let mut draft = holds(core, pace);
        let rest = Rest::new(core);
        if draft.is_none()
            && tiny::work(&rest).is_some()
            && let Some(table) = Tiny::new(core, &rest, pace)
        {
            draft = table.whole();
            if draft.is_none() && table.is_exact() {
                return self.most(&reduced, &table, &all, pace);
            }
        }
        if draft.is_none() {
            draft = found_by_mix(core, chance, pace);
        }
        match draft {
            Some(draft) => whole(Some(draft)),
            None => self.longest_list(&all, pace),
        }
    }

    /// What a table says can be cut.
    fn most(&self, all: &Reduced, table: &Tiny<'_>, wanted: &[u64], pace: &mut Pace<'_>) -> Taken {
        let (counted, draft) = table.most(|counted| self.levels(all, counted));
        let take = self.shared_out(all, &counted);
        match self.reduced(&take).carried(all, &draft) {
            Some(draft) => Taken {
                take,
                draft: Some(draft),
            },
            None => self.longest_list(wanted, pace),
        }
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
    fn longest_list(&self, all: &[u64], pace: &mut Pace<'_>) -> Taken {
        let length = |want: usize| -> u64 {
            let pieces = self.wants[want].pieces.iter();
            pieces.map(|&piece| self.problem.pieces[piece].length).sum()
        };
        let mut order: Vec<usize> = (0..self.wants.len()).collect();
        order.sort_by_cached_key(|&want| (self.wants[want].urgency(), length(want), want));
        let mut take = vec![0; self.wants.len()];
        let mut draft = Draft::default();
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
                match holds(&self.reduced(&longer(middle)).core, pace) {
                    Some(held) => (fits, draft) = (middle, held),
                    None => fails = middle,
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
        Taken {
            take,
            draft: Some(draft),
        }
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

/// A plan for everything, where one is found at once.
fn holds(core: &Core, pace: &mut Pace<'_>) -> Option<Draft> {
    let tastes = [Taste::Dense, Taste::Cheap, Taste::Long];
    tastes.into_iter().find_map(|taste| {
        let mut rest = Rest::new(core);
        let draft = greedy(core, &mut rest, taste, pace);
        rest.is_done().then_some(draft)
    })
}

/// A plan for everything by rounding a mix.
fn found_by_mix(core: &Core, chance: &mut Chance, pace: &mut Pace<'_>) -> Option<Draft> {
    let mut mix = Mix::new(core);
    let reached = mix.generate(&Rest::new(core), u64::MAX, Depth::ROUNDED, pace)?;
    if reached.bound == u64::MAX || mix.lacks() {
        return None;
    }
    dive(&mut mix, u64::MAX, Style::STRAIGHT, chance, pace)
}
