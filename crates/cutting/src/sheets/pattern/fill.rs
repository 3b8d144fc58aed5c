//! One good layout within the counts: the best without counts, taken apart and mended.

use super::super::{Axis, Block, Kind, Reduced};
use super::oracle::Oracle;
use super::shape::{Shape, block_uses, lawful};
use crate::Pace;

/// A layout that holds no part more often than there is.
pub(super) struct Filled {
    pub(super) block: Block,
    /// How many of each part, ascending.
    pub(super) uses: Vec<(usize, u64)>,
    pub(super) worth: u64,
}

/// Fills a sheet for the most worth within the counts, given the best layout without counts.
///
/// Rows of the layout are kept as they are while the counts last; for the rest of the sheet the
/// best layout of what is left is sought. Not always the most there is.
pub(super) fn fill(
    oracle: &Oracle<'_>,
    worths: &[u64],
    counts: &[u64],
    first: Option<Shape>,
    pace: &mut Pace<'_>,
) -> Option<Filled> {
    let reduced = oracle.reduced;
    let (width, height) = oracle.size();
    let mut left = counts.to_vec();
    let shape = peel(oracle, worths, &mut left, first, pace)?;
    let mut block = shape.dressed(width, height, reduced)?;
    if reduced.least_strip == 0 {
        let mut stuffing = Stuffing {
            reduced,
            worths,
            left: &mut left,
        };
        stuffing.stuff(&mut block, None, 0, 0);
    }
    if !lawful(&block, reduced) {
        return None;
    }
    let uses = block_uses(&block);
    let each = |&(part, times): &(usize, u64)| worths[part].saturating_mul(times);
    let worth = uses.iter().map(each).sum();
    Some(Filled { block, uses, worth })
}

/// Rounds after which what is left of the sheet stays for stuffing.
const ROUNDS: usize = 12;

fn peel(
    oracle: &Oracle<'_>,
    worths: &[u64],
    left: &mut [u64],
    first: Option<Shape>,
    pace: &mut Pace<'_>,
) -> Option<Shape> {
    let (mut width, mut height) = oracle.size();
    let mut outer: Vec<(Axis, Vec<Shape>)> = Vec::new();
    let mut next = first;
    for round in 0..ROUNDS {
        let axis = outer.first().map(|(axis, _)| *axis);
        if round > 0 {
            let Some(best) = oracle.best_in((width, height), worths, left, axis, pace) else {
                break;
            };
            next = best.shape;
        }
        let Some(shape) = next.take() else {
            break;
        };
        let (axis, shapes) = match shape {
            Shape::Row {
                axis,
                shapes,
                across: 0,
            } => (axis, shapes),
            other => (axis.unwrap_or(Axis::X), vec![other]),
        };
        let kept = within_counts(shapes, worths, left);
        if kept.is_empty() {
            break;
        }
        let size = Shape::Row {
            axis,
            across: 0,
            shapes: kept.clone(),
        }
        .size(oracle.reduced);
        match axis {
            Axis::X => width = width.saturating_sub(size.0),
            Axis::Y => height = height.saturating_sub(size.1),
        }
        outer.push((axis, kept));
        if width == 0 || height == 0 {
            break;
        }
    }
    let mut whole: Option<Shape> = None;
    for (axis, mut shapes) in outer.into_iter().rev() {
        shapes.extend(whole.take());
        whole = Some(Shape::row(axis, shapes));
    }
    whole
}

/// The shapes the counts allow whole, most worth first; when none is, the best of them trimmed.
fn within_counts(shapes: Vec<Shape>, worths: &[u64], left: &mut [u64]) -> Vec<Shape> {
    let worth = |shape: &Shape| {
        let mut sum = 0_u64;
        shape.each_part(&mut |part| sum = sum.saturating_add(worths[part]));
        sum
    };
    let mut ordered: Vec<(u64, Shape)> = shapes
        .into_iter()
        .map(|shape| (worth(&shape), shape))
        .collect();
    ordered.sort_by_key(|(worth, _)| std::cmp::Reverse(*worth));
    let mut kept = Vec::new();
    let mut refused = Vec::new();
    for (_, shape) in ordered {
        let uses = shape.uses();
        if uses.iter().all(|&(part, times)| times <= left[part]) {
            for (part, times) in uses {
                left[part] -= times;
            }
            kept.push(shape);
        } else {
            refused.push(shape);
        }
    }
    if kept.is_empty() {
        let trimmed = refused.into_iter().filter_map(|shape| {
            let mut spare = left.to_vec();
            shape.kept(&mut |part| {
                let keep = spare[part] > 0;
                spare[part] -= u64::from(keep);
                keep
            })
        });
        if let Some(best) = trimmed.max_by_key(worth) {
            for (part, times) in best.uses() {
                left[part] -= times;
            }
            kept.push(best);
        }
    }
    kept
}

