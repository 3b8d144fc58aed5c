//! The scene: plain shapes in millimetres, `x` to the right and `y` downwards.

use crate::colour::Colour;

/// A place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Point {
    pub x: f64,
    pub y: f64,
}

/// A place, written short.
pub(crate) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Point {
    /// The place moved by so much.
    pub fn plus(self, x: f64, y: f64) -> Self {
        at(self.x + x, self.y + y)
    }

    /// The place this share of the way to another.
    pub fn toward(self, other: Self, share: f64) -> Self {
        at(
            self.x + (other.x - self.x) * share,
            self.y + (other.y - self.y) * share,
        )
    }
}

/// A rectangle by two corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Box2 {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Box2 {
    /// A rectangle of this size round a centre.
    pub fn round(centre: Point, width: f64, height: f64) -> Self {
        let (w, h) = (width / 2.0, height / 2.0);
        Self {
            left: centre.x - w,
            top: centre.y - h,
            right: centre.x + w,
            bottom: centre.y + h,
        }
    }

    /// The least rectangle round all points; a point at nothing where there are none.
    pub fn of(points: &[Point]) -> Self {
        let start = points.first().copied().unwrap_or_default();
        let first = Self {
            left: start.x,
            top: start.y,
            right: start.x,
            bottom: start.y,
        };
        points.iter().fold(first, |all, p| Self {
            left: all.left.min(p.x),
            top: all.top.min(p.y),
            right: all.right.max(p.x),
            bottom: all.bottom.max(p.y),
        })
    }

    pub fn width(self) -> f64 {
        self.right - self.left
    }

    pub fn height(self) -> f64 {
        self.bottom - self.top
    }

    pub fn centre(self) -> Point {
        at(
            f64::midpoint(self.left, self.right),
            f64::midpoint(self.top, self.bottom),
        )
    }

    /// The rectangle with every side further out; further in where `by` is negative.
    pub fn grown(self, by: f64) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    /// Its corners, clockwise from the left top.
    pub fn corners(self) -> Vec<Point> {
        let Self {
            left,
            top,
            right,
            bottom,
        } = self;
        vec![
            at(left, top),
            at(right, top),
            at(right, bottom),
            at(left, bottom),
        ]
    }
}

/// A line through points, or a ring of them.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Line {
    pub points: Vec<Point>,
    pub closed: bool,
}

/// Lines and rings drawn as one; where rings overlap, an even number of them is a hole.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Path(pub Vec<Line>);

impl Path {
    /// A ring.
    pub fn ring(points: Vec<Point>) -> Self {
        Self(vec![Line {
            points,
            closed: true,
        }])
    }

    /// Several rings.
    pub fn rings(rings: impl IntoIterator<Item = Vec<Point>>) -> Self {
        Self(
            rings
                .into_iter()
                .map(|points| Line {
                    points,
                    closed: true,
                })
                .collect(),
        )
    }

    /// An open line.
    pub fn open(points: Vec<Point>) -> Self {
        Self(vec![Line {
            points,
            closed: false,
        }])
    }

    /// Several open lines.
    pub fn lines(lines: impl IntoIterator<Item = Vec<Point>>) -> Self {
        Self(
            lines
                .into_iter()
                .map(|points| Line {
                    points,
                    closed: false,
                })
                .collect(),
        )
    }

    /// The same with every point put elsewhere.
    pub fn map(&self, mut put: impl FnMut(Point) -> Point) -> Self {
        let line = |line: &Line| Line {
            points: line.points.iter().map(|p| put(*p)).collect(),
            closed: line.closed,
        };
        Self(self.0.iter().map(line).collect())
    }

    /// Every point of it.
    pub fn points(&self) -> impl Iterator<Item = Point> {
        self.0.iter().flat_map(|line| line.points.iter().copied())
    }
}

/// What a shape is filled with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Fill {
    /// Nothing.
    None,
    /// One colour.
    Flat(Colour),
    /// A shadow of this darkness, from 0 to 1.
    Shadow(f64),
}

