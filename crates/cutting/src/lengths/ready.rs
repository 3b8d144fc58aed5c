//! Whether a problem can be searched: every fault of it.

use std::collections::{BTreeMap, BTreeSet};

use super::{Piece, Problem, Stick, Together};
use crate::{Fault, Goal};

/// Lengths beyond this are refused.
const LONGEST: u64 = u32::MAX as u64;
/// Costs, values and counts beyond this are refused, so that sums of them stay within `u64`.
const MOST: u64 = 1 << 40;
/// The most that a whole plan may cost.
const MOST_IN_ALL: u64 = 1 << 62;
/// More pieces than this are not one list.
const MOST_PIECES: u64 = 1 << 40;
/// More pieces than this on one stick are not one layout.
const MOST_ON_A_STICK: u64 = 100_000;

/// All that stands in the way of a plan.
pub(super) fn faults(problem: &Problem) -> Vec<Fault> {
    let mut faults = Vec::new();
    if problem.stock.is_empty() {
        faults.push(Fault::NoStock);
    }
    if problem.pieces.iter().all(|piece| piece.count == Some(0)) {
        faults.push(Fault::NoPieces);
    }
    let pieces = problem.pieces.iter().map(|piece| &piece.name);
    twice_named("piece", pieces, &mut faults);
    twice_named("stock", problem.stock.iter().map(|s| &s.name), &mut faults);
    too_much("kerf", &problem.name, problem.kerf, LONGEST, &mut faults);
    for stick in &problem.stock {
        of_stick(stick, &mut faults);
    }
    for piece in &problem.pieces {
        of_piece(piece, problem.goal, &mut faults);
    }
    if faults.is_empty() {
        too_large(problem, &mut faults);
        too_many(problem, &mut faults);
    }
    if faults.is_empty() {
        too_long_together(problem, &mut faults);
        too_dear(problem, &mut faults);
    }
    faults
}

/// The clear stretches of a stick between its trims and flaws: from, to.
pub(super) fn stretches(stick: &Stick) -> Vec<(u64, u64)> {
    let mut flaws = stick.flaws.clone();
    flaws.sort_unstable();
    let end = stick.length.saturating_sub(stick.trim.1);
    let mut from = stick.trim.0;
    let mut clear = Vec::new();
    for (start, stop) in flaws {
        if from < start.min(end) {
            clear.push((from, start.min(end)));
        }
        from = from.max(stop);
    }
    if from < end {
        clear.push((from, end));
    }
    clear
}

fn twice_named<'a>(
    what: &'static str,
    names: impl Iterator<Item = &'a String>,
    faults: &mut Vec<Fault>,
) {
    let (mut seen, mut said) = (BTreeSet::new(), BTreeSet::new());
    for name in names {
        if !seen.insert(name) && said.insert(name) {
            let name = name.clone();
            faults.push(Fault::TwiceNamed { what, name });
        }
    }
}

fn too_much(what: &'static str, name: &str, given: u64, limit: u64, faults: &mut Vec<Fault>) {
    if given > limit {
        let name = name.to_owned();
        faults.push(Fault::TooMuch {
            what,
            name,
            given,
            limit,
        });
    }
}

fn of_stick(stick: &Stick, faults: &mut Vec<Fault>) {
    let name = &stick.name;
    if stick.length == 0 {
        let name = name.clone();
        faults.push(Fault::NoSize {
            what: "stock",
            name,
        });
        return;
    }
    too_much("length of", name, stick.length, LONGEST, faults);
    too_much("cost of", name, stick.cost, MOST, faults);
    too_much("count of", name, stick.count.unwrap_or(0), MOST, faults);
    let odd = |&&(from, to): &&(u64, u64)| from > to || to > stick.length;
    for &flaw in stick.flaws.iter().filter(odd) {
        faults.push(Fault::OddFlaw {
            stock: name.clone(),
            flaw,
        });
    }
    if stick.trim.0.saturating_add(stick.trim.1) >= stick.length {
        faults.push(Fault::AllTrimmed {
            stock: name.clone(),
        });
    }
}

