//! The cuts of a sheet, each from edge to edge.

use drawing::{CutSheet, CutStep, Off, Offcut, SheetWork};
use maud::{Markup, html};

use super::leaf::figure;

/// One row a cut; a sentence where there is none.
pub(super) fn steps(sheet: &CutSheet, work: &SheetWork) -> Markup {
    html! {
        @if !work.steps.is_empty() {
            table.steps role="table" {
                thead role="rowgroup" { tr role="row" {
                    @for word in ["Cut", "Of", "Set to", "Makes"] {
                        th role="columnheader" scope="col" { (word) }
                    }
                } }
                tbody role="rowgroup" { @for step in &work.steps { (row(sheet, step)) } }
            }
        }
        @if let Some(whole) = &work.whole { p { (uncut(sheet, whole)) } }
    }
}

fn row(sheet: &CutSheet, step: &CutStep) -> Markup {
    let trim = step.running.is_none();
    html! {
        tr role="row" {
            th.number role="rowheader" scope="row" { (step.number) }
            td role="cell" data-word="Of" {
                @match step.part.name.as_str() {
                    "the sheet" => { "the sheet" }
                    letter => { "part " b { (letter) } }
                }
                @if !step.part.made.is_empty() { span.beside { " " (step.part.made) } }
            }
            td role="cell" data-word="Set to" {
                (figure(&sheet.counting, &sheet.counting.shown(step.measure)))
                span.beside {
                    @if trim { " trim, " (step.edge.word()) " edge" }
                    @else { " from the " (step.edge.word()) ", " (step.way_word()) }
                }
            }
            td role="cell" data-word="Makes" { @for one in &step.off { p { (off(sheet, one)) } } }
        }
    }
}

/// What lies on one side of a cut.
fn off(sheet: &CutSheet, off: &Off) -> Markup {
    let size = figure(&sheet.counting, &sheet.shown(off));
    html! {
        span.beside { (off.side.word()) ": " }
        @match &off.what {
            Offcut::Piece(place) => {
                @let piece = &sheet.pieces[*place];
                b { (piece.name()) } " " (size)
                @if piece.turned { span.beside { ", turned" } }
                @if piece.no_turn { span.beside { ", keep upright" } }
                @if let Some(window) = &piece.window { span.beside { ", its window: " (window.label) } }
            }
            Offcut::Part(letter) => { "part " b { (letter) } }
            Offcut::Remnant(place) => {
                b { "Keep " (sheet.remnants[*place].label) } " " (size)
            }
            Offcut::Waste => { "waste" }
            Offcut::Trim => { "trim" }
        }
    }
}

/// What the trimmed sheet is that is not cut any further.
fn uncut(sheet: &CutSheet, whole: &Offcut) -> String {
    let what = match whole {
        Offcut::Piece(place) => sheet.pieces[*place].name(),
        Offcut::Remnant(place) => format!("kept as {}", sheet.remnants[*place].label),
        Offcut::Part(_) | Offcut::Waste | Offcut::Trim => "waste".to_owned(),
    };
    format!("No further cut: the sheet is {what}.")
}
