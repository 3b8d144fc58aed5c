//! Mirroring: the front turned into the back.

use crate::scene::{Anchor, Box2, Group, Image, Node, Path, Point, Shape, Text, at};

/// The same scene with left and right changed about the upright axis through the origin.
///
/// Shape:  shapes and pictures are mirrored, the letters of a text are not: only its place is,
///         and the end by which it is held. Mirrored twice, a scene is what it was.
pub(crate) fn mirror(nodes: &[Node]) -> Vec<Node> {
    nodes.iter().map(mirrored).collect()
}

fn mirrored(node: &Node) -> Node {
    match node {
        Node::Group(group) => Node::Group(Group {
            part: group.part.clone(),
            clip: group.clip.as_ref().map(path),
            nodes: mirror(&group.nodes),
        }),
        Node::Shape(shape) => Node::Shape(Shape {
            path: path(&shape.path),
            ..shape.clone()
        }),
        Node::Text(text) => {
            let anchor = match text.anchor {
                Anchor::Start => Anchor::End,
                Anchor::Middle => Anchor::Middle,
                Anchor::End => Anchor::Start,
            };
            // Upright text keeps its hold: it runs along the axis.
            let anchor = if text.upright { text.anchor } else { anchor };
            Node::Text(Text {
                at: point(text.at),
                anchor,
                ..text.clone()
            })
        }
        Node::Image(image) => {
            let Box2 {
                left,
                top,
                right,
                bottom,
            } = image.at;
            let at = Box2 {
                left: -right,
                top,
                right: -left,
                bottom,
            };
            Node::Image(Image {
                at,
                mirrored: !image.mirrored,
                ..image.clone()
            })
        }
    }
}

fn path(path: &Path) -> Path {
    path.map(point)
}

fn point(p: Point) -> Point {
    at(-p.x, p.y)
}
