//! What the elevation says in words: its description, its notes, its twin.

use sizing::{MatSizes, Outline, Sizes};

use super::measures::is_measured_inside;
use crate::scene::Box2;

use crate::input::Sheet;
use crate::piece::Piece;
use crate::sheet::{Scale, shown};
use crate::twin::{Twin, numbered};

/// One sentence for those who hear the drawing.
pub(super) fn description(piece: &Piece<'_>, sheet: Sheet, scale: Scale) -> String {
    let outside = piece.sizes.outside.size();
    let unit = piece.sizes.unit();
    format!(
        "The framed piece from the front, {} wide and {} high outside, at {} where the sheet is {} mm wide. \
         Every dimension is listed in the text beside the drawing.",
        outside.width.in_both(unit),
        outside.height.in_both(unit),
        scale.words(),
        sheet.width(),
    )
}

/// What must be known beside the dimensions shown.
pub(super) fn notes(piece: &Piece<'_>, factor: f64) -> Vec<String> {
    let sizes = piece.sizes;
    let mut notes = Vec::new();
    if sizes.sides != 4 {
        notes.push(format!("{} sides, sizes across the flats.", sizes.sides));
    }
    if let Some(note) = windows_note(piece, factor) {
        notes.push(note);
    }
    if piece.job.art.iter().any(|art| art.deckle.is_some()) {
        notes.push("Deckle edges are drawn straight, at the paper's largest.".to_owned());
    }
    let leaning = sizes.members.iter().filter(|member| member.tilt.is_some());
    for member in leaning {
        notes.push(format!(
            "{}: its sides lean; they are drawn as seen from the front.",
            member.name
        ));
    }
    if sizes.double_sided {
        notes.push("Double-sided: the back looks the same, mirrored.".to_owned());
    }
    notes
}

/// The sizes of several windows: one size where all are alike, else where to find them.
fn windows_note(piece: &Piece<'_>, factor: f64) -> Option<String> {
    let windows = piece.windows();
    let first = windows.first()?.face.size();
    if let [window] = windows {
        let bounds = piece.window_box(window);
        let on_sheet = Box2::round(
            bounds.centre(),
            bounds.width() * factor,
            bounds.height() * factor,
        );
        let (width, height) = (
            shown(first.width, piece.sizes),
            shown(first.height, piece.sizes),
        );
        return (!is_measured_inside(window, on_sheet))
            .then(|| format!("Window {width} × {height}{}.", shape_word(&window.outline)));
    }
    if windows.iter().all(|window| window.face.size() == first) {
        let (width, height) = (
            shown(first.width, piece.sizes),
            shown(first.height, piece.sizes),
        );
        return Some(format!(
            "{} windows, each {width} × {height}.",
            windows.len()
        ));
    }
    let listed: Vec<String> = windows
        .iter()
        .enumerate()
        .map(|(w, window)| {
            let size = window.face.size();
            format!(
                "{}: {} × {}",
                w + 1,
                shown(size.width, piece.sizes),
                shown(size.height, piece.sizes)
            )
        })
        .collect();
    Some(format!("Windows {}.", listed.join("; ")))
}

/// What a window's outline is called, after its size.
fn shape_word(outline: &Outline) -> &'static str {
    match outline {
        Outline::Rectangle => "",
        Outline::Rounded(_) => ", corners rounded",
        Outline::Oval => ", oval",
        Outline::Arch(_) => ", arched",
        Outline::Polygon(_) => ", many-sided",
    }
}

/// Every dimension of the front.
pub(super) fn twin(piece: &Piece<'_>, notes: &[String], twin: &mut Twin) {
    let sizes = piece.sizes;
    twin.size("Outside", sizes.outside);
    for member in &sizes.members {
        let name = &member.name;
        twin.length(format!("{name}, face"), member.face.value);
        if let Some(sight) = member.sight {
            twin.size(&format!("{name}, sight"), sight);
        }
        if let Some(fillet) = &member.fillet {
            twin.length(format!("{name}, fillet, face"), fillet.face);
            twin.size(&format!("{name}, fillet sight"), fillet.sight);
        }
        if let Some(floater) = &member.floater {
            twin.size(&format!("{name}, inside"), member.rabbet);
            twin.length(format!("{name}, gap"), floater.gap);
        }
    }
    borders(sizes, twin);
    for (index, mat) in sizes.mats.iter().enumerate() {
        mat_lines(&numbered("Mat", index, sizes.mats.len()), mat, twin);
    }
    if let Some(walls) = &sizes.walls {
        twin.length("Wall, thickness", walls.thickness);
    }
    art(piece, twin);
    for note in notes {
        twin.words("Note", note.clone());
    }
}

fn borders(sizes: &Sizes, twin: &mut Twin) {
    let Some(borders) = &sizes.borders else {
        return;
    };
    if let Some(visible) = borders.visible {
        for (side, border) in visible.named() {
            twin.length(format!("Border seen, {side}"), border.value);
        }
    }
    for (side, border) in borders.cut.named() {
        twin.length(format!("Border as cut, {side}"), border.value);
    }
}

fn mat_lines(name: &str, mat: &MatSizes, twin: &mut Twin) {
    for (w, window) in mat.windows.iter().enumerate() {
        let name = format!("{name}, {}", numbered("window", w, mat.windows.len()));
        twin.size(&name, window.face);
        if mat.bevel == trade::Bevel::Normal {
            twin.size(&format!("{name}, foot"), window.foot);
        }
        twin.length(format!("{name}, from the mat's left"), window.x.value);
        twin.length(format!("{name}, from the mat's top"), window.y.value);
        if let Some(fillet) = &window.fillet {
            twin.size(&format!("{name}, fillet sight"), fillet.sight);
        }
    }
    if let Some(seen) = mat.reveal_seen {
        twin.length(
            format!("Seen of the mat under {}", name.to_lowercase()),
            seen.value,
        );
    }
    if let Some(groove) = mat.groove {
        twin.length(format!("{name}, groove outside the window"), groove);
    }
}

fn art(piece: &Piece<'_>, twin: &mut Twin) {
    let count = piece.sizes.art.len();
    for (index, sizes) in piece.sizes.art.iter().enumerate() {
        let stated = &piece.job.art[index];
        let name = numbered("Art", index, count);
        if let Some(title) = &stated.title {
            twin.words(format!("{name}, title"), title.clone());
        }
        twin.size(&name, sizes.largest);
        for (what, place) in [("left", stated.x), ("top", stated.y)] {
            if let Some(place) = place {
                twin.length(format!("{name}, from the ground's {what}"), *place);
            }
        }
    }
}
