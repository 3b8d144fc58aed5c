//! A quote as PDF.

use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{Ink, Look};
use paperwork::{Copy, Paper, PaperworkError, QuoteHead, QuotePiece, quote_of, quote_pdf};
use pricing::{Opened, Quote};
use serde_json::{Value, json};

use super::{json_body, unquoted};
use crate::api::description::question;
use crate::api::{Sent, choice, pdf as sheet};
use crate::clock;
use crate::desk::Desk;
use crate::piece::{Refusal, picture, undrawn};
use crate::problem::{Kind, Problem};

/// Whose copy, as an address writes it.
const COPIES: [&str; 2] = ["customer", "shop"];
/// Papers in the printer.
const PAPERS: [&str; 2] = ["a4", "letter"];

pub(super) fn described() -> Value {
    let words = "A quote as PDF, with the numbers it was given with.";
    let copy = question(
        "copy",
        "Whose copy; the shop's has cost, margin and minutes; left out: customer.",
        &COPIES,
    );
    let paper = question("paper", "The paper in the printer; left out: a4.", &PAPERS);
    let mut way = crate::api::description::post_json(words, &Quote::schema());
    way["parameters"] = json!([copy, paper]);
    way["responses"]["200"]["content"] =
        json!({ "application/pdf": { "schema": { "type": "string", "format": "binary" } } });
    json!({ "post": way })
}

pub(super) async fn pdf(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Response, Problem> {
    let copy = asked_copy(query.as_deref())?;
    let paper = asked_paper(query.as_deref())?;
    let body = json_body(&headers, body)?;
    let made = desk.work(move |desk| {
        let text = String::from_utf8_lossy(&body);
        let opened = Quote::open(&text).map_err(|fault| unquoted(&fault))?;
        printed(desk, opened, copy, paper)
    });
    Ok(sheet(made.await??, "quote.pdf"))
}

/// Whose copy an address asks for.
pub(crate) fn asked_copy(query: Option<&str>) -> Result<Copy, Problem> {
    Ok(match choice(query, "copy", &COPIES)? {
        Some("shop") => Copy::Shop,
        _ => Copy::Customer,
    })
}

/// The paper an address asks for.
pub(crate) fn asked_paper(query: Option<&str>) -> Result<Paper, Problem> {
    Ok(match choice(query, "paper", &PAPERS)? {
        Some("letter") => Paper::Letter,
        _ => Paper::A4,
    })
}

/// An opened quote on paper, drawn from what it holds.
///
/// Errors: materials or a piece this program can't work out or draw.
pub(crate) fn printed(
    desk: &Desk,
    opened: Opened,
    copy: Copy,
    paper: Paper,
) -> Result<Vec<u8>, Problem> {
    let Opened { quote, job, .. } = opened;
    let catalogue = quote.catalogue().map_err(|fault| unquoted(&fault))?;
    let sizes = sizing::derive(&job, &catalogue, &quote.settings()).map_err(Refusal::Piece)?;
    let look = Look::page(&picture, Ink::Colour);
    let elevation = drawing::elevation(&job, &sizes, &look).map_err(undrawn)?;
    let head = QuoteHead {
        shop: desk.options.shop.clone(),
        made: clock::now().0,
        copy,
        invoice: None,
    };
    let piece = QuotePiece {
        quote,
        job,
        sizes,
        elevation,
    };
    quote_of(piece, head)
        .and_then(|quote| quote_pdf(&quote, paper))
        .map_err(|error| match error {
            PaperworkError::NoQuoteNumber => Problem::plain(Kind::Document, error.to_string()),
            PaperworkError::NoWords { .. } | PaperworkError::Drawing { .. } => {
                Problem::plain(Kind::Drawing, error.to_string())
            }
            other => Problem::fault(&other),
        })
}
