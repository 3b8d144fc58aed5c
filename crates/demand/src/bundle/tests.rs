use cutting::lengths::Together;
use measure::Length;
use trade::{Settings, Units};

use super::{Bench, bundle};
use crate::gather::{LooseRails, Slant};
use crate::part::Strip;
use crate::tick::Tick;

fn frame(sides: &[(&str, i64)], matched: bool) -> LooseRails {
    let strips = sides.iter().map(|(side, inches)| Strip {
        side: (*side).to_owned(),
        length: Length::inches(*inches),
    });
    LooseRails {
        job: 0,
        part: "Frame".to_owned(),
        strips: strips.collect(),
        matched,
        slant: Slant::QUARTER,
    }
}

const FRAME: [(&str, i64); 4] = [("left", 20), ("right", 20), ("top", 16), ("bottom", 16)];

/// Bundles with a cut of 1/8 in and this much room: sides, copies, length in 1/64 in, group.
fn check(
    loose: &LooseRails,
    policy: &'static str,
    room: i64,
    expected: &[(&str, usize, u64, &str)],
) {
    let tick = Tick::of(&Settings::defaults(Units::Inches));
    let bench = Bench {
        tick,
        kerf: 8,
        room: tick.down(Length::inches(room)),
        policy,
    };
    let bundles = bundle(loose, bench, "A");
    let found: Vec<_> = bundles
        .iter()
        .map(|bundle| {
            let group = match &bundle.together {
                Some(Together::Stick(_)) => "stick",
                Some(Together::Run(_)) => "run",
                None => "",
            };
            let copies = bundle.rails.copies.len();
            (bundle.sides.as_str(), copies, bundle.length, group)
        })
        .collect();
    assert_eq!(found, expected, "{policy}, room {room}");
}

#[test]
fn pairs_are_cut_side_by_side() {
    let loose = frame(&FRAME, true);
    // 20 + 1/8 + 20 = 40 1/8 in = 2568/64; 16 + 1/8 + 16 = 32 1/8 in = 2056/64.
    let pairs = [
        ("left + right", 1, 2568, "run"),
        ("top + bottom", 1, 2056, "run"),
    ];
    check(&loose, "pairs", 108, &pairs);
    // Where only the shorter pair fits, the longer legs stand alone in the same run.
    let parted = [
        ("left, right", 2, 1280, "run"),
        ("top + bottom", 1, 2056, "run"),
    ];
    check(&loose, "pairs", 40, &parted);
}

#[test]
fn one_stick_where_it_is_long_enough() {
    let loose = frame(&FRAME, true);
    // 20 + 20 + 16 + 16 and three cuts of 1/8: 72 3/8 in.
    let one = [
        ("left, right", 2, 1280, "stick"),
        ("top, bottom", 2, 1024, "stick"),
    ];
    check(&loose, "stick", 73, &one);
    let pairs = [
        ("left + right", 1, 2568, "run"),
        ("top + bottom", 1, 2056, "run"),
    ];
    check(&loose, "stick", 72, &pairs);
}

#[test]
fn any_sticks_of_one_run() {
    let run = [
        ("left, right", 2, 1280, "run"),
        ("top, bottom", 2, 1024, "run"),
    ];
    check(&frame(&FRAME, true), "run", 108, &run);
}

#[test]
fn what_need_not_match_is_free() {
    let free = [("left, right", 2, 1280, ""), ("top, bottom", 2, 1024, "")];
    check(&frame(&FRAME, false), "stick", 108, &free);
}

#[test]
fn a_square_and_an_odd_polygon() {
    let square = [("left", 10), ("right", 10), ("top", 10), ("bottom", 10)];
    let twice = [("left + right, top + bottom", 2, 1288, "run")];
    check(&frame(&square, true), "pairs", 108, &twice);
    let five = [("1", 10), ("2", 10), ("3", 10), ("4", 10), ("5", 10)];
    let rest = [("1 + 2, 3 + 4", 2, 1288, "run"), ("5", 1, 640, "run")];
    check(&frame(&five, true), "pairs", 108, &rest);
}
