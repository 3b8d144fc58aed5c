//! Cut sheets: what is cut from which sheet or stick, in which order, and that it adds up.
//!
//! A plan of [`cutting`] says where pieces lie; here stands how a person gets them out: cut by cut
//! from the reference edges, what comes off each time, and the sum that proves nothing is missing.

mod block;
mod counting;
mod error;
mod figures;
mod key;
mod lay;
mod of_plan;
mod ordinates;
mod sheet;
mod sheet_steps;
mod stick;
mod stick_steps;
mod sums;
mod words;

#[cfg(test)]
mod tests;

use cutting::sheets::{Area, Cut, Edges, Way};
use measure::{Length, Size};

pub use counting::{Counting, Shown, together};
pub use error::CutError;
pub use key::KeyLine;
pub use of_plan::{Names, cut_sheets_of, cut_sticks_of};
pub use sheet::cut_sheet;
pub use sheet_steps::{CutPart, CutStep, Off, Offcut, Reference, SheetWork, sheet_work};
pub use stick::cut_stick;
pub use stick_steps::{StickOff, StickRest, StickStep, StickWork, stick_work};
pub use sums::{CutSums, Extent};

use crate::twin::Drawing;

/// A sheet and how it is cut up.
///
/// Shape:  widths run across, heights up, from the sheet's lower left corner; its left and bottom
///         edges, once trimmed, are what everything is measured from.
/// Units:  counts, of what [`Counting`] says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutSheet {
    /// Which of the plan's sheets it is.
    pub title: String,
    /// The stock it is cut from.
    pub stock: String,
    /// It falls out of a piece cut before it.
    pub fallout: bool,
    /// What its numbers stand for.
    pub counting: Counting,
    /// Across.
    pub width: u64,
    /// Up.
    pub height: u64,
    /// Unusable edges, the kerf of the trimming cut included.
    pub trim: Edges,
    /// Width lost in a cut.
    pub kerf: u64,
    /// How many sheets are cut the same way.
    pub copies: u64,
    /// Which way grain, pattern or flutes run, for pieces that may not be turned.
    pub grain: Way,
    /// What comes out.
    pub pieces: Vec<CutPiece>,
    /// In the order they are made, after the trims.
    pub cuts: Vec<Cut>,
    /// What is kept.
    pub remnants: Vec<Kept<Area>>,
}

/// A piece where it lies on its sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPiece {
    /// What it is called: job and part, a line each.
    pub lines: Vec<String>,
    /// Where it lies, as it lies.
    pub area: Area,
    /// Its true width and height as it is wanted, unturned, where counts are lengths.
    pub exact: Option<Size>,
    /// It lies turned a quarter.
    pub turned: bool,
    /// It may not be turned.
    pub no_turn: bool,
    /// What falls out of it and is cut up in the same plan.
    pub window: Option<CutWindow>,
}

/// A window that is stock again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutWindow {
    /// What the fallout is called.
    pub label: String,
    /// Where it lies on the sheet, as it lies.
    pub area: Area,
}

/// What is kept of a sheet (an area) or a stick (from, to).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept<T> {
    /// What is written on it.
    pub label: String,
    /// Which stretch.
    pub place: T,
}

/// A stick and how it is cut up.
///
/// Shape:  along the stick from its reference end; the back of the moulding is drawn above.
/// Units:  counts, of what [`Counting`] says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutStick {
    /// Which of the plan's sticks it is.
    pub title: String,
    /// The stock it is cut from, with its run where it has one.
    pub stock: String,
    /// What its numbers stand for.
    pub counting: Counting,
    /// From end to end.
    pub length: u64,
    /// Unusable ends, the kerf of the trimming cut included: at the reference end, at the other.
    pub trim: (u64, u64),
    /// Length lost in a cut.
    pub kerf: u64,
    /// How many sticks are cut the same way.
    pub copies: u64,
    /// Stretches no piece may touch: from, to.
    pub flaws: Vec<(u64, u64)>,
    /// From the reference end, in order.
    pub pieces: Vec<StickPiece>,
    /// What is kept, in order.
    pub remnants: Vec<Kept<(u64, u64)>>,
}

/// A piece where it lies on its stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StickPiece {
    /// What it is called: job and part, a line each.
    pub lines: Vec<String>,
    /// From the start of the stick.
    pub at: u64,
    /// From end to end, mitre waste included: the long edge, at the back.
    pub length: u64,
    /// Its true length, where counts are lengths.
    pub exact: Option<Length>,
    /// How much shorter the front edge is at each end, where the ends are mitred.
    pub mitre: Option<(u64, u64)>,
}

/// A cut sheet as drawn, and the key of what was too small to be lettered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutDrawing {
    /// The drawing and its text twin.
    pub drawing: Drawing,
    /// In the drawing already, except on [`Sheet::Bench`](crate::Sheet::Bench).
    pub key: Vec<KeyLine>,
    /// The tag of each piece that carries one instead of its name.
    pub piece_tags: Vec<Option<String>>,
    /// The tag of each remnant that carries one.
    pub remnant_tags: Vec<Option<String>>,
}

impl CutPiece {
    /// Its own width and height, however it lies.
    pub fn own_size(&self) -> (u64, u64) {
        if self.turned {
            (self.area.height, self.area.width)
        } else {
            (self.area.width, self.area.height)
        }
    }

    /// Its name in one line.
    pub fn name(&self) -> String {
        self.lines.join(", ")
    }
}

impl CutSheet {
    /// What lies on one side of a cut, in its own width × height: a piece with its true size, what
    /// is kept never said larger than it is.
    pub fn shown(&self, off: &Off) -> Shown {
        let as_it_lies = (off.area.width, off.area.height);
        match off.what {
            Offcut::Piece(place) => {
                let piece = &self.pieces[place];
                self.counting.shown_piece(piece.own_size(), piece.exact)
            }
            Offcut::Remnant(_) => self.counting.kept(&[as_it_lies.0, as_it_lies.1]),
            Offcut::Part(_) | Offcut::Waste | Offcut::Trim => self.counting.shown_size(as_it_lies),
        }
    }
}

impl CutStick {
    /// How long something is that comes off: a piece with its true length, what is kept never said
    /// longer than it is.
    pub fn shown(&self, off: StickOff, length: u64) -> Shown {
        match off {
            StickOff::Piece(place) => {
                let piece = &self.pieces[place];
                self.counting.shown_length(piece.length, piece.exact)
            }
            StickOff::Remnant(_) => self.counting.kept(&[length]),
            StickOff::Waste | StickOff::Trim => self.counting.shown(length),
        }
    }

    /// Where running totals are measured from.
    pub const fn measured_from(&self) -> &'static str {
        if self.trim.0 == 0 {
            "from the reference end"
        } else {
            "from the reference end, once trimmed"
        }
    }
}

impl StickPiece {
    /// Its name in one line.
    pub fn name(&self) -> String {
        self.lines.join(", ")
    }
}

/// A count as a place on paper; drawn to a hair, printed never.
#[allow(
    clippy::cast_precision_loss,
    reason = "the name says it is approximate"
)]
pub(crate) const fn approx(count: u64) -> f64 {
    count as f64
}
