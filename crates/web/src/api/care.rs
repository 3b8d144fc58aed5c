//! Questions about light, air and hanging, and what becomes of a piece: advice, cures, weight, place.

use std::collections::{BTreeMap, HashSet};
use std::sync::Arc;

use axum::extract::rejection::QueryRejection;
use axum::extract::{Query, RawQuery, State};
use axum::http::HeaderMap;
use axum::routing::{MethodRouter, get, post};
use axum::{Json, Router};
use serde_json::{Value, json};
use trade::Units;

use super::{Sent, document};
use crate::care::{self, Answer, Fault, QUESTIONS, Question};
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Entry, Kind, Problem};
use crate::wire;

pub(super) fn routes() -> Router<Arc<Desk>> {
    let pieces = Router::new()
        .route("/api/v1/advice", post(advice))
        .route("/api/v1/advice/cure", post(cure))
        .route(
            "/api/v1/weight",
            of_piece(|_, piece| Ok(care::weight(&piece.job, &piece.sizes))),
        )
        .route("/api/v1/place", of_piece(place));
    QUESTIONS.iter().fold(pieces, |router, question| {
        let path = format!("/api/v1/{}/{}", question.noun, question.verb);
        let asked = move |State(desk): State<Arc<Desk>>, query: Pairs| async move {
            ask(question, &desk, query)
        };
        router.route(&path, get(asked))
    })
}

/// The pairs behind the question mark of an address.
pub(crate) type Pairs = Result<Query<Vec<(String, String)>>, QueryRejection>;

fn ask(question: &'static Question, desk: &Desk, query: Pairs) -> Result<Json<Value>, Problem> {
    let asked = Questioned::of(question, query)?;
    let settings = desk.options.habits.of(asked.units);
    let answer = question.answer(&asked.typed, settings, asked.units);
    let found = match answer {
        Ok(answer) if asked.faults.is_empty() => answer,
        Ok(_) => return Err(Problem::with(Kind::Input, asked.faults)),
        Err(faults) => {
            let told = faults.iter().map(entry);
            return Err(Problem::with(
                Kind::Input,
                asked.faults.into_iter().chain(told).collect(),
            ));
        }
    };
    let unit = asked.units.unit();
    let mut value = wire::answer(&found, unit);
    if asked.working {
        value["working"] = wire::working(&found.working, unit).into();
    }
    Ok(Json(value))
}

fn entry(fault: &Fault) -> Entry {
    let pointer = if fault.field.is_empty() {
        String::new()
    } else {
        format!("/{}", fault.field)
    };
    Entry {
        pointer,
        code: fault.code.clone(),
        detail: fault.whole(),
        ..Entry::default()
    }
}

/// What an address asks: its fields, the unit of bare numbers, whether the working is wanted.
#[derive(Debug)]
pub(crate) struct Questioned {
    pub typed: BTreeMap<String, String>,
    pub units: Units,
    working: bool,
    /// Keys that are not known, stand twice, or have an answer that is none.
    pub faults: Vec<Entry>,
}

impl Questioned {
    /// Reads the pairs; what is not asked here is a fault, and all faults are kept.
    pub fn of(question: &Question, query: Pairs) -> Result<Self, Problem> {
        let Query(pairs) = query.map_err(|_| {
            Problem::plain(Kind::Input, "Write the address as name=text, joined by &.")
        })?;
        let mut asked = Self {
            typed: BTreeMap::new(),
            units: Units::default(),
            working: false,
            faults: Vec::new(),
        };
        let mut seen = HashSet::new();
        for (name, text) in pairs {
            if !seen.insert(name.clone()) {
                asked.fault(&name, "query.twice", "is asked twice; ask it once.");
                continue;
            }
            asked.take(question, name, text);
        }
        Ok(asked)
    }

    fn take(&mut self, question: &Question, name: String, text: String) {
        match (name.as_str(), text.as_str()) {
            ("units", "in") => self.units = Units::Inches,
            ("units", "mm") => self.units = Units::Millimetres,
            ("units", _) => self.fault(&name, "query.answer", "takes in or mm."),
            ("include", "working") => self.working = true,
            ("include", _) => self.fault(&name, "query.answer", "takes working."),
            _ if question.fields.iter().any(|field| field.name == name) => {
                self.typed.insert(name, text);
            }
            _ => {
                let mut known: Vec<&str> = question.fields.iter().map(|field| field.name).collect();
                known.extend(["units", "include"]);
                let words = format!("is not asked here; ask {}.", known.join(", "));
                self.fault(&name, "query.unknown", &words);
            }
        }
    }

    fn fault(&mut self, name: &str, code: &str, words: &str) {
        let name: String = name.chars().take(SHOWN).collect();
        let escaped = name.replace('~', "~0").replace('/', "~1");
        self.faults.push(Entry {
            pointer: format!("/{escaped}"),
            code: code.to_owned(),
            detail: format!("“{name}” {words}"),
            ..Entry::default()
        });
    }
}

/// How much of a name is shown again.
const SHOWN: usize = 40;

