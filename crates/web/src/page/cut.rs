//! The Bench: what is cut from what. Jobs or a list go in, a plan comes out, drawn part by part.

mod ask;
mod day;
mod leaf;
mod list;
mod plan;
mod sheet;
mod stick;

pub(crate) use day::{day, planned};
pub(crate) use list::{cut_list, cut_listed};
pub(crate) use plan::{cut_sheets, material, plan};
