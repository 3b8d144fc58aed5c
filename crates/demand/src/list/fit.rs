//! Whether a piece fits any stock, and what would do where it does not.

use measure::{Length, Size, Unit};

use super::fault::{ListFault, ListReason};
use super::{ListPiece, ListStock};
use crate::stock::Extent;
use crate::tick::Tick;

/// One kind of stock as pieces are held against it.
pub(super) struct Room<'a> {
    pub stock: &'a ListStock,
    /// What is lost of it: a stick's start and end, a sheet's every edge (the first of the two).
    trim: [Length; 2],
    /// What can be used, in ticks: across and up; a stick's longest clear stretch twice.
    pub ticks: [u64; 2],
    /// The same, exactly.
    exact: [Length; 2],
}

impl<'a> Room<'a> {
    /// What of the stock can be used.
    pub fn of(stock: &'a ListStock, trim: [Length; 2], tick: Tick) -> Self {
        let (ticks, exact) = match stock.extent {
            Extent::Stick(length) => {
                let [start, end] = trim;
                let counted: Vec<(u64, u64)> = flaws_in_ticks(stock, tick);
                let last = tick.down(length).saturating_sub(tick.up(end));
                let ticks = longest_clear(tick.up(start), last, counted);
                let flaws = stock.flaws.iter().map(|[from, to]| (*from, *to));
                let exact = longest_clear(start, length - end, flaws.collect());
                ([ticks; 2], [exact; 2])
            }
            Extent::Sheet(size) => {
                let lost = tick.up(trim[0]).saturating_mul(2);
                let ticks = [size.width, size.height];
                let exact = size.shrink(trim[0]);
                let ticks = ticks.map(|side| tick.down(side).saturating_sub(lost));
                (ticks, [exact.width, exact.height])
            }
        };
        Self {
            stock,
            trim,
            ticks,
            exact,
        }
    }

    /// Whether nothing of it can be used.
    pub fn is_nothing(&self) -> bool {
        self.ticks.contains(&0)
    }

    /// By how much a piece is larger, each way; nothing where it fits.
    fn excess(&self, piece: [Length; 2], turn: bool) -> [Length; 2] {
        let over =
            |[a, b]: [Length; 2]| [(a - self.exact[0]).or_zero(), (b - self.exact[1]).or_zero()];
        let (lying, turned) = (over(piece), over([piece[1], piece[0]]));
        if turn && turned[0] + turned[1] < lying[0] + lying[1] {
            turned
        } else {
            lying
        }
    }

    /// The stock a piece takes with this trim.
    fn needed(&self, piece: Extent) -> Extent {
        match piece {
            Extent::Stick(length) => Extent::Stick(length + self.trim[0] + self.trim[1]),
            Extent::Sheet(size) => Extent::Sheet(size.grow(self.trim[0])),
        }
    }
}

/// Flaws of a stick, counted outwards.
pub(super) fn flaws_in_ticks(stock: &ListStock, tick: Tick) -> Vec<(u64, u64)> {
    let Extent::Stick(length) = stock.extent else {
        return Vec::new();
    };
    let flaws = stock.flaws.iter();
    let flaws = flaws.map(|[from, to]| (tick.down(*from), tick.up(*to).min(tick.down(length))));
    flaws.filter(|(from, to)| from < to).collect()
}

/// The longest stretch from `start` to `last` without a flaw.
fn longest_clear<T>(start: T, last: T, mut flaws: Vec<(T, T)>) -> T
where
    T: Copy + Ord + Default + std::ops::Sub<Output = T>,
{
    flaws.sort_unstable();
    let stretch = |from: T, to: T| if to > from { to - from } else { T::default() };
    let (mut from, mut longest) = (start, T::default());
    for (flaw, to) in flaws {
        longest = longest.max(stretch(from, flaw.min(last)));
        from = from.max(to);
    }
    longest.max(stretch(from, last))
}

/// Holds a piece against all stock of its material.
///
/// Errors: what comes nearest, by how much it is too small, and what would do.
pub(super) fn check(
    piece: &ListPiece,
    turn: bool,
    rooms: &[Room<'_>],
    material: Option<&String>,
    tick: Tick,
    unit: Unit,
) -> Result<(), ListFault> {
    let sides = sides(piece.extent);
    let [a, b] = sides.map(|side| tick.up(side));
    let takes = |room: &Room<'_>| {
        let [across, up] = room.ticks;
        a <= across && b <= up || turn && b <= across && a <= up
    };
    if rooms.iter().any(takes) {
        return Ok(());
    }
    let nearest = rooms.iter().min_by_key(|room| {
        let [across, up] = room.excess(sides, turn);
        across + up
    });
    let Some(room) = nearest else {
        return Ok(());
    };
    let say = |extent: Extent| extent.exact(unit);
    let of = |[across, up]: [Length; 2]| match piece.extent {
        Extent::Stick(_) => Extent::Stick(across),
        Extent::Sheet(_) => Extent::Sheet(Size::new(across, up)),
    };
    let over = room.excess(sides, turn);
    let fits = over == [Length::ZERO; 2];
    let (piece_name, material, size) = (piece.name.clone(), material.cloned(), say(piece.extent));
    let reason = if fits {
        ListReason::Snug {
            piece: piece_name,
            material,
            size,
            stock: room.stock.name.clone(),
            tick: tick.name(),
        }
    } else {
        ListReason::TooLarge {
            piece: piece_name,
            material,
            size,
            nearest: room.stock.name.clone(),
            room: say(of(room.exact)),
            over: say(of(over)),
            needed: say(room.needed(piece.extent)),
        }
    };
    Err(ListFault::on(piece.line, reason))
}

/// Width and height; a stick's length twice.
pub(super) fn sides(extent: Extent) -> [Length; 2] {
    match extent {
        Extent::Stick(length) => [length; 2],
        Extent::Sheet(size) => [size.width, size.height],
    }
}
