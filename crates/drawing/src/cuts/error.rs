//! Why a cut sheet can't be drawn: its plan does not hold together.

use std::fmt;

/// What does not hold together, and on which sheet or stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CutError {
    /// The sheet or stick has no extent.
    NoExtent {
        /// Which.
        on: String,
    },
    /// A number is beyond what can be printed as a length.
    TooLong {
        /// On which sheet or stick.
        on: String,
    },
    /// A cut goes through a part that no earlier cut made, or not through it.
    NoSuchPart {
        /// On which sheet.
        on: String,
        /// Counted as printed.
        cut: usize,
    },
    /// No cut frees this piece or remnant.
    NotFreed {
        /// On which sheet.
        on: String,
        /// What.
        what: String,
    },
    /// It overlaps another part, or leaves the stick.
    Overlaps {
        /// On which sheet or stick.
        on: String,
        /// What.
        what: String,
    },
    /// The parts do not add up to the stock.
    Unaccounted {
        /// On which sheet or stick.
        on: String,
        /// What the parts come to.
        parts: String,
        /// What the stock holds.
        stock: String,
    },
}

impl fmt::Display for CutError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoExtent { on } => write!(
                f,
                "{on}: the stock has no extent; give it a size and plan again"
            ),
            Self::TooLong { on } => write!(
                f,
                "{on}: a size is longer than 1000 m; check the unit of the list and plan again"
            ),
            Self::NoSuchPart { on, cut } => write!(
                f,
                "{on}: cut {cut} does not go through a part that the cuts before it made; plan again"
            ),
            Self::NotFreed { on, what } => {
                write!(f, "{on}: no cut frees {what}; plan again")
            }
            Self::Overlaps { on, what } => write!(
                f,
                "{on}: {what} overlaps another part or leaves the stock; plan again"
            ),
            Self::Unaccounted { on, parts, stock } => write!(
                f,
                "{on}: pieces + kerf + trim + remnants + waste = {parts}, the stock is {stock}; plan again"
            ),
        }
    }
}

impl std::error::Error for CutError {}
