//! Two to six alternatives side by side, what differs under each, and by how much.

use std::sync::Arc;

use axum::extract::rejection::FormRejection;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use measure::Money;
use pricing::{Alternative, MOST_ALTERNATIVES, Proposal, Saving, alternatives as side_by_side};
use trade::{Catalogue, Job, Kind as Of};

use super::super::piece::kept;
use super::super::shell::{Page, Place};
use super::super::trouble::trouble;
use super::wish::Wish;
use super::{faults, signed};
use crate::api::too_long;
use crate::desk::Desk;
use crate::piece::Piece;
use crate::problem::{Kind, Problem};

type Pairs = Vec<(String, String)>;

/// Sets the documents of the form side by side, with the one it asks to add.
pub(crate) async fn alternatives(
    State(desk): State<Arc<Desk>>,
    sent: Result<Form<Pairs>, FormRejection>,
) -> Response {
    let Form(pairs) = match sent {
        Ok(form) => form,
        Err(error) if error.status() == StatusCode::PAYLOAD_TOO_LARGE => {
            return trouble(&too_long(&error));
        }
        Err(_) => {
            let detail = "Send each job document in a field job of a form.";
            return trouble(&Problem::plain(Kind::Input, detail));
        }
    };
    let answer = desk.work(move |desk| shown(desk, &pairs));
    match answer.await.and_then(|page| page) {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

fn shown(desk: &Desk, pairs: &Pairs) -> Result<Markup, Problem> {
    let mut documents: Vec<String> = pairs
        .iter()
        .filter(|(name, _)| name == "job")
        .map(|(_, text)| text.replace("\r\n", "\n"))
        .collect();
    let typed = |wanted: &str| {
        let pair = pairs.iter().find(|(name, _)| name == wanted);
        pair.map(|(_, text)| text.as_str())
            .filter(|text| !text.is_empty())
    };
    if let Some(at) = typed("leave").and_then(|at| at.parse::<usize>().ok()) {
        if at > 0 && at < documents.len() {
            documents.remove(at);
        }
    } else {
        documents.extend(added(desk, &documents, typed)?);
    }
    let mut jobs = Vec::with_capacity(documents.len());
    for document in &documents {
        jobs.push(Piece::of(desk, document.as_bytes())?.job);
    }
    let wish = Wish::read(pairs);
    let found = priced(desk, &jobs, &wish)?;
    Ok(page(
        desk,
        &Set {
            documents: &documents,
            wish: &wish,
        },
        &found,
    ))
}

/// What the form asks to add: a piece of the wall, or the first with another moulding or glazing.
fn added<'t>(
    desk: &Desk,
    documents: &[String],
    typed: impl Fn(&str) -> Option<&'t str>,
) -> Result<Vec<String>, Problem> {
    let mut added: Vec<String> = Vec::new();
    added.extend(typed("piece").and_then(kept).map(str::to_owned));
    let moulding = typed("moulding").map(|code| Saving::Moulding {
        member: 0,
        code: code.to_owned(),
    });
    let glazing = typed("glazing").map(|code| Saving::Glazing {
        index: 0,
        code: code.to_owned(),
    });
    let changes: Vec<Saving> = moulding.into_iter().chain(glazing).collect();
    if let (Some(first), false) = (documents.first(), changes.is_empty()) {
        let piece = Piece::of(desk, first.as_bytes())?;
        added.push(varied(&piece.job, changes, desk).to_toml());
    }
    Ok(added)
}

/// The job with another moulding or glazing.
fn varied(job: &Job, changes: Vec<Saving>, desk: &Desk) -> Job {
    let rules = desk.options.prices.as_ref();
    let currency = rules.map(|rules| rules.currency());
    let Some(nothing) = currency.map(Money::zero) else {
        return job.clone();
    };
    let changes = changes.into_iter().map(|change| (change, nothing));
    let variation = Proposal {
        changes: changes.collect(),
        total: nothing,
        saving: nothing,
    };
    variation.applied(job)
}

fn priced(desk: &Desk, jobs: &[Job], wish: &Wish) -> Result<Vec<Alternative>, Problem> {
    let options = &desk.options;
    let (rules, asked) = wish.today(desk)?;
    let units = jobs.first().map(|job| job.units).unwrap_or_default();
    if jobs.iter().any(|job| job.units != units) {
        let detail = "These pieces speak in different units; set side by side only those of one.";
        return Err(Problem::plain(Kind::Input, detail));
    }
    let names: Vec<String> = (1..=jobs.len())
        .map(|at| format!("Alternative {at}"))
        .collect();
    let choices: Vec<_> = names.iter().map(String::as_str).zip(jobs).collect();
    let habits = options.habits.of(units);
    side_by_side(&choices, &options.catalogue, habits, &rules, &asked)
        .map_err(|refused| Problem::plain(Kind::Input, format!("Alternatives: {refused}.")))
}

/// What every form of the page carries on.
struct Set<'a> {
    documents: &'a [String],
    wish: &'a Wish,
}

