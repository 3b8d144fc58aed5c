//! Expected numbers: sums done with a pencil.

use measure::Length;
use working::{Worked, Working};

use super::{Row, RowPlan, row};
use crate::{Refusal, Stated};

fn halves(n: i64) -> Stated<Length> {
    Stated::job(Length::inch_fraction(n, 2))
}

fn plan(wall: i64, frames: &[i64], gap: i64) -> RowPlan {
    RowPlan {
        wall: halves(wall),
        frames: frames.iter().map(|&frame| halves(frame)).collect(),
        gap: halves(gap),
    }
}

fn placed(plan: &RowPlan) -> Result<Row, Refusal> {
    let mut working = Working::new();
    let row = row(plan, &mut working)?;
    let amiss = working.recheck();
    assert!(amiss.is_empty(), "{amiss:?}");
    Ok(row)
}

fn inches(places: &[Worked<Length>]) -> Vec<String> {
    places.iter().map(|place| place.exact_inches()).collect()
}

#[test]
fn four_frames_on_a_wall_of_ten_feet() {
    let row = placed(&plan(240, &[29, 37, 29, 22], 6)).expect("it fits");
    assert_eq!(row.width.exact_inches(), "67 1/2 in");
    assert_eq!(
        inches(&row.lefts),
        ["26 1/4 in", "43 3/4 in", "65 1/4 in", "82 3/4 in"]
    );
    assert_eq!(
        inches(&row.centres),
        ["33 1/2 in", "53 in", "72 1/2 in", "88 1/4 in"]
    );
}

#[test]
fn both_ends_of_the_wall_are_left_alike() {
    let plan = plan(241, &[29, 37, 22], 5);
    let row = placed(&plan).expect("it fits");
    let (Some(first), Some(last)) = (row.lefts.first(), row.lefts.last()) else {
        unreachable!("three frames")
    };
    let right = plan.wall.value - last.value - plan.frames[2].value;
    assert!((right - first.value).abs() <= Length::QUANTUM);
}

#[test]
fn one_frame_needs_no_gap() {
    let row = placed(&plan(240, &[40], 6)).expect("it fits");
    assert_eq!(inches(&row.lefts), ["50 in"]);
    assert_eq!(inches(&row.centres), ["60 in"]);
}

#[test]
fn a_row_as_wide_as_its_wall_fits() {
    let row = placed(&plan(86, &[40, 40], 6)).expect("it fits");
    assert_eq!(inches(&row.lefts), ["0 in", "23 in"]);
}

#[test]
fn what_cannot_hang_is_refused() {
    let refused = |plan: RowPlan| placed(&plan).expect_err("it can't hang").to_string();
    assert_eq!(
        refused(plan(85, &[40, 40], 6)),
        "the row is 43 in (1092.2 mm) wide and the wall 42 1/2 in (1079.5 mm); take 1/2 in (12.7 mm) \
         out of its gaps and frames, or hang it in two rows"
    );
    assert_eq!(
        refused(plan(85, &[], 6)),
        "the row has no frames; name at least one"
    );
    assert_eq!(
        refused(plan(85, &[0], 6)),
        "a frame's width is 0 in (0 mm); give more than zero"
    );
    assert_eq!(
        refused(plan(85, &[4, 4], -6)),
        "the gap is -3 in (-76.2 mm); give zero or more"
    );
}