/// The pens of the drafting table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Pen {
    /// None.
    None,
    /// Edges of what is cut or seen.
    Outline,
    /// A heavy line: art in the section.
    Heavy,
    /// Lesser edges.
    Fine,
    /// Hatching.
    Hair,
    /// Edges hidden behind something.
    Hidden,
    /// Axes and wires.
    Centre,
    /// Dimension and leader lines.
    Dimension,
    /// A pale stroke laid under a line to lift it off a picture.
    Halo,
}

/// A drawn path.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Shape {
    pub path: Path,
    pub fill: Fill,
    pub pen: Pen,
    /// The pen's colour; none for the pen's own.
    pub colour: Option<Colour>,
}

/// Where on its line a text is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

/// How a text is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Face {
    /// Sizes and labels.
    Plain,
    /// Headings.
    Heading,
    /// What a tool is set by.
    Figure,
    /// Captions, in pencil.
    Quiet,
    /// On dark boards.
    Pale,
}

/// A line of text; sizes are in millimetres of the sheet.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Text {
    pub at: Point,
    pub words: String,
    pub anchor: Anchor,
    pub face: Face,
    /// Reads upwards instead of across.
    pub upright: bool,
    /// The paper shows round the letters, for text over a picture.
    pub halo: bool,
}

/// A picture in its box.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Image {
    pub at: Box2,
    /// Left and right change places.
    pub mirrored: bool,
    pub mime: &'static str,
    pub bytes: Vec<u8>,
}

/// Shapes that belong together.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Group {
    /// The part they show, as working paths name it: `mat.1`.
    pub part: Option<String>,
    /// Only what lies inside shows.
    pub clip: Option<Path>,
    pub nodes: Vec<Node>,
}

/// Anything in a scene.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Node {
    Group(Group),
    Shape(Shape),
    Text(Text),
    Image(Image),
}

/// A group that shows a part.
pub(crate) fn part(path: impl Into<String>, nodes: Vec<Node>) -> Node {
    Node::Group(Group {
        part: Some(path.into()),
        clip: None,
        nodes,
    })
}

/// A group of which only what lies inside `clip` shows.
pub(crate) fn clipped(clip: Path, nodes: Vec<Node>) -> Node {
    Node::Group(Group {
        part: None,
        clip: Some(clip),
        nodes,
    })
}

/// A shape with an outline.
pub(crate) fn shape(path: Path, fill: Fill, pen: Pen) -> Node {
    Node::Shape(Shape {
        path,
        fill,
        pen,
        colour: None,
    })
}

/// A shape without an outline.
pub(crate) fn area(path: Path, fill: Fill) -> Node {
    shape(path, fill, Pen::None)
}

/// A line or ring that is not filled.
pub(crate) fn stroke(path: Path, pen: Pen) -> Node {
    shape(path, Fill::None, pen)
}

/// A text across.
pub(crate) fn text(at: Point, words: impl Into<String>, anchor: Anchor, face: Face) -> Node {
    Node::Text(Text {
        at,
        words: words.into(),
        anchor,
        face,
        upright: false,
        halo: false,
    })
}

/// The same nodes, enlarged about the origin and then moved: from the piece onto the sheet.
pub(crate) fn placed(nodes: &[Node], scale: f64, origin: Point) -> Vec<Node> {
    let put = |p: Point| at(origin.x + p.x * scale, origin.y + p.y * scale);
    nodes.iter().map(|node| moved(node, &put)).collect()
}

fn moved(node: &Node, put: &impl Fn(Point) -> Point) -> Node {
    match node {
        Node::Group(group) => Node::Group(Group {
            part: group.part.clone(),
            clip: group.clip.as_ref().map(|clip| clip.map(put)),
            nodes: group.nodes.iter().map(|node| moved(node, put)).collect(),
        }),
        Node::Shape(shape) => Node::Shape(Shape {
            path: shape.path.map(put),
            ..shape.clone()
        }),
        Node::Text(text) => Node::Text(Text {
            at: put(text.at),
            ..text.clone()
        }),
        Node::Image(image) => {
            let (low, high) = (
                put(at(image.at.left, image.at.top)),
                put(at(image.at.right, image.at.bottom)),
            );
            let at = Box2 {
                left: low.x,
                top: low.y,
                right: high.x,
                bottom: high.y,
            };
            Node::Image(Image {
                at,
                ..image.clone()
            })
        }
    }
}
