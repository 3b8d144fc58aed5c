//! Lengths: pieces out of sticks.
//!
//! Objective, in this order: the [`Goal`]; then, at an equal goal, the longest single remnant;
//! then the fewest different layouts.

use std::collections::BTreeMap;

mod bound;
mod check;
mod closed;
mod columns;
mod core;
mod dive;
mod flaws;
mod gather;
mod pricing;
mod ready;
mod realise;
mod reduce;
mod runs;
mod search;
mod short;
mod stairs;
mod start;
mod tiny;
mod value;

pub use check::check;

use crate::chance::Chance;
use crate::pace::Pace;
use crate::{Fault, Goal, News, Trying, Watch};
use reduce::{Want, kinds, wants};
use search::Search;
use short::{Choice, Taken};

/// A problem: which pieces, from which sticks.
///
/// Shape:  every number a count of the caller's unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What it is called in progress and faults.
    pub name: String,
    /// What to strive for first.
    pub goal: Goal,
    /// Length lost between two neighbouring pieces.
    pub kerf: u64,
    /// What may be cut up.
    pub stock: Vec<Stick>,
    /// What is wanted.
    pub pieces: Vec<Piece>,
}

/// One kind of stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stick {
    /// Unique among the stock.
    pub name: String,
    /// From end to end.
    pub length: u64,
    /// What one costs.
    pub cost: u64,
    /// How many are held; `None`: as many as needed.
    pub count: Option<u64>,
    /// Left over from earlier work.
    pub remnant: bool,
    /// Unusable ends, the kerf of the trimming cut included: at the start, at the end.
    pub trim: (u64, u64),
    /// Stretches from the start of the stick that no piece may touch: from, to.
    pub flaws: Vec<(u64, u64)>,
    /// Sticks of one run match in colour and profile; `None`: a run of its own for every stick
    /// held, one common run for what is bought.
    pub run: Option<String>,
}

/// One kind of piece.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Unique among the pieces.
    pub name: String,
    /// From end to end, mitre waste included.
    pub length: u64,
    /// How many; `None`: as many as one likes, with [`Goal::Value`] only.
    pub count: Option<u64>,
    /// What one is worth, with [`Goal::Value`].
    pub value: u64,
    /// Pieces of one group belong together.
    pub together: Option<Together>,
    /// Higher is cut first where the stock does not reach for all.
    pub priority: u32,
    /// Earlier is cut first: any count of days.
    pub due: Option<u32>,
}

/// Pieces that must match.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Together {
    /// All pieces of this group from one stick, or none of them.
    Stick(String),
    /// All pieces of this group from sticks of one run.
    Run(String),
}

/// A piece where it lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Placed {
    /// Which, counted from 0 in the problem's pieces.
    pub piece: usize,
    /// From the start of the stick.
    pub at: u64,
}

/// One stick cut up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// Which stick, counted from 0 in the problem's stock.
    pub stock: usize,
    /// How many sticks are cut the same way.
    pub copies: u64,
    /// From the start of the stick, in order.
    pub pieces: Vec<Placed>,
    /// Stretches left whole: from, to.
    pub remnants: Vec<(u64, u64)>,
}

/// A whole plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Sticks in the order they are best cut: earliest due first.
    pub layouts: Vec<Layout>,
    /// The cost, count or value reached, by the problem's goal.
    pub objective: u64,
    /// What no plan for all pieces can go below (with [`Goal::Value`]: no plan above).
    pub bound: u64,
    /// Pieces for which the stock was not found to reach: which, and how many. That it cannot
    /// reach is not said; and of a plan that leaves pieces the bound claims nothing.
    pub uncut: Vec<(usize, u64)>,
}

impl Plan {
    /// True when all pieces are cut and no better objective is possible.
    pub fn proven(&self) -> bool {
        self.objective == self.bound && self.uncut.is_empty()
    }
}

