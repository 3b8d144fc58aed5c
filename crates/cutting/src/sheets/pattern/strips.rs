//! The most that one sheet is worth where the stages of cutting are limited to one, two or three.
//!
//! Nested knapsacks (Gilmore and Gomory, "Multistage cutting stock problems of two and more
//! dimensions", 1965): parts into rows, rows into columns, columns into the sheet. Within a row
//! each part keeps to its count; between rows counts are not regarded.

use super::super::Axis;
use super::oracle::Purpose;
use super::points::floor;
use super::shape::{Lying, Shape, tally};
use crate::Pace;

/// A sheet to be cut in so many stages, the first along X (the caller exchanges the axes).
pub(super) struct Strips<'a> {
    /// Points across and up, from 0 to the sheet's size.
    pub(super) xs: &'a [u32],
    pub(super) ys: &'a [u32],
    pub(super) width: u32,
    pub(super) height: u32,
    /// Sizes are counted in so many true units.
    pub(super) grid: (u32, u32),
    pub(super) purpose: Purpose,
    pub(super) true_height: u32,
    pub(super) stages: u32,
    /// Waste may be trimmed off a single part beyond the last stage.
    pub(super) trim: bool,
    /// Waste at least this wide wherever there is waste: then some is always left.
    pub(super) least: u32,
}

/// A knapsack item: its size, its worth, how many there may be.
#[derive(Clone, Copy)]
struct Item {
    size: u32,
    worth: u64,
    count: u64,
    label: u32,
}

impl Item {
    fn endless(size: u32, worth: u64) -> Self {
        Self {
            size,
            worth,
            count: u64::MAX,
            label: 0,
        }
    }
}

impl Strips<'_> {
    /// The most, and a layout of it; `None` when the pace ends before.
    pub(super) fn best(
        &self,
        parts: &[Lying],
        pace: &mut Pace<'_>,
    ) -> Option<(u64, Option<Shape>)> {
        let fitting = |part: &Lying| {
            part.worth > 0
                && part.true_size.0 >= self.least
                && part.true_size.1 >= self.least
                && part.width <= self.width
                && part.height <= self.height
        };
        let parts: Vec<Lying> = parts.iter().copied().filter(fitting).collect();
        match self.stages {
            0 => Some((0, None)),
            1 => self.one_stage(&parts, pace),
            2 => self.two_stages(&parts, pace),
            _ => self.three_stages(&parts, pace),
        }
    }

    /// How much of the width blocks may fill: all, or with a least strip so that waste is left.
    fn usable_across(&self, room: u32) -> u32 {
        room.saturating_sub(self.least.div_ceil(self.grid.0))
    }

    fn usable_up(&self) -> u32 {
        self.height.saturating_sub(self.least.div_ceil(self.grid.1))
    }

    /// Rows of parts along X.
    fn rows<'p>(&'p self, parts: &'p [Lying]) -> Rows<'p> {
        Rows {
            points: self.xs,
            parts,
            grid: self.grid.1,
            trim: self.trim,
            least: self.least,
        }
    }

    fn one_stage(&self, parts: &[Lying], pace: &mut Pace<'_>) -> Option<(u64, Option<Shape>)> {
        let rows = self.rows(parts);
        let row = rows.suiting(self.true_height);
        let items: Vec<Item> = row.iter().map(Lying::across).collect();
        let (worth, taken) = filled(self.xs, self.usable_across(self.width), &items, pace)?;
        let shapes = taken.iter().map(|&item| row[item].shape()).collect();
        Some((worth, rowed(Axis::X, 0, shapes)))
    }

    /// Columns of single parts, one on another.
    fn two_stages(&self, parts: &[Lying], pace: &mut Pace<'_>) -> Option<(u64, Option<Shape>)> {
        let parts: Vec<Lying> = parts.iter().map(|part| part.transposed()).collect();
        let flat = Rows {
            points: self.ys,
            parts: &parts,
            grid: self.grid.0,
            trim: self.trim,
            least: self.least,
        };
        let room = floor(self.ys, self.usable_up());
        let mut columns = Vec::new();
        flat.each_row(pace, |true_size, best| {
            columns.push((true_size, best[room]));
        })?;
        let columns = undominated(columns);
        let items: Vec<Item> = columns
            .iter()
            .map(|&(size, worth)| Item::endless(self.purpose.counted(size, self.grid.0), worth))
            .collect();
        let (worth, taken) = filled(self.xs, self.usable_across(self.width), &items, pace)?;
        let mut shapes = Vec::new();
        for (column, times) in tally(taken) {
            for shape in flat.row_at(columns[column].0, self.usable_up(), pace)? {
                shapes.extend((0..times).map(|_| shape.clone().transposed()));
            }
        }
        Some((worth, rowed(Axis::X, 0, shapes)))
    }

    fn three_stages(&self, parts: &[Lying], pace: &mut Pace<'_>) -> Option<(u64, Option<Shape>)> {
        let flat = self.rows(parts);
        // Per row height, what a row of each width is worth.
        let mut rows: Vec<(u32, Vec<u64>)> = Vec::new();
        flat.each_row(pace, |height, best| rows.push((height, best.to_vec())))?;
        let room = floor(self.ys, self.usable_up());
        let mut best = vec![0; self.ys.len()];
        let mut columns = Vec::new();
        for &width in &self.xs[1..] {
            if width.saturating_mul(self.grid.0) >= self.least {
                let items = self.row_items(&rows, width);
                best.fill(0);
                pack(self.ys, &items, &mut best, pace)?;
                columns.push((width, best[room]));
            }
        }
        let columns = undominated(columns);
        let items: Vec<Item> = columns
            .iter()
            .map(|&(width, worth)| Item::endless(width, worth))
            .collect();
        let (worth, taken) = filled(self.xs, self.usable_across(self.width), &items, pace)?;
        let mut shapes = Vec::new();
        for (column, times) in tally(taken) {
            for shape in self.column(&flat, &rows, columns[column].0, pace)? {
                shapes.extend((0..times).map(|_| shape.clone()));
            }
        }
        Some((worth, rowed(Axis::X, 0, shapes)))
    }

    /// The best column of rows of one width; none when nothing fits, `None` when the pace ends.
    fn column(
        &self,
        flat: &Rows<'_>,
        rows: &[(u32, Vec<u64>)],
        width: u32,
        pace: &mut Pace<'_>,
    ) -> Option<Vec<Shape>> {
        let items = self.row_items(rows, width);
        let (_, piled) = filled(self.ys, self.usable_up(), &items, pace)?;
        let mut inner = Vec::new();
        for (item, times) in tally(piled) {
            for row in flat.row_at(items[item].label, self.usable_across(width), pace)? {
                inner.extend((0..times).map(|_| row.clone()));
            }
        }
        let across = if self.least > 0 {
            width.saturating_mul(self.grid.0)
        } else {
            0
        };
        Some(rowed(Axis::Y, across, inner).into_iter().collect())
    }

    /// Rows within a column of one width as items labelled with their true height; a row worth no
    /// more than a lower one is left out.
    fn row_items(&self, rows: &[(u32, Vec<u64>)], width: u32) -> Vec<Item> {
        let at = floor(self.xs, self.usable_across(width));
        let worths = rows.iter().map(|(height, best)| (*height, best[at]));
        undominated(worths.collect())
            .into_iter()
            .map(|(height, worth)| Item {
                label: height,
                ..Item::endless(self.purpose.counted(height, self.grid.1), worth)
            })
            .collect()
    }
}

