//! A list of pieces without a job: typed or pasted, then planned.

use std::sync::Arc;

use axum::extract::State;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect, Response};
use cutting::document::is_json;
use cutting::{Halt, OtherKind};
use maud::{Markup, html};
use paperwork::{CutMaterial, cut_material_of_instance, cut_material_of_list};

use super::ask::{self, Fault, Sent, is_wrong, patience, summary};
use crate::desk::Desk;
use crate::kept::Plan;
use crate::page::shell::{Page, Place};
use crate::page::trouble::trouble;
use crate::planning::{self, Patience, USUAL};
use crate::problem::{Kind, Problem};

/// Shows an example to type over.
pub(crate) async fn cut_list(State(desk): State<Arc<Desk>>) -> Response {
    let asked = Asked {
        list: demo::CUT_LIST.to_owned(),
        seconds: USUAL.to_string(),
        faults: Vec::new(),
    };
    page(&desk, &asked)
}

/// Plans the list, holds the plan, and leads to it.
pub(crate) async fn cut_listed(State(desk): State<Arc<Desk>>, sent: Sent) -> Response {
    let lines = match ask::lines(sent) {
        Ok(lines) => lines,
        Err(problem) => return trouble(&problem),
    };
    let mut asked = Asked {
        list: ask::line(&lines, "list").replace("\r\n", "\n"),
        seconds: ask::line(&lines, "seconds").to_owned(),
        faults: Vec::new(),
    };
    let seconds = match ask::seconds(&asked.seconds) {
        Ok(seconds) => seconds,
        Err(fault) => {
            asked.faults.push(fault);
            return page(&desk, &asked);
        }
    };
    let list = asked.list.clone();
    let made = desk.plan(move |desk, left| {
        plan_of(desk, &list, Patience::seconds(seconds), left).map(|plan| desk.plans.hold(plan))
    });
    match made.await.and_then(|made| made) {
        Ok(id) => Redirect::to(&format!("/bench/plan/{id}")).into_response(),
        Err(problem)
            if matches!(problem.kind, Kind::Document | Kind::Cuts)
                && !problem.errors.is_empty() =>
        {
            let entries = problem.errors.iter();
            asked.faults = entries.map(|entry| Fault::about("list", entry)).collect();
            page(&desk, &asked)
        }
        Err(problem) => trouble(&problem),
    }
}

fn plan_of(desk: &Desk, list: &str, patience: Patience, left: &Halt) -> Result<Plan, Problem> {
    let materials: Result<Vec<CutMaterial>, OtherKind> = if is_json(list) {
        let planned = planning::instances(list, patience, left)?;
        let both = planned.instances.iter().zip(&planned.plans);
        both.map(|(one, plan)| cut_material_of_instance(one, plan))
            .collect()
    } else {
        let planned = planning::list(desk, list, patience, left)?;
        let (settings, unit) = (&planned.settings, planned.units.unit());
        let both = planned.batches.iter().zip(&planned.plans);
        both.map(|(batch, plan)| cut_material_of_list(batch, plan, settings, unit))
            .collect()
    };
    let materials = materials.map_err(|other| Problem::fault(&other))?;
    Ok(Plan::now(Vec::new(), materials, Vec::new(), "/bench/list"))
}

/// The form as it was filled in.
struct Asked {
    list: String,
    seconds: String,
    faults: Vec<Fault>,
}

fn page(desk: &Desk, asked: &Asked) -> Response {
    let failed = !asked.faults.is_empty();
    let body = html! {
        (summary(&asked.faults))
        h1 { "Cut from a list" }
        p.lead {
            "Type or paste what there is and what is wanted; the example shows the form. Nothing of it is kept. "
            "A cutting problem in JSON is read as well. "
            a href="/bench" { "Back to the jobs" }
        }
        (form(asked))
    };
    let whole = Page {
        shop: &desk.options.shop,
        title: if failed {
            "Error: Cut from a list"
        } else {
            "Cut from a list"
        },
        place: Place::Bench,
        kind: "cut",
        customer: false,
        body,
    };
    let status = if failed {
        StatusCode::UNPROCESSABLE_ENTITY
    } else {
        StatusCode::OK
    };
    (status, whole.whole()).into_response()
}

fn form(asked: &Asked) -> Markup {
    let wrong = is_wrong("list", &asked.faults);
    let described = if wrong {
        "list-hint list-fault"
    } else {
        "list-hint"
    };
    html! {
        form.plan method="post" action="/bench/list" novalidate data-waits="Planning. This page changes when the plan is there." {
            div.list {
                label for="list" { "Cut list" }
                p.hint #list-hint {
                    "Sticks, sheets and pieces, each under its own heading in brackets. Lengths as you say them: 22 1/2, 8 ft, 428.6 mm."
                }
                (ask::beside("list-fault", "list", &asked.faults))
                textarea #list name="list" rows="22" spellcheck="false" autocapitalize="off" autocomplete="off" wrap="off"
                    aria-describedby=(described) aria-invalid=[wrong.then_some("true")] { "\n" (asked.list) }
            }
            (patience(&asked.seconds, &asked.faults))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::is_json;

    #[test]
    fn lists_and_instances_are_told_apart() {
        for json in ["{}", "\u{feff} {\"dim\": 1}", "[{}]", "[ ]"] {
            assert!(is_json(json), "{json}");
        }
        for toml in ["", "units = \"in\"", "[[piece]]", "# a list\n[[piece]]"] {
            assert!(!is_json(toml), "{toml}");
        }
    }
}
