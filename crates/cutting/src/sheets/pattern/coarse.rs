//! A problem with fewer kinds of parts, for bounds only.

use std::collections::BTreeMap;

use super::super::{Part, Reduced};

/// The same problem with parts of like size made alike, each as small as the smallest of them:
/// no more than so many kinds. Whatever bounds its cost bounds that of the problem, for in every
/// plan a smaller part can lie where the larger one lay. `None` where limited stages would not
/// allow the cuts that takes, or when there are not so many kinds.
pub(crate) fn coarser(reduced: &Reduced, most: usize) -> Option<Reduced> {
    if reduced.stages.most != u32::MAX || reduced.parts.len() <= most.max(1) {
        return None;
    }
    let mut step = 1_u32;
    loop {
        let parts = alike(&reduced.parts, step);
        if parts.len() <= most.max(1) || step > u32::MAX / 2 {
            // Windows keep their stock and its count; no part frees them any more.
            return Some(Reduced {
                parts,
                ..reduced.clone()
            });
        }
        step += step.div_ceil(8);
    }
}

/// Parts whose sides fall in the same steps as one kind each, large ones first.
fn alike(parts: &[Part], step: u32) -> Vec<Part> {
    let mut kinds: BTreeMap<(u32, u32, bool), Part> = BTreeMap::new();
    for part in parts {
        let sides = (part.width, part.height);
        let (width, height) = if part.turn && sides.0 < sides.1 {
            (sides.1, sides.0)
        } else {
            sides
        };
        let kind = kinds
            .entry((width / step, height / step, part.turn))
            .or_insert(Part {
                width,
                height,
                count: 0,
                value: 0,
                turn: part.turn,
                window: None,
            });
        kind.width = kind.width.min(width);
        kind.height = kind.height.min(height);
        kind.count = kind.count.saturating_add(part.count);
    }
    kinds.into_values().rev().collect()
}
