//! Cutting: what both `cut` commands do with problems of the cutting room.
//!
//! A command asks for [`CutMaterial`]s; text, cut sheets and drawings are made of those alone.

mod options;
mod outputs;
mod progress;
mod solving;
mod text;

pub use options::Options;
pub use outputs::{Answer, deliver, wants_all};
pub use paperwork::{
    CutMaterial, cut_material_of_instance, cut_material_of_list, cut_materials_of_day, problem_of,
    unplanned,
};
pub use solving::{Solved, ours, solve, told};
