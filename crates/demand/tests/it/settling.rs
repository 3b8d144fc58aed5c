//! Plans taken back: what is used, what is left, and plans that do not hold.

use cutting::lengths;
use cutting::sheets;
use demand::{Day, Extent, From, Left, Origin, Outcome, Plan, Settled, Work};
use measure::{Length, Unit};

use crate::bench::{batch, day, demo, sized, tried};
use crate::naive::plans;

const OAK: &str = "stock = 1\n[[stick]]\nmaterial = \"oak-square-1\"\nlength = \"LENGTH\"\n";

fn settled<'a>(outcome: &'a Outcome, ware: &str) -> &'a Settled {
    let found = outcome.settled.iter().find(|s| s.ware.to_string() == ware);
    found.unwrap_or_else(|| panic!("there is no {ware}"))
}

/// Harbour's frame from one stick: parts of the account in inches, and the label of what is left.
fn check_oak(length: &str, expected: [&str; 6], lost: &str, label: Option<&str>) {
    let day = day(&["harbour"], &OAK.replace("LENGTH", length), &[]);
    let outcome = day.settle(&plans(&day, false)).unwrap();
    let oak = settled(&outcome, "oak-square-1");
    let account = oak.account;
    assert_eq!(
        account.rounding, 0,
        "every leg is a whole number of 1/64 in"
    );
    let found = [
        account.stock,
        account.pieces,
        account.cuts,
        account.trim,
        account.remnants,
        account.waste,
    ];
    let found = found.map(|amount| account.say(amount, Unit::Inch));
    assert_eq!(found.each_ref().map(String::as_str), expected);
    assert_eq!(account.lost().percent_nearest(), lost);
    assert_eq!(oak.remnants[0].label.as_deref(), label);
}

/// Legs 22 7/8 × 2 and 18 7/8 × 2 are 83 1/2 in. Cuts of 1/8 in: one within each pair, one between
/// the pairs, one before what is left, 1/2 in. Trim 1 in. Left: 108 − 85 = 23 in, less than 24.
#[test]
fn a_frame_from_a_stick_of_nine_feet() {
    // Lost: 24 1/2 of 108.
    let parts = ["108 in", "83 1/2 in", "1/2 in", "1 in", "0 in", "23 in"];
    check_oak("9 ft", parts, "22.7 %", None);
}

#[test]
fn a_frame_from_a_stick_of_ten_feet_leaves_a_remnant() {
    // Lost: 1 1/2 of 120; 35 in go back to the rack.
    let parts = ["120 in", "83 1/2 in", "1/2 in", "1 in", "35 in", "0 in"];
    check_oak("10 ft", parts, "1.3 %", Some("M1"));
}

#[test]
fn every_leg_says_where_it_lies() {
    let day = day(&["harbour"], &OAK.replace("LENGTH", "10 ft"), &[]);
    let outcome = day.settle(&plans(&day, false)).unwrap();
    let oak = settled(&outcome, "oak-square-1");
    assert_eq!(oak.taken[0].name, "oak-square-1, stick 1");
    let lies: Vec<String> = oak.taken[0]
        .parts
        .iter()
        .map(|part| match part.at {
            demand::Spot::Along { at, length } => format!("{} at {at}, {length}", part.part),
            demand::Spot::On { .. } => panic!("a leg lies along a stick"),
        })
        .collect();
    // 1/2 + 22 7/8 + 1/8 = 23 1/2; + 23 = 46 1/2; + 18 7/8 + 1/8 = 65 1/2.
    assert_eq!(
        lies,
        [
            "Frame, top at 1/2 in, 22 7/8 in",
            "Frame, bottom at 23 1/2 in, 22 7/8 in",
            "Frame, left at 46 1/2 in, 18 7/8 in",
            "Frame, right at 65 1/2 in, 18 7/8 in",
        ]
    );
    assert_eq!((oak.used[0].origin, oak.used[0].count), (Origin::Buy, 1));
    // Frame, mat, mount, glazing, backing: four legs and four sheets.
    assert_eq!(outcome.jobs[0].parts.len(), 8);
}

