//! Cutting: the fewest and cheapest sticks and sheets for a list of pieces, with a proven bound.
//!
//! Knows nothing of framing: integers in, plan out, in whatever unit the caller counts in.
//! [`lengths`] cuts sticks, [`sheets`] cuts sheets from edge to edge.

mod chance;
mod check;
pub mod day;
pub mod document;
mod fault;
mod kinds;
pub mod lengths;
mod master;
mod pace;
pub mod sheets;
mod straight;

pub use check::{Account, Broken, Tally};
pub use fault::Fault;
pub use kinds::{OtherKind, Pair, Plan, Problem};
pub use pace::{Halt, News, Pace, Trying, Unwatched, Watch};
pub use straight::{Yield, straight_yield};

/// What a plan strives for first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Default)]
pub enum Goal {
    /// The fewest sheets or sticks, of whatever kind.
    Fewest,
    /// The least total cost of the stock used.
    #[default]
    Cost,
    /// The most value out of one sheet or stick; pieces may be left uncut.
    Value,
}
