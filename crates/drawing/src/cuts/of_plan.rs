//! From a plan of the cutting room to cut sheets: places from the plan, names from the caller.

use cutting::sheets::{Area, Edges, From, Way};
use cutting::{lengths, sheets};
use measure::{Length, Size};

use crate::cuts::{Counting, CutPiece, CutSheet, CutStick, CutWindow, Kept, StickPiece};

/// What the numbers of a plan are called.
///
/// Shape:  stock and pieces counted from 0, as in the problem; a remnant by its layout and its
///         place there.
#[derive(Clone, Copy)]
pub struct Names<'a> {
    /// A stock item.
    pub stock: &'a dyn Fn(usize) -> String,
    /// A piece: job and part, a line each.
    pub piece: &'a dyn Fn(usize) -> Vec<String>,
    /// What falls out of a piece.
    pub window: &'a dyn Fn(usize) -> String,
    /// A remnant.
    pub remnant: &'a dyn Fn(usize, usize) -> String,
    /// The true length of a stick's piece.
    pub length: &'a dyn Fn(usize) -> Option<Length>,
    /// The true size of a sheet's piece.
    pub size: &'a dyn Fn(usize) -> Option<Size>,
    /// How much shorter the front of a stick's piece is at each end, where it is mitred.
    pub mitre: &'a dyn Fn(usize) -> Option<(u64, u64)>,
}

/// The cut sheets of a plan for sheets, in its order; `names` none: what the problem calls them.
///
/// Shape:  a window lies in the middle of its piece.
pub fn cut_sheets_of(
    problem: &sheets::Problem,
    plan: &sheets::Plan,
    counting: &Counting,
    names: Option<Names<'_>>,
) -> Vec<CutSheet> {
    let stock = |k: usize| problem.stock[k].name.clone();
    let piece = |k: usize| vec![problem.pieces[k].name.clone()];
    let window = |k: usize| format!("Window of {}", problem.pieces[k].name);
    let own = Names {
        stock: &stock,
        piece: &piece,
        window: &window,
        remnant: &numbered,
        length: &|_| None,
        size: &|_| None,
        mitre: &|_| None,
    };
    let names = names.unwrap_or(own);
    let reused = |k: usize| {
        plan.layouts
            .iter()
            .any(|layout| layout.from == From::Window(k))
    };
    let reused: Vec<bool> = (0..problem.pieces.len()).map(reused).collect();
    let one = |(index, layout)| sheet_of(problem, plan, (index, layout), counting, names, &reused);
    plan.layouts.iter().enumerate().map(one).collect()
}

/// The cut sheets of a plan for sticks, in its order; `names` none: what the problem calls them.
pub fn cut_sticks_of(
    problem: &lengths::Problem,
    plan: &lengths::Plan,
    counting: &Counting,
    names: Option<Names<'_>>,
) -> Vec<CutStick> {
    let stock = |k: usize| problem.stock[k].name.clone();
    let piece = |k: usize| vec![problem.pieces[k].name.clone()];
    let own = Names {
        stock: &stock,
        piece: &piece,
        window: &|_| String::new(),
        remnant: &numbered,
        length: &|_| None,
        size: &|_| None,
        mitre: &|_| None,
    };
    let names = names.unwrap_or(own);
    let one = |(index, layout): (usize, &lengths::Layout)| {
        let held = &problem.stock[layout.stock];
        let placed = |placed: &lengths::Placed| StickPiece {
            lines: (names.piece)(placed.piece),
            at: placed.at,
            length: problem.pieces[placed.piece].length,
            exact: (names.length)(placed.piece),
            mitre: (names.mitre)(placed.piece),
        };
        let kept = |(k, place): (usize, &(u64, u64))| Kept {
            label: (names.remnant)(index, k),
            place: *place,
        };
        CutStick {
            title: format!("Stick {} of {}", index + 1, plan.layouts.len()),
            stock: (names.stock)(layout.stock),
            counting: counting.clone(),
            length: held.length,
            trim: held.trim,
            kerf: problem.kerf,
            copies: layout.copies,
            flaws: held.flaws.clone(),
            pieces: layout.pieces.iter().map(placed).collect(),
            remnants: layout.remnants.iter().enumerate().map(kept).collect(),
        }
    };
    plan.layouts.iter().enumerate().map(one).collect()
}

fn numbered(layout: usize, remnant: usize) -> String {
    format!("remnant {}.{}", layout + 1, remnant + 1)
}

fn sheet_of(
    problem: &sheets::Problem,
    plan: &sheets::Plan,
    (index, layout): (usize, &sheets::Layout),
    counting: &Counting,
    names: Names<'_>,
    reused: &[bool],
) -> CutSheet {
    let (stock, (width, height), trim) = match layout.from {
        From::Stock(k) => {
            let sheet = &problem.stock[k];
            ((names.stock)(k), (sheet.width, sheet.height), sheet.trim)
        }
        From::Window(k) => (
            (names.window)(k),
            problem.pieces[k].window.unwrap_or_default(),
            Edges::default(),
        ),
    };
    let piece = |placed: &sheets::Placed| {
        let wanted = &problem.pieces[placed.piece];
        let window = wanted.window.filter(|_| reused[placed.piece]);
        CutPiece {
            lines: (names.piece)(placed.piece),
            area: placed.area,
            exact: (names.size)(placed.piece),
            turned: placed.turned,
            no_turn: !wanted.turn && wanted.width != wanted.height,
            window: window.map(|size| CutWindow {
                label: (names.window)(placed.piece),
                area: centred(placed.area, size, placed.turned),
            }),
        }
    };
    let kept = |(k, place): (usize, &Area)| Kept {
        label: (names.remnant)(index, k),
        place: *place,
    };
    CutSheet {
        title: format!("Sheet {} of {}", index + 1, plan.layouts.len()),
        stock,
        fallout: matches!(layout.from, From::Window(_)),
        counting: counting.clone(),
        width,
        height,
        trim,
        kerf: problem.rules.kerf,
        copies: layout.copies,
        grain: Way::Upright,
        pieces: layout.pieces.iter().map(piece).collect(),
        cuts: layout.cuts.clone(),
        remnants: layout.remnants.iter().enumerate().map(kept).collect(),
    }
}

/// A window in the middle of its piece, as the piece lies.
fn centred(piece: Area, (width, height): (u64, u64), turned: bool) -> Area {
    let (width, height) = if turned {
        (height, width)
    } else {
        (width, height)
    };
    Area {
        x: piece.x + piece.width.saturating_sub(width) / 2,
        y: piece.y + piece.height.saturating_sub(height) / 2,
        width,
        height,
    }
}
