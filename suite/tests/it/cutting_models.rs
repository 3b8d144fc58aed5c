//! Plans as cheap as integer programs prove the cheapest to be.
//!
//! Source: `suite/python/cutting_models.py`, which names the models and solves them with `highspy`.

use cutting::document::read;
use cutting::{Goal, Plan, Problem, Trying, Unwatched, lengths, sheets};
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use serde_json::{Value, json};

use crate::python::ask;

const STICKS: usize = 60;
const SHEETS: usize = 40;
/// A step is an entry of a table for sticks and a good deal more for sheets.
const STICK_STEPS: u64 = 400_000_000;
const SHEET_STEPS: u64 = 20_000_000;

/// As many as one likes, or a few.
fn held(scarce: bool) -> impl Strategy<Value = Option<u64>> {
    prop_oneof![
        u32::from(!scarce) => Just(None),
        1 => (1_u64..=3).prop_map(Some)
    ]
}

fn objective() -> impl Strategy<Value = &'static str> {
    select(vec!["cost", "cost", "bins"])
}

/// Up to 25 pieces from up to four kinds of stick.
fn sticks() -> impl Strategy<Value = Value> {
    let stock = |scarce| {
        let one = (60_u64..=200, 80_u64..=120, held(scarce));
        proptest::collection::vec(one, 1..=4)
    };
    let stock = any::<prop::sample::Index>().prop_flat_map(move |draw| {
        let scarce = draw.index(5) == 0;
        (Just(scarce), stock(scarce))
    });
    let pieces = proptest::collection::vec((10_u64..=90, 1_u64..=4), 5..=10);
    (
        objective(),
        0_u64..=4,
        (0_u64..=3, 0_u64..=3),
        stock,
        pieces,
    )
        .prop_map(|(objective, kerf, trim, (scarce, stock), pieces)| {
            let stock = stock.into_iter().enumerate();
            let stock = stock.map(|(number, (length, percent, held))| {
                // The first takes every piece, as often as needed unless all are scarce.
                let (length, held) = match number {
                    0 => (
                        length.max(100),
                        held.filter(|_| scarce).map(|held| held + 2),
                    ),
                    _ => (length, held),
                };
                let cost = length * percent / 100;
                json!({"id": format!("s{number}"), "l": length, "cost": cost, "qty": held})
            });
            let mut left = 25;
            let pieces = pieces
                .into_iter()
                .enumerate()
                .map(|(number, (length, count))| {
                    let count = count.min(left);
                    left -= count;
                    json!({"id": format!("p{number}"), "l": length, "qty": count})
                });
            json!({
                "dim": 1, "objective": objective, "kerf": kerf, "trim": [trim.0, trim.1],
                "stock": stock.collect::<Vec<_>>(),
                "pieces": pieces.filter(|piece| piece["qty"] != 0).collect::<Vec<_>>(),
            })
        })
}

/// 6 to 14 pieces (8 where some may be turned) from up to three kinds of sheet, in two stages.
fn flat() -> impl Strategy<Value = Value> {
    let of_stock = (60_u64..=120, 60_u64..=120, 80_u64..=120, held(false));
    let stock = proptest::collection::vec(of_stock, 1..=3);
    let pieces = any::<bool>().prop_flat_map(|turn| {
        let of_piece = (12_u64..=58, 12_u64..=58, any::<bool>());
        let most = if turn { 8 } else { 14 };
        let pieces = proptest::collection::vec(of_piece, 6..=most);
        (Just(turn), pieces)
    });
    let rules = (objective(), 0_u64..=3, any::<bool>(), 0_u8..=4, 0_u64..=2);
    (rules, stock, pieces).prop_map(|(rules, stock, (turn, pieces))| {
        let (objective, kerf, upright, trims, trim) = rules;
        let stock = stock.into_iter().enumerate();
        let stock = stock.map(|(number, (width, height, percent, held))| {
            let cost = width * height * percent / 2000;
            let held = held.filter(|_| number > 0);
            json!({"id": format!("s{number}"), "w": width, "h": height, "cost": cost, "qty": held})
        });
        let pieces = pieces.into_iter().enumerate();
        let pieces = pieces.map(|(number, (width, height, own))| {
            // Without trimming few pieces share a strip; three heights let them.
            let height = if trims == 0 {
                20 + height / 24 * 12
            } else {
                height
            };
            json!({"id": format!("p{number}"), "w": width, "h": height, "rot": turn && own})
        });
        json!({
            "dim": 2, "objective": objective, "kerf": kerf, "trim": [trim, 0, 0, trim],
            "stages": 2, "first_cut": if upright { "v" } else { "h" }, "final_trim": trims > 0,
            "stock": stock.collect::<Vec<_>>(), "pieces": pieces.collect::<Vec<_>>(),
        })
    })
}

