//! Sheets: rectangles out of larger rectangles by cuts from edge to edge.
//!
//! Objective, in this order: the [`Goal`]; then, at an equal goal, the largest single remnant;
//! then the fewest different layouts and cuts.

mod block;
pub(crate) mod bound;
pub(crate) mod check;
pub(crate) mod exact;
pub(crate) mod pattern;
pub(crate) mod realise;
pub(crate) mod reduce;
mod reduced;
mod simplex;
mod solve;
pub(crate) mod tree;

pub use check::check;
pub use solve::solve;

pub(crate) use block::{Axis, Block, Kind};
pub(crate) use reduced::{Draft, DraftSheet, Part, Reduced, Stages, Stock};
pub(crate) use solve::Search;

use crate::Goal;

/// A problem: which pieces, from which sheets, under which rules.
///
/// Shape:  widths run across, heights up; every number a count of the caller's unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What it is called in progress and faults.
    pub name: String,
    /// What to strive for first.
    pub goal: Goal,
    /// How cuts are made.
    pub rules: Rules,
    /// What may be cut up.
    pub stock: Vec<Sheet>,
    /// What is wanted.
    pub pieces: Vec<Piece>,
}

/// How cuts are made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub struct Rules {
    /// Width lost between two neighbouring parts.
    pub kerf: u64,
    /// At most so many cutting directions in alternation; `None`: no limit.
    pub stages: Option<u32>,
    /// The direction of the first cut, where the stages are limited.
    pub first: First,
    /// One more direction may trim waste off a single piece.
    pub final_trim: bool,
    /// Every strip a cut makes, waste included, is at least this wide. Only where kerf is 0.
    pub least_strip: u64,
}

/// The direction of the first cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum First {
    /// Either.
    #[default]
    Any,
    /// Cuts at an x: they run up the sheet.
    Upright,
    /// Cuts at a y: they run across the sheet.
    Level,
}

/// One kind of sheet to cut up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Unique among the stock.
    pub name: String,
    /// Across.
    pub width: u64,
    /// Up.
    pub height: u64,
    /// What one costs.
    pub cost: u64,
    /// How many are held; `None`: as many as needed.
    pub count: Option<u64>,
    /// Left over from earlier work.
    pub remnant: bool,
    /// Unusable edges, the kerf of the trimming cut included.
    pub trim: Edges,
}

/// Four edges.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub struct Edges {
    /// Where x is least.
    pub left: u64,
    /// Where x is greatest.
    pub right: u64,
    /// Where y is least.
    pub bottom: u64,
    /// Where y is greatest.
    pub top: u64,
}

/// One kind of piece wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Unique among the pieces.
    pub name: String,
    /// Across, as it lies unturned.
    pub width: u64,
    /// Up, as it lies unturned.
    pub height: u64,
    /// How many; `None`: as many as one likes, with [`Goal::Value`] only.
    pub count: Option<u64>,
    /// What one is worth, with [`Goal::Value`].
    pub value: u64,
    /// May lie turned a quarter.
    pub turn: bool,
    /// Each one cut frees a sheet of this width and height, to be cut up in the same plan.
    pub window: Option<(u64, u64)>,
    /// Higher is cut first where the stock does not reach for all.
    pub priority: u32,
    /// Earlier is cut first: any count of days.
    pub due: Option<u32>,
}

/// A rectangle on a sheet, from its lower left corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Area {
    /// From the sheet's left edge.
    pub x: u64,
    /// From the sheet's bottom edge.
    pub y: u64,
    /// Across.
    pub width: u64,
    /// Up.
    pub height: u64,
}

/// Which way a cut runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Way {
    /// Up the sheet, at an x.
    Upright,
    /// Across the sheet, at a y.
    Level,
}

/// One cut from edge to edge of a part: the kerf lies at `at .. at + kerf`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Cut {
    /// The part that is cut in two.
    pub of: Area,
    /// Which way.
    pub way: Way,
    /// Where, from the sheet's left edge (upright) or bottom edge (level).
    pub at: u64,
}

/// A piece where it lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Placed {
    /// Which, counted from 0 in the problem's pieces.
    pub piece: usize,
    /// Where it lies, as it lies.
    pub area: Area,
    /// Turned a quarter.
    pub turned: bool,
}

/// What a layout is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum From {
    /// Stock, counted from 0 in the problem's stock.
    Stock(usize),
    /// What falls out of this piece, counted from 0 in the problem's pieces.
    Window(usize),
}

/// One sheet cut up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// What it is cut from.
    pub from: From,
    /// How many sheets are cut the same way.
    pub copies: u64,
    /// What comes out.
    pub pieces: Vec<Placed>,
    /// In the order they are made; edge trims come before and are not among them.
    pub cuts: Vec<Cut>,
    /// What is left in whole rectangles.
    pub remnants: Vec<Area>,
}

/// A whole plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Sheets in the order they are best cut: earliest due first, windows after what frees them.
    pub layouts: Vec<Layout>,
    /// The cost, count or value reached, by the problem's goal.
    pub objective: u64,
    /// What no plan can go below (with [`Goal::Value`]: above).
    pub bound: u64,
    /// Pieces for which the stock was not found to reach: which, and how many.
    pub uncut: Vec<(usize, u64)>,
}

impl Plan {
    /// True when no better objective is possible.
    pub fn proven(&self) -> bool {
        self.objective == self.bound && self.uncut.is_empty()
    }
}
