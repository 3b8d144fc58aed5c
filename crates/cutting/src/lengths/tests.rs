//! Against every way to share a few pieces out to sticks, and against laws no plan may break.

mod any_effort;
mod claims;

use std::collections::{BTreeMap, HashMap};

use proptest::prelude::*;

use super::{Layout, Piece, Plan, Problem, Stick, Together, check, solve};
use crate::{Fault, Goal, Trying, Unwatched};

fn stick(name: &str, length: u64, cost: u64, count: Option<u64>) -> Stick {
    Stick {
        name: name.into(),
        length,
        cost,
        count,
        remnant: false,
        trim: (0, 0),
        flaws: Vec::new(),
        run: None,
    }
}

fn piece(name: &str, length: u64, count: u64) -> Piece {
    Piece {
        name: name.into(),
        length,
        count: Some(count),
        value: length,
        together: None,
        priority: 0,
        due: None,
    }
}

fn problem(kerf: u64, stock: Vec<Stick>, pieces: Vec<Piece>) -> Problem {
    Problem {
        name: "test".into(),
        goal: Goal::Cost,
        kerf,
        stock,
        pieces,
    }
}

fn planned(problem: &Problem) -> Plan {
    let trying = Trying {
        effort: Some(20_000_000),
        seed: 1,
    };
    let plan = solve(problem, trying, &Unwatched).expect("no fault");
    lawful(problem, &plan);
    check(problem, &plan).expect("the room's own check agrees");
    plan
}

/// Whether a layout can be cut.
fn cuttable(problem: &Problem, layout: &Layout) {
    let stick = &problem.stock[layout.stock];
    assert!(layout.copies > 0 && !layout.pieces.is_empty());
    let mut free = stick.trim.0;
    for (number, placed) in layout.pieces.iter().enumerate() {
        let end = placed.at + problem.pieces[placed.piece].length;
        let kerf = if number > 0 { problem.kerf } else { 0 };
        assert!(placed.at >= free + kerf, "a kerf between {layout:?}");
        assert!(end <= stick.length - stick.trim.1, "within {layout:?}");
        for &(from, to) in &stick.flaws {
            assert!(end <= from || placed.at >= to, "off the flaw {layout:?}");
        }
        free = end;
    }
    for &(from, to) in &layout.remnants {
        assert!(from < to && from >= stick.trim.0 && to <= stick.length - stick.trim.1);
        for placed in &layout.pieces {
            let end = placed.at + problem.pieces[placed.piece].length;
            assert!(
                end + problem.kerf <= from || placed.at >= to + problem.kerf,
                "{layout:?}"
            );
        }
    }
}

/// Run of each copy of a stick, for groups: a bought or named run, or one stick.
fn run_of(stick: &Stick, copy: usize, number: usize) -> String {
    match (&stick.run, stick.count) {
        (Some(run), _) => format!("named {run}"),
        (None, None) => "bought".into(),
        (None, Some(_)) => format!("own {number} {copy}"),
    }
}

fn lawful(problem: &Problem, plan: &Plan) {
    let mut made: BTreeMap<usize, u64> = plan.uncut.iter().copied().collect();
    let mut used: BTreeMap<usize, u64> = BTreeMap::new();
    let mut places: BTreeMap<String, Vec<String>> = BTreeMap::new();
    let mut cost = 0;
    for layout in &plan.layouts {
        cuttable(problem, layout);
        let before = *used.entry(layout.stock).or_default();
        *used.entry(layout.stock).or_default() += layout.copies;
        let each = if problem.goal == Goal::Fewest {
            1
        } else {
            problem.stock[layout.stock].cost
        };
        cost += each * layout.copies;
        for placed in &layout.pieces {
            *made.entry(placed.piece).or_default() += layout.copies;
            for copy in before..before + layout.copies.min(50) {
                let stick = &problem.stock[layout.stock];
                let copy = usize::try_from(copy).unwrap();
                let (group, place) = match &problem.pieces[placed.piece].together {
                    Some(Together::Stick(group)) => {
                        (format!("stick {group}"), format!("{} {copy}", layout.stock))
                    }
                    Some(Together::Run(group)) => {
                        (format!("run {group}"), run_of(stick, copy, layout.stock))
                    }
                    None => continue,
                };
                places.entry(group).or_default().push(place);
            }
        }
    }
    for (number, piece) in problem.pieces.iter().enumerate() {
        let got = made.get(&number).copied().unwrap_or(0);
        assert_eq!(Some(got), piece.count, "{}: {plan:?}", piece.name);
    }
    for (number, stick) in problem.stock.iter().enumerate() {
        let used = used.get(&number).copied().unwrap_or(0);
        assert!(stick.count.is_none_or(|count| used <= count), "{plan:?}");
    }
    for (group, places) in places {
        assert!(
            places.iter().all(|place| *place == places[0]),
            "{group} is torn apart: {plan:?}"
        );
    }
    assert_eq!(cost, plan.objective);
    assert!(plan.bound <= plan.objective);
}

