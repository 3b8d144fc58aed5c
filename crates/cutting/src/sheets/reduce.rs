//! From a problem as it is given to the problem as it is searched, and what leads back.

use std::collections::{BTreeMap, BTreeSet};

use super::bound::gcd;
use super::{Axis, First, Part, Piece, Problem, Reduced, Sheet, Stages, Stock};
use crate::{Fault, Goal};

/// Sides and kerfs beyond this are refused, so that a side with its kerf stays within `u32`.
const LONGEST: u64 = 1 << 30;
/// Costs and values beyond this are refused, so that their sums stay within `u64`.
const MOST: u64 = 1 << 40;
/// More area or value than this is refused, so that everything together stays within `u64`.
const MOST_AREA: u64 = 1 << 62;
/// More pieces than this are not one list.
const MOST_PIECES: u64 = 1_000_000;

/// What leads from the reduced problem back to the problem.
#[derive(Clone, Debug)]
pub(crate) struct Origin {
    /// One reduced unit in the problem's units.
    pub(crate) grain: u64,
    /// Per reduced stock.
    pub(crate) stock: Vec<StockOrigin>,
    /// Per reduced part: the pieces merged in it, in the order they are to be cut.
    pub(crate) parts: Vec<Vec<usize>>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum StockOrigin {
    /// An entry of the problem's stock.
    Sheet(usize),
    /// What falls out of this reduced part.
    Window(usize),
}

/// Checks the problem and reduces it.
pub(crate) fn reduce(problem: &Problem) -> Result<(Reduced, Origin), Vec<Fault>> {
    let mut faults = own_faults(problem);
    if faults.is_empty() {
        faults = too_large(problem);
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let grain = grain(problem);
    let (parts, members) = merged(problem, grain);
    let mut reduced = Reduced {
        goal: problem.goal,
        stages: stages(problem),
        least_strip: narrow(problem.rules.least_strip / grain),
        stock: Vec::new(),
        parts,
    };
    let mut origin = Origin {
        grain,
        stock: Vec::new(),
        parts: members,
    };
    for (number, sheet) in problem.stock.iter().enumerate() {
        let (width, height) = room(sheet);
        let stock = Stock {
            width: narrow((width + problem.rules.kerf) / grain),
            height: narrow((height + problem.rules.kerf) / grain),
            cost: if problem.goal == Goal::Fewest {
                1
            } else {
                sheet.cost
            },
            count: sheet.count.unwrap_or(u64::MAX),
            window_of: None,
            remnant: sheet.remnant,
        };
        if stock.count > 0 && reduced.parts.iter().any(|part| takes(&stock, part)) {
            reduced.stock.push(stock);
            origin.stock.push(StockOrigin::Sheet(number));
        }
    }
    add_windows(problem, &mut reduced, &mut origin);
    Ok((reduced, origin))
}

/// The usable width and height of a sheet.
pub(crate) fn room(sheet: &Sheet) -> (u64, u64) {
    let trim = sheet.trim;
    (
        sheet
            .width
            .saturating_sub(trim.left)
            .saturating_sub(trim.right),
        sheet
            .height
            .saturating_sub(trim.bottom)
            .saturating_sub(trim.top),
    )
}

/// Whether a sheet of this stock can hold the part, unturned or turned.
pub(crate) fn takes(stock: &Stock, part: &Part) -> bool {
    part.width <= stock.width && part.height <= stock.height
        || part.turn && part.height <= stock.width && part.width <= stock.height
}

fn add_windows(problem: &Problem, reduced: &mut Reduced, origin: &mut Origin) {
    for part in 0..reduced.parts.len() {
        let first = &problem.pieces[origin.parts[part][0]];
        let Some((width, height)) = first.window else {
            continue;
        };
        let stock = Stock {
            width: narrow((width + problem.rules.kerf) / origin.grain),
            height: narrow((height + problem.rules.kerf) / origin.grain),
            cost: 0,
            count: reduced.parts[part].count,
            window_of: Some(part),
            remnant: true,
        };
        if reduced.parts.iter().any(|part| takes(&stock, part)) {
            reduced.parts[part].window = Some(reduced.stock.len());
            reduced.stock.push(stock);
            origin.stock.push(StockOrigin::Window(part));
        }
    }
}

/// Sizes are a side and a kerf by then, each within [`LONGEST`].
fn narrow(size: u64) -> u32 {
    u32::try_from(size).expect("a size that was checked")
}

fn stages(problem: &Problem) -> Stages {
    let rules = problem.rules;
    let Some(most) = rules.stages else {
        return Stages {
            most: u32::MAX,
            first: None,
            final_trim: false,
        };
    };
    Stages {
        most,
        first: match rules.first {
            First::Any => None,
            First::Upright => Some(Axis::X),
            First::Level => Some(Axis::Y),
        },
        final_trim: rules.final_trim,
    }
}

/// The largest unit in which every size is whole.
fn grain(problem: &Problem) -> u64 {
    let kerf = problem.rules.kerf;
    let mut grain = gcd(kerf, problem.rules.least_strip);
    for sheet in &problem.stock {
        let (width, height) = room(sheet);
        grain = gcd(gcd(grain, width + kerf), height + kerf);
    }
    for piece in &problem.pieces {
        grain = gcd(gcd(grain, piece.width + kerf), piece.height + kerf);
        if let Some((width, height)) = piece.window {
            grain = gcd(gcd(grain, width + kerf), height + kerf);
        }
    }
    grain.max(1)
}

/// What makes two pieces one part; see [`merged`].
type Sameness = (u64, u64, bool, Option<(u64, u64)>, u64);

/// Pieces that are cut alike as one part each, with the pieces it stands for.
fn merged(problem: &Problem, grain: u64) -> (Vec<Part>, Vec<Vec<usize>>) {
    let kerf = problem.rules.kerf;
    let mut groups: BTreeMap<Sameness, Vec<usize>> = BTreeMap::new();
    for (number, piece) in problem.pieces.iter().enumerate() {
        if piece.count == Some(0) {
            continue;
        }
        let (mut width, mut height) = (piece.width, piece.height);
        if piece.turn && piece.window.is_none() && width < height {
            (width, height) = (height, width);
        }
        let value = match problem.goal {
            Goal::Value => piece.value,
            _ => 0,
        };
        let turn = piece.turn && width != height;
        groups
            .entry((width, height, turn, piece.window, value))
            .or_default()
            .push(number);
    }
    let mut parts = Vec::new();
    let mut members = Vec::new();
    // Large ones first: the searches want them so, and people too.
    for ((width, height, turn, _, value), mut numbers) in groups.into_iter().rev() {
        numbers.sort_by_key(|&number| urgency(&problem.pieces[number]));
        let count = numbers
            .iter()
            .map(|&number| problem.pieces[number].count.unwrap_or(u64::MAX))
            .fold(0, u64::saturating_add);
        parts.push(Part {
            width: narrow((width + kerf) / grain),
            height: narrow((height + kerf) / grain),
            count,
            value,
            turn,
            window: None,
        });
        members.push(numbers);
    }
    (parts, members)
}

/// What is cut first sorts first.
pub(crate) fn urgency(piece: &Piece) -> (u32, std::cmp::Reverse<u32>) {
    (
        piece.due.unwrap_or(u32::MAX),
        std::cmp::Reverse(piece.priority),
    )
}

fn own_faults(problem: &Problem) -> Vec<Fault> {
    let mut faults = Vec::new();
    if problem.stock.is_empty() {
        faults.push(Fault::NoStock);
    }
    if problem.pieces.iter().all(|piece| piece.count == Some(0)) {
        faults.push(Fault::NoPieces);
    }
    if problem.rules.least_strip > 0 && problem.rules.kerf > 0 {
        faults.push(Fault::StripAndKerf);
    }
    if problem.rules.stages == Some(0) {
        faults.push(Fault::NoStages);
    }
    limit(
        &mut faults,
        "the kerf of",
        &problem.name,
        problem.rules.kerf,
        LONGEST,
    );
    stock_faults(problem, &mut faults);
    piece_faults(problem, &mut faults);
    faults
}

fn limit(faults: &mut Vec<Fault>, what: &'static str, name: &str, given: u64, limit: u64) {
    if given > limit {
        faults.push(Fault::TooMuch {
            what,
            name: name.to_owned(),
            given,
            limit,
        });
    }
}

fn stock_faults(problem: &Problem, faults: &mut Vec<Fault>) {
    let mut names = BTreeSet::new();
    for sheet in &problem.stock {
        if !names.insert(&sheet.name) {
            faults.push(Fault::TwiceNamed {
                what: "stock",
                name: sheet.name.clone(),
            });
        }
        if sheet.width == 0 || sheet.height == 0 {
            faults.push(Fault::NoSize {
                what: "stock",
                name: sheet.name.clone(),
            });
        } else if room(sheet).0 == 0 || room(sheet).1 == 0 {
            faults.push(Fault::AllTrimmed {
                stock: sheet.name.clone(),
            });
        }
        limit(
            faults,
            "the width of stock",
            &sheet.name,
            sheet.width,
            LONGEST,
        );
        limit(
            faults,
            "the height of stock",
            &sheet.name,
            sheet.height,
            LONGEST,
        );
        if problem.goal == Goal::Cost {
            limit(faults, "the cost of stock", &sheet.name, sheet.cost, MOST);
        }
    }
}

fn piece_faults(problem: &Problem, faults: &mut Vec<Fault>) {
    let mut names = BTreeSet::new();
    let mut all: u128 = 0;
    for piece in &problem.pieces {
        if !names.insert(&piece.name) {
            faults.push(Fault::TwiceNamed {
                what: "piece",
                name: piece.name.clone(),
            });
        }
        if piece.width == 0 || piece.height == 0 {
            faults.push(Fault::NoSize {
                what: "piece",
                name: piece.name.clone(),
            });
        }
        narrow_strip(problem, piece, faults);
        beyond(problem.goal, piece, faults);
        match piece.count {
            Some(count) => all += u128::from(count),
            None if problem.goal != Goal::Value => faults.push(Fault::EndlessCount {
                piece: piece.name.clone(),
            }),
            None => {}
        }
        if let Some((width, height)) = piece.window
            && (width >= piece.width || height >= piece.height || width == 0 || height == 0)
        {
            faults.push(Fault::WindowTooLarge {
                piece: piece.name.clone(),
            });
        }
    }
    sums(problem, faults);
    if all > u128::from(MOST_PIECES) && problem.goal != Goal::Value {
        faults.push(Fault::TooManyPieces {
            given: all,
            limit: MOST_PIECES,
        });
    }
}

/// Sums beyond what can be counted exactly: the area of all pieces with their kerf, and the value
/// of as many as one sheet could hold.
fn sums(problem: &Problem, faults: &mut Vec<Fault>) {
    let kerf = u128::from(problem.rules.kerf);
    let sheets = problem.stock.iter();
    let sheet = sheets
        .map(|sheet| u128::from(sheet.width).saturating_mul(u128::from(sheet.height)))
        .max();
    let (mut area, mut value) = (0_u128, 0_u128);
    for piece in &problem.pieces {
        let own = (u128::from(piece.width) + kerf).saturating_mul(u128::from(piece.height) + kerf);
        let held = sheet.unwrap_or(0) / own.max(1);
        let count = piece.count.map_or(held, u128::from);
        area = area.saturating_add(own.saturating_mul(piece.count.map_or(1, u128::from)));
        value = value.saturating_add(u128::from(piece.value).saturating_mul(count.min(held)));
    }
    let mut ask = |what, sum: u128| {
        let given = u64::try_from(sum).unwrap_or(u64::MAX);
        limit(faults, what, &problem.name, given, MOST_AREA);
    };
    if problem.goal == Goal::Value {
        ask("the value of all pieces of", value);
    } else {
        ask("the area of all pieces of", area);
    }
}

/// Numbers beyond what can be counted exactly.
fn beyond(goal: Goal, piece: &Piece, faults: &mut Vec<Fault>) {
    let mut ask = |what, given, most| limit(faults, what, &piece.name, given, most);
    ask("the width of piece", piece.width, LONGEST);
    ask("the height of piece", piece.height, LONGEST);
    if goal == Goal::Value {
        ask("the value of piece", piece.value, MOST);
    }
}

/// A piece narrower than the least strip comes out of no cut.
fn narrow_strip(problem: &Problem, piece: &Piece, faults: &mut Vec<Fault>) {
    let side = piece.width.min(piece.height);
    let least = problem.rules.least_strip;
    if side > 0 && side < least && piece.count != Some(0) {
        faults.push(Fault::TooNarrow {
            piece: piece.name.clone(),
            side,
            least,
        });
    }
}

fn too_large(problem: &Problem) -> Vec<Fault> {
    let mut faults = Vec::new();
    for piece in &problem.pieces {
        if piece.count == Some(0) || problem.stock.iter().any(|sheet| holds(sheet, piece)) {
            continue;
        }
        let nearest = problem.stock.iter().min_by_key(|sheet| {
            let (width, height) = lacking(sheet, piece);
            (
                u128::from(width) + u128::from(height),
                sheet.width,
                sheet.height,
            )
        });
        if let Some(sheet) = nearest {
            let (over_width, over_height) = lacking(sheet, piece);
            let (width, height) = room(sheet);
            faults.push(Fault::TooLarge {
                piece: piece.name.clone(),
                size: vec![piece.width, piece.height],
                nearest: sheet.name.clone(),
                room: vec![width, height],
                over: vec![over_width, over_height],
                needed: vec![sheet.width + over_width, sheet.height + over_height],
            });
        }
    }
    // A list for the goal of most value may hold pieces that this sheet cannot take.
    if problem.goal == Goal::Value && faults.len() < problem.pieces.len() {
        faults.clear();
    }
    faults
}

fn holds(sheet: &Sheet, piece: &Piece) -> bool {
    sheet.count != Some(0) && lacking(sheet, piece) == (0, 0)
}

/// By how much the sheet would have to be wider and higher, the piece laid the better way.
fn lacking(sheet: &Sheet, piece: &Piece) -> (u64, u64) {
    let (width, height) = room(sheet);
    let lack = |across: u64, up: u64| (across.saturating_sub(width), up.saturating_sub(height));
    let straight = lack(piece.width, piece.height);
    let turned = lack(piece.height, piece.width);
    if piece.turn && turned.0 + turned.1 < straight.0 + straight.1 {
        turned
    } else {
        straight
    }
}

#[cfg(test)]
mod tests;
