//! Rows, grids and blocks of mixed frames.

use measure::Length;
use working::{Given, Rule, Stated, Subject, Worked, Working};

use super::across::Across;
use super::{Frame, Hung, Wall, hung, look_over};
use crate::geometry;
use crate::refusal::Refusal;

static ROW_HEIGHT: Rule = geometry(
    "wall.row_height",
    "a row is as high as its highest frame",
    "height = max(frame)",
);
static BLOCK_HEIGHT: Rule = geometry(
    "wall.block_height",
    "a block is its rows and the gaps between them",
    "block = sum(row) + (count(row) - 1) × gap",
);
static BLOCK_TOP: Rule = geometry(
    "wall.block_top",
    "a block hangs on its centre like one picture",
    "top = centre + half_down(block)",
);
static LINE_TOP: Rule = geometry(
    "wall.line_top",
    "on a common line the middle row or gap hangs on the centre, the rows above it build up",
    "top = centre + half_down(middle) + sum(row) + gaps × gap",
);
static NEXT_TOP: Rule = geometry(
    "wall.next_top",
    "each further row follows below the one above and a gap",
    "top = above - height - gap",
);
static TOP_ALIKE: Rule = geometry("wall.top", "tops on one line", "top = row_top");
static TOP_CENTRED: Rule = geometry(
    "wall.top_centred",
    "centres on one line",
    "top = row_top - half_down(height - frame)",
);
static TOP_BOTTOM: Rule = geometry(
    "wall.top_bottom",
    "bottoms on one line",
    "top = row_top - (height - frame)",
);

/// How unequal frames of a row line up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Their centres.
    Centre,
    /// Their tops.
    Top,
    /// Their bottoms.
    Bottom,
    /// A common line through the block at the centre's height: rows above it stand on it, rows below hang from it, a
    /// middle row is centred on it.
    Line,
}

/// One piece in the middle of its wall.
///
/// Errors: as [`block`].
pub fn single(frame: Frame, wall: &Wall, working: &mut Working) -> Result<Hung, Refusal> {
    let mut rows = block(&[vec![frame]], Align::Centre, wall, working)?;
    let only = rows.pop().and_then(|mut row| row.pop());
    only.ok_or(Refusal::EmptyRow)
}

/// Frames in rows of so many, left to right and top to bottom, each in a cell as large as the largest frame.
///
/// Errors: as [`block`]; no columns.
pub fn grid(
    frames: &[Frame],
    columns: usize,
    wall: &Wall,
    working: &mut Working,
) -> Result<Vec<Vec<Hung>>, Refusal> {
    look_over(frames.iter(), wall)?;
    if columns == 0 {
        return Err(Refusal::EmptyRow);
    }
    let largest = |measure: fn(&Frame) -> Stated<Length>| {
        let all = frames.iter().map(measure);
        all.max_by_key(|stated| stated.value)
            .ok_or(Refusal::EmptyRow)
    };
    let cell = Cell {
        width: largest(|frame| frame.width)?,
        height: largest(|frame| frame.height)?,
    };
    let rows: Vec<Vec<Frame>> = frames.chunks(columns).map(<[Frame]>::to_vec).collect();
    placed(&rows, Align::Centre, Some(cell), wall, working)
}

/// A block of mixed frames with equal gaps, its rows in the middle of the wall, hung on its centre.
///
/// row = frames + gaps; block = rows + gaps; top = centre + block ÷ 2
///
/// Shape:  rows from the top, frames from the left, seen from the room.
/// Units:  exact; half of an odd number of quanta is rounded down, by 1/32 000 mm.
/// Errors: no frames, sizes not above zero, a gap below zero, a row wider than its wall, a frame below the floor.
/// Source: geometry.
pub fn block(
    rows: &[Vec<Frame>],
    align: Align,
    wall: &Wall,
    working: &mut Working,
) -> Result<Vec<Vec<Hung>>, Refusal> {
    look_over(rows.iter().flatten(), wall)?;
    if rows.iter().any(Vec::is_empty) {
        return Err(Refusal::EmptyRow);
    }
    placed(rows, align, None, wall, working)
}

