//! A plan as the bench reads it: one [`CutMaterial`](crate::CutMaterial) for each material, out of a
//! day of jobs, a cut list or a cutting problem in JSON.
//!
//! Whoever shows a plan, on paper, on a page or in a terminal, shows those.

mod day;
mod list;
mod words;

pub use day::{cut_materials_of_day, problem_of, unplanned};
pub use list::{cut_material_of_instance, cut_material_of_list};
pub use words::{PlanWords, Weighed, tape};
