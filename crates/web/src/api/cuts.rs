//! Plans: what is cut from what, for lists and instances, and for whole jobs.

use std::sync::Arc;

use axum::Json;
use axum::body::Bytes;
use axum::extract::{RawQuery, State};
use axum::http::HeaderMap;
use cutting::document::is_set;
use cutting::{Problem as Task, Trying};
use demand::Stock;
use serde_json::{Map, Value};
use trade::reading::{clip, nearest};

use super::{READ, Sent, kind_of, too_long};
use crate::desk::Desk;
use crate::planning::{self, LONGEST, Patience, USUAL};
use crate::problem::{Entry, Kind, Problem};
use crate::wire;

/// Plans a cut list (TOML), or a cutting problem, a set or a list of them (JSON).
pub(super) async fn cuts(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Json<Value>, Problem> {
    let patience = patience(query.as_deref())?;
    let kind = kind_of(&headers);
    if !READ.contains(&kind.as_str()) {
        let detail = format!(
            "Send cutting problems as application/json, a cut list as one of: {}.",
            READ.iter()
                .filter(|read| **read != JSON)
                .copied()
                .collect::<Vec<_>>()
                .join(", ")
        );
        return Err(Problem::plain(Kind::Media, detail));
    }
    let text = text(&body.map_err(|error| too_long(&error))?)?;
    let answer = desk.plan(move |desk, left| {
        if kind != JSON {
            let planned = planning::list(desk, &text, patience, left)?;
            let tasks: Vec<Task> = planned
                .batches
                .iter()
                .map(|batch| batch.problem.clone())
                .collect();
            let unit = planned.batches.first().map(|batch| batch.tick.name());
            return wire::plans(&tasks, &planned.plans, unit, false)
                .map_err(|other| Problem::fault(&other));
        }
        let planned = planning::instances(&text, patience, left)?;
        let tasks: Vec<Task> = planned
            .instances
            .iter()
            .map(|one| one.problem.clone())
            .collect();
        wire::plans(&tasks, &planned.plans, None, is_set(&text))
            .map_err(|other| Problem::fault(&other))
    });
    answer.await?.map(Json)
}

/// Plans every part of several jobs, from a stock document where one is sent.
pub(super) async fn jobs(
    State(desk): State<Arc<Desk>>,
    RawQuery(query): RawQuery,
    headers: HeaderMap,
    body: Sent,
) -> Result<Json<Value>, Problem> {
    let patience = patience(query.as_deref())?;
    if kind_of(&headers) != JSON {
        return Err(Problem::plain(
            Kind::Media,
            "Send the jobs as application/json: {\"jobs\": [...], \"stock\": ...}.",
        ));
    }
    let order = Order::read(&body.map_err(|error| too_long(&error))?)?;
    let answer = desk.plan(move |desk, left| {
        let planned = planning::day(desk, &order.jobs, &order.stock, patience, left)?;
        Ok(wire::day(&planned.day, &planned.plans, &planned.outcome))
    });
    answer.await?.map(Json)
}

const JSON: &str = "application/json";

/// What is to be cut, and from what.
struct Order {
    /// Job documents, TOML or JSON.
    jobs: Vec<Vec<u8>>,
    stock: Stock,
}

impl Order {
    /// Errors: everything wrong with the form, each with its pointer; then, with the stock.
    fn read(body: &Bytes) -> Result<Self, Problem> {
        let mut object = object(body)?;
        let (jobs, stock) = (object.remove("jobs"), object.remove("stock"));
        let mut faults: Vec<Entry> = object
            .keys()
            .map(|name| {
                let pointer = format!("/{}", name.replace('~', "~0").replace('/', "~1"));
                fault(
                    pointer,
                    "cuts.unknown",
                    "There is no such field; send jobs and stock.",
                )
            })
            .collect();
        let jobs = match jobs {
            Some(Value::Array(jobs)) if !jobs.is_empty() => jobs,
            _ => {
                let detail = "Send at least one job document here, in a list.";
                faults.push(fault("/jobs", "cuts.jobs", detail));
                Vec::new()
            }
        };
        let mut documents = Vec::with_capacity(jobs.len());
        for (place, job) in jobs.iter().enumerate() {
            match document(job) {
                Some(document) => documents.push(document),
                None => faults.push(fault(
                    format!("/jobs/{place}"),
                    "cuts.job",
                    "Send a job document here: JSON as an object, or TOML as text.",
                )),
            }
        }
        let stock = match stock.filter(|stock| !stock.is_null()) {
            None => Stock::default(),
            Some(stock) => stock_of(&stock).unwrap_or_else(|of_stock| {
                faults.extend(of_stock);
                Stock::default()
            }),
        };
        if !faults.is_empty() {
            return Err(Problem::with(Kind::Document, faults));
        }
        Ok(Self {
            jobs: documents,
            stock,
        })
    }
}

fn stock_of(stock: &Value) -> Result<Stock, Vec<Entry>> {
    let Some(bytes) = document(stock) else {
        let detail = "Send the stock document here: JSON as an object, or TOML as text.";
        return Err(vec![fault("/stock", "cuts.stock", detail)]);
    };
    Stock::read(&bytes).map_err(|faults| {
        let told = faults.iter();
        told.map(|one| fault("/stock", "stock.unread", one.to_string()))
            .collect()
    })
}

/// A document within JSON: an object, or text.
fn document(value: &Value) -> Option<Vec<u8>> {
    match value {
        Value::Object(_) => Some(value.to_string().into_bytes()),
        Value::String(text) => Some(text.clone().into_bytes()),
        _ => None,
    }
}

fn object(body: &Bytes) -> Result<Map<String, Value>, Problem> {
    let detail = match serde_json::from_slice(body) {
        Ok(Value::Object(object)) => return Ok(object),
        Ok(_) => "Send an object: {\"jobs\": [...], \"stock\": ...}.".to_owned(),
        Err(error) => format!(
            "The text is no JSON from line {}, column {} on; mend it there.",
            error.line(),
            error.column()
        ),
    };
    Err(Problem::with(
        Kind::Document,
        vec![fault("", "cuts.form", detail)],
    ))
}

fn fault(pointer: impl Into<String>, code: &str, detail: impl Into<String>) -> Entry {
    Entry {
        pointer: pointer.into(),
        code: code.to_owned(),
        detail: detail.into(),
        ..Entry::default()
    }
}

fn text(body: &Bytes) -> Result<String, Problem> {
    let text = std::str::from_utf8(body).map_err(|error| {
        let at = error.valid_up_to();
        let detail = format!("The text is not UTF-8: byte {at} can't be read; save it as UTF-8.");
        Problem::with(Kind::Document, vec![fault("", "cuts.not_text", detail)])
    })?;
    Ok(text.to_owned())
}

/// What the address can ask.
const QUESTIONS: [&str; 3] = ["seconds", "effort", "seed"];

/// How hard to look, as the address asks.
///
/// Errors: a question nobody knows or that is asked twice; an answer that is no whole number.
fn patience(query: Option<&str>) -> Result<Patience, Problem> {
    let asked = questions(query)?;
    let seconds = number(&asked, "seconds", LONGEST)?;
    let effort = number(&asked, "effort", u64::MAX)?;
    let seed = number(&asked, "seed", u64::MAX)?;
    if seconds.is_some() && effort.is_some() {
        return Err(asks("Ask for seconds or for effort, one of the two."));
    }
    let usual = if effort.is_some() { LONGEST } else { USUAL };
    Ok(Patience {
        seconds: seconds.unwrap_or(usual),
        trying: Trying {
            effort,
            seed: seed.unwrap_or(Trying::default().seed),
        },
    })
}

/// Every question of an address with its answer, each one known and asked once.
fn questions(query: Option<&str>) -> Result<Vec<(&str, &str)>, Problem> {
    let mut asked: Vec<(&str, &str)> = Vec::new();
    let pairs = query.unwrap_or_default().split('&');
    for pair in pairs.filter(|pair| !pair.is_empty()) {
        let (name, answer) = pair.split_once('=').unwrap_or((pair, ""));
        if !QUESTIONS.contains(&name) {
            let cure = match nearest(name, QUESTIONS) {
                Some(near) => format!("did you mean {near}?"),
                None => format!("there are {}.", QUESTIONS.join(", ")),
            };
            return Err(asks(format!("There is no question {}; {cure}", clip(name))));
        }
        if asked.iter().any(|(known, _)| *known == name) {
            return Err(asks(format!(
                "The question {name} is asked twice; ask it once."
            )));
        }
        asked.push((name, answer));
    }
    Ok(asked)
}

/// A whole number of the address, up to a limit.
fn number(asked: &[(&str, &str)], name: &str, most: u64) -> Result<Option<u64>, Problem> {
    let Some((_, answer)) = asked.iter().find(|(known, _)| *known == name) else {
        return Ok(None);
    };
    let number = answer.parse().ok().filter(|number| *number <= most);
    number.map(Some).ok_or_else(|| {
        asks(format!(
            "The question {name} takes a whole number from 0 to {most}."
        ))
    })
}

fn asks(detail: impl Into<String>) -> Problem {
    Problem::plain(Kind::Input, detail)
}

#[cfg(test)]
mod tests {
    use super::patience;

    fn check(query: &str, expected: &str) {
        let problem = patience(Some(query)).expect_err(query);
        assert_eq!(problem.detail, expected, "{query}");
    }

    #[test]
    fn questions_nobody_knows_are_refused() {
        check(
            "secnds=3",
            "There is no question secnds; did you mean seconds?",
        );
        check(
            "colour=red",
            "There is no question colour; there are seconds, effort, seed.",
        );
        check(
            "seconds=3&seconds=4",
            "The question seconds is asked twice; ask it once.",
        );
        check(
            "seconds",
            "The question seconds takes a whole number from 0 to 30.",
        );
        check(
            "seconds=3&effort=4",
            "Ask for seconds or for effort, one of the two.",
        );
        let asked = patience(Some("effort=4&seed=2")).expect("both are known");
        assert_eq!((asked.trying.effort, asked.trying.seed), (Some(4), 2));
    }
}