/// A small print whose mat and mount are cut from what drops out of harbour's mat.
const SMALL: &str = "rabbet = 1\n[[art]]\ntitle = \"Stamp\"\nwidth = \"4\"\nheight = \"5\"\n\
    [[frame]]\nmoulding = \"oak-square-1\"\n[borders]\nall = \"2\"\n\
    [[mat]]\nboard = \"mat-4-conservation\"\n";

fn with_small() -> Day {
    let mut pieces = demo(&["harbour"]);
    pieces.push(sized(SMALL));
    tried(&pieces, "", &[]).unwrap()
}

#[test]
fn what_drops_from_a_window_is_cut_up() {
    let day = with_small();
    let board = "mat-4-conservation";
    let reused = day.settle(&plans(&day, true)).unwrap();
    let reused = settled(&reused, board);
    // Harbour's mat is the first sheet; its mount the second; the small mat comes from the drop.
    assert_eq!(reused.taken[2].from, From::Fallout { taken: 0, part: 0 });
    assert_eq!(reused.taken[2].name, "mat-4-conservation, fallout 3");
    assert_eq!(reused.used.iter().map(|used| used.count).sum::<u64>(), 2);
    let fresh = day.settle(&plans(&day, false)).unwrap();
    let fresh = settled(&fresh, board);
    assert_eq!(fresh.used.iter().map(|used| used.count).sum::<u64>(), 3);
    // Free, it goes back to the rack with a label: 390.9 × 289.3 mm.
    let drop = fresh.remnants.last().unwrap();
    assert_eq!(drop.left, Left::Dropped { taken: 0, part: 0 });
    assert_eq!(drop.extent.exact(Unit::Millimetre), "390.9 mm x 289.3 mm");
    assert!(drop.label.is_some());
    assert!(
        reused
            .remnants
            .iter()
            .all(|r| !matches!(r.left, Left::Dropped { .. })),
        "what is cut up is not free; the small window drops less than the least"
    );
}

#[test]
fn labels_go_on_after_those_on_the_rack() {
    let stock = format!(
        "{}[[remnant]]\nlabel = \"M41\"\nmaterial = \"walnut-1\"\nlength = 30\n",
        OAK.replace("LENGTH", "10 ft")
    );
    let day = day(&["harbour"], &stock, &[]);
    let outcome = day.settle(&plans(&day, false)).unwrap();
    let oak = settled(&outcome, "oak-square-1");
    assert_eq!(oak.remnants[0].label.as_deref(), Some("M42"));
    assert_eq!(oak.remnants[0].extent, Extent::Stick(Length::inches(35)));
}

/// Changes the plan of one ware and says what the refusal is.
fn refusal(day: &Day, ware: &str, change: impl FnOnce(&mut Plan)) -> String {
    let mut plans = plans(day, true);
    let place = day.batches.iter().position(|b| b.ware.to_string() == ware);
    change(&mut plans[place.unwrap()]);
    let faults = day.settle(&plans).expect_err("the plan does not hold");
    assert_eq!(faults.len(), 1, "{faults:#?}");
    faults[0].to_string()
}

fn sticks(plan: &mut Plan) -> &mut lengths::Plan {
    match plan {
        Plan::Lengths(plan) => plan,
        Plan::Sheets(_) => panic!("a plan of sticks is changed here"),
    }
}

fn boards(plan: &mut Plan) -> &mut sheets::Plan {
    match plan {
        Plan::Sheets(plan) => plan,
        Plan::Lengths(_) => panic!("a plan of sheets is changed here"),
    }
}

const OAK_REFUSED: &str = "the plan for oak-square-1 does not hold: ";
const MAT_REFUSED: &str = "the plan for mat-4-conservation does not hold: ";

