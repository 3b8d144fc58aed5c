//! Which rectangles can be cut up into given parts: exactly, for a few parts at a time.
//!
//! A group of parts comes out of infinitely many rectangles, but a short list says which: each
//! entry is a width or every width from there on, times a height or every height from there on.
//! Without a least strip every entry is "from there on" both ways. With one, a rectangle a little
//! larger than needed may be of no use, because what is left over is too narrow to break off; then
//! the exact entries stay, and the "from there on" entries begin one least strip further. Setting
//! two rectangles side by side adds entries along and intersects them across, which leads to
//! entries of the same kind again, so nothing is lost.

use std::collections::HashMap;

use super::group::{Group, MOST};
use super::hash::Quick;
use crate::sheets::{Axis, Reduced, Stages};

/// Sizes along one axis: one size, or that and all larger ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Extent {
    pub(super) least: u32,
    pub(super) more: bool,
}

/// Rectangles: a set of widths times a set of heights.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Rooms {
    pub(super) width: Extent,
    pub(super) height: Extent,
}

/// Whether a group comes out of a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fits {
    Yes,
    No,
    /// Too many parts to tell.
    Unknown,
}

/// How the next split of a rectangle may run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Level {
    /// Either way, without end.
    Free,
    /// So many directions are left, the next along this axis.
    Left(u8, Axis),
}

/// The lists found so far.
pub(super) struct Reach {
    parts: Vec<(u32, u32, bool)>,
    /// The largest width and height of any sheet.
    limit: (u32, u32),
    strip: u32,
    final_trim: bool,
    roots: Vec<Level>,
    lists: HashMap<u128, (u32, u32), Quick>,
    rooms: Vec<Rooms>,
    /// The most groups within a group that is looked into.
    most_within: usize,
    steps: u64,
    /// Groups that are known not to come out of a sheet of this size.
    barred: Vec<(Group, (u32, u32))>,
}

/// Entries and lists kept before everything is forgotten: some 16 MB each. One group may go as far
/// again; where it would go further, nobody can tell of it.
const MOST_ROOMS: usize = 1_000_000;
const MOST_LISTS: usize = 300_000;
/// Entries worth keeping where it is seldom asked.
const FEW_ROOMS: usize = 50_000;

impl Extent {
    pub(super) fn holds(self, size: u32) -> bool {
        size == self.least || self.more && size > self.least
    }

    /// What of it is wide enough to be cut off.
    pub(super) fn beyond(self, strip: u32) -> Option<Self> {
        if self.least >= strip {
            return Some(self);
        }
        self.more.then_some(Self {
            least: strip,
            more: true,
        })
    }

    fn covers(self, other: Self) -> bool {
        if self.more {
            other.least >= self.least
        } else {
            self == other
        }
    }

    fn and(self, other: Self) -> Option<Self> {
        let (low, high) = if self.least <= other.least {
            (self, other)
        } else {
            (other, self)
        };
        low.holds(high.least).then_some(Self {
            least: high.least,
            more: low.more && high.more,
        })
    }

    fn plus(self, other: Self, limit: u32, strip: u32) -> Option<Self> {
        let (one, other) = (self.beyond(strip)?, other.beyond(strip)?);
        let least = one.least.checked_add(other.least)?;
        (least <= limit).then_some(Self {
            least,
            more: one.more || other.more,
        })
    }
}

impl Rooms {
    pub(super) fn hold(&self, size: (u32, u32)) -> bool {
        self.width.holds(size.0) && self.height.holds(size.1)
    }

    pub(super) fn along(&self, axis: Axis) -> Extent {
        match axis {
            Axis::X => self.width,
            Axis::Y => self.height,
        }
    }

    fn loosen(&mut self) {
        self.width.more = true;
        self.height.more = true;
    }

    fn covers(&self, other: &Self) -> bool {
        self.width.covers(other.width) && self.height.covers(other.height)
    }

    fn beside(&self, other: &Self, axis: Axis, limit: (u32, u32), strip: u32) -> Option<Self> {
        match axis {
            Axis::X => Some(Self {
                width: self.width.plus(other.width, limit.0, strip)?,
                height: self.height.and(other.height)?,
            }),
            Axis::Y => Some(Self {
                width: self.width.and(other.width)?,
                height: self.height.plus(other.height, limit.1, strip)?,
            }),
        }
    }
}

impl Reach {
    /// Lists for the parts and sheets of a problem. Without `strips` the least strip is left out
    /// of account, so that more comes out of a sheet than truly does, and much sooner.
    pub(super) fn new(reduced: &Reduced, most_within: usize, strips: bool) -> Self {
        let each = |part: &crate::sheets::Part| (part.width, part.height, part.turn);
        let widest = reduced.stock.iter().map(|stock| stock.width).max();
        let highest = reduced.stock.iter().map(|stock| stock.height).max();
        Self {
            parts: reduced.parts.iter().map(each).collect(),
            limit: (widest.unwrap_or(0), highest.unwrap_or(0)),
            strip: if strips {
                reduced.least_strip.max(1)
            } else {
                1
            },
            final_trim: reduced.stages.final_trim,
            roots: roots(reduced.stages),
            lists: HashMap::default(),
            rooms: Vec::new(),
            most_within,
            steps: 0,
            barred: Vec::new(),
        }
    }

