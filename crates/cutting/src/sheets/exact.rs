//! Exact search: the cheapest plan for a few parts, with proof.
//!
//! Three steps. Prices for the parts give a lower bound (see [`linear`]); what lies between that
//! bound and the best plan known limits how much more than its worth a sheet may cost, which
//! leaves few groups of parts that can be in a better plan (see [`pricing`]); among those the best
//! cover of all wanted parts is searched for (see [`cover`]), step by step up from the bound. Which
//! groups come out of a sheet is known exactly (see [`reach`]); where a group is too large for that,
//! or a least strip makes it long to tell, it is taken to fit, so that every bound still holds. A
//! plan with a group that then turns out not to fit goes on with what of it does. Windows are stock
//! at no cost, no more of them than parts that free them: as all parts are cut and a window is
//! smaller than its part, the order always works out.

mod cover;
mod group;
mod hash;
mod kinds;
mod lay;
mod linear;
mod plan;
mod pricing;
mod reach;
mod relax;
mod seeds;

use super::bound::Totals;
use cover::Cover;
use group::Group;
use kinds::{Kind, Pattern};
use linear::{Linear, Progress};
use plan::Flaw;
use pricing::{Outcome, Pricing};
use reach::Reach;

use super::{Draft, Reduced, bound};
use crate::{Goal, Pace};

/// What a step of the exact search has come to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Proof {
    /// Not done; no plan costs less than the bound.
    Open { bound: u64 },
    /// Not done, and further steps would change nothing while the best known cost stays.
    Stuck { bound: u64 },
    /// Proven: this draft is best, or without one the cost given is.
    Optimal { draft: Option<Draft> },
    /// No plan at all: the stock does not reach.
    Impossible,
}

/// The search, which can be left and taken up again.
pub(crate) struct Search<'a> {
    reduced: &'a Reduced,
    kinds: Vec<Kind>,
    wanted: Vec<u64>,
    /// What comes out of a sheet; beyond few parts, without the least strip.
    reach: Reach,
    /// What truly does.
    strict: Reach,
    linear: Linear,
    totals: Totals,
    /// No plan that is any good costs this much.
    beyond: u64,
    bound: u64,
    /// How far above the bound plans are looked for at one go.
    reaching: u64,
    /// The best plan found here, and its cost.
    best: Option<(u64, Draft)>,
    phase: Phase,
}

enum Phase {
    /// Too much for this search.
    Shut,
    /// Nothing more to be done below this cost.
    Spent(u64),
    /// Nothing done yet.
    Fresh,
    /// Looking for prices.
    Linear,
    /// Gathering patterns for plans up to the target.
    Gather(Gather),
    /// Covering with the patterns.
    Cover(Box<Covering>),
}

struct Gather {
    target: u64,
    /// At most so many patterns.
    most: usize,
    patterns: Vec<Pattern>,
    kind: usize,
    pricing: Option<Pricing>,
}

struct Covering {
    target: u64,
    cover: Cover,
}

/// More copies than this are left to the other searches.
const MOST_COPIES: u64 = 250;
/// More kinds of stock, each a row of the linear program, are left to the other searches.
const MOST_STOCK: usize = 750;
/// Up to this many, searching is quicker than pricing ahead.
const FEW_COPIES: u64 = 12;
/// Up to this many, the least strip is taken into account while pricing; few where tests compare
/// small problems with all there is.
const STRIP_COPIES: u64 = if cfg!(test) { 5 } else { 14 };
/// Groups within a group that are looked into while pricing; few where tests compare small problems
/// with all there is.
const MOST_WITHIN: usize = if cfg!(test) { 10 } else { 1 << 10 };
/// The same for a plan.
const MOST_WITHIN_PLAN: usize = 1 << 13;
/// Most patterns for the full way to the best known cost, and for the least step up.
const FEW_PATTERNS: usize = 20_000;
const MANY_PATTERNS: usize = 200_000;

impl<'a> Search<'a> {
    pub(crate) fn new(reduced: &'a Reduced) -> Self {
        let wanted: Vec<u64> = reduced.parts.iter().map(|part| part.count).collect();
        let copies = wanted
            .iter()
            .fold(0, |sum: u64, &count| sum.saturating_add(count));
        let open = reduced.goal != Goal::Value
            && (1..=MOST_COPIES).contains(&copies)
            && reduced.parts.len() <= group::MOST_TYPES
            && (1..=MOST_STOCK).contains(&reduced.stock.len());
        let wanted = if open { wanted } else { Vec::new() };
        let copies = copies.min(MOST_COPIES);
        let kinds = if open {
            kinds::kinds(reduced, copies)
        } else {
            Vec::new()
        };
        let most = kinds.iter().map(|kind| kind.cost).max().unwrap_or(0);
        // Every sheet of a plan without idle sheets holds a part.
        let beyond = most * copies + 1;
        let costs: Vec<(u64, u64)> = kinds
            .iter()
            .map(|kind| (kind.cost, kind.count.unwrap_or(copies)))
            .collect();
        let area = |part: &super::Part| u64::from(part.width) * u64::from(part.height);
        let areas: Vec<u64> = reduced.parts.iter().map(area).collect();
        Self {
            reduced,
            strict: Reach::new(reduced, MOST_WITHIN_PLAN, true),
            reach: Reach::new(reduced, MOST_WITHIN, copies <= STRIP_COPIES),
            linear: Linear::new(&wanted, &areas, &kinds),
            totals: Totals::new(&costs, beyond),
            kinds,
            wanted,
            beyond,
            bound: 0,
            reaching: 0,
            best: None,
            phase: if open { Phase::Fresh } else { Phase::Shut },
        }
    }