/// The least cost by trying every stick for every piece, each stick laid out in every order of
/// its pieces; `None` when the stock does not reach.
fn by_every_way(problem: &Problem) -> Option<u64> {
    let mut pieces = Vec::new();
    for (number, piece) in problem.pieces.iter().enumerate() {
        pieces.extend((0..piece.count.unwrap()).map(|_| number));
    }
    let mut sticks: Vec<(usize, usize)> = Vec::new();
    for (number, stick) in problem.stock.iter().enumerate() {
        let most = pieces.len().min(
            stick
                .count
                .map_or(usize::MAX, |count| usize::try_from(count).unwrap()),
        );
        sticks.extend((0..most).map(|copy| (number, copy)));
    }
    let mut held = vec![Vec::new(); sticks.len()];
    let mut least = None;
    every(problem, &pieces, &sticks, &mut held, &mut least);
    least
}

fn every(
    problem: &Problem,
    pieces: &[usize],
    sticks: &[(usize, usize)],
    held: &mut Vec<Vec<usize>>,
    least: &mut Option<u64>,
) {
    let cost: u64 = (0..sticks.len())
        .filter(|&at| !held[at].is_empty())
        .map(|at| problem.stock[sticks[at].0].cost)
        .sum();
    if least.is_some_and(|least| cost >= least) {
        return;
    }
    let Some((&piece, others)) = pieces.split_first() else {
        if matched(problem, sticks, held) {
            *least = Some(cost);
        }
        return;
    };
    for at in 0..sticks.len() {
        // Equal sticks are opened in order.
        if at > 0 && sticks[at - 1].0 == sticks[at].0 && held[at - 1].is_empty() {
            continue;
        }
        held[at].push(piece);
        if can_lie(
            problem,
            &problem.stock[sticks[at].0],
            &mut held[at].clone(),
            0,
            None,
        ) {
            every(problem, others, sticks, held, least);
        }
        held[at].pop();
    }
}

/// Whether the pieces can lie on the stick in some order, each as far to the start as it goes.
fn can_lie(
    problem: &Problem,
    stick: &Stick,
    left: &mut Vec<usize>,
    free: u64,
    last: Option<usize>,
) -> bool {
    if left.is_empty() {
        return true;
    }
    for at in 0..left.len() {
        let piece = left.swap_remove(at);
        let length = problem.pieces[piece].length;
        let mut start = free.max(stick.trim.0);
        if last.is_some() {
            start = start.max(free + problem.kerf);
        }
        let mut flaws = stick.flaws.clone();
        flaws.sort_unstable();
        for (from, to) in flaws {
            if start < to && start + length > from {
                start = to;
            }
        }
        let fits = start + length <= stick.length - stick.trim.1
            && can_lie(problem, stick, left, start + length, Some(piece));
        left.push(piece);
        let end = left.len() - 1;
        left.swap(at, end);
        if fits {
            return true;
        }
    }
    false
}

fn matched(problem: &Problem, sticks: &[(usize, usize)], held: &[Vec<usize>]) -> bool {
    let mut places: HashMap<&Together, Vec<String>> = HashMap::new();
    for (&(number, copy), held) in sticks.iter().zip(held) {
        for &piece in held {
            let together = problem.pieces[piece].together.as_ref();
            match together {
                Some(group @ Together::Stick(_)) => {
                    let place = format!("{number} {copy}");
                    places.entry(group).or_default().push(place);
                }
                Some(group @ Together::Run(_)) => {
                    let place = run_of(&problem.stock[number], copy, number);
                    places.entry(group).or_default().push(place);
                }
                None => {}
            }
        }
    }
    places
        .values()
        .all(|places| places.iter().all(|place| *place == places[0]))
}

