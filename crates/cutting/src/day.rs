//! A day: many problems that share no material, solved on all cores.
//!
//! Every problem first gets a little, so that there is a full plan at once; then each turn gives
//! the problems that are not proven yet four times as much as the turn before, the one with the
//! widest gap first. What a problem gets does not depend on how many threads there are.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};

use crate::sheets::reduce::{Origin, reduce};
use crate::sheets::{Reduced, Search};
use crate::{Broken, Fault, OtherKind, Pace, Plan, Problem, Trying, Watch, lengths, sheets};

/// A plan, or what stands in its way.
pub type Planned = Result<Plan, Vec<Fault>>;

/// Why there are no plans that hold for all problems.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unsolved {
    /// Problems that can't be planned as they stand: which, counted from 0, and why.
    Faults(Vec<(usize, Vec<Fault>)>),
    /// A plan of the other kind than its problem: a fault of the program.
    OtherKind(OtherKind),
    /// A plan that breaks a law: a fault of the program.
    Broken {
        /// The problem's name.
        problem: String,
        /// Which law.
        law: Box<Broken>,
    },
}

impl std::fmt::Display for Unsolved {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Faults(all) => {
                let faults = all.iter().flat_map(|(_, faults)| faults);
                let said: Vec<String> = faults.map(ToString::to_string).collect();
                f.write_str(&said.join("; "))
            }
            Self::OtherKind(other) => other.fmt(f),
            Self::Broken { problem, law } => {
                write!(f, "the plan for {problem} does not hold: {law}")
            }
        }
    }
}

impl std::error::Error for Unsolved {}

/// Steps of the first turn.
const FIRST_TURN: u64 = 1 << 19;
/// Each turn gives so many times the steps of the turn before.
const TURN_GROWTH: u64 = 4;
/// Steps beyond which a turn does not grow.
const LONGEST_TURN: u64 = 1 << 40;
/// Sticks that are still open after a turn of so many steps (hours) would say the same again.
const ENOUGH_FOR_STICKS: u64 = LONGEST_TURN;

/// The best plans for all problems, in their order, each held to all laws.
///
/// Shape:  as [`solve`].
/// Units:  each problem's own.
/// Errors: all faults of all problems; a plan that does not hold.
pub fn checked(
    problems: &[Problem],
    trying: Trying,
    threads: usize,
    watch: &dyn Watch,
) -> Result<Vec<Plan>, Unsolved> {
    hold(problems, solve(problems, trying, threads, watch))
}

/// Gathers the faults, then holds every plan to its problem's laws.
fn hold(problems: &[Problem], found: Vec<Planned>) -> Result<Vec<Plan>, Unsolved> {
    let (mut plans, mut faults) = (Vec::with_capacity(found.len()), Vec::new());
    for (place, found) in found.into_iter().enumerate() {
        match found {
            Ok(plan) => plans.push(plan),
            Err(these) => faults.push((place, these)),
        }
    }
    if !faults.is_empty() {
        return Err(Unsolved::Faults(faults));
    }
    for (problem, plan) in problems.iter().zip(&plans) {
        let pair = problem.with(plan).map_err(Unsolved::OtherKind)?;
        pair.check().map_err(|law| Unsolved::Broken {
            problem: problem.name().to_owned(),
            law: Box::new(law),
        })?;
    }
    Ok(plans)
}

/// The best plans for all problems; in their order.
///
/// Shape:  `trying.effort` is what each problem may spend; ends when all are proven, when that is
///         spent or when the watch says enough. A first plan is always made for each.
/// Units:  each problem's own.
/// Errors: per problem, all its faults; the others are planned all the same.
pub fn solve(
    problems: &[Problem],
    trying: Trying,
    threads: usize,
    watch: &dyn Watch,
) -> Vec<Planned> {
    let ready: Vec<Ready<'_>> = problems.iter().map(Ready::of).collect();
    let works: Vec<Mutex<Work<'_>>> = ready
        .iter()
        .map(|ready| Mutex::new(Work::new(ready, trying, watch)))
        .collect();
    let mut steps = FIRST_TURN;
    loop {
        let order = unfinished(&works);
        if order.is_empty() {
            break;
        }
        share(threads, &order, |number| {
            let mut work = works[number].lock().unwrap_or_else(PoisonError::into_inner);
            work.go_on(steps, watch);
            if work.is_done() {
                // At once, so that its memory is free for the others.
                work.finish(watch);
            }
        });
        if watch.enough() {
            break;
        }
        steps = steps.saturating_mul(TURN_GROWTH).min(LONGEST_TURN);
    }
    let all: Vec<usize> = (0..works.len()).collect();
    share(threads, &all, |number| {
        let mut work = works[number].lock().unwrap_or_else(PoisonError::into_inner);
        work.finish(watch);
    });
    works
        .into_iter()
        .map(|work| {
            let work = work.into_inner().unwrap_or_else(PoisonError::into_inner);
            work.planned.expect("every problem has been finished")
        })
        .collect()
}

/// Those that may still become better, the widest gap first; all of them before the first turn.
fn unfinished(works: &[Mutex<Work<'_>>]) -> Vec<usize> {
    let mut open: Vec<(u64, usize)> = Vec::new();
    for (number, work) in works.iter().enumerate() {
        let work = work.lock().unwrap_or_else(PoisonError::into_inner);
        if !work.is_done() {
            open.push((work.gap(), number));
        }
    }
    open.sort_by_key(|&(gap, number)| (std::cmp::Reverse(gap), number));
    open.into_iter().map(|(_, number)| number).collect()
}

/// Does something for each number, on so many threads.
fn share(threads: usize, numbers: &[usize], task: impl Fn(usize) + Sync) {
    let next = AtomicUsize::new(0);
    let run = || {
        while let Some(&number) = numbers.get(next.fetch_add(1, Ordering::Relaxed)) {
            task(number);
        }
    };
    let threads = threads.clamp(1, numbers.len().max(1));
    if threads == 1 {
        return run();
    }
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(run);
        }
    });
}

