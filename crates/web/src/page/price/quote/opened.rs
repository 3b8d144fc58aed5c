//! A quote file, opened: its own numbers, and whether they still come out the same.

use std::sync::Arc;

use axum::extract::multipart::{MultipartError, MultipartRejection};
use axum::extract::{Multipart, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use pricing::{Quote, Verdict};

use super::super::super::shell::{Page, Place};
use super::super::super::trouble::trouble;
use super::shown;
use crate::api::{too_long, unquoted};
use crate::desk::Desk;
use crate::problem::{Kind, Problem};

/// Asks for a quote file.
pub(crate) async fn quote_way_in(State(desk): State<Arc<Desk>>) -> Markup {
    asking(&desk, "", None)
}

/// Opens the file, or the text pasted.
pub(crate) async fn quote_opened(
    State(desk): State<Arc<Desk>>,
    sent: Result<Multipart, MultipartRejection>,
) -> Response {
    let text = match typed(sent).await {
        Ok(text) => text,
        Err(problem) => return trouble(&problem),
    };
    let answer = desk.work(move |desk| {
        if text.trim().is_empty() {
            let detail = "Choose a quote file, or paste what stands in one.";
            let problem = Problem::plain(Kind::Input, detail);
            return (problem.kind.status(), asking(desk, "", Some(&problem)));
        }
        match Quote::open(&text) {
            Ok(opened) => {
                let (quote, verdict) = (&opened.quote, told(&opened.verdict));
                let again = html! { p { a href="/quote" { "Open another quote" } } };
                (StatusCode::OK, shown::page(desk, quote, &verdict, &again))
            }
            Err(fault) => {
                let problem = unquoted(&fault);
                (problem.kind.status(), asking(desk, &text, Some(&problem)))
            }
        }
    });
    match answer.await {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

fn asking(desk: &Desk, text: &str, problem: Option<&Problem>) -> Markup {
    let title = match problem {
        Some(_) => "Error: Open a quote",
        None => "Open a quote",
    };
    let body = html! {
        @if let Some(problem) = problem {
            div #summary .summary tabindex="-1" autofocus role="alert" aria-labelledby="summary-title" {
                h2 #summary-title { "This can't be opened yet" }
                ul { li { a href="#pasted" { (problem.detail) } } }
            }
        }
        h1 { "Open a quote" }
        p.lead { "It is shown with the numbers it was given with, and priced again from what it holds to see whether they still come out the same." }
        section.question aria-labelledby="ask" {
            h2 #ask { "The quote" }
            form method="post" action="/quote" enctype="multipart/form-data" {
                p { label for="file" { "Quote file, JSON" } " "
                    input #file type="file" name="file" accept=".json,application/json"; }
                p { label for="pasted" { "Or what stands in it" } }
                textarea #pasted name="pasted" rows="8" spellcheck="false" autocapitalize="off" autocomplete="off"
                    aria-invalid=[problem.map(|_| "true")] { "\n" (text) }
                p.buttons { button.do type="submit" { "Open the quote" } }
            }
        }
    };
    Page {
        shop: &desk.options.shop,
        title,
        place: Place::Elsewhere,
        kind: "care",
        customer: false,
        body,
    }
    .whole()
}

fn told(verdict: &Verdict) -> Markup {
    html! {
        section.verdict aria-labelledby="verdict" {
            @match verdict {
                Verdict::Same => {
                    h2 #verdict { "The same today" }
                    p { "Every number comes out as printed." }
                }
                Verdict::Different(found) => {
                    h2 #verdict { "Different today" }
                    p { "The quote's own numbers stand; this program reckons otherwise." }
                    dl { @for one in found {
                        dt { (one.of) }
                        dd { "printed " (one.printed) "; today " (one.today) }
                    } }
                }
                Verdict::Unknown(why) => {
                    h2 #verdict { "Can't be priced again" }
                    p { "The quote's own numbers stand." }
                    ul { @for reason in why { li { (reason) } } }
                }
            }
        }
    }
}

/// The file's text, else what was pasted.
async fn typed(sent: Result<Multipart, MultipartRejection>) -> Result<String, Problem> {
    let mut form = sent.map_err(|_| {
        let detail = "Choose a quote file, or paste what stands in one, then open it.";
        Problem::plain(Kind::Input, detail)
    })?;
    let mut pasted = String::new();
    while let Some(part) = form.next_field().await.map_err(|error| unread(&error))? {
        let is_file = part.name() == Some("file");
        let bytes = part.bytes().await.map_err(|error| unread(&error))?;
        let text = String::from_utf8_lossy(&bytes);
        let text = text.trim_start_matches('\u{feff}').to_owned();
        if is_file && !text.trim().is_empty() {
            return Ok(text);
        }
        if !is_file {
            pasted = text;
        }
    }
    Ok(pasted)
}

fn unread(error: &MultipartError) -> Problem {
    if error.status() == StatusCode::PAYLOAD_TOO_LARGE {
        return too_long(error);
    }
    Problem::plain(Kind::Input, "The file did not arrive whole; open it again.")
}
