//! The cuts for a group that is known to come out of a sheet.

use super::group::Group;
use super::reach::{Level, Reach, Rooms};
use crate::sheets::{Axis, Block, Kind, Reduced};

/// Cuts a rectangle of exactly this size up into the group; `None` when that cannot be done.
pub(super) fn lay(
    reach: &mut Reach,
    reduced: &Reduced,
    group: Group,
    size: (u32, u32),
) -> Option<Block> {
    if group.is_empty() {
        return Some(Block::free(size.0, size.1));
    }
    let roots = reach.roots().to_vec();
    let mut hand = Hand { reach, reduced };
    roots
        .into_iter()
        .find_map(|level| hand.block(level, group, size))
}

struct Hand<'a> {
    reach: &'a mut Reach,
    reduced: &'a Reduced,
}

impl Hand<'_> {
    fn list(&mut self, level: Level, group: Group) -> Option<Vec<Rooms>> {
        self.reach.list(level, group).map(<[Rooms]>::to_vec)
    }

    fn block(&mut self, level: Level, group: Group, size: (u32, u32)) -> Option<Block> {
        if !self
            .list(level, group)?
            .iter()
            .any(|rooms| rooms.hold(size))
        {
            return None;
        }
        if let Some(block) = self.alone(group, size) {
            return Some(block);
        }
        let axes: &[Axis] = match level {
            Level::Free => &[Axis::X, Axis::Y],
            Level::Left(_, Axis::X) => &[Axis::X],
            Level::Left(_, Axis::Y) => &[Axis::Y],
        };
        if let Level::Left(left, axis) = level
            && left > 0
            && let Some(block) = self.block(Level::Left(left - 1, axis.other()), group, size)
        {
            return Some(block);
        }
        for &axis in axes {
            if let Some(block) = self.parted(level, group, size, axis) {
                return Some(block);
            }
        }
        axes.iter()
            .find_map(|&axis| self.trimmed(level, group, size, axis))
    }

    fn alone(&self, group: Group, size: (u32, u32)) -> Option<Block> {
        let mut parts = group.parts();
        let (Some(part), None) = (parts.next(), parts.next()) else {
            return None;
        };
        let kind = &self.reduced.parts[part];
        let turned = (kind.width, kind.height) != size;
        if turned && !(kind.turn && (kind.height, kind.width) == size) {
            return None;
        }
        Some(Block {
            width: size.0,
            height: size.1,
            kind: Kind::Part { part, turned },
        })
    }

    /// Two groups beside each other along the axis.
    fn parted(
        &mut self,
        level: Level,
        group: Group,
        size: (u32, u32),
        axis: Axis,
    ) -> Option<Block> {
        let (below, beside) = match level {
            Level::Free => (level, level),
            Level::Left(0, _) => return None,
            Level::Left(left, axis) => (Level::Left(left - 1, axis.other()), level),
        };
        let within = group.within(self.reach.most_within())?;
        let (along, across) = turned_to(size, axis);
        let strip = self.reach.strip();
        for at in 1..within.len() - 1 {
            let (one, other) = (within[at], within[within.len() - 1 - at]);
            let ones = self.list(below, one)?;
            let others = self.list(beside, other)?;
            let Some(share) = share(&ones, &others, (axis, strip), along, across) else {
                continue;
            };
            let first = self.block(below, one, turned_to((share, across), axis))?;
            let second = self.block(beside, other, turned_to((along - share, across), axis))?;
            return Some(split(size, axis, vec![first, second]));
        }
        None
    }

    /// The group in a smaller rectangle, waste beside it along the axis.
    fn trimmed(
        &mut self,
        level: Level,
        group: Group,
        size: (u32, u32),
        axis: Axis,
    ) -> Option<Block> {
        let (along, across) = turned_to(size, axis);
        let strip = self.reach.strip();
        let fits = |rooms: &Rooms| {
            let own = rooms.along(axis).beyond(strip)?.least;
            let left = along.checked_sub(own)?;
            (rooms.along(axis.other()).holds(across) && left >= strip).then_some(own)
        };
        let list = self.list(level, group)?;
        let least = list.iter().filter_map(fits).min()?;
        let inner = self.block(level, group, turned_to((least, across), axis))?;
        let (width, height) = turned_to((along - least, across), axis);
        Some(split(size, axis, vec![inner, Block::free(width, height)]))
    }
}

/// Along and across from width and height, or the other way round.
fn turned_to(size: (u32, u32), axis: Axis) -> (u32, u32) {
    match axis {
        Axis::X => size,
        Axis::Y => (size.1, size.0),
    }
}

fn split(size: (u32, u32), axis: Axis, blocks: Vec<Block>) -> Block {
    Block {
        width: size.0,
        height: size.1,
        kind: Kind::Split { axis, blocks },
    }
}

/// How much of the size along goes to the first of two, if it can be shared out exactly.
fn share(
    ones: &[Rooms],
    others: &[Rooms],
    (axis, strip): (Axis, u32),
    along: u32,
    across: u32,
) -> Option<u32> {
    let high = |rooms: &&Rooms| rooms.along(axis.other()).holds(across);
    for one in ones.iter().filter(high) {
        for other in others.iter().filter(high) {
            let (one, other) = (one.along(axis), other.along(axis));
            let (Some(one), Some(other)) = (one.beyond(strip), other.beyond(strip)) else {
                continue;
            };
            let rest = |taken: u32| along.checked_sub(taken);
            if rest(one.least).is_some_and(|rest| other.holds(rest)) {
                return Some(one.least);
            }
            if let Some(first) = rest(other.least)
                && one.holds(first)
            {
                return Some(first);
            }
        }
    }
    None
}
