//! Dimensions as drafting sets them: extension lines, ticks, text above the line.

use crate::colour::PAPER;
use crate::scene::{Anchor, Face, Fill, Node, Path, Pen, Point, Shape, Text, at, stroke};
use crate::sheet::TEXT_SIZE;

/// What a dimension is drawn on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Ground {
    /// Bare paper.
    Paper,
    /// A picture: the paper shows round lines and letters.
    Toned,
    /// A dark board: lines and letters are pale.
    Dark,
}

/// A stretch to be measured.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Span {
    pub from: f64,
    pub to: f64,
    /// Where the dimension line stands, across the stretch.
    pub line: f64,
    /// Where the extension lines start; none without them.
    pub reach: Option<f64>,
}

const TICK: f64 = 0.9;
const PAST: f64 = 1.4;
const ABOVE: f64 = 1.2;
/// From the edge drawn to where an extension line starts.
const CLEAR: f64 = 1.0;

/// A dimension across, its text above the line.
pub(crate) fn across(span: Span, label: &str, ground: Ground) -> Vec<Node> {
    let Span {
        from,
        to,
        line,
        reach,
    } = span;
    let mut nodes = ticked(at(from, line), at(to, line), ground);
    if let Some(reach) = reach {
        nodes.push(extensions(at(from, reach), at(from, line)));
        nodes.push(extensions(at(to, reach), at(to, line)));
    }
    nodes.push(label_at(
        at(f64::midpoint(from, to), line - ABOVE),
        label,
        false,
        Anchor::Middle,
        ground,
    ));
    nodes
}

/// A dimension upwards, its text read from the right.
pub(crate) fn upwards(span: Span, label: &str, ground: Ground) -> Vec<Node> {
    let Span {
        from,
        to,
        line,
        reach,
    } = span;
    let mut nodes = ticked(at(line, from), at(line, to), ground);
    if let Some(reach) = reach {
        nodes.push(extensions(at(reach, from), at(line, from)));
        nodes.push(extensions(at(reach, to), at(line, to)));
    }
    nodes.push(label_at(
        at(line - ABOVE, f64::midpoint(from, to)),
        label,
        true,
        Anchor::Middle,
        ground,
    ));
    nodes
}

/// A dimension across a strip too narrow for its text: the text stands upright over the line.
pub(crate) fn across_strip(
    from: f64,
    to: f64,
    line: f64,
    label: &str,
    ground: Ground,
) -> Vec<Node> {
    let mut nodes = ticked(at(from, line), at(to, line), ground);
    let middle = f64::midpoint(from, to) + TEXT_SIZE * 0.36;
    nodes.push(label_at(
        at(middle, line - 1.8),
        label,
        true,
        Anchor::Start,
        ground,
    ));
    nodes
}

/// A dimension up a strip: the text stands beside the line.
pub(crate) fn up_strip(from: f64, to: f64, line: f64, label: &str, ground: Ground) -> Vec<Node> {
    let mut nodes = ticked(at(line, from), at(line, to), ground);
    let middle = f64::midpoint(from, to) + TEXT_SIZE * 0.36;
    nodes.push(label_at(
        at(line + 1.8, middle),
        label,
        false,
        Anchor::Start,
        ground,
    ));
    nodes
}

/// A dimension line with its two ticks.
pub(crate) fn ticked(from: Point, to: Point, ground: Ground) -> Vec<Node> {
    let tick = |p: Point| vec![p.plus(-TICK, TICK), p.plus(TICK, -TICK)];
    let path = Path::lines([vec![from, to], tick(from), tick(to)]);
    let mut nodes = Vec::new();
    if ground == Ground::Toned {
        nodes.push(stroke(path.clone(), Pen::Halo));
    }
    let colour = (ground == Ground::Dark).then_some(PAPER);
    nodes.push(Node::Shape(Shape {
        path,
        fill: Fill::None,
        pen: Pen::Dimension,
        colour,
    }));
    nodes
}

/// An extension line from an edge past its dimension line.
fn extensions(edge: Point, line: Point) -> Node {
    let toward = |from: f64, to: f64, by: f64| {
        if (to - from).abs() < 1e-9 {
            from
        } else {
            from + (to - from).signum() * by
        }
    };
    let start = at(toward(edge.x, line.x, CLEAR), toward(edge.y, line.y, CLEAR));
    let past = |from: f64, to: f64| {
        if (to - from).abs() < 1e-9 {
            to
        } else {
            to + (to - from).signum() * PAST
        }
    };
    let end = at(past(edge.x, line.x), past(edge.y, line.y));
    stroke(Path::open(vec![start, end]), Pen::Dimension)
}

/// A label on its ground.
pub(crate) fn label_at(
    at: Point,
    label: &str,
    upright: bool,
    anchor: Anchor,
    ground: Ground,
) -> Node {
    let (halo, face) = (
        ground == Ground::Toned,
        if ground == Ground::Dark {
            Face::Pale
        } else {
            Face::Plain
        },
    );
    Node::Text(Text {
        at,
        words: label.to_owned(),
        anchor,
        face,
        upright,
        halo,
    })
}
