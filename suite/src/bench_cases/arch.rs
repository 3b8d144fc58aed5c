//! Reading an arch off its outline.

use measure::{Length, Size};
use sizing::Outline;

/// Chords per quarter turn the outline is read with.
const STEPS: u32 = 16;

/// How far a corner may lie from the circle through the others: each is rounded to a quantum both
/// ways, and so are the three the circle goes through.
const LEAST_GAP_MM: f64 = 0.001;

/// What a compass and a rule find on an arched window.
pub(super) struct Arch {
    /// Radius of the arc, to the nearest quantum.
    pub radius: Length,
    /// Straight side below it.
    pub straight_side: Length,
}

/// Measures the arch of a window: the circle through both ends of its arc and its top, which every
/// corner of the arc must lie on.
///
/// Errors: no arch, or corners off the circle.
pub(super) fn measure(outline: &Outline, size: Size) -> Result<Arch, String> {
    if !matches!(outline, Outline::Arch(_)) {
        return Err(format!("the window's outline is no arch: {outline:?}"));
    }
    let corners = outline.corners_nearest(size, STEPS);
    // The last two corners are those of the sill.
    let [arc @ .., _, _] = corners.as_slice() else {
        return Err("the arch has no sill".to_owned());
    };
    let (Some(&start), Some(&end)) = (arc.first(), arc.last()) else {
        return Err("the arch has no arc".to_owned());
    };
    let top = arc[arc.len() / 2];
    let points = [start, top, end].map(millimetres);
    let (centre, radius) =
        circle(points).ok_or("the ends of the arc and its top lie in one line")?;
    for corner in arc {
        let [x, y] = millimetres(*corner);
        let away = ((x - centre[0]).hypot(y - centre[1]) - radius).abs();
        if away > LEAST_GAP_MM {
            return Err(format!("a corner of the arc lies {away} mm off its circle"));
        }
    }
    if start[1] != end[1] {
        return Err("the arc's ends are not level".to_owned());
    }
    Ok(Arch {
        radius: Length::nearest_from_mm(radius).ok_or("the radius is past every limit")?,
        straight_side: size.height - start[1],
    })
}

fn millimetres([x, y]: [Length; 2]) -> [f64; 2] {
    [x.approx_mm(), y.approx_mm()]
}

/// Centre and radius of the circle through three points; none where they lie in one line.
fn circle([[ax, ay], [bx, by], [cx, cy]]: [[f64; 2]; 3]) -> Option<([f64; 2], f64)> {
    // Relative to the first point, the centre is equally far from all three.
    let (bx, by, cx, cy) = (bx - ax, by - ay, cx - ax, cy - ay);
    let twice_area = 2.0 * (bx * cy - by * cx);
    if twice_area.abs() < f64::EPSILON {
        return None;
    }
    let (b, c) = (bx * bx + by * by, cx * cx + cy * cy);
    let (x, y) = (
        (cy * b - by * c) / twice_area,
        (bx * c - cx * b) / twice_area,
    );
    Some(([ax + x, ay + y], x.hypot(y)))
}