    /// Goes on until the pace ends. `best_cost` is the cost of the best plan known, or
    /// [`u64::MAX`].
    pub(crate) fn step(&mut self, pace: &mut Pace, best_cost: u64) -> Proof {
        loop {
            let found = self.best.as_ref().map_or(u64::MAX, |best| best.0);
            let ceiling = best_cost.min(self.beyond).min(found);
            if !matches!(self.phase, Phase::Shut) && self.bound >= ceiling {
                return self.closed(best_cost);
            }
            let phase = std::mem::replace(&mut self.phase, Phase::Spent(ceiling));
            let done = match phase {
                Phase::Shut => {
                    self.phase = Phase::Shut;
                    return Proof::Stuck { bound: self.bound };
                }
                Phase::Spent(cost) if cost <= ceiling => {
                    return Proof::Stuck { bound: self.bound };
                }
                Phase::Spent(_) => {
                    self.gather_below(ceiling);
                    None
                }
                Phase::Fresh => {
                    self.seed(pace);
                    self.phase = Phase::Linear;
                    None
                }
                Phase::Linear => self.price(pace, ceiling),
                Phase::Gather(gather) => self.gather(gather, pace, ceiling),
                Phase::Cover(covering) => self.cover(covering, pace, ceiling),
            };
            if let Some(proof) = done {
                return proof;
            }
        }
    }

    /// A better plan than the one known, found on the way to a proof; each is given once.
    pub(crate) fn take_better(&mut self, best_cost: u64) -> Option<Draft> {
        let (cost, _) = self.best.as_ref()?;
        let better = *cost < best_cost;
        let (_, draft) = self.best.take()?;
        better.then_some(draft)
    }

    fn closed(&mut self, best_cost: u64) -> Proof {
        if let Some(draft) = self.take_better(best_cost) {
            Proof::Optimal { draft: Some(draft) }
        } else if best_cost == u64::MAX {
            Proof::Impossible
        } else {
            Proof::Optimal { draft: None }
        }
    }

    fn raise(&mut self, bound: u64) {
        self.bound = self.bound.max(self.totals.from(bound));
    }

    /// Leaves off here.
    fn open(&mut self, phase: Phase) -> Proof {
        self.phase = phase;
        Proof::Open { bound: self.bound }
    }

    /// Gives the linear program something to begin with.
    fn seed(&mut self, pace: &mut Pace) {
        if self.wanted.iter().sum::<u64>() > FEW_COPIES {
            let prices = bound::prices(self.reduced, pace);
            self.linear.begin_with(&prices, &self.kinds);
        }
        for kind in &mut self.kinds {
            kind.pair(self.reduced, &mut self.reach);
            pace.spend(self.reach.steps());
        }
        let parts = self.reduced.parts.iter();
        let sizes: Vec<(u32, u32)> = parts.map(|part| (part.width, part.height)).collect();
        let offers = self.linear.offers(&vec![0; self.wanted.len()]);
        for (kind, group) in seeds::seeds(&self.kinds, &offers, &sizes, &mut self.reach, pace) {
            self.linear.add(&self.kinds, kind, group);
        }
    }

    fn price(&mut self, pace: &mut Pace, ceiling: u64) -> Option<Proof> {
        let progress = self.linear.step(&self.kinds, &mut self.reach, pace);
        self.raise(self.linear.best.bound.div_ceil(self.linear.scale));
        let most = self.linear.ceiling().map(|most| self.totals.from(most));
        match progress {
            Progress::Paused => return Some(self.open(Phase::Linear)),
            Progress::Going if most.is_none_or(|most| self.bound < most) => {
                self.phase = Phase::Linear;
            }
            Progress::Going | Progress::Done => self.gather_below(ceiling),
        }
        None
    }

    /// For plans a step above the bound, better than the best known.
    fn gather_below(&mut self, ceiling: u64) {
        let target = self.totals.below(ceiling).unwrap_or(0);
        let near = self.bound.saturating_add(self.reaching);
        self.phase = self.gathering(target.min(near), FEW_PATTERNS);
    }

    fn gathering(&self, target: u64, most: usize) -> Phase {
        Phase::Gather(Gather {
            target: target.max(self.bound),
            most,
            patterns: Vec::new(),
            kind: 0,
            pricing: None,
        })
    }

