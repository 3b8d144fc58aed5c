//! Working: every derived value with the rule that made it, its inputs, and where the rule comes from.
//!
//! A rule is a `static`; arithmetic stays plain Rust, and one call to [`Working::by`] closes it:
//!
//! ```
//! use measure::Length;
//! use working::{Given, Rule, Source, Status, Subject, Working};
//!
//! static OUTSIDE: Rule = Rule {
//!     id: "mat.outside",
//!     words: "a mat is as wide as its window and both borders",
//!     formula: "outside = window + left + right",
//!     source: Source::Geometry,
//!     status: Status::Geometry,
//! };
//!
//! let (window, border) = (Length::inch_128ths(16 * 128), Length::inch_128ths(5 * 64));
//! let mut working = Working::new();
//! let outside = working.by(
//!     &OUTSIDE,
//!     Subject::nth("mat", 0, "outside").width(),
//!     &[("window", Given::job(window)), ("left", Given::job(border)), ("right", Given::job(border))],
//!     window + border + border,
//! );
//! assert_eq!(*outside, Length::inch_128ths(21 * 128));
//! assert!(working.find("mat.1.outside.width").is_some());
//! assert!(working.recheck().is_empty());
//! ```
//!
//! The formula a person reads is the formula [`Working::recheck`] computes, so what is printed and what
//! was done cannot drift apart unseen.

mod decimal;
mod explain;
mod figure;
mod fine;
mod formula;
mod recheck;
mod rule;
mod stated;
mod subject;
mod text;
mod trace;
mod value;

pub use decimal::{Decimal, Round};
pub use explain::{Explanation, Step};
pub use figure::Figure;
pub use fine::FinePrice;
pub use formula::{Fault, Formula, Quantity, Unit};
pub use recheck::{FLOAT_ALLOWANCE, Mismatch, Why};
pub use rule::{Citation, Rule, Seen, Source, Status};
pub use stated::Stated;
pub use subject::{Axis, Subject};
pub use trace::{Line, LineId, LineView, Worked, Working};
pub use value::{Given, Input, Origin, Value};
