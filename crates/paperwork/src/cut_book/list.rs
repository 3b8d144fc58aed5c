//! The list of cuts: one row a cut, in the order a person makes them.

use drawing::{
    Counting, CutDrawing, CutSheet, CutStep, CutStick, Off, Offcut, SheetWork, Shown, StickOff,
    StickStep, StickWork,
};
use serde_json::{Value, json};

use super::data::MIDDLING;
use crate::legible::Legible;

/// One cut of a sheet.
pub(super) fn sheet_step(
    sheet: &CutSheet,
    step: &CutStep,
    drawn: &CutDrawing,
    text: &mut Legible,
) -> Value {
    let counting = &sheet.counting;
    let trim = step.running.is_none();
    let edge = step.edge.word();
    let area = step.part.area;
    let how = if trim {
        format!("trim {edge} edge")
    } else {
        format!("{}, from {edge}", step.way_word())
    };
    let running = step
        .running
        .filter(|running| *running != step.measure)
        .map(|running| {
            let shown = counting.with_unit(&counting.shown(running).drawn());
            format!("running {shown}")
        });
    let off: Vec<Value> = step
        .off
        .iter()
        .map(|off| sheet_off(sheet, off, drawn, text))
        .collect();
    json!({
        "number": step.number,
        "part": step.part.name,
        "made": step.part.made,
        "part_size": size(counting, (area.width, area.height), text),
        "how": how,
        "measure": setting(counting.shown(step.measure), text),
        "running": running.map(|running| text.line(&running, MIDDLING)),
        "off": off,
    })
}

fn sheet_off(sheet: &CutSheet, off: &Off, drawn: &CutDrawing, text: &mut Legible) -> Value {
    let tag = match &off.what {
        Offcut::Piece(k) => tag(&drawn.piece_tags, *k),
        Offcut::Remnant(k) => tag(&drawn.remnant_tags, *k),
        Offcut::Part(_) | Offcut::Waste | Offcut::Trim => "",
    };
    let (kind, name, remarks) = match &off.what {
        Offcut::Piece(k) => {
            let piece = &sheet.pieces[*k];
            let mut remarks = Vec::new();
            if piece.turned {
                remarks.push("turned".to_owned());
            }
            if piece.no_turn {
                remarks.push("keep upright".to_owned());
            }
            if let Some(window) = &piece.window {
                remarks.push(format!("its window: {}", window.label));
            }
            ("piece", piece.name(), remarks)
        }
        Offcut::Part(name) => ("part", format!("part {name}"), Vec::new()),
        Offcut::Remnant(k) => {
            let name = format!("Keep: {}", sheet.remnants[*k].label);
            ("keep", name, Vec::new())
        }
        Offcut::Waste => ("waste", "waste".to_owned(), Vec::new()),
        Offcut::Trim => ("waste", "trim".to_owned(), Vec::new()),
    };
    let shown = sheet.shown(off);
    json!({
        "side": off.side.word(),
        "kind": kind,
        "tag": tag,
        "name": text.line(&name, MIDDLING),
        "size": text.size(&sheet.counting.with_unit(&shown.text)),
        "beside": shown.beside.map(|beside| text.size(&beside)),
        "remarks": text.line(&remarks.join(", "), MIDDLING),
    })
}

/// One cut of a stick.
pub(super) fn stick_step(
    stick: &CutStick,
    step: &StickStep,
    drawn: &CutDrawing,
    text: &mut Legible,
) -> Value {
    let counting = &stick.counting;
    let tag = match step.off {
        StickOff::Piece(k) => tag(&drawn.piece_tags, k),
        StickOff::Remnant(k) => tag(&drawn.remnant_tags, k),
        StickOff::Waste | StickOff::Trim => "",
    };
    let (kind, name, remark) = match step.off {
        StickOff::Piece(k) => {
            let piece = &stick.pieces[k];
            let remark = if piece.mitre.is_some() {
                "mitred: the long edge"
            } else {
                "square ends"
            };
            ("piece", piece.name(), remark)
        }
        StickOff::Remnant(k) => ("keep", format!("Keep: {}", stick.remnants[k].label), ""),
        StickOff::Waste => ("waste", "waste".to_owned(), ""),
        StickOff::Trim => ("waste", "trim, kerf included".to_owned(), ""),
    };
    json!({
        "number": step.number,
        "running": setting(counting.shown(step.running), text),
        "length": setting(stick.shown(step.off, step.length), text),
        "kind": kind,
        "tag": tag,
        "name": text.line(&name, MIDDLING),
        "remarks": remark,
    })
}

/// What a sheet is that needs no cut.
pub(super) fn whole_sheet(
    sheet: &CutSheet,
    work: &SheetWork,
    text: &mut Legible,
) -> Option<String> {
    let what = match work.whole.as_ref()? {
        Offcut::Piece(k) => sheet.pieces[*k].name(),
        Offcut::Remnant(k) => format!("Keep: {}", sheet.remnants[*k].label),
        Offcut::Part(_) | Offcut::Waste | Offcut::Trim => "waste".to_owned(),
    };
    Some(text.line(&format!("No further cut: the sheet is {what}."), MIDDLING))
}

/// What is left at the end of a stick without a cut of its own.
pub(super) fn stick_end(
    stick: &CutStick,
    work: &StickWork,
    drawn: &CutDrawing,
    text: &mut Legible,
) -> Option<Value> {
    let rest = work.rest?;
    let (kind, name, tag) = match rest.off {
        StickOff::Piece(k) => ("piece", stick.pieces[k].name(), tag(&drawn.piece_tags, k)),
        StickOff::Remnant(k) => {
            let name = format!("Keep: {}", stick.remnants[k].label);
            ("keep", name, tag(&drawn.remnant_tags, k))
        }
        StickOff::Waste | StickOff::Trim => return None,
    };
    Some(json!({
        "number": null,
        "running": null,
        "length": setting(stick.shown(rest.off, rest.length), text),
        "kind": kind,
        "tag": tag,
        "name": text.line(&name, MIDDLING),
        "remarks": "what is left",
    }))
}

/// The tag a part carries on the drawing, where it is too small for its name.
fn tag(tags: &[Option<String>], index: usize) -> &str {
    tags.get(index)
        .and_then(Option::as_deref)
        .unwrap_or_default()
}

fn size(counting: &Counting, size: (u64, u64), text: &mut Legible) -> String {
    text.size(&counting.with_unit(&counting.shown_size(size).drawn()))
}

/// A number as the tape shows it, and beside it what that hides.
fn setting(shown: Shown, text: &mut Legible) -> Value {
    json!({
        "text": text.size(&shown.text),
        "beside": shown.beside.map(|beside| text.size(&beside)),
    })
}
