//! One problem's search, which can be left and taken up again.

use super::super::bound;
use super::super::exact::{self, Proof};
use super::super::pattern::{Columns, coarser, most_value};
use super::super::realise::realise;
use super::super::reduce::Origin;
use super::super::tree::Tree;
use super::super::{Block, Draft, Plan, Problem, Reduced};
use super::shortage;
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
/// Steps for what can be cut where no first plan takes everything.
const MAKING_DO: u64 = 1 << 26;
/// Rounds in which a whole plan is still looked for after that.
const DOUBTS: u64 = 12;
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
    /// What is left while no plan for everything has been found: `best` then holds the rest, and
    /// `objective` is beyond any.
    short: Option<Vec<(usize, u64)>>,
}

/// The ways: the exact search, the tree search, columns.
const PROVE: usize = 0;
const GROW: usize = 1;
const PRICE: usize = 2;

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

    fn note(&mut self, way: usize, fruitful: bool, longest: u64) {
        self.fruitless[way] = if fruitful { 0 } else { self.fruitless[way] + 1 };
        let wait = self.fruitless[way].saturating_sub(1).min(longest);
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
        watch: &dyn Watch,
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
            None => search.make_do(watch),
        }
        search
    }

    /// Cuts what can be cut, as far as that is found.
    fn make_do(&mut self, watch: &dyn Watch) {
        let mut pace = Pace::new(watch, Some(MAKING_DO));
        let (problem, reduced, origin) = (self.problem, self.reduced, self.origin);
        let short = shortage::cut_what_can_be(problem, reduced, origin, self.seed, &mut pace);
        self.best = short.draft;
        self.short = Some(short.uncut);
    }

    /// True when no plan can be better, or nothing better is to be expected.
    pub(crate) fn is_done(&self) -> bool {
        if self.short.is_some() {
            return self.turns.number >= DOUBTS;
        }
        self.objective == self.bound
    }

    /// The cost or value reached: of what is cut, where not everything is.
    fn reached(&self) -> u64 {
        if self.short.is_some() {
            objective(self.reduced, &self.best)
        } else {
            self.objective
        }
    }

    /// The bound holds for plans with every piece; of others nothing is claimed.
    fn told_bound(&self) -> u64 {
        if self.short.is_some() { 0 } else { self.bound }
    }

    /// How far the plan may be from the best.
    pub(crate) fn gap(&self) -> u64 {
        self.reached().abs_diff(self.told_bound())
    }

    /// Says what has been reached.
    pub(crate) fn tell(&self, watch: &dyn Watch) {
        watch.news(News {
            problem: &self.problem.name,
            objective: Some(self.reached()),
            bound: self.told_bound(),
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
        self.in_turn(PROVE, pace, Self::prove);
        self.in_turn(GROW, pace, Self::grow);
        if self.short.is_none() {
            self.in_turn(PRICE, pace, Self::price);
        }
    }

    /// Gives one way its slice, unless it has been fruitless and waits.
    fn in_turn(&mut self, way: usize, pace: &mut Pace<'_>, slice: fn(&mut Self, &mut Pace<'_>)) {
        if self.is_done() || self.turns.waits(way) {
            return;
        }
        let before = (self.objective, self.bound);
        slice(self, pace);
        // Pricing moves neither plan nor bound for long, and is not fruitless for that.
        let under_way = way == PRICE && self.columns.as_ref().is_some_and(Columns::is_generating);
        let longest = if under_way { 1 } else { LONGEST_WAIT[way] };
        let moved = before != (self.objective, self.bound);
        self.turns.note(way, moved, longest);
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
            Proof::Impossible => {
                debug_assert!(self.short.is_some(), "a plan refutes that there is none");
                self.turns.number = self.turns.number.max(DOUBTS);
            }
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
        self.lower(most);
    }

    /// Takes a plan over where it is better, and tells the others of it.
    fn take(&mut self, mut draft: Draft) {
        draft
            .sheets
            .retain(|sheet| sheet.copies > 0 && holds_a_part(&sheet.block));
        let objective = objective(self.reduced, &draft);
        let better = if self.reduced.goal == Goal::Value {
            self.objective == u64::MAX || objective > self.objective
        } else {
            objective < self.objective
        };
        if !better {
            return;
        }
        self.objective = objective;
        self.short = None;
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

    /// The same of the most value: one below a value reached would be refuted by it.
    fn lower(&mut self, most: u64) {
        debug_assert!(
            most >= self.objective,
            "{}: at most {most}, but there is a plan worth {}",
            self.problem.name,
            self.objective
        );
        if most >= self.objective {
            self.bound = self.bound.min(most);
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
            objective: self.reached(),
            bound: self.told_bound(),
            uncut: self.short.unwrap_or_default(),
        }
    }
}

fn objective(reduced: &Reduced, draft: &Draft) -> u64 {
    match reduced.goal {
        Goal::Value => reduced.value(draft),
        _ => reduced.cost(draft),
    }
}

fn holds_a_part(block: &Block) -> bool {
    let mut held = false;
    block.each_part(&mut |_| held = true);
    held
}
