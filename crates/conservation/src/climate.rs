//! Climate: moist air, wood, sheets, cold walls, sealed packages.

mod air;
mod buffer;
mod sheet;
mod wall;
mod wood;

pub use air::{Air, MoistAir, moist_air, saturation};
pub use buffer::{Buffer, HalfTime, half_time};
pub use sheet::{
    Coefficients, Cover, acrylic, after_shrinking, board, damp_growth, damper, drier, glass,
    paper_across, paper_along, sheet_change,
};
pub use wall::{ColdSurface, WallGap, cold_surface, gap_behind};
pub use wood::{
    Grain, Mitre, Moisture, RailMovement, WOODS, Wood, coefficient_from_shrinkage, equilibrium,
    mitre_gap, movement, rail_movement, wood,
};
