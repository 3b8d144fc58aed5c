//! A plan as the bench reads it: one sheaf for each material, out of a day of jobs, a cut list or
//! an instance of the cutting room.
//!
//! Whoever shows a plan, on paper, on a page or in a terminal, shows a [`Sheaf`].

mod day;
mod list;
mod words;

pub use day::{problem_of, sheaves_of_day, unplanned};
pub use list::{sheaf_of_instance, sheaf_of_list};
pub use words::{PlanWords, tape};

use crate::cut_book::CutMaterial;

/// Everything said of one material.
#[derive(Clone, Debug)]
pub struct Sheaf {
    /// As the cut sheets show it.
    pub material: CutMaterial,
    /// What is kept that drops from a window, a line each.
    pub drops: Vec<String>,
}
