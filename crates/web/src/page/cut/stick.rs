//! The cuts of a stick, from its reference end.

use drawing::{CutStick, StickOff, StickWork};
use maud::{Markup, html};

use super::leaf::set;

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
                            @if step.off != StickOff::Trim { (set(counting, step.running)) }
                        }
                        td role="cell" data-word="Long" { (set(counting, step.length)) }
                        td role="cell" data-word="Comes off" { (off(stick, step.off)) }
                    }
                }
                @if let Some((length, what)) = rest(stick, work) {
                    tr.rest role="row" {
                        th.number role="rowheader" scope="row" { "Rest" }
                        td role="cell" data-word="From the reference end" {}
                        td role="cell" data-word="Long" { (set(counting, length)) }
                        td role="cell" data-word="Is left" { (off(stick, what)) }
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

/// What is left at the end without a cut of its own.
fn rest(stick: &CutStick, work: &StickWork) -> Option<(u64, StickOff)> {
    let is_cut = |off| work.steps.iter().any(|step| step.off == off);
    let pieces = stick.pieces.iter().enumerate();
    let pieces = pieces.map(|(place, piece)| (piece.length, StickOff::Piece(place)));
    let kept = stick.remnants.iter().enumerate();
    let kept = kept.map(|(place, kept)| {
        let (from, to) = kept.place;
        (to - from, StickOff::Remnant(place))
    });
    pieces.chain(kept).find(|(_, off)| !is_cut(*off))
}
