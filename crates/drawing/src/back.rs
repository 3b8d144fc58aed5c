//! The back view: what the bench marks and cuts, mirrored; text reads as ever.

mod marks;
mod measures;
mod words;

use measure::Length;
use sizing::Sizes;
use trade::Job;

use crate::caption::caption;
use crate::colour::{PAPER, WOOD};
use crate::input::{DrawingError, Look, Sheet, drawable};
use crate::mirror::mirror;
use crate::piece::Piece;
use crate::scene::{
    Anchor, Box2, Face, Fill, Node, Path, Pen, area, at, part, placed, shape, stroke, text,
};
use crate::sheet::{Finished, Scale, first_line};
use crate::twin::{Drawing, Twin};

/// The heading every back view carries.
pub(crate) const HEADING: &str = "BACK VIEW — mirrored";

/// The piece from the back.
///
/// Shape:  mirrored about its upright axis, letters excepted: board rims and windows with the guide
///         of each cut, the cover's edge, hangers, wire, hinges, bumpers, strainer.
/// Units:  dimensions in the job's unit, which the caption names; exact, or with `≈` before them.
/// Errors: a piece in which some rectangle has no size, sizes of another job.
pub fn back_view(job: &Job, sizes: &Sizes, look: &Look<'_>) -> Result<Drawing, DrawingError> {
    drawable(job, sizes)?;
    let piece = Piece { job, sizes };
    let rim = Box2::of(&piece.rim(sizes.outside.size()));
    let (sheet, round) = (look.sheet, measures::Room::round(&piece, look.sheet));
    let (margin, beside) = (sheet.margin(), round.left + round.right);
    let room = [sheet.width() - 2.0 * margin - beside, most_height(sheet)];
    let scale = Scale::fitting([rim.width(), rim.height()], room);
    let factor = scale.factor();
    let spare = sheet.width() - rim.width() * factor - beside;
    let origin = at(
        spare / 2.0 + round.left - rim.left * factor,
        margin + round.top - rim.top * factor,
    );

    let front = picture(&piece, factor);
    let mut nodes = placed(&mirror(&front), factor, origin);
    if sheet != Sheet::Ticket {
        let place = at(margin, margin + 4.4);
        nodes.push(text(place, HEADING, Anchor::Start, Face::Heading));
    }
    let (dimensions, below) = measures::measures(&piece, sheet, factor, origin);
    nodes.extend(dimensions);
    let first = first_line("Back", sheet, scale, sizes);
    let remarks = words::notes(&piece);
    // The ticket's steps say the rest.
    let under = match sheet {
        Sheet::Page | Sheet::Wide | Sheet::Bench => remarks.clone(),
        Sheet::Ticket => words::hook(sizes).into_iter().collect(),
    };
    let (words, height) = caption(sheet, below, &first, &under);
    nodes.extend(words);

    let mut twin = Twin::new(sizes.unit());
    words::twin(&piece, &remarks, &mut twin);
    Ok(Finished {
        kind: "back",
        title: format!("{HEADING}: {}", piece.title()),
        description: words::description(sheet, scale),
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
        Sheet::Page | Sheet::Wide | Sheet::Bench => 112.0,
        Sheet::Ticket => 50.0,
    }
}

/// The shapes as they lie in the front view, before they are mirrored.
fn picture(piece: &Piece<'_>, factor: f64) -> Vec<Node> {
    let mut nodes = vec![frame(piece)];
    for index in (0..piece.sizes.mats.len()).rev() {
        nodes.push(mat(piece, index));
    }
    nodes.extend(marks::hinges(piece));
    nodes.extend(marks::strainer(piece));
    nodes.extend(cover(piece));
    nodes.extend(marks::hangers(piece, factor));
    nodes.extend(marks::bumpers(piece, factor));
    nodes
}

/// The frame's back, with the opening the package goes into.
fn frame(piece: &Piece<'_>) -> Node {
    let sizes = piece.sizes;
    let outer = piece.rim(sizes.outside.size());
    let member = &sizes.members[0];
    let opening = member
        .floater
        .map_or(member.rabbet, |floater| floater.ledge_opening);
    let inner = piece.rim(opening.size());
    let mitres: Vec<_> = outer
        .iter()
        .zip(&inner)
        .map(|(a, b)| vec![*a, *b])
        .collect();
    let wood = WOOD.toward(PAPER, 0.62);
    part(
        "frame.1",
        vec![
            area(
                Path::rings([outer.clone(), inner.clone()]),
                Fill::Flat(wood),
            ),
            stroke(Path::lines(mitres), Pen::Fine),
            stroke(Path::rings([outer, inner]), Pen::Outline),
        ],
    )
}

/// A mat's rim and its windows, face and foot.
fn mat(piece: &Piece<'_>, index: usize) -> Node {
    let mat = &piece.sizes.mats[index];
    let rim = piece.rim(mat.sheet.size.size());
    let mut nodes = Vec::new();
    if index == 0 {
        nodes.push(shape(Path::ring(rim), Fill::None, Pen::Fine));
    }
    for window in &mat.windows {
        let pen = if index == 0 { Pen::Outline } else { Pen::Fine };
        nodes.push(stroke(Path::ring(piece.ring(window, Length::ZERO)), pen));
    }
    part(format!("mat.{}", index + 1), nodes)
}

fn cover(piece: &Piece<'_>) -> Option<Node> {
    let cover = piece.sizes.cover?;
    Some(part(
        "cover",
        vec![stroke(Path::ring(piece.rim(cover.size())), Pen::Hidden)],
    ))
}