    /// What a plan of the target cost may spend over the bound of the prices, scaled.
    fn allowance(&self, target: u64) -> u64 {
        let target = u128::from(target) * u128::from(self.linear.scale);
        let over = target.saturating_sub(u128::from(self.linear.best.bound));
        u64::try_from(over).unwrap_or(u64::MAX)
    }

    fn gather(&mut self, mut gather: Gather, pace: &mut Pace, ceiling: u64) -> Option<Proof> {
        if gather.target >= ceiling {
            gather.target = self.totals.below(ceiling).unwrap_or(0);
        }
        let allowance = self.allowance(gather.target);
        let offers = self.linear.offers(&self.linear.best.parts);
        while gather.kind < self.kinds.len() {
            let kind = &self.kinds[gather.kind];
            let full = kind.cost * self.linear.scale + self.linear.best.rents[gather.kind];
            let mut pricing = gather.pricing.take().unwrap_or_else(|| {
                let least = full.saturating_sub(allowance);
                let most = gather.most.saturating_sub(gather.patterns.len());
                Pricing::all(kind, &offers, least, most)
            });
            match pricing.run(&mut self.reach, pace) {
                Outcome::Paused => {
                    gather.pricing = Some(pricing);
                    return Some(self.open(Phase::Gather(gather)));
                }
                Outcome::TooMany => return self.gather_fewer(&gather),
                Outcome::Done | Outcome::Enough => {}
            }
            for &(worth, group) in pricing.found() {
                gather.patterns.push(Pattern {
                    kind: gather.kind,
                    group,
                    over: full.saturating_sub(worth),
                });
            }
            gather.kind += 1;
        }
        let cover = Cover::new(
            gather.patterns,
            &self.linear.best,
            &self.wanted,
            &self.kinds,
            (gather.target, allowance),
            self.linear.scale,
        );
        self.phase = Phase::Cover(Box::new(Covering {
            target: gather.target,
            cover,
        }));
        None
    }

    /// Takes a lower target; stuck when it is the lowest.
    fn gather_fewer(&mut self, gather: &Gather) -> Option<Proof> {
        if gather.target <= self.bound {
            if gather.most >= MANY_PATTERNS {
                return Some(Proof::Stuck { bound: self.bound });
            }
            self.phase = self.gathering(gather.target, MANY_PATTERNS);
            return None;
        }
        let nearer = self.bound + (gather.target - self.bound) / 4;
        let nearer = self.totals.below(nearer + 1).unwrap_or(self.bound);
        self.phase = self.gathering(nearer.min(gather.target - 1), gather.most);
        None
    }

    fn cover(
        &mut self,
        mut covering: Box<Covering>,
        pace: &mut Pace,
        ceiling: u64,
    ) -> Option<Proof> {
        if covering.target >= ceiling {
            covering.target = self.totals.below(ceiling).unwrap_or(0);
        }
        let allowance = self.allowance(covering.target);
        covering.cover.lower(covering.target, allowance);
        match covering.cover.run(pace) {
            cover::Outcome::Paused => Some(self.open(Phase::Cover(covering))),
            cover::Outcome::None => {
                let target = covering.target;
                self.raise(target + 1);
                // Nothing there: up with the bound, and twice as far.
                self.reaching = (2 * self.reaching).max(self.bound / 128);
                self.gather_below(ceiling);
                None
            }
            cover::Outcome::Found(used) => {
                let proof = self.found(covering, &used);
                pace.spend(self.strict.steps());
                self.strict.forget_much();
                proof
            }
        }
    }

    /// A cheaper plan: from now on the target is below it.
    fn found(&mut self, mut covering: Box<Covering>, used: &[usize]) -> Option<Proof> {
        let patterns: Vec<Pattern> = used
            .iter()
            .map(|&number| *covering.cover.pattern(number))
            .collect();
        let drafted = plan::draft(
            self.reduced,
            &self.kinds,
            &self.wanted,
            &patterns,
            &mut self.strict,
        );
        match drafted {
            Ok(draft) => self.best = Some((self.reduced.cost(&draft), draft)),
            Err(Flaw::Misfit(at)) => self.mend(&mut covering, used[at]),
            Err(Flaw::Unknown) => return Some(Proof::Stuck { bound: self.bound }),
        }
        self.phase = Phase::Cover(covering);
        None
    }

    /// A pattern was only taken to fit; now that it is known not to, what of it does takes its
    /// place.
    fn mend(&mut self, covering: &mut Covering, number: usize) {
        let Pattern { kind, group, .. } = *covering.cover.pattern(number);
        self.reach.bar(group, self.kinds[kind].size);
        let prices = &self.linear.best;
        let full = self.kinds[kind].cost * self.linear.scale + prices.rents[kind];
        let groups = plan::mended(group, self.kinds[kind].size, &mut self.strict);
        let pattern = |group: Group| {
            let worth: u64 = group.parts().map(|part| prices.parts[part]).sum();
            Pattern {
                kind,
                group,
                over: full.saturating_sub(worth),
            }
        };
        covering
            .cover
            .mend(number, groups.into_iter().map(pattern).collect());
    }
}

#[cfg(test)]
mod tests;
