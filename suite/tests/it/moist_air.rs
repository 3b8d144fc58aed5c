//! Moist air over a grid, against `PsychroLib` (ASHRAE Fundamentals 2017).

use conservation::climate::{Air, moist_air};
use serde_json::{Value, json};
use working::{Figure, Stated, Working};

/// From a cold attic to a hot car, dry to almost saturated, at sea level and in the mountains.
fn questions() -> Vec<[f64; 3]> {
    let mut found = Vec::new();
    for celsius in [
        -20.0, -10.0, -1.0, 0.5, 5.0, 12.0, 18.0, 20.0, 25.0, 33.0, 45.0,
    ] {
        for humidity in [2.0, 15.0, 30.0, 45.0, 50.0, 60.0, 75.0, 90.0, 99.0] {
            for pressure in [101_325.0, 80_000.0] {
                found.push([celsius, humidity, pressure]);
            }
        }
    }
    found
}

/// How far ours may lie from the library's: pressures and ratios are the same formulas; temperatures are searched
/// for, and the library stops its search at a thousandth of a degree.
const APART: [(&str, f64, f64); 5] = [
    ("saturation", 1e-9, 0.0),
    ("vapour", 1e-9, 0.0),
    ("dew point", 0.0, 1.5e-3),
    ("wet bulb", 0.0, 1.5e-3),
    ("ratio", 1e-9, 0.0),
];

#[test]
fn moist_air_agrees_with_psychrolib() {
    let questions = questions();
    let answers = crate::python::ask("moist_air.py", &json!(questions));
    assert_eq!(answers.len(), questions.len());
    for (question, answer) in questions.iter().zip(&answers) {
        agrees(*question, answer);
    }
}

fn agrees([celsius, humidity, pressure]: [f64; 3], answer: &Value) {
    let air = Air {
        pressure: Stated::job(Figure::of(pressure, "Pa")),
        ..Air::asked(celsius, humidity)
    };
    let mut working = Working::new();
    let own = moist_air(&air, &mut working).expect("it is air");
    assert_eq!(working.recheck(), [], "{celsius} °C, {humidity}%");
    let own = [
        own.saturation,
        own.vapour,
        own.dew_point,
        own.wet_bulb,
        own.ratio,
    ];
    for (index, (name, relative, absolute)) in APART.into_iter().enumerate() {
        let theirs = answer[index].as_f64().expect("a number");
        let ours = own[index].value.value();
        // Within a degree of freezing a wet and a frozen bulb may both hold, and the library takes either.
        let frozen = name == "wet bulb" && theirs.abs() < 1.0;
        let most = if frozen {
            1.0
        } else {
            absolute.max(relative * theirs.abs())
        };
        assert!(
            (ours - theirs).abs() <= most,
            "{name} at {celsius} °C, {humidity}%, {pressure} Pa: {ours}, PsychroLib {theirs}"
        );
    }
}
