//! Where the nail goes.

use measure::Length;
use sizing::hook_below_top;
use working::{Rule, Stated, Subject, Worked, Working};

use crate::geometry;
use crate::refusal::Refusal;

static SEAT_HEIGHT: Rule = geometry(
    "nail.seat_above_floor",
    "the seat is at the picture's centre and half the frame, less what it lies below the top",
    "seat = centre + half_down(height) - below_top",
);
static NAIL: Rule = geometry(
    "nail.above_floor",
    "the nail enters above the seat of its hook",
    "nail = seat + seat_to_nail",
);

/// What the place of a nail depends on.
#[derive(Clone, Copy, Debug)]
pub struct NailPlan {
    /// From the floor to the picture's centre.
    pub centre: Stated<Length>,
    /// Outside height of the frame.
    pub outside_height: Stated<Length>,
    /// From the frame's top down to its rings.
    pub ring_drop: Stated<Length>,
    /// How far the wire rises above the rings under load; zero for rings set straight on hooks.
    pub rise: Stated<Length>,
    /// From the seat of the hook up to its nail.
    pub seat_to_nail: Stated<Length>,
}

/// Where the nail goes.
#[derive(Clone, Copy, Debug)]
pub struct Nail {
    /// From the frame's top down to the hook's seat.
    pub seat_below_top: Worked<Length>,
    /// From the floor to the hook's seat.
    pub seat_above_floor: Worked<Length>,
    /// From the floor to the nail.
    pub above_floor: Worked<Length>,
}

/// The height of the nail.
///
/// nail = centre + height ÷ 2 − (ring drop − rise) + seat to nail
///
/// Shape:  heights from the floor, the frame upright.
/// Units:  exact; half of an odd number of quanta is rounded down, by 1/32 000 mm.
/// Errors: heights that are not above zero, a hook that would show, a frame below the floor.
/// Source: geometry; checked in `suite/ref/bench`.
/// Example: centre 58, height 25 1/2, rings 8 1/2 down, rise 3, hook 1 1/4: nail at 66 1/2 in.
pub fn nail(plan: &NailPlan, working: &mut Working) -> Result<Nail, Refusal> {
    let (centre, height) = (plan.centre.value, plan.outside_height.value);
    let (drop, rise) = (plan.ring_drop.value, plan.rise.value);
    Refusal::unless_positive("the frame's height", height)?;
    Refusal::if_negative("the rise of the wire", rise)?;
    Refusal::if_negative("the distance from seat to nail", plan.seat_to_nail.value)?;
    if rise > drop {
        return Err(Refusal::HookShows { drop, rise });
    }
    if centre < height - height.half_down() {
        return Err(Refusal::BelowFloor { centre, height });
    }
    let subject = |quantity| Subject::of("nail", quantity);
    let below = hook_below_top(plan.ring_drop, plan.rise, working);
    let inputs = [
        ("centre", plan.centre.into()),
        ("height", plan.outside_height.into()),
        ("below_top", below.into()),
    ];
    let value = centre + height.half_down() - below.value;
    let seat = working.by(&SEAT_HEIGHT, subject("seat_above_floor"), &inputs, value);
    let inputs = [
        ("seat", seat.into()),
        ("seat_to_nail", plan.seat_to_nail.into()),
    ];
    let value = seat.value + plan.seat_to_nail.value;
    Ok(Nail {
        seat_below_top: below,
        seat_above_floor: seat,
        above_floor: working.by(&NAIL, subject("above_floor"), &inputs, value),
    })
}

#[cfg(test)]
mod tests;
