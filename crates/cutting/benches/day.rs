//! Days of a shop, from 20 orders to 10 000, and the first plan of one material.
//!
//! `cargo bench -p cutting` prints each against its promise. Run as a test it does nothing.
#![allow(clippy::print_stdout, reason = "a bench prints what it measured")]

#[path = "day/shop.rs"]
mod shop;

use std::time::{Duration, Instant};

use cutting::day::solve;
use cutting::{Halt, Plan, Problem, Trying, Unwatched, Watch};
use shop::day;

/// How often a short thing is done; the median counts.
const RUNS: usize = 11;
const THREADS: usize = 2;
/// A first plan for the problem of one day that takes longest.
const FIRST_PLAN: Duration = Duration::from_millis(50);
/// What a thousand orders may take, and how far from best they may then be.
const DAY: Duration = Duration::from_secs(5);
const GAP_PERCENT: f64 = 2.0;

/// Says enough at a moment.
struct Until(Instant);

impl Watch for Until {
    fn enough(&self) -> bool {
        Instant::now() >= self.0
    }
}

fn main() {
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    first_plans();
    whole_days();
    improving();
    same_again();
}

/// The first plan of each problem of a day of 100 orders, alone.
fn first_plans() {
    let enough = Halt::default();
    enough.halt();
    let mut slowest = (Duration::ZERO, "");
    let problems = day(100, 1);
    let mut all: Vec<Duration> = Vec::new();
    for problem in &problems {
        let one = std::slice::from_ref(problem);
        let mut times: Vec<Duration> = (0..RUNS)
            .map(|_| timed(|| solve(one, Trying::default(), 1, &enough)).0)
            .collect();
        times.sort_unstable();
        let median = times[RUNS / 2];
        all.push(median);
        slowest = slowest.max((median, problem.name()));
    }
    all.sort_unstable();
    println!(
        "first plan, 100 orders, {} problems: median {:.2} ms; the slowest, {}, {:.1} ms, {:.2} of the {} ms promised",
        problems.len(),
        ms(all[all.len() / 2]),
        slowest.1,
        ms(slowest.0),
        slowest.0.as_secs_f64() / FIRST_PLAN.as_secs_f64(),
        FIRST_PLAN.as_millis()
    );
}

/// A whole day planned at once, and what one order of it takes.
fn whole_days() {
    let enough = Halt::default();
    enough.halt();
    let mut smallest: Option<f64> = None;
    for orders in [20_u32, 100, 1000, 10_000] {
        let problems = day(u64::from(orders), 1);
        let (time, plans) = timed(|| solve(&problems, Trying::default(), THREADS, &enough));
        let each = ms(time) / f64::from(orders);
        println!(
            "{orders} orders, {} problems: all planned in {:.0} ms, {each:.3} ms an order, {:.2} of what one of 20 takes; gap {:.2} %",
            problems.len(),
            ms(time),
            each / *smallest.get_or_insert(each),
            gap_percent(&plans)
        );
    }
}

/// A day while one watches.
fn improving() {
    for (orders, limit) in [(100, DAY), (1000, DAY), (10_000, 2 * DAY)] {
        let problems = day(orders, 1);
        let until = Until(Instant::now() + limit);
        let (time, plans) = timed(|| solve(&problems, Trying::default(), THREADS, &until));
        let gap = gap_percent(&plans);
        println!(
            "{orders} orders, {:.1} s: gap {gap:.2} %, {:.2} of the {GAP_PERCENT} % promised for 1000 at 5 s; {} of {} proven",
            time.as_secs_f64(),
            gap / GAP_PERCENT,
            plans.iter().filter(|plan| plan.proven()).count(),
            problems.len()
        );
        for (kind, plans) in by_kind(&problems, &plans) {
            println!("    {kind}: gap {:.2} %", gap_percent(plans));
        }
    }
}

/// The same steps on one thread and on two: the same plans, in how much of the time.
fn same_again() {
    let problems = day(100, 2);
    let trying = Trying {
        effort: Some(20_000_000),
        ..Trying::default()
    };
    let (alone, plans) = timed(|| solve(&problems, trying, 1, &Unwatched));
    let (both, again) = timed(|| solve(&problems, trying, THREADS, &Unwatched));
    assert!(plans == again, "two threads plan otherwise than one");
    println!(
        "100 orders, 20 million steps each: {:.1} s on one thread, {:.2} of that on {THREADS}",
        alone.as_secs_f64(),
        both.as_secs_f64() / alone.as_secs_f64()
    );
}

/// How long it takes; every problem of a day has a plan that cuts all pieces.
fn timed<E: std::fmt::Debug>(plan: impl Fn() -> Vec<Result<Plan, E>>) -> (Duration, Vec<Plan>) {
    let began = Instant::now();
    let plans = plan();
    let time = began.elapsed();
    let plans = plans.into_iter().map(|plan| plan.expect("no fault"));
    let plans: Vec<Plan> = plans.collect();
    assert!(plans.iter().all(|plan| plan.uncut().is_empty()));
    (time, plans)
}

fn by_kind<'p>(problems: &[Problem], plans: &'p [Plan]) -> Vec<(String, &'p [Plan])> {
    let kind = |problem: &Problem| problem.name().split(' ').next().unwrap_or("").to_owned();
    let mut kinds = Vec::new();
    let mut from = 0;
    for part in problems.chunk_by(|one, next| kind(one) == kind(next)) {
        kinds.push((kind(&part[0]), &plans[from..from + part.len()]));
        from += part.len();
    }
    kinds
}

/// What all plans cost beyond their bounds, as a part of the bounds.
#[allow(
    clippy::cast_precision_loss,
    reason = "percents of sums far below 2^52"
)]
fn gap_percent(plans: &[Plan]) -> f64 {
    let cost: u64 = plans.iter().map(Plan::objective).sum();
    let bound: u64 = plans.iter().map(Plan::bound).sum();
    100.0 * (cost - bound) as f64 / bound.max(1) as f64
}

fn ms(time: Duration) -> f64 {
    time.as_secs_f64() * 1e3
}
