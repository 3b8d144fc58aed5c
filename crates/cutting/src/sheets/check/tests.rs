use super::{check, cuts};
use crate::chance::Chance;
use crate::sheets::{
    Area, Cut, Edges, First, From, Layout, Piece, Placed, Plan, Problem, Rules, Sheet, Way,
};
use crate::{Account, Broken, Goal};

fn area(x: u64, y: u64, width: u64, height: u64) -> Area {
    Area {
        x,
        y,
        width,
        height,
    }
}

fn sheet(name: &str, width: u64, height: u64) -> Sheet {
    Sheet {
        name: name.to_owned(),
        width,
        height,
        cost: width * height,
        count: None,
        remnant: false,
        trim: Edges::default(),
    }
}

fn piece(name: &str, width: u64, height: u64, count: u64) -> Piece {
    Piece {
        name: name.to_owned(),
        width,
        height,
        count: Some(count),
        value: width * height,
        turn: true,
        window: None,
        priority: 0,
        due: None,
    }
}

fn placed(piece: usize, x: u64, y: u64, width: u64, height: u64) -> Placed {
    Placed {
        piece,
        area: area(x, y, width, height),
        turned: false,
    }
}

fn cut(of: Area, way: Way, at: u64) -> Cut {
    Cut { of, way, at }
}

fn problem() -> Problem {
    Problem {
        name: "t".to_owned(),
        goal: Goal::Fewest,
        rules: Rules::default(),
        stock: vec![sheet("s", 100, 60)],
        pieces: vec![piece("a", 50, 30, 2), piece("b", 40, 20, 1)],
    }
}

/// Two of a side by side, b above them, the rest beside b kept.
fn plan() -> Plan {
    let cuts = vec![
        cut(area(0, 0, 100, 60), Way::Level, 30),
        cut(area(0, 0, 100, 30), Way::Upright, 50),
        cut(area(0, 30, 100, 30), Way::Upright, 40),
        cut(area(0, 30, 40, 30), Way::Level, 50),
    ];
    Plan {
        layouts: vec![Layout {
            from: From::Stock(0),
            copies: 1,
            pieces: vec![
                placed(0, 0, 0, 50, 30),
                placed(0, 50, 0, 50, 30),
                placed(1, 0, 30, 40, 20),
            ],
            cuts,
            remnants: vec![area(40, 30, 60, 30)],
        }],
        objective: 1,
        bound: 1,
        uncut: Vec::new(),
    }
}

fn refused(change: impl Fn(&mut Problem, &mut Plan), sentence: &str) {
    let (mut problem, mut plan) = (problem(), plan());
    assert!(check(&problem, &plan).is_ok());
    change(&mut problem, &mut plan);
    let broken = check(&problem, &plan).expect_err(sentence);
    assert_eq!(broken.to_string(), sentence);
}

#[test]
fn every_bit_of_a_sheet_is_accounted_for() {
    let tally = check(&problem(), &plan()).expect("the plan holds");
    let account = Account {
        stock: 6000,
        pieces: 3800,
        kerf: 0,
        trim: 0,
        remnants: 1800,
        waste: 400,
    };
    assert_eq!(tally.layouts, [account]);
    assert_eq!(
        (tally.objective, tally.used, tally.largest_remnant),
        (1, 1, 1800)
    );
}

