//! Whether a part fits any stock, and what would do where it does not.

use measure::{Length, Size, Unit};
use trade::Material;

use crate::fault::{Fault, TooLarge};
use crate::source::{Source, catalogue_sizes};
use crate::stock::{Buy, Extent};
use crate::tick::Tick;
use crate::ware::Ware;

/// The stock of a ware as parts are held against it.
pub(super) struct Fit<'a> {
    ware: &'a Ware,
    material: Option<&'a Material>,
    rooms: Vec<Room<'a>>,
    tick: Tick,
    unit: Unit,
    buy: Buy,
}

/// What of one kind of stock can be used, in ticks and exactly.
struct Room<'a> {
    source: &'a Source,
    /// Width and height; a stick's longest clear stretch has no height.
    ticks: (u64, u64),
    exact: Extent,
}

/// A stick in ticks: its length, its trims, its flaws.
pub(super) fn stick_ticks(source: &Source, tick: Tick) -> (u64, (u64, u64), Vec<(u64, u64)>) {
    let length = match source.extent {
        Extent::Stick(length) => tick.down(length),
        Extent::Sheet(_) => 0,
    };
    let [start, end] = source.trim;
    let flaws = source.flaws.iter();
    let flaws = flaws.map(|[from, to]| (tick.down(*from), tick.up(*to).min(length)));
    let flaws = flaws.filter(|(from, to)| from < to).collect();
    (length, (tick.up(start), tick.up(end)), flaws)
}

/// A sheet in ticks: its width, its height, the trim of every edge.
pub(super) fn sheet_ticks(source: &Source, tick: Tick) -> (u64, u64, u64) {
    let trim = tick.up(source.trim[0]);
    match source.extent {
        Extent::Sheet(size) => (tick.down(size.width), tick.down(size.height), trim),
        Extent::Stick(_) => (0, 0, trim),
    }
}

impl<'a> Fit<'a> {
    /// Measures what can be used of each source.
    ///
    /// Errors: sources of which the trim leaves nothing, into `faults`; then none.
    pub fn of(
        ware: &'a Ware,
        material: Option<&'a Material>,
        sources: &'a [Source],
        tick: Tick,
        unit: Unit,
        buy: Buy,
        faults: &mut Vec<Fault>,
    ) -> Option<Self> {
        let rooms: Vec<Room<'a>> = sources.iter().map(|s| room(s, tick)).collect();
        let bare = rooms.iter().filter(|room| room.is_nothing());
        let before = faults.len();
        faults.extend(bare.map(|room| Fault::AllTrimmed {
            ware: ware.to_string(),
            stock: room.source.name.clone(),
        }));
        (faults.len() == before).then_some(Self {
            ware,
            material,
            rooms,
            tick,
            unit,
            buy,
        })
    }

    /// The longest clear stretch of any stick there is no end of; where none is bought, of any.
    pub fn longest(&self) -> u64 {
        let endless = |room: &&Room<'_>| room.source.count.is_none();
        let longest = |rooms: &mut dyn Iterator<Item = &Room<'_>>| rooms.map(|r| r.ticks.0).max();
        longest(&mut self.rooms.iter().filter(endless))
            .or_else(|| longest(&mut self.rooms.iter()))
            .unwrap_or(0)
    }

