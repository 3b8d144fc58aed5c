//! A plan: over all materials what to take, to buy and to keep; then each material by itself, drawn.

use std::sync::Arc;

use axum::extract::{Path, RawQuery, State};
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use paperwork::{CutMaterial, Danger, Paper, PaperworkError, to_buy};

use super::leaf::leaf;
use crate::api::{choice, pdf};
use crate::desk::Desk;
use crate::kept::{HELD, Plan};
use crate::page::shell::{Page, Place};
use crate::page::trouble::trouble;
use crate::problem::{Kind, Problem};

/// Shows the whole plan.
pub(crate) async fn plan(State(desk): State<Arc<Desk>>, Path(id): Path<String>) -> Response {
    let Some(plan) = desk.plans.find(&id) else {
        return trouble(&gone());
    };
    let made = desk.work(move |desk| {
        let body = overview(&id, &plan).map_err(|error| unset(&error))?;
        Ok(whole(desk, &format!("Plan {}", plan.name), body))
    });
    answered(made.await.and_then(|made| made))
}

/// Shows one material of a plan, counted from 1.
pub(crate) async fn material(
    State(desk): State<Arc<Desk>>,
    Path((id, number)): Path<(String, String)>,
) -> Response {
    let Some(plan) = desk.plans.find(&id) else {
        return trouble(&gone());
    };
    let place = number.parse::<usize>().ok();
    let place = place.and_then(|number| number.checked_sub(1));
    let Some(place) = place.filter(|place| *place < plan.materials.len()) else {
        let detail = format!(
            "This plan has {} materials, counted from 1.",
            plan.materials.len()
        );
        return trouble(&Problem::plain(Kind::Address, detail));
    };
    let made = desk.work(move |desk| {
        let body = one(&id, &plan, place).map_err(|error| unset(&error))?;
        Ok(whole(desk, &plan.materials[place].name, body))
    });
    answered(made.await.and_then(|made| made))
}

/// The cut sheets of a plan, as PDF.
pub(crate) async fn cut_sheets(
    State(desk): State<Arc<Desk>>,
    Path(id): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    let made = async {
        let paper = match choice(query.as_deref(), "paper", &["a4", "letter"])? {
            Some("letter") => Paper::Letter,
            _ => Paper::A4,
        };
        let plan = desk.plans.find(&id).ok_or_else(gone)?;
        let made = desk.work(move |desk| plan.cut_sheets(&desk.options.shop, paper));
        made.await?.map_err(|error| unset(&error))
    };
    match made.await {
        Ok(bytes) => pdf(bytes, "cut-sheets.pdf"),
        Err(problem) => trouble(&problem),
    }
}

fn gone() -> Problem {
    Problem::plain(
        Kind::Address,
        "This plan is no longer held; go to the Bench and plan again.",
    )
}

fn unset(error: &PaperworkError) -> Problem {
    match error {
        PaperworkError::Cuts(drawing::CutError::TooLong { .. }) | PaperworkError::TooMany => {
            Problem::plain(Kind::Drawing, error.to_string())
        }
        _ => Problem::fault(error),
    }
}