#[test]
fn trim_and_kerf_are_accounted_for() {
    let mut problem = problem();
    problem.rules.kerf = 2;
    problem.stock[0] = Sheet {
        trim: Edges {
            left: 1,
            right: 2,
            bottom: 3,
            top: 4,
        },
        ..sheet("s", 55, 60)
    };
    problem.pieces = vec![piece("b", 40, 20, 2)];
    let usable = area(1, 3, 52, 53);
    let lower = area(1, 3, 52, 20);
    let rest = area(1, 25, 52, 31);
    let upper = area(1, 25, 52, 20);
    let mut plan = plan();
    plan.layouts[0].pieces = vec![placed(0, 1, 3, 40, 20), placed(0, 1, 25, 40, 20)];
    plan.layouts[0].cuts = vec![
        cut(usable, Way::Level, 23),
        cut(lower, Way::Upright, 41),
        cut(rest, Way::Level, 45),
        cut(upper, Way::Upright, 41),
    ];
    plan.layouts[0].remnants = vec![area(1, 47, 52, 9)];
    let tally = check(&problem, &plan).expect("the plan holds");
    let account = Account {
        stock: 3300,
        pieces: 1600,
        kerf: 2 * 52 + 2 * 20 + 2 * 52 + 2 * 20,
        trim: 3 * 60 + 7 * 52,
        remnants: 468,
        waste: 2 * 10 * 20,
    };
    assert_eq!(tally.layouts, [account]);
    assert_eq!(account.stock, account.parts());
}

#[test]
fn a_piece_keeps_its_place_and_size() {
    refused(
        |_, plan| plan.layouts[0].pieces[1].area.x = 51,
        "layout 1: piece \"a\" lies 51 to 101 across, 0 to 100 can be used; 1 too far",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[2].area.y = 29,
        "layout 1: piece \"a\" and piece \"b\" overlap by 1; they must be 0 apart",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[2].area.width = 39,
        "layout 1: piece \"b\" is placed 39 × 20, ordered 40 × 20; off by 1 × 0",
    );
    refused(
        |_, plan| plan.layouts[0].pieces[2].turned = true,
        "layout 1: piece \"b\" is placed 40 × 20, ordered 20 × 40; off by 20 × 20",
    );
    refused(
        |problem, plan| {
            (problem.pieces[1].width, problem.pieces[1].height) = (20, 40);
            problem.pieces[1].turn = false;
            plan.layouts[0].pieces[2].turned = true;
        },
        "layout 1: piece \"b\" is turned and must not be",
    );
    refused(
        |problem, _| problem.rules.kerf = 2,
        "layout 1: piece \"a\" and piece \"b\" are 0 apart, the kerf is 2; 2 too close",
    );
    refused(
        |problem, _| problem.stock[0].trim.bottom = 1,
        "layout 1: piece \"a\" lies 0 to 30 up, 1 to 60 can be used; 1 too far",
    );
    refused(
        |problem, _| problem.stock[0].trim.bottom = u64::MAX,
        "layout 1: piece \"a\" lies 0 to 50 across, 0 to 0 can be used; 50 too far",
    );
}

#[test]
fn a_remnant_is_empty_and_freed() {
    refused(
        |_, plan| plan.layouts[0].remnants[0] = area(39, 30, 61, 30),
        "layout 1: piece \"b\" and the remnant at 39, 30 overlap by 1; they must be 0 apart",
    );
    refused(
        |_, plan| plan.layouts[0].remnants[0] = area(41, 30, 59, 30),
        "layout 1: the cuts do not free the remnant at 41, 30 as a part of its own",
    );
    refused(
        |_, plan| plan.layouts[0].remnants[0] = area(41, 30, 0, 30),
        "layout 1: a remnant has a size of 0; leave it out",
    );
}

#[test]
fn cuts_are_made_one_by_one() {
    refused(
        |_, plan| {
            plan.layouts[0].cuts.pop();
        },
        "layout 1: the cuts do not free piece \"b\" as a part of its own",
    );
    refused(
        |_, plan| plan.layouts[0].cuts[1] = plan.layouts[0].cuts[0],
        "layout 1, cut 2: there is no such part to cut at that moment",
    );
    refused(
        |_, plan| plan.layouts[0].cuts.swap(0, 1),
        "layout 1, cut 1: there is no such part to cut at that moment",
    );
    refused(
        |_, plan| plan.layouts[0].cuts[0].at = 60,
        "layout 1, cut 1: it is made at 60, the part lies 0 to 60; it must fall inside",
    );
    refused(
        |_, plan| plan.layouts[0].cuts[0].at = 0,
        "layout 1, cut 1: it is made at 0, the part lies 0 to 60; it must fall inside",
    );
}