fn of_piece(piece: &Piece, goal: Goal, faults: &mut Vec<Fault>) {
    let name = &piece.name;
    if piece.length == 0 {
        let name = name.clone();
        faults.push(Fault::NoSize {
            what: "piece",
            name,
        });
    }
    too_much("length of", name, piece.length, LONGEST, faults);
    too_much("count of", name, piece.count.unwrap_or(0), MOST, faults);
    if goal == Goal::Value {
        too_much("value of", name, piece.value, MOST, faults);
    }
    if piece.count.is_none() && goal != Goal::Value {
        let piece = name.clone();
        faults.push(Fault::EndlessCount { piece });
    }
}

/// The longest clear stretch of any stick held, and that stick.
fn longest(problem: &Problem) -> Option<(u64, &Stick)> {
    let held = problem.stock.iter().filter(|stick| stick.count != Some(0));
    let of = |stick| {
        let clear = stretches(stick);
        let longest = clear.iter().map(|&(from, to)| to - from).max();
        (longest.unwrap_or(0), stick)
    };
    // The first of equals, so that the message names the stock listed first.
    held.map(of)
        .reduce(|best, next| if next.0 > best.0 { next } else { best })
}

fn too_large(problem: &Problem, faults: &mut Vec<Fault>) {
    let Some((room, stick)) = longest(problem) else {
        if !problem.stock.is_empty() && !problem.pieces.is_empty() {
            faults.push(Fault::NoStock);
        }
        return;
    };
    for piece in &problem.pieces {
        if piece.length > room && piece.count != Some(0) {
            faults.push(Fault::TooLarge {
                piece: piece.name.clone(),
                size: vec![piece.length],
                nearest: stick.name.clone(),
                room: vec![room],
                over: vec![piece.length - room],
                needed: vec![piece.length + stick.trim.0 + stick.trim.1],
            });
        }
    }
}

fn too_many(problem: &Problem, faults: &mut Vec<Fault>) {
    let count = |piece: &Piece| u128::from(piece.count.unwrap_or(0));
    let given: u128 = problem.pieces.iter().map(count).sum();
    if given > u128::from(MOST_PIECES) {
        let limit = MOST_PIECES;
        faults.push(Fault::TooManyPieces { given, limit });
        return;
    }
    let Some((room, _)) = longest(problem) else {
        return;
    };
    // The shortest pieces that one stick can hold, as many as are wanted.
    let mut sizes: Vec<(u64, u64)> = problem
        .pieces
        .iter()
        .map(|piece| (piece.length + problem.kerf, piece.count.unwrap_or(u64::MAX)))
        .collect();
    sizes.sort_unstable();
    let (mut left, mut held) = (room + problem.kerf, 0);
    for (length, count) in sizes {
        let here = (left / length).min(count);
        held += here;
        left -= here * length;
    }
    if held > MOST_ON_A_STICK {
        faults.push(Fault::TooManyPieces {
            given: u128::from(held),
            limit: MOST_ON_A_STICK,
        });
    }
}

/// A stick for every piece must cost what can be counted.
fn too_dear(problem: &Problem, faults: &mut Vec<Fault>) {
    let count = |piece: &Piece| piece.count.unwrap_or(0);
    let pieces = problem.pieces.iter().map(count).sum::<u64>().max(1);
    let limit = MOST_IN_ALL / pieces;
    for stick in &problem.stock {
        too_much("cost of", &stick.name, stick.cost, limit, faults);
    }
}

fn too_long_together(problem: &Problem, faults: &mut Vec<Fault>) {
    let mut groups: BTreeMap<&str, u128> = BTreeMap::new();
    for piece in &problem.pieces {
        if let Some(Together::Stick(group)) = &piece.together {
            let length = u128::from(piece.length) + u128::from(problem.kerf);
            let count = u128::from(piece.count.unwrap_or(1));
            *groups.entry(group).or_default() += length * count;
        }
    }
    let kerf = problem.kerf;
    let room = |stick: &Stick| -> u64 {
        let clear = stretches(stick);
        let total: u64 = clear.iter().map(|&(from, to)| to - from + kerf).sum();
        total.saturating_sub(kerf)
    };
    let held = problem.stock.iter().filter(|stick| stick.count != Some(0));
    let room = held.map(room).max().unwrap_or(0);
    for (group, length) in groups {
        let length = u64::try_from(length).unwrap_or(u64::MAX);
        if length > room + kerf {
            faults.push(Fault::TooLongTogether {
                group: group.to_owned(),
                length: length - kerf,
                room,
            });
        }
    }
}