impl Set<'_> {
    fn carried(&self) -> Markup {
        html! {
            @for document in self.documents { input type="hidden" name="job" value=(document); }
            (self.wish.carried())
        }
    }
}

fn page(desk: &Desk, set: &Set<'_>, found: &[Alternative]) -> Markup {
    let body = html! {
        h1 { "Alternatives" }
        p.lead { "Each against the first: what differs, and by how much. Up to " (MOST_ALTERNATIVES) " stand side by side." }
        div.alternatives {
            @for (at, (one, document)) in found.iter().zip(set.documents).enumerate() {
                (column(at, one, document, set))
            }
        }
        @if found.len() < MOST_ALTERNATIVES { (adding(&desk.options.catalogue, set)) }
    };
    Page {
        shop: &desk.options.shop,
        title: "Alternatives",
        place: Place::Elsewhere,
        kind: "care",
        customer: false,
        body,
    }
    .whole()
}

fn column(at: usize, one: &Alternative, document: &str, set: &Set<'_>) -> Markup {
    let totals = &one.priced.totals;
    let id = format!("alternative-{}", at + 1);
    html! {
        section.alternative aria-labelledby=(id) {
            h2 id=(id) { (one.name) }
            p.total { b { (totals.total.value) } }
            p.beside { @if at == 0 { "the one to compare with" } @else { (signed(one.difference)) } }
            (faults(&one.sizes.faults))
            (faults(&one.priced.faults))
            @if !one.differs.is_empty() {
                dl.differs { @for differs in &one.differs {
                    dt { (differs.part) }
                    dd { (differs.this.as_deref().unwrap_or("none"))
                        span.beside { "first: " (differs.first.as_deref().unwrap_or("none")) } }
                } }
            } @else if at > 0 { p { "All as in the first." } }
            form method="post" action="/piece/opened" {
                input type="hidden" name="job" value=(document);
                input type="hidden" name="good" value=(document);
                (set.wish.carried())
                button type="submit" { "Take " (one.name) }
            }
            @if at > 0 {
                form method="post" action="/alternatives" {
                    (set.carried())
                    button type="submit" name="leave" value=(at) { "Leave " (one.name) " out" }
                }
            }
        }
    }
}

/// The form that adds one.
fn adding(catalogue: &Catalogue, set: &Set<'_>) -> Markup {
    let of = |kind: Of| {
        catalogue
            .iter()
            .filter(move |material| material.kind == Some(kind))
    };
    html! {
        section.question aria-labelledby="add" {
            h2 #add { "Set another beside them" }
            form method="post" action="/alternatives" {
                (set.carried())
                p { label for="moulding" { "The first with this moulding" } " "
                    select #moulding name="moulding" {
                        option value="" { "as it is" }
                        @for one in of(Of::Moulding) { option value=(one.code) { (one.title()) } }
                    } }
                p { label for="glazing" { "and this glazing" } " "
                    select #glazing name="glazing" {
                        option value="" { "as it is" }
                        @for one in of(Of::Glazing) { option value=(one.code) { (one.title()) } }
                    } }
                p { label for="other" { "Or a piece of the wall" } " "
                    select #other name="piece" {
                        option value="" { "none" }
                        @for job in demo::JOBS { option value=(job.name) { (job.title) } }
                    } }
                p.buttons { button type="submit" { "Set beside" } }
            }
        }
    }
}
