//! Each cure is tried on a document and shown to cure.

use sizing::{Severity, derive};
use trade::{Catalogue, Job, Settings};

use super::{Advice, Advised, Change, advice};
use crate::caution::Caution;

const FRAME: &str = "[[frame]]\nmoulding = \"cove-gilt-2\"\n";

fn job(rest: &str) -> Job {
    let text = format!("rabbet = 1\nunits = \"in\"\n{rest}");
    Job::read(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults:#?}\n{text}"))
}

fn advised(job: &Job) -> Advised {
    let (catalogue, shop) = (Catalogue::starter(), Settings::defaults(job.units));
    let sizes = derive(job, &catalogue, &shop).unwrap_or_else(|faults| panic!("{faults:#?}"));
    let advised = advice(job, &sizes, &catalogue, &shop);
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
    let before = advised(&job);
    let found = of_code(&before, code).unwrap_or_else(|| panic!("{code}: {:#?}", before.advice));
    assert!(!found.source.is_empty());
    assert!(!found.changes.is_empty(), "{found:#?}");
    for change in &found.changes {
        let after = advised(&change.applied(&job));
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
    let found = advised(&job);
    assert!(of_code(&found, "board.class").is_none());
}

#[test]
fn the_shop_decides_about_buffer_near_photographs() {
    let rest = "medium = \"photograph\"";
    let text = matted("conservation", "mat-4-conservation", rest);
    let found = advised(&job(&text));
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
    let two = advised(&job(&format!("{text}{held}")));
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

/// 40 in of acrylic grow 1.61 mm with warmth, and 40 in × 0.0033 to 0.005 % × 20 % RH more with damp.
#[test]
fn acrylic_is_cut_for_the_damp_room() {
    let text = matted("budget", "mat-4-conservation", "");
    let wide = text
        .replace("width = \"8\"", "width = \"36\"")
        .replace(
            "sheet = \"glass-uv-2.5\"",
            "sheet = \"acrylic-3\"\nundersize = \"1/32\"",
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

/// 120 lx for 12 h all year fade the most sensitive colours within a year or six.
#[test]
fn fading_is_a_range_with_what_would_slow_it() {
    let text = matted("budget", "mat-4-conservation", "medium = \"photograph\"");
    let found = advised(&job(&text));
    let fade = of_code(&found, "light.fade").expect("it fades");
    assert!(
        fade.fault.found.contains("0.57 to 5.7 years"),
        "{}",
        fade.fault.found
    );
    assert_eq!(fade.fault.severity, Severity::Warn);
    assert!(fade.source.contains("from memory"), "{}", fade.source);
    check(&text, "light.fade");
    check(&text, "light.budget");
}

#[test]
fn a_dark_wall_gives_no_advice_on_light() {
    let text = matted("budget", "mat-4-conservation", "");
    let dark = format!("{text}[place]\nlux = 5\nhours = 1\ndays = 30\n");
    let found = advised(&job(&dark));
    assert!(of_code(&found, "light.fade").is_none());
    assert!(of_code(&found, "light.budget").is_none());
}

#[test]
fn lamps_without_ultraviolet_cure_what_glass_lets_through() {
    let text = matted("budget", "mat-4-conservation", "").replace("glass-uv-2.5", "glass-2.5");
    let found = advised(&job(&text));
    let uv = of_code(&found, "light.uv").expect("daylight");
    let lamp = Change::SetLamp(trade::Lamp::Led);
    assert!(uv.changes.contains(&lamp), "{:#?}", uv.changes);
    let found = advised(&job(&format!("{text}[place]\nlamp = \"led\"\n")));
    assert!(of_code(&found, "light.uv").is_none());
}

#[test]
fn a_light_that_cannot_be_is_said() {
    let text = matted("budget", "mat-4-conservation", "");
    let found = advised(&job(&format!("{text}[place]\nlux = 0\n")));
    let number = of_code(&found, "place.number").expect("it is said");
    assert_eq!(
        number.fault.found,
        "the light is 0 lx; give 0.01 lx to 200000 lx"
    );
}

#[test]
fn colours_that_no_table_knows_are_said() {
    let text = matted("budget", "mat-4-conservation", "colours = \"moonlight\"");
    let found = advised(&job(&text));
    let number = of_code(&found, "place.number").expect("it is said");
    assert!(number.fault.found.contains("colour pencil"));
}

#[test]
fn a_cold_wall_is_kept_at_a_distance() {
    let text = matted("budget", "mat-4-conservation", "");
    let cold = format!("{text}[place]\nwall = \"outer\"\nhumidity = 45\n");
    let found = advised(&job(&cold));
    let wall = of_code(&found, "climate.wall").expect("it is damp behind");
    assert!(
        wall.fault.sentence().contains("off"),
        "{}",
        wall.fault.sentence()
    );
    assert_eq!(wall.cautions, [Caution::Mould]);
    check(&cold, "climate.wall");
}

/// Summer's damp is not paired with winter's cold: dry heated air does no harm at the same wall.
#[test]
fn the_dampest_day_of_summer_is_not_held_against_winter() {
    let text = matted("budget", "mat-4-conservation", "");
    let dry = format!(
        "{text}[place]\nwall = \"outer-insulated\"\n[settings]\n\"climate.dampest\" = \"90\"\n"
    );
    assert!(of_code(&advised(&job(&dry)), "climate.wall").is_none());
}

#[test]
fn heat_and_water_are_left() {
    let text = matted("budget", "mat-4-conservation", "");
    check(
        &format!("{text}[place]\nabove = \"radiator\"\n"),
        "place.heat",
    );
    check(&format!("{text}[place]\nbathroom = true\n"), "place.water");
    let copy = matted("budget", "mat-4-conservation", "medium = \"reproduction\"");
    let found = advised(&job(&format!("{copy}[place]\nbathroom = true\n")));
    assert!(of_code(&found, "place.water").is_none());
}

#[test]
fn the_hinge_must_give_before_the_art() {
    let text = matted("budget", "mat-4-conservation", "grammage = 90");
    check(
        &format!("{text}[attachment]\nhold = \"t-hinge\"\ngrammage = 110\n"),
        "attachment.weakest",
    );
    let fine = job(&format!(
        "{text}[attachment]\nhold = \"t-hinge\"\ngrammage = 20\n"
    ));
    assert!(of_code(&advised(&fine), "attachment.weakest").is_none());
}

#[test]
fn a_sheet_in_the_rabbet_needs_room_to_grow() {
    let text = "[[art]]\nwidth = \"36\"\nheight = \"20\"\nshow = \"bleed\"\n[[frame]]\nmoulding = \"cove-gilt-2\"\nallowance = \"1/16\"\n";
    check(text, "attachment.room");
}

#[test]
fn wide_mitres_gape_in_a_dry_room() {
    let text = matted("budget", "mat-4-conservation", "").replace("cove-gilt-2", "scoop-3");
    let found = advised(&job(&text));
    let mitre = of_code(&found, "climate.mitre").expect("three inches of basswood move");
    assert!(mitre.fault.found.contains("sight"), "{}", mitre.fault.found);
    assert_eq!(mitre.lines.len(), 2);
    // A person reads 64ths and tenths: up for what gapes, the mark itself for what passes.
    assert!(
        mitre.fault.found.contains(" in (0.9 mm)"),
        "{}",
        mitre.fault.found
    );
    assert!(
        mitre.fault.allowed.starts_with("1/32 in (0.8 mm) passes"),
        "{}",
        mitre.fault.allowed
    );
}
