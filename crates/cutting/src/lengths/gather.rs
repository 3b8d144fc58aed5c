//! At the same cost, what is left gathered on one stick: the longest single remnant counts.
//!
//! One stick is chosen to be emptied; its pieces go into what is left on others, or change places
//! with shorter pieces there, as long as that makes its remnant longer.

use super::core::{Core, Draft, Fill};
use super::start::Rest;
use crate::pace::Pace;

/// Sticks tried as the one to be emptied.
const TARGETS: usize = 6;

/// The draft without what is beyond the demands.
pub(super) fn trimmed(core: &Core, draft: &Draft) -> Draft {
    let mut rest = Rest::new(core);
    let mut out = Draft::default();
    for (fill, copies) in &draft.fills {
        let mut left = *copies;
        while left > 0 {
            let fill = rest.trimmed(core, fill);
            let wanted = |&(item, _): &(usize, u64)| rest.demands[item] > 0;
            if !fill.parts.iter().any(wanted) {
                break;
            }
            let times = rest.copies(&fill).clamp(1, left);
            rest.take(&fill, times);
            out.push(core, fill, times);
            left -= times;
        }
    }
    out
}

/// The draft with its waste gathered; never dearer.
pub(super) fn gathered(core: &Core, draft: &Draft, pace: &mut Pace<'_>) -> Draft {
    let draft = trimmed(core, draft);
    let mut order: Vec<usize> = (0..draft.fills.len())
        .filter(|&at| core.kinds[draft.fills[at].0.kind].is_clear())
        .collect();
    order.sort_by_key(|&at| (std::cmp::Reverse(spare(core, &draft.fills[at].0)), at));
    let mut best = (longest(core, &draft), draft.clone());
    for &target in order.iter().take(TARGETS) {
        let moved = emptied(core, &draft, target, pace);
        let left = longest(core, &moved);
        if moved.cost <= best.1.cost && (left > best.0 || moved.cost < best.1.cost) {
            best = (left, moved);
        }
    }
    best.1
}

fn spare(core: &Core, fill: &Fill) -> u64 {
    core.kinds[fill.kind].room - core.taken(&fill.parts).min(core.kinds[fill.kind].room)
}

fn longest(core: &Core, draft: &Draft) -> u64 {
    let clear = |(fill, _): &&(Fill, u64)| core.kinds[fill.kind].is_clear();
    let of = |(fill, _): &(Fill, u64)| spare(core, fill);
    draft.fills.iter().filter(clear).map(of).max().unwrap_or(0)
}

fn emptied(core: &Core, draft: &Draft, target: usize, pace: &mut Pace<'_>) -> Draft {
    let mut fills = draft.fills.clone();
    let kept = fills[target].0.clone();
    fills[target].1 -= 1;
    fills.retain(|(_, copies)| *copies > 0);
    let mut own = kept;
    while let Some(step) = best_step(core, &own, &fills, pace) {
        apply(&mut own, &mut fills, &step);
    }
    let mut out = Draft::default();
    if !own.parts.is_empty() {
        fills.push((own, 1));
    }
    for (fill, copies) in fills {
        out.push(core, fill, copies);
    }
    out
}

/// One piece of the emptied stick goes to another stick, perhaps for a shorter one.
struct Step {
    item: usize,
    other: usize,
    back: Option<usize>,
}

fn best_step(core: &Core, own: &Fill, fills: &[(Fill, u64)], pace: &mut Pace<'_>) -> Option<Step> {
    let own_run = core.kinds[own.kind].run;
    let mut best: Option<(u64, u64, Step)> = None;
    for (other, (fill, _)) in fills.iter().enumerate() {
        let kind = &core.kinds[fill.kind];
        if !kind.is_clear() || !pace.spend(u64::try_from(fill.parts.len() + 1).unwrap_or(1)) {
            continue;
        }
        let room = spare(core, fill);
        let goes = |item: usize, run| core.items[item].run.is_none_or(|own| own == run);
        for &(item, _) in own.parts.iter().filter(|part| goes(part.0, kind.run)) {
            let length = core.items[item].length;
            let backs = fill.parts.iter().map(|part| Some(part.0));
            for back in backs.chain([None]) {
                let shorter = back.map_or(0, |back| core.items[back].length);
                let comes = back.is_none_or(|back| goes(back, own_run));
                if shorter >= length || length - shorter > room || !comes {
                    continue;
                }
                // The most freed; then the tightest place for it.
                let (freed, tight) = (length - shorter, room - (length - shorter));
                let better = best.as_ref().is_none_or(|(most, least, _)| {
                    freed > *most || freed == *most && tight < *least
                });
                if better {
                    best = Some((freed, tight, Step { item, other, back }));
                }
            }
        }
    }
    best.map(|(.., step)| step)
}

fn apply(own: &mut Fill, fills: &mut Vec<(Fill, u64)>, step: &Step) {
    let mut changed = fills[step.other].0.clone();
    put(own, step.item, false);
    put(&mut changed, step.item, true);
    if let Some(back) = step.back {
        put(&mut changed, back, false);
        put(own, back, true);
    }
    fills[step.other].1 -= 1;
    if fills[step.other].1 == 0 {
        fills[step.other] = (changed, 1);
    } else {
        fills.push((changed, 1));
    }
}

/// One more or one less of an item.
fn put(fill: &mut Fill, item: usize, more: bool) {
    match fill.parts.binary_search_by_key(&item, |part| part.0) {
        Ok(at) if more => fill.parts[at].1 += 1,
        Ok(at) => {
            fill.parts[at].1 -= 1;
            fill.parts.retain(|part| part.1 > 0);
        }
        Err(at) if more => fill.parts.insert(at, (item, 1)),
        Err(_) => {}
    }
}
