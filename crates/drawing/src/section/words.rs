//! What the section says in words: its description and its twin.

use sizing::{LayerKind, MemberSizes, Sizes, Stack};

use crate::input::Sheet;
use crate::piece::Piece;
use crate::sheet::Scale;
use crate::twin::{Twin, numbered};

/// One sentence for those who hear the drawing.
pub(super) fn description(sheet: Sheet, scale: Scale) -> String {
    format!(
        "A level cut through the left edge, front above, back below, outside at the left, at {} where the sheet is \
         {} mm wide. Every dimension is listed in the text beside the drawing.",
        scale.words(),
        sheet.width(),
    )
}

/// Every dimension of the cut.
pub(super) fn twin(piece: &Piece<'_>, notes: &[String], twin: &mut Twin) {
    let sizes = piece.sizes;
    for member in &sizes.members {
        member_lines(member, twin);
        match &member.stack {
            Some(stack) => stack_lines(&member.name, stack, sizes, twin),
            None if member.floater.is_none() => {
                twin.words(format!("{}, rabbet depth", member.name), "not known");
            }
            None => {}
        }
    }
    layer_lines(piece, twin);
    if let Some(air) = sizes.air {
        twin.length("Air before the art", air.value);
    }
    for note in notes {
        twin.words("Note", note.clone());
    }
}

fn member_lines(member: &MemberSizes, twin: &mut Twin) {
    let name = &member.name;
    twin.length(format!("{name}, face"), member.face.value);
    if let Some(height) = member.height {
        twin.length(format!("{name}, height"), height);
    }
    if let Some(floater) = &member.floater {
        twin.length(format!("{name}, gap"), floater.gap);
        twin.length(format!("{name}, ledge"), floater.ledge);
        if let Some(recess) = member.rabbet_depth {
            twin.length(format!("{name}, recess"), recess);
        }
        if let Some(setback) = floater.setback {
            twin.length(format!("{name}, setback"), setback.value);
        }
        return;
    }
    twin.length(format!("{name}, lip"), member.lip);
    if let Some(depth) = member.rabbet_depth {
        twin.length(format!("{name}, rabbet depth"), depth);
    }
    if let Some(cover) = member.lip_cover {
        twin.length(format!("{name}, lip cover"), cover.value);
    }
}

fn stack_lines(name: &str, stack: &Stack, sizes: &Sizes, twin: &mut Twin) {
    for layer in &stack.layers {
        let kind = layer.what.word();
        let several = match layer.what {
            LayerKind::Mat | LayerKind::MatFillet => sizes.mats.len(),
            LayerKind::Glazing => sizes.glazing.len(),
            LayerKind::Backing => sizes.backing.len(),
            _ => 1,
        };
        let what = numbered(kind, layer.index, several);
        twin.length(format!("{name}, layer: {what}"), layer.thickness.value);
    }
    twin.length(format!("{name}, stack"), stack.total.value);
    if let Some(strips) = stack.build_up {
        twin.length(format!("{name}, strips on the back"), strips);
        twin.length(format!("{name}, depth with strips"), stack.depth);
    }
    twin.length(format!("{name}, tail"), stack.tail);
    twin.length(format!("{name}, slack"), stack.slack.value);
    twin.length(format!("{name}, stands proud"), stack.proud.value);
    if let Some(clip) = stack.clip {
        twin.length(format!("{name}, clip offset"), clip.value);
    }
}

/// Widths and thicknesses that the stack does not say.
fn layer_lines(piece: &Piece<'_>, twin: &mut Twin) {
    let sizes = piece.sizes;
    if sizes.members.iter().any(|member| member.stack.is_none()) {
        for (i, pane) in sizes.glazing.iter().enumerate() {
            twin.length(
                numbered("Glazing", i, sizes.glazing.len()),
                pane.sheet.thickness,
            );
        }
        for (i, mat) in sizes.mats.iter().enumerate() {
            twin.length(numbered("Mat", i, sizes.mats.len()), mat.sheet.thickness);
        }
        if let Some(mount) = &sizes.mount {
            twin.length("Mount", mount.thickness);
        }
        for (i, back) in sizes.backing.iter().enumerate() {
            twin.length(numbered("Backing", i, sizes.backing.len()), back.thickness);
        }
    }
    for (i, mat) in sizes.mats.iter().enumerate() {
        twin.length(
            format!("{}, bevel in plan", numbered("Mat", i, sizes.mats.len())),
            mat.slope.value,
        );
    }
    if let Some(width) = sizes.spacer.as_ref().and_then(|spacer| spacer.width) {
        twin.length("Spacer, thickness", width);
    }
    if let Some(sink) = &sizes.sink {
        twin.length("Sink, depth", sink.depth);
        twin.length("Sink, hollow, width", sink.hollow.width.value);
    }
    if let Some(strainer) = &sizes.strainer {
        twin.length("Strainer, width of a bar", strainer.width);
        twin.length("Strainer, depth of a bar", strainer.depth);
    }
    if let Some(walls) = &sizes.walls {
        twin.length("Wall, thickness", walls.thickness);
    }
    for (i, art) in sizes.art.iter().enumerate() {
        let name = numbered("Art", i, sizes.art.len());
        twin.length(format!("{name}, thickness"), art.thickness);
        let stated = &piece.job.art[i];
        if stated.show == Some(trade::Show::Float) {
            twin.length(format!("{name}, lift"), piece.lift(stated));
        }
    }
}
