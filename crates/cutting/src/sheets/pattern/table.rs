//! The most that any block of a sheet is worth, with edge-to-edge cuts in any number of stages.
//!
//! A dynamic programme over the points of both axes, parts without regard to counts (Beasley,
//! "Algorithms for unconstrained two-dimensional guillotine cutting", 1985). A block that is worth
//! no more than two smaller ones side by side is never cut off as a block of its own, which spares
//! most of the work.

use super::super::Axis;
use super::points::{ceil, floor};
use super::shape::{Lying, Shape};
use crate::Pace;

/// A cell of the table: as narrow as the values allow.
pub(super) trait Worth: Copy + Ord + Default + std::ops::Add<Output = Self> {
    /// The value is known to fit.
    fn from_u64(value: u64) -> Self;
    fn into_u64(self) -> u64;
}

impl Worth for u32 {
    fn from_u64(value: u64) -> Self {
        u32::try_from(value).unwrap_or(u32::MAX)
    }

    fn into_u64(self) -> u64 {
        u64::from(self)
    }
}

impl Worth for u64 {
    fn from_u64(value: u64) -> Self {
        value
    }

    fn into_u64(self) -> u64 {
        self
    }
}

/// Point indices across and up.
type Place = (usize, usize);

/// Column by column: all heights of the first width, then of the next.
pub(super) struct Table<'a, V> {
    xs: &'a [u32],
    ys: &'a [u32],
    cells: Vec<V>,
}

impl<'a, V: Worth> Table<'a, V> {
    /// Fills the table; `None` when the pace ends before.
    pub(super) fn fill(
        xs: &'a [u32],
        ys: &'a [u32],
        parts: &[Lying],
        pace: &mut Pace<'_>,
    ) -> Option<Self> {
        let tall = ys.len();
        let mut cells = vec![V::default(); xs.len() * tall];
        let starts = starts(xs, ys, parts);
        let mut next = 0;
        let mut basic: Vec<usize> = Vec::new();
        let mut before = vec![V::default(); tall];
        let mut stack = Stack::new(ys);
        for at in 1..xs.len() {
            let (done, rest) = cells.split_at_mut(at * tall);
            let column = &mut rest[..tall];
            column.copy_from_slice(&done[(at - 1) * tall..]);
            for &first in &basic {
                if xs[first] > xs[at] / 2 {
                    break;
                }
                let second = floor(xs, xs[at] - xs[first]);
                side_by_side(
                    column,
                    &done[first * tall..(first + 1) * tall],
                    &done[second * tall..(second + 1) * tall],
                );
            }
            before.copy_from_slice(column);
            while let Some(&(x, y, worth)) = starts.get(next)
                && x == at
            {
                column[y] = column[y].max(V::from_u64(worth));
                next += 1;
            }
            let steps = stack.pile(column) + basic.len() * tall / 8 + tall;
            if column.iter().zip(&before).any(|(now, then)| now > then) {
                basic.push(at);
            }
            if !pace.spend(steps as u64) {
                return None;
            }
        }
        Some(Self { xs, ys, cells })
    }

    fn cell(&self, x: usize, y: usize) -> V {
        self.cells[x * self.ys.len() + y]
    }

    /// What a block of these point indices is worth.
    pub(super) fn worth(&self, x: usize, y: usize) -> u64 {
        self.cell(x, y).into_u64()
    }

    /// A layout worth as much; `None` for a block worth nothing.
    ///
    /// The smaller of two blocks is looked into at once, the larger goes on in the loop: so the
    /// depth stays small however many parts there are.
    pub(super) fn layout(&self, x: usize, y: usize, parts: &[Lying]) -> Option<Shape> {
        let mut cut_off: Vec<(Axis, Shape)> = Vec::new();
        let (mut x, mut y) = (x, y);
        let mut whole = loop {
            let worth = self.cell(x, y);
            if worth == V::default() {
                break None;
            }
            while x > 1 && self.cell(x - 1, y) == worth {
                x -= 1;
            }
            while y > 1 && self.cell(x, y - 1) == worth {
                y -= 1;
            }
            if let Some(part) = self.single(x, y, parts) {
                break Some(part);
            }
            let (axis, first, second) = self.cut(x, y)?;
            if let Some(shape) = self.layout(first.0, first.1, parts) {
                cut_off.push((axis, shape));
            }
            (x, y) = second;
        };
        while let Some((axis, shape)) = cut_off.pop() {
            let mut shapes = vec![shape];
            while cut_off.last().is_some_and(|(next, _)| *next == axis) {
                shapes.extend(cut_off.pop().map(|(_, shape)| shape));
            }
            shapes.extend(whole.take());
            whole = Some(Shape::row(axis, shapes));
        }
        whole
    }