#[test]
fn stages_trimming_cut_and_least_strip_are_held_to() {
    refused(
        |problem, _| problem.rules.stages = Some(2),
        "layout 1, cut 4: it is of stage 3, 2 are allowed; 1 too many",
    );
    refused(
        |problem, _| {
            problem.rules.stages = Some(2);
            problem.rules.final_trim = true;
            problem.rules.first = First::Upright;
        },
        "layout 1, cut 2: a trimming cut may serve 1 piece, 2 lie here; 1 too many",
    );
    refused(
        |problem, _| problem.rules.least_strip = 11,
        "layout 1, cut 4: it makes a strip of 10, the least is 11; 1 too narrow",
    );
    let (mut problem, plan) = (problem(), plan());
    problem.rules = Rules {
        stages: Some(2),
        first: First::Level,
        final_trim: true,
        least_strip: 10,
        kerf: 0,
    };
    assert!(check(&problem, &plan).is_ok());
}

#[test]
fn counts_and_claims_are_held_to() {
    refused(
        |_, plan| {
            plan.layouts[0].pieces.pop();
        },
        "piece \"b\": 0 cut and 0 left uncut, 1 ordered; 1 missing",
    );
    refused(
        |_, plan| plan.layouts[0].copies = 2,
        "piece \"a\": 4 cut and 0 left uncut, 2 ordered; 2 too many",
    );
    refused(
        |_, plan| plan.layouts[0].copies = 0,
        "layout 1: it is cut 0 times; at least 1 is needed",
    );
    refused(
        |_, plan| plan.layouts[0].from = From::Stock(1),
        "layout 1: stock number 1 is named; the problem holds 1, counted from 0",
    );
    refused(
        |_, plan| plan.layouts[0].from = From::Window(0),
        "layout 1: piece \"a\" frees 0 windows, and one is cut up here",
    );
    refused(
        |problem, _| problem.stock[0].count = Some(0),
        "stock \"s\": 1 used, 0 held; 1 too many",
    );
    refused(
        |_, plan| plan.objective = 2,
        "the plan claims an objective of 2, 1 is counted; off by 1",
    );
    refused(
        |_, plan| plan.bound = 2,
        "the plan claims that nothing below 2 can be reached and reaches 1 itself; off by 1",
    );
    refused(
        |problem, plan| {
            problem.goal = Goal::Value;
            plan.objective = 3800;
            plan.bound = 3799;
        },
        "the plan claims that nothing above 3799 can be reached and reaches 3800 itself; off by 1",
    );
}

/// A mat whose window takes two smaller pieces.
fn with_window() -> (Problem, Plan) {
    let mut problem = problem();
    problem.goal = Goal::Cost;
    problem.pieces = vec![piece("mat", 90, 50, 1), piece("small", 30, 30, 2)];
    problem.pieces[0].window = Some((60, 30));
    let mut plan = plan();
    plan.objective = 6000;
    plan.layouts[0].pieces = vec![placed(0, 0, 0, 90, 50)];
    plan.layouts[0].cuts = vec![
        cut(area(0, 0, 100, 60), Way::Upright, 90),
        cut(area(0, 0, 90, 60), Way::Level, 50),
    ];
    plan.layouts[0].remnants.clear();
    plan.layouts.push(Layout {
        from: From::Window(0),
        copies: 1,
        pieces: vec![placed(1, 0, 0, 30, 30), placed(1, 30, 0, 30, 30)],
        cuts: vec![cut(area(0, 0, 60, 30), Way::Upright, 30)],
        remnants: Vec::new(),
    });
    (problem, plan)
}

