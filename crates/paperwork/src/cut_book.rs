//! The cut sheets of a plan: what to take, what to cut from it, and in which order.

use drawing::{CutSheet, CutStick};

use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::Paper;
use crate::typeset::{Sheet, Stamp, pdf};

mod bought;
mod data;
mod list;
mod proof;

pub use bought::Bought;
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
    /// What is bought in all.
    pub bought: Bought,
    /// How good the plan is.
    pub proof: Option<CutProof>,
    /// What is kept that drops from a window, a line each.
    pub drops: Vec<String>,
    /// Pieces the stock does not reach for, a line each.
    pub uncut: Vec<String>,
    /// What can hurt whoever cuts it.
    pub dangers: Vec<Danger>,
    /// Sheets and sticks in the order they are best cut; a window after what frees it.
    pub leaves: Vec<CutLeaf>,
}

impl CutMaterial {
    /// `3 sheets and 2 fallouts, 17 pieces`, what is to be bought, and the sum over all of it, a
    /// line each.
    ///
    /// # Errors
    ///
    /// A sheet or stick whose cuts do not hold together, more than can be counted.
    pub fn totals(&self) -> Result<Vec<String>, PaperworkError> {
        data::totals(self)
    }
}

/// What is to be bought for all materials of a plan, as a sentence; nothing where there is one
/// material only, which says it itself.
pub fn to_buy(materials: &[CutMaterial]) -> Option<String> {
    if materials.len() < 2 {
        return None;
    }
    let mut all = Bought::default();
    for material in materials {
        all.and(&material.bought);
    }
    Some(match all.words() {
        Some(words) => format!("To buy in all: {words}"),
        None => "To buy in all: nothing".to_owned(),
    })
}

/// `1 stick`, `2 sticks`; nothing of none.
fn counted(count: u64, what: &str) -> Option<String> {
    match count {
        0 => None,
        1 => Some(format!("1 {what}")),
        _ => Some(format!("{count} {what}s")),
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
