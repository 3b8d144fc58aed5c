use proptest::prelude::*;

use super::check;
use crate::lengths::{Layout, Piece, Placed, Plan, Problem, Stick, Together};
use crate::{Account, Broken, Goal};

fn stick(name: &str, length: u64, count: Option<u64>) -> Stick {
    Stick {
        name: name.to_owned(),
        length,
        cost: length,
        count,
        remnant: false,
        trim: (5, 1),
        flaws: Vec::new(),
        run: None,
    }
}

fn piece(name: &str, length: u64, count: u64) -> Piece {
    Piece {
        name: name.to_owned(),
        length,
        count: Some(count),
        value: length,
        together: None,
        priority: 0,
        due: None,
    }
}

fn problem() -> Problem {
    Problem {
        name: "t".to_owned(),
        goal: Goal::Cost,
        kerf: 2,
        stock: vec![stick("long", 100, None), stick("short", 60, Some(1))],
        pieces: vec![piece("a", 40, 2), piece("b", 30, 1)],
    }
}

/// Two of a on a long stick, one b on the short one.
fn plan() -> Plan {
    let at = |piece, at| Placed { piece, at };
    Plan {
        layouts: vec![
            Layout {
                stock: 0,
                copies: 1,
                pieces: vec![at(0, 5), at(0, 47)],
                remnants: vec![],
            },
            Layout {
                stock: 1,
                copies: 1,
                pieces: vec![at(1, 5)],
                remnants: vec![(37, 59)],
            },
        ],
        objective: 160,
        bound: 160,
        uncut: Vec::new(),
    }
}

fn refused(change: impl Fn(&mut Problem, &mut Plan), sentence: &str) {
    let (mut problem, mut plan) = (problem(), plan());
    assert!(check(&problem, &plan).is_ok());
    change(&mut problem, &mut plan);
    let broken = check(&problem, &plan).expect_err(sentence);
    assert_eq!(broken.to_string(), sentence);
}

#[test]
fn every_bit_of_a_stick_is_accounted_for() {
    let tally = check(&problem(), &plan()).expect("the plan holds");
    let first = Account {
        stock: 100,
        pieces: 80,
        kerf: 4,
        trim: 6,
        remnants: 0,
        waste: 10,
    };
    let second = Account {
        stock: 60,
        pieces: 30,
        kerf: 2,
        trim: 6,
        remnants: 22,
        waste: 0,
    };
    assert_eq!(tally.layouts, [first, second]);
    assert_eq!(tally.whole.stock, 160);
    assert_eq!(tally.whole.parts(), 160);
    assert_eq!(
        (tally.objective, tally.used, tally.largest_remnant),
        (160, 2, 22)
    );
}

#[test]
fn a_piece_keeps_its_place() {
    refused(
        |_, plan| plan.layouts[0].pieces[0].at = 4,
        "layout 1: piece \"a\" lies 4 to 44 along, 5 to 99 can be used; 1 too far",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[1].at = 60,
        "layout 1: piece \"a\" lies 60 to 100 along, 5 to 99 can be used; 1 too far",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[1].at = 46,
        "layout 1: piece \"a\" and piece \"a\" are 1 apart, the kerf is 2; 1 too close",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[1].at = 42,
        "layout 1: piece \"a\" and piece \"a\" overlap by 3; they must be 2 apart",
    );
    refused(
        |problem, _| problem.stock[0].flaws = vec![(87, 90), (0, 6)],
        "layout 1: piece \"a\" lies 5 to 45 on the flaw 0 to 6; 1 of it is flawed",
    );
    refused(
        |_, plan| plan.layouts[1].remnants[0] = (36, 59),
        "layout 2: piece \"b\" and the remnant from 36 are 1 apart, the kerf is 2; 1 too close",
    );
    refused(
        |_, plan| plan.layouts[1].remnants[0] = (37, 37),
        "layout 2: a remnant has a size of 0; leave it out",
    );
    refused(
        |_, plan| plan.layouts[1].remnants[0] = (37, 60),
        "layout 2: the remnant from 37 lies 37 to 60 along, 5 to 59 can be used; 1 too far",
    );
}

