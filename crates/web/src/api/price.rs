//! Prices: a job's, alternatives, budgets, quotes, and rule sets looked over.

mod described;
mod list;
mod order;
mod print;

use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::State;
use axum::http::HeaderMap;
use axum::routing::{MethodRouter, post};
use axum::{Json, Router};
use pricing::{Budget, Heading, Quote, QuoteFault, RuleSet, alternatives};
use serde_json::{Value, json};
use sizing::Fault;

pub(super) use self::described::described;
use self::order::{Order, fault};
pub(crate) use self::print::{asked_copy, asked_paper, printed};
use super::{Sent, kind_of, too_long};
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Entry, Kind, Problem};
use crate::wire;

pub(super) fn routes() -> Router<Arc<Desk>> {
    Router::new()
        .route("/api/v1/price", order(priced))
        .route("/api/v1/alternatives", order(compared))
        .route("/api/v1/budget", order(budgeted))
        .route("/api/v1/quotes", order(quoted))
        .route("/api/v1/quotes/open", order(opened))
        .route("/api/v1/quotes/pdf", post(print::pdf))
        .route("/api/v1/prices/check", order(checked))
        .route("/api/v1/prices/lists", post(list::previewed))
}

/// The address of an order: its body is read as JSON and answered off the threads that serve.
fn order(answer: fn(&Desk, &[u8]) -> Result<Value, Problem>) -> MethodRouter<Arc<Desk>> {
    post(
        async move |State(desk): State<Arc<Desk>>, headers: HeaderMap, body: Sent| {
            let body = json_body(&headers, body)?;
            let told = desk.work(move |desk| answer(desk, &body)).await??;
            Ok::<_, Problem>(Json(told))
        },
    )
}

/// What may be asked beside any price.
const ASKED: [&str; 6] = ["on", "rush", "discounts", "exempt", "rules", "shop"];

fn priced(desk: &Desk, body: &[u8]) -> Result<Value, Problem> {
    let mut order = Order::read(body, &["job", "include"], &ASKED)?;
    let (rules, asked, shop) = order.asked(desk)?;
    let job = order.document("job");
    let include = order.words("include", &["working"]);
    order.faultless()?;
    let piece = Piece::of(desk, &job)?;
    let catalogue = &desk.options.catalogue;
    let priced = pricing::price(&piece.job, &piece.sizes, catalogue, &rules, &asked);
    let mut value = wire::price_of(&piece.sizes, &priced, shop);
    if include.is_some() {
        value["working"] = wire::working(&priced.working, piece.sizes.unit()).into();
    }
    Ok(value)
}

fn compared(desk: &Desk, body: &[u8]) -> Result<Value, Problem> {
    let mut order = Order::read(body, &["alternatives"], &ASKED)?;
    let (rules, asked, shop) = order.asked(desk)?;
    let named = order.named_documents("alternatives");
    order.faultless()?;
    let mut jobs = Vec::with_capacity(named.len());
    let mut unread = Vec::new();
    for (at, (name, document)) in named.iter().enumerate() {
        match trade::Job::read(document) {
            Ok(job) => jobs.push((name.as_str(), job)),
            Err(faults) => unread.extend(faults.iter().map(|fault| {
                let entry = Entry::document(fault);
                Entry {
                    pointer: format!("/alternatives/{at}/job{}", entry.pointer),
                    detail: format!("{name}: {}", entry.detail),
                    ..entry
                }
            })),
        }
    }
    if !unread.is_empty() {
        return Err(Problem::with(Kind::Document, unread));
    }
    let units = jobs.first().map(|(_, job)| job.units).unwrap_or_default();
    if jobs.iter().any(|(_, job)| job.units != units) {
        let detail = "One alternative counts in inches, another in millimetres; write `units` alike in all of them.";
        return Err(Problem::plain(Kind::Input, detail));
    }
    let choices: Vec<_> = jobs.iter().map(|(name, job)| (*name, job)).collect();
    let options = &desk.options;
    let habits = options.habits.of(units);
    let found = alternatives(&choices, &options.catalogue, habits, &rules, &asked)
        .map_err(|refused| Problem::plain(Kind::Input, sentence(&refused)))?;
    Ok(wire::alternatives(&found, shop))
}

