//! Papers that go with a piece: the care card.

use std::sync::Arc;

use axum::Router;
use axum::extract::{RawQuery, State};
use axum::http::HeaderMap;
use axum::response::Response;
use axum::routing::post;
use paperwork::{CardHead, LeafSize, Paper, PaperworkError, card_of, leaf_pdf};
use serde_json::{Value, json};

use super::description::{post as described_post, question};
use super::{Sent, choice, document, pdf};
use crate::clock;
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Kind, Problem};

/// Sizes of a card, as an address writes them.
const SIZES: [&str; 4] = ["a6", "4x6", "a5", "half-letter"];
/// Papers in the printer.
const PAPERS: [&str; 2] = ["a4", "letter"];

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new().route("/api/v1/papers/card", post(card))
}

/// The ways in, for the description.
pub(super) fn described() -> Vec<(&'static str, Value)> {
    let size = question("size", "Size of the card; left out: a6.", &SIZES);
    let paper = question(
        "paper",
        "The paper in the printer, the card on it with a line to cut along; left out: the card alone.",
        &PAPERS,
    );
    let answer =
        json!({ "application/pdf": { "schema": { "type": "string", "format": "binary" } } });
    let words = "The customer's care card of the piece.";
    let ways = json!({ "post": described_post(words, &[size, paper], &answer) });
    vec![("/api/v1/papers/card", ways)]
}

async fn card(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Response, Problem> {
    let size = match choice(query.as_deref(), "size", &SIZES)? {
        Some("4x6") => LeafSize::FourBySix,
        Some("a5") => LeafSize::A5,
        Some("half-letter") => LeafSize::HalfLetter,
        _ => LeafSize::A6,
    };
    let paper = choice(query.as_deref(), "paper", &PAPERS)?;
    let on = paper.map(|paper| match paper {
        "letter" => Paper::Letter,
        _ => Paper::A4,
    });
    let document = document(&headers, body)?;
    let bytes = desk
        .work(move |desk| made(desk, &document, size, on))
        .await??;
    Ok(pdf(bytes, "care-card.pdf"))
}

fn made(
    desk: &Desk,
    document: &[u8],
    size: LeafSize,
    on: Option<Paper>,
) -> Result<Vec<u8>, Problem> {
    let piece = Piece::of(desk, document)?;
    let (made, date) = clock::now();
    let head = CardHead {
        shop: desk.options.shop.clone(),
        made,
        date,
        fallback_order: "none".to_owned(),
    };
    card_of(&piece.job, &piece.sizes, &desk.options.catalogue, head)
        .and_then(|card| leaf_pdf(&card, size, on))
        .map_err(|error| match error {
            PaperworkError::Figures(_) => Problem::plain(Kind::Piece, error.to_string()),
            other => Problem::fault(&other),
        })
}
