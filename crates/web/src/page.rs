//! The pages: the Counter, a piece on its drafting table, the Bench with its plans, settings, materials.

mod asked;
mod bench;
mod care;
mod caution;
mod counter;
mod cut;
mod drawings;
mod editor;
mod figure;
mod follows;
mod front;
mod materials;
mod piece;
mod price;
mod settings;
mod shell;
mod sizes;
mod trouble;
mod why;

pub(crate) use asked::{document, drawing, open, ticket};
pub(crate) use care::{asked as care_asked, care, cure};
pub(crate) use counter::counter;
pub(crate) use cut::{cut_list, cut_listed, cut_sheets, day, material, plan, planned};
pub(crate) use front::front;
pub(crate) use materials::materials;
pub(crate) use piece::{piece, worked};
pub(crate) use price::{
    alternatives, budget, quote_file, quote_opened, quote_pdf, quote_way_in, quoted,
};
pub(crate) use settings::settings;
pub(crate) use trouble::trouble;
