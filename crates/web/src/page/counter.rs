//! The Counter: the shop's pieces on one wall, and where a new one begins.

use std::sync::Arc;

use axum::extract::State;
use axum::response::{IntoResponse, Response};
use demo::DemoJob;
use maud::{Markup, html};
use measure::Size;

use super::shell::{Page, Place};
use super::trouble::trouble;
use crate::desk::Desk;
use crate::piece::{Piece, stops};

/// Shows the wall.
pub(crate) async fn counter(State(desk): State<Arc<Desk>>) -> Response {
    let page = desk.work(|desk| {
        let hung: Vec<Hung> = demo::JOBS.iter().map(|job| Hung::of(desk, job)).collect();
        let body = html! {
            h1 { "The Counter" }
            @if desk.options.demo { (wall(&hung)) } @else { (bare_wall()) }
            (begin(&hung, desk.options.demo))
        };
        let shop = &desk.options.shop;
        Page {
            shop,
            title: "The Counter",
            place: Place::Counter,
            kind: "counter",
            customer: false,
            body,
        }
        .whole()
    });
    match page.await {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

/// A piece with what is written under it.
struct Hung {
    job: &'static DemoJob,
    size: Option<Size>,
    words: String,
    stops: usize,
}

impl Hung {
    fn of(desk: &Desk, job: &'static DemoJob) -> Self {
        match Piece::of(desk, job.toml.as_bytes()) {
            Ok(piece) => {
                let size = piece.sizes.outside.size();
                let unit = piece.sizes.unit();
                let words = format!("{} × {}", size.width.exact(unit), size.height.exact(unit));
                let size = piece.sizes.can_be_drawn().then_some(size);
                Self {
                    job,
                    size,
                    words,
                    stops: stops(&piece.sizes.faults),
                }
            }
            Err(refusal) => Self {
                job,
                size: None,
                words: "not worked out yet".to_owned(),
                stops: refusal.entries().len(),
            },
        }
    }
}

/// Every piece hangs at this scale, so that they compare.
const PIXELS_PER_MM: f64 = 0.3;

/// From the rail to the top of a piece.
const DROP: f64 = 38.0;

/// Room round a piece, for its shadow.
const ROOM: f64 = 8.0;

fn wall(hung: &[Hung]) -> Markup {
    html! {
        section.wall aria-labelledby="wall" {
            h2 #wall .quiet { "On the wall, all at one scale" }
            ul { @for piece in hung { li { (tile(piece)) } } }
        }
    }
}

fn tile(piece: &Hung) -> Markup {
    html! {
        a href={ "/piece/" (piece.job.name) } {
            @if let Some(size) = piece.size { (hanging(piece.job.name, size)) }
            span.title { (piece.job.title) }
            span.size { (piece.words) }
            @if piece.stops > 0 { span.stop { "Stop: " (piece.stops) " to mend" } }
        }
    }
}

/// The piece on its wire from the rail.
fn hanging(name: &str, size: Size) -> Markup {
    let (width, height) = (
        size.width.approx_mm() * PIXELS_PER_MM,
        size.height.approx_mm() * PIXELS_PER_MM,
    );
    let (across, down) = (width + 2.0 * ROOM, DROP + height + ROOM);
    let (middle, spread) = (across / 2.0, (width * 0.3).min(64.0));
    let wire = format!(
        "M{:.1} {DROP}L{middle:.1} 3L{:.1} {DROP}",
        middle - spread,
        middle + spread
    );
    html! {
        svg.hung width=(px(across)) height=(px(down)) viewBox={ "0 0 " (px(across)) " " (px(down)) } aria-hidden="true" {
            path.wire d=(wire) {}
            circle.nail cx=(px(middle)) cy="3" r="2.5" {}
            image x=(px(ROOM)) y=(px(DROP)) width=(px(width)) height=(px(height)) href={ "/piece/" (name) "/front.svg" } {}
        }
    }
}

fn px(value: f64) -> String {
    format!("{value:.1}")
}

fn bare_wall() -> Markup {
    html! { p.lead { "The wall is bare. Describe a piece below, or open one you took away before." } }
}

fn begin(hung: &[Hung], demo: bool) -> Markup {
    html! {
        div.begin {
            section aria-labelledby="new" {
                h2 #new { "Describe a new piece" }
                p { "Start from one that is like it, then change what differs." }
                ul.kinds { @for piece in hung { li { a href={ "/piece/" (piece.job.name) } { (piece.job.title) } } } }
            }
            section #open aria-labelledby="open-title" {
                h2 #open-title { "Open a piece you took away" }
                form method="post" action="/open" enctype="multipart/form-data" {
                    label for="file" { "Job document, TOML or JSON" }
                    input #file type="file" name="file" accept=".toml,.json,text/plain" required;
                    button.do type="submit" { "Open it" }
                }
                p { "Or " a href="/quote" { "open a quote you gave" } ", to see whether its numbers still come out the same." }
                p.beside {
                    "Nothing is kept here yet: there is no book. A piece lives in its job document, \
                     which you take away and open again."
                    @if demo { " The pieces on the wall are invented." }
                }
            }
        }
    }
}
