//! Outlines of windows: how a shape fits its box, grows, shrinks, and covers area.

use measure::{Area, Length, Size};
use trade::{Opening, Shape};

/// The outline of a window inside its box, front view, from the box's left and top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outline {
    /// Fills its box.
    Rectangle,
    /// Corners rounded with this radius.
    Rounded(Length),
    /// An ellipse (a circle where width and height agree).
    Oval,
    /// Straight sides under an arc of this rise.
    Arch(Length),
    /// Any polygon, clockwise.
    Polygon(Vec<[Length; 2]>),
}

/// Why an opening's shape can't be drawn in its box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// A number the shape needs is not given; its name.
    Lacks(&'static str),
    /// A circle's width and height differ.
    NotRound,
    /// A measure is too large for the box: its name and the most it may be.
    TooLarge(&'static str, Length),
    /// Fewer than three sides or corners.
    TooFewSides,
}

impl Outline {
    /// The outline of `opening` in a window of `size`.
    ///
    /// Errors: what the shape lacks, or why it does not fit.
    pub fn of(opening: &Opening, size: Size) -> Result<Self, Misfit> {
        let least = size.short_side().half_down();
        match opening.shape {
            Shape::Rectangle => Ok(Self::Rectangle),
            Shape::Oval => Ok(Self::Oval),
            Shape::Circle if size.width == size.height => Ok(Self::Oval),
            Shape::Circle => Err(Misfit::NotRound),
            Shape::Rounded => {
                let radius = *opening.radius.ok_or(Misfit::Lacks("radius"))?;
                within("radius", radius, least).map(Self::Rounded)
            }
            Shape::RoundArch => {
                within("half the width", size.width.half_down(), size.height).map(Self::Arch)
            }
            Shape::LowArch => {
                let rise = *opening.rise.ok_or(Misfit::Lacks("rise"))?;
                let most = size.height.min(size.width.half_down());
                within("rise", rise, most).map(Self::Arch)
            }
            Shape::Octagon => {
                let corner = opening
                    .corner
                    .map_or_else(|| regular_corner_nearest(size), |c| *c);
                within("corner", corner, least).map(|corner| octagon(size, corner))
            }
            Shape::Polygon => {
                let sides = opening.sides.ok_or(Misfit::Lacks("sides"))?;
                // geometry: a polygon has three sides or more
                if sides < 3 {
                    Err(Misfit::TooFewSides)
                } else {
                    Ok(regular_nearest(sides, size))
                } // geometry: a polygon has three sides or more
            }
            Shape::Free => {
                if opening.points.len() < 3 {
                    // geometry: as above
                    return Err(Misfit::TooFewSides);
                }
                Ok(Self::Polygon(
                    opening.points.iter().map(|[x, y]| [**x, **y]).collect(),
                ))
            }
        }
    }

    /// Whether a straight guide cuts all of it.
    pub const fn is_straight(&self) -> bool {
        matches!(self, Self::Rectangle | Self::Polygon(_))
    }

    /// The outline of a window standing `by` outside this one all round (inside, where negative).
    ///
    /// `size` is this window's box. Curves keep their centres; polygons keep their edges parallel.
    #[must_use]
    pub fn grown_nearest(&self, size: Size, by: Length) -> Self {
        match self {
            Self::Rectangle => Self::Rectangle,
            Self::Oval => Self::Oval,
            Self::Rounded(radius) => Self::Rounded((*radius + by).or_zero()),
            Self::Arch(rise) => Self::Arch(arch_rise_nearest(size, *rise, by)),
            Self::Polygon(corners) => Self::Polygon(offset_nearest(corners, by)),
        }
    }

    /// Area inside the outline, to the nearest square quantum.
    pub fn area_nearest(&self, size: Size) -> Area {
        match self {
            Self::Rectangle => size.area(),
            _ => polygon_area(&self.corners_nearest(size, CURVE_STEPS)),
        }
    }

    /// Whether a rectangle of `inner`, centred in a window of `size`, shows all four corners.
    pub fn shows_corners(&self, size: Size, inner: Size) -> bool {
        let corners = self.corners_nearest(size, CURVE_STEPS);
        let left = (size.width - inner.width).half_down();
        let top = (size.height - inner.height).half_down();
        let (right, bottom) = (left + inner.width, top + inner.height);
        [[left, top], [right, top], [right, bottom], [left, bottom]]
            .iter()
            .all(|corner| encloses(&corners, *corner))
    }

    /// The outline as corners, curves cut into `steps` chords a quarter turn.
    pub fn corners_nearest(&self, size: Size, steps: u32) -> Vec<[Length; 2]> {
        let (w, h) = (size.width, size.height);
        let zero = Length::ZERO;
        match self {
            Self::Rectangle => vec![[zero, zero], [w, zero], [w, h], [zero, h]],
            Self::Polygon(corners) => corners.clone(),
            Self::Oval => {
                let centre = [w.approx_mm() / 2.0, h.approx_mm() / 2.0];
                arc(centre, centre, (0.0, std::f64::consts::TAU), steps * 4) // geometry: four quarter turns
            }
            Self::Rounded(radius) => rounded(size, *radius, steps),
            Self::Arch(rise) => arch(size, *rise, steps),
        }
    }
}

/// Chords per quarter turn when an area is taken: with 512 the area of a circle is short by less
/// than two parts in a million.
const CURVE_STEPS: u32 = 512; // geometry: chords per quarter turn

fn within(name: &'static str, given: Length, most: Length) -> Result<Length, Misfit> {
    if given > most {
        Err(Misfit::TooLarge(name, most))
    } else {
        Ok(given)
    }
}

/// Corner cut that makes a square's octagon regular, from the short side: s/(2 + √2).
fn regular_corner_nearest(size: Size) -> Length {
    size.short_side()
        .scaled_nearest(1.0 / (2.0 + std::f64::consts::SQRT_2))
        .unwrap_or_default()
}

fn octagon(size: Size, c: Length) -> Outline {
    let (w, h, zero) = (size.width, size.height, Length::ZERO);
    Outline::Polygon(vec![
        [c, zero],
        [w - c, zero],
        [w, c],
        [w, h - c],
        [w - c, h],
        [c, h],
        [zero, h - c],
        [zero, c],
    ])
}

/// A regular polygon with its bottom side level, stretched to fill its box.
fn regular_nearest(sides: u32, size: Size) -> Outline {
    let n = f64::from(sides);
    let turn = std::f64::consts::TAU / n;
    let start = std::f64::consts::FRAC_PI_2 + turn / 2.0;
    let raw: Vec<[f64; 2]> = (0..sides)
        .map(|k| start + turn * f64::from(k))
        .map(|angle| [angle.cos(), angle.sin()])
        .collect();
    let span = |axis: usize| {
        let values = raw.iter().map(|corner| corner[axis]);
        let low = values.clone().fold(f64::INFINITY, f64::min);
        (low, values.fold(f64::NEG_INFINITY, f64::max) - low)
    };
    let ((left, across), (top, down)) = (span(0), span(1));
    let place = |length: Length, share: f64| length.scaled_nearest(share).unwrap_or_default();
    Outline::Polygon(
        raw.iter()
            .map(|[x, y]| {
                [
                    place(size.width, (x - left) / across),
                    place(size.height, (y - top) / down),
                ]
            })
            .collect(),
    )
}

/// Rise of the arc concentric with one of `rise`, `by` further out, over sides `by` further out.
fn arch_rise_nearest(size: Size, rise: Length, by: Length) -> Length {
    let (half, s, d) = (
        size.width.approx_mm() / 2.0,
        rise.approx_mm(),
        by.approx_mm(),
    );
    if s <= 0.0 {
        return rise;
    }
    let radius = (half * half + s * s) / (2.0 * s);
    let (outer, reach) = (radius + d, half + d);
    let flat = (outer * outer - reach * reach).max(0.0).sqrt();
    Length::nearest_from_mm(outer - flat).unwrap_or(rise)
}

/// Every edge moved outwards by `by`, corners where neighbours then meet.
fn offset_nearest(corners: &[[Length; 2]], by: Length) -> Vec<[Length; 2]> {
    let points: Vec<[f64; 2]> = corners
        .iter()
        .map(|[x, y]| [x.approx_mm(), y.approx_mm()])
        .collect();
    let d = by.approx_mm();
    let n = points.len();
    let normal = |k: usize| {
        let ([x0, y0], [x1, y1]) = (points[k], points[(k + 1) % n]);
        let long = (x1 - x0).hypot(y1 - y0).max(f64::MIN_POSITIVE);
        [(y1 - y0) / long, (x0 - x1) / long]
    };
    // Corners run clockwise with y downwards, so this normal points out.
    (0..n)
        .map(|k| {
            let ([ax, ay], [bx, by]) = (normal((k + n - 1) % n), normal(k));
            let share = d / (1.0 + ax * bx + ay * by).max(f64::EPSILON);
            let [x, y] = points[k];
            // The box grows by d on every side, so its own corner moves by d.
            [x + share * (ax + bx) + d, y + share * (ay + by) + d]
        })
        .map(|[x, y]| [at(x), at(y)])
        .collect()
}

fn rounded(size: Size, radius: Length, steps: u32) -> Vec<[Length; 2]> {
    let (w, h, r) = (
        size.width.approx_mm(),
        size.height.approx_mm(),
        radius.approx_mm(),
    );
    let quarter = std::f64::consts::FRAC_PI_2;
    let centres = [[r, r], [w - r, r], [w - r, h - r], [r, h - r]];
    (0u32..)
        .zip(centres)
        .flat_map(|(k, centre)| {
            let from = quarter * (f64::from(k) + 2.0);
            arc(centre, [r, r], (from, quarter), steps)
        })
        .collect()
}

fn arch(size: Size, rise: Length, steps: u32) -> Vec<[Length; 2]> {
    let (w, h, s) = (
        size.width.approx_mm(),
        size.height.approx_mm(),
        rise.approx_mm(),
    );
    let base = [[size.width, size.height], [Length::ZERO, size.height]];
    if s <= 0.0 {
        return Outline::Rectangle.corners_nearest(size, steps);
    }
    let half = w / 2.0;
    let radius = (half * half + s * s) / (2.0 * s);
    let centre = [half, radius];
    // Shrunk further than its sides are high, an arc ends at the bottom edge instead.
    let short = s > h;
    let open = if short {
        ((radius - h) / radius).clamp(-1.0, 1.0).acos()
    } else {
        (half / radius).clamp(-1.0, 1.0).asin()
    };
    let from = 3.0 * std::f64::consts::FRAC_PI_2 - open; // geometry: straight up is three quarter turns
    let mut corners = arc(centre, [radius, radius], (from, 2.0 * open), steps * 2);
    if !short {
        corners.extend(base);
    }
    corners
}

/// Points on an ellipse arc, both ends included, angles clockwise from three o'clock.
fn arc(
    centre: [f64; 2],
    radii: [f64; 2],
    (from, sweep): (f64, f64),
    steps: u32,
) -> Vec<[Length; 2]> {
    (0..=steps)
        .map(|k| from + sweep * f64::from(k) / f64::from(steps))
        .map(|a| {
            [
                at(centre[0] + radii[0] * a.cos()),
                at(centre[1] + radii[1] * a.sin()),
            ]
        })
        .collect()
}

fn at(mm: f64) -> Length {
    Length::nearest_from_mm(mm).unwrap_or_default()
}

/// Whether a point lies inside a polygon, by the crossings of a ray to its right.
fn encloses(corners: &[[Length; 2]], [px, py]: [Length; 2]) -> bool {
    let next = corners.iter().cycle().skip(1);
    let wide = |a: Length, b: Length| i128::from((a - b).quanta());
    let crossings = corners
        .iter()
        .zip(next)
        .filter(|([_, ay], [_, by])| (*ay > py) != (*by > py))
        .filter(|([ax, ay], [bx, by])| {
            let rise = wide(*by, *ay);
            let reach = wide(px, *ax) * rise - wide(*bx, *ax) * wide(py, *ay);
            if rise > 0 { reach < 0 } else { reach > 0 }
        })
        .count();
    !crossings.is_multiple_of(2)
}

/// Area by the shoelace rule.
fn polygon_area(corners: &[[Length; 2]]) -> Area {
    let next = corners.iter().cycle().skip(1);
    let doubled: i128 = corners
        .iter()
        .zip(next)
        .map(|([x0, y0], [x1, y1])| {
            i128::from(x0.quanta()) * i128::from(y1.quanta())
                - i128::from(x1.quanta()) * i128::from(y0.quanta())
        })
        .sum();
    Area::from_square_quanta(doubled.abs().div_euclid(2))
}
