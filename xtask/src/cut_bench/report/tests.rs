use std::time::Duration;

use cutting::Plan;
use cutting::document::{Instance, read};

use super::{faults, heading, row, summary};
use crate::cut_bench::outside::Answer;
use crate::cut_bench::{Row, ours};

/// Sixty pieces of 30 out of sticks of 100: three to a stick.
fn instance(best: &str) -> Instance {
    let text = format!(
        r#"{{"name":"n","dim":1,"family":"f","stock":[{{"id":"s","l":100}}],
        "pieces":[{{"id":"a","l":30,"qty":60}}],"best":{best}}}"#
    );
    read(&text).expect("readable").remove(0)
}

fn solved(instance: &Instance, reference: Option<Answer>) -> Row<'_> {
    Row {
        instance,
        ours: ours::solve(&instance.problem, Duration::from_secs(5), 1),
        reference,
    }
}

fn printed(rows: &[Row<'_>]) -> String {
    let mut out = Vec::new();
    let chosen: Vec<&Instance> = rows.iter().map(|row| row.instance).collect();
    heading(5.0, None, &chosen, &mut out).expect("it prints");
    for one in rows {
        row(one, 10, &mut out).expect("it prints");
    }
    summary(rows, &mut out).expect("it prints");
    String::from_utf8(out).expect("text")
}

#[test]
fn a_row_shows_both_and_the_summary_adds_up() {
    let instance = instance(r#"{"ub":20,"lb":20}"#);
    let answer = Answer {
        value: Some(25),
        bound: Some(20),
        seconds: Some(5.0),
        ..Answer::default()
    };
    let rows = [solved(&instance, Some(answer))];
    assert_eq!(faults(&rows[0]), [""; 0]);
    let said = printed(&rows);
    assert!(
        said.contains("1 instances, 5 s each, no reference"),
        "{said}"
    );
    assert!(said.contains("0.8000"), "the ratio 20 to 25: {said}");
    assert!(
        said.contains("known: 1 at best known (0 better), 0 worse; 20 against 20"),
        "{said}"
    );
    assert!(
        said.contains("reference: 1 better, 0 equal, 0 worse; 20 against 25; it proved 0"),
        "{said}"
    );
}

#[test]
fn a_plan_below_a_recorded_bound_fails_the_run() {
    let instance = instance(r#"{"ub":22,"lb":21}"#);
    let rows = [solved(&instance, None)];
    let said = faults(&rows[0]).join("; ");
    assert!(said.contains("20 BEYOND THE RECORDED BOUND 21"), "{said}");
    assert!(printed(&rows).contains("1 failed"));
}

#[test]
fn a_bound_above_a_known_value_fails_the_run() {
    let instance = instance(r#"{"ub":20}"#);
    let mut row = solved(&instance, None);
    assert_eq!(faults(&row), [""; 0]);
    let Ok(Plan::Lengths(plan)) = &mut row.ours.outcome else {
        panic!("there is a plan");
    };
    plan.bound = 21;
    assert_eq!(faults(&row), ["BOUND 21 BEYOND THE KNOWN 20"]);
}

#[test]
fn no_plan_and_a_refused_plan_fail_the_run() {
    let instance = instance("{}");
    let mut row = solved(&instance, None);
    row.ours.checked = Some(Err("layout 1: it holds 0 pieces".to_owned()));
    assert_eq!(faults(&row), ["REFUSED: layout 1: it holds 0 pieces"]);
    row.ours.checked = None;
    row.ours.outcome = Err(vec!["there is no stock".to_owned()]);
    assert_eq!(faults(&row), ["NO PLAN: there is no stock"]);
}