/// Plans which piece comes from which stick.
///
/// Shape:  the plan holds every piece once, or names it under `uncut`. However short the effort,
///         there is a plan.
/// Units:  those of the problem.
/// Errors: every fault of the problem at once; nothing is planned then.
pub fn solve(problem: &Problem, trying: Trying, watch: &dyn Watch) -> Result<Plan, Vec<Fault>> {
    let faults = ready::faults(problem);
    if !faults.is_empty() {
        return Err(faults);
    }
    let mut pace = Pace::new(watch, trying.effort);
    let wants = wants(problem);
    let kinds = kinds(problem);
    if problem.goal == Goal::Value {
        let plan = value::best(problem, &wants, &kinds, &mut pace);
        tell(problem, watch, Some(plan.objective), plan.bound);
        return Ok(plan);
    }
    let choice = Choice {
        problem,
        wants: &wants,
        kinds: &kinds,
        runs: None,
    };
    let mut chance = Chance::new(trying.seed);
    Ok(least_cost(&choice, watch, &mut chance, &mut pace))
}

fn tell(problem: &Problem, watch: &dyn Watch, objective: Option<u64>, bound: u64) {
    watch.news(News {
        problem: &problem.name,
        objective,
        bound,
    });
}

fn least_cost(
    choice: &Choice<'_>,
    watch: &dyn Watch,
    chance: &mut Chance,
    pace: &mut Pace<'_>,
) -> Plan {
    let matter = runs::matter(choice.wants, choice);
    let shared = matter.then(|| runs::share(choice, pace));
    let choice = Choice {
        runs: shared.as_ref().map(|shared| &shared.runs[..]),
        ..*choice
    };
    let Taken { take, draft } = choice.take(chance, pace);
    let reduced = choice.reduced(&take);
    let whole = choice
        .wants
        .iter()
        .zip(&take)
        .all(|(want, &taken)| want.count == taken);
    let exact = shared.as_ref().and_then(|shared| shared.proven);
    // Without runs to choose, the search proves its own bound; else only the bound for pieces
    // from anywhere, or all ways tried, prove anything.
    let floor =
        (matter && whole).then(|| from_anywhere(&choice, &take, pace).max(exact.unwrap_or(0)));
    let told = |objective: Option<u64>, bound: u64| {
        let claimed = floor.unwrap_or(bound);
        if whole { claim(claimed, objective) } else { 0 }
    };
    let hear = |objective: Option<u64>, bound: u64| {
        tell(choice.problem, watch, objective, told(objective, bound));
    };
    let mut search = Search::new(&reduced.core, &hear);
    if let Some(draft) = draft {
        search.offer(draft);
    }
    search.run(chance, pace);
    let bound = search.bound;
    let Some(draft) = search.best.take() else {
        debug_assert!(false, "stock without a count always holds all");
        return nothing_cut(&choice);
    };
    Plan {
        layouts: realise::layouts(choice.problem, choice.wants, &reduced, &draft),
        objective: draft.cost,
        bound: told(Some(draft.cost), bound),
        uncut: uncut(choice.wants, &take),
    }
}

/// The bound for pieces from anywhere, whatever runs they should be of.
fn from_anywhere(choice: &Choice<'_>, take: &[u64], pace: &mut Pace<'_>) -> u64 {
    let free = Choice {
        runs: None,
        ..*choice
    };
    let anywhere = free.reduced(take);
    let mut search = Search::new(&anywhere.core, &|_, _| {});
    search.bound_only(pace);
    search.bound
}

/// A bound as it can be told beside a plan. One above the plan's cost is refuted by the plan: a
/// fault of ours, which must not pass for a proof.
fn claim(bound: u64, objective: Option<u64>) -> u64 {
    let refuted = objective.is_some_and(|objective| bound > objective);
    debug_assert!(
        !refuted,
        "bound {bound}, but there is a plan for {objective:?}"
    );
    if refuted { 0 } else { bound }
}

fn nothing_cut(choice: &Choice<'_>) -> Plan {
    Plan {
        layouts: Vec::new(),
        objective: 0,
        bound: 0,
        uncut: uncut(choice.wants, &vec![0; choice.wants.len()]),
    }
}

/// Pieces not taken, and how many.
fn uncut(wants: &[Want], take: &[u64]) -> Vec<(usize, u64)> {
    let mut uncut: BTreeMap<usize, u64> = BTreeMap::new();
    for (want, &taken) in wants.iter().zip(take) {
        for &piece in &want.pieces {
            if taken < want.count {
                *uncut.entry(piece).or_default() += want.count - taken;
            }
        }
    }
    uncut.into_iter().collect()
}

#[cfg(test)]
mod tests;