fn as_every_way(problem: &Problem) {
    let plan = planned(problem);
    match by_every_way(problem) {
        Some(least) => {
            assert_eq!(plan.uncut, [], "{problem:?}");
            assert_eq!(plan.objective, least, "{problem:?}");
            assert!(plan.proven(), "{problem:?} {plan:?}");
        }
        None => assert_ne!(plan.uncut, [], "{problem:?}"),
    }
}

fn together(kind: u8, group: u8) -> Option<Together> {
    let group = format!("g{group}");
    match kind {
        0 => Some(Together::Stick(group)),
        1 => Some(Together::Run(group)),
        _ => None,
    }
}

fn any_problem() -> impl Strategy<Value = Problem> {
    let stock = prop::collection::vec(
        (
            12_u64..30,
            1_u64..20,
            prop::option::of(1_u64..3),
            (0_u64..2, 0_u64..2),
            prop::collection::vec((2_u64..12, 0_u64..4), 0..2),
            prop::option::of(0_u8..2),
        ),
        1..4,
    );
    let pieces = prop::collection::vec((1_u64..9, 1_u64..3, 0_u8..8, 0_u8..2), 1..5);
    (0_u64..3, stock, pieces).prop_map(|(kerf, stock, pieces)| {
        let stock = stock.into_iter().enumerate();
        let stock = stock.map(|(at, (length, cost, count, trim, flaws, run))| {
            let mut bar = stick(&format!("s{at}"), length, cost, count);
            bar.trim = trim;
            let flaws = flaws.into_iter();
            bar.flaws = flaws
                .map(|(from, wide)| (from, (from + wide).min(length)))
                .collect();
            bar.run = run.map(|run| format!("r{run}"));
            bar
        });
        let pieces = pieces.into_iter().enumerate();
        let pieces = pieces.map(|(at, (length, count, kind, group))| {
            let mut piece = piece(&format!("p{at}"), length, count);
            piece.together = together(kind, group);
            piece
        });
        problem(kerf, stock.collect(), pieces.collect())
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn as_good_as_every_way(problem in any_problem()) {
        let count: u64 = problem.pieces.iter().map(|piece| piece.count.unwrap()).sum();
        prop_assume!(count <= 6);
        if solve(&problem, Trying::default(), &Unwatched).is_ok() {
            as_every_way(&problem);
        }
    }
}

#[test]
fn kerf_is_lost_between_pieces_only() {
    let flush = problem(1, vec![stick("bar", 11, 1, None)], vec![piece("leg", 5, 2)]);
    assert_eq!(planned(&flush).objective, 1);
    let tight = problem(2, vec![stick("bar", 11, 1, None)], vec![piece("leg", 5, 2)]);
    assert_eq!(planned(&tight).objective, 2);
}

#[test]
fn a_group_lies_on_both_sides_of_a_flaw() {
    let mut bar = stick("bar", 20, 3, None);
    bar.flaws = vec![(9, 11)];
    let mut leg = piece("leg", 4, 4);
    leg.together = Some(Together::Stick("frame".into()));
    as_every_way(&problem(0, vec![bar.clone()], vec![leg.clone()]));
    leg.count = Some(5);
    bar.length = 24;
    as_every_way(&problem(0, vec![bar], vec![leg]));
}

#[test]
fn short_stock_is_cut_by_priority() {
    let mut urgent = piece("urgent", 6, 2);
    urgent.priority = 1;
    let mut soon = piece("soon", 6, 1);
    soon.due = Some(1);
    let later = piece("later", 6, 2);
    let stock = vec![stick("bar", 18, 5, Some(1)), stick("end", 6, 1, Some(1))];
    let plan = planned(&problem(0, stock, vec![later, soon, urgent]));
    assert_eq!(plan.uncut, [(0, 1)]);
    assert!(!plan.proven());
}

#[test]
fn many_short_ones_of_a_long_list() {
    let pieces: Vec<Piece> = (0..60)
        .map(|number| {
            let mut piece = piece(&format!("p{number}"), 100 + 7 * number, 5);
            piece.priority = u32::try_from(number % 3).unwrap();
            piece
        })
        .collect();
    let plan = planned(&problem(
        3,
        vec![stick("bar", 2000, 9, Some(20))],
        pieces.clone(),
    ));
    let lost = |priority: u32| -> u64 {
        let of = |uncut: &&(usize, u64)| pieces[uncut.0].priority == priority;
        plan.uncut.iter().filter(of).map(|uncut| uncut.1).sum()
    };
    assert_eq!(lost(2), 0);
    assert!(lost(1) > 0 && lost(0) > 0);
}

#[test]
fn a_thousand_million_copies() {
    let legs = vec![
        piece("a", 1234, 1_000_000_000),
        piece("b", 777, 999_999_999),
        piece("c", 3001, 123_456_789),
    ];
    let plan = planned(&problem(12, vec![stick("bar", 9216, 7, None)], legs));
    let gap = plan.objective - plan.bound;
    assert!(
        gap * 1_000_000 <= plan.objective,
        "{} {}",
        plan.objective,
        plan.bound
    );
}

#[test]
fn lengths_to_the_end_of_what_can_be_counted() {
    let long = u64::from(u32::MAX);
    let pieces: Vec<Piece> = (0..40)
        .map(|n| piece(&format!("p{n}"), long / 9 + n * 7_654_321, 3))
        .collect();
    let stock = vec![
        stick("bar", long, 1 << 40, None),
        stick("half", long / 2, 1 << 39, Some(4)),
    ];
    let plan = planned(&problem(5, stock, pieces));
    assert!(plan.bound * 10 >= plan.objective * 8);
}

#[test]
fn the_same_effort_gives_the_same_plan() {
    let pieces: Vec<Piece> = (0..30)
        .map(|n| piece(&format!("p{n}"), 201 + n * 13, 1 + n % 3))
        .collect();
    let problem = problem(
        2,
        vec![stick("bar", 1000, 10, None), stick("old", 700, 4, Some(3))],
        pieces,
    );
    assert_eq!(planned(&problem), planned(&problem));
}

#[test]
fn waste_is_gathered_on_one_stick() {
    // 10 + 10 + 5 on sticks of 20: the two long ones share one, and 15 is left on the other.
    let plan = planned(&problem(
        0,
        vec![stick("bar", 20, 1, None)],
        vec![piece("long", 10, 2), piece("short", 5, 1)],
    ));
    let longest = plan.layouts.iter().flat_map(|layout| &layout.remnants);
    let longest = longest.map(|&(from, to)| to - from).max();
    assert_eq!(longest, Some(15));
}

#[test]
fn most_value_of_one_stick() {
    let mut dear = piece("dear", 7, 3);
    dear.value = 1 << 35;
    let mut cheap = piece("cheap", 3, 0);
    cheap.count = None;
    cheap.value = 5;
    let mut one = problem(1, vec![stick("bar", 30, 4, None)], vec![dear, cheap]);
    one.goal = Goal::Value;
    let plan = solve(&one, Trying::default(), &Unwatched).unwrap();
    assert_eq!(plan.objective, 3 * (1 << 35) + 5);
    assert!(plan.proven());
}

#[test]
fn all_faults_at_once() {
    let mut bad = problem(
        0,
        vec![stick("bar", 10, 1, None), stick("bar", 0, 1, None)],
        vec![piece("leg", 11, 1), piece("leg", 0, 1)],
    );
    let faults = solve(&bad, Trying::default(), &Unwatched).unwrap_err();
    assert_eq!(faults.len(), 4, "{faults:?}");
    bad.stock.pop();
    bad.pieces.pop();
    let faults = solve(&bad, Trying::default(), &Unwatched).unwrap_err();
    assert_eq!(
        faults,
        [Fault::TooLarge {
            piece: "leg".into(),
            size: vec![11],
            nearest: "bar".into(),
            room: vec![10],
            over: vec![1],
            needed: vec![11],
        }]
    );
}
