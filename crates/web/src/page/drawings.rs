//! The sheet: elevation above, section below it at the same edge, back view beneath, each with its words.

use drawing::{Drawing, Ink};
use maud::{Markup, PreEscaped, html};

use crate::piece::Piece;

/// The sheet, or the sentence that says why there is none.
///
/// `caption` stands over drawings of an earlier state of the piece.
pub(super) fn sheet(piece: Option<&Piece>, customer: bool, caption: Option<&str>) -> Markup {
    let drawn = piece.map(|piece| piece.drawn(Ink::Colour));
    html! {
        div #sheet .sheet data-swap {
            @if let Some(caption) = caption { p.stale { (caption) } }
            @match drawn {
                Some(Ok(drawn)) => {
                    (figure(if customer { "From the front" } else { "Elevation" }, &drawn.elevation))
                    @if !customer {
                        (figure("Section", &drawn.section))
                        (figure("Back view", &drawn.back))
                    }
                }
                Some(Err(error)) => { p.undrawn { (error) } }
                None => { p.undrawn { "There is no drawing yet: nothing readable came with the document." } }
            }
        }
    }
}

fn figure(name: &str, drawing: &Drawing) -> Markup {
    html! {
        figure {
            h2 { (name) }
            (PreEscaped(&drawing.svg))
            figcaption {
                details {
                    summary { (name) ", in words" }
                    dl.twin { @for line in &drawing.twin { dt { (line.what) } dd { (line.value) } } }
                }
            }
        }
    }
}