fn budgeted(desk: &Desk, body: &[u8]) -> Result<Value, Problem> {
    let mut order = Order::read(body, &["job", "ceiling"], &ASKED)?;
    let (rules, asked, _) = order.asked(desk)?;
    let (job, ceiling) = (order.document("job"), order.money("ceiling"));
    order.faultless()?;
    let piece = Piece::of(desk, &job)?;
    let options = &desk.options;
    let budget = Budget {
        job: &piece.job,
        catalogue: &options.catalogue,
        shop: options.habits.of(piece.job.units),
        rules: &rules,
        asked: &asked,
        ceiling,
    };
    let proposed = budget
        .propose()
        .map_err(|refused| Problem::plain(Kind::Input, sentence(&refused)))?;
    let value = wire::proposed(&proposed, &piece.job, &options.catalogue);
    Ok(value)
}

fn quoted(desk: &Desk, body: &[u8]) -> Result<Value, Problem> {
    let mut order = Order::read(body, &["job", "number", "given"], &ASKED)?;
    let (rules, asked, _) = order.asked(desk)?;
    let job = order.document("job");
    let number = order.text("number", "Say the quote's number here.");
    let given = order.day("given").unwrap_or(asked.day);
    order.faultless()?;
    let piece = Piece::of(desk, &job)?;
    refuse(&piece.sizes.faults)?;
    let heading = Heading { number, given };
    let of = (&piece.job, &piece.sizes);
    let made = Quote::give(&heading, of, &desk.options.catalogue, &rules, &asked);
    let (quote, priced) = made.map_err(|fault| unquoted(&fault))?;
    let faults = wire::faults(&priced.faults, &priced.working);
    Ok(json!({ "quote": wire::quote(&quote, true), "faults": faults }))
}

fn opened(_: &Desk, body: &[u8]) -> Result<Value, Problem> {
    let text = std::str::from_utf8(body).map_err(|_| {
        let detail = "The quote is not UTF-8 text; send its file as it was written.";
        Problem::plain(Kind::Document, detail)
    })?;
    let opened = Quote::open(text).map_err(|fault| unquoted(&fault))?;
    Ok(json!({
        "number": opened.quote.number,
        "total": wire::money(opened.quote.total()),
        "verdict": wire::verdict(&opened),
        "quote": wire::quote(&opened.quote, false),
    }))
}

fn checked(desk: &Desk, body: &[u8]) -> Result<Value, Problem> {
    let mut order = Order::read(body, &[], &["rules", "on"])?;
    let (rules, asked, _) = order.asked(desk)?;
    order.faultless()?;
    Ok(wire::rules_checked(&rules, &rules.check(asked.day)))
}

/// The body, once it is said to be JSON.
fn json_body(headers: &HeaderMap, body: Sent) -> Result<Bytes, Problem> {
    if kind_of(headers) != "application/json" {
        let detail = "Send an object as application/json; job documents within it are objects, or TOML as text.";
        return Err(Problem::plain(Kind::Media, detail));
    }
    body.map_err(|error| too_long(&error))
}

/// Stops where the piece itself can't be made.
pub(crate) fn refuse(faults: &[Fault]) -> Result<(), Problem> {
    if crate::piece::stops(faults) == 0 {
        return Ok(());
    }
    let entries = faults.iter().map(Entry::fault).collect();
    Err(Problem::with(Kind::Piece, entries))
}

pub(crate) fn unquoted(refused: &QuoteFault) -> Problem {
    let (kind, code) = match refused {
        QuoteFault::NotPriced(_) => (Kind::Piece, "quote.refused"),
        QuoteFault::Unreadable(_) | QuoteFault::Newer { .. } | QuoteFault::Broken(_) => {
            (Kind::Document, "quote.form")
        }
    };
    Problem::with(kind, vec![fault("", code, sentence(refused))])
}

/// With a capital and a full stop.
fn sentence(refused: &impl ToString) -> String {
    let text = refused.to_string();
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().to_string());
    let text = format!("{}{}", first.unwrap_or_default(), letters.as_str());
    if text.ends_with('.') {
        text
    } else {
        format!("{text}.")
    }
}

/// The rules an order brings, else the shop's.
fn rules_of(desk: &Desk, typed: Option<String>) -> Result<Arc<RuleSet>, Vec<Entry>> {
    let none = "The shop's prices are not given; send a rule set as TOML text, or start with rabbet serve --prices FILE.";
    let Some(text) = typed else {
        let own = desk.options.prices.as_ref().map(Arc::clone);
        return own.ok_or_else(|| vec![fault("/rules", "prices.none", none)]);
    };
    RuleSet::read(&text).map(Arc::new).map_err(|faults| {
        let told = faults.iter();
        told.map(|one| fault("/rules", "prices.form", sentence(one)))
            .collect()
    })
}
