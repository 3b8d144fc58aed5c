//! From plans of the cutting room to cut sheets.

use cutting::{Goal, lengths, sheets};
use drawing::{Ink, Look, Names, cut_sheet, cut_sheets_of, cut_stick, cut_sticks_of, twin_text};
use sheets::{
    Area, Cut, Edges, First, From, Layout, Piece, Placed, Plan, Problem, Rules, Sheet, Way,
};

use super::samples::plain;

fn piece(name: &str, width: u64, height: u64, turn: bool, window: Option<(u64, u64)>) -> Piece {
    Piece {
        name: name.to_owned(),
        width,
        height,
        count: Some(1),
        value: 1,
        turn,
        window,
        priority: 0,
        due: None,
    }
}

fn area(x: u64, y: u64, width: u64, height: u64) -> Area {
    Area {
        x,
        y,
        width,
        height,
    }
}

/// A mat of 60 × 80 lies turned on a sheet of 100 × 70; its window of 30 × 50 is cut up again.
fn problem() -> (Problem, Plan) {
    let problem = Problem {
        name: "list".to_owned(),
        goal: Goal::Cost,
        rules: Rules {
            kerf: 0,
            stages: None,
            first: First::Any,
            final_trim: false,
            least_strip: 0,
        },
        stock: vec![Sheet {
            name: "S".to_owned(),
            width: 100,
            height: 70,
            cost: 1,
            count: None,
            remnant: false,
            trim: Edges::default(),
        }],
        pieces: vec![
            piece("mat", 60, 80, true, Some((30, 50))),
            piece("small", 30, 40, false, None),
        ],
    };
    (problem, plan())
}

fn plan() -> Plan {
    let whole = area(0, 0, 100, 70);
    let placed = |piece, area, turned| Placed {
        piece,
        area,
        turned,
    };
    let cut = |of, way, at| Cut { of, way, at };
    Plan {
        layouts: vec![
            Layout {
                from: From::Stock(0),
                copies: 1,
                pieces: vec![placed(0, area(0, 0, 80, 60), true)],
                cuts: vec![
                    cut(whole, Way::Upright, 80),
                    cut(area(0, 0, 80, 70), Way::Level, 60),
                ],
                remnants: vec![area(80, 0, 20, 70), area(0, 60, 80, 10)],
            },
            Layout {
                from: From::Window(0),
                copies: 1,
                pieces: vec![placed(1, area(0, 0, 30, 40), false)],
                cuts: vec![cut(area(0, 0, 30, 50), Way::Level, 40)],
                remnants: vec![area(0, 40, 30, 10)],
            },
        ],
        objective: 1,
        bound: 1,
        uncut: Vec::new(),
    }
}

#[test]
fn a_bare_list_is_called_what_it_is_called() {
    let (problem, plan) = problem();
    let sheets = cut_sheets_of(&problem, &plan, &plain(), None);
    let [sheet, fallout] = sheets.as_slice() else {
        panic!("two sheets, not {}", sheets.len());
    };
    let window = sheet.pieces[0].window.as_ref().unwrap();
    // 50 × 30 as the mat lies, in the middle of 80 × 60.
    assert_eq!(window.area, area(15, 15, 50, 30));
    assert_eq!(window.label, "Window of mat");
    assert_eq!(sheet.pieces[0].own_size(), (60, 80));
    assert_eq!((fallout.width, fallout.height), (30, 50));
    assert!(fallout.fallout && !sheet.fallout);
    assert!(fallout.pieces[0].no_turn && !sheet.pieces[0].no_turn);
    let said: Vec<String> = sheets
        .iter()
        .map(|sheet| twin_text(&cut_sheet(sheet, &Look::wide(Ink::OneInk)).unwrap().drawing))
        .collect();
    assert!(said[0].contains("Piece 1: mat, 60 × 80, 0 from the left, 0 from the bottom, turned, Window of mat, 50 × 30"), "{}", said[0]);
    assert!(
        said[0].contains(
            "Sum: pieces 4800 + kerf 0 + trim 0 + remnants 2200 + waste 0 = stock 7000\n"
        ),
        "{}",
        said[0]
    );
    assert!(
        said[1].starts_with("Sheet 2 of 2: Window of mat\n"),
        "{}",
        said[1]
    );
}

#[test]
fn names_of_the_caller_take_the_place_of_the_lists() {
    let (problem, plan) = problem();
    let names = Names {
        stock: &|_| "Rag board".to_owned(),
        piece: &|k| vec![format!("Job {k}"), "part".to_owned()],
        window: &|k| format!("F-{k}"),
        remnant: &|layout, k| format!("RB-{layout}{k}"),
        length: &|_| None,
        size: &|_| None,
        mitre: &|_| None,
    };
    let sheets = cut_sheets_of(&problem, &plan, &plain(), Some(names));
    assert_eq!(sheets[0].stock, "Rag board");
    assert_eq!(sheets[0].pieces[0].lines, ["Job 0", "part"]);
    assert_eq!(sheets[1].stock, "F-0");
    assert_eq!(sheets[1].remnants[0].label, "RB-10");
}

fn leg(name: &str, length: u64) -> lengths::Piece {
    lengths::Piece {
        name: name.to_owned(),
        length,
        count: Some(1),
        value: 1,
        together: None,
        priority: 0,
        due: None,
    }
}

#[test]
fn sticks_keep_their_flaws_and_mitres() {
    let problem = lengths::Problem {
        name: "list".to_owned(),
        goal: Goal::Cost,
        kerf: 2,
        stock: vec![lengths::Stick {
            name: "S".to_owned(),
            length: 100,
            cost: 1,
            count: None,
            remnant: false,
            trim: (0, 0),
            flaws: vec![(45, 50)],
            run: None,
        }],
        pieces: vec![leg("a", 40), leg("b", 50)],
    };
    let placed = |piece, at| lengths::Placed { piece, at };
    let plan = lengths::Plan {
        layouts: vec![lengths::Layout {
            stock: 0,
            copies: 1,
            pieces: vec![placed(0, 0), placed(1, 50)],
            remnants: Vec::new(),
        }],
        objective: 1,
        bound: 1,
        uncut: Vec::new(),
    };
    let sticks = cut_sticks_of(&problem, &plan, &plain(), None);
    assert_eq!(sticks[0].flaws, [(45, 50)]);
    let said = twin_text(
        &cut_stick(&sticks[0], &Look::wide(Ink::OneInk))
            .unwrap()
            .drawing,
    );
    // 100 = 40 + 50 + kerf at either side of 6 of waste; b ends the stick and needs no cut.
    assert!(
        said.contains("Sum: pieces 90 + kerf 4 + trim 0 + remnants 0 + waste 6 = stock 100\n"),
        "{said}"
    );
    assert!(
        said.contains("Cut 2: at 48 from the reference end; waste, 6\n"),
        "{said}"
    );
    assert!(!said.contains("Cut 3"), "{said}");
}
