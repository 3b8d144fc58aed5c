//! One problem's search, which can be left and taken up again.

use super::super::bound;
use super::super::exact::{self, Proof};
use super::super::pattern::{Columns, coarser, most_value};
use super::super::realise::realise;
use super::super::reduce::Origin;
use super::super::tree::Tree;
use super::super::{Block, Draft, Plan, Problem, Reduced};
use super::shortage::{self, Short};
use crate::{Goal, News, Pace, Unwatched, Watch};

/// Steps of the first round, and the most of any.
const FIRST_ROUND: u64 = 1 << 18;
const LONGEST_ROUND: u64 = 1 << 24;
/// A pricing of a large sheet takes many steps and is lost when it is broken off.
const PRICING_TIMES: u64 = 8;
/// The most value is sought anew in every round.
const VALUE_TIMES: u64 = 1 << 10;
/// Part types of the coarser problems, and the steps for each.
const COARSE: [usize; 2] = [60, 150];
const COARSE_STEPS: u64 = 1 << 27;
/// Steps for gathering waste in a plan whose cost stands.
const GATHERING: u64 = 1 << 22;
/// Steps for the first plan.
const AT_ONCE: u64 = 1 << 20;
/// Steps for the first bound.
const FIRST_BOUND: u64 = 1 << 24;

pub(crate) struct Search<'a> {
    problem: &'a Problem,
    reduced: &'a Reduced,
    origin: &'a Origin,
    tree: Tree<'a>,
    /// `None` with [`Goal::Value`].
    exact: Option<exact::Search<'a>>,
    /// The cost at which the exact search said that nothing more would come of it.
    stuck_at: Option<u64>,
    /// Made when it first has its turn, for it is not cheap to make.
    columns: Option<Columns<'a>>,
    columns_done: bool,
    /// How many of the coarser problems have been bounded.
    coarse_done: usize,
    turns: Turns,
    best: Draft,
    /// Cost of the best draft, or its value with [`Goal::Value`].
    objective: u64,
    bound: u64,
    round: u64,
    seed: u64,
    /// What the stock does not reach for: only then `best` is all there is.
    short: Option<Short>,
}

/// Rounds that a way may have to wait at most when it was fruitless: exact, tree, columns.
const LONGEST_WAIT: [u64; 3] = [7, 1, 3];

/// Whose turn it is: who has been fruitless for long has fewer.
#[derive(Clone, Copy, Debug, Default)]
struct Turns {
    number: u64,
    fruitless: [u64; 3],
    next: [u64; 3],
}

impl Turns {
    fn waits(&self, way: usize) -> bool {
        self.next[way] > self.number
    }

    fn note(&mut self, way: usize, fruitful: bool) {
        self.fruitless[way] = if fruitful { 0 } else { self.fruitless[way] + 1 };
        let wait = self.fruitless[way].saturating_sub(1).min(LONGEST_WAIT[way]);
        self.next[way] = self.number + 1 + wait;
    }
}

impl<'a> Search<'a> {
    /// Makes the first plan.
    pub(crate) fn begin(
        problem: &'a Problem,
        reduced: &'a Reduced,
        origin: &'a Origin,
        seed: u64,
    ) -> Self {
        let mut pace = Pace::new(&Unwatched, Some(AT_ONCE));
        let mut tree = Tree::new(reduced, seed);
        let first = tree.first(&mut pace);
        let exact = (reduced.goal != Goal::Value).then(|| exact::Search::new(reduced));
        let bound = if reduced.goal == Goal::Value {
            u64::MAX
        } else {
            0
        };
        let mut search = Self {
            problem,
            reduced,
            origin,
            tree,
            exact,
            stuck_at: None,
            columns: None,
            columns_done: false,
            coarse_done: 0,
            turns: Turns::default(),
            best: Draft::default(),
            objective: u64::MAX,
            bound,
            round: FIRST_ROUND,
            seed,
            short: None,
        };
        match first {
            Some(first) => search.take(first),
            None => search.make_do(seed),
        }
        search
    }

