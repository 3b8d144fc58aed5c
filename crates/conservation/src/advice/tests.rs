//! Each cure is tried on a document and shown to cure.

use sizing::{Severity, derive};
use trade::{Catalogue, Job, Settings};
use working::{Figure, Stated};

use super::{Advice, Advised, OutsideWall, Surroundings, advice};
use crate::light::Showing;

const FRAME: &str = "[[frame]]\nmoulding = \"cove-gilt-2\"\n";

fn job(rest: &str) -> Job {
    let text = format!("rabbet = 1\nunits = \"in\"\n{rest}");
    Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"))
}

fn advised(job: &Job, around: &Surroundings) -> Advised {
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let advised = advice(job, &sizes, &catalogue, &shop, around);
    assert_eq!(advised.working.recheck(), []);
    advised
}

fn of_code<'a>(advised: &'a Advised, code: &str) -> Option<&'a Advice> {
    advised
        .advice
        .iter()
        .find(|advice| advice.fault.code == code)
}

/// The advice of this code stands, offers changes, and each of them takes it away.
fn check(rest: &str, code: &str) {
    let job = job(rest);
    let around = Surroundings::default();
    let before = advised(&job, &around);
    let found = of_code(&before, code).unwrap_or_else(|| panic!("{code}: {:#?}", before.advice));
    assert!(!found.source.is_empty());
    assert!(!found.changes.is_empty(), "{found:#?}");
    for change in &found.changes {
        let after = advised(&change.applied(&job), &around);
        let part =
            |advice: &&Advice| advice.fault.code == code && advice.fault.part == found.fault.part;
        let still = after.advice.iter().find(part);
        let sentence = change.sentence(job.units.unit());
        assert!(still.is_none(), "{sentence} leaves {still:#?}");
        assert!(!sentence.is_empty());
    }
}

fn matted(level: &str, mat: &str, rest: &str) -> String {
    format!(
        "[identity]\nlevel = \"{level}\"\n[[art]]\nwidth = \"8\"\nheight = \"10\"\noverlap = \"1/4\"\n{rest}\n\
         [borders]\nall = \"2\"\n[[mat]]\nboard = \"{mat}\"\n[[glazing]]\nsheet = \"glass-uv-2.5\"\ninward = \"coated\"\n\
         [mount]\nboard = \"mat-4-museum\"\n{FRAME}"
    )
}

#[test]
fn a_standard_mat_gives_way_to_a_better_board() {
    check(&matted("conservation", "mat-4-standard", ""), "board.class");
    check(&matted("museum", "mat-4-cotton-core", ""), "board.class");
}

#[test]
fn nobody_is_cautioned_of_boards_below_conservation() {
    let job = job(&matted("commended", "mat-4-standard", ""));
    let found = advised(&job, &Surroundings::default());
    assert!(of_code(&found, "board.class").is_none());
}

#[test]
fn the_shop_decides_about_buffer_near_photographs() {
    let rest = "medium = \"photograph\"";
    let text = matted("conservation", "mat-4-conservation", rest);
    let found = advised(&job(&text), &Surroundings::default());
    assert!(of_code(&found, "board.buffered").is_none());
    let text = format!("{text}[settings]\n\"board.photographs\" = \"unbuffered\"\n");
    check(&text, "board.buffered");
}

#[test]
fn foam_leaves_the_package_at_conservation() {
    let text = matted("conservation", "mat-4-conservation", "");
    check(
        &format!("{text}[[backing]]\nboard = \"foam-5\"\n"),
        "board.foam",
    );
}

#[test]
fn filtering_glass_takes_the_ultraviolet() {
    let text = matted("budget", "mat-4-conservation", "");
    let plain = text.replace("glass-uv-2.5", "glass-2.5");
    check(&plain, "light.uv");
}

#[test]
fn pastel_wants_no_acrylic() {
    let text = matted("budget", "mat-8-museum", "medium = \"pastel\"");
    check(&text.replace("glass-uv-2.5", "acrylic-3"), "glazing.static");
}

#[test]
fn tape_gives_way_to_paste_or_corners() {
    let text = matted("conservation", "mat-4-conservation", "");
    let held = "[attachment]\nhold = \"t-hinge\"\nadhesive = \"pressure-sensitive tape\"\n";
    check(&format!("{text}{held}"), "attachment.adhesive");
}

