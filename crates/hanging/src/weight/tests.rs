//! Expected numbers: sums done with a pencil.

use measure::Mass;
use sizing::derive;
use trade::{Catalogue, Job, Medium, Settings};
use working::Working;

use super::{Weight, weigh};

fn weighed(rest: &str) -> Weight {
    let text = format!(
        "rabbet = 1\nunits = \"mm\"\n[[art]]\nwidth = \"1000\"\nheight = \"1000\"\nshow = \"bleed\"\n{rest}"
    );
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let shop = Settings::defaults(job.units);
    let sizes = derive(&job, &Catalogue::starter(), &shop).unwrap_or_else(|f| panic!("{f:#?}"));
    let mut working = Working::new();
    let weight = weigh(&sizes, Medium::Print, &mut working);
    assert_eq!(working.recheck(), []);
    weight
}

/// A square metre: glass 7.5 kg, paper 200 g, corrugated board 510 g. The frame: 25 × 18 less 6 × 12 mm,
/// 1041 mm square outside, round the middle of its face 4064 mm, at 600 kg/m³.
#[test]
fn a_piece_weighs_as_much_as_its_parts() {
    let weight = weighed(
        "[[glazing]]\nsheet = \"glass-3\"\n[[backing]]\nboard = \"corrugated-3\"\n[[frame]]\nmoulding = \"ash-metric-25\"\nallowance = \"3\"\n",
    );
    let grams: Vec<f64> = weight
        .parts
        .iter()
        .map(|part| part.mass.value.approx_kg() * 1e3)
        .collect();
    // Outside: 1003 - 12 + 50 = 1041. Round: 4 × 1041 - 4 × 25 = 4064. Section: 378 mm².
    let frame = 378.0 * 4064.0 * 600.0 / 1e6;
    for (found, expected) in grams.iter().zip([frame, 7500.0, 200.0, 510.0]) {
        assert!((found - expected).abs() < 1e-6, "{grams:?}");
    }
    let sum: Mass = weight.parts.iter().map(|part| part.mass.value).sum();
    assert_eq!(weight.total.value, sum);
    assert!(weight.unknown.is_empty());
}

#[test]
fn what_nobody_knows_is_named() {
    let weight = weighed("[[backing]]\nthickness = \"3\"\n[[frame]]\nface = \"25\"\nlip = \"6\"\n");
    assert_eq!(weight.unknown, ["Frame", "Backing"]);
}
