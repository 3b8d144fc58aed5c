//! The caption under a drawing: what it is, its scale, and what must be known about it.

use crate::input::Sheet;
use crate::scene::{Anchor, Face, Node, at, text};
use crate::sheet::{LEADING, text_width, wrapped};

/// Lines a note may take on the sheet; the twin holds it whole.
const NOTE_LINES: usize = 5;

/// Sets the caption from `top` downwards; returns it and where it ends.
pub(crate) fn caption(sheet: Sheet, top: f64, first: &str, remarks: &[String]) -> (Vec<Node>, f64) {
    let width = sheet.width() - 2.0 * sheet.margin();
    let mut said = vec![first.to_owned()];
    for remark in remarks {
        let last = said
            .last_mut()
            .filter(|_| matches!(sheet, Sheet::Ticket | Sheet::Bench));
        let joined = last.as_ref().map(|last| format!("{last} · {remark}"));
        match (last, joined.filter(|joined| text_width(joined) <= width)) {
            (Some(last), Some(joined)) => *last = joined,
            _ => said.push(remark.clone()),
        }
    }
    let lines = said
        .iter()
        .flat_map(|line| wrapped(line, width, NOTE_LINES));
    let mut y = top;
    let mut nodes = Vec::new();
    for line in lines {
        y += LEADING;
        nodes.push(text(
            at(sheet.margin(), y),
            line,
            Anchor::Start,
            Face::Quiet,
        ));
    }
    (nodes, y + sheet.margin().max(2.0))
}
