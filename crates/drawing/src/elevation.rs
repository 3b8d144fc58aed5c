//! The elevation: the framed piece from the front, to scale.

mod art;
mod frames;
mod mats;
mod measures;
mod words;

pub(crate) use frames::colour_of;
pub(crate) use mats::{core_colour, face_colour};

use sizing::Sizes;
use trade::Job;

use crate::caption::caption;
use crate::input::{DrawingError, Look, Sheet, drawable};
use crate::piece::Piece;
use crate::scene::{Box2, Node, at, placed};
use crate::sheet::{Finished, Scale, first_line};
use crate::twin::{Drawing, Twin};

/// The framed piece from the front.
///
/// Shape:  outside, sight, borders that are seen, and windows are dimensioned; light falls from the
///         left top.
/// Units:  dimensions in the job's unit, which the caption names; exact, or with `≈` before them.
/// Errors: a piece in which some rectangle has no size, sizes of another job.
pub fn elevation(job: &Job, sizes: &Sizes, look: &Look<'_>) -> Result<Drawing, DrawingError> {
    drawable(job, sizes)?;
    let piece = Piece { job, sizes };
    let rim = Box2::of(&piece.rim(sizes.outside.size()));
    let (sheet, beside) = (look.sheet, measures::room(look.sheet));
    let room = [
        sheet.width() - 2.0 * sheet.margin() - beside,
        most_height(sheet),
    ];
    let scale = Scale::fitting([rim.width(), rim.height()], room);
    let factor = scale.factor();
    let left = (sheet.width() - rim.width() * factor - beside) / 2.0;
    let origin = at(left - rim.left * factor, sheet.margin() - rim.top * factor);
    let view = View {
        piece,
        factor,
        look,
    };

    let mut remarks = Vec::new();
    let mut nodes = placed(&picture(&view, &mut remarks), factor, origin);
    let (dimensions, below) = measures::measures(&view, origin);
    nodes.extend(dimensions);
    let first = first_line("Elevation", sheet, scale, sizes);
    remarks.splice(0..0, words::notes(&piece, factor));
    let (words, height) = caption(sheet, below, &first, &remarks);
    nodes.extend(words);

    let mut twin = Twin::new(sizes.unit());
    words::twin(&piece, &remarks, &mut twin);
    Ok(Finished {
        kind: "elevation",
        title: format!("Elevation of {}", piece.title()),
        description: words::description(&piece, sheet, scale),
        scale,
        height,
        nodes,
        twin,
        look,
    }
    .write())
}

/// The most a piece is drawn high, in millimetres of the sheet.
const fn most_height(sheet: Sheet) -> f64 {
    match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => 118.0,
        Sheet::Ticket => 50.0,
    }
}

/// What everything in the picture is drawn with.
#[derive(Clone, Copy)]
struct View<'a> {
    piece: Piece<'a>,
    /// Millimetres of the sheet for one of the piece.
    factor: f64,
    look: &'a Look<'a>,
}

/// The piece itself, from the back forwards.
fn picture(view: &View<'_>, remarks: &mut Vec<String>) -> Vec<Node> {
    let sizes = view.piece.sizes;
    let mut nodes = vec![art::ground(view)];
    nodes.extend(art::pieces(view, remarks));
    for index in (0..sizes.mats.len()).rev() {
        nodes.extend(mats::mat(view, index));
    }
    for index in (0..sizes.members.len()).rev() {
        nodes.extend(frames::member(view, index));
    }
    nodes
}