    /// The part that is worth all that a block is worth.
    fn single(&self, x: usize, y: usize, parts: &[Lying]) -> Option<Shape> {
        let (width, height, worth) = (self.xs[x], self.ys[y], self.worth(x, y));
        let fits =
            |part: &&Lying| part.width <= width && part.height <= height && part.worth == worth;
        parts.iter().find(fits).map(Lying::shape)
    }

    /// Two blocks worth as much as this one, the smaller first.
    fn cut(&self, x: usize, y: usize) -> Option<(Axis, Place, Place)> {
        let worth = self.cell(x, y);
        for first in 1..x {
            let second = floor(self.xs, self.xs[x] - self.xs[first]);
            if second < first {
                break;
            }
            if self.cell(first, y) + self.cell(second, y) == worth {
                return Some((Axis::X, (first, y), (second, y)));
            }
        }
        for first in 1..y {
            let second = floor(self.ys, self.ys[y] - self.ys[first]);
            if second < first {
                break;
            }
            if self.cell(x, first) + self.cell(x, second) == worth {
                return Some((Axis::Y, (x, first), (x, second)));
            }
        }
        None
    }
}

/// Parts by the first point that holds them: width index, height index, worth.
fn starts(xs: &[u32], ys: &[u32], parts: &[Lying]) -> Vec<(usize, usize, u64)> {
    let mut starts: Vec<(usize, usize, u64)> = parts
        .iter()
        .filter(|part| part.worth > 0)
        .filter_map(|part| Some((ceil(xs, part.width)?, ceil(ys, part.height)?, part.worth)))
        .collect();
    starts.sort_unstable();
    starts
}

fn side_by_side<V: Worth>(column: &mut [V], first: &[V], second: &[V]) {
    for ((cell, &a), &b) in column.iter_mut().zip(first).zip(second) {
        *cell = (*cell).max(a + b);
    }
}

/// Blocks of one width piled one on another.
struct Stack<'a, V> {
    ys: &'a [u32],
    best: Vec<V>,
    /// Where subtracting a point from each point leads, row by row, if there is room to keep it.
    after: Vec<u16>,
}

/// Points up to which all differences are kept.
const KEPT: usize = 2048;

impl<'a, V: Worth> Stack<'a, V> {
    fn new(ys: &'a [u32]) -> Self {
        let mut after = Vec::new();
        if ys.len() <= KEPT {
            after = vec![0; ys.len() * ys.len()];
            for low in 1..ys.len() {
                let line = &mut after[low * ys.len()..(low + 1) * ys.len()];
                walk(ys, low, |at, rest| {
                    line[at] = u16::try_from(rest).unwrap_or(0);
                });
            }
        }
        Self {
            ys,
            best: vec![V::default(); ys.len()],
            after,
        }
    }

    /// Makes each cell of a column the most that blocks piled up to its height are worth, given
    /// what single blocks are worth. Answers the steps taken.
    fn pile(&mut self, column: &mut [V]) -> usize {
        let tall = self.ys.len();
        let best = &mut self.best;
        best.fill(V::default());
        let mut steps = tall;
        for low in 1..tall {
            let single = column[low];
            if single <= best[low] {
                continue;
            }
            steps += tall - low;
            if self.after.is_empty() {
                walk(self.ys, low, |at, rest| {
                    best[at] = best[at].max(single + best[rest]);
                });
            } else {
                let line = &self.after[low * tall..(low + 1) * tall];
                for at in low..tall {
                    best[at] = best[at].max(single + best[usize::from(line[at])]);
                }
            }
        }
        column.copy_from_slice(best);
        steps
    }
}

/// For every point from `low` on, ascending: its index and that of the last point not above the
/// difference.
fn walk(points: &[u32], low: usize, mut step: impl FnMut(usize, usize)) {
    let mut rest = 0;
    for at in low..points.len() {
        let left = points[at] - points[low];
        while rest + 1 < points.len() && points[rest + 1] <= left {
            rest += 1;
        }
        step(at, rest);
    }
}