#[test]
fn a_window_is_cut_up_after_it_is_freed_and_once() {
    let (problem, plan) = with_window();
    let tally = check(&problem, &plan).expect("the plan holds");
    assert_eq!((tally.used, tally.windows, tally.reused), (1, 1, 1800));
    assert_eq!(tally.whole.stock, tally.whole.parts());
    let mut early = plan.clone();
    early.layouts.swap(0, 1);
    let broken = check(&problem, &early).expect_err("the window comes first");
    assert_eq!(
        broken.to_string(),
        "layout 1: 1 windows of piece \"mat\" used by then, 0 freed; 1 too many"
    );
    let mut twice = plan;
    twice.layouts[1].copies = 2;
    assert!(matches!(
        check(&problem, &twice),
        Err(Broken::OverWindows {
            used: 2,
            freed: 1,
            ..
        })
    ));
}

/// A sheet cut up at random: problem, plan with its cuts. All seeds give different ones.
pub(crate) fn cut_up(seed: u64) -> (Problem, Plan) {
    let mut chance = Chance::new(seed);
    let kerf = [0, 0, 1, 3][chance.below(4)];
    let usable = area(2, 1, 200, 150);
    let (mut parts, mut open, mut cuts) = (Vec::new(), vec![usable], Vec::new());
    while let Some(part) = open.pop() {
        let way = [Way::Upright, Way::Level][chance.below(2)];
        let size = if way == Way::Upright {
            part.width
        } else {
            part.height
        };
        if size < 20 + kerf || part.width * part.height < 2000 || chance.one_in(9) {
            parts.push(part);
            continue;
        }
        let room = usize::try_from(size - 10 - kerf).expect("small");
        let low = 5 + u64::try_from(chance.below(room)).expect("small");
        let (mut one, mut other) = (part, part);
        let at = if way == Way::Upright {
            one.width = low;
            other.x += low + kerf;
            other.width -= low + kerf;
            part.x + low
        } else {
            one.height = low;
            other.y += low + kerf;
            other.height -= low + kerf;
            part.y + low
        };
        cuts.push(cut(part, way, at));
        open.extend([one, other]);
    }
    named(seed, kerf, &parts, cuts, &mut chance)
}

const EDGES: Edges = Edges {
    left: 2,
    right: 3,
    bottom: 1,
    top: 4,
};

/// Most parts become pieces, some turned; some remnants; some waste.
fn named(
    seed: u64,
    kerf: u64,
    parts: &[Area],
    cuts: Vec<Cut>,
    chance: &mut Chance,
) -> (Problem, Plan) {
    let (mut pieces, mut lie, mut remnants) = (Vec::new(), Vec::new(), Vec::new());
    for (number, part) in parts.iter().enumerate() {
        match chance.below(5) {
            0 if number > 0 => remnants.push(*part),
            1 if number > 0 => {}
            luck => {
                let turned = luck == 2;
                let (width, height) = if turned {
                    (part.height, part.width)
                } else {
                    (part.width, part.height)
                };
                lie.push(Placed {
                    piece: pieces.len(),
                    area: *part,
                    turned,
                });
                pieces.push(piece(&format!("p{number}"), width, height, 1));
            }
        }
    }
    let problem = Problem {
        name: format!("random {seed}"),
        rules: Rules {
            kerf,
            ..Rules::default()
        },
        stock: vec![Sheet {
            trim: EDGES,
            ..sheet("s", 205, 155)
        }],
        pieces,
        ..problem()
    };
    let layout = Layout {
        from: From::Stock(0),
        copies: 1,
        pieces: lie,
        cuts,
        remnants,
    };
    let plan = Plan {
        layouts: vec![layout],
        ..plan()
    };
    (problem, plan)
}

