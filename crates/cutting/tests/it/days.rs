//! Laws of a whole day: many problems, several threads, ended early.

use std::sync::atomic::{AtomicU64, Ordering};

use cutting::day::solve;
use cutting::{Fault, Halt, News, Plan, Problem, Watch, lengths, sheets};

use crate::draw::{leg, sheets_of, steps, stick, sticks_of};
use crate::shop::day;

/// Says enough once it has been asked so often.
struct AfterAsking {
    left: AtomicU64,
}

impl Watch for AfterAsking {
    fn enough(&self) -> bool {
        let before = self
            .left
            .fetch_update(Ordering::Relaxed, Ordering::Relaxed, |left| {
                Some(left.saturating_sub(1))
            });
        before == Ok(0)
    }
}

/// Counts what it hears, and that bounds never pass objectives.
#[derive(Default)]
struct Hears {
    news: AtomicU64,
    crossed: AtomicU64,
}

impl Watch for Hears {
    fn news(&self, news: News<'_>) {
        self.news.fetch_add(1, Ordering::Relaxed);
        if news
            .objective
            .is_some_and(|objective| news.bound > objective)
        {
            self.crossed.fetch_add(1, Ordering::Relaxed);
        }
    }
}

/// A plan for every problem, each sound and whole: all stock of a day can be bought.
fn all_hold(problems: &[Problem], plans: &[Result<Plan, Vec<Fault>>]) {
    assert_eq!(problems.len(), plans.len());
    for (problem, plan) in problems.iter().zip(plans) {
        let plan = plan.as_ref().expect("nothing is wrong with the problem");
        match (problem, plan) {
            (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
            (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
            _ => panic!("{}: a plan of the other kind", problem.name()),
        }
        .unwrap_or_else(|broken| panic!("{}: {broken}", problem.name()));
        assert!(plan.uncut().is_empty(), "{}", problem.name());
        assert!(plan.bound() <= plan.objective(), "{}", problem.name());
    }
}

#[test]
fn as_many_threads_as_you_like_give_the_same_plans() {
    let problems = day(20, 5);
    assert!(problems.len() > 20, "{} problems", problems.len());
    let hears = Hears::default();
    let alone = solve(&problems, steps(1_500_000), 1, &hears);
    all_hold(&problems, &alone);
    assert!(hears.news.into_inner() >= problems.len() as u64);
    assert_eq!(hears.crossed.into_inner(), 0);
    for threads in [2, 4] {
        let several = solve(&problems, steps(1_500_000), threads, &cutting::Unwatched);
        assert!(alone == several, "{threads} threads plan otherwise");
    }
}

#[test]
fn a_day_that_is_enough_at_once_is_planned_whole() {
    let problems = day(60, 6);
    let halt = Halt::default();
    halt.halt();
    all_hold(&problems, &solve(&problems, steps(u64::MAX), 2, &halt));
}

#[test]
fn a_day_cut_short_is_planned_whole() {
    let problems = day(40, 7);
    for asked in [1, 10, 200] {
        let watch = AfterAsking {
            left: AtomicU64::new(asked),
        };
        let trying = cutting::Trying::default();
        all_hold(&problems, &solve(&problems, trying, 2, &watch));
    }
}

#[test]
fn more_effort_never_costs_more() {
    let problems = day(20, 8);
    let mut before: Option<Vec<Result<Plan, Vec<Fault>>>> = None;
    for effort in [1, 100_000, 1_000_000, 6_000_000] {
        let plans = solve(&problems, steps(effort), 2, &cutting::Unwatched);
        all_hold(&problems, &plans);
        for (old, new) in before.iter().flatten().zip(&plans) {
            let (Ok(old), Ok(new)) = (old, new) else {
                continue;
            };
            assert!(new.objective() <= old.objective(), "{effort}: {new:?}");
            assert!(new.bound() >= old.bound(), "{effort}: {new:?}");
        }
        before = Some(plans);
    }
}

#[test]
fn one_fault_does_not_keep_the_others_from_a_plan() {
    let mut problems = day(5, 9);
    let sound = problems.len();
    problems.push(Problem::Sheets(sheets_of(Vec::new(), Vec::new())));
    let long = sticks_of(vec![stick("stick", 10, 1)], vec![leg("leg", 11, 1)]);
    problems.push(Problem::Lengths(long));
    let plans = solve(&problems, steps(10_000), 2, &cutting::Unwatched);
    all_hold(&problems[..sound], &plans[..sound]);
    for refused in &plans[sound..] {
        let faults = refused.as_ref().expect_err("it has faults");
        assert!(!faults.is_empty());
    }
    assert!(solve(&[], steps(10), 4, &cutting::Unwatched).is_empty());
}