#[test]
fn plans_of_sticks_that_do_not_hold_are_refused() {
    let day = day(&["harbour"], "", &[]);
    let check = |expected: &str, change: &dyn Fn(&mut lengths::Plan)| {
        let said = refusal(&day, "oak-square-1", |plan| change(sticks(plan)));
        assert_eq!(said, format!("{OAK_REFUSED}{expected}; plan it again"));
    };
    check(
        "on layout 1 2026-411: Frame, left + right does not lie clear at 2975 to 5399",
        &|plan| plan.layouts[0].pieces[1].at -= 1,
    );
    check(
        "on layout 1 2026-411: Frame, top + bottom does not lie clear at 31 to 2967",
        &|plan| plan.layouts[0].pieces[0].at -= 1,
    );
    check(
        "on layout 1 a remnant does not lie clear at 5407 to 7648",
        &|plan| plan.layouts[0].remnants[0].0 -= 1,
    );
    check(
        "2026-411: Frame, left + right is cut or left out 0 times, wanted 1 times",
        &|plan| {
            plan.layouts[0].pieces.pop();
        },
    );
    check(
        "2026-411: Frame, top + bottom is cut or left out 1000000000 times, wanted 1 times",
        &|plan| plan.layouts[0].copies = 1_000_000_000,
    );
    check("it takes stock 7, of which there is none", &|plan| {
        plan.layouts[0].stock = 7;
    });
    check("it names piece 9, of which there is none", &|plan| {
        plan.layouts[0].pieces[0].piece = 9;
    });
}

#[test]
fn legs_of_two_runs_are_refused() {
    let stock = "stock = 1\n\
        [[stick]]\nmaterial = \"oak-square-1\"\nlength = \"9 ft\"\nrun = \"K7\"\n\
        [[stick]]\nmaterial = \"oak-square-1\"\nlength = \"9 ft\"\nrun = \"K8\"\ncount = 1\n";
    let day = day(&["harbour"], stock, &[]);
    let said = refusal(&day, "oak-square-1", |plan| {
        let plan = sticks(plan);
        let mut other = plan.layouts[0].clone();
        other.stock = usize::from(plan.layouts[0].stock == 0);
        other.pieces.remove(0);
        plan.layouts[0].pieces.pop();
        plan.layouts[0].remnants.clear();
        plan.layouts.push(other);
    });
    let why = "2026-411: Frame is cut from sticks that need not match: all must come from one stick or one run";
    assert_eq!(said, format!("{OAK_REFUSED}{why}; plan it again"));
}

#[test]
fn flaws_and_counts_are_held_to() {
    let stock = "stock = 1\nbuy = \"listed\"\n[[stick]]\nmaterial = \"oak-square-1\"\nlength = \"9 ft\"\n\
        flaws = [[50, 51]]\n[[sheet]]\nmaterial = \"mat-4-conservation\"\nsize = \"32 x 40\"\ncount = 1\n\
        [[sheet]]\nmaterial = \"mat-4-conservation\"\nsize = \"40 x 60\"\n\
        [[sheet]]\nmaterial = \"foam-5\"\nsize = \"32 x 40\"\n\
        [[sheet]]\nmaterial = \"glass-uv-2.5\"\nsize = \"32 x 40\"\n";
    let day = day(&["harbour"], stock, &[]);
    let plans = plans(&day, false);
    let faults = day.settle(&plans).expect_err("a leg lies on the flaw");
    let why = "on layout 1 2026-411: Frame, left + right does not lie clear at 2976 to 5400";
    assert_eq!(
        faults[0].to_string(),
        format!("{OAK_REFUSED}{why}; plan it again")
    );
    let mut both = plans.clone();
    for layout in &mut boards(&mut both[1]).layouts {
        layout.from = sheets::From::Stock(0);
    }
    let faults = day.settle(&both).expect_err("there is one sheet");
    assert_eq!(
        faults[1].to_string(),
        format!(
            "{MAT_REFUSED}it takes 2 of 32 in x 40 in from the rack, there are 1; plan it again"
        )
    );
}

#[test]
fn plans_of_sheets_that_do_not_hold_are_refused() {
    let day = with_small();
    let check = |expected: &str, change: &dyn Fn(&mut sheets::Plan)| {
        let said = refusal(&day, "mat-4-conservation", |plan| change(boards(plan)));
        assert_eq!(said, format!("{MAT_REFUSED}{expected}; plan it again"));
    };
    check("on layout 1 a cut at 1104 goes through no part", &|plan| {
        plan.layouts[0].cuts.remove(0);
    });
    check(
        "on layout 1 the cuts do not free the piece of 1360 × 1104 at 0, 0",
        &|plan| plan.layouts[0].cuts.truncate(1),
    );
    check(
        "on layout 1 2026-411: Mat is not cut to its size",
        &|plan| {
            plan.layouts[0].pieces[0].area.width -= 1;
        },
    );
    check("on layout 1 a cut at 2048 lies outside its part", &|plan| {
        plan.layouts[0].cuts[0].at = 2048;
    });
    check(
        "it cuts up the window of 2026-411: Mat before that is cut",
        &|plan| plan.layouts.swap(0, 2),
    );
    check("it cuts up a window that no part has", &|plan| {
        plan.layouts[2].from = sheets::From::Window(1);
    });
}

