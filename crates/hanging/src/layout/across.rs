//! Across a wall: how wide a row is, where its frames start, where their middles are.

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
    "a row stands in the middle of the wall",
    "left = half_down(wall - row)",
);
static NEXT: Rule = geometry(
    "row.next",
    "each frame starts a gap beyond the one before it",
    "left = before + frame + gap",
);
static MIDDLE: Rule = geometry(
    "row.middle",
    "the middle of a frame is half its width from its left edge",
    "middle = left + half_down(frame)",
);

/// Frames side by side in the middle of a wall.
pub(crate) struct Across<'a> {
    /// Their widths, left to right.
    pub(crate) widths: &'a [Stated<Length>],
    /// Left between them.
    pub(crate) gap: Stated<Length>,
    /// The wall.
    pub(crate) wall: Stated<Length>,
    /// The first frame's number among all on the wall, from zero.
    pub(crate) first: usize,
}

impl Across<'_> {
    /// The row's width and its frames' left edges.
    ///
    /// Errors: no frames, a row wider than its wall.
    pub(crate) fn placed(
        &self,
        working: &mut Working,
    ) -> Result<(Worked<Length>, Vec<Worked<Length>>), Refusal> {
        let gaps = self.widths.len().checked_sub(1).ok_or(Refusal::EmptyRow)?;
        let gaps = i64::try_from(gaps).unwrap_or(i64::MAX);
        let frames: Length = self.widths.iter().map(|width| width.value).sum();
        let (row, wall) = (frames + self.gap.value.times(gaps), self.wall.value);
        if row > wall {
            return Err(Refusal::RowTooWide { row, wall });
        }
        let frames = self.widths.iter();
        let mut inputs: Vec<(&'static str, Given)> =
            frames.map(|width| ("frame", Given::from(*width))).collect();
        inputs.push(("gap", self.gap.into()));
        let subject = Subject::nth("wall", self.first, "row_width");
        let row = working.by(&WIDTH, subject, &inputs, row);
        let inputs = [("wall", self.wall.into()), ("row", row.into())];
        let value = (wall - row.value).half_down();
        let subject = Subject::nth("wall", self.first, "left");
        let mut left = working.by(&FIRST, subject, &inputs, value);
        let mut lefts = vec![left];
        let before = self.widths.iter().take(self.widths.len() - 1);
        for (place, width) in before.enumerate() {
            left = beyond(self.first + place + 1, (left, *width), self.gap, working);
            lefts.push(left);
        }
        Ok((row, lefts))
    }
}

/// The left edge of the frame that follows another.
pub(crate) fn beyond(
    index: usize,
    (before, width): (Worked<Length>, Stated<Length>),
    gap: Stated<Length>,
    working: &mut Working,
) -> Worked<Length> {
    let inputs = [
        ("before", before.into()),
        ("frame", width.into()),
        ("gap", gap.into()),
    ];
    let value = before.value + width.value + gap.value;
    working.by(&NEXT, Subject::nth("wall", index, "left"), &inputs, value)
}

/// The middle of a frame.
pub(crate) fn middle(
    index: usize,
    (left, width): (Worked<Length>, Stated<Length>),
    working: &mut Working,
) -> Worked<Length> {
    let inputs = [("left", left.into()), ("frame", width.into())];
    let value = left.value + width.value.half_down();
    working.by(
        &MIDDLE,
        Subject::nth("wall", index, "middle"),
        &inputs,
        value,
    )
}
