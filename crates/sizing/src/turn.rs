//! The few places where sizes go through angles: each function's name says how it rounds.

use measure::{Angle, Length};

/// Half a turn, in degrees.
const HALF_TURN: f64 = 180.0; // geometry: half a turn

/// Mitre of a frame of `sides`, to the nearest millionth of a degree.
pub(crate) fn mitre_nearest(sides: u32) -> Angle {
    Angle::nearest_from_degrees(HALF_TURN / f64::from(sides)).unwrap_or_default()
}

/// Side of a regular polygon from its width across the flats, to the nearest quantum.
pub(crate) fn across_flats_side_nearest(across: Length, sides: u32) -> Length {
    let share = (std::f64::consts::PI / f64::from(sides)).tan();
    across.scaled_nearest(share).unwrap_or_default()
}

/// All sides of a regular polygon together, rounded once, to the nearest quantum.
pub(crate) fn perimeter_nearest(across: Length, sides: u32) -> Length {
    let share = f64::from(sides) * (std::f64::consts::PI / f64::from(sides)).tan();
    across.scaled_nearest(share).unwrap_or_default()
}

/// Mitre gauge and blade tilt for sides tilted from flat, to the nearest millionth of a degree.
pub(crate) fn compound_nearest(tilt: Angle, sides: u32) -> (Angle, Angle) {
    let (b, m) = (
        tilt.approx_radians(),
        std::f64::consts::PI / f64::from(sides),
    );
    let degrees =
        |radians: f64| Angle::nearest_from_degrees(radians.to_degrees()).unwrap_or_default();
    (
        degrees((b.cos() * m.tan()).atan()),
        degrees((b.sin() * m.sin()).asin()),
    )
}

/// How far a bevel of this angle runs in plan through a board, to the nearest quantum.
pub(crate) fn bevel_run_nearest(thickness: Length, bevel: Angle) -> Length {
    let share = 1.0 / bevel.approx_radians().tan();
    thickness.scaled_nearest(share).unwrap_or_default()
}

/// Width of a tilted side seen from the front, to the nearest quantum.
pub(crate) fn in_plan_nearest(width: Length, tilt: Angle) -> Length {
    width
        .scaled_nearest(tilt.approx_radians().cos())
        .unwrap_or_default()
}
