//! A cut list as a person types it: sticks, sheets and pieces, no job behind them.
//!
//! ```toml
//! units = "in"
//! kerf = "1/8"
//! trim = "1/4"
//!
//! [[stick]]
//! material = "oak"
//! length = "10 ft"
//! cost = "21.50 USD"
//!
//! [[piece]]
//! name = "shelf edge"
//! material = "oak"
//! length = "22 7/8"
//! count = 6
//! ```
//!
//! | field | where | meaning |
//! | --- | --- | --- |
//! | `cut_list` | top | version of this form: 1, also if left out |
//! | `units` | top | what a bare number is in: `in` (if left out) or `mm` |
//! | `tick` | top | what is counted in, as the setting `cutting.tick` |
//! | `goal` | top | `cost` (if left out): the least cost; `fewest`: the fewest sticks or sheets |
//! | `kerf` | top, cut | width lost at a cut; nothing if left out |
//! | `trim` | top, cut | lost at both ends of a whole stick and every edge of a whole sheet, the trimming cut included |
//! | `least_strip` | top, cut | narrowest strip that comes off a sheet, where a cut takes nothing |
//! | `stages` | top, cut | how often the cuts of a sheet may change direction, and once more; no limit if left out |
//! | `first_cut` | top, cut | `up` or `across`, where `stages` limits it |
//! | `turn` | top, cut, piece | whether a piece may lie turned: `false` where grain or pattern forbid it |
//! | `material` | cut, stick, sheet, piece | which material; one without a name if left out |
//! | `name` | stick, sheet, piece | its size if left out |
//! | `length`, `size` | stick or sheet; piece | one of the two |
//! | `count` | stick, sheet | how many lie on the rack; as many as needed are bought if left out |
//! | `count` | piece | how many are wanted; 1 if left out |
//! | `cost` | stick, sheet | what one costs: `"21.50 USD"` |
//! | `remnant` | stick, sheet | `true`: left over from earlier work; there is one if `count` says nothing else |
//! | `trim` | stick, sheet | its own: `["1/2", "1/4"]` of a stick's start and end, one length for a sheet's edges |
//! | `run`, `flaws` | stick | sticks of one run match; stretches no piece may touch, `[["30", "31 1/2"]]` |
//! | `group`, `match` | piece | pieces of one group come from one `stick` (if left out) or one `run` |
//! | `window` | piece | what drops from it and may be cut up too |
//! | `priority`, `due` | piece | higher and earlier are cut first where the stock does not reach; `2026-12-04` |

mod cost;
mod counting;
mod entries;
mod fault;
mod file;
mod fit;
mod read;
mod refused;

use cutting::Goal;
use cutting::lengths::Together;
use cutting::sheets::First;
use measure::{Length, Money, Size};
use trade::Units;

use crate::source::{Basis, Origin};
use crate::stock::Extent;
use crate::tick::Tick;

pub use fault::{ListFault, ListReason};

/// The version of the form that this program reads.
pub const LIST_VERSION: u32 = 1;

/// A cut list, read.
///
/// Units:  exact lengths.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutList {
    /// What a bare number in it meant.
    pub units: Units,
    /// What it is counted in, where it says so.
    pub tick: Option<String>,
    /// What to strive for.
    pub goal: Goal,
    /// How everything is cut that no entry of `cuts` is about.
    pub rules: ListRules,
    /// How single materials are cut.
    pub cuts: Vec<(Option<String>, ListRules)>,
    /// What there is to cut from.
    pub stock: Vec<ListStock>,
    /// What is wanted.
    pub pieces: Vec<ListPiece>,
}

/// How a material is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ListRules {
    /// Width lost at each cut.
    pub kerf: Length,
    /// Lost at both ends or every edge of whole stock, the trimming cut included.
    pub trim: Length,
    /// Narrowest strip that comes off a sheet; only where nothing is lost at a cut.
    pub least_strip: Length,
    /// Cutting directions in alternation; none: no limit.
    pub stages: Option<u32>,
    /// The first of them.
    pub first: First,
    /// Whether pieces may lie turned that say nothing of it.
    pub turn: bool,
}

/// Sticks or sheets of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListStock {
    /// Unlike any other of its material.
    pub name: String,
    /// Of which material; none: the one without a name.
    pub material: Option<String>,
    /// How large it is.
    pub extent: Extent,
    /// How many there are; none: bought as needed.
    pub count: Option<u64>,
    /// What one costs.
    pub cost: Option<Money>,
    /// Where it comes from.
    pub origin: Origin,
    /// Its own trim: a stick's start and end, a sheet's every edge (the first of the two).
    pub trim: Option<[Length; 2]>,
    /// Sticks of one run match.
    pub run: Option<String>,
    /// Stretches of a stick that no piece may touch, from the start.
    pub flaws: Vec<[Length; 2]>,
    /// Line of the text it begins on, from 1.
    pub line: usize,
}

/// Pieces of one kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListPiece {
    /// Unlike any other of its material.
    pub name: String,
    /// Of which material; none: the one without a name.
    pub material: Option<String>,
    /// How large it is.
    pub extent: Extent,
    /// How many are wanted.
    pub count: u64,
    /// Whether it may lie turned, where it says so.
    pub turn: Option<bool>,
    /// What drops from it.
    pub window: Option<Size>,
    /// What it must match.
    pub together: Option<Together>,
    /// Higher is cut first where the stock does not reach.
    pub priority: u32,
    /// Earlier is cut first: days from 1 January 1970.
    pub due: Option<u32>,
    /// Line of the text it begins on, from 1.
    pub line: usize,
}

/// Everything of one material: a problem for the cutting room, and what its numbers stand for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListBatch {
    /// Which material; none: the one without a name.
    pub material: Option<String>,
    /// Counted in ticks.
    pub problem: cutting::Problem,
    /// What it can be cut from; each at its place in the problem's stock.
    pub stock: Vec<ListStock>,
    /// What is wanted, exactly; each at its piece's place.
    pub pieces: Vec<ListPiece>,
    /// How it is cut.
    pub rules: ListRules,
    /// What the problem's costs are counted in.
    pub basis: Basis,
    /// What the problem counts in.
    pub tick: Tick,
    /// The least remnant worth keeping; for a sheet its shorter and longer side.
    pub keep: [Length; 2],
}

impl Extent {
    /// Whether it is of a stick.
    pub const fn is_stick(self) -> bool {
        matches!(self, Self::Stick(_))
    }
}

#[cfg(test)]
mod tests;
