//! Conservation: what light, climate, boards and hinges do to a piece, and what cures it.
//!
//! Every figure is worked out in a [`Working`](working::Working): it carries its rule, its inputs, and
//! the source and status of both. What is uncertain is a [`Span`], from the least it may be to the most.
//! Constants are tables (`data/`), each row with its source and how much of it was seen.
//!
//! ```
//! use conservation::light::{Class, Showing, years};
//! use trade::{Settings, Units};
//! use working::Working;
//!
//! let mut working = Working::new();
//! let settings = Settings::defaults(Units::Inches);
//! let wall = Showing::asked(50.0, 8.0, 365.0);
//! let span = years(Class::High, true, &wall, &settings, &mut working)?.expect("it fades");
//! assert_eq!(span.to_string(), "2.1 to 21 years");
//! assert!(working.recheck().is_empty());
//! # Ok::<(), conservation::Refusal>(())
//! ```

pub mod advice;
pub mod attachment;
pub mod boards;
pub mod caution;
pub mod climate;
pub mod glazing;
pub mod light;
mod mention;
mod refusal;
pub mod rules;
pub mod spoken;
mod table;

pub use refusal::Refusal;
pub use rules::Span;
pub use table::{Fact, TABLES, Text, Trust, lasting, rows, status, within};
