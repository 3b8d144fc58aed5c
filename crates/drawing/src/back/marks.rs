//! Marks on the back: hinges, strainer, hangers and wire, bumpers.

use trade::Hanger;

use crate::colour::{INK, METAL};
use crate::hatch::circle;
use crate::piece::Piece;
use crate::scene::{Box2, Fill, Node, Path, Pen, Point, area, at, part, shape, stroke};

/// Hinges along the art's top edge, which lies hidden.
pub(super) fn hinges(piece: &Piece<'_>) -> Option<Node> {
    let marks = piece.sizes.hinges?;
    let laid = piece.laid().into_iter().find(|laid| laid.art == 0)?;
    let inset = marks.inset.value.approx_mm();
    let (from, to) = (laid.at.left + inset, laid.at.right - inset);
    let wide = (laid.at.width() * 0.06).clamp(6.0, 25.0);
    let count = u32::try_from(marks.count.value).ok()?.max(1);
    let mut nodes = vec![stroke(Path::ring(laid.at.corners()), Pen::Hidden)];
    for k in 0..count {
        let share = if count == 1 {
            0.5
        } else {
            f64::from(k) / f64::from(count - 1)
        };
        let x = from + (to - from) * share;
        let hinge = Box2 {
            left: x - wide / 2.0,
            right: x + wide / 2.0,
            top: laid.at.top - wide,
            bottom: laid.at.top + wide * 0.6,
        };
        nodes.push(stroke(Path::ring(hinge.corners()), Pen::Hidden));
    }
    Some(part("hinge", nodes))
}

/// Bars of the strainer.
pub(super) fn strainer(piece: &Piece<'_>) -> Option<Node> {
    let strainer = piece.sizes.strainer.as_ref()?;
    let inner = piece.rim(strainer.inner.size());
    let opening = Box2::of(&inner);
    let width = strainer.width.approx_mm();
    let mut lines = vec![piece.rim(strainer.outer.size()), inner];
    let spread = |k: u32, of: u32, long: f64| long * f64::from(k) / f64::from(of + 1);
    for k in 1..=strainer.uprights {
        let x = opening.left + spread(k, strainer.uprights, opening.width());
        let (left, right) = (x - width / 2.0, x + width / 2.0);
        lines.push(
            Box2 {
                left,
                right,
                ..opening
            }
            .corners(),
        );
    }
    for k in 1..=strainer.cross_bars {
        let y = opening.top + spread(k, strainer.cross_bars, opening.height());
        let (top, bottom) = (y - width / 2.0, y + width / 2.0);
        lines.push(
            Box2 {
                top,
                bottom,
                ..opening
            }
            .corners(),
        );
    }
    let bars = stroke(Path::rings(lines), Pen::Hidden);
    Some(part("strainer", vec![bars]))
}

/// Where the hangers stand, left and right.
pub(super) fn hanger_places(piece: &Piece<'_>) -> Option<[Point; 2]> {
    let marks = piece.sizes.hangers?;
    let half = marks.apart.value.approx_mm() / 2.0;
    let y = -piece.sizes.outside.height.value.approx_mm() / 2.0 + marks.down.value.approx_mm();
    Some([at(-half, y), at(half, y)])
}

/// Hangers and the wire between them.
pub(super) fn hangers(piece: &Piece<'_>, factor: f64) -> Option<Node> {
    let marks = piece.sizes.hangers?;
    let places = hanger_places(piece)?;
    let kind = piece
        .job
        .hardware
        .as_ref()
        .map_or(Hanger::default(), |hardware| hardware.hanger);
    // Drawn as large as they read well, whatever the scale.
    let size = 1.0 / factor;
    let mut nodes = Vec::new();
    if let Some(wire) = marks.wire {
        let hook = at(
            0.0,
            -piece.sizes.outside.height.value.approx_mm() / 2.0 + wire.hook.value.approx_mm(),
        );
        nodes.push(stroke(
            Path::open(vec![places[0], hook, places[1]]),
            Pen::Centre,
        ));
        nodes.push(area(Path::ring(circle(hook, 0.8 * size)), Fill::Flat(INK)));
    }
    if kind == Hanger::Cleat {
        let bar = Box2 {
            left: places[0].x,
            right: places[1].x,
            top: places[0].y - 1.5 * size,
            bottom: places[0].y + 1.5 * size,
        };
        nodes.push(shape(
            Path::ring(bar.corners()),
            Fill::Flat(METAL),
            Pen::Fine,
        ));
        return Some(part("hanger", nodes));
    }
    for place in places {
        nodes.extend(hanger(place, size, kind == Hanger::Plates));
    }
    Some(part("hanger", nodes))
}

/// A ring on its strap, or a plate.
fn hanger(place: Point, size: f64, flat: bool) -> Vec<Node> {
    let metal = |bounds: Box2| shape(Path::ring(bounds.corners()), Fill::Flat(METAL), Pen::Fine);
    if flat {
        return vec![metal(Box2::round(place, 2.4 * size, 5.0 * size))];
    }
    let strap = Box2::round(place.plus(0.0, 2.6 * size), 1.6 * size, 3.6 * size);
    vec![
        metal(strap),
        stroke(Path::ring(circle(place, 1.3 * size)), Pen::Outline),
    ]
}

/// Bumpers on the bottom rail, near its corners.
pub(super) fn bumpers(piece: &Piece<'_>, factor: f64) -> Option<Node> {
    piece.sizes.hangers?;
    let face = piece.sizes.members[0].face.value.approx_mm();
    let rim = piece.rim(piece.sizes.outside.size());
    let bottom = Box2::of(&rim).bottom;
    let level: Vec<&Point> = rim.iter().filter(|p| (p.y - bottom).abs() < 1e-6).collect();
    let (left, right) = (
        level.iter().map(|p| p.x).reduce(f64::min)?,
        level.iter().map(|p| p.x).reduce(f64::max)?,
    );
    let y = bottom - face / 2.0;
    let dots = [left + face, right - face].map(|x| {
        shape(
            Path::ring(circle(at(x, y), 1.1 / factor)),
            Fill::Flat(METAL),
            Pen::Fine,
        )
    });
    Some(part("bumper", dots.to_vec()))
}
