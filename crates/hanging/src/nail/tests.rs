//! Expected numbers: sums done with a pencil.

use measure::Length;
use working::Working;

use super::{Nail, NailPlan, nail};
use crate::{Refusal, Stated};

fn eighths(n: i64) -> Stated<Length> {
    Stated::job(Length::inch_fraction(n, 8))
}

/// Height 25 1/2, rings 8 1/2 down, rise 3, centre at 58, hook 1 1/4.
fn plan() -> NailPlan {
    NailPlan {
        centre: eighths(464),
        outside_height: eighths(204),
        ring_drop: eighths(68),
        rise: eighths(24),
        seat_to_nail: eighths(10),
    }
}

fn placed(plan: &NailPlan) -> Result<Nail, Refusal> {
    let mut working = Working::new();
    let nail = nail(plan, &mut working)?;
    let amiss = working.recheck();
    assert!(amiss.is_empty(), "{amiss:?}");
    Ok(nail)
}

#[test]
fn the_nail_stands_above_the_seat() {
    let nail = placed(&plan()).expect("it hangs");
    assert_eq!(nail.seat_below_top.exact_inches(), "5 1/2 in");
    assert_eq!(nail.seat_above_floor.exact_inches(), "65 1/4 in");
    assert_eq!(nail.above_floor.exact_inches(), "66 1/2 in");
}

/// From the seat down to the frame's bottom and up again is the frame.
#[test]
fn the_picture_hangs_on_its_centre() {
    let plan = NailPlan {
        outside_height: Stated::job(Length::from_quanta(10_362_001)),
        ..plan()
    };
    let nail = placed(&plan).expect("it hangs");
    let top = nail.seat_above_floor.value + nail.seat_below_top.value;
    let bottom = top - plan.outside_height.value;
    let middle = (top + bottom).half_down();
    assert!((plan.centre.value - middle).abs() <= Length::QUANTUM);
}

#[test]
fn rings_straight_on_hooks_have_no_rise() {
    let plan = NailPlan {
        rise: eighths(0),
        ..plan()
    };
    let nail = placed(&plan).expect("it hangs");
    assert_eq!(nail.seat_below_top.value, plan.ring_drop.value);
}

#[test]
fn what_cannot_hang_is_refused() {
    let refused = |plan: NailPlan| placed(&plan).expect_err("it can't hang").to_string();
    assert_eq!(
        refused(NailPlan {
            rise: eighths(72),
            ..plan()
        }),
        "the rings are 8 1/2 in (215.9 mm) down and the wire rises 9 in (228.6 mm), so the hook \
         would show above the frame; set the rings lower, or shorten the wire"
    );
    assert_eq!(
        refused(NailPlan {
            centre: eighths(80),
            ..plan()
        }),
        "the picture's centre is 10 in (254 mm) up and the frame 25 1/2 in (647.7 mm) high, so it \
         would reach below the floor; raise the centre to 12 3/4 in (323.85 mm) or more"
    );
    assert_eq!(
        refused(NailPlan {
            outside_height: eighths(0),
            ..plan()
        }),
        "the frame's height is 0 in (0 mm); give more than zero"
    );
    assert_eq!(
        refused(NailPlan {
            seat_to_nail: eighths(-1),
            ..plan()
        }),
        "the distance from seat to nail is -1/8 in (-3.175 mm); give zero or more"
    );
}
