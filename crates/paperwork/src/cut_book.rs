//! The cut sheets of a plan: what to take, what to cut from it, and in which order.

use drawing::{CutSheet, CutStick};

use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::Paper;
use crate::typeset::{Sheet, Stamp, pdf};

mod data;
mod list;
mod proof;

pub use proof::CutProof;

/// The cut sheets of a plan, as PDF.
///
/// Shape:  a cover with what to take and the proof of each material, then every sheet and stick to
///         scale with the list of its cuts, sheets on a page of their own; every page carries plan,
///         date and its number. Settings in the lists have digits at least 4.5 mm high, nothing is
///         under 3.3 mm.
/// Units:  of each sheet's and stick's own [`Counting`](drawing::Counting).
///
/// # Errors
///
/// No plan name, a moment off the calendar, a sheet or stick whose cuts do not hold together.
pub fn cut_sheets_pdf(book: &CutBook, paper: Paper) -> Result<Vec<u8>, PaperworkError> {
    if book.plan.trim().is_empty() {
        return Err(PaperworkError::NoPlan);
    }
    let mut legible = Legible::new();
    pdf(Sheet {
        template: "cut-book.typ",
        data: data::of(book, paper, &mut legible)?,
        drawings: Vec::new(),
        identity: format!("cut sheets {} {}", book.plan, book.revision),
        made: book.made,
    })
}

/// A plan on paper.
///
/// Shape:  strings as they are to be read; empty ones and empty lists leave their place out.
#[derive(Clone, Debug)]
pub struct CutBook {
    /// The shop's name.
    pub shop: String,
    /// What the plan is called, on every page.
    pub plan: String,
    /// The jobs or orders it cuts for.
    pub orders: Vec<String>,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
    /// The plan's date, as the shop writes dates.
    pub date: String,
    /// Its revision, and what it replaces: `revision 3, replaces 2`.
    pub revision: String,
    /// That it is replaced itself, and by what: `superseded by revision 4`.
    pub superseded: String,
    /// One after another.
    pub materials: Vec<CutMaterial>,
}

/// What one material is cut into.
#[derive(Clone, Debug)]
pub struct CutMaterial {
    /// Product, colour, thickness.
    pub name: String,
    /// What to take from the rack, a line each.
    pub take: Vec<String>,
    /// What to buy, a line each.
    pub buy: Vec<String>,
    /// How good the plan is.
    pub proof: Option<CutProof>,
    /// Pieces the stock does not reach for, a line each.
    pub uncut: Vec<String>,
    /// What can hurt whoever cuts it.
    pub dangers: Vec<Danger>,
    /// Sheets and sticks in the order they are best cut; a window after what frees it.
    pub leaves: Vec<CutLeaf>,
}

impl CutMaterial {
    /// `3 sheets and 2 fallouts, 17 pieces`, and the sum over all of them, a line each.
    ///
    /// # Errors
    ///
    /// A sheet or stick whose cuts do not hold together, more than can be counted.
    pub fn totals(&self) -> Result<Vec<String>, PaperworkError> {
        data::totals(self)
    }
}

/// A sheet or a stick.
#[derive(Clone, Debug)]
pub enum CutLeaf {
    /// A sheet.
    Sheet(CutSheet),
    /// A stick.
    Stick(CutStick),
}

/// What can hurt whoever cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Danger {
    /// Glass is scored and broken.
    Glass,
    /// A blade is drawn or chopped through board.
    Blade,
    /// A saw cuts wood, metal or plastic.
    Saw,
}
