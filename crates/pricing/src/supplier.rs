//! Suppliers' price lists, in any layout.
//!
//! A [`Mapping`] says once how a supplier's list is laid out. A list is read row by row against a
//! [`Shelf`], the shop's own catalogue file, into a [`Preview`]: what is new, what changed, what is
//! gone, and every row that is refused with its reason. [`Preview::apply`] then makes one change of
//! it: the catalogue's new text, in which nothing that stood there is overwritten, and an [`Undo`]
//! that gives the old text back byte for byte.

mod apply;
mod article;
mod columns;
mod mapping;
mod numbers;
mod preview;
mod rejected;
mod rows;
mod shelf;
mod undo;
mod written;

pub use apply::{Applied, ApplyFault};
pub use mapping::{Encoding, Mapping, MappingFault, Missing};
pub use numbers::Numbers;
pub use preview::{Article, Gone, News, OfferChange, Preview};
pub use rejected::{Differing, Reason, Rejected};
pub use rows::ListFault;
pub use shelf::{Shelf, ShelfFault};
pub use undo::{Print, Undo, UndoFault};

#[cfg(test)]
mod tests;