/// Parts that are left, for free blocks.
struct Stuffing<'a> {
    reduced: &'a Reduced,
    worths: &'a [u64],
    left: &'a mut [u64],
}

/// Blocks within blocks that stuffing may make.
const DEEPEST: u32 = 40;

impl Stuffing<'_> {
    /// Puts parts that are left into free blocks, as far as the stages allow.
    fn stuff(&mut self, block: &mut Block, last: Option<Axis>, stage: u32, deep: u32) {
        match &mut block.kind {
            Kind::Part { .. } => {}
            Kind::Split { axis, blocks } => {
                let first = self.reduced.stages.first;
                let stage = match last {
                    None if first.is_some_and(|first| first != *axis) => 2,
                    None => 1,
                    Some(last) if last == *axis => stage,
                    Some(_) => stage.saturating_add(1),
                };
                for inner in blocks {
                    self.stuff(inner, Some(*axis), stage, deep);
                }
            }
            Kind::Free => {
                let Some(last) = last.filter(|_| deep < DEEPEST) else {
                    return;
                };
                let Some((part, turned)) = self.best_part(block, last, stage) else {
                    return;
                };
                self.left[part] -= 1;
                *block = placed(block, part, turned, last, stage, self.reduced);
                self.stuff(block, Some(last), stage, deep + 1);
            }
        }
    }

    fn best_part(&self, block: &Block, last: Axis, stage: u32) -> Option<(usize, bool)> {
        let (reduced, worths) = (self.reduced, self.worths);
        if stage > reduced.stages.most {
            return None;
        }
        let mut best: Option<(u64, u32, usize, bool)> = None;
        for (number, part) in reduced.parts.iter().enumerate() {
            if self.left[number] == 0 || worths[number] == 0 {
                continue;
            }
            for turned in [false, true] {
                let (w, h) = if turned {
                    (part.height, part.width)
                } else {
                    (part.width, part.height)
                };
                if turned && !part.turn || w > block.width || h > block.height {
                    continue;
                }
                let spare = match last {
                    Axis::X => block.height - h,
                    Axis::Y => block.width - w,
                };
                if spare > 0 && !may_cut_across(stage, reduced) {
                    continue;
                }
                let better = best.is_none_or(|(worth, least, ..)| {
                    (worths[number], std::cmp::Reverse(spare)) > (worth, std::cmp::Reverse(least))
                });
                if better {
                    best = Some((worths[number], spare, number, turned));
                }
            }
        }
        best.map(|(_, _, part, turned)| (part, turned))
    }
}

/// Whether a cut across the last ones may still be made in a free block of this stage.
fn may_cut_across(stage: u32, reduced: &Reduced) -> bool {
    let stages = reduced.stages;
    stage < stages.most || stage == stages.most && stages.final_trim
}

/// A free block with a part in its corner: cut off along the last axis, then across; where the
/// stages allow and it leaves the larger rest, across first.
fn placed(
    block: &Block,
    part: usize,
    turned: bool,
    last: Axis,
    stage: u32,
    reduced: &Reduced,
) -> Block {
    let shape = Shape::Part { part, turned };
    let (w, h) = shape.size(reduced);
    let (over, above) = (block.width - w, block.height - h);
    let beside = u64::from(over) * u64::from(block.height);
    let atop = u64::from(above) * u64::from(block.width);
    let wanted = if beside >= atop { Axis::X } else { Axis::Y };
    let free_to_choose = stage.saturating_add(2) <= reduced.stages.most;
    let axis = if free_to_choose { wanted } else { last };
    let own = Block {
        width: w,
        height: h,
        kind: Kind::Part { part, turned },
    };
    let column = extended(own, axis.other(), block);
    extended(column, axis, block)
}

/// The block followed by free space, up to the outer block's size along the axis.
fn extended(block: Block, axis: Axis, outer: &Block) -> Block {
    let rest = outer.along(axis) - block.along(axis);
    if rest == 0 {
        return block;
    }
    let (width, height) = match axis {
        Axis::X => (block.width + rest, block.height),
        Axis::Y => (block.width, block.height + rest),
    };
    let free = match axis {
        Axis::X => Block::free(rest, block.height),
        Axis::Y => Block::free(block.width, rest),
    };
    Block {
        width,
        height,
        kind: Kind::Split {
            axis,
            blocks: vec![block, free],
        },
    }
}
