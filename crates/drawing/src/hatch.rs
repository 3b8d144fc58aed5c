//! Hatching: how cut materials are told apart without colour.

use crate::scene::{Box2, Node, Path, Pen, Point, at, stroke};

/// What a cut part is made of, as far as its hatching goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Grain {
    /// End grain: rings about a heart that lies off the section; the number varies the heart.
    Wood(usize),
    /// Plies, as so many lines along the board.
    Plies(u32),
    /// Scattered dots: pressed and foamed boards.
    Dots,
    /// Pairs of slanted strokes.
    Glass,
    /// Slanted lines.
    Slanted,
    /// Slanted lines both ways.
    Crossed,
}

/// The hatching of a cut part; `path` is in millimetres of the sheet.
pub(crate) fn hatch(path: &Path, grain: Grain) -> Node {
    let points: Vec<Point> = path.points().collect();
    let bounds = Box2::of(&points);
    let rings: Vec<&[Point]> = path.0.iter().map(|line| line.points.as_slice()).collect();
    let lines = match grain {
        Grain::Wood(which) => wood(bounds, which),
        Grain::Plies(count) => plies(bounds, count),
        Grain::Dots => dots(bounds),
        Grain::Glass => slanted(bounds, 1.0, 5.0)
            .into_iter()
            .chain(slanted(shifted(bounds), 1.0, 5.0))
            .collect(),
        Grain::Slanted => slanted(bounds, 1.0, 2.2),
        Grain::Crossed => slanted(bounds, 1.0, 1.8)
            .into_iter()
            .chain(slanted(bounds, -1.0, 1.8))
            .collect(),
    };
    let kept = lines.iter().flat_map(|line| inside(line, &rings));
    stroke(Path::lines(kept), Pen::Hair)
}

/// A box whose slanted lines fall a little beside those of `bounds`.
fn shifted(bounds: Box2) -> Box2 {
    Box2 {
        left: bounds.left - 0.9,
        ..bounds
    }
}

fn wood(bounds: Box2, which: usize) -> Vec<Vec<Point>> {
    // The heart lies below the section, to one side and then to the other.
    let side = if which.is_multiple_of(2) { -0.35 } else { 1.3 };
    let heart = at(bounds.left + bounds.width() * side, bounds.bottom + 6.0);
    let reach = bounds
        .corners()
        .iter()
        .map(|p| (p.x - heart.x).hypot(p.y - heart.y))
        .fold(0.0, f64::max);
    let mut rings = Vec::new();
    let (mut radius, mut step) = (2.0, 0);
    while radius < reach {
        rings.push(circle(heart, radius));
        // Early and late wood: rings are not evenly spaced.
        radius += [1.5, 1.9, 1.2, 1.7][step % 4];
        step += 1;
    }
    rings
}

/// A circle as a closed run of short chords, oval as rings are.
pub(crate) fn circle(centre: Point, radius: f64) -> Vec<Point> {
    let steps = if radius > 12.0 { 240_u32 } else { 72 };
    (0..=steps)
        .map(|k| std::f64::consts::TAU * f64::from(k) / f64::from(steps))
        .map(|turn| centre.plus(radius * turn.cos(), radius * turn.sin()))
        .collect()
}

fn plies(bounds: Box2, count: u32) -> Vec<Vec<Point>> {
    let line = |k: u32| {
        let y = bounds.top + bounds.height() * f64::from(k) / f64::from(count + 1);
        vec![at(bounds.left - 1.0, y), at(bounds.right + 1.0, y)]
    };
    (1..=count).map(line).collect()
}

fn dots(bounds: Box2) -> Vec<Vec<Point>> {
    let mut dots = Vec::new();
    let mut row = 0_u32;
    let mut y = bounds.top + 0.55;
    while y < bounds.bottom - 0.2 {
        let mut x = bounds.left + 0.5 + f64::from(row % 3) * 0.6;
        while x < bounds.right {
            dots.push(vec![at(x, y), at(x + 0.22, y)]);
            x += 1.8;
        }
        y += 0.85;
        row += 1;
    }
    dots
}

/// Lines at 45°, rising to the right for a positive `slope`.
fn slanted(bounds: Box2, slope: f64, apart: f64) -> Vec<Vec<Point>> {
    let high = bounds.height();
    let mut lines = Vec::new();
    let mut x = bounds.left - high;
    while x < bounds.right + high {
        let (low, top) = if slope > 0.0 {
            (x, x + high)
        } else {
            (x + high, x)
        };
        lines.push(vec![at(low, bounds.bottom), at(top, bounds.top)]);
        x += apart;
    }
    lines
}

/// The stretches of a line that lie inside rings (inside an odd number of them).
pub(crate) fn inside(line: &[Point], rings: &[&[Point]]) -> Vec<Vec<Point>> {
    let mut kept: Vec<Vec<Point>> = Vec::new();
    let mut open = false;
    for pair in line.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let mut shares = crossings(from, to, rings);
        shares.insert(0, 0.0);
        shares.push(1.0);
        for span in shares.windows(2) {
            let middle = from.toward(to, f64::midpoint(span[0], span[1]));
            if !holds(middle, rings) {
                open = false;
                continue;
            }
            let end = from.toward(to, span[1]);
            match kept.last_mut().filter(|_| open) {
                Some(run) => run.push(end),
                None => kept.push(vec![from.toward(to, span[0]), end]),
            }
            open = true;
        }
    }
    kept
}

/// Where a stretch crosses the rings, as sorted shares of its length.
fn crossings(from: Point, to: Point, rings: &[&[Point]]) -> Vec<f64> {
    let mut shares = Vec::new();
    for ring in rings {
        for (k, a) in ring.iter().enumerate() {
            let b = ring[(k + 1) % ring.len()];
            let (dx, dy) = (to.x - from.x, to.y - from.y);
            let (ex, ey) = (b.x - a.x, b.y - a.y);
            let cross = dx * ey - dy * ex;
            if cross.abs() < 1e-12 {
                continue;
            }
            let along = ((a.x - from.x) * ey - (a.y - from.y) * ex) / cross;
            let across = ((a.x - from.x) * dy - (a.y - from.y) * dx) / cross;
            if along > 0.0 && along < 1.0 && (0.0..=1.0).contains(&across) {
                shares.push(along);
            }
        }
    }
    shares.sort_by(f64::total_cmp);
    shares
}

/// Whether a point lies inside an odd number of rings.
pub(crate) fn holds(point: Point, rings: &[&[Point]]) -> bool {
    let mut odd = false;
    for ring in rings {
        for (k, a) in ring.iter().enumerate() {
            let b = ring[(k + 1) % ring.len()];
            if (a.y > point.y) != (b.y > point.y) {
                let x = a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x);
                odd ^= point.x < x;
            }
        }
    }
    odd
}
