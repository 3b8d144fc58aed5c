//! What follows from the piece: cautions, sizes, settings, steps, papers.

use maud::{Markup, html};

use super::bench::{checklist, machine};
use super::care::PieceCare;
use super::figure::Print;
use super::price::PiecePrice;
use super::sizes::sizes;
use super::why::Why;
use crate::piece::Piece;

/// Cautions with their cures, price, sizes, weight and hanging, light and air.
pub(super) fn follows(piece: &Piece, care: &PieceCare, price: &PiecePrice, name: &str) -> Markup {
    let all = &piece.sizes;
    let why = Why {
        working: &all.working,
        unit: all.unit(),
        name: "",
        shown: 0,
    };
    let print = Print { tape: all.tape() };
    html! {
        div #follows .follows data-swap {
            (care.cautions(piece, name))
            (price.for_the_shop(piece))
            (sizes(all, print, why))
            (care.weight(piece))
            (care.place(piece))
        }
    }
}

/// What the bench sets and does, and why every number is what it is.
pub(super) fn bench(piece: &Piece, care: &PieceCare, price: &PiecePrice) -> Markup {
    let all = &piece.sizes;
    let why = Why {
        working: &all.working,
        unit: all.unit(),
        name: "",
        shown: 0,
    };
    html! {
        div #bench .bench data-swap {
            (machine(all, Print { tape: all.tape() }))
            (checklist(&piece.job, all))
            (why.all())
            (care.working(piece))
            (price.working(piece))
        }
    }
}

/// What can be taken away; the buttons send the document as it stands in the editor.
pub(super) fn papers(name: &str) -> Markup {
    let sheets = [
        ("ticket.pdf?paper=a4", "Ticket on A4"),
        ("ticket.pdf?paper=letter", "Ticket on Letter"),
    ];
    let drawings = [
        ("elevation", "Elevation"),
        ("section", "Section"),
        ("back", "Back view"),
    ];
    let button = |end: &str, word: &str| {
        html! {
            button type="submit" form="piece" formaction={ "/piece/" (name) "/" (end) } { (word) }
        }
    };
    html! {
        section.papers aria-labelledby="papers" {
            h2 #papers { "Take away" }
            p.buttons { @for (end, word) in sheets { (button(end, word)) } }
            p.buttons { @for (end, word) in drawings { (button(end, &format!("{word}, SVG"))) } }
            p.buttons { (button("job.toml", "Job document, TOML")) }
            p.beside { "Nothing is kept here yet: there is no book. Take the document away, and open it again on the Counter." }
        }
    }
}

/// What the customer reads beside the drawing.
pub(super) fn for_the_customer(piece: &Piece, price: &PiecePrice) -> Markup {
    let sizes = &piece.sizes;
    let print = Print { tape: sizes.tape() };
    let titles = |materials: Vec<String>| materials.join(", ");
    let frames = sizes.members.iter().map(|member| {
        member.material.as_ref().map_or_else(
            || member.name.clone(),
            |material| material.title().to_owned(),
        )
    });
    let mats = sizes
        .mats
        .iter()
        .filter_map(|mat| mat.sheet.material.as_ref())
        .map(|material| material.title().to_owned());
    let glazing = sizes
        .glazing
        .iter()
        .filter_map(|pane| pane.sheet.material.as_ref())
        .map(|material| material.title().to_owned());
    let lines = [
        ("Frame", titles(frames.collect())),
        ("Mat", titles(mats.collect())),
        ("Glazing", titles(glazing.collect())),
    ];
    html! {
        div #follows .follows data-swap {
            section.told aria-labelledby="told" {
                h2 #told { "Your piece" }
                dl {
                    dt { "Outside, width × height" } dd.large { (print.size(sizes.outside.size(), measure::Toward::Nearest)) }
                    @for (word, text) in lines { @if !text.is_empty() { dt { (word) } dd { (text) } } }
                }
            }
            (price.for_the_customer())
        }
    }
}
