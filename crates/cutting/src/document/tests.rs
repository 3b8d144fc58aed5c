mod hostile;
mod outside;
mod refusals;

use super::{Best, Instance, lengths_plan, plans, read, read_plans, sheets_plan};
use crate::lengths::{self, Together};
use crate::sheets::check::tests::cut_up;
use crate::sheets::{self, Edges, First, Rules};
use crate::{Broken, Goal, Tally};
use crate::{Plan, Problem};

/// Nine of the tasks of a generated shop day, with values known for them.
const DAY: &str = include_str!("../../../../suite/ref/cutting/day.json");
/// Plans for them that a general research solver made; they list no cuts.
const DAY_PLANS: &str = include_str!("../../../../suite/ref/cutting/day_plans.json");

fn one(text: &str) -> Instance {
    let mut instances = read(text).expect("the text can be read");
    assert_eq!(instances.len(), 1);
    instances.remove(0)
}

fn check(instance: &Instance, plan: &Plan) -> Result<Tally, Broken> {
    match (&instance.problem, plan) {
        (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
        (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
        _ => panic!("a plan of the other kind"),
    }
}

#[test]
fn every_field_of_sheets_is_read() {
    let instance = one(
        r#"{"format":"cutting-instance/1","name":"n","family":"f","dim":2,"unit":"1/64 in",
        "objective":"cost","kerf":0,"trim":[1,2,3,4],"guillotine":true,"stages":3,"first_cut":"h",
        "final_trim":false,"min_strip":7,"rotate":false,"use_windows":true,
        "stock":[{"id":"s","w":100,"h":60,"qty":null,"cost":9,"trim":[0,0,0,5]},
                 {"id":"r","w":50,"h":40,"qty":1,"remnant":true}],
        "pieces":[{"id":"a","w":20,"h":10,"qty":2,"value":5,"rot":true,"window":[8,6],"priority":2,"due":14},
                  {"id":"b","w":5,"h":4}],
        "best":{"ub":12,"lb":11,"status":"SEEN","source":"somewhere"}}"#,
    );
    assert_eq!(instance.family.as_deref(), Some("f"));
    let best = Best {
        known: Some(12),
        bound: Some(11),
    };
    assert_eq!(instance.best, Some(best));
    let Problem::Sheets(problem) = instance.problem else {
        panic!("it is of sheets");
    };
    let rules = Rules {
        kerf: 0,
        stages: Some(3),
        first: First::Level,
        final_trim: false,
        least_strip: 7,
    };
    assert_eq!((problem.name.as_str(), problem.goal), ("n", Goal::Cost));
    assert_eq!(problem.rules, rules);
    let (sheet, remnant) = (&problem.stock[0], &problem.stock[1]);
    assert_eq!((sheet.cost, sheet.count, sheet.trim.top), (9, None, 5));
    assert_eq!((sheet.trim.left, sheet.remnant), (0, false));
    assert_eq!((remnant.cost, remnant.count), (2000, Some(1)));
    let edges = Edges {
        left: 1,
        right: 2,
        bottom: 3,
        top: 4,
    };
    assert_eq!((remnant.trim, remnant.remnant), (edges, true));
    let (first, second) = (&problem.pieces[0], &problem.pieces[1]);
    assert_eq!((first.count, first.value, first.turn), (Some(2), 5, true));
    assert_eq!(
        (first.window, first.priority, first.due),
        (Some((8, 6)), 2, Some(14))
    );
    assert_eq!(
        (second.count, second.value, second.turn),
        (Some(1), 20, false)
    );
}

#[test]
fn every_field_of_sticks_is_read() {
    let instance = one(
        r#"{"name":"n","dim":1,"kerf":3,"trim":[5,1],"stages":null,"guillotine":true,
        "stock":[{"id":"s","l":100,"cost":9,"flaws":[[10,20],[30,31]],"run":"spring"},
                 {"id":"t","l":80,"qty":2,"trim":[0,4]}],
        "pieces":[{"id":"a","l":20,"qty":2,"together":{"stick":"frame"}},
                  {"id":"b","l":5,"together":{"run":"pair"},"priority":1,"due":0}]}"#,
    );
    assert_eq!(instance.best, None);
    let Problem::Lengths(problem) = instance.problem else {
        panic!("it is of sticks");
    };
    assert_eq!((problem.goal, problem.kerf), (Goal::Fewest, 3));
    let (first, second) = (&problem.stock[0], &problem.stock[1]);
    assert_eq!((first.cost, first.count, first.trim), (9, None, (5, 1)));
    assert_eq!(first.flaws, [(10, 20), (30, 31)]);
    assert_eq!(first.run.as_deref(), Some("spring"));
    assert_eq!(
        (second.cost, second.count, second.trim),
        (80, Some(2), (0, 4))
    );
    let (a, b) = (&problem.pieces[0], &problem.pieces[1]);
    assert_eq!(a.together, Some(Together::Stick("frame".to_owned())));
    assert_eq!((a.count, a.value, a.due), (Some(2), 20, None));
    assert_eq!(b.together, Some(Together::Run("pair".to_owned())));
    assert_eq!((b.count, b.priority, b.due), (Some(1), 1, Some(0)));
}