/// The value of the only questions an address here may have; anything else, and one asked twice, is refused.
fn only(query: Option<&str>, known: &[&str]) -> Result<BTreeMap<String, String>, Problem> {
    let mut found = BTreeMap::new();
    let mut faults = Vec::new();
    let pairs = form_urlencoded::parse(query.unwrap_or_default().as_bytes());
    for (name, value) in pairs.into_owned() {
        let (code, words) = if !known.contains(&name.as_str()) {
            let known = known.join(", ");
            ("query.unknown", format!("is not asked here; ask {known}."))
        } else if found.insert(name.clone(), value).is_some() {
            ("query.twice", "is asked twice; ask it once.".to_owned())
        } else {
            continue;
        };
        let name: String = name.chars().take(SHOWN).collect();
        faults.push(Entry {
            pointer: String::new(),
            code: code.to_owned(),
            detail: format!("“{name}” {words}"),
            ..Entry::default()
        });
    }
    if faults.is_empty() {
        Ok(found)
    } else {
        Err(Problem::with(Kind::Input, faults))
    }
}

/// Whether an address asks for the working.
fn with_working(query: Option<&str>) -> Result<bool, Problem> {
    only(query, &["include"])?;
    Ok(super::choice(query, "include", &["working"])?.is_some())
}

async fn advice(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Json<Value>, Problem> {
    let why = with_working(query.as_deref())?;
    let document = document(&headers, body)?;
    let told =
        desk.work(move |desk| Piece::of(desk, &document).map(|piece| advice_on(desk, &piece, why)));
    Ok(Json(told.await??))
}

/// All advice on a piece, with the working where it is asked for.
fn advice_on(desk: &Desk, piece: &Piece, why: bool) -> Value {
    let unit = piece.sizes.unit();
    let advised = care::advised_on(desk, piece);
    let mut value = wire::advised(&advised, &piece.sizes, unit);
    if why {
        value["working"] = wire::working(&advised.working, unit).into();
    }
    value
}

async fn cure(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Json<Value>, Problem> {
    let mut asked = only(query.as_deref(), &["cure"])?;
    let name = asked.remove("cure").unwrap_or_default();
    let document = document(&headers, body)?;
    let told = desk.work(move |desk| {
        let piece = Piece::of(desk, &document)?;
        let cure = care::cure_named(&name, &care::advised_on(desk, &piece))
            .map_err(|sentence| Problem::plain(Kind::Input, sentence))?;
        let job = cure.change.applied(&piece.job);
        let after = Piece::of(desk, job.to_toml().as_bytes())?;
        let unit = after.sizes.unit();
        let left = care::advised_on(desk, &after);
        let mut value = wire::advised(&left, &after.sizes, unit);
        value["done"] = cure.change.sentence(unit).into();
        value["cured"] =
            json!({ "code": cure.code, "part": cure.part, "is_gone": cure.is_gone(&left) });
        value["job"] = after.job.to_json();
        value["toml"] = after.job.to_toml().into();
        Ok::<Value, Problem>(value)
    });
    Ok(Json(told.await??))
}

fn place(desk: &Desk, piece: &Piece) -> Result<Answer, Problem> {
    care::place(&piece.job, &piece.sizes, &desk.options.catalogue)
        .map_err(|refusal| Problem::plain(Kind::Piece, refusal))
}

/// The address of a question about the piece that is sent.
fn of_piece(asked: fn(&Desk, &Piece) -> Result<Answer, Problem>) -> MethodRouter<Arc<Desk>> {
    post(
        async move |State(desk): State<Arc<Desk>>,
                    RawQuery(query): RawQuery,
                    headers: HeaderMap,
                    body: Sent| {
            let why = with_working(query.as_deref())?;
            let document = document(&headers, body)?;
            let told = desk.work(move |desk| {
                let piece = Piece::of(desk, &document)?;
                let answer = asked(desk, &piece)?;
                Ok::<Value, Problem>(told(&answer, &piece, why))
            });
            Ok::<_, Problem>(Json(told.await??))
        },
    )
}

fn told(answer: &Answer, piece: &Piece, why: bool) -> Value {
    let unit = piece.sizes.unit();
    let mut value = wire::answer(answer, unit);
    if why {
        value["working"] = wire::working(&answer.working, unit).into();
    }
    value
}

/// The entries of these addresses in the API's description.
pub(super) fn described() -> Vec<(String, Value)> {
    let pieces = [
        (
            "/api/v1/advice",
            "All advice on the piece, the worst first, each with its numbers, source, status and tried cures.",
            "include",
        ),
        (
            "/api/v1/advice/cure",
            "The document with one cure applied, and what advice is left.",
            "cure",
        ),
        (
            "/api/v1/weight",
            "What the piece weighs part by part, and what it hangs by.",
            "include",
        ),
        (
            "/api/v1/place",
            "What light and air do to the piece where it will hang.",
            "include",
        ),
    ];
    let answer = json!({ "application/json": { "schema": { "type": "object" } } });
    let of_pieces = pieces.map(|(path, words, name)| {
        let parameter = match name {
            "cure" => json!({
                "name": "cure", "in": "query", "required": true,
                "description": "A cure, as the advice names it: `light.uv:1`.",
                "schema": { "type": "string" },
            }),
            name => super::description::question(name, "Adds every line of working.", &["working"]),
        };
        let post = super::description::post(words, &[parameter], &answer);
        (path.to_owned(), json!({ "post": post }))
    });
    let questions = QUESTIONS.iter().map(|question| {
        let mut parameters = wire::parameters(question);
        parameters.push(super::description::units());
        parameters.push(super::description::question(
            "include",
            "Adds every line of working.",
            &["working"],
        ));
        let path = format!("/api/v1/{}/{}", question.noun, question.verb);
        (
            path,
            super::description::read(&format!("{}.", question.tells), &parameters),
        )
    });
    of_pieces.into_iter().chain(questions).collect()
}
