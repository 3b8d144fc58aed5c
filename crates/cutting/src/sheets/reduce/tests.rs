//! Kerf, trim and merging, by hand.

use super::super::{Edges, Piece, Problem, Rules, Sheet};
use super::reduce;
use crate::{Fault, Goal};

fn piece(name: &str, width: u64, height: u64, count: u64, turn: bool) -> Piece {
    Piece {
        name: name.to_owned(),
        width,
        height,
        count: Some(count),
        value: width * height,
        turn,
        window: None,
        priority: 0,
        due: None,
    }
}

fn sheet(name: &str, width: u64, height: u64) -> Sheet {
    Sheet {
        name: name.to_owned(),
        width,
        height,
        cost: 700,
        count: None,
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

#[test]
fn kerf_and_trim_are_folded_into_the_sizes() {
    let mut given = problem(
        vec![sheet("s", 100, 60)],
        vec![piece("a", 18, 28, 3, false)],
    );
    given.rules.kerf = 2;
    given.stock[0].trim = Edges {
        left: 3,
        right: 5,
        bottom: 1,
        top: 1,
    };
    let (reduced, origin) = reduce(&given).expect("a sound problem");
    // (100 − 8 + 2) × (60 − 2 + 2) and (18 + 2) × (28 + 2), all even.
    assert_eq!(origin.grain, 2);
    assert_eq!((reduced.stock[0].width, reduced.stock[0].height), (47, 30));
    assert_eq!((reduced.parts[0].width, reduced.parts[0].height), (10, 15));
}

#[test]
fn equal_pieces_are_one_part_and_squares_need_no_turning() {
    let mut later = piece("later", 20, 30, 2, true);
    later.due = Some(9);
    let mut sooner = piece("sooner", 30, 20, 1, true);
    sooner.due = Some(4);
    let pieces = vec![
        later,
        sooner,
        piece("square", 10, 10, 1, true),
        piece("grain", 30, 20, 1, false),
    ];
    let (reduced, origin) = reduce(&problem(vec![sheet("s", 100, 100)], pieces)).expect("sound");
    assert_eq!(reduced.parts.len(), 3);
    assert_eq!(origin.parts, [vec![1, 0], vec![3], vec![2]]);
    assert_eq!(reduced.parts[0].count, 3);
    assert!(reduced.parts[0].turn && !reduced.parts[1].turn && !reduced.parts[2].turn);
}

#[test]
fn a_window_is_stock_as_far_as_something_fits_in_it() {
    let mut mat = piece("mat", 40, 50, 2, true);
    mat.window = Some((20, 30));
    let small = piece("small", 12, 14, 1, true);
    let (reduced, _) =
        reduce(&problem(vec![sheet("s", 60, 60)], vec![mat.clone(), small])).expect("sound");
    assert_eq!(reduced.stock.len(), 2);
    assert_eq!((reduced.stock[1].cost, reduced.stock[1].count), (0, 2));
    assert_eq!(reduced.parts[0].window, Some(1));
    let (alone, _) = reduce(&problem(vec![sheet("s", 60, 60)], vec![mat])).expect("sound");
    assert_eq!(alone.stock.len(), 1);
}

#[test]
fn a_piece_too_large_names_the_stock_that_would_do() {
    let mut stock = sheet("large", 100, 60);
    stock.trim.left = 2;
    let given = problem(
        vec![sheet("small", 40, 40), stock],
        vec![piece("poster", 70, 99, 1, true)],
    );
    let faults = reduce(&given).expect_err("too large");
    assert_eq!(
        faults[0].to_string(),
        "piece \"poster\" (70 × 99) is larger than any stock; \"large\" comes nearest with room for \
         98 × 60 and lacks 1 × 10: the smallest stock that would do is 101 × 70"
    );
}

#[test]
fn every_fault_is_told_at_once() {
    let mut given = problem(
        vec![sheet("s", 100, 0), sheet("s", 9, 9)],
        vec![piece("a", 0, 4, 1, true), piece("a", 4, 4, u64::MAX, true)],
    );
    given.rules.kerf = 1;
    given.rules.least_strip = 3;
    given.rules.stages = Some(0);
    let faults = reduce(&given).expect_err("many faults");
    assert!(faults.contains(&Fault::StripAndKerf));
    assert!(faults.contains(&Fault::NoStages));
    let told = |part: &str| faults.iter().any(|fault| fault.to_string().contains(part));
    assert!(told("two entries of stock are called \"s\""));
    assert!(told("two entries of piece are called \"a\""));
    assert!(told("stock \"s\" has a size of 0"));
    assert!(told("piece \"a\" has a size of 0"));
    assert!(told("more than one plan can list"));
}
