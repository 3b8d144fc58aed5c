//! How a piece is held, against sums done with a pencil.

use measure::Length;
use sizing::derive;
use trade::{Catalogue, Job, Settings};

use super::{Held, held};

fn hold(rest: &str) -> Option<Held> {
    let text = format!(
        "rabbet = 1\nunits = \"in\"\n[[frame]]\nmoulding = \"cove-gilt-2\"\n[borders]\nall = \"3\"\n[[mat]]\nboard = \"mat-4-museum\"\n{rest}"
    );
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(&job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let found = held(&job, &sizes);
    if let Some(found) = &found {
        assert_eq!(found.working.recheck(), []);
    }
    found
}

const ART: &str = "[[art]]\nwidth = \"20\"\nheight = \"16\"\noverlap = \"1/4\"\ngrammage = 300\n";

/// Hinges 2 in in from the corners of 20 in: at 2 and 18; a third between them at 10.
#[test]
fn hinges_stand_evenly_between_the_outer_ones() {
    let found = hold(&format!("{ART}[attachment]\ncount = 3\n")).expect("it is held");
    let places: Vec<Length> = found.places.iter().map(|place| place.value).collect();
    assert_eq!(places, [2, 10, 18].map(Length::inches));
    // 300 g/m² × 0.508 m × 0.4064 m = 61.94 g; a third of its pull 0.2025 N.
    let load = found.load.expect("a load");
    assert!((load.sheet.value.value() - 61.935).abs() < 1e-3);
    assert!((load.share.value.value() - 0.202_46).abs() < 1e-4);
    assert!(load.wanted.value.value() > load.share.value.value());
}

#[test]
fn a_hinge_heavier_than_the_art_does_not_give_first() {
    let gives = |grams| {
        let text = format!("{ART}[attachment]\ngrammage = {grams}\n");
        hold(&text)
            .and_then(|held| held.gives_first)
            .map(|line| line.value)
    };
    assert_eq!(gives(40), Some(true));
    assert_eq!(gives(320), Some(false));
}

#[test]
fn corners_come_four_to_a_sheet() {
    let found = hold(&format!("{ART}[attachment]\nhold = \"corners\"\n")).expect("it is held");
    assert_eq!(found.count.map(|count| count.value), Some(4));
    assert!(found.places.is_empty() && found.load.is_none());
    assert!(found.grows.is_some());
}

#[test]
fn what_nobody_said_is_not_made_up() {
    assert!(hold(ART).is_none());
}
