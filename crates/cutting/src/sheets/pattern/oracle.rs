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

impl Purpose {
    /// A size in units of the grid: down for bounds, down to nothing; up for plans.
    pub(super) fn counted(self, size: u32, grid: u32) -> u32 {
        match self {
            Self::Bound => size / grid,
            Self::Plan => size.div_ceil(grid),
        }
    }
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
        let mut stages = match purpose {
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
                if stages == Some(3) && !rows_can_be_kept(reduced, xs.len().max(ys.len())) {
                    // Any number of stages bounds three of them; two are three.
                    stages = (purpose == Purpose::Plan).then_some(2);
                }
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
        let crumbs = self.crumbs(worths, counts);
        let with_crumbs = |best: Best| Best {
            worth: best.worth.saturating_add(crumbs),
            ..best
        };
        let Some(stages) = self.stages else {
            let best = if narrow_enough(&parts, room) {
                in_table::<u32>(self, room, &parts, pace)
            } else {
                in_table::<u64>(self, room, &parts, pace)
            };
            return best.map(with_crumbs);
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
        best.map(with_crumbs)
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
            purpose: self.purpose,
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

    /// Parts as they may lie on this sheet, sizes counted in the grid; without [`Self::crumbs`].
    pub(super) fn lying(&self, worths: &[u64], counts: &[u64]) -> Vec<Lying> {
        let mut all = Vec::new();
        for number in 0..self.reduced.parts.len() {
            if worths[number] == 0 || counts[number] == 0 || self.is_crumb(number) {
                continue;
            }
            let own = |(turned, (w, h))| Lying {
                part: number,
                turned,
                width: self.purpose.counted(w, self.grid.0),
                height: self.purpose.counted(h, self.grid.1),
                true_size: (w, h),
                worth: worths[number],
                count: counts[number],
            };
            all.extend(self.ways(number).map(own));
        }
        all
    }

    /// How a part may lie on this sheet: turned or not, width and height.
    fn ways(&self, part: usize) -> impl Iterator<Item = (bool, (u32, u32))> {
        let (width, height) = self.size();
        let part = &self.reduced.parts[part];
        let turned = part.turn.then_some((true, (part.height, part.width)));
        let ways = [Some((false, (part.width, part.height))), turned];
        let fits = move |&(_, (w, h)): &(bool, (u32, u32))| w <= width && h <= height;
        ways.into_iter().flatten().filter(fits)
    }

    /// Whether a part is nothing in the grid of a bound: then it takes no room there.
    fn is_crumb(&self, part: usize) -> bool {
        let counted = |size, grid| self.purpose.counted(size, grid);
        self.ways(part)
            .any(|(_, (w, h))| counted(w, self.grid.0) == 0 || counted(h, self.grid.1) == 0)
    }

    /// What all parts are worth that take no room in the grid: no layout holds more of them.
    fn crumbs(&self, worths: &[u64], counts: &[u64]) -> u64 {
        let each = |part: usize| worths[part].saturating_mul(counts[part]);
        (0..self.reduced.parts.len())
            .filter(|&part| self.is_crumb(part))
            .fold(0, |sum, part| sum.saturating_add(each(part)))
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
            .map(|&(size, count)| (purpose.counted(size, grid), count))
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

/// Whether there is room for rows of every height, each with what it is worth at every point.
fn rows_can_be_kept(reduced: &Reduced, points: usize) -> bool {
    // A part has two sides, and with a least strip each makes two heights.
    let heights = reduced.parts.len().saturating_mul(4);
    heights.saturating_mul(points) <= CELLS
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

#[cfg(test)]
mod tests;
