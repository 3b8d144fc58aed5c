//! Laws of every cut sheet's drawing: readable, inside its page, in order, without a script.

use std::collections::BTreeMap;

use cutting::sheets::Way;
use drawing::{Ink, Look, cut_sheet, sheet_work, twin_text};
use proptest::prelude::*;
use roxmltree::{Document, Node};

use super::samples::{self, Turn, Use};
use super::{each, sheets};

/// Every line of lettering.
pub fn text_of(svg: &str) -> Vec<String> {
    let tree = Document::parse(svg).unwrap();
    tree.descendants()
        .filter(|node| node.tag_name().name() == "text")
        .filter_map(|node| node.text().map(str::to_owned))
        .collect()
}

/// A line of lettering: its words and the box it surely covers.
struct Lettered {
    words: String,
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

fn number(node: Node<'_, '_>, name: &str) -> Option<f64> {
    node.attribute(name)?.parse().ok()
}

/// Boxes of all lettering, a little smaller than they are drawn.
///
/// Widths: narrow letters 0.2 em, others 0.45 em; capitals 0.668 em high.
fn lettered(tree: &Document<'_>) -> Vec<Lettered> {
    let usual = number(tree.root_element(), "font-size").unwrap();
    tree.descendants()
        .filter(|node| node.tag_name().name() == "text")
        .map(|node| {
            let size = number(node, "font-size").unwrap_or(usual);
            let words = node.text().unwrap_or_default().to_owned();
            let narrow = |c: char| " .,:;'|il1/".contains(c);
            let em: f64 = words
                .chars()
                .map(|c| if narrow(c) { 0.2 } else { 0.45 })
                .sum();
            let (long, high) = (em * size, 0.6 * size);
            let (x, y) = (number(node, "x").unwrap(), number(node, "y").unwrap());
            let start = match node.attribute("text-anchor") {
                Some("middle") => -long / 2.0,
                Some("end") => -long,
                _ => 0.0,
            };
            let upright = node.attribute("transform").is_some();
            let [left, top, right, bottom] = if upright {
                [x - high, y - start - long, x, y - start]
            } else {
                [x + start, y - high, x + start + long, y]
            };
            Lettered {
                words,
                left,
                top,
                right,
                bottom,
            }
        })
        .collect()
}

#[test]
fn no_lettering_hides_other_lettering() {
    each(|name, drawn| {
        let tree = Document::parse(&drawn.drawing.svg).unwrap();
        let all = lettered(&tree);
        assert!(all.len() > 3, "{name}: it carries lettering");
        for (k, a) in all.iter().enumerate() {
            for b in &all[k + 1..] {
                let meet =
                    a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
                assert!(!meet, "{name}: “{}” lies over “{}”", a.words, b.words);
            }
        }
    });
}

#[test]
fn lettering_stays_on_the_page() {
    each(|name, drawn| {
        let tree = Document::parse(&drawn.drawing.svg).unwrap();
        let view: Vec<f64> = tree
            .root_element()
            .attribute("viewBox")
            .unwrap()
            .split(' ')
            .map(|n| n.parse().unwrap())
            .collect();
        for line in lettered(&tree) {
            let inside = line.left >= 0.0
                && line.top >= 0.0
                && line.right <= view[2]
                && line.bottom <= view[3];
            assert!(inside, "{name}: “{}” leaves the page", line.words);
        }
    });
}

/// Digits are 0.668 em high, so 5 mm letters have digits of 3.34 mm and 6.8 mm ones of 4.54 mm.
#[test]
fn letters_are_as_high_as_the_bench_needs_them() {
    each(|name, drawn| {
        let tree = Document::parse(&drawn.drawing.svg).unwrap();
        for node in tree
            .descendants()
            .filter_map(|node| number(node, "font-size"))
        {
            assert!(node >= 5.0, "{name}: {node}");
        }
    });
    let drawn = cut_sheet(&samples::board(), &Look::bench(Ink::OneInk)).unwrap();
    let tree = Document::parse(&drawn.drawing.svg).unwrap();
    let running = group(&tree, "running");
    let sizes: Vec<f64> = running
        .descendants()
        .filter(|node| node.tag_name().name() == "text")
        .map(|node| number(node, "font-size").unwrap())
        .collect();
    assert_eq!(sizes, vec![6.8; 9]);
}

fn group<'a>(tree: &'a Document<'a>, part: &str) -> Node<'a, 'a> {
    tree.descendants()
        .find(|node| node.attribute("data-part") == Some(part))
        .unwrap()
}

/// Each cut's number stands once, on its cut, outside its end or led away from it.
#[test]
fn every_cut_is_numbered_once() {
    for sheet in [
        samples::board(),
        samples::window(),
        samples::whole(),
        samples::crowd(),
    ] {
        let work = sheet_work(&sheet).unwrap();
        let drawn = cut_sheet(&sheet, &Look::bench(Ink::OneInk)).unwrap();
        let tree = Document::parse(&drawn.drawing.svg).unwrap();
        let mut seen: BTreeMap<usize, u32> = BTreeMap::new();
        for part in ["cuts", "led"] {
            for node in group(&tree, part).descendants() {
                if let Some(number) = node.text().and_then(|text| text.parse().ok())
                    && node.tag_name().name() == "text"
                {
                    *seen.entry(number).or_default() += 1;
                }
            }
        }
        let expected: BTreeMap<usize, u32> =
            (1..=work.steps.len()).map(|number| (number, 1)).collect();
        assert_eq!(seen, expected, "{}", sheet.stock);
    }
}

