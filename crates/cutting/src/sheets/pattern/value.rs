//! The most value out of one sheet.

use super::super::{Draft, DraftSheet, Reduced};
use super::bounded::{Asked, Known, held, within_counts};
use super::builds::{self, Site};
use super::oracle::{Oracle, Purpose};
use crate::Pace;

/// Rounds of penalties before the exact search.
const ROUNDS: usize = 120;
/// Builds the exact search may keep; fewer where they are long.
const BUILDS: usize = 250_000;
/// Cells of the exact search's table of promises.
const CELLS: usize = 3 << 20;
/// Points on an axis.
const POINTS: usize = 4096;

/// The most value that one sheet of any of the kinds yields.
///
/// Answers the best layout known (`start` when nothing is better), a value that no layout exceeds,
/// and whether the layout reaches it. Sheets that fall out of windows are not regarded. Works on
/// until it is proven, the pace ends or its memory is full.
pub(crate) fn solve(
    reduced: &Reduced,
    pace: &mut Pace<'_>,
    start: Option<Draft>,
) -> (Option<Draft>, u64, bool) {
    let mut best = start.map(|draft| (reduced.value(&draft), draft));
    let worths: Vec<u64> = reduced.parts.iter().map(|part| part.value).collect();
    let mut bound = 0;
    let mut largest: Vec<usize> = (0..reduced.stock.len())
        .filter(|&stock| reduced.stock[stock].window_of.is_none() && reduced.stock[stock].count > 0)
        .collect();
    largest.sort_by_key(|&stock| {
        let sheet = &reduced.stock[stock];
        std::cmp::Reverse(u64::from(sheet.width) * u64::from(sheet.height))
    });
    for stock in largest {
        let floor = best.as_ref().map_or(0, |(value, _)| *value);
        let (draft, most) = one_sheet(reduced, stock, &worths, floor, pace);
        if let Some((value, draft)) = draft
            && best.as_ref().is_none_or(|(least, _)| value > *least)
        {
            best = Some((value, draft));
        }
        bound = bound.max(most);
    }
    let reached = best.as_ref().map_or(0, |(value, _)| *value);
    let bound = upheld(bound, reached);
    (best.map(|(_, draft)| draft), bound, reached == bound)
}

/// A bound below a value that a layout has would be refuted by that layout: a fault of ours, which
/// proves nothing.
pub(super) fn upheld(bound: u64, reached: u64) -> u64 {
    debug_assert!(
        bound >= reached,
        "at most {bound}, but a layout is worth {reached}"
    );
    if bound >= reached { bound } else { u64::MAX }
}

/// The best of one sheet when above the floor, and a bound: never above the floor where that
/// cannot be beaten on this sheet.
fn one_sheet(
    reduced: &Reduced,
    stock: usize,
    worths: &[u64],
    floor: u64,
    pace: &mut Pace<'_>,
) -> (Option<(u64, Draft)>, u64) {
    let relaxed = Oracle::new(reduced, stock, Purpose::Bound, POINTS);
    let counts = held(&relaxed, reduced.parts.iter().map(|part| part.count));
    let everything = worths
        .iter()
        .zip(&counts)
        .fold(0_u64, |sum, (worth, &count)| {
            sum.saturating_add(worth.saturating_mul(count))
        });
    let own;
    let plans = if relaxed.is_exact() {
        &relaxed
    } else {
        own = Oracle::new(reduced, stock, Purpose::Plan, POINTS / 4);
        &own
    };
    let asked = Asked {
        worths,
        counts: &counts,
        enough: floor,
        rounds: ROUNDS,
    };
    let Some(known) = within_counts(&relaxed, Some(plans), &asked, pace) else {
        return (None, everything);
    };
    let bound = known.bound.min(everything);
    let draft = |block| Draft {
        sheets: vec![DraftSheet {
            stock,
            copies: 1,
            block,
        }],
    };
    let reached = known.best.as_ref().map_or(0, |best| best.worth).max(floor);
    if bound > reached
        && relaxed.is_exact()
        && reduced.stages.most == u32::MAX
        && relaxed.xs.len() * relaxed.ys.len() <= CELLS
        && let Some((found, bound)) = exactly(&relaxed, worths, &counts, &known, reached, pace)
    {
        if let Some((value, block)) = found {
            return (Some((value, draft(block))), bound);
        }
        let best = known.best.map(|best| (best.worth, draft(best.block)));
        return (best, bound);
    }
    let best = known.best.map(|best| (best.worth, draft(best.block)));
    (best, bound)
}

type Exact = (Option<(u64, super::super::Block)>, u64);

fn exactly(
    relaxed: &Oracle<'_>,
    worths: &[u64],
    counts: &[u64],
    known: &Known,
    reached: u64,
    pace: &mut Pace<'_>,
) -> Option<Exact> {
    let site = Site {
        xs: &relaxed.xs,
        ys: &relaxed.ys,
        parts: &relaxed.lying(worths, counts),
        penalties: &known.penalties,
        counts,
        floor: reached,
        most: BUILDS.min(builds::most_kept(counts.len())),
    };
    let outcome = site.search(pace)?;
    let (width, height) = relaxed.size();
    let bound = outcome.bound.min(known.bound);
    match outcome.found.into_iter().last() {
        Some((value, shape)) => {
            let block = shape.dressed(width, height, relaxed.reduced)?;
            Some((Some((value, block)), bound))
        }
        None => Some((None, bound)),
    }
}

#[cfg(test)]
mod tests;
