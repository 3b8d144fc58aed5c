//! Cutting: how many pieces come out of what is at hand. Knows nothing of framing: integers in,
//! integers out, in whatever unit the caller counts in.

mod straight;

pub use straight::{Yield, straight_yield};
