//! A wall from the room: every frame in its place, every nail with its running measures.

use measure::{Length, Rounding, Tape, Toward, Unit};

use crate::caption::caption;
use crate::input::{Ink, Look, Sheet};
use crate::scene::{
    Anchor, Box2, Face, Fill, Node, Path, Pen, Text, area, at, part, shape, stroke, text,
};
use crate::sheet::{Finished, Scale, TEXT_SIZE, text_width, wrapped};
use crate::twin::{Drawing, Twin};

/// A wall and what hangs on it.
///
/// Shape:  places from the wall's left corner and from the floor, seen from the room.
#[derive(Clone, Debug)]
pub struct WallPlan {
    /// What it is called.
    pub title: String,
    /// From its left corner to its right.
    pub width: Length,
    /// From the floor to the ceiling, where it is known.
    pub height: Option<Length>,
    /// What hangs there, in the order it is numbered.
    pub pieces: Vec<WallPiece>,
    /// The unit sizes are printed in.
    pub unit: Unit,
    /// The tape they are printed for.
    pub tape: Tape,
}

/// A piece on a wall.
#[derive(Clone, Debug)]
pub struct WallPiece {
    /// What it is.
    pub name: String,
    /// From the wall's left corner to its left edge.
    pub left: Length,
    /// From the floor to its top edge.
    pub top: Length,
    /// Outside width.
    pub width: Length,
    /// Outside height.
    pub height: Length,
    /// Its nails, left to right.
    pub nails: Vec<WallNail>,
}

/// A nail.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WallNail {
    /// From the wall's left corner.
    pub from_corner: Length,
    /// From the floor.
    pub above_floor: Length,
}

/// The nail map of a wall.
///
/// Shape:  every nail's distance from the left corner runs along the floor, its height along the
///         left side; frames carry their numbers.
/// Units:  the plan's unit, which the caption names; exact, or with `≈` before them.
pub fn wall(plan: &WallPlan, ink: Ink, sheet: Sheet) -> Drawing {
    let look = Look {
        pictures: &|_| None,
        ink,
        sheet,
    };
    let view = View::of(plan, sheet);
    let mut nodes = view.ground();
    for (index, piece) in plan.pieces.iter().enumerate() {
        nodes.push(view.piece(index, piece));
    }
    let below = view.along_the_floor(&mut nodes);
    view.up_the_side(&mut nodes);
    let unit = if plan.unit.is_inch_family() {
        "inches"
    } else {
        "millimetres"
    };
    let first = format!(
        "Wall from the room · {} · {unit} from the left corner and from the floor",
        view.scale.words()
    );
    let (words, height) = caption(sheet, below, &first, &[]);
    nodes.extend(words);
    Finished {
        kind: "wall",
        title: format!("Nail map: {}", plan.title),
        description: format!(
            "A wall from the room, {}, with the place of every nail.",
            view.scale.words()
        ),
        scale: view.scale,
        height,
        nodes,
        twin: twin(plan),
        look: &look,
    }
    .write()
}

/// Every place in words.
fn twin(plan: &WallPlan) -> Twin {
    let mut twin = Twin::new(plan.unit);
    twin.length("Wall, width", plan.width);
    if let Some(height) = plan.height {
        twin.length("Wall, height", height);
    }
    let mut before = Length::ZERO;
    for (index, piece) in plan.pieces.iter().enumerate() {
        let name = format!("{} {}", index + 1, piece.name);
        twin.length(format!("{name}, width"), piece.width);
        twin.length(format!("{name}, height"), piece.height);
        twin.length(format!("{name}, left edge from the corner"), piece.left);
        twin.length(format!("{name}, top edge above the floor"), piece.top);
        for (number, nail) in piece.nails.iter().enumerate() {
            let nail_name = match piece.nails.len() {
                1 => format!("{name}, nail"),
                _ => format!("{name}, nail {}", number + 1),
            };
            twin.length(format!("{nail_name} from the corner"), nail.from_corner);
            twin.length(format!("{nail_name} above the floor"), nail.above_floor);
            twin.length(
                format!("{nail_name} from the nail before it, across"),
                nail.from_corner - before,
            );
            before = nail.from_corner;
        }
    }
    twin
}

/// Where the wall lies on the sheet.
struct View<'a> {
    plan: &'a WallPlan,
    scale: Scale,
    factor: f64,
    /// The wall on the sheet.
    at: Box2,
}