/// A piece's outline is as much of the sheet's as its size is of the sheet's.
#[test]
fn parts_are_to_scale() {
    for sheet in sheets() {
        let drawn = cut_sheet(&sheet, &Look::wide(Ink::Colour)).unwrap();
        let tree = Document::parse(&drawn.drawing.svg).unwrap();
        let boxes: Vec<[f64; 2]> = group(&tree, "sheet")
            .descendants()
            .filter_map(|node| node.attribute("d").map(extent))
            .collect();
        let whole = boxes
            .iter()
            .copied()
            .reduce(|a, b| [a[0].max(b[0]), a[1].max(b[1])])
            .unwrap();
        #[allow(clippy::cast_precision_loss, reason = "sizes of samples")]
        for piece in &sheet.pieces {
            let wide = piece.area.width as f64 / sheet.width as f64 * whole[0];
            let high = piece.area.height as f64 / sheet.height as f64 * whole[1];
            let drawn = boxes
                .iter()
                .any(|b| (b[0] - wide).abs() < 0.01 && (b[1] - high).abs() < 0.01);
            assert!(
                drawn,
                "{}: {} is not drawn {wide} × {high}",
                sheet.stock,
                piece.name()
            );
        }
    }
}

/// Width and height of a path's points.
fn extent(path: &str) -> [f64; 2] {
    let numbers: Vec<f64> = path
        .split(['M', 'L', 'Z', ' '])
        .filter_map(|text| text.parse().ok())
        .collect();
    let side = |k: usize| {
        let along = numbers.iter().skip(k).step_by(2);
        let least = along.clone().copied().fold(f64::INFINITY, f64::min);
        along.copied().fold(f64::NEG_INFINITY, f64::max) - least
    };
    [side(0), side(1)]
}

#[test]
fn names_stay_text() {
    let mut sheet = samples::window();
    sheet.pieces[0].lines = vec!["<script>alert(1)</script>".to_owned(), "\"&'".to_owned()];
    sheet.stock = "]]><a href='x'>".to_owned();
    let drawn = cut_sheet(&sheet, &Look::wide(Ink::Colour)).unwrap();
    let tree = Document::parse(&drawn.drawing.svg).unwrap();
    let known = ["svg", "title", "desc", "rect", "g", "path", "text"];
    for node in tree.descendants().filter(Node::is_element) {
        assert!(
            known.contains(&node.tag_name().name()),
            "{:?}",
            node.tag_name()
        );
    }
    assert!(twin_text(&drawn.drawing).contains("<script>alert(1)</script>"));
}

/// A sheet cut up at random: by thirds and halves, down to so many levels.
fn block() -> impl Strategy<Value = Use> {
    let leaf = prop_oneof![
        3 => Just(()).prop_map(|()| Use::Piece(&["Job 7", "part"], Turn::Turned)),
        1 => Just(()).prop_map(|()| Use::Keep("R-9")),
        1 => Just(()).prop_map(|()| Use::Waste),
    ];
    leaf.prop_recursive(4, 40, 4, |inner| {
        let way = prop_oneof![Just(Way::Upright), Just(Way::Level)];
        (way, prop::collection::vec((3_u64..90, inner), 1..4))
            .prop_map(|(way, parts)| Use::Split(way, parts))
    })
}

proptest! {
    /// Whatever is cut up, the sum holds, every cut can be made, and the drawing is well formed.
    #[test]
    fn any_sheet_adds_up(what in block(), kerf in 0_u64..5, trim in 0_u64..4) {
        let mut sheet = samples::window();
        sheet.pieces.clear();
        sheet.cuts.clear();
        sheet.remnants.clear();
        (sheet.width, sheet.height, sheet.kerf) = (211, 157, kerf);
        sheet.trim.left = trim;
        sheet.trim.top = trim;
        samples::cut_up(&mut sheet, what);
        let sums = sheet_work(&sheet).unwrap().sums;
        let parts = sums.pieces + sums.kerf + sums.trim + sums.remnants + sums.waste;
        prop_assert_eq!(parts, 211 * 157);
        let alone: u128 = sheet
            .pieces
            .iter()
            .map(|piece| u128::from(piece.area.width) * u128::from(piece.area.height))
            .sum();
        prop_assert_eq!(sums.pieces, alone);
        let drawn = cut_sheet(&sheet, &Look::bench(Ink::OneInk)).unwrap();
        prop_assert!(Document::parse(&drawn.drawing.svg).is_ok());
        prop_assert!(!drawn.drawing.svg.contains("NaN"));
    }
}