impl Lying {
    fn across(&self) -> Item {
        Item {
            size: self.width,
            worth: self.worth,
            count: self.count,
            label: 0,
        }
    }
}

fn rowed(axis: Axis, across: u32, shapes: Vec<Shape>) -> Option<Shape> {
    (!shapes.is_empty()).then_some(Shape::Row {
        axis,
        across,
        shapes,
    })
}

/// Sizes and worths, ascending by size: one worth no more than a smaller one is left out.
fn undominated(mut all: Vec<(u32, u64)>) -> Vec<(u32, u64)> {
    all.sort_by_key(|&(size, worth)| (size, std::cmp::Reverse(worth)));
    let mut most = 0;
    all.retain(|&(_, worth)| {
        let keep = worth > most;
        most = most.max(worth);
        keep
    });
    all
}

/// Rows of parts along X in every height that can pay.
struct Rows<'a> {
    points: &'a [u32],
    parts: &'a [Lying],
    /// Heights are counted in so many true units.
    grid: u32,
    trim: bool,
    least: u32,
}

impl Rows<'_> {
    /// Whether a row can hold all that a lower one can.
    fn grows(&self) -> bool {
        self.trim && self.least == 0
    }

    /// Calls with each true row height, ascending, and what rows of every width are worth.
    fn each_row(&self, pace: &mut Pace<'_>, mut found: impl FnMut(u32, &[u64])) -> Option<()> {
        let height = |part: &Lying| {
            if self.grows() {
                part.height.saturating_mul(self.grid)
            } else {
                part.true_size.1
            }
        };
        let mut heights: Vec<u32> = self.parts.iter().map(height).collect();
        if self.least > 0 && self.trim {
            let higher = |part: &Lying| part.true_size.1.saturating_add(self.least);
            heights.extend(self.parts.iter().map(higher));
        }
        heights.sort_unstable();
        heights.dedup();
        let mut best = vec![0; self.points.len()];
        for row in heights {
            let items: Vec<Item> = if self.grows() {
                let new = self.parts.iter().filter(|part| height(part) == row);
                new.map(Lying::across).collect()
            } else {
                best.fill(0);
                self.suiting(row).iter().map(Lying::across).collect()
            };
            pack(self.points, &items, &mut best, pace)?;
            found(row, &best);
        }
        Some(())
    }

    /// Parts that can be cut free in a row of this true height.
    fn suiting(&self, row: u32) -> Vec<Lying> {
        let suits = |part: &&Lying| {
            let own = part.true_size.1;
            if self.grows() {
                return part.height <= row.div_ceil(self.grid);
            }
            own == row || self.trim && own < row && row - own >= self.least
        };
        self.parts.iter().filter(suits).copied().collect()
    }

    /// The best row of one true height, and of a width; none when nothing fits.
    fn row_at(&self, height: u32, width: u32, pace: &mut Pace<'_>) -> Option<Vec<Shape>> {
        let row = self.suiting(height);
        let items: Vec<Item> = row.iter().map(Lying::across).collect();
        let (_, taken) = filled(self.points, width, &items, pace)?;
        let shapes = taken.iter().map(|&item| row[item].shape()).collect();
        let across = if self.least > 0 { height } else { 0 };
        Some(rowed(Axis::X, across, shapes).into_iter().collect())
    }
}

