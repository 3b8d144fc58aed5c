//! The best layout of one kind of sheet for given worths of the parts, counts not regarded.
//!
//! For bounds the rules may be relaxed (more stages, no least strip) and sizes rounded down; for
//! plans they may be tightened and sizes rounded up. Where neither was needed the answer is exact.

use super::super::{Axis, Reduced};
use super::points;
use super::shape::{Lying, Shape};
use super::strips::Strips;
use super::table::Table;
use crate::Pace;

/// What an answer is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Purpose {
    /// Nothing can be worth more.
    Bound,
    /// The layout can be cut.
    Plan,
}

/// Cells of the largest table: 32 MiB of narrow cells.
const CELLS: usize = 8 << 20;

/// Steps of a quick answer.
const QUICK: u64 = 400_000;

/// One kind of sheet, prepared.
pub(super) struct Oracle<'a> {
    pub(super) reduced: &'a Reduced,
    pub(super) stock: usize,
    /// Points along X and Y, in units of the grid.
    pub(super) xs: Vec<u32>,
    pub(super) ys: Vec<u32>,
    /// Sizes are counted in so many units.
    grid: (u32, u32),
    purpose: Purpose,
    /// Stages of the nested knapsacks; `None`: any number.
    stages: Option<u32>,
    least: u32,
}

/// An answer.
pub(super) struct Best {
    pub(super) worth: u64,
    pub(super) shape: Option<Shape>,
}

impl<'a> Oracle<'a> {
    /// Prepares a sheet with at most so many points on each axis.
    pub(super) fn new(reduced: &'a Reduced, stock: usize, purpose: Purpose, most: usize) -> Self {
        let most = most.clamp(16, 4096);
        let limited = reduced.stages.most;
        let least = match purpose {
            Purpose::Bound => 0,
            Purpose::Plan => reduced.least_strip,
        };
        let stages = match purpose {
            Purpose::Bound => (limited <= 3).then_some(limited),
            Purpose::Plan => (limited != u32::MAX || least > 0).then_some(limited.min(3)),
        };
        let sheet = &reduced.stock[stock];
        let mut most = most;
        loop {
            let (xs, gx) = axis_points(reduced, stock, Axis::X, purpose, most);
            let (ys, gy) = axis_points(reduced, stock, Axis::Y, purpose, most);
            if xs.len() * ys.len() <= CELLS {
                let grid = (gx, gy);
                debug_assert!(sheet.width >= gx || sheet.height >= gy);
                return Self {
                    reduced,
                    stock,
                    xs,
                    ys,
                    grid,
                    purpose,
                    stages,
                    least,
                };
            }
            most = most / 4 * 3;
        }
    }

    /// Prepares a sheet as finely as the steps of one answer allow.
    pub(super) fn within(
        reduced: &'a Reduced,
        stock: usize,
        purpose: Purpose,
        effort: u64,
    ) -> Self {
        let mut most = 4096;
        loop {
            let oracle = Self::new(reduced, stock, purpose, most);
            if oracle.effort() <= effort || most <= 64 {
                return oracle;
            }
            most = most / 4 * 3;
        }
    }

    /// Whether the answer is the very most, neither more nor less, when counts do not bind.
    pub(super) fn is_exact(&self) -> bool {
        let limited = self.reduced.stages.most;
        self.grid == (1, 1)
            && self.reduced.least_strip == 0
            && match self.stages {
                None => limited == u32::MAX,
                Some(stages) => stages == limited,
            }
    }

    /// Whether sizes are counted as they are.
    pub(super) fn is_fine(&self) -> bool {
        self.grid == (1, 1)
    }

    /// Whether an answer for a bound can be cut, counts aside.
    pub(super) fn can_be_cut(&self) -> bool {
        self.purpose == Purpose::Plan || self.is_exact()
    }

    /// The sheet's size.
    pub(super) fn size(&self) -> (u32, u32) {
        let sheet = &self.reduced.stock[self.stock];
        (sheet.width, sheet.height)
    }

    /// Roughly the steps of one answer.
    pub(super) fn effort(&self) -> u64 {
        let (xs, ys) = (self.xs.len() as u64, self.ys.len() as u64);
        let parts = self.reduced.parts.len() as u64;
        match self.stages {
            None => xs * ys * (xs + ys) / 16,
            Some(3..) => xs * ys * parts.clamp(1, 40) / 4,
            Some(_) => (xs + ys) * parts * 2,
        }
    }

    /// A sheet for plans in a hurry: few stages, as far as the rules allow any.
    pub(super) fn quick(reduced: &'a Reduced, stock: usize) -> Self {
        let mut oracle = Self::new(reduced, stock, Purpose::Plan, 1024);
        oracle.stages = Some(reduced.stages.most.min(3));
        if oracle.stages == Some(3) && oracle.effort() > QUICK {
            oracle.stages = Some(2);
        }
        oracle
    }

    /// The best layout within a part of the sheet; `None` when the pace ends before.
    ///
    /// `worths` and `counts` per part; a part worth 0 or with a count of 0 is left out. With an
    /// axis given, the first cuts of limited stages run along it.
    pub(super) fn best_in(
        &self,
        room: (u32, u32),
        worths: &[u64],
        counts: &[u64],
        axis: Option<Axis>,
        pace: &mut Pace<'_>,
    ) -> Option<Best> {
        let true_room = room;
        let room = (room.0 / self.grid.0, room.1 / self.grid.1);
        let parts = self.lying(worths, counts);
        let Some(stages) = self.stages else {
            return if narrow_enough(&parts, room) {
                in_table::<u32>(self, room, &parts, pace)
            } else {
                in_table::<u64>(self, room, &parts, pace)
            };
        };
        let first = self.reduced.stages.first.or(axis);
        let mut best: Option<Best> = None;
        for axis in [Axis::X, Axis::Y] {
            if first.is_some_and(|first| first != axis) {
                continue;
            }
            let found = self.in_strips(axis, stages, true_room, &parts, pace)?;
            if best.as_ref().is_none_or(|best| found.worth > best.worth) {
                best = Some(found);
            }
        }
        best
    }

