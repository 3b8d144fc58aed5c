//! What the back view says in words: its description, its notes, its twin.

use sizing::{Cuts, Setup, Sizes};

use super::HEADING;
use super::measures::{SIDES, guide};
use crate::input::Sheet;
use crate::piece::Piece;
use crate::sheet::{Scale, shown};
use crate::twin::{Twin, numbered};

/// One sentence for those who hear the drawing.
pub(super) fn description(sheet: Sheet, scale: Scale) -> String {
    format!(
        "{HEADING}. The piece from the back, left and right changed, at {} where the sheet is {} mm wide. \
         Every dimension is listed in the text beside the drawing.",
        scale.words(),
        sheet.width(),
    )
}

/// What the bench must know beside the dimensions shown.
pub(super) fn notes(piece: &Piece<'_>) -> Vec<String> {
    let sizes = piece.sizes;
    let say = |length| shown(length, sizes);
    let mut notes = Vec::new();
    if sizes.mats.iter().any(|mat| mat.windows.len() > 1) {
        notes.push(
            "Numbers at the edges run from the board's left and top; every guide is in the list."
                .to_owned(),
        );
    } else if sizes.mats.len() > 1 {
        notes.push("Guides of the front mat first; the list has every mat's.".to_owned());
    }
    if let Some(marks) = &sizes.hangers {
        let mut words = format!(
            "Hangers {} from the top, {} from the side",
            say(marks.down.value),
            say(marks.inset.value)
        );
        if let Some(wire) = &marks.wire {
            words = format!(
                "{words}; wire {}, hook {} below the top",
                say(wire.length.value),
                say(wire.hook.value)
            );
        }
        notes.push(format!("{words}."));
    }
    if let Some(marks) = &sizes.hinges {
        notes.push(format!(
            "{} hinges, {} from the art's corners.",
            marks.count.value,
            say(marks.inset.value)
        ));
    }
    if let Some(cover) = &sizes.cover {
        notes.push(format!(
            "Cover {} × {}.",
            say(cover.width.value),
            say(cover.height.value)
        ));
    }
    notes
}

/// Where the hook on the wall stands.
pub(super) fn hook(sizes: &Sizes) -> Option<String> {
    let wire = sizes.hangers?.wire?;
    Some(format!(
        "hook {} below the top",
        shown(wire.hook.value, sizes)
    ))
}

/// Every dimension of the back.
pub(super) fn twin(piece: &Piece<'_>, notes: &[String], twin: &mut Twin) {
    let sizes = piece.sizes;
    twin.words("View", HEADING);
    twin.size("Outside", sizes.outside);
    for (index, mat) in sizes.mats.iter().enumerate() {
        twin.size(
            &format!("{}, board", numbered("Mat", index, sizes.mats.len())),
            mat.sheet.size,
        );
    }
    let outermost = &sizes.members[0];
    match &outermost.floater {
        Some(floater) => twin.size("Opening between the ledges", floater.ledge_opening),
        None => twin.size("Rabbet", outermost.rabbet),
    }
    for setup in &sizes.setups {
        setup_lines(setup, sizes, twin);
    }
    marks(sizes, twin);
    if let Some(strainer) = &sizes.strainer {
        twin.size("Strainer", strainer.outer);
        twin.size("Strainer, between the bars", strainer.inner);
        twin.length("Strainer, width of a bar", strainer.width);
        twin.length("Strainer, depth of a bar", strainer.depth);
        twin.words("Strainer, uprights", strainer.uprights.to_string());
        twin.words("Strainer, cross bars", strainer.cross_bars.to_string());
    }
    for note in notes {
        twin.words("Note", note.clone());
    }
}

fn setup_lines(setup: &Setup, sizes: &Sizes, twin: &mut Twin) {
    let mat = numbered("Mat", setup.mat, sizes.mats.len());
    let windows = sizes.mats.get(setup.mat).map_or(1, |mat| mat.windows.len());
    let name = format!("{mat}, {}", numbered("window", setup.window, windows));
    match &setup.cuts {
        Cuts::Straight(_) => {
            for side in SIDES {
                if let Some(length) = guide(setup, side) {
                    twin.length(
                        format!("{name}, guide {} from the back", side.word()),
                        length,
                    );
                }
            }
        }
        Cuts::LaidOut { left, top, size } => {
            twin.length(format!("{name}, box from the left, from the back"), *left);
            twin.length(format!("{name}, box from the top"), *top);
            twin.length(format!("{name}, box width"), size.width);
            twin.length(format!("{name}, box height"), size.height);
        }
    }
}

fn marks(sizes: &Sizes, twin: &mut Twin) {
    if let Some(marks) = &sizes.hangers {
        twin.length("Hangers, down from the top", marks.down.value);
        twin.length("Hangers, in from the edge", marks.inset.value);
        twin.length("Hangers, apart", marks.apart.value);
        if let Some(wire) = &marks.wire {
            twin.length("Wire, to cut", wire.length.value);
            twin.length("Wire, rise under load", wire.rise.value);
            twin.length("Wire, hook below the top", wire.hook.value);
        }
    }
    if let Some(marks) = &sizes.hinges {
        twin.words("Hinges", marks.count.value.to_string());
        twin.length("Hinges, in from the art's corners", marks.inset.value);
    }
    if let Some(cover) = sizes.cover {
        twin.size("Dust cover", cover);
    }
}
