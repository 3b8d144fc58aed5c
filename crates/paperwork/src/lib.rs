//! Paperwork: the sheets that leave the shop's printer, typeset in this process as PDF.
//!
//! A sheet is asked for with a plain struct of strings its caller has already worded
//! and rounded; nothing here derives, rounds or recomputes a size. No clock is read and
//! no file is opened: fonts and templates are part of the binary, and the time a sheet
//! carries is given with it, so the same sheet is always the same bytes.

mod cut_book;
mod error;
mod finish;
mod kit;
mod legible;
mod sheaf;
mod ticket;
mod typeset;

pub use cut_book::{CutBook, CutLeaf, CutMaterial, CutProof, Danger, cut_sheets_pdf};
pub use error::PaperworkError;
pub use sheaf::{
    PlanWords, Sheaf, problem_of, sheaf_of_instance, sheaf_of_list, sheaves_of_day, tape, unplanned,
};
pub use ticket::{
    Caution, CutPart, Drawing, Drawings, Layer, Legs, Letterhead, Mark, MatCut, Paper,
    ROWS_PRINTED, Severity, Stack, Step, StepCaution, Ticket, ticket_of, ticket_pdf,
};
pub use typeset::Stamp;
