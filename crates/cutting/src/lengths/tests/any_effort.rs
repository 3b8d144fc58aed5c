//! However short the effort: the plan holds, nothing false is claimed, and what is claimed proven
//! is as good as every way.

use std::sync::Mutex;

use super::super::{Piece, Plan, Problem, Stick, Together, check, solve};
use super::{by_every_way, can_lie};
use crate::chance::Chance;
use crate::{Goal, News, Trying, Watch};

const SEEDS: std::ops::Range<u64> = 0..1_000;

fn up_to(chance: &mut Chance, most: u64) -> u64 {
    u64::try_from(chance.below(usize::try_from(most + 1).unwrap())).unwrap()
}

fn any_stick(chance: &mut Chance, at: u64, dear: bool) -> Stick {
    let length = 12 + up_to(chance, 24);
    let mut flaws = Vec::new();
    if chance.one_in(3) {
        for _ in 0..=chance.below(3) {
            let from = up_to(chance, length - 1);
            flaws.push((from, (from + up_to(chance, 4)).min(length)));
        }
    }
    let cost = 1 + up_to(chance, 19);
    Stick {
        name: format!("s{at}"),
        length,
        cost: if dear { cost * 1_000_003 + 7 } else { cost },
        count: (!chance.one_in(2)).then(|| 1 + up_to(chance, 2)),
        remnant: false,
        trim: (up_to(chance, 2), up_to(chance, 2)),
        flaws,
        run: chance.one_in(3).then(|| format!("r{}", up_to(chance, 1))),
    }
}

fn any_piece(chance: &mut Chance, at: u64, count: u64) -> Piece {
    Piece {
        name: format!("p{at}"),
        length: 1 + up_to(chance, 13),
        count: Some(count),
        value: up_to(chance, 9),
        together: match chance.below(6) {
            0 => Some(Together::Stick(format!("g{}", up_to(chance, 1)))),
            1 => Some(Together::Run(format!("h{}", up_to(chance, 1)))),
            _ => None,
        },
        priority: u32::try_from(up_to(chance, 1)).unwrap(),
        due: chance.one_in(2).then_some(3),
    }
}

fn any_problem(chance: &mut Chance) -> Problem {
    let dear = chance.one_in(4);
    let mut left = 1 + up_to(chance, 6);
    let mut pieces = Vec::new();
    while left > 0 {
        let count = (1 + up_to(chance, 2)).min(left);
        left -= count;
        let at = u64::try_from(pieces.len()).unwrap();
        pieces.push(any_piece(chance, at, count));
    }
    Problem {
        name: "any".into(),
        goal: [Goal::Cost, Goal::Cost, Goal::Fewest, Goal::Value][chance.below(4)],
        kerf: up_to(chance, 3),
        stock: (0..=up_to(chance, 2))
            .map(|at| any_stick(chance, at, dear))
            .collect(),
        pieces,
    }
}

/// Hears everything.
#[derive(Default)]
struct Ear(Mutex<Vec<u64>>);

impl Watch for Ear {
    fn news(&self, news: News<'_>) {
        assert!(
            news.objective
                .is_none_or(|objective| news.problem == "any" && objective < u64::MAX)
        );
        self.0.lock().unwrap().push(news.bound);
    }
}

/// The most value of one stick: of a group from one stick all pieces or none.
fn most_value(problem: &Problem) -> u64 {
    let mut wants: Vec<Vec<usize>> = Vec::new();
    let mut groups: Vec<(&str, usize)> = Vec::new();
    for (number, piece) in problem.pieces.iter().enumerate() {
        let copies = usize::try_from(piece.count.unwrap()).unwrap();
        if let Some(Together::Stick(group)) = &piece.together {
            let known = groups.iter().find(|of| of.0 == group).map(|of| of.1);
            let at = known.unwrap_or_else(|| {
                groups.push((group, wants.len()));
                wants.push(Vec::new());
                wants.len() - 1
            });
            wants[at].extend(vec![number; copies]);
        } else {
            wants.extend(vec![vec![number]; copies]);
        }
    }
    let mut most = 0;
    for chosen in 0_u32..1 << wants.len() {
        let within = |&at: &usize| chosen >> at & 1 == 1;
        let pieces: Vec<usize> = (0..wants.len())
            .filter(within)
            .flat_map(|at| wants[at].clone())
            .collect();
        let value = pieces
            .iter()
            .map(|&piece| problem.pieces[piece].value)
            .sum();
        let lies = |stick: &Stick| can_lie(problem, stick, &mut pieces.clone(), 0, None);
        if value > most && problem.stock.iter().any(lies) {
            most = value;
        }
    }
    most
}

fn claims_hold(problem: &Problem, plan: &Plan, told: &[u64]) {
    let said = format!("{problem:?}\n{plan:?}\n{told:?}");
    if problem.goal == Goal::Value {
        let most = most_value(problem);
        assert!(
            plan.objective <= most && most <= plan.bound,
            "{most} {said}"
        );
        assert!(told.iter().all(|&bound| most <= bound), "{most} {said}");
        return;
    }
    let mut counted = problem.clone();
    if problem.goal == Goal::Fewest {
        counted.stock.iter_mut().for_each(|stick| stick.cost = 1);
    }
    let Some(least) = by_every_way(&counted) else {
        assert!(
            !plan.uncut.is_empty() && !plan.proven() && plan.bound == 0,
            "{said}"
        );
        return;
    };
    assert!(plan.bound <= least, "{least} {said}");
    assert!(told.iter().all(|&bound| bound <= least), "{least} {said}");
    if plan.uncut.is_empty() {
        assert!(least <= plan.objective, "{least} {said}");
    } else {
        assert!(!plan.proven() && plan.bound == 0, "{said}");
    }
}

/// How many problems were planned, and how many of them proven.
fn tried(seeds: std::ops::Range<u64>) -> (u32, u32) {
    let (mut planned, mut proven) = (0, 0);
    for seed in seeds {
        let mut chance = Chance::new(seed);
        let problem = any_problem(&mut chance);
        // From 1 to 3,000,000, each order of size as often.
        let most = 3_000_000_u64 >> chance.below(22);
        let effort = Some(1 + up_to(&mut chance, most - 1));
        let ear = Ear::default();
        let Ok(plan) = solve(&problem, Trying { effort, seed }, &ear) else {
            continue;
        };
        if let Err(broken) = check(&problem, &plan) {
            panic!("{seed}, {effort:?}: {broken}\n{problem:?}\n{plan:?}");
        }
        claims_hold(&problem, &plan, &ear.0.into_inner().unwrap());
        planned += 1;
        proven += u32::from(plan.proven());
    }
    (planned, proven)
}

#[test]
fn nothing_false_is_claimed_whatever_the_effort() {
    let (planned, proven) = tried(SEEDS);
    assert!(planned > 500, "{planned} planned");
    assert!(proven * 3 > planned, "{proven} of {planned} proven");
}
