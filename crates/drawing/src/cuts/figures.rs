//! Small signs of a cut sheet: numbered circles, grain arrows, reference marks, fillings.

use cutting::sheets::Way;

use crate::colour::{Colour, INK, PAPER};
use crate::cuts::block::Block;
use crate::hatch::{Grain, circle, hatch};
use crate::scene::{Box2, Face, Fill, Node, Path, Pen, Point, area, at, shape, stroke};

/// A piece; pale enough to print as nothing but paper.
pub(crate) const PIECE: Colour = Colour([0xf4, 0xf0, 0xe4]);

/// Half the height of a numbered circle.
pub(crate) const RADIUS: f64 = 3.4;

/// Half the width of the sign that carries a cut's number.
pub(crate) fn half_width(number: usize) -> f64 {
    match number {
        0..=99 => RADIUS,
        100..=999 => RADIUS + 1.9,
        _ => RADIUS + 3.8,
    }
}

/// The box a cut's number takes.
pub(crate) fn number_box(centre: Point, number: usize) -> Box2 {
    Box2::round(centre, half_width(number) * 2.0, RADIUS * 2.0).grown(0.3)
}

/// A cut's number in its circle; numbers of three digits and more stretch it.
pub(crate) fn numbered(centre: Point, number: usize) -> Vec<Node> {
    let spare = half_width(number) - RADIUS;
    let ring: Vec<Point> = circle(at(0.0, 0.0), RADIUS)
        .into_iter()
        .map(|p| {
            let out = if p.x < 0.0 { -spare } else { spare };
            centre.plus(p.x + out, p.y)
        })
        .collect();
    let block = Block {
        lines: vec![(number.to_string(), Face::Heading)],
        upright: false,
    };
    let mut nodes = vec![shape(Path::ring(ring), Fill::Flat(PAPER), Pen::Outline)];
    nodes.extend(block.nodes(centre));
    nodes
}

/// The box a grain arrow takes.
pub(crate) fn arrow_box(centre: Point, way: Way) -> Box2 {
    match way {
        Way::Upright => Box2::round(centre, 3.4, ARROW + 0.6),
        Way::Level => Box2::round(centre, ARROW + 0.6, 3.4),
    }
}

const ARROW: f64 = 9.0;

/// An arrow both ways along the grain.
pub(crate) fn arrow(centre: Point, way: Way) -> Node {
    let turn = |x: f64, y: f64| match way {
        Way::Upright => centre.plus(y, x),
        Way::Level => centre.plus(x, y),
    };
    let half = ARROW / 2.0;
    stroke(
        Path::lines([
            vec![turn(-half, 0.0), turn(half, 0.0)],
            vec![
                turn(-half + 2.0, -1.3),
                turn(-half, 0.0),
                turn(-half + 2.0, 1.3),
            ],
            vec![
                turn(half - 2.0, -1.3),
                turn(half, 0.0),
                turn(half - 2.0, 1.3),
            ],
        ]),
        Pen::Outline,
    )
}

/// The corner everything is measured from: a filled triangle outside it.
pub(crate) fn corner(place: Point) -> Node {
    area(
        Path::ring(vec![
            place.plus(-0.6, 0.6),
            place.plus(-4.2, 0.6),
            place.plus(-0.6, 4.2),
        ]),
        Fill::Flat(INK),
    )
}

/// What is thrown away.
pub(crate) fn waste(bounds: Box2) -> Vec<Node> {
    hatched(bounds, Grain::Slanted)
}

/// What cannot be used: trims and flaws.
pub(crate) fn unusable(bounds: Box2) -> Vec<Node> {
    hatched(bounds, Grain::Crossed)
}

fn hatched(bounds: Box2, grain: Grain) -> Vec<Node> {
    let path = Path::ring(bounds.corners());
    vec![hatch(&path, grain), stroke(path, Pen::Fine)]
}

/// A cut: its kerf to scale, and never thinner than a line.
pub(crate) fn kerf(bounds: Box2) -> Node {
    let path = Path::ring(bounds.corners());
    shape(path, Fill::Flat(INK), Pen::Outline)
}
