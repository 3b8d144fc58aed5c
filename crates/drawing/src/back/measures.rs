//! Dimensions of the back view: guides, board size, hangers.

use measure::Length;
use sizing::{BackSide, Cut, Cuts, Setup};

use super::marks::hanger_places;
use crate::dimension::{Ground, Span, across, across_strip, label_at, up_strip, upwards};
use crate::input::Sheet;
use crate::piece::Piece;
use crate::scene::{Anchor, Box2, Node, Path, Pen, Point, at, part, stroke};
use crate::sheet::{TEXT_SIZE, shown, text_width};

/// Room for dimensions round the piece, in millimetres of the sheet.
pub(super) struct Room {
    pub left: f64,
    pub right: f64,
    pub top: f64,
}

impl Room {
    /// What the dimensions of this piece need.
    pub fn round(piece: &Piece<'_>, sheet: Sheet) -> Self {
        let hung = piece.sizes.hangers.is_some();
        let right = if is_alone(piece) {
            match sheet {
                Sheet::Page | Sheet::Wide | Sheet::Bench => 14.0,
                Sheet::Ticket => 2.0,
            }
        } else {
            let last = piece.sizes.mats.len().saturating_sub(1);
            let setups = piece.sizes.setups.iter().filter(|setup| setup.mat == last);
            let words = setups.filter_map(|setup| guide(setup, BackSide::Top));
            words
                .map(|length| text_width(&shown(length, piece.sizes)))
                .fold(0.0, f64::max)
                + 4.0
        };
        let (bare, heading) = match sheet {
            Sheet::Page | Sheet::Wide | Sheet::Bench => (9.0, 17.0),
            Sheet::Ticket => (2.0, 2.0),
        };
        Self {
            left: if hung { 9.0 } else { bare },
            right,
            top: if hung {
                f64::max(heading, 9.5)
            } else {
                heading
            },
        }
    }
}

/// Whether every mat has one window.
fn is_alone(piece: &Piece<'_>) -> bool {
    piece.sizes.mats.iter().all(|mat| mat.windows.len() == 1)
}

/// From the piece to a dimension line.
const AWAY: f64 = 8.0;

/// Puts boxes of the front view where they stand on the sheet, seen from the back.
struct Table<'a> {
    piece: &'a Piece<'a>,
    factor: f64,
    origin: Point,
    rim: Box2,
}

impl Table<'_> {
    fn put(&self, b: Box2) -> Box2 {
        Box2 {
            left: self.origin.x - b.right * self.factor,
            right: self.origin.x - b.left * self.factor,
            top: self.origin.y + b.top * self.factor,
            bottom: self.origin.y + b.bottom * self.factor,
        }
    }

    fn say(&self, length: Length) -> String {
        shown(length, self.piece.sizes)
    }
}

/// The dimensions on the sheet, and how far down they reach.
pub(super) fn measures(
    piece: &Piece<'_>,
    sheet: Sheet,
    factor: f64,
    origin: Point,
) -> (Vec<Node>, f64) {
    let mut table = Table {
        piece,
        factor,
        origin,
        rim: Box2::of(&[]),
    };
    table.rim = table.put(Box2::of(&piece.rim(piece.sizes.outside.size())));
    let mut nodes = hangers(&table);
    let mut below = table.rim.bottom + 1.0;
    let alone = is_alone(piece);
    if piece.sizes.mats.is_empty() {
        return (nodes, below);
    }
    if alone {
        if sheet != Sheet::Ticket {
            nodes.extend(board(&table));
            below += AWAY;
        }
        nodes.extend(guides(&table));
    } else {
        let (runs, longest) = running(&table);
        nodes.extend(runs);
        nodes.extend(numbers(&table));
        below += longest + 3.0;
    }
    (nodes, below)
}

/// Rings: how far down, how far apart.
fn hangers(table: &Table<'_>) -> Vec<Node> {
    let Some((marks, places)) = table.piece.sizes.hangers.zip(hanger_places(table.piece)) else {
        return Vec::new();
    };
    let rim = table.rim;
    let spots = table.put(Box2::of(&places));
    let down = Span {
        from: rim.top,
        to: spots.top,
        line: rim.left - 4.0,
        reach: Some(rim.left),
    };
    let label = table.say(marks.down.value);
    let mut nodes = upwards(down, &label, Ground::Paper);
    let apart = Span {
        from: spots.left,
        to: spots.right,
        line: rim.top - 3.4,
        reach: Some(rim.top),
    };
    let label = format!("apart {}", table.say(marks.apart.value));
    nodes.extend(across(apart, &label, Ground::Paper));
    vec![part("hanger", nodes)]
}

/// The outermost board's size, at the bottom and right.
fn board(table: &Table<'_>) -> Vec<Node> {
    if table.piece.sizes.sides != 4 {
        return Vec::new();
    }
    let Some(mat) = table.piece.sizes.mats.first() else {
        return Vec::new();
    };
    let size = mat.sheet.size.size();
    let bounds = table.put(Box2::of(&table.piece.rim(size)));
    let rim = table.rim;
    let level = Span {
        from: bounds.left,
        to: bounds.right,
        line: rim.bottom + AWAY,
        reach: Some(rim.bottom),
    };
    let mut nodes = across(
        level,
        &format!("mat {}", table.say(size.width)),
        Ground::Paper,
    );
    let upright = Span {
        from: bounds.top,
        to: bounds.bottom,
        line: rim.right + AWAY,
        reach: Some(rim.right),
    };
    nodes.extend(upwards(
        upright,
        &format!("mat {}", table.say(size.height)),
        Ground::Paper,
    ));
    vec![part("mat.1", nodes)]
}

