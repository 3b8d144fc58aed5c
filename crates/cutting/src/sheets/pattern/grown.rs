//! Layouts by the tree search, where the tables know no good ones.
//!
//! Under a least strip the nested knapsacks leave waste beside everything that is not cut in three
//! plain stages. The tree search keeps the rule wherever it puts a part.

use super::super::tree::Tree;
use super::super::{Block, Kind, Part, Reduced};
use super::fill::Filled;
use super::oracle::Oracle;
use super::shape::{block_uses, lawful};
use crate::{Goal, Pace};

/// Steps for one layout.
const STEPS: u64 = 1 << 18;
/// Seed of the search for a layout.
const SEED: u64 = 1;

/// A good layout of the oracle's sheet within the counts; `None` when nothing fits.
pub(super) fn grown(
    oracle: &Oracle<'_>,
    worths: &[u64],
    counts: &[u64],
    pace: &mut Pace<'_>,
) -> Option<Filled> {
    let whole = oracle.reduced;
    let kept: Vec<usize> = (0..worths.len())
        .filter(|&part| worths[part] > 0 && counts[part] > 0)
        .collect();
    let priced = |&part: &usize| Part {
        count: counts[part],
        value: worths[part],
        window: None,
        ..whole.parts[part].clone()
    };
    let reduced = Reduced {
        goal: Goal::Value,
        parts: kept.iter().map(priced).collect(),
        stock: vec![super::super::Stock {
            count: 1,
            window_of: None,
            ..whole.stock[oracle.stock].clone()
        }],
        ..*whole
    };
    let mut slice = pace.slice(STEPS);
    let mut tree = Tree::new(&reduced, SEED);
    let mut best = tree.first(&mut slice);
    while let Some(better) = tree.improve(&mut slice, u64::MAX) {
        best = Some(better);
    }
    pace.rejoin(STEPS, &slice);
    let mut block = best?.sheets.into_iter().next()?.block;
    renumber(&mut block, &kept);
    if !lawful(&block, whole) {
        return None;
    }
    let uses = block_uses(&block);
    let each = |&(part, times): &(usize, u64)| worths[part].saturating_mul(times);
    let worth = uses.iter().map(each).sum();
    (worth > 0).then_some(Filled { block, uses, worth })
}

/// Names the parts of a block by their numbers in another list.
pub(super) fn renumber(block: &mut Block, part_of: &[usize]) {
    match &mut block.kind {
        Kind::Part { part, .. } => *part = part_of[*part],
        Kind::Free => {}
        Kind::Split { blocks, .. } => {
            for inner in blocks {
                renumber(inner, part_of);
            }
        }
    }
}

#[cfg(test)]
mod tests;