/// Room for heights at the left of the wall.
const BESIDE: f64 = 25.0;
/// The most a wall is drawn high.
const MOST_HIGH: f64 = 118.0;
/// From the floor to the running measures under it.
const UNDER: f64 = 9.0;
/// Least distance of two running measures.
const APART: f64 = 6.0;

impl<'a> View<'a> {
    fn of(plan: &'a WallPlan, sheet: Sheet) -> Self {
        let margin = sheet.margin();
        let tops = plan.pieces.iter().map(|piece| piece.top);
        let highest = tops.max().unwrap_or_default().approx_mm();
        let high = plan
            .height
            .map_or(highest * 1.1, |height| height.approx_mm().max(highest));
        let wide = plan.width.approx_mm();
        let room = [sheet.width() - 2.0 * margin - BESIDE, MOST_HIGH];
        let scale = Scale::fitting([wide, high.max(1.0)], room);
        let factor = scale.factor();
        let left = margin + BESIDE + (room[0] - wide * factor) / 2.0;
        let top = margin + 1.0;
        Self {
            plan,
            scale,
            factor,
            at: Box2 {
                left,
                top,
                right: left + wide * factor,
                bottom: top + high * factor,
            },
        }
    }

    fn x(&self, from_corner: Length) -> f64 {
        self.at.left + from_corner.approx_mm() * self.factor
    }

    fn y(&self, above_floor: Length) -> f64 {
        self.at.bottom - above_floor.approx_mm() * self.factor
    }

    /// Floor and corners; a ceiling where its height is known.
    fn ground(&self) -> Vec<Node> {
        let Box2 {
            left,
            top,
            right,
            bottom,
        } = self.at;
        let mut lines = vec![
            vec![at(left, top), at(left, bottom)],
            vec![at(right, top), at(right, bottom)],
        ];
        if self.plan.height.is_some() {
            lines.push(vec![at(left, top), at(right, top)]);
        }
        let floor = vec![at(left - 4.0, bottom), at(right + 4.0, bottom)];
        vec![
            stroke(Path::lines(lines), Pen::Fine),
            stroke(Path::open(floor), Pen::Heavy),
        ]
    }

    /// A frame with its number, its name where there is room, and its nails.
    fn piece(&self, index: usize, piece: &WallPiece) -> Node {
        let rim = Box2 {
            left: self.x(piece.left),
            top: self.y(piece.top),
            right: self.x(piece.left + piece.width),
            bottom: self.y(piece.top - piece.height),
        };
        let mut nodes = vec![shape(Path::ring(rim.corners()), Fill::None, Pen::Outline)];
        let number = (index + 1).to_string();
        let middle = rim.centre();
        let room = rim.width() - 2.0;
        let lines = if rim.height() > 5.0 * TEXT_SIZE && room > 6.0 * TEXT_SIZE {
            wrapped(&piece.name, room, 2)
        } else {
            Vec::new()
        };
        let mut y = middle.y + TEXT_SIZE * 0.36 + 2.0;
        nodes.push(text(at(middle.x, y), number, Anchor::Middle, Face::Heading));
        for line in lines {
            y += TEXT_SIZE * 1.2;
            nodes.push(text(at(middle.x, y), line, Anchor::Middle, Face::Quiet));
        }
        for nail in &piece.nails {
            nodes.extend(cross(at(
                self.x(nail.from_corner),
                self.y(nail.above_floor),
            )));
        }
        part(format!("piece.{}", index + 1), nodes)
    }

    /// Distances from the left corner under the floor; returns where they end.
    fn along_the_floor(&self, nodes: &mut Vec<Node>) -> f64 {
        let mut nails: Vec<WallNail> = self.nails().collect();
        nails.sort_by_key(|nail| (nail.from_corner, nail.above_floor));
        nails.dedup_by_key(|nail| nail.from_corner);
        let wanted: Vec<f64> = nails.iter().map(|nail| self.x(nail.from_corner)).collect();
        let places = spread(&wanted, APART);
        let mut longest: f64 = 0.0;
        for ((nail, from), to) in nails.iter().zip(&wanted).zip(&places) {
            let floor = self.at.bottom;
            let down = vec![at(*from, self.y(nail.above_floor) + 2.0), at(*from, floor)];
            nodes.push(stroke(Path::open(down), Pen::Dimension));
            let lead = vec![
                at(*from, floor),
                at(*from, floor + 2.0),
                at(*to, floor + UNDER - 2.0),
            ];
            nodes.push(stroke(Path::open(lead), Pen::Dimension));
            let words = self.said(nail.from_corner);
            longest = longest.max(text_width(&words));
            nodes.push(Node::Text(Text {
                at: at(*to + TEXT_SIZE * 0.36, floor + UNDER),
                words,
                anchor: Anchor::End,
                face: Face::Plain,
                upright: true,
                halo: false,
            }));
        }
        self.at.bottom + UNDER + longest + 1.0
    }

