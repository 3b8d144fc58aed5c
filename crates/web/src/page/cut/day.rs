//! Today's jobs: which are cut, and planning them.

use std::collections::BTreeSet;
use std::sync::Arc;

use axum::extract::{RawQuery, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use cutting::OtherKind;
use demand::Stock;
use demo::DemoJob;
use maud::{Markup, html};

use super::ask::{self, Fault, Sent, beside, is_wrong, patience, summary};
use crate::desk::Desk;
use crate::kept::Plan;
use crate::page::shell::{Page, Place};
use crate::page::trouble::trouble;
use crate::piece::{Piece, stops};
use crate::planning::{self, Patience, USUAL};
use crate::problem::{Entry, Kind, Problem};

/// Shows the jobs, all of them ticked unless the address asks for none.
pub(crate) async fn day(State(desk): State<Arc<Desk>>, RawQuery(query): RawQuery) -> Response {
    let none = query.as_deref() == Some("ticked=none");
    let ticked = if none {
        BTreeSet::new()
    } else {
        demo::JOBS.iter().map(|job| job.name.to_owned()).collect()
    };
    let asked = Asked {
        ticked,
        seconds: USUAL.to_string(),
        faults: Vec::new(),
    };
    shown(&desk, asked).await
}

/// Plans the ticked jobs, holds the plan, and leads to it.
pub(crate) async fn planned(State(desk): State<Arc<Desk>>, sent: Sent) -> Response {
    let lines = match ask::lines(sent) {
        Ok(lines) => lines,
        Err(problem) => return trouble(&problem),
    };
    let names = lines.iter().filter(|(name, _)| name == "job");
    let mut asked = Asked {
        ticked: names.map(|(_, job)| job.clone()).collect(),
        seconds: ask::line(&lines, "seconds").to_owned(),
        faults: Vec::new(),
    };
    let jobs = asked.jobs(desk.options.demo);
    if jobs.is_empty() {
        asked.faults.push(Fault {
            field: "jobs".to_owned(),
            words: "Open jobs: tick at least one job to cut.".to_owned(),
            line: None,
            text: None,
        });
    }
    let seconds = match ask::seconds(&asked.seconds) {
        Ok(seconds) => seconds,
        Err(fault) => {
            asked.faults.push(fault);
            USUAL
        }
    };
    if !asked.faults.is_empty() {
        return shown(&desk, asked).await;
    }
    let names: Vec<&str> = jobs.iter().map(|job| job.name).collect();
    let made = desk.plan(move |desk, left| {
        let documents: Vec<Vec<u8>> = jobs.iter().map(|job| job.toml.into()).collect();
        let stock = stock()?;
        let planned = planning::day(desk, &documents, &stock, Patience::seconds(seconds), left)?;
        let plan = plan_of(&planned).map_err(|other| Problem::fault(&other))?;
        Ok(desk.plans.hold(plan))
    });
    match made.await.and_then(|made| made) {
        Ok(id) => Redirect::to(&format!("/bench/plan/{id}")).into_response(),
        Err(problem) if is_of_the_jobs(&problem) => {
            let entries = problem.errors.iter();
            asked.faults = entries.map(|entry| about(entry, &names)).collect();
            shown(&desk, asked).await
        }
        Err(problem) => trouble(&problem),
    }
}

fn is_of_the_jobs(problem: &Problem) -> bool {
    matches!(problem.kind, Kind::Document | Kind::Piece | Kind::Cuts) && !problem.errors.is_empty()
}

/// A fault with the box of its job, or the whole list where it names none.
fn about(entry: &Entry, names: &[&str]) -> Fault {
    let place = entry.pointer.strip_prefix("/jobs/");
    let place = place.and_then(|rest| rest.split('/').next()?.parse::<usize>().ok());
    match place.and_then(|place| names.get(place)) {
        Some(name) => Fault::about(&format!("job-{name}"), entry),
        None => Fault::about("jobs", entry),
    }
}

/// What lies on the invented shop's racks.
fn stock() -> Result<Stock, Problem> {
    Stock::read(demo::STOCK.as_bytes()).map_err(|faults| {
        let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
        Problem::fault(&faults.join("; "))
    })
}

fn plan_of(planned: &planning::PlannedDay) -> Result<Plan, OtherKind> {
    let sizes: Vec<&sizing::Sizes> = planned.sizes.iter().collect();
    let day = &planned.day;
    let materials = paperwork::cut_materials_of_day(
        day,
        &planned.plans,
        &planned.outcome,
        &sizes,
        &planned.settings,
    )?;
    let orders = day.jobs.iter().map(|job| job.name.clone());
    Ok(Plan::now(
        orders.collect(),
        materials,
        paperwork::unplanned(day),
        "/bench",
    ))
}

/// The form as it was filled in.
struct Asked {
    ticked: BTreeSet<String>,
    seconds: String,
    faults: Vec<Fault>,
}

impl Asked {
    /// The ticked jobs of the shop, in its order.
    fn jobs(&self, demo: bool) -> Vec<&'static DemoJob> {
        let all: &[DemoJob] = if demo { demo::JOBS } else { &[] };
        all.iter()
            .filter(|job| self.ticked.contains(job.name))
            .collect()
    }
}

