//! Why something can't hang as described.

use measure::{Length, Mass, Unit};

/// Why something can't hang as described, and what to change.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Refusal {
    /// Nothing, or less, hangs.
    #[error("the weight is {weight}; weigh the piece, or add up its parts")]
    NoWeight {
        /// As given.
        weight: Mass,
    },
    /// The wire has no slope between ring and hook.
    #[error("the rings are {} apart and the hooks {}; put the hooks closer together than the rings", say(*.rings), say(*.hooks))]
    NoSpan {
        /// Between the rings.
        rings: Length,
        /// Between the hooks; zero for a single one.
        hooks: Length,
    },
    /// A wire without slack would have to pull without end.
    #[error("the wire rises {}; leave it slack, so that it rises above its rings under load", say(*.rise))]
    NoRise {
        /// As given.
        rise: Length,
    },
    /// The pull is past any number this program holds.
    #[error("the wire pulls harder than can be worked out; give it more slack")]
    TooTaut,
    /// A factor that would weaken.
    #[error("the safety factor is {factor}; give 1 or more")]
    Factor {
        /// As given.
        factor: i64,
    },
    /// Ends that leave a wire no strength, or more than it has.
    #[error("the wire's ends leave {ends} % of its strength; give 1 to 100")]
    Ends {
        /// As given.
        ends: i64,
    },
    /// A measure that can't be this small.
    #[error("{what} is {}; give {least}", say(*.given))]
    TooSmall {
        /// The measure, with its article.
        what: &'static str,
        /// What it may be: `more than zero`, `zero or more`.
        least: &'static str,
        /// As given.
        given: Length,
    },
    /// The hook would show above the frame.
    #[error("the rings are {} down and the wire rises {}, so the hook would show above the frame; set the rings lower, or shorten the wire", say(*.drop), say(*.rise))]
    HookShows {
        /// From the frame's top to the rings.
        drop: Length,
        /// Of the wire.
        rise: Length,
    },
    /// The frame reaches below the floor.
    #[error("the picture's centre is {} up and the frame {} high, so it would reach below the floor; raise the centre to {} or more", say(*.centre), say(*.height), say(*.height - .height.half_down()))]
    BelowFloor {
        /// Centre above floor.
        centre: Length,
        /// Outside height.
        height: Length,
    },
    /// A number outside what can be.
    #[error(transparent)]
    Outside(#[from] conservation::Refusal),
    /// A stairway that rises nowhere.
    #[error("the stairs run {} for a rise of {}; measure one tread and one riser", say(*.run), say(*.rise))]
    NoStairs {
        /// Along.
        run: Length,
        /// Up.
        rise: Length,
    },
    /// A row of nothing.
    #[error("the row has no frames; name at least one")]
    EmptyRow,
    /// The row is wider than its wall.
    #[error("the row is {} wide and the wall {}; take {} out of its gaps and frames, or hang it in two rows", say(*.row), say(*.wall), say(*.row - *.wall))]
    RowTooWide {
        /// All frames and gaps.
        row: Length,
        /// The wall.
        wall: Length,
    },
}

impl Refusal {
    /// Refuses a length that is not above zero.
    pub(crate) const fn unless_positive(what: &'static str, given: Length) -> Result<(), Self> {
        if given.is_positive() {
            return Ok(());
        }
        let least = "more than zero";
        Err(Self::TooSmall { what, least, given })
    }

    /// Refuses a length below zero.
    pub(crate) const fn if_negative(what: &'static str, given: Length) -> Result<(), Self> {
        if !given.is_negative() {
            return Ok(());
        }
        let least = "zero or more";
        Err(Self::TooSmall { what, least, given })
    }
}

fn say(length: Length) -> String {
    length.in_both(Unit::Inch)
}
