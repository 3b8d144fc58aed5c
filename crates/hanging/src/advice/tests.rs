//! Each cure is tried on a document and shown to cure.

use conservation::advice::Change;
use conservation::caution::Caution;
use sizing::derive;
use trade::{Catalogue, Job, Settings};

use super::{Advised, advice, looked_over};

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
fn a_small_piece_hangs_without_advice() {
    let small = format!("{GLASS}moulding = \"cove-gilt-2\"\n");
    let found = advised(&job(8, 10, &small));
    let hanging = |code: &&str| code.starts_with("hanging.");
    let codes: Vec<&str> = codes(&found).into_iter().filter(hanging).collect();
    assert_eq!(codes, [""; 0]);
}

fn codes(advised: &Advised) -> Vec<&'static str> {
    advised
        .advice
        .iter()
        .map(|advice| advice.fault.code)
        .collect()
}

#[test]
fn a_flat_wire_gives_way_to_rings() {
    let wide = format!(
        "{GLASS}moulding = \"cove-gilt-2\"\n[settings]\n\"hanging.wire_rise\" = \"sixth\"\n\"hanging.least_angle\" = \"20\"\n"
    );
    check(&job(20, 16, &wide), "hanging.flat_wire");
}

/// The strainer is not taken at its word: its own stiffness is in the sag, and a slip of wood does not cure it.
#[test]
fn a_strainer_is_counted_and_not_believed() {
    let slender = format!("{GLASS}moulding = \"ash-round-3/4\"\n");
    let with = |width: &str| {
        let strainer = format!("{slender}[strainer]\nwidth = \"{width}\"\ndepth = \"1/4\"\n");
        advised(&job(40, 30, &strainer))
    };
    let slip = with("1/4");
    let sag = slip
        .advice
        .iter()
        .find(|advice| advice.fault.code == "hanging.sag");
    let sag = sag.unwrap_or_else(|| panic!("{:#?}", codes(&slip)));
    assert!(
        sag.fault.found.contains("its strainer with it"),
        "{}",
        sag.fault.found
    );
    assert!(!codes(&with("3")).contains(&"hanging.sag"));
}

#[test]
fn what_nobody_weighed_is_said_and_a_scale_settles_it() {
    let canvas = "[[frame]]\nface = \"2\"\nlip = \"1/4\"\n";
    let unknown = job(20, 16, canvas);
    assert!(codes(&advised(&unknown)).contains(&"hanging.unweighed"));
    let known = job(20, 16, &format!("[hardware]\ngrams = 3000\n{canvas}"));
    assert!(!codes(&advised(&known)).contains(&"hanging.unweighed"));
}

#[test]
fn a_piece_for_two_hooks_has_its_wire_measured_for_them() {
    let heavy = "[hardware]\ngrams = 12000\n[[frame]]\nmoulding = \"scoop-3\"\n";
    check(&job(30, 24, heavy), "hanging.hooks");
}

#[test]
fn a_heavy_piece_takes_two_people() {
    let heavy =
        "[hardware]\nhanger = \"cleat\"\ngrams = 30000\n[[frame]]\nmoulding = \"scoop-3\"\n";
    let found = advised(&job(30, 24, heavy));
    let lift = found
        .advice
        .iter()
        .find(|advice| advice.fault.code == "hanging.lift");
    let lift = lift.expect("it is heavy");
    assert!(lift.cautions.contains(&Caution::Lift) && lift.cautions.contains(&Caution::Ladder));
}

#[test]
fn places_that_ask_for_more_are_cured() {
    let glazed = format!("{GLASS}moulding = \"cove-gilt-2\"\n[place]\n");
    for (place, code) in [
        ("above = \"bed\"", "hanging.people"),
        ("above = \"seat\"", "glazing.breaks"),
        ("children = true", "glazing.breaks"),
        ("earthquakes = true", "hanging.earthquake"),
        ("public = true", "hanging.public"),
        ("stairs = true", "hanging.stairs"),
        ("bathroom = true", "place.water"),
    ] {
        check(&job(14, 11, &format!("{glazed}{place}\n")), code);
    }
}

#[test]
fn what_shakes_and_weighs_is_left_to_others() {
    let heavy = "[hardware]\nhanger = \"cleat\"\ngrams = 30000\n[place]\nearthquakes = true\n[[frame]]\nmoulding = \"scoop-3\"\n";
    assert!(codes(&advised(&job(30, 24, heavy))).contains(&"hanging.earthquake_weight"));
}

