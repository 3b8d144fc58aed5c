//! Paperwork: the sheets that leave the shop's printer, typeset in this process as PDF.
//!
//! A sheet is asked for with a plain struct of strings its caller has already worded
//! and rounded; nothing here derives, rounds or recomputes a size. No clock is read and
//! no file is opened: fonts and templates are part of the binary, and the time a sheet
//! carries is given with it, so the same sheet is always the same bytes.

mod error;
mod finish;
mod kit;
mod legible;
mod ticket;
mod typeset;

pub use error::PaperworkError;
pub use ticket::{
    Caution, CutPart, Drawing, Drawings, Layer, Legs, Letterhead, Mark, MatCut, Paper,
    ROWS_PRINTED, Severity, Stack, Step, StepCaution, Ticket, ticket_of, ticket_pdf,
};
pub use typeset::Stamp;
