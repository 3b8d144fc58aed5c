//! Measuring: exact lengths and the quantities a framer measures, read and printed as people do.
//!
//! A [`Length`] is a whole number of 1/16 000 mm, in which 1/128 in and 1 µm are both whole, so
//! inch fractions and metric sizes add up without rounding. What people type is read exactly or
//! refused with the reason, the place and what to type instead. Rounding happens only in functions
//! whose name says so.
//!
//! ```
//! use measure::{Tape, Toward, Unit, read_length, read_size};
//!
//! let window = read_length("16 7/8", Unit::Inch)?;
//! assert_eq!(window.exact_mm(), "428.625 mm");
//! assert_eq!(window.in_both(Unit::Inch), "16 7/8 in (428.625 mm)");
//!
//! // The bench reads a tape, and the print says which way it was rounded.
//! let cut = read_length("428.6 mm", Unit::Inch)?.on_tape(Tape::Sixteenths, Toward::Down);
//! assert_eq!(cut.to_string(), "16 13/16 in (rounded down)");
//!
//! // An outset puts a border on every side.
//! let art = read_size("8 x 10", Unit::Inch)?;
//! let border = read_length("2 1/2", Unit::Inch)?;
//! assert_eq!(art.grow(border), read_size("13 x 15", Unit::Inch)?);
//!
//! // Two readings are never guessed between.
//! let refused = read_length("11/2", Unit::Inch).expect_err("5 1/2 or 1 1/2");
//! assert_eq!(refused.code(), "measure.fraction.improper");
//! assert_eq!(refused.readings(), ["5 1/2 in", "1 1/2 in"]);
//! # Ok::<(), measure::ReadError>(())
//! ```
#![deny(
    clippy::float_arithmetic,
    clippy::as_conversions,
    clippy::integer_division,
    clippy::arithmetic_side_effects
)]

mod angle;
mod area;
mod decimal;
mod division;
mod length;
mod mass;
mod money;
mod read;
mod size;
mod tape;
mod unit;

pub use angle::Angle;
pub use area::Area;
pub use length::Length;
pub use mass::{ArealMass, Mass};
pub use money::{Currency, Money, MoneyError};
pub use read::{ReadError, Refusal, Wanted, read_length, read_size};
pub use size::Size;
pub use tape::{Printed, Rounding, Tape, Toward};
pub use unit::Unit;
