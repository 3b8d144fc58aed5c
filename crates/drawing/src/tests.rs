//! Tests of the scene's own arithmetic.

use proptest::prelude::*;

use crate::colour::Colour;
use crate::hatch::{holds, inside};
use crate::mirror::mirror;
use crate::scene::{
    Anchor, Box2, Face, Fill, Group, Image, Line, Node, Path, Pen, Point, Shape, Text, at,
};
use crate::sheet::{Scale, text_width, wrapped};
use crate::svg::{base64, escaped};

fn place() -> impl Strategy<Value = Point> {
    (-1e4..1e4_f64, -1e4..1e4_f64).prop_map(|(x, y)| at(x, y))
}

fn path() -> impl Strategy<Value = Path> {
    let line = (prop::collection::vec(place(), 0..6), any::<bool>());
    prop::collection::vec(
        line.prop_map(|(points, closed)| Line { points, closed }),
        0..4,
    )
    .prop_map(Path)
}

fn node() -> impl Strategy<Value = Node> {
    let anchor = prop_oneof![Just(Anchor::Start), Just(Anchor::Middle), Just(Anchor::End)];
    let shape = path().prop_map(|path| {
        Node::Shape(Shape {
            path,
            fill: Fill::Flat(Colour([1, 2, 3])),
            pen: Pen::Fine,
            colour: None,
        })
    });
    let text =
        (place(), anchor, any::<bool>(), ".{0,8}").prop_map(|(at, anchor, upright, text)| {
            Node::Text(Text {
                at,
                words: text,
                anchor,
                face: Face::Plain,
                upright,
                halo: false,
            })
        });
    let image = (place(), place(), any::<bool>()).prop_map(|(a, b, mirrored)| {
        Node::Image(Image {
            at: Box2::of(&[a, b]),
            mirrored,
            mime: "image/png",
            bytes: vec![1],
        })
    });
    prop_oneof![shape, text, image].prop_recursive(3, 24, 4, |inner| {
        (
            prop::collection::vec(inner, 0..4),
            prop::option::of(path()),
            prop::option::of("[a-z]{1,4}"),
        )
            .prop_map(|(nodes, clip, part)| Node::Group(Group { part, clip, nodes }))
    })
}

proptest! {
    /// A back view mirrored again is the front.
    #[test]
    fn mirrored_twice_is_itself(nodes in prop::collection::vec(node(), 0..5)) {
        prop_assert_eq!(mirror(&mirror(&nodes)), nodes);
    }

    /// Mirrored once, a shape's points stand on the other side, at the same height.
    #[test]
    fn mirrored_once_changes_sides(path in path()) {
        let shape = |path| Node::Shape(Shape { path, fill: Fill::None, pen: Pen::Fine, colour: None });
        let expected = path.map(|p| at(-p.x, p.y));
        prop_assert_eq!(mirror(&[shape(path)]), vec![shape(expected)]);
    }

    /// Hatching never leaves the part it marks.
    #[test]
    fn hatching_stays_inside(a in place(), b in place(), from in place(), to in place()) {
        let bounds = Box2::of(&[a, b]);
        prop_assume!(bounds.width() > 1.0 && bounds.height() > 1.0);
        let ring = bounds.corners();
        for run in inside(&[from, to], &[&ring]) {
            for p in run {
                let grown = bounds.grown(1e-6);
                prop_assert!(p.x >= grown.left && p.x <= grown.right && p.y >= grown.top && p.y <= grown.bottom);
            }
        }
    }

    /// No text breaks the document it stands in.
    #[test]
    fn escaped_text_is_text(text in any::<String>()) {
        let document = format!("<t a=\"{0}\">{0}</t>", escaped(&text));
        let tree = roxmltree::Document::parse(&document);
        prop_assert!(tree.is_ok(), "{document:?}");
    }

    /// The scale chosen lets the piece fit, and the next larger one would not.
    #[test]
    fn scale_fits(w in 1.0..9e3_f64, h in 1.0..9e3_f64) {
        let factor = Scale::fitting([w, h], [100.0, 120.0]).factor();
        prop_assert!(factor > 0.0 && w * factor <= 100.0 + 1e-9 && h * factor <= 120.0 + 1e-9);
    }
}

/// RFC 4648 section 10: the test vectors of base 64.
#[test]
fn base64_as_the_standard_has_it() {
    let vectors = [
        ("", ""),
        ("f", "Zg=="),
        ("fo", "Zm8="),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg=="),
        ("fooba", "Zm9vYmE="),
        ("foobar", "Zm9vYmFy"),
    ];
    for (plain, coded) in vectors {
        assert_eq!(base64(plain.as_bytes()), coded);
    }
}

#[test]
fn colours_read_as_written() {
    assert_eq!(Colour::read("#2f4a47"), Some(Colour([0x2f, 0x4a, 0x47])));
    for odd in ["2f4a47", "#2f4a4", "#2f4a4g", "#ééé", "", "url(#a)"] {
        assert_eq!(Colour::read(odd), None, "{odd}");
    }
    assert_eq!(Colour([255; 3]).grey(), Colour([255; 3]));
}

#[test]
fn a_ring_with_a_hole_holds_what_lies_between() {
    let outer = Box2 {
        left: 0.0,
        top: 0.0,
        right: 10.0,
        bottom: 10.0,
    }
    .corners();
    let hole = Box2 {
        left: 4.0,
        top: 4.0,
        right: 6.0,
        bottom: 6.0,
    }
    .corners();
    assert!(holds(at(1.0, 1.0), &[&outer, &hole]));
    assert!(!holds(at(5.0, 5.0), &[&outer, &hole]));
    let runs = inside(&[at(-5.0, 5.0), at(15.0, 5.0)], &[&outer, &hole]);
    assert_eq!(runs.len(), 2);
}

#[test]
fn text_wraps_within_its_width_and_shows_what_is_cut() {
    let lines = wrapped(
        "Windows 1: 4 3/4 × 6 3/4; 2: 7 3/4 × 9 3/4; 3: 4 3/4 × 6 3/4.",
        60.0,
        5,
    );
    assert!(
        lines.iter().all(|line| text_width(line) <= 60.0),
        "{lines:?}"
    );
    assert!(
        lines.iter().all(|line| !line.starts_with("3/4")),
        "{lines:?}"
    );
    let cut = wrapped("one two three four five six seven eight nine ten", 30.0, 2);
    assert_eq!(cut.len(), 2);
    assert!(cut[1].ends_with('…'), "{cut:?}");
}
