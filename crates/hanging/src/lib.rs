//! Hanging: what the wire pulls, where the nail goes, how a row stands on its wall.
//!
//! A load is given as the mass whose weight it equals: a pull of 20 lb is the pull of a mass of
//! 20 lb hanging still, what scales and fixings are marked with.
//!
//! ```
//! use hanging::{Hang, Stated, wire_run};
//! use measure::{Length, Mass};
//! use working::Working;
//!
//! let hang = Hang {
//!     weight: Stated::job(Mass::POUND.times(20)),
//!     rings_apart: Stated::job(Length::inches(20)),
//!     rise: Stated::job(Length::inches(3)),
//!     hooks_apart: None,
//! };
//! let mut working = Working::new();
//! let run = wire_run(&hang, &mut working)?;
//! assert_eq!(run.tension.print_lb_nearest(1), "34.8 lb");
//! assert_eq!(run.times_weight_nearest(2), "1.74");
//! assert!(working.recheck().is_empty());
//! # Ok::<(), hanging::Refusal>(())
//! ```
#![deny(
    clippy::float_arithmetic,
    clippy::as_conversions,
    clippy::integer_division
)]

pub mod advice;
mod choice;
pub mod layout;
#[allow(clippy::float_arithmetic, reason = "figures of loads, no lengths")]
pub mod lift;
#[allow(clippy::float_arithmetic, reason = "figures of loads, no lengths")]
mod load;
mod nail;
mod plan;
#[allow(
    clippy::float_arithmetic,
    reason = "stiffness; a length comes out of a function whose name rounds it"
)]
mod rail;
mod refusal;
mod row;
#[allow(
    clippy::float_arithmetic,
    reason = "figures of loads; a length comes out of a function whose name rounds it"
)]
pub mod screw;
mod weight;
mod wire;

pub use choice::{Choice, choice};
pub use load::{Borne, HookPull, bears, force, hook_pull, working_load};
pub use nail::{Nail, NailPlan, nail};
pub use plan::{Hanging, RailPlan, ScrewPlan, WirePlan, hangs};
pub use rail::{Bar, Rail, Sag, bar_enough, deep_enough, sag};
pub use refusal::Refusal;
pub use row::{Row, RowPlan, row};
pub use weight::{LEFT_OUT, Part, Place, Unweighed, Weight, weigh};
pub use wire::{Factors, Hang, Ratings, WireRun, ratings, wire_run};

pub use working::Stated;
use working::{Rule, Source, Status};

/// What stands beside every load that is shown.
pub const CAUTION: &str = conservation::caution::Caution::Load.text();

/// A rule of plain geometry.
const fn geometry(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::Geometry,
        status: Status::Geometry,
    }
}

/// A rule of the trade without a source.
const fn custom(id: &'static str, words: &'static str, formula: &'static str) -> Rule {
    Rule {
        id,
        words,
        formula,
        source: Source::CommonPractice,
        status: Status::CommonPractice,
    }
}
