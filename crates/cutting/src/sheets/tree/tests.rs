use super::super::{Axis, Draft, Part, Reduced, Stages, Stock};
use super::Tree;
use super::proof::{lawful, remnant};
use crate::{Goal, Pace, Unwatched};
use proptest::prelude::*;

fn part(width: u32, height: u32, count: u64, turn: bool) -> Part {
    Part {
        width,
        height,
        count,
        value: u64::from(width) * u64::from(height),
        turn: turn && width != height,
        window: None,
    }
}

fn stock(width: u32, height: u32, cost: u64, count: u64) -> Stock {
    Stock {
        width,
        height,
        cost,
        count,
        window_of: None,
        remnant: false,
    }
}

fn reduced(stock: Vec<Stock>, parts: Vec<Part>) -> Reduced {
    Reduced {
        goal: Goal::Cost,
        stages: Stages {
            most: u32::MAX,
            first: None,
            final_trim: false,
        },
        least_strip: 0,
        stock,
        parts,
    }
}

/// First plan, then all improvements within some steps.
fn solved(reduced: &Reduced, seed: u64, steps: u64) -> Option<Draft> {
    let mut pace = Pace::new(&Unwatched, Some(steps));
    let mut tree = Tree::new(reduced, seed);
    let mut best = tree.first(&mut pace)?;
    lawful(reduced, &best).expect("a lawful first plan");
    while let Some(better) = tree.improve(&mut pace, 0) {
        lawful(reduced, &better).expect("a lawful plan");
        assert!(reduced.cost(&better) < reduced.cost(&best));
        best = better;
    }
    Some(best)
}

#[test]
fn quarters_fill_a_sheet() {
    let problem = reduced(
        vec![stock(20, 20, 7, u64::MAX)],
        vec![part(10, 10, 9, false)],
    );
    let draft = solved(&problem, 1, 10_000).expect("a plan");
    assert_eq!(problem.cost(&draft), 21);
}

#[test]
fn a_puzzle_without_waste_is_solved() {
    // One 60 x 40 sheet: a column of 20 x 25 and 20 x 15, beside it 40 x 10, 25 x 30, 15 x 18, 15 x 12.
    let sizes = [(20, 25), (20, 15), (40, 10), (25, 30), (15, 18), (15, 12)];
    let parts = sizes
        .map(|(width, height)| part(width, height, 1, true))
        .to_vec();
    let problem = reduced(vec![stock(60, 40, 1, u64::MAX)], parts);
    let draft = solved(&problem, 3, 2_000_000).expect("a plan");
    assert_eq!(problem.cost(&draft), 1);
}

#[test]
fn a_cheap_remnant_is_taken_where_it_will_do() {
    let stock = vec![
        stock(100, 100, 50, u64::MAX),
        stock(40, 30, 5, 1),
        stock(30, 30, 4, 1),
    ];
    let problem = reduced(stock, vec![part(40, 30, 1, true), part(28, 28, 1, false)]);
    let draft = solved(&problem, 1, 100_000).expect("a plan");
    assert_eq!(problem.cost(&draft), 9);
}

#[test]
fn stock_that_does_not_reach_gives_no_plan() {
    let problem = reduced(vec![stock(10, 10, 1, 2)], vec![part(6, 6, 3, false)]);
    assert_eq!(solved(&problem, 1, 100_000), None);
}

#[test]
fn stock_that_hardly_reaches_is_enough() {
    // Both sheets are filled to the last bit: 3 x 10 and 7 x 10; 4 x 6 beside 6 x 6 over 10 x 4.
    let parts = vec![
        part(3, 10, 1, false),
        part(7, 10, 1, false),
        part(4, 6, 1, false),
        part(6, 6, 1, false),
        part(10, 4, 1, false),
    ];
    let problem = reduced(vec![stock(10, 10, 1, 2)], parts);
    let draft = solved(&problem, 1, 1_000_000).expect("a plan");
    assert_eq!(problem.cost(&draft), 2);
}

#[test]
fn a_window_is_cut_up() {
    let mut problem = reduced(
        vec![stock(100, 80, 10, u64::MAX), stock(60, 40, 0, 1)],
        vec![part(100, 80, 1, false), part(30, 40, 2, false)],
    );
    problem.parts[0].window = Some(1);
    problem.stock[1].window_of = Some(0);
    let draft = solved(&problem, 1, 100_000).expect("a plan");
    assert_eq!(problem.cost(&draft), 10);
}

#[test]
fn many_copies_are_planned_at_once() {
    let parts = vec![
        part(30, 20, 250_000, true),
        part(17, 11, 400_000, false),
        part(5, 3, 90_001, true),
    ];
    let problem = reduced(
        vec![stock(100, 70, 3, u64::MAX), stock(50, 40, 1, 1000)],
        parts,
    );
    let draft = solved(&problem, 1, 1_000_000).expect("a plan");
    lawful(&problem, &draft).expect("a lawful plan");
    let area = 250_000 * 600 + 400_000 * 187 + 90_001 * 15;
    assert!(problem.cost(&draft) * 7000 < area * 3 * 5 / 4);
}

#[test]
fn the_largest_numbers_stay_in_bounds() {
    let most = 1 << 31;
    let parts = vec![
        part(most, most / 3, 300, false),
        part(1, 1, 100, false),
        part(most / 2, 7, 50, true),
    ];
    let mut problem = reduced(vec![stock(most, most, 1 << 40, u64::MAX)], parts);
    for part in &mut problem.parts {
        part.value = 1 << 40;
    }
    let draft = solved(&problem, 1, 100_000).expect("a plan");
    assert_eq!(problem.cost(&draft), (1 << 40) * 101);
    problem.goal = Goal::Value;
    problem.parts[1].count = u64::MAX;
    let mut pace = Pace::new(&Unwatched, Some(100_000));
    let draft = Tree::new(&problem, 1).first(&mut pace).expect("a layout");
    lawful(&problem, &draft).expect("a lawful layout");
}

