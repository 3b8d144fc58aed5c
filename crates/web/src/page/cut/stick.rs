//! The cuts of a stick, from its reference end.

use drawing::{CutStick, StickOff, StickWork};
use maud::{Markup, html};

use super::leaf::figure;

/// One row a cut, the last row what is left without one.
pub(super) fn steps(stick: &CutStick, work: &StickWork) -> Markup {
    let counting = &stick.counting;
    html! {
        table.steps role="table" {
            thead role="rowgroup" { tr role="row" {
                @for word in ["Cut", "From the reference end", "Long", "Comes off"] {
                    th role="columnheader" scope="col" { (word) }
                }
            } }
            tbody role="rowgroup" {
                @for step in &work.steps {
                    tr role="row" {
                        th.number role="rowheader" scope="row" { (step.number) }
                        td role="cell" data-word="From the reference end" {
                            @if step.off != StickOff::Trim { (figure(counting, &counting.shown(step.running))) }
                        }
                        td role="cell" data-word="Long" { (figure(counting, &stick.shown(step.off, step.length))) }
                        td role="cell" data-word="Comes off" { (off(stick, step.off)) }
                    }
                }
                @if let Some(rest) = work.rest {
                    tr.rest role="row" {
                        th.number role="rowheader" scope="row" { "Rest" }
                        td role="cell" data-word="From the reference end" {}
                        td role="cell" data-word="Long" { (figure(counting, &stick.shown(rest.off, rest.length))) }
                        td role="cell" data-word="Is left" { (off(stick, rest.off)) }
                    }
                }
            }
        }
    }
}

fn off(stick: &CutStick, off: StickOff) -> Markup {
    html! {
        @match off {
            StickOff::Piece(piece) => {
                b { (stick.pieces[piece].name()) }
                @if stick.pieces[piece].mitre.is_some() { span.beside { " mitred, the long edge" } }
            }
            StickOff::Remnant(kept) => { b { "Keep " (stick.remnants[kept].label) } }
            StickOff::Waste => { "waste" }
            StickOff::Trim => { "trim, the cut included" }
        }
    }
}
