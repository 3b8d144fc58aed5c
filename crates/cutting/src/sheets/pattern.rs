//! What the best layout of one sheet is worth, and plans put together from layouts.
//!
//! [`value`] finds the most value out of one sheet; [`columns`] finds the least cost for demands
//! by column generation, with a bound that is proven in integers at every step.

mod beam;
mod bounded;
mod builds;
mod certify;
mod coarse;
mod columns;
mod dive;
mod fill;
mod grown;
mod oracle;
mod points;
mod pricing;
mod rest;
mod sequence;
mod shape;
mod strips;
mod table;
mod value;

pub(crate) use coarse::coarser;
pub(crate) use columns::Columns;
pub(crate) use value::solve as most_value;

#[cfg(test)]
mod tests;