#[test]
fn the_same_seed_gives_the_same_plan() {
    let parts = (1..20)
        .map(|n| part(7 * n % 31 + 5, 11 * n % 23 + 4, 2, true))
        .collect();
    let problem = reduced(vec![stock(60, 50, 1, u64::MAX)], parts);
    assert_eq!(solved(&problem, 5, 300_000), solved(&problem, 5, 300_000));
}

#[test]
fn waste_is_gathered_at_the_same_cost() {
    let problem = reduced(
        vec![stock(100, 100, 1, u64::MAX)],
        vec![part(20, 40, 3, true), part(15, 35, 4, true)],
    );
    let mut pace = Pace::new(&Unwatched, Some(400_000));
    let mut tree = Tree::new(&problem, 1);
    let first = tree.first(&mut pace).expect("a plan");
    let before = remnant(&problem, &first);
    let gathered = tree.gather(&mut pace, first);
    lawful(&problem, &gathered).expect("a lawful plan");
    assert_eq!(problem.cost(&gathered), 1);
    // Three upright beside two that lie one on the other, 40 high; two that lie below, 15 high.
    assert!(remnant(&problem, &gathered) >= before.max(100 * 45));
}

#[test]
fn the_most_value_comes_from_one_sheet() {
    let mut problem = reduced(
        vec![stock(10, 10, 1, 1)],
        vec![
            part(6, 10, 1, false),
            part(4, 5, 3, false),
            part(7, 7, u64::MAX, false),
        ],
    );
    problem.goal = Goal::Value;
    problem.parts[2].value = 70;
    let mut pace = Pace::new(&Unwatched, Some(300_000));
    let mut tree = Tree::new(&problem, 1);
    let mut best = tree.first(&mut pace).expect("a plan");
    while let Some(better) = tree.improve(&mut pace, u64::MAX) {
        assert!(problem.value(&better) > problem.value(&best));
        lawful(&problem, &better).expect("a lawful plan");
        best = better;
    }
    assert_eq!(problem.value(&best), 100);
}

#[test]
fn a_better_plan_from_elsewhere_is_taken_over() {
    let parts = (1..12)
        .map(|n| part(7 * n % 31 + 5, 11 * n % 23 + 4, 1, true))
        .collect();
    let problem = reduced(
        vec![stock(60, 50, 1, u64::MAX), stock(20, 30, 1, u64::MAX)],
        parts,
    );
    let other = solved(&problem, 9, 500_000).expect("a plan");
    let mut tree = Tree::new(&problem, 1);
    tree.offer(&other);
    let mut pace = Pace::new(&Unwatched, Some(50_000));
    if let Some(better) = tree.improve(&mut pace, 0) {
        assert!(problem.cost(&better) < problem.cost(&other));
    }
}

prop_compose! {
    fn any_part()(width in 3_u32..40, height in 3_u32..40, count in 1_u64..5, turn: bool) -> Part {
        part(width, height, count, turn)
    }
}

prop_compose! {
    fn any_stages()(most in 1_u32..5, first in 0..3, endless in 0..3, final_trim: bool) -> Stages {
        if endless == 0 {
            return Stages { most: u32::MAX, first: None, final_trim: false };
        }
        let first = [None, Some(Axis::X), Some(Axis::Y)][usize::try_from(first).unwrap_or(0)];
        Stages { most, first, final_trim }
    }
}

prop_compose! {
    fn any_problem()(
        parts in prop::collection::vec(any_part(), 1..9),
        stages in any_stages(),
        least_strip in prop_oneof![Just(0_u32), 2_u32..9],
        sizes in prop::collection::vec((40_u32..90, 40_u32..90, 1_u64..60, prop_oneof![Just(u64::MAX), 1_u64..9]), 1..4),
        window in prop::option::of(0_usize..9),
    ) -> Reduced {
        let stock = sizes.into_iter().map(|(width, height, cost, count)| stock(width, height, cost, count));
        let mut problem = reduced(stock.collect(), parts);
        problem.stages = stages;
        problem.least_strip = least_strip;
        if let Some(window) = window && window < problem.parts.len() {
            let part = &mut problem.parts[window];
            part.window = Some(problem.stock.len());
            problem.stock.push(Stock {
                width: part.width - 2,
                height: part.height - 1,
                cost: 0,
                count: part.count,
                window_of: Some(window),
                remnant: true,
            });
        }
        problem
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn every_plan_is_lawful(problem in any_problem(), seed: u64) {
        if let Some(draft) = solved(&problem, seed, 60_000) {
            let cost = problem.cost(&draft);
            let mut tree = Tree::new(&problem, seed);
            let mut pace = Pace::new(&Unwatched, Some(30_000));
            let before = remnant(&problem, &draft);
            let gathered = tree.gather(&mut pace, draft);
            prop_assert!(lawful(&problem, &gathered).is_ok());
            prop_assert!(problem.cost(&gathered) <= cost);
            prop_assert!(remnant(&problem, &gathered) >= before);
        }
    }

    #[test]
    fn every_layout_of_most_value_is_lawful(mut problem in any_problem(), seed: u64) {
        problem.goal = Goal::Value;
        let mut pace = Pace::new(&Unwatched, Some(60_000));
        let mut tree = Tree::new(&problem, seed);
        let mut best = tree.first(&mut pace).unwrap_or_default();
        while let Some(better) = tree.improve(&mut pace, u64::MAX) {
            prop_assert_eq!(lawful(&problem, &better), Ok(()));
            prop_assert!(problem.value(&better) > problem.value(&best));
            best = better;
        }
    }
}