    /// The best layout of the whole sheet.
    pub(super) fn best(&self, worths: &[u64], counts: &[u64], pace: &mut Pace<'_>) -> Option<Best> {
        self.best_in(self.size(), worths, counts, None, pace)
    }

    fn in_strips(
        &self,
        axis: Axis,
        stages: u32,
        room: (u32, u32),
        parts: &[Lying],
        pace: &mut Pace<'_>,
    ) -> Option<Best> {
        let transposed: Vec<Lying>;
        let (xs, ys, room, grid, parts) = match axis {
            Axis::X => (&self.xs, &self.ys, room, self.grid, parts),
            Axis::Y => {
                transposed = parts.iter().map(|part| part.transposed()).collect();
                {
                    let (room, grid) = ((room.1, room.0), (self.grid.1, self.grid.0));
                    (&self.ys, &self.xs, room, grid, &transposed[..])
                }
            }
        };
        let strips = Strips {
            xs,
            ys,
            width: room.0 / grid.0,
            height: room.1 / grid.1,
            grid,
            true_height: room.1,
            stages,
            trim: self.reduced.stages.final_trim || self.reduced.stages.most > stages,
            least: self.least,
        };
        let (worth, shape) = strips.best(parts, pace)?;
        Some(Best {
            worth,
            shape: shape.map(|shape| match axis {
                Axis::X => shape,
                Axis::Y => shape.transposed(),
            }),
        })
    }

    /// Parts as they may lie on this sheet, sizes counted in the grid.
    pub(super) fn lying(&self, worths: &[u64], counts: &[u64]) -> Vec<Lying> {
        let (width, height) = self.size();
        let mut all = Vec::new();
        for (number, part) in self.reduced.parts.iter().enumerate() {
            if worths[number] == 0 || counts[number] == 0 {
                continue;
            }
            for turned in [false, true] {
                let (w, h) = if turned {
                    (part.height, part.width)
                } else {
                    (part.width, part.height)
                };
                if turned && !part.turn || w > width || h > height {
                    continue;
                }
                all.push(Lying {
                    part: number,
                    turned,
                    width: rounded(w, self.grid.0, self.purpose),
                    height: rounded(h, self.grid.1, self.purpose),
                    true_size: (w, h),
                    worth: worths[number],
                    count: counts[number],
                });
            }
        }
        all
    }
}

/// In units of the grid: down for bounds, up for plans, never nothing.
fn rounded(size: u32, grid: u32, purpose: Purpose) -> u32 {
    match purpose {
        Purpose::Bound => (size / grid).max(1),
        Purpose::Plan => size.div_ceil(grid),
    }
}

/// Points on one axis and the grid they are counted in: as fine as the number of points allows.
fn axis_points(
    reduced: &Reduced,
    stock: usize,
    axis: Axis,
    purpose: Purpose,
    most: usize,
) -> (Vec<u32>, u32) {
    let sheet = &reduced.stock[stock];
    let room = match axis {
        Axis::X => sheet.width,
        Axis::Y => sheet.height,
    };
    let mut sizes = Vec::new();
    for part in &reduced.parts {
        let fits = |w: u32, h: u32| w <= sheet.width && h <= sheet.height;
        let (straight, turned) = match axis {
            Axis::X => (part.width, part.height),
            Axis::Y => (part.height, part.width),
        };
        if fits(part.width, part.height) {
            sizes.push((straight, part.count));
        }
        if part.turn && fits(part.height, part.width) {
            sizes.push((turned, part.count));
        }
    }
    let mut grid = 1;
    loop {
        let scaled: Vec<(u32, u64)> = sizes
            .iter()
            .map(|&(size, count)| (rounded(size, grid, purpose), count))
            .collect();
        let least = u32::try_from(most).unwrap_or(u32::MAX);
        if let Some(points) = points::fewest(&scaled, room / grid, most) {
            return (points, grid);
        }
        // Rounding moves sizes by up to a grid step: no finer steps than can matter.
        let finest = room / least;
        grid = if grid < finest / 4 {
            finest / 4
        } else {
            grid + grid.div_ceil(4)
        };
    }
}

/// Whether every block's worth fits narrow cells.
fn narrow_enough(parts: &[Lying], room: (u32, u32)) -> bool {
    let area = u128::from(room.0) * u128::from(room.1);
    parts.iter().all(|part| {
        let own = u128::from(part.width) * u128::from(part.height);
        u128::from(part.worth) * area / own < u128::from(u32::MAX / 2)
    })
}

fn in_table<V: super::table::Worth>(
    oracle: &Oracle<'_>,
    room: (u32, u32),
    parts: &[Lying],
    pace: &mut Pace<'_>,
) -> Option<Best> {
    let right = points::floor(&oracle.xs, room.0);
    let top = points::floor(&oracle.ys, room.1);
    let (xs, ys) = (&oracle.xs[..=right], &oracle.ys[..=top]);
    let table = Table::<V>::fill(xs, ys, parts, pace)?;
    let shape = table.layout(right, top, parts);
    Some(Best {
        worth: table.worth(right, top),
        shape,
    })
}
