//! Frames that climb with a stairway.

use measure::Length;
use working::{Rule, Stated, Subject, Worked, Working};

use super::across::{beyond, middle};
use super::{Frame, Hung, Wall, hung, look_over};
use crate::geometry;
use crate::refusal::Refusal;

static FIRST_LEFT: Rule = geometry(
    "stairs.first_left",
    "the first frame stands where it is wanted",
    "left = stated",
);
static FIRST_CENTRE: Rule = geometry(
    "stairs.first_centre",
    "the first frame hangs on its centre",
    "centre = stated",
);
static NEXT_CENTRE: Rule = geometry(
    "stairs.next_centre",
    "centres climb with the stairs, from the middle of one frame to the middle of the next",
    "centre = below + nearest((middle - middle_below) × rise ÷ run)",
);
static TOP: Rule = geometry(
    "stairs.top",
    "the top is half a frame above the centre",
    "top = centre + half_down(frame)",
);

/// A stairway that climbs to the right; a rise below zero climbs to the left.
#[derive(Clone, Copy, Debug)]
pub struct Stairs {
    /// One tread, or any level distance.
    pub run: Stated<Length>,
    /// One riser, or the climb over that distance.
    pub rise: Stated<Length>,
    /// From the wall's left corner to the first frame.
    pub first_left: Stated<Length>,
}

/// Frames along a stairway, with equal gaps, their centres on its slope.
///
/// next centre = centre + (distance of the middles) × rise ÷ run
///
/// Shape:  heights from the floor at the foot of the stairs; the wall's `centre` is the first frame's.
/// Units:  exact but for the climb, to the nearest quantum.
/// Errors: no frames, sizes not above zero, no run, a row wider than its wall, a frame below the floor.
/// Source: geometry.
/// Example: rise 7, run 10; frames of 10 with gaps of 4: each centre 9.8 above the last.
pub fn stairs(
    frames: &[Frame],
    slope: &Stairs,
    wall: &Wall,
    working: &mut Working,
) -> Result<Vec<Hung>, Refusal> {
    look_over(frames.iter(), wall)?;
    if !slope.run.value.is_positive() {
        let (run, rise) = (slope.run.value, slope.rise.value);
        return Err(Refusal::NoStairs { run, rise });
    }
    Refusal::if_negative("the place of the first frame", slope.first_left.value)?;
    let mut found = Vec::with_capacity(frames.len());
    let mut before: Option<Step> = None;
    for (index, frame) in frames.iter().enumerate() {
        let step = match before {
            None => first(slope, wall, working),
            Some((left, below)) => {
                let neighbour = &frames[index - 1];
                next(
                    index,
                    (neighbour, frame),
                    (left, below),
                    slope,
                    wall,
                    working,
                )?
            }
        };
        let (left, centre) = step;
        let right = left.value + frame.width.value;
        if right > wall.width.value {
            let wall = wall.width.value;
            return Err(Refusal::RowTooWide { row: right, wall });
        }
        let inputs = [("centre", centre.into()), ("frame", frame.height.into())];
        let value = centre.value + frame.height.value.half_down();
        let top = working.by(&TOP, Subject::nth("wall", index, "top"), &inputs, value);
        found.push(hung(frame, index, (left, top), wall, working)?);
        before = Some(step);
    }
    Ok(found)
}

/// A frame's left edge and its centre's height.
type Step = (Worked<Length>, Worked<Length>);

fn first(slope: &Stairs, wall: &Wall, working: &mut Working) -> Step {
    let subject = |quantity| Subject::nth("wall", 0, quantity);
    let inputs = [("stated", slope.first_left.into())];
    let value = slope.first_left.value;
    let left = working.by(&FIRST_LEFT, subject("left"), &inputs, value);
    let inputs = [("stated", wall.centre.into())];
    let value = wall.centre.value;
    (
        left,
        working.by(&FIRST_CENTRE, subject("centre"), &inputs, value),
    )
}

fn next(
    index: usize,
    (neighbour, frame): (&Frame, &Frame),
    (before, below): Step,
    slope: &Stairs,
    wall: &Wall,
    working: &mut Working,
) -> Result<Step, Refusal> {
    let subject = |quantity| Subject::nth("wall", index, quantity);
    let left = beyond(index, (before, neighbour.width), wall.gap, working);
    let lower = middle(index - 1, (before, neighbour.width), working);
    let own = middle(index, (left, frame.width), working);
    let climb = climb_nearest(own.value - lower.value, slope)?;
    let inputs = [
        ("below", below.into()),
        ("middle", own.into()),
        ("middle_below", lower.into()),
        ("rise", slope.rise.into()),
        ("run", slope.run.into()),
    ];
    let value = below.value + climb;
    Ok((
        left,
        working.by(&NEXT_CENTRE, subject("centre"), &inputs, value),
    ))
}

/// How far the stairs climb over a level distance, to the nearest quantum, a tie going away from zero.
fn climb_nearest(over: Length, slope: &Stairs) -> Result<Length, Refusal> {
    let run = i128::from(slope.run.value.quanta());
    let product = i128::from(over.quanta()) * i128::from(slope.rise.value.quanta());
    let size = (product.abs() * 2 + run).div_euclid(run * 2);
    let climb = i64::try_from(size * product.signum()).ok();
    let climb = climb.filter(|quanta| *quanta <= Length::LIMIT.quanta());
    climb.map(Length::from_quanta).ok_or(Refusal::NoStairs {
        run: slope.run.value,
        rise: slope.rise.value,
    })
}