    /// Heights from the floor at the left of the wall.
    fn up_the_side(&self, nodes: &mut Vec<Node>) {
        let mut heights: Vec<Length> = self.nails().map(|nail| nail.above_floor).collect();
        heights.sort_unstable();
        heights.dedup();
        heights.reverse();
        let wanted: Vec<f64> = heights.iter().map(|height| self.y(*height)).collect();
        let places = spread(&wanted, APART);
        for ((height, from), to) in heights.iter().zip(&wanted).zip(&places) {
            let edge = self.at.left;
            let lead = vec![at(edge, *from), at(edge - 2.0, *from), at(edge - 4.0, *to)];
            nodes.push(stroke(Path::open(lead), Pen::Dimension));
            let place = at(edge - 5.0, *to + TEXT_SIZE * 0.36);
            nodes.push(text(place, self.said(*height), Anchor::End, Face::Plain));
        }
    }

    fn nails(&self) -> impl Iterator<Item = WallNail> + '_ {
        self.plan
            .pieces
            .iter()
            .flat_map(|piece| piece.nails.iter().copied())
    }

    /// A length as the tape has it, `≈` before it where it lies beside a mark; without its unit.
    fn said(&self, length: Length) -> String {
        let printed = length.on_tape(self.plan.tape, Toward::Nearest);
        let bare = printed
            .text
            .trim_end_matches(self.plan.unit.symbol())
            .trim_end();
        if printed.rounding == Rounding::Exact {
            bare.to_owned()
        } else {
            format!("≈ {bare}")
        }
    }
}

/// A nail: a cross in a ring.
fn cross(centre: crate::scene::Point) -> Vec<Node> {
    const ARM: f64 = 2.0;
    const STEPS: u32 = 20;
    let ring = (0..STEPS).map(|step| {
        let turn = f64::from(step) * std::f64::consts::TAU / f64::from(STEPS);
        centre.plus(turn.cos() * ARM * 0.6, turn.sin() * ARM * 0.6)
    });
    let ring = Path::ring(ring.collect());
    let lines = Path::lines([
        vec![centre.plus(-ARM, 0.0), centre.plus(ARM, 0.0)],
        vec![centre.plus(0.0, -ARM), centre.plus(0.0, ARM)],
    ]);
    vec![
        area(ring.clone(), Fill::Flat(crate::colour::PAPER)),
        stroke(ring, Pen::Outline),
        stroke(lines, Pen::Outline),
    ]
}

/// Places in order, none nearer to the one before than `apart`, all as near to where they are wanted as they can be.
fn spread(wanted: &[f64], apart: f64) -> Vec<f64> {
    // Neighbours that would touch share a block, which stands about the middle of what its members want.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for place in wanted {
        blocks.push((*place, 1));
        while let [.., (before, many), (last, count)] = blocks.as_slice() {
            let (before, many, last, count) = (*before, *many, *last, *count);
            let half = |count: usize| wide(count - 1, apart) / 2.0;
            if before + half(many) + apart <= last - half(count) {
                break;
            }
            let all = many + count;
            let share = |count: usize| wide(count, 1.0) / wide(all, 1.0);
            blocks.truncate(blocks.len() - 2);
            blocks.push((before * share(many) + last * share(count), all));
        }
    }
    let block = |(centre, count): (f64, usize)| {
        let first = centre - wide(count - 1, apart) / 2.0;
        (0..count).map(move |index| first + wide(index, apart))
    };
    blocks.into_iter().flat_map(block).collect()
}

fn wide(count: usize, each: f64) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX)) * each
}

#[cfg(test)]
mod tests;