async fn shown(desk: &Arc<Desk>, asked: Asked) -> Response {
    let page = desk.work(move |desk| {
        let status = if asked.faults.is_empty() {
            StatusCode::OK
        } else {
            StatusCode::UNPROCESSABLE_ENTITY
        };
        (status, page(desk, &asked))
    });
    match page.await {
        Ok(page) => page.into_response(),
        Err(problem) => trouble(&problem),
    }
}

fn page(desk: &Desk, asked: &Asked) -> Markup {
    let body = html! {
        (summary(&asked.faults))
        h1 { "The Bench" }
        @if desk.options.demo { (form(desk, asked)) } @else { (empty()) }
        section.other aria-labelledby="other" {
            h2 #other { "Something without a job" }
            p { "Shelves, crates, blanks for the window: " a href="/bench/list" { "cut from a list you type" } "." }
        }
    };
    Page {
        shop: &desk.options.shop,
        title: if asked.faults.is_empty() {
            "The Bench"
        } else {
            "Error: The Bench"
        },
        place: Place::Bench,
        kind: "cut",
        customer: false,
        body,
    }
    .whole()
}

fn empty() -> Markup {
    html! {
        p.lead {
            "There is no book yet, so the Bench knows no open jobs. Plan a list below, or plan job documents with "
            code { "rabbet cut jobs" } "."
        }
    }
}

fn form(desk: &Desk, asked: &Asked) -> Markup {
    let mut open: Vec<Open> = demo::JOBS.iter().map(|job| Open::of(desk, job)).collect();
    open.sort_by(|a, b| (a.due.is_none(), &a.due).cmp(&(b.due.is_none(), &b.due)));
    let wrong = is_wrong("jobs", &asked.faults);
    html! {
        p.lead {
            "Tick what is cut together. Every material is planned once over all ticked jobs: remnants and the rack \
             first, then what has to be bought. The jobs, the rack and its prices are invented."
        }
        form.plan method="post" action="/bench" novalidate data-waits="Planning. This page changes when the plan is there." {
            fieldset #jobs tabindex="-1" aria-describedby=[wrong.then_some("jobs-fault")] {
                legend { h2 { "Open jobs" } }
                (beside("jobs-fault", "jobs", &asked.faults))
                p.ticks {
                    a href="/bench" { "Tick all" } " · " a href="/bench?ticked=none" { "Tick none" }
                }
                ul.jobs { @for job in &open { li { (job.tick(asked)) } } }
            }
            (patience(&asked.seconds, &asked.faults))
        }
    }
}

/// A job with what is written beside its box.
struct Open {
    job: &'static DemoJob,
    due: Option<String>,
    words: Vec<String>,
    stops: usize,
    can_be_sized: bool,
}

impl Open {
    fn of(desk: &Desk, job: &'static DemoJob) -> Self {
        let mut open = Self {
            job,
            due: None,
            words: Vec::new(),
            stops: 0,
            can_be_sized: false,
        };
        match Piece::of(desk, job.toml.as_bytes()) {
            Ok(piece) => {
                let identity = &piece.job.identity;
                open.words.extend(identity.order.clone());
                let due = identity.due.as_ref();
                open.words
                    .extend(due.map(|due| format!("promised for {due}")));
                open.due.clone_from(&identity.due);
                open.stops = stops(&piece.sizes.faults);
                open.can_be_sized = true;
            }
            Err(refusal) => open.stops = refusal.entries().len(),
        }
        open
    }

    fn tick(&self, asked: &Asked) -> Markup {
        let id = format!("job-{}", self.job.name);
        let wrong = is_wrong(&id, &asked.faults);
        let fault = format!("{id}-fault");
        html! {
            @if self.can_be_sized {
                label for=(id) {
                    input id=(id) type="checkbox" name="job" value=(self.job.name)
                        checked[asked.ticked.contains(self.job.name)]
                        aria-invalid=[wrong.then_some("true")] aria-describedby=[wrong.then_some(&fault)];
                    span.title { (self.job.title) }
                    " " span.beside { (self.words.join(" · ")) }
                }
            } @else {
                p { span.title { (self.job.title) } }
            }
            @if self.stops > 0 {
                p.stop { "Stop: " (self.stops) " to mend on " a href={ "/piece/" (self.job.name) } { "its own page" } }
            }
            (beside(&fault, &id, &asked.faults))
        }
    }
}
