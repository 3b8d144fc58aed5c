//! The API: the same derivation, drawings and ticket for other programs.

mod care;
mod cuts;
mod description;
mod papers;
mod price;

use std::sync::Arc;

use axum::Json;
use axum::Router;
use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Path, RawQuery, State};
use axum::http::{HeaderMap, header};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use drawing::Ink;
use paperwork::Paper;
use serde_json::{Value, json};
use trade::settings::KEYS;
use trade::{Job, Units};

use crate::desk::Desk;
use crate::piece::{Piece, View, undrawn};
use crate::problem::{Kind, Problem};
use crate::wire;

/// Every address of the API with its method, as the description at `/api/v1/openapi.json` lists them.
pub const API: &[(&str, &str)] = &[
    ("post", "/api/v1/derive"),
    ("post", "/api/v1/drawings/{view}"),
    ("post", "/api/v1/ticket"),
    ("post", "/api/v1/papers/card"),
    ("post", "/api/v1/cuts"),
    ("post", "/api/v1/cuts/jobs"),
    ("post", "/api/v1/advice"),
    ("post", "/api/v1/advice/cure"),
    ("post", "/api/v1/weight"),
    ("post", "/api/v1/place"),
    ("post", "/api/v1/price"),
    ("post", "/api/v1/alternatives"),
    ("post", "/api/v1/budget"),
    ("post", "/api/v1/quotes"),
    ("post", "/api/v1/quotes/open"),
    ("post", "/api/v1/quotes/pdf"),
    ("post", "/api/v1/prices/check"),
    ("post", "/api/v1/prices/lists"),
    ("get", "/api/v1/light/fade"),
    ("get", "/api/v1/light/budget"),
    ("get", "/api/v1/air/wood"),
    ("get", "/api/v1/air/sheet"),
    ("get", "/api/v1/air/dew"),
    ("get", "/api/v1/air/wall"),
    ("get", "/api/v1/air/pack"),
    ("get", "/api/v1/hang/wire"),
    ("get", "/api/v1/hang/screw"),
    ("get", "/api/v1/hang/rail"),
    ("get", "/api/v1/hang/hardware"),
    ("get", "/api/v1/hang/lift"),
    ("get", "/api/v1/schema"),
    ("get", "/api/v1/settings"),
    ("get", "/api/v1/materials"),
    ("get", "/api/v1/openapi.json"),
];

/// Document kinds that are read.
const READ: [&str; 4] = [
    "application/toml",
    "application/json",
    "text/plain",
    "text/x-toml",
];

pub(crate) use care::{Pairs, Questioned};
pub(crate) use price::{asked_copy, asked_paper, printed, refuse, unquoted};

pub(crate) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/api/v1/derive", post(derive))
        .route("/api/v1/drawings/{view}", post(drawing))
        .route("/api/v1/ticket", post(ticket))
        .route("/api/v1/cuts", post(cuts::cuts))
        .route("/api/v1/cuts/jobs", post(cuts::jobs))
        .route("/api/v1/schema", get(schema))
        .route("/api/v1/settings", get(settings))
        .route("/api/v1/materials", get(materials))
        .route("/api/v1/openapi.json", get(description::description))
        .merge(care::routes())
        .merge(price::routes())
        .merge(papers::routes())
}

type Sent = Result<Bytes, BytesRejection>;

