//! The search for one core: a plan at once, then better plans and better bounds in turn.

use std::collections::BTreeSet;

use super::bound::{costs_between, in_whole, least_held, need};
use super::closed::{Answer, Closed, list};
use super::columns::{Depth, Mix, Reached};
use super::core::{Core, Draft};
use super::dive::{Style, dive};
use super::gather::gathered;
use super::stairs::{choices, hold};
use super::start::{Rest, Taste, greedy};
use super::tiny::{self, Tiny};
use crate::chance::Chance;
use crate::pace::Pace;

/// A table with no more work than this is made for the longest remnant alone.
const CHEAP_TABLE: u64 = 500_000;

/// The cost of a plan by quick means, and whether it is proven the least.
pub(super) fn quick(core: &Core, pace: &mut Pace<'_>) -> Option<(u64, bool)> {
    let all = Rest::new(core);
    if tiny::work(&all).is_some_and(|work| work <= CHEAP_TABLE) {
        let table = Tiny::new(core, &all, pace)?;
        match table.whole() {
            Some(draft) => return Some((draft.cost, table.is_exact())),
            // What cannot be cut at all is no way to cut: it costs the most.
            None if table.is_exact() => return Some((u64::MAX, true)),
            None => {}
        }
    }
    let mut search = Search::new(core, &|_, _| {});
    search.at_once(pace);
    let cost = search.best.as_ref()?.cost;
    Some((cost, search.proven()))
}

/// Best plan and best bound so far; the bound is never above the plan's cost.
pub(super) struct Search<'a> {
    core: &'a Core,
    pub(super) best: Option<Draft>,
    pub(super) bound: u64,
    /// Told when one of the two moves.
    tell: &'a dyn Fn(Option<u64>, u64),
}

impl<'a> Search<'a> {
    pub(super) fn new(core: &'a Core, tell: &'a dyn Fn(Option<u64>, u64)) -> Self {
        Self {
            core,
            best: None,
            bound: 0,
            tell,
        }
    }

    /// Runs until proven or the pace is over.
    pub(super) fn run(&mut self, chance: &mut Chance, pace: &mut Pace<'_>) {
        self.at_once(pace);
        let all = Rest::new(self.core);
        let quick = if self.proven() { CHEAP_TABLE } else { u64::MAX };
        if tiny::work(&all).is_some_and(|work| work <= quick)
            && let Some(table) = Tiny::new(self.core, &all, pace)
            && self.by_table(&table)
        {
            return;
        }
        if !self.proven() {
            self.by_mixes(&all, chance, pace);
        }
        if let Some(best) = self.best.take() {
            self.best = Some(gathered(self.core, &best, pace));
        }
    }

    /// Takes over what the table knows; true when nothing can be better.
    fn by_table(&mut self, table: &Tiny<'_>) -> bool {
        let Some(draft) = table.whole() else {
            debug_assert!(!table.is_exact() || self.best.is_none(), "there is a plan");
            return table.is_exact();
        };
        let cost = draft.cost;
        self.offer(draft.clone());
        if cost == self.cost() {
            // At the same cost its longest remnant is the longest.
            self.best = Some(draft);
        }
        if table.is_exact() {
            self.raise(cost);
        }
        table.is_exact()
    }

    /// The bound only, from the quick means and column generation.
    pub(super) fn bound_only(&mut self, pace: &mut Pace<'_>) {
        self.at_once(pace);
        let all = Rest::new(self.core);
        if self.proven() {
            return;
        }
        if let Some(reached) = self.mix().generate(&all, self.cost(), Depth::ROUNDED, pace) {
            self.prove(&reached, pace);
        }
    }

