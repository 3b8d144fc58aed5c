//! Expected numbers: sums done with a pencil.

use measure::Length;
use working::{Stated, Working};

use super::{Align, Frame, Hung, Stairs, Wall, block, grid, single, stairs};
use crate::Refusal;

fn inches(n: i64) -> Stated<Length> {
    Stated::job(Length::inches(n))
}

/// A frame of this size whose hook's seat lies two inches below its top.
fn frame(width: i64, height: i64) -> Frame {
    Frame {
        width: inches(width),
        height: inches(height),
        seat: inches(2),
        hooks_apart: None,
    }
}

/// Ten feet of wall, centre at 58, gaps of 3, hooks of 1.
fn wall() -> Wall {
    Wall {
        width: inches(120),
        centre: inches(58),
        gap: inches(3),
        seat_to_nail: inches(1),
    }
}

/// Left and top of each frame, and the height of its nail, in inches.
fn places(hung: &[Hung]) -> Vec<String> {
    let each = hung.iter().map(|hung| {
        format!(
            "{} {} {}",
            hung.left.approx_inches(),
            hung.top.approx_inches(),
            hung.nails[0].above_floor.approx_inches(),
        )
    });
    each.collect()
}

/// The top alone.
fn top(place: &str) -> &str {
    place.split(' ').nth(1).expect("a top")
}

#[test]
fn one_piece_hangs_on_its_centre_in_the_middle() {
    let mut working = Working::new();
    let hung = single(frame(20, 16), &wall(), &mut working).expect("it hangs");
    assert_eq!(places(std::slice::from_ref(&hung)), ["50 66 65"]);
    assert_eq!(hung.nails[0].from_corner.value, Length::inches(60));
    assert_eq!(working.recheck(), []);
}

#[test]
fn two_nails_stand_evenly_about_the_middle() {
    let mut working = Working::new();
    let two = Frame {
        hooks_apart: Some(inches(8)),
        ..frame(20, 16)
    };
    let hung = single(two, &wall(), &mut working).expect("it hangs");
    let nails = hung.nails.iter();
    let nails: Vec<Length> = nails.map(|nail| nail.from_corner.value).collect();
    assert_eq!(nails, [56, 64].map(Length::inches));
    assert_eq!(working.recheck(), []);
}

fn aligned(align: Align) -> Vec<String> {
    let mut working = Working::new();
    let rows = [vec![frame(10, 20), frame(14, 10)], vec![frame(30, 8)]];
    let hung = block(&rows, align, &wall(), &mut working).expect("it hangs");
    assert_eq!(working.recheck(), []);
    places(&hung.concat())
}

/// Rows 20 and 8 high with a gap of 3 make a block of 31: its top is 73 1/2 up.
#[test]
fn a_block_hangs_like_one_picture() {
    assert_eq!(
        aligned(Align::Top),
        ["46.5 73.5 72.5", "59.5 73.5 72.5", "45 50.5 49.5"]
    );
    assert_eq!(top(&aligned(Align::Centre)[1]), "68.5");
    assert_eq!(top(&aligned(Align::Bottom)[1]), "63.5");
}

/// The gap of 3 hangs on 58: the upper row stands on 59 1/2, the lower hangs from 56 1/2.
#[test]
fn a_common_line_runs_through_the_block() {
    let places = aligned(Align::Line);
    let tops: Vec<&str> = places.iter().map(|place| top(place)).collect();
    assert_eq!(tops, ["79.5", "69.5", "56.5"]);
}

#[test]
fn a_single_row_on_a_line_is_centred_on_it() {
    let mut working = Working::new();
    let row = [vec![frame(10, 20), frame(14, 10)]];
    let hung = block(&row, Align::Line, &wall(), &mut working).expect("it hangs");
    let places = places(&hung.concat());
    let tops: Vec<&str> = places.iter().map(|place| top(place)).collect();
    assert_eq!(tops, ["68", "63"]);
    assert_eq!(working.recheck(), []);
}

/// Cells of 12 × 12: three across are 42 wide, two rows 27 high.
#[test]
fn a_grid_centres_each_frame_in_its_cell() {
    let mut working = Working::new();
    let frames = [frame(12, 10), frame(10, 12), frame(12, 12), frame(8, 8)];
    let hung = grid(&frames, 3, &wall(), &mut working).expect("it hangs");
    assert_eq!(
        places(&hung.concat()),
        [
            "39 70.5 69.5",
            "55 71.5 70.5",
            "69 71.5 70.5",
            "41 54.5 53.5"
        ]
    );
    assert_eq!(working.recheck(), []);
}

/// Stairs of 7 in 10: middles 14 apart climb 9.8.
#[test]
fn frames_climb_with_the_stairs() {
    let mut working = Working::new();
    let slope = Stairs {
        run: inches(10),
        rise: inches(7),
        first_left: inches(20),
    };
    let wall = Wall {
        gap: inches(4),
        ..wall()
    };
    let frames = [frame(10, 12), frame(10, 12), frame(10, 16)];
    let hung = stairs(&frames, &slope, &wall, &mut working).expect("they hang");
    let expected = [(20, 640), (34, 738), (48, 856)];
    for (hung, (left, tenths)) in hung.iter().zip(expected) {
        assert_eq!(hung.left.value, Length::inches(left));
        let off = hung.top.value.times(10) - Length::inches(tenths);
        assert!(off.abs() <= Length::QUANTUM.times(10), "{hung:?}");
    }
    assert_eq!(working.recheck(), []);
}

#[test]
fn what_does_not_fit_is_refused() {
    let mut working = Working::new();
    let wide = [vec![frame(70, 10), frame(70, 10)]];
    let refused = block(&wide, Align::Top, &wall(), &mut working).expect_err("too wide");
    assert!(matches!(refused, Refusal::RowTooWide { .. }), "{refused}");
    let refused = single(frame(10, 130), &wall(), &mut working).expect_err("too low");
    assert!(matches!(refused, Refusal::BelowFloor { .. }), "{refused}");
    let refused = block(&[], Align::Top, &wall(), &mut working).expect_err("nothing");
    assert_eq!(refused, Refusal::EmptyRow);
    let level = Stairs {
        run: inches(0),
        rise: inches(7),
        first_left: inches(0),
    };
    let refused = stairs(&[frame(10, 10)], &level, &wall(), &mut working).expect_err("no run");
    assert!(matches!(refused, Refusal::NoStairs { .. }), "{refused}");
}