fn answered(made: Result<Markup, Problem>) -> Response {
    match made {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

fn whole(desk: &Desk, title: &str, body: Markup) -> Markup {
    Page {
        shop: &desk.options.shop,
        title,
        place: Place::Bench,
        kind: "cut",
        customer: false,
        body,
    }
    .whole()
}

fn overview(id: &str, plan: &Plan) -> Result<Markup, PaperworkError> {
    let totals: Result<Vec<Vec<String>>, PaperworkError> =
        plan.materials.iter().map(CutMaterial::totals).collect();
    let totals = totals?;
    Ok(html! {
        h1 { "Plan " (plan.name) }
        @if !plan.orders.is_empty() { p.lead { "For " (plan.orders.join(", ")) "." } }
        (papers(id, plan))
        (lacking(plan))
        p { (how_good(plan)) }
        @if let Some(words) = to_buy(&plan.materials) { p.sum { (words) } }
        ol.materials { @for (place, (material, totals)) in plan.materials.iter().zip(&totals).enumerate() {
            li {
                h2 { a href={ "/bench/plan/" (id) "/" (place + 1) } { (material.name) } }
                (ledger(material))
                (proof(material, totals))
            }
        } }
        (unplanned(plan))
    })
}

/// How many materials, and how many of them can't be planned better.
fn how_good(plan: &Plan) -> String {
    let proofs = plan
        .materials
        .iter()
        .map(|material| material.proof.as_ref());
    let proven = proofs
        .flatten()
        .filter(|proof| proof.reached == proof.bound);
    match (plan.materials.len(), proven.count()) {
        (1, 1) => "One material, and its plan is proven: nothing is better.".to_owned(),
        (1, _) => "One material.".to_owned(),
        (all, proven) if all == proven => {
            format!("{all} materials, and every plan is proven: nothing is better.")
        }
        (all, proven) => format!(
            "{all} materials, {proven} of them proven: nothing is better. More seconds may find better for the others."
        ),
    }
}

fn papers(id: &str, plan: &Plan) -> Markup {
    html! {
        div.buttons {
            a.button.do href={ "/bench/plan/" (id) "/1" } { "Start cutting" }
            a.button href={ "/bench/plan/" (id) "/cut-sheets.pdf?paper=a4" } { "Cut sheets on A4" }
            a.button href={ "/bench/plan/" (id) "/cut-sheets.pdf?paper=letter" } { "Cut sheets on Letter" }
            a.button href=(plan.asked_at) { "Plan again" }
        }
        p.beside {
            "Plans are not kept yet, and nothing is taken off the rack: this one is held until the program ends or "
            (HELD) " newer ones push it out. Print it before you cut."
        }
    }
}

fn lacking(plan: &Plan) -> Markup {
    let lacking: Vec<(&str, &str)> = plan.lacking().collect();
    html! {
        @if !lacking.is_empty() {
            section.lacks aria-labelledby="lacks" {
                h2 #lacks { "Stop: the stock does not reach" }
                ul { @for (material, line) in &lacking { li { (line) ", of " (material) } } }
                p { "List more stock, or leave its count out where it can be bought; then plan again." }
            }
        }
    }
}

fn unplanned(plan: &Plan) -> Markup {
    html! {
        @if !plan.unplanned.is_empty() {
            section.unplanned aria-labelledby="unplanned" {
                h2 #unplanned { "Not in this plan" }
                ul { @for line in &plan.unplanned { li { (opened(line)) } } }
            }
        }
    }
}

/// With a capital, as a sentence begins.
fn opened(line: &str) -> String {
    let mut signs = line.chars();
    let first = signs.next().map(|sign| sign.to_uppercase().to_string());
    first.unwrap_or_default() + signs.as_str()
}

/// What to take, to buy and to keep, and what is lacking.
fn ledger(material: &CutMaterial) -> Markup {
    let groups = [
        ("Take", &material.take),
        ("Buy", &material.buy),
        ("Keep", &material.drops),
        ("Lacks", &material.uncut),
    ];
    html! {
        dl.ledger { @for (word, lines) in groups {
            @if !lines.is_empty() {
                dt { (word) }
                dd { @for line in lines { p { (line) } } }
            }
        } }
    }
}

fn proof(material: &CutMaterial, totals: &[String]) -> Markup {
    html! {
        @for line in totals { p.sum { (line) } }
        p.proof {
            @match &material.proof {
                Some(proof) => { (proof.sentence()) }
                None => { "The stock does not reach for every piece; nothing is proven." }
            }
        }
    }
}

fn one(id: &str, plan: &Plan, place: usize) -> Result<Markup, PaperworkError> {
    let material = &plan.materials[place];
    let leaves: Result<Vec<Markup>, PaperworkError> = material
        .leaves
        .iter()
        .map(|one| leaf(one).map_err(PaperworkError::from))
        .collect();
    let (leaves, totals) = (leaves?, material.totals()?);
    let count = plan.materials.len();
    Ok(html! {
        p.beside {
            a href={ "/bench/plan/" (id) } { "Plan " (plan.name) } ", material " (place + 1) " of " (count)
        }
        h1 { (material.name) }
        (ledger(material))
        (dangers(&material.dangers))
        @for leaf in &leaves { (leaf) }
        section aria-labelledby="sum" {
            h2 #sum { "All of it" }
            (proof(material, &totals))
        }
        nav.buttons aria-label="Materials of this plan" {
            @if let Some(next) = plan.materials.get(place + 1) {
                a.button.do href={ "/bench/plan/" (id) "/" (place + 2) } { "Next: " (next.name) }
            }
            @if place > 0 {
                a.button href={ "/bench/plan/" (id) "/" (place) } { "Back: " (plan.materials[place - 1].name) }
            }
            a.button href={ "/bench/plan/" (id) } { "The whole plan" }
        }
    })
}

fn dangers(dangers: &[Danger]) -> Markup {
    html! {
        @if !dangers.is_empty() {
            ul.dangers { @for danger in dangers { li { (crate::page::caution::mind()) " " (danger.words()) } } }
        }
    }
}