/// Guides of single windows, mat by mat, between the board's edges and the window.
fn guides(table: &Table<'_>) -> Vec<Node> {
    let Some(mat) = table.piece.sizes.mats.first() else {
        return Vec::new();
    };
    let Some(window) = mat.windows.first() else {
        return Vec::new();
    };
    let board = table.put(Box2::of(&table.piece.rim(mat.sheet.size.size())));
    let window = table.put(table.piece.window_box(window));
    let middle = window.centre();
    let mut nodes = Vec::new();
    for side in SIDES {
        let (from, to, room) = match side {
            BackSide::Left => (board.left, window.left, middle.y - board.top),
            BackSide::Right => (window.right, board.right, middle.y - board.top),
            BackSide::Top => (board.top, window.top, board.right - middle.x),
            BackSide::Bottom => (window.bottom, board.bottom, board.right - middle.x),
        };
        let Some(words) = guide_words(table, side, room) else {
            continue;
        };
        nodes.extend(match side {
            BackSide::Left | BackSide::Right => {
                across_strip(from, to, middle.y, &words, Ground::Toned)
            }
            BackSide::Top | BackSide::Bottom => up_strip(from, to, middle.x, &words, Ground::Toned),
        });
    }
    vec![part("opening.1", nodes)]
}

/// The sides in the order they are listed.
pub(super) const SIDES: [BackSide; 4] = [
    BackSide::Left,
    BackSide::Top,
    BackSide::Right,
    BackSide::Bottom,
];

/// Every mat's guide where there is room for all, else the front one's; the twin has them all.
fn guide_words(table: &Table<'_>, side: BackSide, room: f64) -> Option<String> {
    let setups = table.piece.sizes.setups.iter();
    let each: Vec<String> = setups
        .filter_map(|setup| guide(setup, side))
        .map(|length| table.say(length))
        .collect();
    let all = each.join(" · ");
    if text_width(&all) + 4.0 <= room {
        return (!all.is_empty()).then_some(all);
    }
    each.into_iter().next()
}

/// The guide of a window's cut along a side; for a laid-out shape, where its box stands.
pub(super) fn guide(setup: &Setup, side: BackSide) -> Option<Length> {
    match (&setup.cuts, side) {
        (Cuts::Straight(cuts), _) => cut_along(cuts, side).map(|cut| cut.guide.value),
        (Cuts::LaidOut { left, .. }, BackSide::Left) => Some(*left),
        (Cuts::LaidOut { top, .. }, BackSide::Top) => Some(*top),
        (Cuts::LaidOut { .. }, _) => None,
    }
}

fn cut_along(cuts: &[Cut], side: BackSide) -> Option<&Cut> {
    cuts.iter().find(|cut| cut.side == side)
}

/// Running dimensions from the board's left and top to every window's, and how far they reach down.
fn running(table: &Table<'_>) -> (Vec<Node>, f64) {
    let rim = table.rim;
    let mut nodes = Vec::new();
    let mut longest: f64 = 0.0;
    for (length, x) in runs(table, BackSide::Left) {
        let words = table.say(length);
        longest = longest.max(text_width(&words));
        let line = vec![at(x, rim.bottom - 3.0), at(x, rim.bottom + 2.0)];
        nodes.push(stroke(Path::open(line), Pen::Dimension));
        let place = at(x + TEXT_SIZE * 0.36, rim.bottom + 3.0);
        nodes.push(label_at(place, &words, true, Anchor::End, Ground::Paper));
    }
    for (length, y) in runs(table, BackSide::Top) {
        let line = vec![at(rim.right - 3.0, y), at(rim.right + 2.0, y)];
        nodes.push(stroke(Path::open(line), Pen::Dimension));
        let (place, words) = (at(rim.right + 3.0, y + TEXT_SIZE * 0.36), table.say(length));
        nodes.push(label_at(place, &words, false, Anchor::Start, Ground::Paper));
    }
    (vec![part("opening", nodes)], longest)
}

/// The guides along one side of the windows next to the art, with where they stand on the sheet.
fn runs(table: &Table<'_>, side: BackSide) -> Vec<(Length, f64)> {
    let sizes = table.piece.sizes;
    let last = sizes.mats.len().saturating_sub(1);
    let setups = sizes.setups.iter().filter(|setup| setup.mat == last);
    let mut all: Vec<(Length, f64)> = setups
        .zip(table.piece.windows())
        .filter_map(|(setup, window)| {
            let bounds = table.put(table.piece.window_box(window));
            let place = if side == BackSide::Left {
                bounds.left
            } else {
                bounds.top
            };
            Some((guide(setup, side)?, place))
        })
        .collect();
    all.sort_by_key(|(length, _)| *length);
    all.dedup_by_key(|(length, _)| *length);
    spaced(&all)
}

/// Those that stand far enough from the one before to be read.
fn spaced(all: &[(Length, f64)]) -> Vec<(Length, f64)> {
    let mut kept: Vec<(Length, f64)> = Vec::new();
    for spot in all {
        if kept
            .last()
            .is_none_or(|(_, before)| (spot.1 - before).abs() >= TEXT_SIZE * 1.1)
        {
            kept.push(*spot);
        }
    }
    kept
}

/// The numbers of several windows.
fn numbers(table: &Table<'_>) -> Vec<Node> {
    let windows = table.piece.windows();
    windows
        .iter()
        .enumerate()
        .map(|(w, window)| {
            let centre = table.put(table.piece.window_box(window)).centre();
            let place = centre.plus(0.0, TEXT_SIZE * 0.36);
            let number = label_at(
                place,
                &(w + 1).to_string(),
                false,
                Anchor::Middle,
                Ground::Toned,
            );
            part(format!("opening.{}", w + 1), vec![number])
        })
        .collect()
}
