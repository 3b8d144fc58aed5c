//! Drawings: one scene of plain shapes, written as SVG, with a text twin beside it.
//!
//! Every size comes from [`sizing::Sizes`]; nothing here works one out again. Floats are used for
//! places on the sheet only: what is printed as a size is the exact length from the derivation.

mod back;
mod caption;
mod colour;
mod dimension;
mod elevation;
mod hatch;
mod input;
mod mirror;
mod piece;
mod profile;
mod scene;
mod section;
mod sheet;
mod svg;
mod twin;

#[cfg(test)]
mod tests;

pub use back::back_view;
pub use elevation::elevation;
pub use input::{DrawingError, Ink, Look, Picture, Sheet};
pub use section::section;
pub use twin::{Drawing, TwinLine, twin_text};
