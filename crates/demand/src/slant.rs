//! The two places where a cut list goes through angles: each function's name says how it rounds.

use measure::{Angle, Length};

/// How far a blade of this width reaches along the stick it cuts at a slant, rounded up.
///
/// along = blade ÷ (cos gauge × cos tilt)
///
/// Shape:  the blade's faces lie `blade` apart; the stick crosses them at the gauge's angle and,
///         for sloped sides, at the blade's tilt.
/// Units:  exact length in, the next quantum above the nearest out.
/// Source: geometry; 1.414 times the blade at 45°.
pub(crate) fn along_stick_up(blade: Length, gauge: Angle, tilt: Angle) -> Length {
    let narrowing = gauge.approx_radians().cos() * tilt.approx_radians().cos();
    above(blade, 1.0 / narrowing)
}

/// Across the corners of a regular polygon from its width across the flats, rounded up.
///
/// corners = flats ÷ cos(half turn ÷ sides)
///
/// Source: geometry; 1.1547 times the flats for a hexagon.
pub(crate) fn across_corners_up(flats: Length, sides: u32) -> Length {
    above(flats, 1.0 / (std::f64::consts::PI / f64::from(sides)).cos())
}

/// The nearest quantum to the product, and one more.
fn above(length: Length, factor: f64) -> Length {
    length
        .scaled_nearest(factor)
        .map_or(Length::LIMIT, |nearest| nearest + Length::QUANTUM)
}
