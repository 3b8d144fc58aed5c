//! Whatever stands in a text, it is read, refused or checked, and never ends the program.

use serde_json::{Value, json};

use super::{DAY, DAY_PLANS, check};
use crate::chance::Chance;
use crate::document::{read, read_plans};

/// Values that stand where they do not belong.
fn odd(chance: &mut Chance) -> Value {
    let values = [
        json!(null),
        json!(true),
        json!(0),
        json!(1),
        json!(-1),
        json!(0.5),
        json!(u64::MAX),
        json!(1_u64 << 40),
        json!(1e300),
        json!(""),
        json!("s"),
        json!("window:p0"),
        json!([]),
        json!([1, 2]),
        json!([u64::MAX, u64::MAX, u64::MAX, u64::MAX]),
        json!({}),
        json!({"stick": "x"}),
    ];
    values[chance.below(values.len())].clone()
}

/// Puts something odd in a place drawn by lot, or takes the place away.
fn spoil(chance: &mut Chance, value: &mut Value) {
    let deeper = !chance.one_in(5);
    match value {
        Value::Array(list) if deeper && !list.is_empty() => {
            let at = chance.below(list.len());
            spoil(chance, &mut list[at]);
        }
        Value::Object(object) if deeper && !object.is_empty() => {
            let at = chance.below(object.len());
            let field = object.keys().nth(at).cloned().unwrap_or_default();
            if chance.one_in(12) {
                object.remove(&field);
            } else {
                spoil(chance, &mut object[&field]);
            }
        }
        other => *other = odd(chance),
    }
}

#[test]
fn an_odd_text_is_read_or_refused() {
    let mut chance = Chance::new(11);
    let set: Value = serde_json::from_str(DAY).expect("JSON");
    let plans: Value = serde_json::from_str(DAY_PLANS).expect("JSON");
    let (mut readable, mut refused, mut checked) = (0, 0, 0);
    for _ in 0..1500 {
        let (mut set, mut plans) = (set.clone(), plans.clone());
        for _ in 0..chance.below(3) {
            spoil(&mut chance, &mut set);
        }
        for _ in 0..chance.below(3) {
            spoil(&mut chance, &mut plans);
        }
        let Ok(instances) = read(&set.to_string()) else {
            refused += 1;
            continue;
        };
        readable += 1;
        for plan in read_plans(&plans.to_string(), &instances).unwrap_or_default() {
            // Either verdict will do; numbers beyond counting must not end the program.
            let verdict = check(&instances[plan.instance], &plan.plan);
            checked += usize::from(verdict.is_ok() || verdict.is_err());
        }
    }
    assert!(readable > 300 && refused > 300 && checked > 1000);
}
