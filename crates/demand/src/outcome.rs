//! What a day's plans come to.

use measure::Length;

use crate::account::Account;
use crate::source::Origin;
use crate::stock::Extent;
use crate::ware::Ware;

/// A day, settled.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    /// One for each material, in the day's order.
    pub settled: Vec<Settled>,
    /// Where every part of every job comes from, in the day's order.
    pub jobs: Vec<JobParts>,
}

/// What the plan of one material comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Settled {
    /// What is cut.
    pub ware: Ware,
    /// Every stick and sheet that is cut, in the order they are best cut.
    pub taken: Vec<Taken>,
    /// How many of each source that is used at all, remnants first, then the rack, then bought.
    pub used: Vec<Used>,
    /// What is left: of sticks and sheets in cutting order, then what dropped and is free.
    pub remnants: Vec<Remnant>,
    /// Parts the stock does not reach for.
    pub missing: Vec<Missing>,
    /// Where all of the stock went.
    pub account: Account,
    /// The cost reached, in the batch's basis.
    pub objective: u64,
    /// What no plan can go below, in the same.
    pub bound: u64,
    /// True when no cheaper plan is possible.
    pub proven: bool,
}

/// One stick or sheet that is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// What the bench calls it: `oak-square-1, stick 2`.
    pub name: String,
    /// What it is.
    pub from: From,
    /// Its exact size.
    pub extent: Extent,
    /// The plan's layout it is cut by, counted from 0.
    pub layout: usize,
    /// What is cut from it: along a stick from its start; on a sheet in the layout's order.
    pub parts: Vec<PartAt>,
    /// Pieces of the layout and the parts of each: `pieces[i]` are the places in `parts` that the
    /// layout's piece `i` holds.
    pub pieces: Vec<std::ops::Range<usize>>,
}

/// What a stick or sheet is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum From {
    /// Stock, counted from 0 in the batch's sources.
    Source(usize),
    /// What dropped from a part cut before: counted from 0 in `taken`, then in its `parts`.
    Fallout {
        /// The sheet it dropped from.
        taken: usize,
        /// The part whose window it is.
        part: usize,
    },
}

/// A part where it lies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartAt {
    /// Which job, counted from 0.
    pub job: usize,
    /// Which part, and which side or copy of it: `Frame, left`.
    pub part: String,
    /// Its exact size, as it lies unturned.
    pub exact: Extent,
    /// Where it lies.
    pub at: Spot,
}

/// A place on stock, in whole ticks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// Along a stick, from its start.
    Along {
        /// Where it begins.
        at: Length,
        /// How long it is.
        length: Length,
    },
    /// On a sheet, from its lower left corner.
    On {
        /// From the left.
        x: Length,
        /// From the bottom.
        y: Length,
        /// Across.
        width: Length,
        /// Up.
        height: Length,
        /// Turned a quarter.
        turned: bool,
    },
}

/// How much of a source is used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Used {
    /// Which, counted from 0 in the batch's sources.
    pub source: usize,
    /// Its name.
    pub name: String,
    /// Whether it is taken from the remnants, from the rack, or bought.
    pub origin: Origin,
    /// How many.
    pub count: u64,
}

/// What is left over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remnant {
    /// What to write on it; none where it is not worth keeping.
    pub label: Option<String>,
    /// Where it is left.
    pub left: Left,
    /// Its size.
    pub extent: Extent,
    /// The run of a stick, where it is known.
    pub run: Option<String>,
    /// Flaws of a stick that lie on it, from its own start.
    pub flaws: Vec<[Length; 2]>,
}

/// Where a remnant is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Left {
    /// Of a stick or sheet, counted from 0 in `taken`, at this place.
    Of(usize, Spot),
    /// It dropped from a window: counted from 0 in `taken`, then in its `parts`.
    Dropped {
        /// The sheet the part is cut from.
        taken: usize,
        /// The part.
        part: usize,
    },
}

/// A part the stock does not reach for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// Which job, counted from 0.
    pub job: usize,
    /// Which part, and which side or copy of it.
    pub part: String,
    /// Its exact size.
    pub exact: Extent,
}

/// Where the parts of one job come from.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct JobParts {
    /// Places of its parts: in `settled`, in its `taken`, in its `parts`.
    pub parts: Vec<(usize, usize, usize)>,
    /// Parts the stock does not reach for: in `settled`, in its `missing`.
    pub missing: Vec<(usize, usize)>,
}