    pub(super) fn strip(&self) -> u32 {
        self.strip
    }

    pub(super) fn most_within(&self) -> usize {
        self.most_within
    }

    pub(super) fn roots(&self) -> &[Level] {
        &self.roots
    }

    /// Steps taken since last asked.
    pub(super) fn steps(&mut self) -> u64 {
        std::mem::take(&mut self.steps)
    }

    /// Notes that a group does not come out of a sheet of this size after all.
    pub(super) fn bar(&mut self, group: Group, size: (u32, u32)) {
        self.barred.push((group, size));
    }

    /// Whether the group comes out of a sheet of this size.
    pub(super) fn fits(&mut self, group: Group, size: (u32, u32)) -> Fits {
        self.steps += 1 + self.barred.len() as u64 / 4;
        let barred = |&(barred, at): &(Group, (u32, u32))| at == size && barred.is_within(group);
        if self.barred.iter().any(barred) {
            return Fits::No;
        }
        if self.rooms.len() > MOST_ROOMS || self.lists.len() > MOST_LISTS {
            self.forget();
        }
        let mut answer = Fits::No;
        for at in 0..self.roots.len() {
            match self.list(self.roots[at], group) {
                Some(list) if list.iter().any(|rooms| rooms.hold(size)) => return Fits::Yes,
                Some(_) => {}
                None => answer = Fits::Unknown,
            }
        }
        answer
    }

    /// Forgets what it has found where that is much.
    pub(super) fn forget_much(&mut self) {
        if self.rooms.len() > FEW_ROOMS {
            self.forget();
        }
    }

    fn forget(&mut self) {
        self.lists = HashMap::default();
        self.rooms = Vec::new();
    }

    /// The rectangles the group comes out of; `None` when it is too large to tell.
    pub(super) fn list(&mut self, level: Level, group: Group) -> Option<&[Rooms]> {
        let (from, to) = self.range(level, group)?;
        Some(&self.rooms[from as usize..to as usize])
    }

    fn range(&mut self, level: Level, group: Group) -> Option<(u32, u32)> {
        let key = group.key(level.mark());
        if let Some(&range) = self.lists.get(&key) {
            return Some(range);
        }
        if self.rooms.len() > 2 * MOST_ROOMS || self.lists.len() > 2 * MOST_LISTS {
            return None;
        }
        let list = match level {
            Level::Free => self.free(group)?,
            Level::Left(0, axis) => self.uncut(group, axis),
            Level::Left(left, axis) => self.staged(group, left, axis)?,
        };
        let from = u32::try_from(self.rooms.len()).ok()?;
        self.rooms.extend_from_slice(&list);
        let range = (from, u32::try_from(self.rooms.len()).ok()?);
        self.lists.insert(key, range);
        Some(range)
    }

    /// Exactly a part, as it lies or turned.
    fn alone(&self, group: Group) -> Vec<Rooms> {
        let mut parts = group.parts();
        let (Some(part), None) = (parts.next(), parts.next()) else {
            return Vec::new();
        };
        let (width, height, turn) = self.parts[part];
        let exact = |width, height| Rooms {
            width: Extent {
                least: width,
                more: false,
            },
            height: Extent {
                least: height,
                more: false,
            },
        };
        let mut list = Vec::new();
        if width <= self.limit.0 && height <= self.limit.1 {
            list.push(exact(width, height));
        }
        if turn && height <= self.limit.0 && width <= self.limit.1 {
            list.push(exact(height, width));
        }
        list
    }

    fn uncut(&self, group: Group, axis: Axis) -> Vec<Rooms> {
        let mut list = self.alone(group);
        if self.final_trim {
            self.add_waste(&mut list, axis);
        }
        list
    }

    fn free(&mut self, group: Group) -> Option<Vec<Rooms>> {
        let mut list = self.alone(group);
        if self.strip <= 1 {
            list.iter_mut().for_each(Rooms::loosen);
        }
        let within = group.within(self.most_within)?;
        let mut ranges = vec![(0, 0); within.len()];
        for at in 1..within.len() - 1 {
            ranges[at] = self.range(Level::Free, within[at])?;
            if ranges[at].0 == ranges[at].1 {
                return Some(Vec::new());
            }
        }
        for at in 1..within.len().div_ceil(2) {
            let other = within.len() - 1 - at;
            if at > other || other == 0 {
                break;
            }
            for axis in [Axis::X, Axis::Y] {
                if self.strip <= 1 {
                    self.join_stairs(ranges[at], ranges[other], axis, &mut list);
                } else {
                    self.join(ranges[at], ranges[other], axis, &mut list);
                }
            }
        }
        if self.strip <= 1 {
            return Some(stairs(list));
        }
        self.add_waste(&mut list, Axis::X);
        self.add_waste(&mut list, Axis::Y);
        Some(list)
    }

