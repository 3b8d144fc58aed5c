//! From a draft back to layouts of the problem's own pieces.

use std::collections::BTreeMap;

use super::core::{Core, Draft, Fill};
use super::flaws::{Laid, arrange};
use super::reduce::{Reduced, Want};
use super::{Layout, Placed, Problem};

/// The layouts, earliest due first; pieces beyond what is wanted are left off.
pub(super) fn layouts(
    problem: &Problem,
    wants: &[Want],
    reduced: &Reduced,
    draft: &Draft,
) -> Vec<Layout> {
    let mut pools: Vec<Pool> = reduced.origin.iter().map(|of| Pool::new(of)).collect();
    let mut merged: BTreeMap<(usize, Vec<Start>), u64> = BTreeMap::new();
    for (fill, copies) in &draft.fills {
        let mut left = *copies;
        while left > 0 {
            let (members, times) = draw(&mut pools, fill, left);
            if members.is_empty() {
                break;
            }
            let pieces = place(problem, wants, &reduced.core, fill, &members);
            let stock = reduced.core.kinds[fill.kind].stock;
            *merged.entry((stock, pieces)).or_default() += times;
            left -= times;
        }
    }
    let mut layouts: Vec<Layout> = merged
        .into_iter()
        .map(|((stock, pieces), copies)| {
            let pieces: Vec<Placed> = pieces
                .into_iter()
                .map(|(at, piece)| Placed { piece, at })
                .collect();
            let remnants = remnants(problem, &reduced.core, stock, &pieces);
            Layout {
                stock,
                copies,
                pieces,
                remnants,
            }
        })
        .collect();
    let urgency = |layout: &Layout| {
        let each = |placed: &Placed| {
            let piece = &problem.pieces[placed.piece];
            (
                piece.due.unwrap_or(u32::MAX),
                std::cmp::Reverse(piece.priority),
            )
        };
        layout.pieces.iter().map(each).min()
    };
    layouts.sort_by_cached_key(|layout| {
        (
            urgency(layout),
            layout.stock,
            std::cmp::Reverse(layout.copies),
        )
    });
    layouts
}

/// Where a piece starts, and which.
type Start = (u64, usize);

/// What is left of an item's wants, most urgent first.
struct Pool {
    sources: Vec<(usize, u64)>,
    next: usize,
}

impl Pool {
    fn new(sources: &[(usize, u64)]) -> Self {
        Self {
            sources: sources.to_vec(),
            next: 0,
        }
    }

    fn head(&mut self) -> Option<&mut (usize, u64)> {
        while self.sources.get(self.next).is_some_and(|head| head.1 == 0) {
            self.next += 1;
        }
        self.sources.get_mut(self.next)
    }

    /// How many sticks with so many each the most urgent want alone can serve; 1 when several
    /// wants must be mixed.
    fn alike(&mut self, each: u64) -> Option<u64> {
        self.head().map(|head| (head.1 / each).max(1))
    }

    /// Draws so many, each for so many sticks.
    fn draw(&mut self, mut each: u64, times: u64, into: &mut Vec<usize>) {
        while each > 0 {
            let Some(head) = self.head() else { return };
            let here = each.min(head.1 / times);
            for _ in 0..here {
                into.push(head.0);
            }
            head.1 -= here * times;
            each -= here;
        }
    }
}

/// The wants of each part of a fill, and for how many of the copies they are the same.
fn draw(pools: &mut [Pool], fill: &Fill, copies: u64) -> (Vec<(usize, Vec<usize>)>, u64) {
    let mut times = copies;
    for &(item, each) in &fill.parts {
        if let Some(alike) = pools[item].alike(each) {
            times = times.min(alike);
        }
    }
    let mut members = Vec::new();
    for &(item, each) in &fill.parts {
        let mut drawn = Vec::new();
        pools[item].draw(each, times, &mut drawn);
        if !drawn.is_empty() {
            members.push((item, drawn));
        }
    }
    (members, times)
}

fn place(
    problem: &Problem,
    wants: &[Want],
    core: &Core,
    fill: &Fill,
    members: &[(usize, Vec<usize>)],
) -> Vec<Start> {
    let clear = core.kinds[fill.kind].is_clear();
    let parts: Vec<(usize, u64)> = if clear {
        let count = |drawn: &Vec<usize>| u64::try_from(drawn.len()).unwrap_or(u64::MAX);
        members
            .iter()
            .map(|(item, drawn)| (*item, count(drawn)))
            .collect()
    } else {
        fill.parts.clone()
    };
    let Laid::Spots(spots) = arrange(core, fill.kind, &parts).0 else {
        unreachable!("a fill is made of what is known to fit");
    };
    let mut pieces = Vec::new();
    for (item, drawn) in members {
        let spots = spots.iter().filter(|spot| spot.item == *item);
        for (want, spot) in drawn.iter().zip(spots) {
            let mut at = spot.at[0];
            for (part, &piece) in wants[*want].pieces.iter().enumerate() {
                if !clear {
                    at = spot.at[part];
                }
                pieces.push((at, piece));
                at += problem.pieces[piece].length + problem.kerf;
            }
        }
    }
    pieces.sort_unstable();
    pieces
}

/// What is left whole between pieces, flaws and trims, the kerf beside a piece taken off.
fn remnants(problem: &Problem, core: &Core, stock: usize, pieces: &[Placed]) -> Vec<(u64, u64)> {
    let kind = core.kinds.iter().find(|kind| kind.stock == stock);
    let stretches = kind.map_or(&[][..], |kind| &kind.stretches);
    let mut remnants: Vec<(u64, u64)> = Vec::new();
    for &(start, end) in stretches {
        // A flaw narrower than the kerf is cut out with a whole kerf.
        let free = remnants.last().map_or(0, |last| last.1 + problem.kerf);
        let mut from = start.max(free);
        for placed in pieces {
            let before = placed.at.saturating_sub(problem.kerf).min(end);
            if from < before {
                remnants.push((from, before));
            }
            let length = problem.pieces[placed.piece].length;
            from = from.max(placed.at + length + problem.kerf);
        }
        if from < end {
            remnants.push((from, end));
        }
    }
    remnants
}
