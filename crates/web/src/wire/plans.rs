//! Plans of the cutting room, in its own form.

use cutting::document::plan_of;
use cutting::{OtherKind, Plan, Problem};
use serde_json::{Value, json};

/// Plans as `cutting-plans/1`, or a single one as `cutting-plan/1` where it is no set.
///
/// Shape:  each plan is one of the problem at its place, and was checked.
/// Units:  `unit` names what the numbers count, where that is known: `1/128 in`.
///
/// # Errors
///
/// A plan for sheets where sticks were asked, or the other way: a fault of the program.
pub fn plans(
    problems: &[Problem],
    plans: &[Plan],
    unit: Option<&str>,
    set: bool,
) -> Result<Value, OtherKind> {
    let mut written = Vec::with_capacity(plans.len());
    for (problem, plan) in problems.iter().zip(plans) {
        let mut one = json!(plan_of(problem.with(plan)?));
        if let Some(unit) = unit {
            one["unit"] = unit.into();
        }
        written.push(one);
    }
    if !set && written.len() == 1 {
        return Ok(written.remove(0));
    }
    Ok(json!({ "format": "cutting-plans/1", "plans": written }))
}