    /// Holds a part against all stock; what does not fit is a fault.
    pub fn check(
        &self,
        job: &str,
        part: String,
        size: Extent,
        turn: bool,
        faults: &mut Vec<Fault>,
    ) {
        let sides = sides(size);
        if !sides.0.is_positive() || !sides.1.is_positive() {
            faults.push(Fault::NoSize {
                job: job.to_owned(),
                part,
                size: size.exact(self.unit),
            });
            return;
        }
        let ticks = (self.tick.up(sides.0), self.tick.up(sides.1));
        let fits = |room: (u64, u64), (w, h): (u64, u64)| w <= room.0 && h <= room.1;
        let taken = |room: &Room<'_>| {
            fits(room.ticks, ticks) || turn && fits(room.ticks, (ticks.1, ticks.0))
        };
        if !self.rooms.iter().any(taken) {
            faults.push(self.refusal(job, part, size, turn));
        }
    }

    fn refusal(&self, job: &str, part: String, size: Extent, turn: bool) -> Fault {
        let nearest = self
            .rooms
            .iter()
            .map(|room| (excess(size, room.exact, turn), room))
            .min_by_key(|(over, _)| sides(*over).0 + sides(*over).1);
        let Some((over, room)) = nearest else {
            return Fault::NoStock {
                ware: self.ware.to_string(),
                buy: self.buy,
            };
        };
        if is_none(over) {
            return Fault::Snug {
                job: job.to_owned(),
                part,
                size: size.exact(self.unit),
                stock: room.source.name.clone(),
                tick: self.tick.name(),
            };
        }
        let needed = grown(size, room.source.trim);
        let sticks = self.ware.kind.in_sticks();
        let sizes = catalogue_sizes(self.material, sticks).into_iter();
        let would_do = sizes
            .filter(|stock| is_none(excess(needed, *stock, turn)))
            .min_by_key(|stock| measure::Area::of(sides(*stock).0, sides(*stock).1));
        Fault::TooLarge(Box::new(TooLarge {
            job: job.to_owned(),
            part,
            ware: self.ware.to_string(),
            size,
            nearest: room.source.name.clone(),
            room: room.exact,
            over,
            would_do,
            needed,
            unit: self.unit,
        }))
    }
}

impl Room<'_> {
    fn is_nothing(&self) -> bool {
        self.ticks.0 == 0 || self.ticks.1 == 0
    }
}

fn room(source: &Source, tick: Tick) -> Room<'_> {
    let (ticks, exact) = match source.extent {
        Extent::Stick(length) => {
            let (ticks, (start, end), flaws) = stick_ticks(source, tick);
            let stretch = longest_clear(start, ticks.saturating_sub(end), flaws);
            let [start, end] = source.trim;
            let flaws = source.flaws.iter();
            let flaws = flaws.map(|[from, to]| (quanta(*from), quanta(*to)));
            let clear = longest_clear(quanta(start), quanta(length - end), flaws.collect());
            let clear = Length::from_quanta(i64::try_from(clear).unwrap_or(0));
            ((stretch, stretch), Extent::Stick(clear))
        }
        Extent::Sheet(size) => {
            let (width, height, trim) = sheet_ticks(source, tick);
            let off = trim.saturating_mul(2);
            let ticks = (width.saturating_sub(off), height.saturating_sub(off));
            (ticks, Extent::Sheet(size.shrink(source.trim[0])))
        }
    };
    Room {
        source,
        ticks,
        exact,
    }
}

fn quanta(length: Length) -> u64 {
    u64::try_from(length.quanta()).unwrap_or(0)
}

/// The longest stretch from `start` to `last` without a flaw.
fn longest_clear(start: u64, last: u64, mut flaws: Vec<(u64, u64)>) -> u64 {
    flaws.sort_unstable();
    let (mut from, mut longest) = (start, 0);
    for (flaw, to) in flaws {
        longest = longest.max(flaw.min(last).saturating_sub(from));
        from = from.max(to);
    }
    longest.max(last.saturating_sub(from))
}

/// Its sides; a stick counts as a square of its length.
fn sides(extent: Extent) -> (Length, Length) {
    match extent {
        Extent::Stick(length) => (length, length),
        Extent::Sheet(size) => (size.width, size.height),
    }
}

/// By how much a part is larger than the room for it, turned where that is less.
fn excess(part: Extent, room: Extent, turn: bool) -> Extent {
    match (part, room) {
        (Extent::Sheet(part), Extent::Sheet(room)) => {
            let over = |part: Size| {
                let (width, height) = (part.width - room.width, part.height - room.height);
                Size::new(width.or_zero(), height.or_zero())
            };
            let (lying, turned) = (over(part), over(part.turned()));
            let less = turn && turned.united() < lying.united();
            Extent::Sheet(if less { turned } else { lying })
        }
        _ => Extent::Stick((sides(part).0 - sides(room).0).or_zero()),
    }
}

fn is_none(over: Extent) -> bool {
    sides(over) == (Length::ZERO, Length::ZERO)
}

/// The stock a part takes with its trims.
fn grown(part: Extent, [start, end]: [Length; 2]) -> Extent {
    match part {
        Extent::Stick(length) => Extent::Stick(length + start + end),
        Extent::Sheet(size) => Extent::Sheet(size.grow(start)),
    }
}