    /// A mix that can already be made whole.
    fn mix(&self) -> Mix<'a> {
        let mut mix = Mix::new(self.core);
        if let Some(best) = &self.best {
            for (fill, _) in &best.fills {
                mix.add(fill);
            }
        }
        mix
    }

    fn by_mixes(&mut self, all: &Rest, chance: &mut Chance, pace: &mut Pace<'_>) {
        let mut mix = self.mix();
        let Some(reached) = mix.generate(all, self.cost(), Depth::ROUNDED, pace) else {
            return;
        };
        self.prove(&reached, pace);
        self.improve(&mut mix, chance, pace);
    }

    pub(super) fn cost(&self) -> u64 {
        self.best.as_ref().map_or(u64::MAX, |best| best.cost)
    }

    fn sticks(&self) -> u64 {
        let copies = |best: &Draft| best.fills.iter().map(|of| of.1).sum();
        self.best.as_ref().map_or(u64::MAX, copies)
    }

    pub(super) fn proven(&self) -> bool {
        self.best.is_some() && self.bound >= self.cost()
    }

    /// Takes a plan over where it is better. A bound that it refutes was never one.
    pub(super) fn offer(&mut self, draft: Draft) {
        debug_assert!(
            draft.cost >= self.bound,
            "a plan for {}, but the bound is {}",
            draft.cost,
            self.bound
        );
        if draft.cost < self.cost() {
            if draft.cost < self.bound {
                self.bound = 0;
            }
            self.best = Some(draft);
            (self.tell)(Some(self.cost()), self.bound);
        }
    }

    /// A bound above a plan's cost would be refuted by that plan: a fault of ours, which must not
    /// pass for a proof.
    fn raise(&mut self, bound: u64) {
        debug_assert!(
            bound <= self.cost(),
            "bound {bound}, but there is a plan for {}",
            self.cost()
        );
        if bound > self.bound && bound <= self.cost() {
            self.bound = bound;
            (self.tell)(self.best.as_ref().map(|best| best.cost), self.bound);
        }
    }

    fn at_once(&mut self, pace: &mut Pace<'_>) {
        for taste in [Taste::Dense, Taste::Cheap, Taste::Long] {
            let mut rest = Rest::new(self.core);
            let draft = greedy(self.core, &mut rest, taste, pace);
            if rest.is_done() {
                self.offer(draft);
            }
            if self.core.kinds.len() == 1 {
                break;
            }
        }
        let lengths: Vec<u64> = self.core.items.iter().map(|item| item.length).collect();
        let rooms: Vec<u64> = self.core.kinds.iter().map(|kind| kind.room).collect();
        let demands = self.core.demands();
        let bound = in_whole(
            self.core,
            &self.core.counts(),
            need(&lengths, &demands),
            &rooms,
            self.cost(),
            pace,
        );
        self.raise(bound);
    }

    fn prove(&mut self, reached: &Reached, pace: &mut Pace<'_>) {
        let need = need(&reached.worth, &self.core.demands());
        let bound = in_whole(
            self.core,
            &self.core.counts(),
            need,
            &reached.most,
            self.cost(),
            pace,
        );
        self.raise(bound);
    }

    /// Dives and the exact tail in turn, about as long each.
    fn improve(&mut self, mix: &mut Mix<'_>, chance: &mut Chance, pace: &mut Pace<'_>) {
        let mut style = Style::STRAIGHT;
        let mut tail = Tail::default();
        let mut dived = 0;
        while !self.proven() && !pace.is_over() {
            let mut part = pace.slice(AMPLE);
            if let Some(draft) = dive(mix, self.cost(), style, chance, &mut part) {
                self.offer(draft);
            }
            dived += AMPLE.min(pace.left()) - part.left();
            pace.rejoin(AMPLE, &part);
            style.stray = 4 + chance.below(12);
            if self.proven() || dived < tail.spent || self.sticks() > MOST_STICKS {
                continue;
            }
            dived = 0;
            let mut part = pace.slice(tail.budget);
            self.look(&mut tail, mix, chance, &mut part);
            tail.spent = tail.budget.min(pace.left()) - part.left();
            pace.rejoin(tail.budget, &part);
        }
    }

    /// Asks the exact tail whether there is a plan for at most some cost between bound and best.
    fn look(
        &mut self,
        tail: &mut Tail,
        mix: &mut Mix<'_>,
        chance: &mut Chance,
        pace: &mut Pace<'_>,
    ) {
        let counts = self.core.counts();
        if tail.settled.is_none() {
            let all = Rest::new(self.core);
            tail.settled = mix.generate(&all, self.cost(), Depth::SETTLED, pace);
        }
        let Some(reached) = tail.settled.clone() else {
            tail.budget *= 2;
            return;
        };
        self.prove(&reached, pace);
        if tail.climbs && self.core.kinds.len() > 1 {
            tail.climbs = false;
            self.climb(tail, &reached, mix, chance, pace);
            return;
        }
        tail.climbs = true;
        let (worth, most) = (&reached.worth, &reached.most);
        let need = need(worth, &self.core.demands());
        let between = (self.bound, self.cost());
        let costs = costs_between(self.core, &counts, need, most, between, pace);
        let many = costs.list.len();
        let Some(&target) = costs.list.get(many >> tail.nearness.min(63)) else {
            if many == 0 && self.best.is_some() {
                self.raise(self.cost());
            }
            return;
        };
        let fills = match least_held(self.core, &counts, need, most, target) {
            Some(least) => list(self.core, worth, &least, pace),
            None => Some(Vec::new()),
        };
        let Some(fills) = fills else {
            tail.nearer(many);
            return;
        };
        let closed = Closed::new(self.core, &fills, |fill| mix.knows(fill), target);
        match closed.run(chance, pace) {
            Answer::Found(draft) => self.offer(draft),
            Answer::Never => self.raise(costs.after(target).unwrap_or(self.cost())),
            Answer::Open => tail.nearer(many),
        }
    }
}

