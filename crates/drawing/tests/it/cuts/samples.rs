//! Invented sheets and sticks; sizes whose digits tell the terms of a sum apart.

use cutting::sheets::{Area, Cut, Edges, Way};
use drawing::{Counting, CutPiece, CutSheet, CutStick, CutWindow, Kept, StickPiece};
use measure::{Length, Tape, Toward};

/// Counts of 1/64 in.
pub const INCH: u64 = 64;

/// Counts of 1/64 in, read on a tape by sixteenths.
pub fn inches() -> Counting {
    Counting::Lengths {
        each: Length::inch_fraction(1, 64),
        tape: Tape::Sixteenths,
        toward: Toward::Nearest,
    }
}

/// Whole numbers and no unit.
pub fn plain() -> Counting {
    Counting::Plain {
        unit: String::new(),
    }
}

/// What becomes of a part.
#[derive(Clone, Debug)]
pub enum Use {
    /// A piece: its name, and whether it is turned and may be.
    Piece(&'static [&'static str], Turn),
    /// A piece whose window, of this size, is stock again.
    Frame(&'static [&'static str], (u64, u64)),
    Keep(&'static str),
    Waste,
    /// Parts side by side or one on another; the last takes what is left.
    Split(Way, Vec<(u64, Use)>),
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Turn {
    Free,
    Turned,
    Never,
}

/// Cuts a sheet up as told.
pub fn cut_up(sheet: &mut CutSheet, what: Use) {
    let edges = sheet.trim;
    let area = Area {
        x: edges.left,
        y: edges.bottom,
        width: sheet.width - edges.left - edges.right,
        height: sheet.height - edges.bottom - edges.top,
    };
    part(sheet, area, what);
}

fn part(sheet: &mut CutSheet, area: Area, what: Use) {
    match what {
        Use::Waste => {}
        Use::Keep(label) => sheet.remnants.push(Kept {
            label: label.to_owned(),
            place: area,
        }),
        Use::Piece(lines, turn) => sheet.pieces.push(piece(lines, area, turn)),
        Use::Frame(lines, (width, height)) => {
            let window = CutWindow {
                label: "W-5 fallout".to_owned(),
                area: Area {
                    x: area.x + (area.width - width) / 2,
                    y: area.y + (area.height - height) / 2,
                    width,
                    height,
                },
            };
            let piece = CutPiece {
                window: Some(window),
                ..piece(lines, area, Turn::Free)
            };
            sheet.pieces.push(piece);
        }
        Use::Split(way, parts) => split(sheet, area, way, parts),
    }
}

fn piece(lines: &[&str], area: Area, turn: Turn) -> CutPiece {
    CutPiece {
        lines: lines.iter().map(|line| (*line).to_owned()).collect(),
        area,
        exact: None,
        turned: turn == Turn::Turned,
        no_turn: turn == Turn::Never,
        window: None,
    }
}

fn split(sheet: &mut CutSheet, area: Area, way: Way, parts: Vec<(u64, Use)>) {
    let mut rest = area;
    let mut inner = Vec::new();
    for (extent, what) in parts {
        let (start, long) = match way {
            Way::Upright => (rest.x, rest.width),
            Way::Level => (rest.y, rest.height),
        };
        if long == 0 {
            break;
        }
        if extent >= long {
            inner.push((rest, what));
            break;
        }
        sheet.cuts.push(Cut {
            of: rest,
            way,
            at: start + extent,
        });
        let gone = (extent + sheet.kerf).min(long);
        let (near, far) = match way {
            Way::Upright => (
                Area {
                    width: extent,
                    ..rest
                },
                Area {
                    x: rest.x + gone,
                    width: rest.width - gone,
                    ..rest
                },
            ),
            Way::Level => (
                Area {
                    height: extent,
                    ..rest
                },
                Area {
                    y: rest.y + gone,
                    height: rest.height - gone,
                    ..rest
                },
            ),
        };
        inner.push((near, what));
        rest = far;
    }
    for (area, what) in inner {
        part(sheet, area, what);
    }
}

fn blank(title: &str, stock: &str, (width, height): (u64, u64), counting: Counting) -> CutSheet {
    CutSheet {
        title: title.to_owned(),
        stock: stock.to_owned(),
        fallout: false,
        counting,
        width,
        height,
        trim: Edges::default(),
        kerf: 0,
        copies: 1,
        grain: Way::Upright,
        pieces: Vec::new(),
        cuts: Vec::new(),
        remnants: Vec::new(),
    }
}

/// Eight parts of many sizes: trims, kerf, a turned piece, one that may not be turned, a window,
/// pieces too small for their names, a remnant and waste.
pub fn board() -> CutSheet {
    let mut sheet = blank(
        "Sheet 1 of 2",
        "Rag board, chalk, 48 × 36 in",
        (48 * INCH, 36 * INCH),
        inches(),
    );
    sheet.trim = Edges {
        left: 16,
        bottom: 16,
        right: 8,
        top: 0,
    };
    sheet.kerf = 4;
    sheet.copies = 3;
    let columns = vec![
        (20 * INCH + 12, mats()),
        (14 * INCH + 20, upright_pieces()),
        (9 * INCH + 36, panel_and_strips()),
        (REST, Use::Keep("RB-118")),
    ];
    cut_up(&mut sheet, Use::Split(Way::Upright, columns));
    sheet
}

/// Longer than any part: whatever is left.
const REST: u64 = 0xffff;

/// A mat whose window is used again, a turned mount, a remnant.
fn mats() -> Use {
    let mat = Use::Frame(&["Job 2417", "top mat"], (12 * INCH, 9 * INCH));
    let mount = Use::Piece(&["Job 2418", "mount"], Turn::Turned);
    let parts = vec![
        (16 * INCH + 8, mat),
        (11 * INCH + 3, mount),
        (REST, Use::Keep("RB-117")),
    ];
    Use::Split(Way::Level, parts)
}

/// Two pieces that may not be turned.
fn upright_pieces() -> Use {
    let backing = Use::Piece(&["Job 2419", "backing"], Turn::Never);
    let wrap = Use::Piece(&["Job 2420", "linen wrap"], Turn::Never);
    let parts = vec![
        (18 * INCH + 40, backing),
        (13 * INCH, wrap),
        (REST, Use::Waste),
    ];
    Use::Split(Way::Level, parts)
}

/// A tall panel, and pieces too small for their names.
fn panel_and_strips() -> Use {
    let panel = Use::Piece(&["Job 2421", "strainer panel"], Turn::Free);
    let small = || Use::Piece(&["Job 2431", "place mark"], Turn::Free);
    let strip = Use::Piece(&["Job 2431", "title strip"], Turn::Free);
    let strips = vec![
        (INCH, small()),
        (INCH, small()),
        (5 * INCH, strip),
        (REST, Use::Waste),
    ];
    let parts = vec![
        (30 * INCH + 5, panel),
        (2 * INCH, Use::Split(Way::Upright, strips)),
        (REST, Use::Waste),
    ];
    Use::Split(Way::Level, parts)
}

/// The window of the board's first piece, cut up.
pub fn window() -> CutSheet {
    let mut sheet = blank(
        "Sheet 2 of 2",
        "Window W-5 of Job 2417, top mat",
        (12 * INCH, 9 * INCH),
        inches(),
    );
    sheet.fallout = true;
    cut_up(
        &mut sheet,
        Use::Split(
            Way::Upright,
            vec![
                (7 * INCH + 16, Use::Piece(&["Job 2440", "mat"], Turn::Free)),
                (REST, Use::Waste),
            ],
        ),
    );
    sheet
}

/// Sixty pieces of an abstract list.
pub fn crowd() -> CutSheet {
    let mut sheet = blank("Sheet 1 of 1", "S1", (1000, 700), plain());
    let names: [&'static [&'static str]; 4] = [&["a12"], &["b7"], &["c"], &["d1"]];
    let row = |k: u64| {
        let wide = |j: u64| 93 - (k * 7 + j * 5) % 31;
        let parts = (0..10).map(|j| {
            let which = usize::try_from((k + j) % 4).unwrap();
            (wide(j), Use::Piece(names[which], Turn::Never))
        });
        let parts = parts.chain([(REST, Use::Waste)]).collect();
        (109, Use::Split(Way::Upright, parts))
    };
    let rows = (0..6).map(row).chain([(REST, Use::Keep("rest"))]).collect();
    cut_up(&mut sheet, Use::Split(Way::Level, rows));
    sheet
}

