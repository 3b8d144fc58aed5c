//! Finding room for lettering: what is taken, and where a block still fits whole.

use crate::cuts::block::Block;
use crate::scene::{Box2, Face, Point, at};
use crate::sheet::{text_width, wrapped};

/// Boxes that carry something already.
#[derive(Clone, Debug, Default)]
pub(crate) struct Taken(Vec<Box2>);

impl Taken {
    pub fn take(&mut self, bounds: Box2) {
        self.0.push(bounds);
    }

    /// Takes what a block's lettering covers.
    pub fn take_block(&mut self, block: &Block, centre: Point) {
        self.0.extend(block.line_boxes(centre));
    }

    /// Whether nothing lies in a box.
    pub fn is_free(&self, bounds: Box2) -> bool {
        !self.0.iter().any(|other| {
            other.left < bounds.right
                && bounds.left < other.right
                && other.top < bounds.bottom
                && bounds.top < other.bottom
        })
    }

    /// Only what lies in a box, for looking there many times.
    pub fn within(&self, bounds: Box2) -> Self {
        let near = |other: &&Box2| {
            other.left < bounds.right
                && bounds.left < other.right
                && other.top < bounds.bottom
                && bounds.top < other.bottom
        };
        Self(self.0.iter().filter(near).copied().collect())
    }

    /// Where a block stands whole inside a room, the middle first.
    pub fn place(&self, block: &Block, room: Box2) -> Option<Point> {
        let [width, height] = block.extent();
        let (across, up) = (room.width() - width, room.height() - height);
        if across < 0.0 || up < 0.0 {
            return None;
        }
        let middle = room.centre();
        SHIFTS
            .iter()
            .map(|(x, y)| at(middle.x + across / 2.0 * x, middle.y + up / 2.0 * y))
            .find(|centre| {
                block
                    .line_boxes(*centre)
                    .iter()
                    .all(|line| self.is_free(*line))
            })
    }
}

/// Shares of the spare room by which a block moves out of the middle.
const SHIFTS: [(f64, f64); 17] = [
    (0.0, 0.0),
    (0.0, 0.5),
    (0.0, 1.0),
    (0.0, -0.5),
    (0.0, -1.0),
    (-0.5, 0.0),
    (0.5, 0.0),
    (-1.0, 0.0),
    (1.0, 0.0),
    (-0.5, -0.5),
    (0.5, 0.5),
    (-0.5, 0.5),
    (0.5, -0.5),
    (-1.0, -1.0),
    (1.0, 1.0),
    (-1.0, 1.0),
    (1.0, -1.0),
];

/// A name's lines wrapped to a width without leaving anything out.
fn whole(lines: &[String], width: f64) -> Option<Vec<(String, Face)>> {
    let mut out = Vec::new();
    for line in lines {
        let mut words = line.split_whitespace();
        if words.any(|word| text_width(word) > width) {
            return None;
        }
        let set = wrapped(line, width, usize::MAX);
        let words = line.split_whitespace().collect::<Vec<_>>().join(" ");
        if set.join(" ") != words || set.iter().any(|line| text_width(line) > width) {
            return None;
        }
        out.extend(set.into_iter().map(|line| (line, Face::Plain)));
    }
    Some(out)
}

/// What is to be said inside a part.
#[derive(Clone, Copy)]
pub(crate) struct Label<'a> {
    pub name: &'a [String],
    /// Its size: exact, or with `≈`.
    pub size: &'a str,
    /// `turned` and the like.
    pub remarks: &'a [String],
}

impl Label<'_> {
    /// Ways to say it, the fullest first; all of them say all of it.
    pub fn blocks(&self, room: Box2) -> Vec<Block> {
        let mut blocks = Vec::new();
        for (face, upright) in [
            (Face::Figure, false),
            (Face::Heading, false),
            (Face::Plain, false),
            (Face::Figure, true),
            (Face::Heading, true),
            (Face::Plain, true),
        ] {
            let width = if upright { room.height() } else { room.width() };
            for name in [self.name.to_vec(), vec![self.name.join(", ")]] {
                for size in [vec![self.size.to_owned()], self.halves()] {
                    let Some(mut lines) = whole(&name, width) else {
                        continue;
                    };
                    lines.extend(size.into_iter().map(|line| (line, face)));
                    let remarks = self.remarks.iter();
                    lines.extend(remarks.map(|line| (line.clone(), Face::Plain)));
                    blocks.push(Block { lines, upright });
                }
            }
        }
        blocks
    }

    /// Width and height under one another.
    fn halves(&self) -> Vec<String> {
        match self.size.split_once(" × ") {
            Some((width, height)) => vec![format!("{width} ×"), height.to_owned()],
            None => vec![self.size.to_owned()],
        }
    }
}
