//! Drawings: one scene of plain shapes, written as SVG, with a text twin beside it.
//!
//! Every size of a piece comes from [`sizing::Sizes`], every place of a cut from a plan of
//! [`cutting`]; nothing here works one out again. Floats are used for
//! places on the sheet only: what is printed as a size is the exact length from the derivation.

mod back;
mod caption;
mod colour;
mod cuts;
mod dimension;
mod elevation;
mod hatch;
mod input;
mod marked;
mod mirror;
mod piece;
mod profile;
mod scene;
mod section;
mod sheet;
mod svg;
mod twin;
mod wall;

#[cfg(test)]
mod tests;

pub use back::back_view;
pub use cuts::{
    Counting, CutDrawing, CutError, CutPart, CutPiece, CutSheet, CutStep, CutStick, CutSums,
    CutWindow, Extent, Kept, KeyLine, Names, Off, Offcut, Reference, SheetWork, Shown, StickOff,
    StickPiece, StickRest, StickStep, StickWork, cut_sheet, cut_sheets_of, cut_stick,
    cut_sticks_of, sheet_work, stick_work, together,
};
pub use elevation::elevation;
pub use input::{DrawingError, Ink, Look, Picture, Sheet};
pub use marked::marked_art;
pub use section::section;
pub use twin::{Drawing, TwinLine, twin_text};
pub use wall::{WallNail, WallPiece, WallPlan, wall};
