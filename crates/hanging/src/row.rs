//! A row of frames on a wall.

use measure::Length;
use working::{Stated, Worked, Working};

use crate::layout::{Across, middle};
use crate::refusal::Refusal;

/// What a row is made of.
#[derive(Clone, Debug)]
pub struct RowPlan {
    /// Width of the wall.
    pub wall: Stated<Length>,
    /// Outside widths of the frames, left to right.
    pub frames: Vec<Stated<Length>>,
    /// Wall left between neighbours.
    pub gap: Stated<Length>,
}

/// A row in its place, from the wall's left end.
#[derive(Clone, Debug)]
pub struct Row {
    /// From the first frame's left edge to the last one's right.
    pub width: Worked<Length>,
    /// Left edges, left to right.
    pub lefts: Vec<Worked<Length>>,
    /// Centres, left to right: where a single hook goes.
    pub centres: Vec<Worked<Length>>,
}

/// Places a row in the middle of its wall.
///
/// row = frames + gaps; first left = (wall − row) ÷ 2; each further left a frame and a gap on
///
/// Shape:  across the wall from its left end, seen from the room; frames are numbered from 1.
/// Units:  exact; half of an odd number of quanta is rounded down, by 1/32 000 mm.
/// Errors: no frames, widths not above zero, a gap below zero, a row wider than its wall.
/// Source: geometry; checked in `suite/ref/bench`.
/// Example: 14 1/2, 18 1/2, 14 1/2 and 11 in with gaps of 3 on 120 in: the first at 26 1/4 in.
pub fn row(plan: &RowPlan, working: &mut Working) -> Result<Row, Refusal> {
    Refusal::if_negative("the gap", plan.gap.value)?;
    for frame in &plan.frames {
        Refusal::unless_positive("a frame's width", frame.value)?;
    }
    let across = Across {
        widths: &plan.frames,
        gap: plan.gap,
        wall: plan.wall,
        first: 0,
    };
    let (width, lefts) = across.placed(working)?;
    let centres = plan.frames.iter().zip(&lefts).enumerate();
    let centres = centres.map(|(index, (&frame, &left))| middle(index, (left, frame), working));
    Ok(Row {
        width,
        centres: centres.collect(),
        lefts,
    })
}

#[cfg(test)]
mod tests;
