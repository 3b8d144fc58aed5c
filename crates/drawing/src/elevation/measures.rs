//! Dimensions of the elevation: outside and sight at its edges, borders and window inside it.

use super::View;
use super::mats::face_colour;
use sizing::{Outline, Window};

use crate::dimension::{Ground, Span, across, across_strip, label_at, up_strip, upwards};
use crate::input::Sheet;
use crate::piece::Piece;
use crate::scene::{Anchor, Box2, Node, Point, at, part};
use crate::sheet::{shown, text_width};

/// Room for the dimensions at the right: two rows on the page, one on the ticket.
pub(super) const fn room(sheet: Sheet) -> f64 {
    match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => 20.0,
        Sheet::Ticket => 10.0,
    }
}

/// From the piece to the first dimension line, and from that to the second.
const FIRST: f64 = 8.2;
const SECOND: f64 = 7.6;

/// The dimensions on the sheet, and how far down they reach.
pub(super) fn measures(view: &View<'_>, origin: Point) -> (Vec<Node>, f64) {
    let put = |b: Box2| Box2 {
        left: origin.x + b.left * view.factor,
        top: origin.y + b.top * view.factor,
        right: origin.x + b.right * view.factor,
        bottom: origin.y + b.bottom * view.factor,
    };
    let piece = &view.piece;
    let rim = put(Box2::of(&piece.rim(piece.sizes.outside.size())));
    let mut nodes = outer(view, rim, &put);
    let full = view.look.sheet != Sheet::Ticket;
    if let Some(windows) = piece.windows_box().filter(|_| full) {
        nodes.push(part("borders", borders(piece, put(windows), &put)));
    }
    nodes.extend(windows(piece, &put));
    let rows = if piece.sizes.sides == 4 {
        FIRST + if full { SECOND } else { 0.0 }
    } else {
        0.0
    };
    (nodes, rim.bottom + rows + 1.0)
}

/// Outside and sight, below and at the right.
fn outer(view: &View<'_>, rim: Box2, put: &impl Fn(Box2) -> Box2) -> Vec<Node> {
    let (piece, sizes) = (&view.piece, view.piece.sizes);
    let mut rows = Vec::new();
    let innermost = sizes.members.last();
    match innermost.filter(|member| member.floater.is_some()) {
        _ if view.look.sheet == Sheet::Ticket => {}
        Some(floater) => rows.push(("inside", floater.rabbet)),
        None => rows.push(("sight", sizes.seen())),
    }
    rows.push(("outside", sizes.outside));
    let mut nodes = Vec::new();
    let mut away = FIRST;
    for (word, size) in rows {
        let flats = size.size();
        let bounds = put(if sizes.sides == 4 {
            Box2::of(&piece.rim(flats))
        } else {
            Box2::round(
                Point::default(),
                flats.width.approx_mm(),
                flats.width.approx_mm(),
            )
        });
        let width = worded(word, &shown(size.width.value, sizes), bounds.width());
        // A polygon is measured across its level flats, which lie above each other.
        if sizes.sides == 4 {
            let span = Span {
                from: bounds.left,
                to: bounds.right,
                line: rim.bottom + away,
                reach: Some(rim.bottom),
            };
            nodes.extend(across(span, &width, Ground::Paper));
        }
        let height = worded(word, &shown(size.height.value, sizes), bounds.height());
        let span = Span {
            from: bounds.top,
            to: bounds.bottom,
            line: rim.right + away,
            reach: Some(rim.right),
        };
        nodes.extend(upwards(span, &height, Ground::Paper));
        away += SECOND;
    }
    vec![part("frame.outside", nodes)]
}

/// The size with its word, where there is room for it.
fn worded(word: &str, size: &str, room: f64) -> String {
    let both = format!("{word} {size}");
    if text_width(&both) + 2.0 <= room {
        both
    } else {
        size.to_owned()
    }
}

/// Boards less light than this take pale lettering.
const DARK: f64 = 0.45;

/// The four borders that are seen, between the sight and the outermost windows.
fn borders(piece: &Piece<'_>, windows: Box2, put: &impl Fn(Box2) -> Box2) -> Vec<Node> {
    let sizes = piece.sizes;
    let Some(visible) = sizes.borders.as_ref().and_then(|borders| borders.visible) else {
        return Vec::new();
    };
    let Some(sight) = sizes.members.last().and_then(|member| member.sight) else {
        return Vec::new();
    };
    let sight = sight.size();
    let sight = put(Box2::round(
        Point::default(),
        sight.width.approx_mm(),
        sight.height.approx_mm(),
    ));
    let middle = windows.centre();
    let dark = sizes
        .mats
        .first()
        .is_some_and(|mat| face_colour(mat).luma() < DARK);
    let ground = if dark { Ground::Dark } else { Ground::Paper };
    let say = |length| shown(length, sizes);
    let mut nodes = Vec::new();
    nodes.extend(across_strip(
        sight.left,
        windows.left,
        middle.y,
        &say(visible.left.value),
        ground,
    ));
    nodes.extend(across_strip(
        windows.right,
        sight.right,
        middle.y,
        &say(visible.right.value),
        ground,
    ));
    nodes.extend(up_strip(
        sight.top,
        windows.top,
        middle.x,
        &say(visible.top.value),
        ground,
    ));
    nodes.extend(up_strip(
        windows.bottom,
        sight.bottom,
        middle.x,
        &say(visible.bottom.value),
        ground,
    ));
    nodes
}

/// The size of a single window inside it; the numbers of several.
fn windows(piece: &Piece<'_>, put: &impl Fn(Box2) -> Box2) -> Vec<Node> {
    let sizes = piece.sizes;
    let windows = piece.windows();
    let [window] = windows else {
        return windows
            .iter()
            .enumerate()
            .map(|(w, window)| {
                let bounds = put(piece.window_box(window));
                let place = at(bounds.centre().x, bounds.top + 6.4);
                let number = label_at(
                    place,
                    &(w + 1).to_string(),
                    false,
                    Anchor::Middle,
                    Ground::Toned,
                );
                part(format!("opening.{}", w + 1), vec![number])
            })
            .collect();
    };
    let bounds = put(piece.window_box(window));
    if !is_measured_inside(window, bounds) {
        return Vec::new();
    }
    let width = worded(
        "window",
        &shown(window.face.width.value, sizes),
        bounds.width() - 30.0,
    );
    let height = worded(
        "window",
        &shown(window.face.height.value, sizes),
        bounds.height() - 30.0,
    );
    let inset = (bounds.height().min(bounds.width()) * 0.12).clamp(3.0, 6.0);
    let level = Span {
        from: bounds.left,
        to: bounds.right,
        line: bounds.bottom - inset,
        reach: None,
    };
    let upright = Span {
        from: bounds.top,
        to: bounds.bottom,
        line: bounds.right - inset,
        reach: None,
    };
    let mut nodes = across(level, &width, Ground::Toned);
    nodes.extend(upwards(upright, &height, Ground::Toned));
    vec![part("opening.1", nodes)]
}

/// Whether a window's size is shown inside it: where it is square-cornered and has the room; the
/// caption holds it otherwise.
pub(super) fn is_measured_inside(window: &Window, on_sheet: Box2) -> bool {
    window.outline == Outline::Rectangle
        && on_sheet.width() > LEAST_ROOM
        && on_sheet.height() > LEAST_ROOM
}

const LEAST_ROOM: f64 = 32.0;
