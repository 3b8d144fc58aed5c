//! What another light buys, against the arithmetic of the dose.

use sizing::derive;
use trade::{Catalogue, Job, Settings};

use super::{Outlook, outlook};
use crate::advice::Change;
use crate::light::Class;

fn look(rest: &str) -> Option<Outlook> {
    let text = format!(
        "rabbet = 1\nunits = \"in\"\n[[frame]]\nmoulding = \"cove-gilt-2\"\n[[art]]\nwidth = \"8\"\nheight = \"10\"\n{rest}"
    );
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(&job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let found = outlook(&job, &sizes, &catalogue).unwrap_or_else(|refusal| panic!("{refusal}"));
    if let Some(found) = &found {
        assert_eq!(found.working.recheck(), []);
    }
    found
}

const GLASS: &str = "medium = \"photograph\"\n[[glazing]]\nsheet = \"glass-2.5\"\n";

/// Wool 1: 0.3 Mlx h with ultraviolet, 0.44 or so without; removing it buys the table's ratio, half the light twice.
#[test]
fn half_the_light_doubles_the_years_and_glass_buys_less() {
    let found = look(&format!(
        "{GLASS}[place]\nlux = 200\nhours = 10\ndays = 300\n"
    ))
    .expect("it fades");
    assert_eq!(found.class, Class::High);
    let now = found.now.years.low.value.value();
    let of = |wanted: &dyn Fn(&Change) -> bool| {
        let mut would = found.would.iter();
        let kept = would.find(|kept| kept.change.as_ref().is_some_and(wanted));
        kept.expect("an alternative").years.low.value.value() / now
    };
    let half = of(&|change| matches!(change, Change::ShowAt(100)));
    assert!((half - 2.0).abs() < 1e-9, "{half}");
    let quarter = of(&|change| matches!(change, Change::ShowAt(50)));
    assert!((quarter - 4.0).abs() < 1e-9, "{quarter}");
    let rested = of(&|change| matches!(change, Change::ShowDays(150)));
    assert!((rested - 2.0).abs() < 1e-9, "{rested}");
    let filtered = of(&|change| matches!(change, Change::SetGlazing { .. }));
    assert!(filtered > 1.0 && filtered < 2.0, "{filtered}");
    assert!(
        found
            .would
            .is_sorted_by(|a, b| { a.years.low.value.value() >= b.years.low.value.value() })
    );
}

#[test]
fn what_is_there_already_buys_nothing() {
    let text =
        format!("{GLASS}[place]\nlux = 50\nlamp = \"led\"\n").replace("glass-2.5", "glass-uv-2.5");
    let found = look(&text).expect("it fades");
    assert!(found.now.without_uv);
    let glazing =
        |change: &Change| matches!(change, Change::SetGlazing { .. } | Change::SetLamp(_));
    assert!(
        found
            .would
            .iter()
            .all(|kept| !kept.change.as_ref().is_some_and(glazing))
    );
}

#[test]
fn a_looking_glass_does_not_fade() {
    assert!(look("medium = \"mirror\"\n").is_none());
}

#[test]
fn a_named_medium_counts_for_more_than_the_usual_one() {
    let found = look(
        &format!("colours = \"felt-tip pen, most colours and blacks\"\n{GLASS}")
            .replace("photograph", "canvas"),
    );
    assert_eq!(found.expect("it fades").class, Class::High);
}
