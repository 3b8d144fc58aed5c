//! Plans that do not hold are told, whoever made them.

use super::{Unsolved, checked, hold};
use crate::{Plan, Problem, Trying, Unwatched, document};

const STEADY: Trying = Trying {
    effort: Some(50_000),
    seed: 1,
};

fn problems() -> Vec<Problem> {
    let text = r#"[
        {"name":"sticks","dim":1,"stock":[{"id":"s","l":10}],
         "pieces":[{"id":"six","l":6,"qty":2},{"id":"four","l":4,"qty":2}]},
        {"name":"sheets","dim":2,"stock":[{"id":"s","w":10,"h":8}],
         "pieces":[{"id":"half","w":5,"h":8,"qty":4}]}
    ]"#;
    let read = document::read(text).expect("two instances");
    read.into_iter().map(|one| one.problem).collect()
}

/// By hand: 6 + 4 fill a stick of 10, two halves fill a sheet: two of each.
#[test]
fn plans_that_hold_come_back_in_order() {
    let plans = checked(&problems(), STEADY, 2, &Unwatched).expect("plans");
    let reached: Vec<u64> = plans.iter().map(Plan::objective).collect();
    assert_eq!(reached, [2, 2]);
    assert!(matches!(plans[..], [Plan::Lengths(_), Plan::Sheets(_)]));
}

#[test]
fn faults_of_all_problems_are_gathered_with_their_places() {
    let mut problems = problems();
    let Problem::Sheets(sheets) = &mut problems[1] else {
        panic!("sheets stand second");
    };
    sheets.stock.clear();
    let Err(Unsolved::Faults(faults)) = checked(&problems, STEADY, 1, &Unwatched) else {
        panic!("there is nothing to cut the halves from");
    };
    assert_eq!(faults.len(), 1);
    assert_eq!(faults[0].0, 1);
    assert!(!faults[0].1.is_empty());
}

#[test]
fn a_plan_that_claims_too_much_or_is_of_the_other_kind_is_told() {
    let problems = problems();
    let mut plans = checked(&problems, STEADY, 1, &Unwatched).expect("plans");
    if let Plan::Lengths(plan) = &mut plans[0] {
        plan.objective = 1;
        plan.bound = 1;
    }
    let found = plans.iter().cloned().map(Ok).collect();
    let broken = hold(&problems, found).expect_err("one stick does not hold 20");
    assert!(matches!(&broken, Unsolved::Broken { problem, .. } if problem == "sticks"));
    assert!(broken.to_string().contains("does not hold"), "{broken}");
    plans.reverse();
    let found = plans.into_iter().map(Ok).collect();
    let other = hold(&problems, found).expect_err("a plan for sheets is none for sticks");
    assert!(matches!(&other, Unsolved::OtherKind(one) if one.problem == "sticks"));
}
