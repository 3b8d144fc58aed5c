//! Holds a draft against its problem, rule by rule; shares nothing with the search.

use crate::Goal;
use crate::sheets::{Axis, Block, Draft, Kind, Reduced};

/// The first rule broken.
pub(crate) fn lawful(reduced: &Reduced, draft: &Draft) -> Result<(), String> {
    let mut placed = vec![0_u64; reduced.parts.len()];
    let mut used = vec![0_u64; reduced.stock.len()];
    for sheet in &draft.sheets {
        let stock = &reduced.stock[sheet.stock];
        if (sheet.block.width, sheet.block.height) != (stock.width, stock.height) {
            return Err(format!("a block unlike its stock: {:?}", sheet.block));
        }
        used[sheet.stock] += sheet.copies;
        sheet
            .block
            .each_part(&mut |part| placed[part] += sheet.copies);
        whole(reduced, &sheet.block, None, 0)?;
    }
    for (part, (&placed, wanted)) in placed.iter().zip(&reduced.parts).enumerate() {
        if placed > wanted.count || placed < wanted.count && reduced.goal != Goal::Value {
            return Err(format!("{placed} of part {part}, wanted {}", wanted.count));
        }
    }
    for (number, (&used, stock)) in used.iter().zip(&reduced.stock).enumerate() {
        let held = stock.window_of.map_or(stock.count, |part| placed[part]);
        if used > held {
            return Err(format!("{used} of stock {number}, held {held}"));
        }
    }
    if reduced.goal == Goal::Value && used.iter().sum::<u64>() > 1 {
        return Err("more than one sheet".to_owned());
    }
    Ok(())
}

fn whole(reduced: &Reduced, block: &Block, above: Option<Axis>, stage: u32) -> Result<(), String> {
    match &block.kind {
        Kind::Free => Ok(()),
        Kind::Part { part, turned } => {
            let part = &reduced.parts[*part];
            let size = if *turned {
                (part.height, part.width)
            } else {
                (part.width, part.height)
            };
            if size != (block.width, block.height) || *turned && !part.turn {
                return Err(format!("a part of another size: {block:?}"));
            }
            Ok(())
        }
        Kind::Split { axis, blocks } => {
            let stage = next(reduced, *axis, above, stage);
            fits(reduced, block, *axis, blocks, stage)?;
            blocks
                .iter()
                .try_for_each(|inner| whole(reduced, inner, Some(*axis), stage))
        }
    }
}

fn fits(
    reduced: &Reduced,
    block: &Block,
    axis: Axis,
    blocks: &[Block],
    stage: u32,
) -> Result<(), String> {
    let sum: u64 = blocks
        .iter()
        .map(|inner| u64::from(inner.along(axis)))
        .sum();
    let across = |inner: &Block| inner.along(axis.other()) == block.along(axis.other());
    if sum != u64::from(block.along(axis)) || !blocks.iter().all(across) {
        return Err(format!("sizes do not add up: {block:?}"));
    }
    let least = reduced.least_strip.max(1);
    if blocks.iter().any(|inner| inner.along(axis) < least) {
        return Err(format!("a strip too narrow: {block:?}"));
    }
    let most = reduced.stages.most;
    if stage > most {
        let parts = blocks.iter().filter(|inner| inner.kind != Kind::Free);
        let single = parts.clone().count() == 1
            && parts
                .clone()
                .all(|inner| matches!(inner.kind, Kind::Part { .. }));
        if !reduced.stages.final_trim || stage - 1 > most || !single {
            return Err(format!("stage {stage}: {block:?}"));
        }
    }
    Ok(())
}

/// The largest free block that can be kept.
pub(crate) fn remnant(reduced: &Reduced, draft: &Draft) -> u64 {
    let sheets = draft.sheets.iter();
    sheets
        .map(|sheet| free(reduced, &sheet.block, None, 0))
        .max()
        .unwrap_or(0)
}

fn free(reduced: &Reduced, block: &Block, above: Option<Axis>, stage: u32) -> u64 {
    match &block.kind {
        Kind::Part { .. } => 0,
        Kind::Free if stage > reduced.stages.most => 0,
        Kind::Free => u64::from(block.width) * u64::from(block.height),
        Kind::Split { axis, blocks } => {
            let stage = next(reduced, *axis, above, stage);
            let inner = blocks.iter();
            inner
                .map(|inner| free(reduced, inner, Some(*axis), stage))
                .max()
                .unwrap_or(0)
        }
    }
}

fn next(reduced: &Reduced, axis: Axis, above: Option<Axis>, stage: u32) -> u32 {
    let first = reduced.stages.first;
    match above {
        Some(above) if above == axis => stage,
        Some(_) => stage + 1,
        None if first.is_some_and(|first| first != axis) => 2,
        None => 1,
    }
}
