//! Paperwork: the sheets that leave the shop's printer, typeset in this process as PDF.
//!
//! A sheet is asked for with a plain struct of strings its caller has already worded
//! and rounded; nothing here derives, rounds or recomputes a size. No clock is read and
//! no file is opened: fonts and templates are part of the binary, and the time a sheet
//! carries is given with it, so the same sheet is always the same bytes.

mod about;
mod condition_report;
mod cut_book;
mod error;
mod finish;
mod kit;
mod leaf;
mod legible;
mod on_wall;
mod qr;
mod quote;
mod record;
mod sheaf;
mod ticket;
mod typeset;

pub use condition_report::{ConditionHead, ConditionReport, SeenMark, condition_of, condition_pdf};
pub use cut_book::{
    Bought, CutBook, CutLeaf, CutMaterial, CutProof, Danger, cut_sheets_pdf, to_buy,
};
pub use error::PaperworkError;
pub use leaf::{CardHead, LabelHead, Leaf, LeafSection, LeafSize, card_of, label_of, leaf_pdf};
pub use on_wall::{TemplatePoint, WallHead, WallTemplate, nail_map_pdf, wall_template_pdf};
pub use quote::{
    Choice, Choices, Copy, InvoiceWords, MOST_CHOICES, QuoteHead, QuoteLine, QuotePaper,
    QuotePiece, QuoteSum, choices_of, choices_pdf, quote_of, quote_pdf,
};
pub use record::{RECORD_VERSION, RecordFault, RecordHead, RecordKey, SealedRecord, record_of};
pub use sheaf::{
    PlanWords, Weighed, cut_material_of_instance, cut_material_of_list, cut_materials_of_day,
    problem_of, tape, unplanned,
};
pub use ticket::{
    Caution, CutPart, Drawing, Drawings, Layer, Legs, Letterhead, Mark, MatCut, Paper,
    ROWS_PRINTED, Severity, Stack, Step, StepCaution, Ticket, ticket_of, ticket_pdf,
};
pub use typeset::Stamp;
