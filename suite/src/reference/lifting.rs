//! Lifting.

use hanging::lift::{Grip, Lasting, Lift, lift};
use working::Working;

use super::answers::{Answers, asked, comes_out, number, refused};
use super::kinds::Kind;
use super::row::Row;
use super::tolerance::{Tolerance, by, part};

const MULTIPLIER: Tolerance = by(5.1e-5, "the table prints four decimals");

pub(super) static KINDS: &[Kind] = &[Kind {
    file: "lifting_cases.csv",
    inputs: &[
        "load_kg",
        "H_cm",
        "V_cm",
        "D_cm",
        "A_deg",
        "lifts_per_min",
        "duration_class",
        "coupling",
    ],
    outputs: &[
        ("HM", MULTIPLIER),
        ("VM", MULTIPLIER),
        ("DM", MULTIPLIER),
        ("AM", MULTIPLIER),
        ("FM", MULTIPLIER),
        ("CM", MULTIPLIER),
        ("RWL_kg", by(5.1e-4, "the table prints three decimals")),
        ("LI", part(1e-3, "the table prints three decimals")),
    ],
    answer,
}];

fn answer(row: &Row) -> Result<Answers, String> {
    let lasting = match row.text("duration_class") {
        "1" => Lasting::Hour,
        "2" => Lasting::TwoHours,
        "8" => Lasting::Day,
        other => return Err(format!("duration_class “{other}” is not 1, 2 or 8")),
    };
    let grip = match row.text("coupling") {
        "good" => Grip::Good,
        "fair" => Grip::Fair,
        "poor" => Grip::Poor,
        other => return Err(format!("coupling “{other}” is not good, fair or poor")),
    };
    let asks = Lift {
        load: asked(row.number("load_kg")?, "kg"),
        reach: asked(row.number("H_cm")?, "cm"),
        height: asked(row.number("V_cm")?, "cm"),
        travel: asked(row.number("D_cm")?, "cm"),
        turn: asked(row.number("A_deg")?, "°"),
        often: asked(row.number("lifts_per_min")?, "1/min"),
        lasting,
        grip,
    };
    let mut working = Working::new();
    let found = lift(&asks, &mut working).map_err(refused)?;
    comes_out(&working)?;
    let columns = ["HM", "VM", "DM", "AM", "FM", "CM"];
    let multipliers = found.multipliers.map(|line| line.value.value());
    let mut answers: Answers = columns
        .into_iter()
        .zip(multipliers)
        .map(|(column, value)| number(column, value))
        .collect();
    answers.push(number("RWL_kg", found.limit.value.value()));
    answers.extend(found.index.map(|index| number("LI", index.value.value())));
    Ok(answers)
}