#[test]
fn numbers_that_name_nothing_are_refused() {
    refused(
        |_, plan| plan.layouts[0].stock = 9,
        "layout 1: stock number 9 is named; the problem holds 2, counted from 0",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[0].piece = 2,
        "layout 1: piece number 2 is named; the problem holds 2, counted from 0",
    );
    refused(
        |_, plan| plan.uncut = vec![(5, 1)],
        "the plan: uncut piece number 5 is named; the problem holds 2, counted from 0",
    );
    refused(
        |_, plan| plan.layouts[0].copies = 0,
        "layout 1: it is cut 0 times; at least 1 is needed",
    );
    refused(
        |_, plan| plan.layouts[0].pieces.clear(),
        "layout 1: it holds 0 pieces; at least 1 is needed",
    );
}

#[test]
fn counts_and_claims_are_held_to() {
    refused(
        |_, plan| {
            plan.layouts.pop();
        },
        "piece \"b\": 0 cut and 0 left uncut, 1 ordered; 1 missing",
    );
    refused(
        |_, plan| plan.layouts[0].copies = 2,
        "piece \"a\": 4 cut and 0 left uncut, 2 ordered; 2 too many",
    );
    refused(
        |problem, _| problem.stock[1].count = Some(0),
        "stock \"short\": 1 used, 0 held; 1 too many",
    );
    refused(
        |_, plan| plan.objective = 159,
        "the plan claims an objective of 159, 160 is counted; off by 1",
    );
    refused(
        |_, plan| plan.bound = 161,
        "the plan claims that nothing below 161 can be reached and reaches 160 itself; off by 1",
    );
    refused(
        |problem, _| problem.goal = Goal::Fewest,
        "the plan claims an objective of 160, 2 is counted; off by 158",
    );
    refused(
        |problem, _| problem.goal = Goal::Value,
        "most value is asked out of 1 stick or sheet, 2 are used; 1 too many",
    );
    refused(
        |problem, _| problem.stock[0].cost = u64::MAX,
        "the plan claims an objective of 160, 18446744073709551675 is counted; off by 18446744073709551515",
    );
}

#[test]
fn what_is_left_uncut_is_counted_and_frees_the_bound() {
    let (problem, mut plan) = (problem(), plan());
    plan.layouts.pop();
    plan.uncut = vec![(1, 1)];
    plan.objective = 100;
    assert!(check(&problem, &plan).is_ok());
    plan.uncut = vec![(1, 2)];
    assert!(matches!(check(&problem, &plan), Err(Broken::Demand { .. })));
}

#[test]
fn most_value_may_leave_pieces_and_has_a_ceiling() {
    let (mut problem, mut plan) = (problem(), plan());
    problem.goal = Goal::Value;
    problem.pieces[0].count = None;
    plan.layouts.pop();
    (plan.objective, plan.bound) = (80, 90);
    assert!(check(&problem, &plan).is_ok());
    plan.bound = 79;
    let broken = check(&problem, &plan).expect_err("a ceiling below the plan");
    assert_eq!(
        broken.to_string(),
        "the plan claims that nothing above 79 can be reached and reaches 80 itself; off by 1"
    );
}

#[test]
fn what_belongs_together_lies_together() {
    let group = || Together::Stick("frame".to_owned());
    let run = || Together::Run("frame".to_owned());
    refused(
        |problem, _| {
            problem.pieces[0].together = Some(group());
            problem.pieces[1].together = Some(group());
        },
        "group \"frame\" must come from 1 stick and comes from 2; 1 too many",
    );
    refused(
        |problem, _| {
            problem.pieces[0].together = Some(run());
            problem.pieces[1].together = Some(run());
        },
        "group \"frame\" must come from 1 run and comes from 2; 1 too many",
    );
    let (mut problem, plan) = (problem(), plan());
    problem.pieces[0].together = Some(run());
    problem.pieces[1].together = Some(run());
    for stick in &mut problem.stock {
        stick.run = Some("spring".to_owned());
    }
    assert!(check(&problem, &plan).is_ok());
    problem.pieces[0].together = Some(group());
    problem.pieces[1].together = None;
    assert!(check(&problem, &plan).is_ok());
}

