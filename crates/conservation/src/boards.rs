//! Boards: published limits, what each weighs, what may lie against which art.

mod mass;
mod spec;

pub use mass::{BOARDS, BoardMass, board_mass};
pub use spec::{Failing, SPECS, Spec, Tested, judge, spec};
