//! Places, cuts and names, by hand.

use super::super::reduce::reduce;
use super::super::{
    Area, Axis, Block, Draft, DraftSheet, Edges, From, Kind, Piece, Problem, Rules, Sheet, Way,
};
use super::realise;
use crate::Goal;

fn piece(name: &str, width: u64, height: u64, count: u64) -> Piece {
    Piece {
        name: name.to_owned(),
        width,
        height,
        count: Some(count),
        value: 0,
        turn: true,
        window: None,
        priority: 0,
        due: None,
    }
}

fn part(part: usize, width: u32, height: u32) -> Block {
    Block {
        width,
        height,
        kind: Kind::Part {
            part,
            turned: false,
        },
    }
}

fn one_sheet(block: Block, copies: u64) -> Draft {
    Draft {
        sheets: vec![DraftSheet {
            stock: 0,
            copies,
            block,
        }],
    }
}

/// A sheet of 107 × 61 with room for 100 × 60, and two pieces; the saw takes 3.
fn with_kerf_and_trim() -> Problem {
    Problem {
        name: "board".to_owned(),
        goal: Goal::Cost,
        rules: Rules {
            kerf: 3,
            ..Rules::default()
        },
        stock: vec![Sheet {
            name: "s".to_owned(),
            width: 107,
            height: 61,
            cost: 1,
            count: None,
            remnant: false,
            trim: Edges {
                left: 5,
                right: 2,
                bottom: 1,
                top: 0,
            },
        }],
        pieces: vec![piece("a", 40, 60, 1), piece("b", 40, 20, 1)],
    }
}

#[test]
fn places_cuts_and_remnants_carry_the_kerf() {
    let problem = with_kerf_and_trim();
    let (reduced, origin) = reduce(&problem).expect("sound");
    assert_eq!(origin.grain, 1);
    // Room 100 × 60, reduced 103 × 63: a (43 × 63), a column of b (43 × 23) and waste, 17 left.
    let column = Block {
        width: 43,
        height: 63,
        kind: Kind::Split {
            axis: Axis::Y,
            blocks: vec![Block::free(43, 40), part(1, 43, 23)],
        },
    };
    let block = Block {
        width: 103,
        height: 63,
        kind: Kind::Split {
            axis: Axis::X,
            blocks: vec![part(0, 43, 63), Block::free(17, 63), column],
        },
    };
    let draft = one_sheet(block, 1);
    let layouts = realise(&problem, &reduced, &origin, &draft);
    assert_eq!(layouts.len(), 1);
    let layout = &layouts[0];
    let area = |x, y, width, height| Area {
        x,
        y,
        width,
        height,
    };
    assert_eq!(layout.pieces[0].area, area(5, 1, 40, 60));
    assert_eq!(layout.pieces[1].area, area(48, 1, 40, 20));
    let told: Vec<_> = layout
        .cuts
        .iter()
        .map(|cut| (cut.of, cut.way, cut.at))
        .collect();
    assert_eq!(
        told,
        [
            (area(5, 1, 100, 60), Way::Upright, 45),
            (area(48, 1, 57, 60), Way::Upright, 88),
            (area(48, 1, 40, 60), Way::Level, 21),
        ]
    );
    assert_eq!(layout.remnants, [area(48, 24, 40, 37), area(91, 1, 14, 60)]);
}

#[test]
fn merged_pieces_are_dealt_out_most_urgent_first() {
    let mut late = piece("late", 10, 10, 3);
    late.due = Some(8);
    let mut soon = piece("soon", 10, 10, 1);
    soon.due = Some(2);
    let problem = Problem {
        name: "board".to_owned(),
        goal: Goal::Cost,
        rules: Rules::default(),
        stock: vec![Sheet {
            name: "s".to_owned(),
            width: 20,
            height: 10,
            cost: 1,
            count: None,
            remnant: false,
            trim: Edges::default(),
        }],
        pieces: vec![late, soon],
    };
    let (reduced, origin) = reduce(&problem).expect("sound");
    let (side, width) = (reduced.parts[0].width, reduced.stock[0].width);
    let block = Block {
        width,
        height: side,
        kind: Kind::Split {
            axis: Axis::X,
            blocks: vec![part(0, side, side), part(0, side, side)],
        },
    };
    let draft = one_sheet(block, 2);
    let layouts = realise(&problem, &reduced, &origin, &draft);
    let named: Vec<(u64, Vec<usize>)> = layouts
        .iter()
        .map(|layout| {
            (
                layout.copies,
                layout.pieces.iter().map(|placed| placed.piece).collect(),
            )
        })
        .collect();
    assert_eq!(named, [(1, vec![1, 0]), (1, vec![0, 0])]);
    assert!(layouts.iter().all(|layout| layout.from == From::Stock(0)));
}