#[test]
fn held_sticks_of_one_kind_are_runs_of_their_own() {
    let mut problem = problem();
    problem.pieces = vec![piece("a", 40, 4)];
    problem.pieces[0].together = Some(Together::Run("frame".to_owned()));
    let mut plan = plan();
    plan.layouts.truncate(1);
    plan.layouts[0].copies = 2;
    (plan.objective, plan.bound) = (200, 0);
    assert!(check(&problem, &plan).is_ok());
    problem.stock[0].count = Some(2);
    assert_eq!(
        check(&problem, &plan),
        Err(Broken::Runs {
            group: "frame".to_owned(),
            runs: 2,
        })
    );
}

/// Numbers at the end of what can be written are told apart like any others.
#[test]
fn no_number_is_too_large_to_check() {
    const MOST: u64 = u64::MAX;
    let (mut problem, mut plan) = (problem(), plan());
    problem.kerf = MOST;
    problem.stock[0] = stick("long", MOST, None);
    problem.stock[0].trim = (MOST, MOST);
    refuses_outside(&problem, &plan);
    problem.stock[0].trim = (0, 0);
    problem.pieces[0] = piece("a", MOST, MOST);
    plan.layouts.truncate(1);
    plan.layouts[0].copies = MOST;
    plan.layouts[0].pieces = vec![Placed { piece: 0, at: MOST }];
    refuses_outside(&problem, &plan);
    plan.layouts[0].pieces[0].at = 0;
    plan.uncut = vec![(1, 1)];
    assert!(matches!(
        check(&problem, &plan),
        Err(Broken::Objective { .. })
    ));
    plan.layouts = vec![plan.layouts[0].clone(), plan.layouts[0].clone()];
    assert_eq!(check(&problem, &plan), Err(Broken::Countless));
}

fn refuses_outside(problem: &Problem, plan: &Plan) {
    let broken = check(problem, plan).expect_err("it lies outside");
    assert!(matches!(broken, Broken::Outside { .. }), "{broken}");
}

proptest! {
    /// Pieces laid end to end are accounted for to the last unit, whatever lies between them.
    #[test]
    fn nothing_is_lost(
        kerf in 0_u64..6,
        gaps in proptest::collection::vec(0_u64..20, 1..7),
        sizes in proptest::collection::vec(1_u64..50, 1..7),
        tail in 0_u64..20,
    ) {
        let mut problem = Problem { kerf, pieces: Vec::new(), ..problem() };
        let mut pieces = Vec::new();
        let mut end = 5;
        for (piece_number, (&gap, &size)) in gaps.iter().zip(&sizes).enumerate() {
            let between = if piece_number == 0 { gap } else { gap + kerf };
            problem.pieces.push(piece(&piece_number.to_string(), size, 1));
            pieces.push(Placed { piece: piece_number, at: end + between });
            end += between + size;
        }
        problem.stock = vec![stick("s", end + tail + 1, None)];
        let objective = end + tail + 1;
        let layouts = vec![Layout { stock: 0, copies: 1, pieces, remnants: Vec::new() }];
        let plan = Plan { layouts, objective, bound: 0, uncut: Vec::new() };
        let tally = check(&problem, &plan);
        prop_assert!(tally.is_ok(), "{:?}", tally);
        let whole = tally.map(|tally| tally.whole).unwrap_or_default();
        prop_assert_eq!(whole.stock, whole.parts());
        let count = gaps.len().min(sizes.len());
        let pieces: u64 = sizes[..count].iter().sum();
        prop_assert_eq!(whole.pieces, u128::from(pieces));
    }
}