#[test]
fn a_wide_sheet_takes_more_hinges_where_the_shop_says_so() {
    let text =
        matted("budget", "mat-4-conservation", "").replace("width = \"8\"", "width = \"30\"");
    let held = "[attachment]\nhold = \"t-hinge\"\n";
    let two = advised(&job(&format!("{text}{held}")), &Surroundings::default());
    assert!(
        of_code(&two, "attachment.hinges").is_none(),
        "two only, by the shop's habit"
    );
    check(&format!("{text}{held}count = 2\n"), "attachment.hinges");
}

#[test]
fn large_sheets_leave_corners_for_strips() {
    let text =
        matted("budget", "mat-4-conservation", "").replace("width = \"8\"", "width = \"20\"");
    check(
        &format!("{text}[attachment]\nhold = \"corners\"\n"),
        "attachment.corners",
    );
}

#[test]
fn a_thin_cover_grows_until_the_dry_sheet_stays_hidden() {
    let text = matted("budget", "mat-4-conservation", "").replace("\"1/4\"", "\"1/32\"");
    let wide = text.replace("width = \"8\"", "width = \"28\"");
    check(&wide, "attachment.cover");
}

#[test]
fn acrylic_is_cut_for_the_damp_room() {
    let text = matted("budget", "mat-4-conservation", "");
    let wide = text
        .replace("width = \"8\"", "width = \"36\"")
        .replace(
            "sheet = \"glass-uv-2.5\"",
            "sheet = \"acrylic-3\"\nundersize = \"0\"",
        )
        .replace("[[frame]]\n", "[[frame]]\nallowance = \"1/16\"\n");
    check(&wide, "climate.growth");
}

#[test]
fn art_against_its_glazing_gets_spacers() {
    let text = format!(
        "[[art]]\nwidth = \"16\"\nheight = \"20\"\nshow = \"bleed\"\n[[glazing]]\nsheet = \"glass-2.5\"\n{FRAME}"
    );
    check(&text, "air.none");
}

#[test]
fn dry_mounting_an_original_gives_way_to_hinges() {
    let text = matted("budget", "mat-4-conservation", "");
    check(
        &format!("{text}[attachment]\nhold = \"dry-mount\"\n"),
        "attachment.irreversible",
    );
}

#[test]
fn a_large_frame_gets_a_strainer() {
    let text = matted("budget", "mat-4-conservation", "")
        .replace("width = \"8\"", "width = \"55\"")
        .replace("height = \"10\"", "height = \"45\"");
    check(&text, "structure.brace");
}

/// 120 lx for 12 h all year fade the most sensitive colours within a year or six; nothing in the document cures that.
#[test]
fn fading_is_a_range_with_what_would_slow_it() {
    let text = matted("budget", "mat-4-conservation", "medium = \"photograph\"");
    let found = advised(&job(&text), &Surroundings::default());
    let fade = of_code(&found, "light.fade").expect("it fades");
    assert!(
        fade.fault.found.contains("0.57 to 5.7 years"),
        "{}",
        fade.fault.found
    );
    assert!(fade.changes.is_empty());
    assert_eq!(fade.fault.severity, Severity::Warn);
    assert!(fade.source.contains("from memory"), "{}", fade.source);
}

#[test]
fn a_dark_wall_gives_no_advice_on_light() {
    let around = Surroundings {
        showing: Some(Showing::asked(5.0, 1.0, 30.0)),
        ..Surroundings::default()
    };
    let found = advised(&job(&matted("budget", "mat-4-conservation", "")), &around);
    assert!(of_code(&found, "light.fade").is_none());
    assert!(of_code(&found, "light.budget").is_none());
}

#[test]
fn a_cold_wall_is_kept_at_a_distance() {
    let around = Surroundings {
        outside_wall: Some(OutsideWall {
            outdoors: Stated::job(Figure::of(-10.0, "°C")),
            transmittance: Stated::job(Figure::of(1.0, "W/(m²K)")),
        }),
        ..Surroundings::default()
    };
    let found = advised(&job(&matted("budget", "mat-4-conservation", "")), &around);
    let wall = of_code(&found, "climate.wall").expect("it is damp behind");
    assert!(
        wall.fault.sentence().contains("off"),
        "{}",
        wall.fault.sentence()
    );
}

#[test]
fn wide_mitres_gape_in_a_dry_room() {
    let text = matted("budget", "mat-4-conservation", "").replace("cove-gilt-2", "scoop-3");
    let found = advised(&job(&text), &Surroundings::default());
    let mitre = of_code(&found, "climate.mitre").expect("three inches of basswood move");
    assert!(mitre.fault.found.contains("sight"), "{}", mitre.fault.found);
    assert_eq!(mitre.lines.len(), 2);
}
