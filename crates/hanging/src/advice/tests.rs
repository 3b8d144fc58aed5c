//! Each cure is tried on a document and shown to cure.

use sizing::derive;
use trade::{Catalogue, Job, Settings};

use super::{Advised, advice};

fn job(width: u32, height: u32, rest: &str) -> Job {
    let text = format!(
        "rabbet = 1\nunits = \"in\"\n[[art]]\nwidth = \"{width}\"\nheight = \"{height}\"\noverlap = \"1/4\"\n\
         [borders]\nall = \"3\"\n[[mat]]\nboard = \"mat-4-conservation\"\n[mount]\nboard = \"mat-4-conservation\"\n{rest}"
    );
    Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"))
}

fn advised(job: &Job) -> Advised {
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let advised = advice(job, &sizes, &catalogue, &shop);
    assert_eq!(advised.working.recheck(), []);
    advised
}

/// The advice of this code stands, offers changes, and each of them takes it away.
fn check(job: &Job, code: &str) {
    let before = advised(job);
    let found = before
        .advice
        .iter()
        .find(|advice| advice.fault.code == code);
    let found = found.unwrap_or_else(|| panic!("{code}: {:#?}", before.advice));
    assert!(!found.changes.is_empty(), "{found:#?}");
    for change in &found.changes {
        let after = advised(&change.applied(job));
        let still = after.advice.iter().any(|advice| advice.fault.code == code);
        assert!(!still, "{}", change.sentence(job.units.unit()));
    }
}

const GLASS: &str = "[[glazing]]\nsheet = \"glass-3\"\n[[frame]]\n";

#[test]
fn a_heavy_piece_leaves_its_wire() {
    let heavy = format!(
        "{GLASS}moulding = \"scoop-3\"\n[[backing]]\nboard = \"hardboard-3\"\n[[glazing]]\nsheet = \"glass-3\"\n"
    );
    check(&job(50, 40, &heavy), "hanging.hardware");
}

#[test]
fn a_slender_rail_under_glass_gets_a_strainer() {
    let slender = format!("{GLASS}moulding = \"ash-round-3/4\"\n");
    check(&job(40, 30, &slender), "hanging.sag");
}

#[test]
fn a_small_piece_needs_no_advice() {
    let small = format!("{GLASS}moulding = \"cove-gilt-2\"\n");
    assert_eq!(advised(&job(8, 10, &small)).advice.len(), 0);
}

#[test]
fn a_flat_wire_gives_way_to_rings() {
    let wide = format!(
        "{GLASS}moulding = \"cove-gilt-2\"\n[settings]\n\"hanging.wire_rise\" = \"sixth\"\n\"hanging.least_angle\" = \"20\"\n"
    );
    check(&job(20, 16, &wide), "hanging.flat_wire");
}
