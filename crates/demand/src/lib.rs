//! Demand: from derived packages to pieces to cut, and from plans back to stock and remnants.
//!
//! [`Day::of`] gathers the parts of every piece, material by material, and states one problem of
//! the cutting room for each; [`Day::settle`] takes the plans back and says which stick or sheet
//! every part comes from, what is left of it, and that nothing is lost.
//!
//! Lengths are exact on both sides. In between the cutting room counts in whole ticks: [`Tick`]
//! says how sizes are rounded to them, and what that rounding takes is accounted for.
#![deny(
    clippy::float_arithmetic,
    clippy::as_conversions,
    clippy::integer_division
)]

mod account;
mod bundle;
mod day;
mod fallout;
mod fault;
mod gather;
mod kerf;
mod label;
mod list;
mod names;
mod number;
mod outcome;
mod part;
mod refusal;
mod restock;
mod rules;
mod settle;
#[allow(
    clippy::float_arithmetic,
    reason = "angles; each function names its rounding"
)]
mod slant;
mod source;
mod stock;
mod tick;
mod ware;

pub use account::{Account, Share};
pub use cutting::Plan;
pub use day::{Batch, Day, DayJob, Work};
pub use fault::{Fault, TooLarge};
pub use list::{
    CutList, LIST_VERSION, ListBatch, ListFault, ListPiece, ListReason, ListRules, ListStock,
};
pub use outcome::{
    From, JobParts, Left, Missing, Outcome, PartAt, Remnant, Settled, Spot, Taken, Used,
};
pub use part::{Panel, Rails, Strip, Unplanned};
pub use source::{Basis, Origin, Source};
pub use stock::{
    Buy, CutStock, Extent, RemnantStock, STOCK_VERSION, SheetStock, StickStock, Stock, StockFault,
};
pub use tick::Tick;
pub use ware::{Ware, WareKind};
