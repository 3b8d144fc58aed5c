//! Lists nobody should write: each is answered at once, with sentences that say what to mend.

use std::time::{Duration, Instant};

use cutting::lengths::Together;
use cutting::sheets::{Edges, Rules};
use cutting::{Fault, Goal, Plan, Problem, Unwatched, lengths, sheets};

use crate::draw::{leg, piece, sheet, sheets_of, steps, stick, sticks_of};

/// Generous, for a debug build on a busy machine; nothing here should take a tenth of it.
const SOON: Duration = Duration::from_secs(20);

fn answer(problem: &Problem) -> Result<Plan, Vec<Fault>> {
    let began = Instant::now();
    let found = match problem {
        Problem::Lengths(problem) => {
            lengths::solve(problem, steps(1_000_000), &Unwatched).map(Plan::Lengths)
        }
        Problem::Sheets(problem) => {
            sheets::solve(problem, steps(1_000_000), &Unwatched).map(Plan::Sheets)
        }
    };
    assert!(began.elapsed() < SOON, "{:?}: {problem:?}", began.elapsed());
    found
}

/// Every fault is a sentence; all of them hold these words.
fn refused(problem: &Problem, words: &[&str]) {
    let faults = answer(problem).expect_err("it can't be planned");
    assert!(!faults.is_empty(), "{problem:?}");
    let said: Vec<String> = faults.iter().map(Fault::to_string).collect();
    let said = said.join("\n");
    for word in words {
        assert!(said.contains(word), "{word:?} is not in: {said}");
    }
    let lower = said.to_lowercase();
    for word in ["invalid", "illegal", "please", "sorry", "oops"] {
        assert!(!lower.contains(word), "{said}");
    }
}

