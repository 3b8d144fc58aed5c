//! Cutting: what both `cut` commands do with problems of the cutting room.
//!
//! A command asks for [`Sheaf`]s, one for each material; text, cut sheets and drawings are made of
//! those alone.

mod options;
mod outputs;
mod progress;
mod solving;
mod text;

pub use options::Options;
pub use outputs::{Answer, deliver, wants_all};
pub use paperwork::{
    Sheaf, problem_of, sheaf_of_instance, sheaf_of_list, sheaves_of_day as of_day, unplanned,
};
pub use solving::{Solved, solve};