    /// Cuts what the stock reaches for.
    fn make_do(&mut self, seed: u64) {
        let short = shortage::cut_what_can_be(self.problem, self.reduced, self.origin, seed);
        self.best = short.draft.clone();
        self.objective = self.reduced.cost(&self.best);
        self.short = Some(short);
    }

    /// True when no plan can be better, or there is nothing more to try.
    pub(crate) fn is_done(&self) -> bool {
        self.short.is_some() || self.objective == self.bound
    }

    /// How far the plan may be from the best.
    pub(crate) fn gap(&self) -> u64 {
        self.objective.abs_diff(self.bound)
    }

    /// Says what has been reached.
    pub(crate) fn tell(&self, watch: &dyn Watch) {
        watch.news(News {
            problem: &self.problem.name,
            objective: Some(self.objective),
            bound: self.bound,
        });
    }

    /// Gives every way its turn; true when plan or bound have moved.
    pub(crate) fn round(&mut self, pace: &mut Pace<'_>) -> bool {
        let before = (self.objective, self.bound);
        if self.reduced.goal == Goal::Value {
            self.seek_value(pace);
        } else {
            self.seek_cost(pace);
        }
        self.round = (self.round * 2).min(LONGEST_ROUND);
        before != (self.objective, self.bound)
    }

    fn seek_cost(&mut self, pace: &mut Pace<'_>) {
        if self.turns.number == 0 && self.short.is_none() {
            let mut slice = pace.slice(FIRST_BOUND);
            self.raise(bound::quick(self.reduced, &mut slice));
            pace.rejoin(FIRST_BOUND, &slice);
        }
        self.turns.number += 1;
        self.in_turn(0, pace, Self::prove);
        self.in_turn(1, pace, Self::grow);
        self.in_turn(2, pace, Self::price);
    }