impl Search<'_> {
    /// Asks of one cost after the other, from the bound up, whether sticks for just so much can
    /// hold everything.
    fn climb(
        &mut self,
        tail: &mut Tail,
        reached: &Reached,
        mix: &Mix<'_>,
        chance: &mut Chance,
        pace: &mut Pace<'_>,
    ) {
        let need = need(&reached.worth, &self.core.demands());
        while !self.proven() && !pace.is_over() {
            let between = (self.bound, self.cost());
            let counts = self.core.counts();
            let costs = costs_between(self.core, &counts, need, &reached.most, between, pace);
            let Some(&target) = costs.list.first() else {
                self.raise(self.cost());
                return;
            };
            let Some(choices) = choices(self.core, reached, target, pace) else {
                return;
            };
            let mut open = false;
            for choice in choices {
                if tail.never.contains(&choice) {
                    continue;
                }
                let mut part = pace.slice(pace.left() / 4);
                let given = part.left();
                let answer = hold(self.core, &choice, target, mix, chance, &mut part);
                pace.rejoin(given, &part);
                match answer {
                    Answer::Found(draft) => {
                        self.offer(draft);
                        open = true;
                        break;
                    }
                    Answer::Never => {
                        tail.never.insert(choice);
                    }
                    Answer::Open => open = true,
                }
            }
            if open {
                tail.budget = tail.budget.saturating_mul(2);
                return;
            }
            self.raise(costs.after(target).unwrap_or(self.cost()));
        }
    }
}

/// Sticks of a plan at most for the exact tail, one level of its search each.
const MOST_STICKS: u64 = 600;
/// More steps than any search takes.
const AMPLE: u64 = 1 << 60;

/// How the exact tail goes on.
struct Tail {
    /// The mix that no fill improves any more.
    settled: Option<Reached>,
    /// Steps the next look may take, and the last has taken.
    budget: u64,
    spent: u64,
    /// The target lies this many halvings from the best plan towards the bound.
    nearness: usize,
    /// Whether the next look climbs from the bound instead.
    climbs: bool,
    /// Choices of sticks that cannot hold everything.
    never: BTreeSet<Vec<u64>>,
}

impl Default for Tail {
    fn default() -> Self {
        Self {
            settled: None,
            budget: 20_000_000,
            spent: 0,
            nearness: 1,
            climbs: true,
            never: BTreeSet::new(),
        }
    }
}

impl Tail {
    /// Looks nearer to the bound next time, where fewer fills count; after the nearest again from
    /// the middle, with more steps.
    fn nearer(&mut self, costs: usize) {
        if costs >> self.nearness.min(63) > 0 {
            self.nearness += 1;
        } else {
            self.nearness = 1;
            self.budget = self.budget.saturating_mul(2);
        }
    }
}

#[cfg(test)]
mod tests;