async fn derive(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Json<Value>, Problem> {
    let why = choice(query.as_deref(), "include", &["working"])?;
    let document = document(&headers, body)?;
    let sizes = desk
        .work(move |desk| Piece::of(desk, &document).map(|piece| told(&piece, why.is_some())))
        .await??;
    Ok(Json(sizes))
}

/// All sizes of a piece, with its checklist, and the working where it is asked for.
fn told(piece: &Piece, why: bool) -> Value {
    let sizes = &piece.sizes;
    let mut value = wire::sizes(sizes);
    if why {
        value["working"] = wire::working(&sizes.working, sizes.unit()).into();
    }
    value
}

async fn drawing(
    State(desk): State<Arc<Desk>>,
    Path(view): Path<String>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Response, Problem> {
    let view = View::named(&view).ok_or_else(|| {
        Problem::plain(
            Kind::Address,
            "The drawings are elevation, section and back.",
        )
    })?;
    let ink = match choice(query.as_deref(), "ink", &["colour", "one"])? {
        Some("one") => Ink::OneInk,
        _ => Ink::Colour,
    };
    let document = document(&headers, body)?;
    let drawn = desk.work(move |desk| {
        let piece = Piece::of(desk, &document)?;
        piece.drawing(view, ink).map_err(undrawn)
    });
    Ok(svg(drawn.await??.svg))
}

async fn ticket(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Response, Problem> {
    let paper = match choice(query.as_deref(), "paper", &["a4", "letter"])? {
        Some("letter") => Paper::Letter,
        _ => Paper::A4,
    };
    let document = document(&headers, body)?;
    let bytes = desk
        .work(move |desk| Piece::of(desk, &document)?.ticket(desk, paper))
        .await??;
    Ok(pdf(bytes, "ticket.pdf"))
}

async fn schema() -> Json<Value> {
    Json(Job::schema())
}

async fn settings(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
) -> Result<Json<Value>, Problem> {
    let units = match choice(query.as_deref(), "units", &["in", "mm"])? {
        Some("mm") => Units::Millimetres,
        _ => Units::Inches,
    };
    let habits = desk.options.habits.of(units);
    let all: Vec<Value> = KEYS
        .iter()
        .map(|key| wire::setting(*key, habits, units))
        .collect();
    Ok(Json(json!({ "settings": all })))
}

async fn materials(State(desk): State<Arc<Desk>>) -> Json<Value> {
    let all: Vec<Value> = desk.options.catalogue.iter().map(wire::material).collect();
    Json(json!({ "materials": all }))
}

/// A drawing as a file of its own.
pub(crate) fn svg(text: String) -> Response {
    ([(header::CONTENT_TYPE, "image/svg+xml")], text).into_response()
}

/// A sheet to print; `name` is ours, never the visitor's.
pub(crate) fn pdf(bytes: Vec<u8>, name: &'static str) -> Response {
    let headers = [
        (header::CONTENT_TYPE, "application/pdf".to_owned()),
        (
            header::CONTENT_DISPOSITION,
            format!("inline; filename=\"{name}\""),
        ),
    ];
    (headers, bytes).into_response()
}

/// The document of a request, once its kind is known to be one that is read.
fn document(headers: &HeaderMap, body: Sent) -> Result<Bytes, Problem> {
    let kind = kind_of(headers);
    if !READ.contains(&kind.as_str()) {
        let detail = format!("Send the job document as one of: {}.", READ.join(", "));
        return Err(Problem::plain(Kind::Media, detail));
    }
    let body = body.map_err(|error| too_long(&error))?;
    let opens_as_json = body.trim_ascii_start().starts_with(b"{");
    if opens_as_json == (kind == "application/json") {
        return Ok(body);
    }
    let detail = format!(
        "The body is said to be {kind} and does not look so; send TOML as application/toml, JSON as application/json."
    );
    Err(Problem::plain(Kind::Media, detail))
}

/// The kind of document a request says it carries.
fn kind_of(headers: &HeaderMap) -> String {
    let kind = headers
        .get(header::CONTENT_TYPE)
        .and_then(|kind| kind.to_str().ok())
        .unwrap_or_default();
    let kind = kind.split(';').next().unwrap_or_default();
    kind.trim().to_ascii_lowercase()
}

/// A body that did not arrive whole.
pub(crate) fn too_long(error: &impl std::fmt::Display) -> Problem {
    tracing::info!(%error, "a body was not read");
    Problem::plain(
        Kind::Size,
        "A document is at most 1 MiB long; is it the right file?",
    )
}

/// The value of a question in an address, when it is one of those that can be answered.
pub(crate) fn choice(
    query: Option<&str>,
    name: &str,
    known: &'static [&'static str],
) -> Result<Option<&'static str>, Problem> {
    let mut pairs = query
        .unwrap_or_default()
        .split('&')
        .filter_map(|pair| pair.split_once('='));
    let Some((_, asked)) = pairs.find(|(asked, _)| *asked == name) else {
        return Ok(None);
    };
    let answer = known.iter().find(|known| **known == asked).copied();
    answer.map(Some).ok_or_else(|| {
        Problem::plain(
            Kind::Input,
            format!("The question {name} takes one of: {}.", known.join(", ")),
        )
    })
}