    /// Gives one way its slice, unless it has been fruitless and waits.
    fn in_turn(&mut self, way: usize, pace: &mut Pace<'_>, slice: fn(&mut Self, &mut Pace<'_>)) {
        if self.is_done() || self.turns.waits(way) {
            return;
        }
        let before = (self.objective, self.bound);
        slice(self, pace);
        self.turns.note(way, before != (self.objective, self.bound));
    }

    /// A slice for the exact search.
    fn prove(&mut self, pace: &mut Pace<'_>) {
        let Some(exact) = &mut self.exact else {
            return;
        };
        if self.stuck_at == Some(self.objective) {
            return;
        }
        let mut slice = pace.slice(self.round);
        let proof = exact.step(&mut slice, self.objective);
        pace.rejoin(self.round, &slice);
        if let Some(draft) = exact.take_better(self.objective) {
            self.take(draft);
        }
        match proof {
            Proof::Open { bound } => self.raise(bound),
            Proof::Stuck { bound } => {
                self.stuck_at = Some(self.objective);
                self.raise(bound);
            }
            Proof::Optimal { draft } => {
                if let Some(draft) = draft {
                    self.take(draft);
                }
                self.raise(self.objective);
            }
            // There is a plan, so it is not; the plan shows more than the search.
            Proof::Impossible => self.stuck_at = Some(self.objective),
        }
    }

    /// A slice for the tree search.
    fn grow(&mut self, pace: &mut Pace<'_>) {
        let mut slice = pace.slice(self.round);
        while let Some(draft) = self.tree.improve(&mut slice, self.bound) {
            self.take(draft);
            if self.is_done() || slice.is_over() {
                break;
            }
        }
        pace.rejoin(self.round, &slice);
    }

    /// A slice for the column generation.
    fn price(&mut self, pace: &mut Pace<'_>) {
        if self.columns_done {
            return;
        }
        self.price_coarsely(pace);
        let steps = self.round.saturating_mul(PRICING_TIMES);
        let mut slice = pace.slice(steps);
        let mut columns = self.columns.take().unwrap_or_else(|| {
            let mut columns = Columns::new(self.reduced, self.seed);
            columns.offer(&self.best);
            columns
        });
        columns.offer_bound(self.bound);
        let seed = self.seed;
        let mut finish = |rest: &Reduced, pace: &mut Pace<'_>| Tree::new(rest, seed).first(pace);
        while !slice.is_over() && !self.is_done() && !self.columns_done {
            let progress = columns.step(&mut slice, Some(&mut finish));
            self.columns_done = progress.done;
            if let Some(draft) = progress.draft {
                self.take(draft);
            }
            self.raise(progress.bound);
        }
        self.columns = Some(columns);
        pace.rejoin(steps, &slice);
    }

    /// Many part types: a bound from fewer, rounded down, each count once.
    fn price_coarsely(&mut self, pace: &mut Pace<'_>) {
        let Some(&kinds) = COARSE.get(self.coarse_done) else {
            return;
        };
        self.coarse_done += 1;
        if self.reduced.parts.len() < kinds * 2 {
            return;
        }
        if let Some(mut coarse) = coarser(self.reduced, kinds) {
            // Beside a smaller part there may be a strip too narrow to be cut: not regarded.
            coarse.least_strip = 0;
            let mut slice = pace.slice(COARSE_STEPS);
            let bound = Columns::new(&coarse, self.seed).bound_alone(&mut slice);
            pace.rejoin(COARSE_STEPS, &slice);
            self.raise(bound);
        }
    }

    /// A slice for the tree search, then a long one for the patterns, which start anew each time.
    fn seek_value(&mut self, pace: &mut Pace<'_>) {
        self.grow(pace);
        if self.is_done() {
            return;
        }
        let steps = self.round.saturating_mul(VALUE_TIMES);
        let mut slice = pace.slice(steps);
        let start = Some(self.best.clone());
        let (draft, most, _) = most_value(self.reduced, &mut slice, start);
        pace.rejoin(steps, &slice);
        if let Some(draft) = draft {
            self.take(draft);
        }
        self.bound = self.bound.min(most.max(self.objective));
    }

    /// Takes a plan over where it is better, and tells the others of it.
    fn take(&mut self, mut draft: Draft) {
        draft
            .sheets
            .retain(|sheet| sheet.copies > 0 && holds_a_part(&sheet.block));
        let (objective, better) = if self.reduced.goal == Goal::Value {
            let value = self.reduced.value(&draft);
            (value, self.objective == u64::MAX || value > self.objective)
        } else {
            let cost = self.reduced.cost(&draft);
            (cost, cost < self.objective)
        };
        if !better {
            return;
        }
        self.objective = objective;
        self.tree.offer(&draft);
        if let Some(columns) = &mut self.columns {
            columns.offer(&draft);
        }
        self.best = draft;
    }

    /// A bound once proven is never lowered again. One above a plan's cost would be refuted by that
    /// plan: a fault of ours, which must not pass for a proof.
    fn raise(&mut self, bound: u64) {
        debug_assert!(
            bound <= self.objective,
            "{}: bound {bound}, but there is a plan for {}",
            self.problem.name,
            self.objective
        );
        if bound <= self.objective {
            self.bound = self.bound.max(bound);
        }
    }

    /// The best plan so far, its waste gathered as far as the watch allows.
    pub(crate) fn plan(mut self, watch: &dyn Watch) -> Plan {
        let mut pace = Pace::new(watch, Some(GATHERING));
        if self.short.is_none() && self.reduced.goal != Goal::Value {
            self.best = self.tree.gather(&mut pace, self.best);
            // Gathering waste can empty a sheet.
            self.best.sheets.retain(|sheet| holds_a_part(&sheet.block));
            self.objective = self.reduced.cost(&self.best);
        }
        let layouts = realise(self.problem, self.reduced, self.origin, &self.best);
        Plan {
            layouts,
            objective: self.objective,
            bound: self.bound,
            uncut: self.short.map(|short| short.uncut).unwrap_or_default(),
        }
    }
}

fn holds_a_part(block: &Block) -> bool {
    let mut held = false;
    block.each_part(&mut |_| held = true);
    held
}