/// The cell that every frame of a grid stands in.
#[derive(Clone, Copy)]
struct Cell {
    width: Stated<Length>,
    height: Stated<Length>,
}

fn placed(
    rows: &[Vec<Frame>],
    align: Align,
    cell: Option<Cell>,
    wall: &Wall,
    working: &mut Working,
) -> Result<Vec<Vec<Hung>>, Refusal> {
    let heights: Vec<Worked<Length>> = rows
        .iter()
        .enumerate()
        .map(|(index, row)| row_height(row, index, cell, working))
        .collect();
    let tops = tops(&heights, align, wall, working);
    let mut found = Vec::with_capacity(rows.len());
    let mut index = 0;
    // A grid's last row may be short; it starts where the others do.
    let full = rows.first().map_or(0, Vec::len);
    for (row, frames) in rows.iter().enumerate() {
        let seats = cell.map_or(frames.len(), |_| full);
        let lefts = lefts(frames, index, (cell, seats), wall, working)?;
        let side = side_of(align, row, rows.len());
        let mut hangs = Vec::with_capacity(frames.len());
        for (frame, left) in frames.iter().zip(lefts) {
            let top = top_of(frame, index, (tops[row], heights[row]), side, working);
            hangs.push(hung(frame, index, (left, top), wall, working)?);
            index += 1;
        }
        found.push(hangs);
    }
    Ok(found)
}

/// Where a row's frames line up, for a row so far down a block.
fn side_of(align: Align, row: usize, rows: usize) -> Align {
    if align != Align::Line {
        return align;
    }
    match (row * 2 + 1).cmp(&rows) {
        std::cmp::Ordering::Less => Align::Bottom,
        std::cmp::Ordering::Equal => Align::Centre,
        std::cmp::Ordering::Greater => Align::Top,
    }
}

