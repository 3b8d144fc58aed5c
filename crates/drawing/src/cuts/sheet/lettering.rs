//! Names and sizes inside the parts; tags where they do not fit; leaders where not even those do.

use measure::Size;

use super::{Led, Plate, Sign};
use crate::colour::INK;
use crate::cuts::figures::{RADIUS, arrow, arrow_box, half_width, numbered};
use crate::cuts::key::{Kind, tag_block};
use crate::cuts::lay::Label;
use crate::cuts::ordinates::spread;
use crate::cuts::{Counting, CutPiece, words};
use crate::hatch::circle;
use crate::scene::{Anchor, Box2, Face, Fill, Node, Path, Pen, area, at, stroke, text};

/// Bare paper between lettering and the lines round it.
const CLEAR: f64 = 1.2;

impl Plate<'_> {
    pub(super) fn lettering(&mut self) -> Vec<Node> {
        let mut nodes = Vec::new();
        for piece in &self.sheet.pieces {
            nodes.extend(self.piece(piece));
        }
        for kept in &self.sheet.remnants {
            let place = kept.place;
            let counting = &self.sheet.counting;
            let sides = [place.width, place.height].map(|side| counting.kept(&[side]).drawn());
            let name = [words::keep(&kept.label)];
            let label = Label {
                name: &name,
                size: &sides.join(" × "),
                remarks: &[],
            };
            let bounds = self.bounds(place);
            let (label, tag) = self.label(&label, &label, &[bounds], Kind::Remnant);
            nodes.extend(label);
            self.key.remnants.push(tag);
        }
        nodes
    }

    fn piece(&mut self, piece: &CutPiece) -> Vec<Node> {
        let bounds = self.bounds(piece.area);
        let mut rooms = vec![bounds];
        let mut nodes = Vec::new();
        if piece.no_turn {
            nodes.extend(self.grain(bounds));
        }
        if let Some(window) = &piece.window {
            let hole = self.bounds(window.area);
            let size = (window.area.width, window.area.height);
            let size = drawn(&self.sheet.counting, size, None);
            let name = [window.label.clone()];
            let label = Label {
                name: &name,
                size: &size,
                remarks: &[],
            };
            nodes.extend(self.label(&label, &label, &[hole], Kind::Window).0);
            rooms = bands(bounds, hole);
        }
        let size = drawn(&self.sheet.counting, piece.own_size(), piece.exact);
        let remarks = words::remarks(piece);
        let label = Label {
            name: &piece.lines,
            size: &size,
            remarks: &remarks[..usize::from(piece.turned)],
        };
        let whole = Label {
            remarks: &remarks,
            ..label
        };
        let (label, tag) = self.label(&label, &whole, &rooms, Kind::Piece);
        nodes.extend(label);
        self.key.pieces.push(tag);
        nodes
    }

    /// A label in the first of the rooms that holds it; else its tag there, else led outside. The
    /// key says more than the label: what a sign on the drawing says there.
    fn label(
        &mut self,
        label: &Label<'_>,
        in_key: &Label<'_>,
        rooms: &[Box2],
        kind: Kind,
    ) -> (Vec<Node>, Option<String>) {
        for room in rooms {
            let room = room.grown(-CLEAR);
            let near = self.taken.within(room);
            for block in label.blocks(room) {
                if let Some(centre) = near.place(&block, room) {
                    self.taken.take_block(&block, centre);
                    return (block.nodes(centre), None);
                }
            }
        }
        let tag = self
            .key
            .tag(kind, &words::in_key(in_key, self.sheet.counting.unit()));
        for room in rooms {
            let room = room.grown(-0.5);
            let near = self.taken.within(room);
            for upright in [false, true] {
                let block = tag_block(&tag, upright);
                if let Some(centre) = near.place(&block, room) {
                    self.taken.take_block(&block, centre);
                    return (block.nodes(centre), Some(tag));
                }
            }
        }
        let room = rooms.first().copied().unwrap_or(self.outline);
        self.led.push(Led {
            dot: room.centre(),
            sign: Sign::Tag(tag.clone()),
        });
        (Vec::new(), Some(tag))
    }

    /// The grain arrow in a corner that is free.
    fn grain(&mut self, bounds: Box2) -> Option<Node> {
        let way = self.sheet.grain;
        let size = arrow_box(at(0.0, 0.0), way);
        let (x, y) = (size.width() / 2.0 + 0.8, size.height() / 2.0 + 0.8);
        if bounds.width() < 2.0 * x || bounds.height() < 2.0 * y {
            return None;
        }
        let places = [
            at(bounds.left + x, bounds.bottom - y),
            at(bounds.right - x, bounds.bottom - y),
            at(bounds.left + x, bounds.top + y),
            at(bounds.right - x, bounds.top + y),
            at(bounds.left + x, bounds.centre().y),
            at(bounds.right - x, bounds.centre().y),
        ];
        let near = self.taken.within(bounds);
        let place = places
            .into_iter()
            .find(|place| near.is_free(arrow_box(*place, way)))?;
        self.taken.take(arrow_box(place, way));
        Some(arrow(place, way))
    }

    /// What stands outside, each with a line to a dot in its part: cut numbers before tags, as many
    /// as there is room for. Lines apart from signs, so that the lines can lie below.
    pub(super) fn led_signs(&mut self) -> (Vec<Node>, Vec<Node>) {
        const GAP: f64 = RADIUS * 2.0 + 0.4;
        let x = self.page.width() - self.page.margin() - super::LED_COLUMN + 2.0;
        let (low, high) = (self.outline.top - 4.0, self.outline.bottom + 1.0);
        let mut led = std::mem::take(&mut self.led);
        led.sort_by_key(|led| matches!(led.sign, Sign::Tag(_)));
        let mut kept: Vec<Led> = Vec::new();
        let mut room = high - low;
        for sign in led {
            if room < 0.0 {
                self.unled += 1;
            } else {
                kept.push(sign);
                room -= GAP;
            }
        }
        kept.sort_by(|a, b| {
            a.dot
                .y
                .total_cmp(&b.dot.y)
                .then(b.dot.x.total_cmp(&a.dot.x))
        });
        let places: Vec<f64> = kept.iter().map(|led| led.dot.y).collect();
        let row = spread(&places, GAP, low, high).unwrap_or(places);
        let (mut lines, mut nodes) = (Vec::new(), Vec::new());
        for (led, y) in kept.iter().zip(row) {
            lines.push(area(Path::ring(circle(led.dot, 0.7)), Fill::Flat(INK)));
            let line = vec![led.dot, at(x - 3.0, y), at(x - 0.6, y)];
            lines.push(stroke(Path::open(line), Pen::Dimension));
            match &led.sign {
                Sign::Number(number) => {
                    nodes.extend(numbered(at(x + half_width(*number), y), *number));
                }
                Sign::Tag(tag) => {
                    nodes.push(text(at(x, y + 1.8), tag, Anchor::Start, Face::Heading));
                }
            }
        }
        (lines, nodes)
    }
}

/// Width × height for a drawing, whose caption names the unit.
fn drawn(counting: &Counting, (width, height): (u64, u64), exact: Option<Size>) -> String {
    let (across, up) = (exact.map(|size| size.width), exact.map(|size| size.height));
    format!(
        "{} × {}",
        counting.shown_length(width, across).drawn(),
        counting.shown_length(height, up).drawn()
    )
}

/// The four stretches round a window, the largest first.
fn bands(outer: Box2, hole: Box2) -> Vec<Box2> {
    let mut bands = vec![
        Box2 {
            bottom: hole.top,
            ..outer
        },
        Box2 {
            top: hole.bottom,
            ..outer
        },
        Box2 {
            right: hole.left,
            ..outer
        },
        Box2 {
            left: hole.right,
            ..outer
        },
    ];
    bands.sort_by(|a, b| {
        let content = |b: &Box2| b.width() * b.height();
        content(b).total_cmp(&content(a))
    });
    bands
}
