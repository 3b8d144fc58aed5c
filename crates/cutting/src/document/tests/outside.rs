//! Our check and one written independently, in another language, give the same verdicts.
//!
//! Source: `suite/ref/cutting/check_plan.py`; it shares no code with this crate.

use std::path::PathBuf;
use std::process::Command;

use serde_json::{Value, json};

use super::{DAY, DAY_PLANS, check};
use crate::chance::Chance;
use crate::document::{Instance, read, read_plans, sheets_plan};
use crate::sheets;
use crate::sheets::check::tests::cut_up;

/// Any Python 3 will do: the script needs no library.
fn python() -> PathBuf {
    let own = PathBuf::from(concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../target/reference/bin/python"
    ));
    match std::env::var_os("REFERENCE_PYTHON") {
        Some(named) => PathBuf::from(named),
        None if own.exists() => own,
        None => PathBuf::from("python3"),
    }
}

/// What the script says of each plan: whether it holds, and its own words.
fn verdicts(instances: &[Value], plans: &[Value]) -> Vec<(bool, String)> {
    let script = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../suite/ref/cutting/check_plan.py"
    );
    let folder = std::env::temp_dir().join(format!("cutting-check-{}", std::process::id()));
    std::fs::create_dir_all(&folder).expect("a folder can be made");
    let write = |name: &str, value: Value| {
        let path = folder.join(name);
        std::fs::write(&path, value.to_string()).expect("a file can be written");
        path
    };
    let output = Command::new(python())
        .arg(script)
        .arg(write("set.json", json!({ "instances": instances })))
        .arg(write("plans.json", json!({ "plans": plans })))
        .arg("--json")
        .output()
        .expect("Python starts");
    std::fs::remove_dir_all(&folder).expect("the folder can go");
    let text = String::from_utf8(output.stdout).expect("it answers in UTF-8");
    let told: Vec<(bool, String)> = text
        .lines()
        .map(|line| {
            let said: Value = serde_json::from_str(line).expect("it answers in JSON");
            (said["valid"] == true, line.to_owned())
        })
        .collect();
    assert_eq!(
        told.len(),
        plans.len(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    told
}

fn ours(instance: &Value, plan: &Value) -> (bool, String) {
    let instances: Vec<Instance> = read(&instance.to_string()).expect("readable");
    match read_plans(&plan.to_string(), &instances) {
        Ok(read) => match check(&instances[0], &read[0].plan) {
            Ok(tally) => (true, format!("{}", tally.objective)),
            Err(broken) => (false, broken.to_string()),
        },
        Err(refusals) => (false, refusals[0].to_string()),
    }
}

/// The instance of a sheet that was cut up at random, as JSON.
fn instance_of(problem: &sheets::Problem) -> Value {
    let stock = &problem.stock[0];
    let pieces: Vec<Value> = problem
        .pieces
        .iter()
        .map(|piece| json!({"id": piece.name, "w": piece.width, "h": piece.height, "qty": 1}))
        .collect();
    let trim = stock.trim;
    json!({
        "format": "cutting-instance/1", "name": problem.name, "dim": 2, "kerf": problem.rules.kerf,
        "trim": [trim.left, trim.right, trim.bottom, trim.top],
        "stock": [{"id": stock.name, "w": stock.width, "h": stock.height}],
        "pieces": pieces,
    })
}

/// Changes one number of a plan, or drops one cut, or narrows the rules.
fn spoil(chance: &mut Chance, instance: &mut Value, plan: &mut Value) {
    let layouts = if plan["sheets"].is_array() {
        "sheets"
    } else {
        "sticks"
    };
    let many = plan[layouts].as_array().map_or(0, Vec::len);
    let layout = chance.below(many);
    let rule = |instance: &mut Value, name: &str, value: Value| instance[name] = value;
    match chance.below(11) {
        0 => rule(instance, "stages", json!(1 + chance.below(4))),
        1 if instance["kerf"] == 0 => rule(instance, "min_strip", json!(2 + chance.below(30))),
        2 => {
            rule(instance, "rotate", json!(false));
        }
        3 => {
            rule(instance, "stages", json!(1 + chance.below(4)));
            rule(instance, "first_cut", json!(["v", "h"][chance.below(2)]));
            rule(instance, "final_trim", json!(chance.one_in(2)));
        }
        4 => plan["objective"] = json!(1 + chance.below(3)),
        5 => plan[layouts][layout]["copies"] = json!(chance.below(3)),
        6 | 7 => unlisted(chance, instance, plan),
        8 => {
            if let Some(cuts) = plan[layouts][layout]
                .get_mut("cuts")
                .and_then(Value::as_array_mut)
                && !cuts.is_empty()
            {
                cuts.remove(chance.below(cuts.len()));
            }
        }
        _ => nudge(chance, &mut plan[layouts][layout]),
    }
}

/// Takes the cuts away, so that both have to find some, under rules drawn anew.
fn unlisted(chance: &mut Chance, instance: &mut Value, plan: &mut Value) {
    for layout in plan["sheets"].as_array_mut().into_iter().flatten() {
        layout.as_object_mut().map(|layout| layout.remove("cuts"));
    }
    if chance.one_in(2) {
        instance["stages"] = json!(1 + chance.below(5));
        instance["first_cut"] = json!(["v", "h", "any"][chance.below(3)]);
        instance["final_trim"] = json!(chance.one_in(2));
    }
    // The script's own search takes no piece to be narrower than the least strip.
    let narrowest = plan["sheets"].as_array().into_iter().flatten();
    let narrowest = narrowest
        .flat_map(|layout| ["pieces", "remnants"].map(|list| &layout[list]))
        .filter_map(Value::as_array)
        .flatten()
        .flat_map(|part| [&part["w"], &part["h"]])
        .filter_map(Value::as_u64)
        .min();
    if let Some(narrowest) = narrowest
        && instance["kerf"] == 0
        && chance.one_in(2)
    {
        instance["min_strip"] = json!(narrowest.min(2 + u64::from(chance.one_in(2)) * 9));
    }
}

/// Moves or resizes one piece, cut or remnant by a little.
fn nudge(chance: &mut Chance, layout: &mut Value) {
    let list = ["pieces", "pieces", "cuts", "remnants"][chance.below(4)];
    let entries = layout.get_mut(list).and_then(Value::as_array_mut);
    let Some(entries) = entries.filter(|list| !list.is_empty()) else {
        return;
    };
    let entry = chance.below(entries.len());
    let entry = entries[entry].as_object_mut().expect("an object");
    let fields: Vec<String> = entry
        .iter()
        .filter(|(_, value)| value.is_u64())
        .map(|(field, _)| field.clone())
        .collect();
    let value = &mut entry[&fields[chance.below(fields.len())]];
    let old = value.as_u64().unwrap_or(0);
    *value = json!([old + 1, old + 3, old.saturating_sub(1)][chance.below(3)]);
}

/// The tasks of a day and sheets cut up at random, each spoiled in many ways.
fn cases() -> (Vec<Value>, Vec<Value>) {
    let set: Value = serde_json::from_str(DAY).expect("JSON");
    let plans: Value = serde_json::from_str(DAY_PLANS).expect("JSON");
    let mut sound: Vec<(Value, Value)> = Vec::new();
    for plan in plans["plans"].as_array().expect("a list") {
        let all = set["instances"].as_array().expect("a list");
        let own = all.iter().find(|own| own["name"] == plan["instance"]);
        let mut instance = set["defaults"].clone();
        for (field, value) in own.and_then(Value::as_object).expect("there is one") {
            instance[field] = value.clone();
        }
        sound.push((instance, plan.clone()));
    }
    for seed in 0..60 {
        let (problem, plan) = cut_up(seed);
        let written = sheets_plan(&problem, &plan).text();
        let plan = serde_json::from_str(&written).expect("JSON");
        sound.push((instance_of(&problem), plan));
    }
    let mut chance = Chance::new(3);
    let (mut instances, mut plans) = (Vec::new(), Vec::new());
    for number in 0..900 {
        let (mut instance, mut plan) = sound[number % sound.len()].clone();
        if number >= sound.len() {
            spoil(&mut chance, &mut instance, &mut plan);
        }
        let name = json!(format!("case {number}"));
        instance["name"] = name.clone();
        plan["instance"] = name;
        instances.push(instance);
        plans.push(plan);
    }
    (instances, plans)
}

#[test]
fn both_checks_give_the_same_verdicts() {
    let (instances, plans) = cases();
    let theirs = verdicts(&instances, &plans);
    let mut held = 0;
    for ((instance, plan), (theirs, why)) in instances.iter().zip(&plans).zip(&theirs) {
        let (ours, said) = ours(instance, plan);
        assert_eq!(
            ours, *theirs,
            "ours: {said}\ntheirs: {why}\n{instance}\n{plan}"
        );
        held += usize::from(ours);
    }
    let refused = plans.len() - held;
    assert!(
        held > 150 && refused > 300,
        "{held} held, {refused} refused"
    );
}