#[test]
fn a_plan_of_the_other_kind_or_none_is_refused() {
    let day = day(&["harbour"], "", &[]);
    let faults = day.settle(&[]).expect_err("no plans");
    assert_eq!(
        faults[0].to_string(),
        "0 plans were given for 4 materials; give one for each, in their order"
    );
    let mut swapped = plans(&day, false);
    swapped.swap(0, 1);
    assert_eq!(day.settle(&swapped).expect_err("the other kind").len(), 2);
}

#[test]
fn what_the_stock_does_not_reach_for_is_named() {
    let day = day(&["harbour"], "", &[]);
    let mut plans = plans(&day, false);
    let oak = sticks(&mut plans[0]);
    oak.layouts[0].pieces.pop();
    oak.layouts[0].remnants.clear();
    oak.uncut.push((1, 1));
    let outcome = day.settle(&plans).unwrap();
    let missing: Vec<&str> = outcome.settled[0]
        .missing
        .iter()
        .map(|m| m.part.as_str())
        .collect();
    assert_eq!(missing, ["Frame, left", "Frame, right"]);
    assert_eq!(outcome.jobs[0].missing, [(0, 0), (0, 1)]);
    assert!(!outcome.settled[0].proven);
}

#[test]
fn a_strainer_has_bars_round_it_and_between() {
    let text = "rabbet = 1\n[[art]]\ntitle = \"Wide\"\nwidth = \"30\"\nheight = \"20\"\n\
        [[frame]]\nmoulding = \"box-deep-3/4\"\n\
        [strainer]\nwidth = \"1 1/2\"\ndepth = \"3/4\"\nuprights = 1\n";
    let day = tried(&[sized(text)], "", &[]).unwrap();
    let bars = batch(&day, "strainer 1 1/2 in x 3/4 in");
    let Work::Lengths { problem, .. } = &bars.work else {
        panic!("bars come in sticks");
    };
    // Mitred outside: 30 and 20 in, twice each; the upright between them 20 − 3 = 17 in.
    let found: Vec<_> = problem
        .pieces
        .iter()
        .map(|p| (p.name.as_str(), p.length, p.count, &p.together))
        .collect();
    assert_eq!(
        found,
        [
            ("Wide: Strainer, left, right", 1280, Some(2), &None),
            ("Wide: Strainer, top, bottom", 1920, Some(2), &None),
            ("Wide: Strainer, upright 1", 1088, Some(1), &None),
        ]
    );
}

#[test]
fn spacers_meet_square_or_mitred() {
    let text = "rabbet = 1\n[[art]]\ntitle = \"Float\"\nwidth = \"11\"\nheight = \"15\"\nshow = \"float\"\n\
        margin = \"3/4\"\n[[frame]]\nmoulding = \"box-deep-3/4\"\n[[glazing]]\nsheet = \"glass-2.5\"\n\
        [spacer]\nstrip = \"spacer-3/8\"\n[mount]\nboard = \"mat-4-conservation\"\n";
    // package = 11 + 1 1/2 + 5/8 − 1/8 = 13 by 17 in; a spacer is 1/8 in wide.
    let check = |corners: &str, upright: u64| {
        let day = tried(&[sized(text)], "", &[("spacer.corners", corners)]).unwrap();
        let Work::Lengths { problem, .. } = &batch(&day, "spacer-3/8").work else {
            panic!("spacers come in sticks");
        };
        let lengths: Vec<_> = problem.pieces.iter().map(|p| (p.length, p.count)).collect();
        assert_eq!(lengths, [(upright, Some(2)), (832, Some(2))], "{corners}");
        assert_eq!((problem.kerf, problem.stock[0].trim), (0, (0, 0)));
    };
    // 16 3/4 in between the level strips, 17 in mitred.
    check("square", 1072);
    check("mitred", 1088);
}
