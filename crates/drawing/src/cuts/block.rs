//! A few lines of lettering as one block, set across or upright.

use crate::scene::{Anchor, Box2, Face, Node, Point, Text, at};
use crate::sheet::{FIGURE_SIZE, HEADING_SIZE, TEXT_SIZE, text_width};

/// Lines that stand together, centred one under another.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Block {
    pub lines: Vec<(String, Face)>,
    /// Reads upwards.
    pub upright: bool,
}

/// Height of capitals and figures over the size of the letters.
pub(crate) const CAPITALS: f64 = 0.668;
/// From one baseline to the next, over the size of the letters.
const APART: f64 = 1.14;
/// Bold letters run wider.
const BOLD: f64 = 1.05;

/// How large a face is set, in millimetres.
pub(crate) const fn size_of(face: Face) -> f64 {
    match face {
        Face::Heading => HEADING_SIZE,
        Face::Figure => FIGURE_SIZE,
        Face::Plain | Face::Quiet | Face::Pale => TEXT_SIZE,
    }
}

/// How wide a line runs in its face, on the safe side.
pub(crate) fn width_of(words: &str, face: Face) -> f64 {
    let bold = if matches!(face, Face::Heading | Face::Figure) {
        BOLD
    } else {
        1.0
    };
    text_width(words) * size_of(face) / TEXT_SIZE * bold
}

impl Block {
    /// Its width and height as it stands.
    pub fn extent(&self) -> [f64; 2] {
        let long = self
            .lines
            .iter()
            .map(|(words, face)| width_of(words, *face))
            .fold(0.0, f64::max);
        let high: f64 = self
            .lines
            .iter()
            .map(|(_, face)| size_of(*face) * APART)
            .sum();
        if self.upright {
            [high, long]
        } else {
            [long, high]
        }
    }

    /// The box each of its lines takes round a centre.
    pub fn line_boxes(&self, centre: Point) -> Vec<Box2> {
        let high: f64 = self
            .lines
            .iter()
            .map(|(_, face)| size_of(*face) * APART)
            .sum();
        let mut down = -high / 2.0;
        let mut boxes = Vec::new();
        for (words, face) in &self.lines {
            let (long, deep) = (width_of(words, *face), size_of(*face) * APART);
            let middle = down + deep / 2.0;
            down += deep;
            boxes.push(if self.upright {
                Box2::round(centre.plus(middle, 0.0), deep, long)
            } else {
                Box2::round(centre.plus(0.0, middle), long, deep)
            });
        }
        boxes
    }

    /// Its lettering round a centre.
    pub fn nodes(&self, centre: Point) -> Vec<Node> {
        let [width, height] = self.extent();
        let high = if self.upright { width } else { height };
        let mut down = -high / 2.0;
        let mut nodes = Vec::new();
        for (words, face) in &self.lines {
            let size = size_of(*face);
            // The capitals stand in the middle of their line.
            let baseline = down + size * (APART + CAPITALS) / 2.0;
            down += size * APART;
            let place = if self.upright {
                at(centre.x + baseline, centre.y)
            } else {
                at(centre.x, centre.y + baseline)
            };
            nodes.push(Node::Text(Text {
                at: place,
                words: words.clone(),
                anchor: Anchor::Middle,
                face: *face,
                upright: self.upright,
                halo: false,
            }));
        }
        nodes
    }
}