/// Improves what each room is worth by one kind of item after another, each within its count.
fn pack(points: &[u32], items: &[Item], best: &mut [u64], pace: &mut Pace<'_>) -> Option<()> {
    for item in items {
        for (times, repeated) in portions(points, item) {
            let portion = (item.size * times, item.worth * u64::from(times));
            add(points, portion, repeated, best, |_| {});
            if !pace.spend(points.len() as u64) {
                return None;
            }
        }
    }
    Some(())
}

/// Multiples that make up every number up to the count (1, 2, 4, … and a rest), or the item
/// itself to be repeated where the count does not bind.
fn portions(points: &[u32], item: &Item) -> Vec<(u32, bool)> {
    let room = points[points.len() - 1];
    let most = room / item.size.max(1);
    let count = u32::try_from(item.count).unwrap_or(u32::MAX);
    if count >= most {
        return vec![(1, true)];
    }
    let mut portions = Vec::new();
    let mut left = count;
    let mut next = 1;
    while left > 0 {
        let times = next.min(left);
        portions.push((times, false));
        left -= times;
        next *= 2;
    }
    portions
}

/// Improves what each room is worth by one item, or by any number of it; calls for every room that
/// is then worth more.
fn add(
    points: &[u32],
    item: (u32, u64),
    repeated: bool,
    best: &mut [u64],
    mut improved: impl FnMut(usize),
) {
    let (size, worth) = item;
    let mut take = |best: &mut [u64], at: usize, rest: usize| {
        let with = worth + best[rest];
        if with > best[at] {
            best[at] = with;
            improved(at);
        }
    };
    if repeated {
        let mut rest = 0;
        for at in 1..points.len() {
            if points[at] >= size {
                while points[rest + 1] <= points[at] - size {
                    rest += 1;
                }
                take(best, at, rest);
            }
        }
        return;
    }
    let mut rest = points.len() - 1;
    for at in (1..points.len()).rev() {
        if points[at] < size {
            break;
        }
        while points[rest] > points[at] - size {
            rest -= 1;
        }
        take(best, at, rest);
    }
}

/// Where one portion of an item has made rooms worth more: a bit for every point.
struct Improved {
    item: usize,
    times: u32,
    repeated: bool,
    bits: Vec<u64>,
}

impl Improved {
    fn at(&self, point: usize) -> bool {
        self.bits[point / 64] >> (point % 64) & 1 == 1
    }
}

/// A knapsack solved with what is in it: the most, and the items taken, equal ones together.
fn filled(
    points: &[u32],
    room: u32,
    items: &[Item],
    pace: &mut Pace<'_>,
) -> Option<(u64, Vec<usize>)> {
    let end = floor(points, room) + 1;
    let points = &points[..end];
    let mut best = vec![0; end];
    let mut portions_used: Vec<Improved> = Vec::new();
    for (number, item) in items.iter().enumerate() {
        if item.worth == 0 || item.size > room {
            continue;
        }
        for (times, repeated) in portions(points, item) {
            let mut bits = vec![0_u64; end.div_ceil(64)];
            let portion = (item.size * times, item.worth * u64::from(times));
            let note = |at: usize| bits[at / 64] |= 1 << (at % 64);
            add(points, portion, repeated, &mut best, note);
            if !pace.spend(end as u64) {
                return None;
            }
            if bits.iter().any(|&bits| bits != 0) {
                portions_used.push(Improved {
                    item: number,
                    times,
                    repeated,
                    bits,
                });
            }
        }
    }
    Some((best[end - 1], taken_back(points, items, &portions_used)))
}

/// What fills the whole room for the most, walked back from the last portion to the first.
fn taken_back(points: &[u32], items: &[Item], portions: &[Improved]) -> Vec<usize> {
    let mut taken = Vec::new();
    let mut at = points.len() - 1;
    for portion in portions.iter().rev() {
        while portion.at(at) {
            let step = items[portion.item].size * portion.times;
            taken.extend(std::iter::repeat_n(portion.item, portion.times as usize));
            at = floor(points, points[at] - step);
            if !portion.repeated {
                break;
            }
        }
    }
    taken.sort_unstable();
    taken
}