fn planned(problem: &Problem) -> Plan {
    let plan = answer(problem).unwrap_or_else(|faults| panic!("{faults:?}: {problem:?}"));
    match (problem, &plan) {
        (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
        (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
        _ => panic!("a plan of the other kind"),
    }
    .unwrap_or_else(|broken| panic!("{broken}: {problem:?}"));
    plan
}

fn flat(stock: Vec<sheets::Sheet>, pieces: Vec<sheets::Piece>) -> Problem {
    Problem::Sheets(sheets_of(stock, pieces))
}

fn long(stock: Vec<lengths::Stick>, pieces: Vec<lengths::Piece>) -> Problem {
    Problem::Lengths(sticks_of(stock, pieces))
}

#[test]
fn nothing_to_cut_or_nothing_to_cut_from() {
    refused(&flat(vec![], vec![piece("a", 1, 1, 1)]), &["no stock"]);
    refused(
        &flat(vec![sheet("s", 9, 9, 1)], vec![]),
        &["nothing to cut"],
    );
    refused(&flat(vec![], vec![]), &["no stock", "nothing to cut"]);
    refused(&long(vec![], vec![leg("a", 1, 1)]), &["no stock"]);
    refused(&long(vec![stick("s", 9, 1)], vec![]), &["nothing to cut"]);
    refused(&long(vec![], vec![]), &["no stock", "nothing to cut"]);
}

#[test]
fn none_wanted_or_none_held() {
    refused(
        &flat(vec![sheet("s", 9, 9, 1)], vec![piece("a", 1, 1, 0)]),
        &["nothing to cut"],
    );
    refused(
        &long(vec![stick("s", 9, 1)], vec![leg("a", 1, 0)]),
        &["nothing to cut"],
    );
    let mut none = sheet("s", 9, 9, 1);
    none.count = Some(0);
    refused(&flat(vec![none], vec![piece("a", 1, 1, 1)]), &[]);
    let mut none = stick("s", 9, 1);
    none.count = Some(0);
    refused(&long(vec![none], vec![leg("a", 1, 1)]), &["no stock"]);
}

#[test]
fn sizes_of_zero() {
    refused(
        &flat(vec![sheet("s", 0, 9, 1)], vec![piece("a", 1, 1, 1)]),
        &["\"s\"", "size of 0"],
    );
    refused(
        &flat(vec![sheet("s", 9, 9, 1)], vec![piece("a", 1, 0, 1)]),
        &["\"a\"", "size of 0"],
    );
    refused(
        &long(vec![stick("s", 0, 1)], vec![leg("a", 1, 1)]),
        &["\"s\"", "size of 0"],
    );
    refused(
        &long(vec![stick("s", 9, 1)], vec![leg("a", 0, 1)]),
        &["\"a\"", "size of 0"],
    );
}

#[test]
fn the_same_name_twice() {
    let twice = vec![piece("a", 1, 1, 1), piece("a", 2, 2, 1)];
    refused(
        &flat(vec![sheet("s", 9, 9, 1)], twice),
        &["\"a\"", "its own name"],
    );
    let twice = vec![sheet("s", 9, 9, 1), sheet("s", 8, 8, 1)];
    refused(
        &flat(twice, vec![piece("a", 1, 1, 1)]),
        &["\"s\"", "its own name"],
    );
    let twice = vec![leg("a", 1, 1), leg("a", 2, 1)];
    refused(
        &long(vec![stick("s", 9, 1)], twice),
        &["\"a\"", "its own name"],
    );
    let twice = vec![stick("s", 9, 1), stick("s", 8, 1)];
    refused(
        &long(twice, vec![leg("a", 1, 1)]),
        &["\"s\"", "its own name"],
    );
}

#[test]
fn a_piece_too_large_names_what_would_do() {
    let stock = vec![sheet("small", 10, 20, 1), sheet("large", 30, 20, 1)];
    let words = [
        "\"board\" (31 × 5)",
        "\"large\"",
        "30 × 20",
        "lacks 1 × 0",
        "31 × 20",
    ];
    refused(&flat(stock, vec![piece("board", 31, 5, 1)]), &words);
    let mut trimmed = stick("long", 100, 1);
    trimmed.trim = (3, 4);
    let words = ["\"leg\" (95)", "\"long\"", "93", "lacks 2", "102"];
    refused(
        &long(
            vec![stick("short", 50, 1), trimmed],
            vec![leg("leg", 95, 1)],
        ),
        &words,
    );
}

#[test]
fn numbers_beyond_counting() {
    for huge in [u64::MAX, u64::MAX - 1, u64::MAX / 2, 1 << 45] {
        let sheets = |width, height, cost| vec![sheet("s", width, height, cost)];
        let one = || vec![piece("a", 1, 1, 1)];
        refused(&flat(sheets(huge, 9, 1), one()), &["\"s\""]);
        refused(&flat(sheets(9, huge, 1), one()), &["\"s\""]);
        refused(&flat(sheets(9, 9, huge), one()), &["\"s\""]);
        refused(
            &flat(sheets(9, 9, 1), vec![piece("a", huge, 1, 1)]),
            &["\"a\""],
        );
        refused(
            &flat(sheets(9, 9, 1), vec![piece("a", 1, huge, 1)]),
            &["\"a\""],
        );
        refused(
            &flat(sheets(9, 9, 1), vec![piece("a", 1, 1, huge)]),
            &["pieces"],
        );
        refused(
            &flat(
                sheets(9, 9, 1),
                vec![piece("a", 1, 1, huge), piece("b", 1, 1, huge)],
            ),
            &[],
        );
        let sticks = |length, cost| vec![stick("s", length, cost)];
        refused(&long(sticks(huge, 1), vec![leg("a", 1, 1)]), &["\"s\""]);
        refused(&long(sticks(9, huge), vec![leg("a", 1, 1)]), &["\"s\""]);
        refused(&long(sticks(9, 1), vec![leg("a", huge, 1)]), &["\"a\""]);
        refused(&long(sticks(9, 1), vec![leg("a", 1, huge)]), &["\"a\""]);
        let mut kerf = sheets_of(sheets(9, 9, 1), one());
        kerf.rules.kerf = huge;
        refused(&Problem::Sheets(kerf), &["kerf"]);
        let mut kerf = sticks_of(sticks(9, 1), vec![leg("a", 1, 1)]);
        kerf.kerf = huge;
        refused(&Problem::Lengths(kerf), &["kerf"]);
    }
}

#[test]
fn trims_flaws_and_windows_that_cannot_be() {
    let all = u64::MAX;
    for (left, right) in [(5, 4), (9, 0), (all, 0), (all, all)] {
        let mut trimmed = sheet("s", 9, 9, 1);
        trimmed.trim = Edges {
            left,
            right,
            ..Edges::default()
        };
        refused(
            &flat(vec![trimmed], vec![piece("a", 1, 1, 1)]),
            &["\"s\"", "trim"],
        );
        let mut trimmed = stick("s", 9, 1);
        trimmed.trim = (left, right);
        refused(
            &long(vec![trimmed], vec![leg("a", 1, 1)]),
            &["\"s\"", "trim"],
        );
    }
    for flaw in [(5, 4), (8, 10), (all, all), (0, all)] {
        let mut flawed = stick("s", 9, 1);
        flawed.flaws = vec![flaw];
        refused(
            &long(vec![flawed], vec![leg("a", 1, 1)]),
            &["\"s\"", "flaw"],
        );
    }
    for window in [(3, 2), (2, 3), (0, 1), (all, all)] {
        let mut mat = piece("a", 3, 3, 1);
        mat.window = Some(window);
        refused(
            &flat(vec![sheet("s", 9, 9, 1)], vec![mat]),
            &["\"a\"", "window"],
        );
    }
}

#[test]
fn rules_that_cannot_be() {
    let with = |rules| {
        let sound = sheets_of(vec![sheet("s", 9, 9, 1)], vec![piece("a", 1, 1, 1)]);
        Problem::Sheets(sheets::Problem { rules, ..sound })
    };
    refused(
        &with(Rules {
            kerf: 1,
            least_strip: 1,
            ..Rules::default()
        }),
        &["kerf"],
    );
    refused(
        &with(Rules {
            stages: Some(0),
            ..Rules::default()
        }),
        &["stages"],
    );
    // A strip wider than the sheet: only what fills the sheet could be cut.
    for least_strip in [5, 9, 10, 1 << 31, 1 << 40, u64::MAX] {
        let problem = with(Rules {
            least_strip,
            ..Rules::default()
        });
        if let Ok(plan) = answer(&problem) {
            assert_eq!(plan.uncut(), [(0, 1)], "{least_strip}");
        }
    }
    let mut endless = sheets_of(vec![sheet("s", 9, 9, 1)], vec![piece("a", 1, 1, 1)]);
    endless.pieces[0].count = None;
    refused(&Problem::Sheets(endless), &["\"a\"", "how many"]);
    let mut endless = sticks_of(vec![stick("s", 9, 1)], vec![leg("a", 1, 1)]);
    endless.pieces[0].count = None;
    refused(&Problem::Lengths(endless), &["\"a\"", "how many"]);
}

#[test]
fn groups_longer_than_any_stick() {
    let mut legs = vec![leg("a", 30, 2), leg("b", 40, 1)];
    for leg in &mut legs {
        leg.together = Some(Together::Stick("frame".to_owned()));
    }
    let mut problem = sticks_of(vec![stick("s", 101, 1)], legs);
    problem.kerf = 1;
    refused(
        &Problem::Lengths(problem.clone()),
        &["\"frame\"", "102", "1 too long"],
    );
    problem.stock[0].length = 102;
    assert!(planned(&Problem::Lengths(problem)).uncut().is_empty());
}

#[test]
fn millions_of_pieces() {
    let stock = || vec![sheet("s", 1000, 1000, 7)];
    refused(
        &flat(stock(), vec![piece("a", 30, 40, 5_000_000)]),
        &["5000000", "divide"],
    );
    let most = planned(&flat(stock(), vec![piece("a", 300, 401, 1_000_000)]));
    // Six to a sheet: three across and two up.
    assert_eq!(most.objective(), 166_667 * 7);
    let plan = planned(&long(
        vec![stick("s", 1000, 3)],
        vec![leg("a", 300, 1_000_000_000)],
    ));
    assert_eq!(
        (plan.objective(), plan.bound()),
        (1_000_000_002, 1_000_000_002)
    );
    let many = (0..3000).map(|n| leg(&format!("leg {n}"), 100 + n % 700, 1 + n % 5));
    let plan = planned(&long(vec![stick("s", 2400, 3)], many.collect()));
    assert!(plan.uncut().is_empty());
    let many =
        (0..1500).map(|n| piece(&format!("piece {n}"), 50 + n % 300, 40 + n % 171, 1 + n % 3));
    let plan = planned(&flat(stock(), many.collect()));
    assert!(plan.uncut().is_empty());
}

#[test]
fn as_large_as_can_be_reckoned() {
    let side = 1 << 30;
    let plan = planned(&flat(
        vec![sheet("s", side, side, 1 << 40)],
        vec![
            piece("a", side / 2 + 1, side / 3, 3),
            piece("b", 1, side, 2),
            piece("c", 1, 1, 9),
        ],
    ));
    assert!(plan.uncut().is_empty());
    let length = u64::from(u32::MAX);
    let plan = planned(&long(
        vec![stick("s", length, 1 << 40)],
        vec![
            leg("a", length / 2, 1000),
            leg("b", length, 2),
            leg("c", 1_000_000, 9),
        ],
    ));
    assert!(plan.uncut().is_empty());
    let mut fine = sheets_of(vec![sheet("s", side, side, 1)], vec![piece("a", 1, 1, 5)]);
    fine.goal = Goal::Value;
    fine.pieces[0].count = None;
    if let Ok(plan) = answer(&Problem::Sheets(fine)) {
        assert!(plan.objective() <= plan.bound());
    }
}

#[test]
fn costs_of_nothing() {
    let plan = planned(&flat(vec![sheet("s", 9, 9, 0)], vec![piece("a", 5, 5, 3)]));
    assert_eq!((plan.objective(), plan.bound()), (0, 0));
    let plan = planned(&long(vec![stick("s", 9, 0)], vec![leg("a", 5, 3)]));
    assert_eq!((plan.objective(), plan.bound()), (0, 0));
}

#[test]
fn pieces_narrower_than_the_least_strip() {
    let rules = Rules {
        least_strip: 20,
        ..Rules::default()
    };
    for goal in [Goal::Cost, Goal::Value] {
        let mut narrow = sheets_of(
            vec![sheet("s", 80, 80, 3)],
            vec![piece("a", 10, 30, 2), piece("b", 30, 30, 1)],
        );
        narrow.rules = rules;
        narrow.goal = goal;
        // Refused, or left uncut; never cut.
        if let Ok(plan) = answer(&Problem::Sheets(narrow.clone())) {
            let Plan::Sheets(plan) = plan else {
                panic!("a plan of the other kind")
            };
            sheets::check(&narrow, &plan).unwrap_or_else(|broken| panic!("{goal:?}: {broken}"));
        }
    }
}