/// A problem made ready.
enum Ready<'p> {
    Lengths(&'p lengths::Problem),
    Sheets(&'p sheets::Problem, Box<(Reduced, Origin)>),
    Refused(Vec<Fault>),
}

impl<'p> Ready<'p> {
    fn of(problem: &'p Problem) -> Self {
        match problem {
            Problem::Lengths(problem) => Self::Lengths(problem),
            Problem::Sheets(problem) => match reduce(problem) {
                Ok(reduced) => Self::Sheets(problem, Box::new(reduced)),
                Err(faults) => Self::Refused(faults),
            },
        }
    }
}

/// A problem being worked on.
struct Work<'a> {
    ready: &'a Ready<'a>,
    trying: Trying,
    left: u64,
    /// Steps of the longest turn so far.
    given: u64,
    pace: Pace<'a>,
    search: Option<Search<'a>>,
    lengths: Option<Result<lengths::Plan, Vec<Fault>>>,
    planned: Option<Planned>,
}

impl<'a> Work<'a> {
    fn new(ready: &'a Ready<'a>, trying: Trying, watch: &'a dyn Watch) -> Self {
        Self {
            ready,
            trying,
            left: trying.effort.unwrap_or(u64::MAX),
            given: 0,
            pace: Pace::new(watch, trying.effort),
            search: None,
            lengths: None,
            planned: None,
        }
    }

    fn is_done(&self) -> bool {
        if self.planned.is_some() {
            return true;
        }
        match (self.ready, &self.search, &self.lengths) {
            (Ready::Refused(_), ..) | (_, _, Some(Err(_))) => true,
            (Ready::Sheets(..), Some(search), _) => search.is_done() || self.pace.is_over(),
            (Ready::Lengths(_), _, Some(Ok(plan))) => {
                plan.proven() || self.left == 0 || self.given >= ENOUGH_FOR_STICKS
            }
            _ => false,
        }
    }

    fn gap(&self) -> u64 {
        match (&self.search, &self.lengths) {
            (Some(search), _) => search.gap(),
            (_, Some(Ok(plan))) => plan.objective.abs_diff(plan.bound),
            _ => 0,
        }
    }

    fn go_on(&mut self, steps: u64, watch: &dyn Watch) {
        match self.ready {
            Ready::Refused(_) => {}
            Ready::Lengths(problem) => self.again(problem, steps, watch),
            Ready::Sheets(problem, reduced) => {
                if self.search.is_none() {
                    self.begin(problem, reduced, watch);
                }
                self.further(steps, watch);
            }
        }
    }

    fn begin(
        &mut self,
        problem: &'a sheets::Problem,
        reduced: &'a (Reduced, Origin),
        watch: &dyn Watch,
    ) {
        let search = Search::begin(problem, &reduced.0, &reduced.1, self.trying.seed, watch);
        search.tell(watch);
        self.search = Some(search);
    }

    /// Sheets: the same search goes on.
    fn further(&mut self, steps: u64, watch: &dyn Watch) {
        let Some(search) = &mut self.search else {
            return;
        };
        let mut visit = self.pace.slice(steps);
        while !search.is_done() && !visit.is_over() {
            if search.round(&mut visit) {
                search.tell(watch);
            }
        }
        self.pace.rejoin(steps, &visit);
    }

    /// Sticks: anew with more steps; the better of two plans and of two bounds stand.
    fn again(&mut self, problem: &lengths::Problem, steps: u64, watch: &dyn Watch) {
        let steps = steps.min(self.left);
        self.given = self.given.max(steps);
        if self.left != u64::MAX {
            self.left -= steps;
        }
        let trying = Trying {
            effort: Some(steps),
            ..self.trying
        };
        let found = lengths::solve(problem, trying, watch);
        self.lengths = Some(match (self.lengths.take(), found) {
            (Some(Ok(old)), Ok(new)) => Ok(better(problem, old, new)),
            (_, found) => found,
        });
    }

    fn finish(&mut self, watch: &dyn Watch) {
        if self.planned.is_some() {
            return;
        }
        self.planned = match self.ready {
            Ready::Refused(faults) => Some(Err(faults.clone())),
            Ready::Lengths(problem) => {
                if self.lengths.is_none() {
                    self.again(problem, FIRST_TURN, watch);
                }
                self.lengths.take().map(|plan| plan.map(Plan::Lengths))
            }
            Ready::Sheets(problem, reduced) => {
                if self.search.is_none() {
                    self.begin(problem, reduced, watch);
                }
                let search = self.search.take();
                search.map(|search| Ok(Plan::Sheets(search.plan(watch))))
            }
        };
    }
}

/// The better plan, with the better bound.
fn better(problem: &lengths::Problem, old: lengths::Plan, new: lengths::Plan) -> lengths::Plan {
    let value = problem.goal == crate::Goal::Value;
    let bound = if value {
        old.bound.min(new.bound)
    } else {
        old.bound.max(new.bound)
    };
    let left = |plan: &lengths::Plan| -> u64 { plan.uncut.iter().map(|&(_, count)| count).sum() };
    let fewer_left = (left(&new), new.objective) <= (left(&old), old.objective);
    let mut plan = if value && new.objective >= old.objective || !value && fewer_left {
        new
    } else {
        old
    };
    plan.bound = bound;
    plan
}

#[cfg(test)]
mod tests;
