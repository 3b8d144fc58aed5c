//! A row of frames on a wall.

use measure::Length;
use working::{Given, Rule, Stated, Subject, Worked, Working};

use crate::geometry;
use crate::refusal::Refusal;

static WIDTH: Rule = geometry(
    "row.width",
    "a row is its frames and the gaps between them",
    "row = sum(frame) + (count(frame) - 1) × gap",
);
static FIRST: Rule = geometry(
    "row.first",
    "the row stands in the middle of the wall",
    "left = half_down(wall - row)",
);
static NEXT: Rule = geometry(
    "row.next",
    "each frame starts a gap beyond the one before it",
    "left = before + frame + gap",
);
static CENTRE: Rule = geometry(
    "row.centre",
    "a frame hangs by its middle",
    "centre = left + half_down(frame)",
);

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
    let (gap, wall) = (plan.gap.value, plan.wall.value);
    Refusal::if_negative("the gap", gap)?;
    for frame in &plan.frames {
        Refusal::unless_positive("a frame's width", frame.value)?;
    }
    let Some((&first, rest)) = plan.frames.split_first() else {
        return Err(Refusal::EmptyRow);
    };
    let width = rest
        .iter()
        .fold(first.value, |width, frame| width + gap + frame.value);
    if width > wall {
        return Err(Refusal::RowTooWide { row: width, wall });
    }
    let mut inputs: Vec<(&'static str, Given)> = plan
        .frames
        .iter()
        .map(|&frame| ("frame", frame.into()))
        .collect();
    inputs.push(("gap", plan.gap.into()));
    let width = working.by(&WIDTH, Subject::of("row", "width"), &inputs, width);
    let lefts = lefts(plan, width, rest.len(), working);
    let centres = plan.frames.iter().zip(&lefts).enumerate();
    let centres = centres.map(|(index, (&frame, &left))| {
        let inputs = [("left", left.into()), ("frame", frame.into())];
        let value = left.value + frame.value.half_down();
        let subject = Subject::nth("row", index, "centre");
        working.by(&CENTRE, subject, &inputs, value)
    });
    Ok(Row {
        width,
        centres: centres.collect(),
        lefts,
    })
}

/// The left edges: the first, and `further` more.
fn lefts(
    plan: &RowPlan,
    width: Worked<Length>,
    further: usize,
    working: &mut Working,
) -> Vec<Worked<Length>> {
    let subject = |index| Subject::nth("row", index, "left");
    let inputs = [("wall", plan.wall.into()), ("row", width.into())];
    let value = (plan.wall.value - width.value).half_down();
    let mut left = working.by(&FIRST, subject(0), &inputs, value);
    let mut lefts = vec![left];
    for (index, &frame) in plan.frames.iter().take(further).enumerate() {
        let inputs = [
            ("before", left.into()),
            ("frame", frame.into()),
            ("gap", plan.gap.into()),
        ];
        let value = left.value + frame.value + plan.gap.value;
        left = working.by(&NEXT, subject(index + 1), &inputs, value);
        lefts.push(left);
    }
    lefts
}

#[cfg(test)]
mod tests;