    fn staged(&mut self, group: Group, left: u8, axis: Axis) -> Option<Vec<Rooms>> {
        let below = Level::Left(left - 1, axis.other());
        let whole = self.range(below, group)?;
        let mut list = self.rooms[whole.0 as usize..whole.1 as usize].to_vec();
        let within = group.within(self.most_within)?;
        for at in 1..within.len() - 1 {
            let strip = self.range(below, within[at])?;
            let rest = self.range(Level::Left(left, axis), within[within.len() - 1 - at])?;
            if rest.0 == rest.1 {
                return Some(Vec::new());
            }
            self.join(strip, rest, axis, &mut list);
        }
        self.add_waste(&mut list, axis);
        Some(list)
    }

    fn join(&mut self, one: (u32, u32), other: (u32, u32), axis: Axis, list: &mut Vec<Rooms>) {
        self.steps += 1 + u64::from(one.1 - one.0) * u64::from(other.1 - other.0) / 4;
        for a in &self.rooms[one.0 as usize..one.1 as usize] {
            for b in &self.rooms[other.0 as usize..other.1 as usize] {
                if let Some(rooms) = a.beside(b, axis, self.limit, self.strip) {
                    add(list, rooms);
                }
            }
        }
    }

    /// The same for lists of stairs, every entry "from there on" both ways. Only the narrowest
    /// of the one that is no higher than a step of the other matters to that step.
    fn join_stairs(
        &mut self,
        one: (u32, u32),
        other: (u32, u32),
        axis: Axis,
        list: &mut Vec<Rooms>,
    ) {
        self.steps += 1 + u64::from(one.1 - one.0 + other.1 - other.0) / 2;
        let one = &self.rooms[one.0 as usize..one.1 as usize];
        let other = &self.rooms[other.0 as usize..other.1 as usize];
        let (mut a, mut b) = match axis {
            // Rising along the axis, falling across.
            Axis::X => (0, 0),
            Axis::Y => (one.len() - 1, other.len() - 1),
        };
        loop {
            if let Some(rooms) = one[a].beside(&other[b], axis, self.limit, self.strip) {
                list.push(rooms);
            }
            // The higher of the two gives way to the next lower, wider one.
            let across = axis.other();
            let first = one[a].along(across).least >= other[b].along(across).least;
            let (at, len) = if first {
                (&mut a, one.len())
            } else {
                (&mut b, other.len())
            };
            let next = match axis {
                Axis::X => at.checked_add(1).filter(|&next| next < len),
                Axis::Y => at.checked_sub(1),
            };
            match next {
                Some(next) => *at = next,
                None => break,
            }
        }
    }

    /// Adds what waste beside (along the axis) makes possible.
    fn add_waste(&self, list: &mut Vec<Rooms>, axis: Axis) {
        let beside = if self.strip <= 1 { 0 } else { self.strip };
        for mut rooms in list.clone() {
            let (extent, limit) = match axis {
                Axis::X => (&mut rooms.width, self.limit.0),
                Axis::Y => (&mut rooms.height, self.limit.1),
            };
            if extent.more || extent.least < self.strip || limit - extent.least < beside {
                continue;
            }
            extent.least += beside;
            extent.more = true;
            add(list, rooms);
        }
    }
}

impl Level {
    fn mark(self) -> u8 {
        match self {
            Self::Free => 0,
            Self::Left(left, Axis::X) => 1 + 2 * left,
            Self::Left(left, Axis::Y) => 2 + 2 * left,
        }
    }
}

/// Levels a whole sheet may be cut from.
fn roots(stages: Stages) -> Vec<Level> {
    // So few parts never need more directions than that.
    let plenty = 4 * u32::try_from(MOST).unwrap_or(u32::MAX);
    if stages.most >= plenty {
        return vec![Level::Free];
    }
    let left = u8::try_from(stages.most).unwrap_or(u8::MAX);
    match stages.first {
        Some(axis) => vec![Level::Left(left, axis)],
        None => vec![Level::Left(left, Axis::X), Level::Left(left, Axis::Y)],
    }
}

/// Adds rectangles unless they are there; drops what they cover.
fn add(list: &mut Vec<Rooms>, rooms: Rooms) {
    if list.iter().any(|held| held.covers(&rooms)) {
        return;
    }
    list.retain(|held| !rooms.covers(held));
    list.push(rooms);
}

/// Only what no other covers, rising in width and falling in height.
fn stairs(mut list: Vec<Rooms>) -> Vec<Rooms> {
    list.sort_unstable_by_key(|rooms| (rooms.width.least, rooms.height.least));
    let mut lowest = u32::MAX;
    list.retain(|rooms| {
        let lower = rooms.height.least < lowest;
        lowest = lowest.min(rooms.height.least);
        lower
    });
    list
}
