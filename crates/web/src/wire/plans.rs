//! Plans of the cutting room, in its own form.

use cutting::document::{Written, lengths_plan, sheets_plan};
use cutting::{Plan, Problem};
use serde_json::{Value, json};

/// Plans as `cutting-plans/1`, or a single one as `cutting-plan/1` where it is no set.
///
/// Shape:  each plan is one of the problem at its place, and was checked.
/// Units:  `unit` names what the numbers count, where that is known: `1/128 in`.
pub fn plans(problems: &[Problem], plans: &[Plan], unit: Option<&str>, set: bool) -> Value {
    let both = problems.iter().zip(plans);
    let mut written: Vec<Value> = both
        .filter_map(|both| written(both.0, both.1))
        .map(|one| {
            let mut plan = json!(one);
            if let Some(unit) = unit {
                plan["unit"] = unit.into();
            }
            plan
        })
        .collect();
    if !set && written.len() == 1 {
        return written.remove(0);
    }
    json!({ "format": "cutting-plans/1", "plans": written })
}

/// Nothing where the plan is of the other kind; one that was checked never is.
fn written(problem: &Problem, plan: &Plan) -> Option<Written> {
    match (problem, plan) {
        (Problem::Lengths(problem), Plan::Lengths(plan)) => Some(lengths_plan(problem, plan)),
        (Problem::Sheets(problem), Plan::Sheets(plan)) => Some(sheets_plan(problem, plan)),
        _ => None,
    }
}
