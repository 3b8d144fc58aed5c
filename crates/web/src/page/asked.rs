//! What a piece's buttons fetch: its ticket, its drawings, its document; and opening one.

use std::sync::Arc;

use axum::extract::multipart::MultipartRejection;
use axum::extract::{Multipart, Path, RawQuery, State};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use drawing::Ink;
use paperwork::Paper;

use super::piece::{Asked, OPENED, Posted, Sent, posted, shown};
use super::price::Wish;
use super::trouble::trouble;
use crate::api::{choice, pdf, too_long};
use crate::desk::Desk;
use crate::piece::{Piece, View, undrawn};
use crate::problem::{Kind, Problem};

/// The ticket of the document as it stands in the editor.
pub(crate) async fn ticket(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    sent: Sent,
) -> Response {
    let made = async {
        let paper = match choice(query.as_deref(), "paper", &["a4", "letter"])? {
            Some("letter") => Paper::Letter,
            _ => Paper::A4,
        };
        let document = posted(sent)?.job;
        desk.work(move |desk| Piece::of(desk, document.as_bytes())?.ticket(desk, paper))
            .await?
    };
    match made.await {
        Ok(bytes) => pdf(bytes, "ticket.pdf"),
        Err(problem) => trouble(&problem),
    }
}

/// A drawing of the document as it stands in the editor, as a file.
pub(crate) async fn drawing(
    State(desk): State<Arc<Desk>>,
    Path((_, view)): Path<(String, String)>,
    sent: Sent,
) -> Response {
    let made = async {
        let name = match View::named(&view) {
            Some(View::Elevation) => "elevation.svg",
            Some(View::Section) => "section.svg",
            Some(View::Back) => "back-view.svg",
            None => {
                return Err(Problem::plain(
                    Kind::Address,
                    "The drawings are elevation, section and back.",
                ));
            }
        };
        let document = posted(sent)?.job;
        let drawn = desk.work(move |desk| {
            let view = View::named(&view).unwrap_or(View::Elevation);
            Piece::of(desk, document.as_bytes())?
                .drawing(view, Ink::Colour)
                .map_err(undrawn)
        });
        Ok((name, drawn.await??.svg))
    };
    match made.await {
        Ok((name, svg)) => file("image/svg+xml", name, svg),
        Err(problem) => trouble(&problem),
    }
}

/// The document as it stands in the editor, readable or not: typing is never lost.
pub(crate) async fn document(sent: Sent) -> Response {
    match posted(sent) {
        Ok(posted) => file("application/toml", "job.toml", posted.job),
        Err(problem) => trouble(&problem),
    }
}

/// Opens a document that was kept on the visitor's side.
pub(crate) async fn open(
    State(desk): State<Arc<Desk>>,
    sent: Result<Multipart, MultipartRejection>,
) -> Response {
    let job = match opened(sent).await {
        Ok(job) => job,
        Err(problem) => return trouble(&problem),
    };
    let asked = Asked {
        name: OPENED.to_owned(),
        customer: false,
        sent: true,
        part: false,
        told: None,
    };
    let posted = Posted {
        good: job.clone(),
        job,
        wish: Wish::default(),
    };
    shown(&desk, asked, posted).await
}

/// The text of the first file in the form; what is not text is shown as far as it can be.
async fn opened(sent: Result<Multipart, MultipartRejection>) -> Result<String, Problem> {
    let none = || {
        Problem::plain(
            Kind::Input,
            "Choose a job document on the Counter, then open it.",
        )
    };
    let mut form = sent.map_err(|_| none())?;
    let field = form
        .next_field()
        .await
        .map_err(|error| unread(&error))?
        .ok_or_else(none)?;
    let bytes = field.bytes().await.map_err(|error| unread(&error))?;
    if bytes.is_empty() {
        return Err(none());
    }
    let text = String::from_utf8_lossy(&bytes);
    Ok(text.trim_start_matches('\u{feff}').replace("\r\n", "\n"))
}

fn unread(error: &axum::extract::multipart::MultipartError) -> Problem {
    if error.status() == StatusCode::PAYLOAD_TOO_LARGE {
        return too_long(error);
    }
    Problem::plain(Kind::Input, "The file did not arrive whole; open it again.")
}

fn file(mime: &'static str, name: &'static str, text: String) -> Response {
    let headers = [
        (header::CONTENT_TYPE, mime.to_owned()),
        (
            header::CONTENT_DISPOSITION,
            format!("attachment; filename=\"{name}\""),
        ),
    ];
    (headers, text).into_response()
}
