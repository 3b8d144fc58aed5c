//! What may be said of a plan, and what may not: each once was said falsely.

use super::super::{Plan, Problem, Together, check, solve};
use super::{lawful, piece, planned, problem, stick};
use crate::{Goal, Trying, Unwatched};

fn with_effort(problem: &Problem, effort: u64) -> Plan {
    let trying = Trying {
        effort: Some(effort),
        seed: 1,
    };
    let plan = solve(problem, trying, &Unwatched).expect("no fault");
    check(problem, &plan).unwrap_or_else(|broken| panic!("effort {effort}: {broken}\n{plan:?}"));
    plan
}

#[test]
fn an_effort_that_ends_anywhere_proves_nothing_false() {
    // Longest first puts both fours on one stick and is one three short; each stick takes 4 + 3 + 3.
    let stock = vec![stick("bar", 10, 7, Some(2))];
    let one = problem(0, stock, vec![piece("four", 4, 2), piece("three", 3, 4)]);
    for effort in 1..3_000 {
        let plan = with_effort(&one, effort);
        lawful(&one, &plan);
        assert!(!plan.layouts.is_empty(), "effort {effort}");
        assert!(
            !plan.proven() || plan.objective == 14,
            "effort {effort}: {plan:?}"
        );
    }
    assert!(with_effort(&one, 3_000).proven());
}

#[test]
fn of_a_plan_that_leaves_pieces_the_bound_claims_nothing() {
    let stock = vec![stick("bar", 10, 7, Some(1))];
    let one = problem(0, stock, vec![piece("four", 4, 2), piece("three", 3, 4)]);
    for effort in [1, 100, 10_000, 1_000_000] {
        let plan = with_effort(&one, effort);
        assert!(!plan.uncut.is_empty());
        assert_eq!((plan.bound, plan.proven()), (0, false), "effort {effort}");
    }
}

#[test]
fn an_arrangement_not_found_is_not_one_that_there_is_not() {
    // 1,010 pieces would fit on one stick, but no arrangement of so many parts is looked for.
    let mut bar = stick("bar", 1_201, 5, None);
    bar.flaws = vec![(600, 601)];
    let one = problem(0, vec![bar], vec![piece("pin", 1, 1_010)]);
    let plan = with_effort(&one, 3_000_000);
    assert!(plan.bound <= 5, "{plan:?}");
    assert!(!plan.proven() || plan.objective == 5, "{plan:?}");
}

#[test]
fn as_many_groups_as_there_are_sticks_of_their_own() {
    for groups in [2, 8, 9, 30] {
        let legs = (0..groups).map(|group| {
            let mut leg = piece(&format!("leg {group}"), 40 + group, 2);
            leg.together = Some(Together::Run(format!("frame {group}")));
            leg
        });
        let stock = vec![stick("old", 150, 1, Some(groups))];
        let plan = planned(&problem(3, stock, legs.collect()));
        assert_eq!(plan.uncut, [], "{groups} groups");
        assert_eq!(plan.objective, groups);
        assert!(
            plan.bound <= groups && (groups > 2 || plan.proven()),
            "{plan:?}"
        );
    }
}

#[test]
fn a_group_that_no_run_takes_is_left() {
    // The long leg fits on the named run only, the dear one holds no such run's length.
    let mut long = piece("long", 50, 1);
    let mut short = piece("short", 20, 3);
    long.together = Some(Together::Run("frame".into()));
    short.together = long.together.clone();
    let mut bar = stick("bar", 60, 9, Some(1));
    bar.run = Some("a".into());
    let plan = planned(&problem(
        0,
        vec![bar, stick("end", 45, 2, Some(5))],
        vec![long, short],
    ));
    assert!(!plan.uncut.is_empty());
    assert!(!plan.proven());
}

#[test]
fn the_most_value_has_a_plan_and_a_true_bound_at_once() {
    let pieces = (0..40).map(|number| {
        let mut piece = piece(
            &format!("p{number}"),
            31 + 7 * (number % 13),
            1 + number % 3,
        );
        piece.value = 100 + 23 * (number % 17);
        piece
    });
    let mut one = problem(1, vec![stick("bar", 997, 4, None)], pieces.collect());
    one.goal = Goal::Value;
    let best = with_effort(&one, 100_000_000);
    assert!(best.proven());
    for effort in [1, 10, 1_000, 10_000, 100_000] {
        let plan = with_effort(&one, effort);
        assert!(
            plan.objective * 10 >= best.objective * 8,
            "effort {effort}: {plan:?}"
        );
        assert!(plan.objective <= best.objective && best.objective <= plan.bound);
        assert!(
            plan.bound * 10 <= best.objective * 12,
            "effort {effort}: {}",
            plan.bound
        );
    }
}

#[test]
fn the_most_value_between_flaws_is_proven() {
    // Without the flaw 9 + 9 would be the most; with it 9 + 2 + 2 is.
    let mut bar = stick("bar", 20, 4, None);
    bar.flaws = vec![(11, 12)];
    let mut long = piece("long", 9, 2);
    long.value = 90;
    let mut short = piece("short", 4, 3);
    short.value = 30;
    let mut one = problem(0, vec![bar], vec![long, short]);
    one.goal = Goal::Value;
    let plan = with_effort(&one, 1_000_000);
    assert_eq!((plan.objective, plan.bound), (150, 150));
}

#[test]
fn what_a_plan_costs_can_be_counted() {
    let stock = vec![stick("bar", 10, 1 << 40, None)];
    let one = problem(0, stock, vec![piece("leg", 10, 1 << 40)]);
    let faults = solve(&one, Trying::default(), &Unwatched).unwrap_err();
    assert_eq!(
        faults[0].to_string(),
        "cost of \"bar\" is 1099511627776: the most that can be reckoned is 4194304"
    );
}
