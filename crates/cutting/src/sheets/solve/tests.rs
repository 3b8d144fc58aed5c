//! Whole plans, by hand.

use super::super::{Edges, Piece, Problem, Rules, Sheet, check};
use super::solve;
use crate::{Goal, Trying, Unwatched};

fn piece(name: &str, width: u64, height: u64, count: u64) -> Piece {
    Piece {
        name: name.to_owned(),
        width,
        height,
        count: Some(count),
        value: width * height,
        turn: true,
        window: None,
        priority: 0,
        due: None,
    }
}

fn sheet(name: &str, width: u64, height: u64, cost: u64, count: Option<u64>) -> Sheet {
    Sheet {
        name: name.to_owned(),
        width,
        height,
        cost,
        count,
        remnant: false,
        trim: Edges::default(),
    }
}

fn problem(stock: Vec<Sheet>, pieces: Vec<Piece>) -> Problem {
    Problem {
        name: "board".to_owned(),
        goal: Goal::Cost,
        rules: Rules::default(),
        stock,
        pieces,
    }
}

const A_LITTLE: Trying = Trying {
    effort: Some(1 << 24),
    seed: 7,
};

#[test]
fn a_cheap_remnant_saves_a_sheet() {
    let stock = vec![
        sheet("new", 60, 40, 1000, None),
        sheet("left over", 20, 30, 210, Some(1)),
    ];
    let pieces = vec![piece("large", 60, 40, 1), piece("small", 28, 18, 1)];
    let problem = problem(stock, pieces);
    let plan = solve(&problem, A_LITTLE, &Unwatched).expect("sound");
    assert_eq!((plan.objective, plan.proven()), (1210, true));
    check(&problem, &plan).expect("a sound plan");
}

#[test]
fn what_drops_from_a_window_is_cut_up_too() {
    let mut mat = piece("mat", 40, 50, 1);
    mat.window = Some((24, 34));
    let problem = problem(
        vec![sheet("board", 40, 50, 800, None)],
        vec![mat, piece("small mat", 20, 30, 1)],
    );
    let plan = solve(&problem, A_LITTLE, &Unwatched).expect("sound");
    assert_eq!((plan.objective, plan.proven()), (800, true));
    assert_eq!(plan.layouts.len(), 2);
    check(&problem, &plan).expect("a sound plan");
}

#[test]
fn the_most_urgent_are_cut_where_the_stock_does_not_reach() {
    let mut soon = piece("soon", 30, 40, 2);
    soon.due = Some(3);
    let mut later = piece("later", 30, 40, 3);
    later.due = Some(9);
    let tiny = piece("some day", 5, 5, 1);
    let problem = problem(
        vec![sheet("board", 60, 40, 800, Some(2))],
        vec![tiny, later, soon],
    );
    let plan = solve(&problem, A_LITTLE, &Unwatched).expect("sound");
    // Four of the five fit: both that are due soon, two of the others, and nothing is left for the last.
    assert_eq!(plan.uncut, [(0, 1), (1, 1)]);
    assert!(!plan.proven());
    check(&problem, &plan).expect("a sound plan of what is cut");
}