fn row_height(
    row: &[Frame],
    index: usize,
    cell: Option<Cell>,
    working: &mut Working,
) -> Worked<Length> {
    let heights: Vec<Stated<Length>> = match cell {
        Some(cell) => vec![cell.height],
        None => row.iter().map(|frame| frame.height).collect(),
    };
    let inputs: Vec<(&'static str, Given)> = heights
        .iter()
        .map(|height| ("frame", Given::from(*height)))
        .collect();
    let value = heights.iter().map(|height| height.value).max();
    let subject = Subject::nth("wall.row", index, "height");
    working.by(&ROW_HEIGHT, subject, &inputs, value.unwrap_or_default())
}

/// The tops of the rows, from the floor.
fn tops(
    heights: &[Worked<Length>],
    align: Align,
    wall: &Wall,
    working: &mut Working,
) -> Vec<Worked<Length>> {
    let mut top = if align == Align::Line {
        line_top(heights, wall, working)
    } else {
        block_top(heights, wall, working)
    };
    let mut tops = vec![top];
    let count = heights.len();
    for (row, height) in heights.iter().take(count - 1).enumerate() {
        let inputs = [
            ("above", top.into()),
            ("height", (*height).into()),
            ("gap", wall.gap.into()),
        ];
        let value = top.value - height.value - wall.gap.value;
        let subject = Subject::nth("wall.row", row + 1, "top");
        top = working.by(&NEXT_TOP, subject, &inputs, value);
        tops.push(top);
    }
    tops
}

fn block_top(heights: &[Worked<Length>], wall: &Wall, working: &mut Working) -> Worked<Length> {
    let mut inputs: Vec<(&'static str, Given)> = heights
        .iter()
        .map(|height| ("row", Given::from(*height)))
        .collect();
    inputs.push(("gap", wall.gap.into()));
    let rows: Length = heights.iter().map(|height| height.value).sum();
    let gaps = i64::try_from(heights.len() - 1).unwrap_or_default();
    let value = rows + wall.gap.value.times(gaps);
    let subject = Subject::of("wall", "block_height");
    let block = working.by(&BLOCK_HEIGHT, subject, &inputs, value);
    let inputs = [("centre", wall.centre.into()), ("block", block.into())];
    let value = wall.centre.value + block.value.half_down();
    working.by(
        &BLOCK_TOP,
        Subject::nth("wall.row", 0, "top"),
        &inputs,
        value,
    )
}

fn line_top(heights: &[Worked<Length>], wall: &Wall, working: &mut Working) -> Worked<Length> {
    let half = heights.len().div_euclid(2);
    let (above, rest) = heights.split_at(half);
    let odd = heights.len() % 2 == 1;
    let middle: Stated<Length> = if odd { rest[0].into() } else { wall.gap };
    let gaps = i64::try_from(if odd { half } else { half - 1 }).unwrap_or_default();
    let mut inputs: Vec<(&'static str, Given)> = above
        .iter()
        .map(|height| ("row", Given::from(*height)))
        .collect();
    inputs.push(("centre", wall.centre.into()));
    inputs.push(("middle", middle.into()));
    inputs.push(("gaps", Given::job(gaps)));
    inputs.push(("gap", wall.gap.into()));
    let rows: Length = above.iter().map(|height| height.value).sum();
    let value = wall.centre.value + middle.value.half_down() + rows + wall.gap.value.times(gaps);
    working.by(
        &LINE_TOP,
        Subject::nth("wall.row", 0, "top"),
        &inputs,
        value,
    )
}

/// The left edges of a row; in a grid, of its frames in the middle of their cells.
fn lefts(
    frames: &[Frame],
    first: usize,
    (cell, seats): (Option<Cell>, usize),
    wall: &Wall,
    working: &mut Working,
) -> Result<Vec<Worked<Length>>, Refusal> {
    let widths: Vec<Stated<Length>> = match cell {
        Some(cell) => vec![cell.width; seats],
        None => frames.iter().map(|frame| frame.width).collect(),
    };
    let across = Across {
        widths: &widths,
        gap: wall.gap,
        wall: wall.width,
        first,
    };
    let (_, lefts) = across.placed(working)?;
    let each = lefts.into_iter().zip(frames).enumerate();
    let each = each.map(|(place, (left, frame))| match cell {
        Some(cell) => within_cell(left, frame, cell, first + place, working),
        None => left,
    });
    Ok(each.collect())
}

static IN_CELL: Rule = geometry(
    "wall.in_cell",
    "a frame stands in the middle of its cell",
    "left = cell_left + half_down(cell - frame)",
);

fn within_cell(
    left: Worked<Length>,
    frame: &Frame,
    cell: Cell,
    index: usize,
    working: &mut Working,
) -> Worked<Length> {
    let inputs = [
        ("cell_left", left.into()),
        ("cell", cell.width.into()),
        ("frame", frame.width.into()),
    ];
    let value = left.value + (cell.width.value - frame.width.value).half_down();
    working.by(
        &IN_CELL,
        Subject::nth("wall", index, "left"),
        &inputs,
        value,
    )
}

fn top_of(
    frame: &Frame,
    index: usize,
    (row_top, height): (Worked<Length>, Worked<Length>),
    align: Align,
    working: &mut Working,
) -> Worked<Length> {
    let subject = Subject::nth("wall", index, "top");
    let spare = height.value - frame.height.value;
    let (rule, value) = match align {
        Align::Top => {
            let inputs = [("row_top", row_top.into())];
            return working.by(&TOP_ALIKE, subject, &inputs, row_top.value);
        }
        Align::Centre | Align::Line => (&TOP_CENTRED, row_top.value - spare.half_down()),
        Align::Bottom => (&TOP_BOTTOM, row_top.value - spare),
    };
    let inputs = [
        ("row_top", row_top.into()),
        ("height", height.into()),
        ("frame", frame.height.into()),
    ];
    working.by(rule, subject, &inputs, value)
}
