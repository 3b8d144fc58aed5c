//! Counts that bind: what one sheet is worth at most, and a good layout, by prices on overuse.
//!
//! For any penalties λ ≥ 0 the most worth within the counts is at most
//! Σ count · λ + (the most worth without counts when each part is worth λ less);
//! penalties are moved where the layout without counts uses too many (Lagrange relaxation).

// Penalties are moved by doubles and rounded: any whole penalties give a valid bound.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

use super::fill::{Filled, fill};
use super::oracle::{Best, Oracle};
use super::shape::Shape;
use super::value::upheld;
use crate::Pace;

/// What is known of the most worth within the counts.
pub(super) struct Known {
    /// No layout is worth more.
    pub(super) bound: u64,
    /// The best layout found.
    pub(super) best: Option<Filled>,
    /// Other layouts worth more than enough.
    pub(super) more: Vec<Filled>,
    /// Penalty per part that gave the bound.
    pub(super) penalties: Vec<u64>,
}

/// Layouts kept beside the best.
const MORE: usize = 16;

/// A question to an oracle: worths and counts per part.
pub(super) struct Asked<'a> {
    pub(super) worths: &'a [u64],
    /// None above what a sheet can hold; see [`held`].
    pub(super) counts: &'a [u64],
    /// A bound down to here is good enough.
    pub(super) enough: u64,
    /// Most relaxed problems to solve.
    pub(super) rounds: usize,
}

/// Counts no larger than the sheet's area allows.
pub(super) fn held(oracle: &Oracle<'_>, counts: impl Iterator<Item = u64>) -> Vec<u64> {
    let (width, height) = oracle.size();
    let area = u64::from(width) * u64::from(height);
    let parts = &oracle.reduced.parts;
    counts
        .zip(parts)
        .map(|(count, part)| {
            let own = (u64::from(part.width) * u64::from(part.height)).max(1);
            count.min(area / own)
        })
        .collect()
}

/// Bounds the most worth within the counts; layouts only when there is an oracle for plans.
///
/// `None` when the pace ends before the first answer.
pub(super) fn within_counts(
    relaxed: &Oracle<'_>,
    plans: Option<&Oracle<'_>>,
    asked: &Asked<'_>,
    pace: &mut Pace<'_>,
) -> Option<Known> {
    let parts = asked.worths.len();
    let mut known = Known {
        bound: u64::MAX,
        best: None,
        more: Vec::new(),
        penalties: vec![0; parts],
    };
    let mut penalties = vec![0.0_f64; parts];
    let mut boldness = 1.0;
    let mut idle = 0;
    for round in 0..asked.rounds.max(1) {
        let (whole, less, paid) = lowered(&penalties, asked);
        let Some(found) = relaxed.best(&less, asked.counts, pace) else {
            break;
        };
        let bound = found.worth.saturating_add(paid);
        if bound < known.bound {
            let much = bound < known.bound - known.bound / 2000;
            known.bound = bound;
            known.penalties = whole;
            idle = if much { 0 } else { idle + 1 };
        } else {
            idle += 1;
        }
        let uses = uses(&found, parts);
        let over = uses
            .iter()
            .zip(asked.counts)
            .any(|(used, count)| used > count);
        improve(&mut known, relaxed, plans, asked, &found, &less, over, pace);
        let reached = known
            .best
            .as_ref()
            .map_or(0, |best| best.worth)
            .max(asked.enough);
        if known.bound <= reached || round == 0 && !over || pace.is_over() {
            break;
        }
        if idle >= 5 {
            boldness /= 2.0;
            idle = 0;
            if boldness < 0.02 {
                break;
            }
        }
        let gap = (bound - reached.min(bound)) as f64;
        shift(&mut penalties, &uses, asked, boldness * gap);
    }
    held_up(known)
}

/// What is known, if there is a bound that no layout found refutes.
fn held_up(mut known: Known) -> Option<Known> {
    if let Some(best) = &known.best {
        known.bound = upheld(known.bound, best.worth);
    }
    (known.bound < u64::MAX).then_some(known)
}

/// Whole penalties, worths less penalties, and what the penalties on all counts come to.
fn lowered(penalties: &[f64], asked: &Asked<'_>) -> (Vec<u64>, Vec<u64>, u64) {
    let whole: Vec<u64> = penalties
        .iter()
        .zip(asked.worths)
        .map(|(&penalty, &worth)| (penalty as u64).min(worth))
        .collect();
    let less = asked.worths.iter().zip(&whole).map(|(w, p)| w - p);
    let paid = whole
        .iter()
        .zip(asked.counts)
        .fold(0_u64, |sum, (&penalty, &count)| {
            sum.saturating_add(penalty.saturating_mul(count))
        });
    let less = less.collect();
    (whole, less, paid)
}

fn uses(found: &Best, parts: usize) -> Vec<u64> {
    let mut uses = vec![0; parts];
    if let Some(shape) = &found.shape {
        shape.each_part(&mut |part| uses[part] += 1);
    }
    uses
}

/// Moves the penalties along what is used beyond the counts.
fn shift(penalties: &mut [f64], uses: &[u64], asked: &Asked<'_>, length: f64) {
    let steps: Vec<f64> = uses
        .iter()
        .zip(asked.counts)
        .zip(penalties.iter())
        .map(|((&used, &count), &penalty)| {
            let step = used as f64 - count as f64;
            if step < 0.0 && penalty <= 0.0 {
                0.0
            } else {
                step
            }
        })
        .collect();
    let square: f64 = steps.iter().map(|step| step * step).sum();
    if square > 0.0 {
        for ((penalty, step), &worth) in penalties.iter_mut().zip(&steps).zip(asked.worths) {
            *penalty = (*penalty + length / square * step).clamp(0.0, worth as f64);
        }
    }
}

#[allow(clippy::too_many_arguments)]
fn improve(
    known: &mut Known,
    relaxed: &Oracle<'_>,
    plans: Option<&Oracle<'_>>,
    asked: &Asked<'_>,
    found: &Best,
    less: &[u64],
    over: bool,
    pace: &mut Pace<'_>,
) {
    let Some(plans) = plans else {
        return;
    };
    let first: Option<Shape> = if relaxed.can_be_cut() {
        found.shape.clone()
    } else {
        plans
            .best(less, asked.counts, pace)
            .and_then(|best| best.shape)
    };
    let worths = if over { less } else { asked.worths };
    for worths in [asked.worths, worths] {
        let Some(mut filled) = fill(plans, worths, asked.counts, first.clone(), pace) else {
            continue;
        };
        filled.worth = filled
            .uses
            .iter()
            .map(|&(part, times)| asked.worths[part].saturating_mul(times))
            .sum();
        let spare = if known
            .best
            .as_ref()
            .is_none_or(|best| filled.worth > best.worth)
        {
            known.best.replace(filled)
        } else {
            Some(filled)
        };
        if let Some(spare) = spare
            && spare.worth > asked.enough
            && known.more.len() < MORE
            && known.more.iter().all(|other| other.uses != spare.uses)
        {
            known.more.push(spare);
        }
        if !over {
            break;
        }
    }
}
