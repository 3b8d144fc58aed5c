//! The nail map: what it says, and where its measures stand.

use measure::{Length, Tape, Unit};

use super::{WallNail, WallPiece, WallPlan, spread, wall};
use crate::input::{Ink, Sheet};

fn plan(names: &[&str]) -> WallPlan {
    let pieces = (0..).zip(names).map(|(index, name)| WallPiece {
        name: (*name).to_owned(),
        left: Length::inches(10 + 20 * index),
        top: Length::inches(70),
        width: Length::inches(16),
        height: Length::inches(20),
        nails: vec![WallNail {
            from_corner: Length::inches(18 + 20 * index),
            above_floor: Length::inches(66) + Length::inch_fraction(1, 4),
        }],
    });
    WallPlan {
        title: "Hall".to_owned(),
        width: Length::inches(120),
        height: Some(Length::inches(96)),
        pieces: pieces.collect(),
        unit: Unit::Inch,
        tape: Tape::ThirtySeconds,
    }
}

#[test]
fn the_twin_says_every_nail_from_corner_and_floor_and_from_the_one_before() {
    let drawn = wall(&plan(&["Heron", "Weir"]), Ink::Colour, Sheet::Wide);
    let said = crate::twin_text(&drawn);
    for line in [
        "1 Heron, nail from the corner: 18 in (457.2 mm)",
        "1 Heron, nail above the floor: 66 1/4 in (1682.75 mm)",
        "2 Weir, nail from the nail before it, across: 20 in (508 mm)",
        "Wall, width: 120 in (3048 mm)",
    ] {
        assert!(said.contains(line), "{line} in {said}");
    }
    assert!(
        drawn.svg.contains(">66 1/4<"),
        "the height stands beside the wall"
    );
}

#[test]
fn names_that_look_like_markup_stay_text() {
    let drawn = wall(&plan(&["<script>&\""]), Ink::OneInk, Sheet::Wide);
    let read = roxmltree::Document::parse(&drawn.svg).expect("it is XML");
    assert!(
        read.descendants()
            .all(|node| node.tag_name().name() != "script")
    );
}

/// By hand: three at one place stand about it; a far one stays.
#[test]
fn crowded_measures_make_room_for_each_other() {
    check(&[10.0, 10.0, 10.0, 50.0], &[4.0, 10.0, 16.0, 50.0]);
    check(&[0.0, 7.0, 20.0], &[0.0, 7.0, 20.0]);
    check(&[0.0, 4.0], &[-1.0, 5.0]);
    check(&[], &[]);
}

fn check(wanted: &[f64], expected: &[f64]) {
    let found = spread(wanted, 6.0);
    assert_eq!(found.len(), expected.len());
    for (found, expected) in found.iter().zip(expected) {
        assert!(
            (found - expected).abs() < 1e-9,
            "{wanted:?}: {found} for {expected}"
        );
    }
}