#[test]
fn what_is_not_given_has_its_default() {
    let instance = one(
        r#"{"name":"n","dim":2,"objective":"value","stock":[{"id":"s","w":10,"h":6}],
        "pieces":[{"id":"a","w":2,"h":3,"qty":null,"window":[1,1]}],"best":{"ub":60,"ceiling":null}}"#,
    );
    let best = Best {
        known: Some(60),
        bound: None,
    };
    assert_eq!(instance.best, Some(best));
    let Problem::Sheets(problem) = instance.problem else {
        panic!("it is of sheets");
    };
    assert_eq!(problem.goal, Goal::Value);
    assert!(problem.rules.final_trim);
    assert_eq!(problem.rules.stages, None);
    let piece = &problem.pieces[0];
    assert_eq!((piece.count, piece.value, piece.turn), (None, 6, true));
    assert_eq!(piece.window, None, "windows are not used unless asked for");
}

#[test]
fn a_set_lays_its_defaults_under_and_a_list_has_none() {
    let list = r#"[{"name":"x","dim":1,"stock":[],"pieces":[]},
        {"name":"y","dim":1,"kerf":4,"stock":[],"pieces":[]}]"#;
    let kerf = |instance: &Instance| match &instance.problem {
        Problem::Lengths(problem) => problem.kerf,
        Problem::Sheets(problem) => problem.rules.kerf,
    };
    let kerfs =
        |text: &str| -> Vec<u64> { read(text).expect("readable").iter().map(kerf).collect() };
    assert_eq!(kerfs(list), [0, 4]);
    let set = format!(
        r#"{{"format":"cutting-set/1","name":"s","defaults":{{"kerf":9}},"instances":{list}}}"#
    );
    assert_eq!(kerfs(&set), [9, 4]);
}

#[test]
fn plans_of_another_solver_hold() {
    let instances = read(DAY).expect("the day can be read");
    let read = read_plans(DAY_PLANS, &instances).expect("the plans can be read");
    assert_eq!(read.len(), instances.len());
    for plan in &read {
        let instance = &instances[plan.instance];
        let tally = check(instance, &plan.plan).unwrap_or_else(|broken| {
            panic!("{}: {broken}", instance.name);
        });
        let known = instance.best.and_then(|best| best.known);
        assert_eq!(
            Some(tally.objective),
            known.map(u128::from),
            "{}",
            instance.name
        );
        assert_eq!(tally.whole.stock, tally.whole.parts());
    }
}

#[test]
fn what_is_written_is_read_again() {
    let instances = read(DAY).expect("the day can be read");
    let day = read_plans(DAY_PLANS, &instances).expect("the plans can be read");
    let written: Vec<_> = day
        .iter()
        .map(
            |plan| match (&instances[plan.instance].problem, &plan.plan) {
                (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths_plan(problem, plan),
                (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets_plan(problem, plan),
                _ => panic!("a plan of the other kind"),
            },
        )
        .collect();
    assert_eq!(read_plans(&plans(&written), &instances), Ok(day));
    for seed in 0..50 {
        let (problem, plan) = cut_up(seed);
        let instance = Instance {
            name: problem.name.clone(),
            family: None,
            best: None,
            problem: Problem::Sheets(problem.clone()),
        };
        let text = sheets_plan(&problem, &plan).text();
        let again = read_plans(&text, &[instance]).expect("readable");
        assert_eq!(again[0].plan, Plan::Sheets(plan));
    }
}

#[test]
fn a_plan_of_sticks_is_written_in_full() {
    let instance = one(
        r#"{"name":"n","dim":1,"kerf":2,"stock":[{"id":"s","l":100}],
        "pieces":[{"id":"a","l":30,"qty":3},{"id":"b","l":60}]}"#,
    );
    let Problem::Lengths(problem) = &instance.problem else {
        panic!("it is of sticks");
    };
    let at = |piece, at| lengths::Placed { piece, at };
    let plan = lengths::Plan {
        layouts: vec![lengths::Layout {
            stock: 0,
            copies: 1,
            pieces: vec![at(0, 0), at(0, 32), at(0, 64)],
            remnants: vec![(96, 100)],
        }],
        objective: 1,
        bound: 1,
        uncut: vec![(1, 1)],
    };
    let text = lengths_plan(problem, &plan).text();
    assert_eq!(
        text,
        r#"{"format":"cutting-plan/1","instance":"n","objective":1,"bound":1,"sticks":[{"stock":"s","copies":1,"pieces":[{"id":"a","at":0},{"id":"a","at":32},{"id":"a","at":64}],"remnants":[{"at":96,"l":4}]}],"uncut":[{"id":"b","qty":1}]}"#
    );
    let again = read_plans(&text, std::slice::from_ref(&instance)).expect("readable");
    assert_eq!(again[0].plan, Plan::Lengths(plan));
}