/// Always the same ones.
fn drawn(prefix: &str, count: usize, instances: impl Strategy<Value = Value>) -> Value {
    let mut runner = TestRunner::deterministic();
    let mut draw = |number| {
        let tree = instances.new_tree(&mut runner).expect("nothing is refused");
        let mut instance = tree.current();
        instance["name"] = json!(format!("{prefix} {number}"));
        instance
    };
    let instances: Vec<Value> = (0..count).map(&mut draw).collect();
    json!({"defaults": {"format": "cutting-instance/1"}, "instances": instances})
}

/// Our plan, which holds by our own check.
fn planned(problem: &Problem) -> Plan {
    let steps = |effort| Trying {
        effort: Some(effort),
        ..Trying::default()
    };
    match problem {
        Problem::Lengths(problem) => {
            let plan = lengths::solve(problem, steps(STICK_STEPS), &Unwatched).expect("no fault");
            lengths::check(problem, &plan).expect("it holds");
            Plan::Lengths(plan)
        }
        Problem::Sheets(problem) => {
            assert_ne!(problem.goal, Goal::Value);
            let plan = sheets::solve(problem, steps(SHEET_STEPS), &Unwatched).expect("no fault");
            sheets::check(problem, &plan).expect("it holds");
            Plan::Sheets(plan)
        }
    }
}

/// How many plans are proven best by ourselves, and how many lists the stock does not reach for.
fn agree(set: &Value) -> (usize, usize) {
    let instances = read(&set.to_string()).expect("it reads");
    let answers = ask("cutting_models.py", set);
    assert_eq!(answers.len(), instances.len());
    let (mut proven, mut short, mut apart) = (0, 0, Vec::new());
    for (number, (instance, answer)) in instances.iter().zip(&answers).enumerate() {
        assert_eq!(answer["name"], instance.name);
        let plan = planned(&instance.problem);
        let least = answer["least"].as_u64();
        let agrees = match least {
            Some(least) => {
                plan.uncut().is_empty() && plan.objective() == least && plan.bound() <= least
            }
            None => !plan.uncut().is_empty(),
        };
        if !agrees {
            apart.push(format!(
                "{least:?} is best; ours {}, bound {}, {:?} uncut: {}",
                plan.objective(),
                plan.bound(),
                plan.uncut(),
                set["instances"][number]
            ));
        }
        proven += usize::from(plan.proven());
        short += usize::from(least.is_none());
    }
    assert!(apart.is_empty(), "{}", apart.join("\n"));
    (proven, short)
}

#[test]
fn sticks_agree_with_arc_flow() {
    let (proven, short) = agree(&drawn("sticks", STICKS, sticks()));
    assert_eq!(proven + short, STICKS, "{short} without stock");
    assert!((1..STICKS / 4).contains(&short), "{short} without stock");
}

#[test]
fn sheets_agree_with_the_level_model() {
    let (proven, short) = agree(&drawn("sheets", SHEETS, flat()));
    assert_eq!(short, 0);
    assert!(proven * 10 >= SHEETS * 9, "{proven} proven");
}