/// A glass sheet that is one piece as it is.
pub fn whole() -> CutSheet {
    let mut sheet = blank(
        "Sheet 1 of 1",
        "Glass 2 mm, 305 × 407 mm",
        (305, 407),
        Counting::Lengths {
            each: Length::mm(1),
            tape: Tape::Millimetre,
            toward: Toward::Down,
        },
    );
    cut_up(&mut sheet, Use::Piece(&["Job 9", "glazing"], Turn::Free));
    sheet
}

/// A stick with trims, flaws, mitred legs, a spacer too short for its name and a remnant.
pub fn stick() -> CutStick {
    let leg = |job: &str, leg: &str, at: u64, length: u64| StickPiece {
        lines: vec![job.to_owned(), leg.to_owned()],
        at,
        length,
        exact: None,
        mitre: Some((INCH + 32, INCH + 32)),
    };
    let kerf = 8;
    let first = 32;
    let second = first + 21 * INCH + 12 + kerf;
    let third = second + 17 * INCH + 40 + kerf;
    let fourth = third + 24 * INCH + 3 + 2 * INCH;
    let fifth = fourth + 21 * INCH + 12 + kerf;
    CutStick {
        title: "Stick 1 of 4".to_owned(),
        stock: "Ash cap 1 1/2, 10 ft, run 7".to_owned(),
        counting: inches(),
        length: 120 * INCH,
        trim: (32, 16),
        kerf,
        copies: 2,
        flaws: vec![(third + 24 * INCH + 20, third + 25 * INCH + 30)],
        pieces: vec![
            leg("Job 2417", "top", first, 21 * INCH + 12),
            leg("Job 2417", "left", second, 17 * INCH + 40),
            leg("Job 2419", "bottom", third, 24 * INCH + 3),
            leg("Job 2417", "bottom", fourth, 21 * INCH + 12),
            StickPiece {
                lines: vec!["Job 2433".to_owned(), "corner block".to_owned()],
                at: fifth,
                length: 2 * INCH + 7,
                exact: None,
                mitre: None,
            },
        ],
        remnants: vec![Kept {
            label: "ASH-31".to_owned(),
            place: (fifth + 2 * INCH + 7 + kerf, 120 * INCH - 16),
        }],
    }
}