/// A cure of one room must not harm in the other: acrylic would stop the sag and lift pastel by its static.
#[test]
fn a_cure_that_harms_the_art_is_not_offered() {
    let slender = format!("medium = \"pastel\"\n{GLASS}moulding = \"ash-round-3/4\"\n");
    let text = slender.replace("[[frame]]", "[spacer]\nthickness = \"1/2\"\n[[frame]]");
    let text = format!(
        "rabbet = 1\nunits = \"in\"\n[[art]]\nwidth = \"40\"\nheight = \"30\"\noverlap = \"1/4\"\n{text}"
    );
    let job = Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"));
    let found = advised(&job);
    let sag = found
        .advice
        .iter()
        .find(|advice| advice.fault.code == "hanging.sag");
    let sag = sag.unwrap_or_else(|| panic!("{:#?}", codes(&found)));
    let is_acrylic = |change: &Change| matches!(change, Change::SetGlazing { sheet, .. } if sheet.starts_with("acrylic") && !sheet.contains("antistatic"));
    assert!(!sag.changes.iter().any(is_acrylic), "{:#?}", sag.changes);
}

/// Whatever speaks of a load carries the sentence that it is no certificate.
#[test]
fn every_advice_about_loads_carries_its_caution() {
    let heavy = format!(
        "{GLASS}moulding = \"ash-round-3/4\"\n[[backing]]\nboard = \"hardboard-3\"\n[[glazing]]\nsheet = \"glass-3\"\n[place]\nabove = \"bed\"\nearthquakes = true\npublic = true\n"
    );
    let found = advised(&job(50, 40, &heavy));
    let mut seen = 0;
    for advice in &found.advice {
        if advice.fault.code.starts_with("hanging.") {
            seen += 1;
            assert!(
                advice.cautions.contains(&Caution::Load),
                "{}",
                advice.fault.code
            );
        }
    }
    assert!(seen > 3, "{:#?}", codes(&found));
}

/// Every golden piece: what is offered cures, no working is amiss, whatever harms is worded and sourced.
#[test]
fn every_change_offered_for_a_golden_piece_cures_it() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../suite/sizes/ok");
    let catalogue = Catalogue::starter();
    let (mut pieces, mut offered) = (0, 0);
    for entry in std::fs::read_dir(folder).expect("the golden pieces are there") {
        let path = entry.expect("an entry").path();
        if !path.to_string_lossy().ends_with(".job.toml") {
            continue;
        }
        let text = std::fs::read(&path).expect("it reads");
        let job =
            Job::read(&text).unwrap_or_else(|faults| panic!("{}: {faults:#?}", path.display()));
        let shop = Settings::defaults(job.units);
        let Ok(sizes) = derive(&job, &catalogue, &shop) else {
            continue;
        };
        pieces += 1;
        let found = advice(&job, &sizes, &catalogue, &shop);
        assert_eq!(found.working.recheck(), [], "{}", path.display());
        for advice in &found.advice {
            assert!(!advice.source.is_empty(), "{}: {advice:#?}", path.display());
            for line in &advice.lines {
                assert!(line.index() < found.working.len(), "{}", path.display());
            }
            for change in &advice.changes {
                offered += 1;
                let next = change.applied(&job);
                let after = derive(&next, &catalogue, &shop).unwrap_or_else(|f| panic!("{f:#?}"));
                let still = looked_over(&next, &after, &catalogue).faults();
                let (code, part) = (advice.fault.code, &advice.fault.part);
                let mut still = still.iter().chain(&after.faults);
                assert!(
                    !still.any(|fault| fault.code == code && fault.part == *part),
                    "{}: {code}: {}",
                    path.display(),
                    change.sentence(job.units.unit())
                );
            }
        }
    }
    assert!(
        pieces > 20 && offered > 50,
        "{pieces} pieces, {offered} changes"
    );
}

/// A centre hung above what anybody lifts to alone leaves no index: that is said, never passed over.
#[test]
fn a_lift_without_an_index_is_said() {
    let text =
        format!("{GLASS}moulding = \"cove-gilt-2\"\n[settings]\n\"hanging.centre\" = \"96\"\n");
    let found = advised(&job(20, 16, &text));
    let lift = found
        .advice
        .iter()
        .find(|advice| advice.fault.code == "hanging.lift");
    let lift = lift.unwrap_or_else(|| panic!("{:#?}", found.advice));
    assert!(
        lift.fault
            .found
            .contains("more than one person should lift to the wall")
    );
    assert!(lift.fault.found.starts_with("it weighs "));
    let pounds = lift
        .fault
        .allowed
        .find(" lb (")
        .expect("pounds in an inch shop");
    assert!(
        pounds
            < lift
                .fault
                .allowed
                .find(" kg)")
                .expect("kilograms beside them")
    );
}