#[test]
fn sheets_cut_up_at_random_hold_and_nothing_is_lost() {
    for seed in 0..300 {
        let (problem, mut plan) = cut_up(seed);
        let tally = check(&problem, &plan).expect("cut by the rules");
        assert_eq!(tally.whole.stock, tally.whole.parts());
        assert_eq!(tally.whole.stock, 205 * 155);
        let layout = &mut plan.layouts[0];
        let placed = layout.pieces.iter().map(|placed| placed.area);
        let wanted: Vec<Area> = placed.chain(layout.remnants.iter().copied()).collect();
        layout.cuts = cuts(&problem.rules, area(2, 1, 200, 150), &wanted).expect("there are some");
        check(&problem, &plan).expect("the cuts found free everything");
        plan.layouts[0].pieces[0].area.x += 1;
        assert!(check(&problem, &plan).is_err(), "moved by one, seed {seed}");
    }
}

/// Numbers at the end of what can be written are told apart like any others.
#[test]
fn no_number_is_too_large_to_check() {
    const MOST: u64 = u64::MAX;
    let (mut problem, mut plan) = (problem(), plan());
    problem.stock[0] = Sheet {
        cost: MOST,
        ..sheet("s", MOST, 1)
    };
    problem.stock[0].height = MOST;
    problem.pieces = vec![piece("a", MOST, 1, 1), piece("b", 1, 1, 1)];
    problem.pieces[0].height = MOST;
    plan.layouts[0].pieces = vec![placed(0, 0, 0, MOST, MOST)];
    plan.layouts[0].cuts.clear();
    plan.layouts[0].remnants.clear();
    plan.uncut = vec![(1, 1)];
    assert!(check(&problem, &plan).is_ok());
    plan.layouts[0].copies = MOST;
    assert_eq!(check(&problem, &plan), Err(Broken::Countless));
    plan.layouts[0].copies = 1;
    plan.layouts[0].pieces[0].area.x = MOST;
    assert!(matches!(
        check(&problem, &plan),
        Err(Broken::Outside { .. })
    ));
    plan.layouts[0].pieces = vec![placed(1, 0, 0, 1, 1)];
    problem.rules.kerf = MOST;
    plan.layouts[0].cuts = vec![cut(area(0, 0, MOST, MOST), Way::Upright, MOST)];
    assert!(matches!(check(&problem, &plan), Err(Broken::Beside { .. })));
    plan.layouts[0].cuts = vec![
        cut(area(0, 0, MOST, MOST), Way::Upright, 1),
        cut(area(0, 0, 1, MOST), Way::Level, 1),
    ];
    plan.uncut = vec![(0, 1)];
    let tally = check(&problem, &plan).expect("the saw takes all the rest");
    assert_eq!((tally.whole.pieces, tally.whole.waste), (1, 0));
    assert_eq!(tally.whole.stock, tally.whole.parts());
}

/// Five pieces round a hole: every pair apart, yet no cut from edge to edge exists.
#[test]
fn no_cuts_are_found_where_there_are_none() {
    let wheel = [
        area(0, 0, 20, 10),
        area(20, 0, 10, 20),
        area(10, 20, 20, 10),
        area(0, 10, 10, 20),
        area(10, 10, 10, 10),
    ];
    let whole = area(0, 0, 30, 30);
    assert_eq!(cuts(&Rules::default(), whole, &wheel), None);
    assert!(cuts(&Rules::default(), whole, &wheel[..3]).is_some());
}

/// Beside a piece 30 high lies one 28 high: cut close to the first, the second keeps a strip of 2;
/// with the 12 above left on both, each is trimmed by 12 or 14.
#[test]
fn waste_stays_where_a_least_strip_needs_it() {
    let rules = |least_strip| Rules {
        least_strip,
        ..Rules::default()
    };
    let wanted = [area(0, 0, 50, 30), area(50, 0, 50, 28)];
    let whole = area(0, 0, 100, 42);
    assert!(cuts(&rules(10), whole, &wanted).is_some());
    assert_eq!(cuts(&rules(13), whole, &wanted), None);
    assert_eq!(cuts(&rules(10), area(0, 0, 100, 30), &wanted), None);
}
