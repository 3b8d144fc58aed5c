//! From the mix in fractions to whole sticks: fix what is nearly whole, improve the mix for what
//! is left, and so on down.
// Doubles only choose the way here.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss
)]

use super::columns::{Depth, Mix};
use super::core::{Core, Draft, Fill};
use super::start::{Rest, Taste, greedy};
use super::tiny::{self, Tiny};
use crate::chance::Chance;
use crate::pace::Pace;

/// How one dive differs from the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Style {
    /// Column generation after each step down.
    pub(super) depth: Depth,
    /// Once in so many steps another fill than the fullest fraction is chosen; 0: never.
    pub(super) stray: usize,
}

impl Style {
    /// Always the fullest fraction.
    pub(super) const STRAIGHT: Self = Self {
        depth: Depth {
            rounds: 20,
            settle: false,
        },
        stray: 0,
    };
}

/// The best plan found that costs less than `below`.
pub(super) fn dive(
    mix: &mut Mix<'_>,
    below: u64,
    style: Style,
    chance: &mut Chance,
    pace: &mut Pace<'_>,
) -> Option<Draft> {
    let core = mix.core;
    let mut rest = Rest::new(core);
    let mut draft = Draft::default();
    let mut best: Option<Draft> = None;
    let mut below = below;
    loop {
        let more = finish(core, &rest, below.saturating_sub(draft.cost), pace);
        if let Some(more) = more.filter(|more| draft.cost + more.cost < below) {
            below = draft.cost + more.cost;
            let mut whole = draft.clone();
            whole.cost = below;
            whole.fills.extend(more.fills);
            best = Some(whole);
        }
        let Some(reached) = mix.generate(&rest, below - draft.cost.min(below), style.depth, pace)
        else {
            return best;
        };
        if reached.bound.saturating_add(draft.cost) >= below || mix.lacks() {
            return best;
        }
        let fixed = fix(mix, &mut rest, &mut draft, style, chance);
        if !fixed || rest.is_done() {
            if rest.is_done() && draft.cost < below {
                best = Some(draft);
            }
            return best;
        }
    }
}

/// Takes over what the mix uses whole, or else the fill it uses most.
fn fix(
    mix: &Mix<'_>,
    rest: &mut Rest,
    draft: &mut Draft,
    style: Style,
    chance: &mut Chance,
) -> bool {
    let used = mix.solution();
    let mut fixed = false;
    for &(column, times) in &used {
        let whole = (times + 1e-3).floor() as u64;
        let nearly = u64::from(times - times.floor() > 0.9);
        if whole + nearly > 0 {
            fixed |= adopt(
                mix.core,
                rest,
                draft,
                &mix.fills[column],
                whole + nearly,
                true,
            );
        }
    }
    if fixed {
        return true;
    }
    let mut order: Vec<usize> = used.iter().map(|&(column, _)| column).collect();
    if style.stray > 0 && order.len() > 1 && chance.one_in(style.stray) {
        let other = chance.below(order.len().min(6));
        order.swap(0, other);
    }
    order
        .into_iter()
        .any(|column| adopt(mix.core, rest, draft, &mix.fills[column], 1, false))
}

/// Uses a fill so many times, as far as it is still wanted; `proper`: only uncut.
fn adopt(
    core: &Core,
    rest: &mut Rest,
    draft: &mut Draft,
    fill: &Fill,
    copies: u64,
    proper: bool,
) -> bool {
    let times = rest.copies(fill).min(copies);
    if times > 0 {
        rest.take(fill, times);
        draft.push(core, fill.clone(), times);
        return true;
    }
    if proper || rest.counts[fill.kind] == 0 {
        return false;
    }
    let trimmed = rest.trimmed(core, fill);
    if trimmed
        .parts
        .iter()
        .all(|&(item, _)| rest.demands[item] == 0)
    {
        return false;
    }
    rest.take(&trimmed, 1);
    draft.push(core, trimmed, 1);
    true
}

/// What is left by quick means: exactly where it is little, else longest first.
fn finish(core: &Core, rest: &Rest, below: u64, pace: &mut Pace<'_>) -> Option<Draft> {
    if tiny::work(rest).is_some_and(|work| work <= 200_000) {
        return Tiny::new(core, rest, pace)?.whole();
    }
    let mut best: Option<Draft> = None;
    for taste in [Taste::Dense, Taste::Cheap, Taste::Long] {
        let mut left = rest.clone();
        let draft = greedy(core, &mut left, taste, pace);
        let least = best.as_ref().map_or(below, |best| best.cost);
        if left.is_done() && draft.cost < least {
            best = Some(draft);
        }
        if core.kinds.len() == 1 {
            break;
        }
    }
    best
}
