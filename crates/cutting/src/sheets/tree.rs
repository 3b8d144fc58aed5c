//! Plans for sheets by growing and pruning trees of cuts.
//!
//! A first plan comes from putting parts one by one where they lose least; from there a ruin and
//! recreate search goes on. A plan with very many sheets is improved a few sheets at a time.

mod field;
mod first;
mod gather;
mod hunt;
#[cfg(test)]
mod proof;
mod sheet;
mod terms;
#[cfg(test)]
mod tests;

use super::{Draft, DraftSheet, Reduced};
use crate::chance::Chance;
use crate::{Goal, Pace};
use field::Field;
use hunt::{Aim, End, Hunt, Knobs};

/// More part copies than this are not searched all at once.
const WHOLE: u64 = 400;
/// So many part copies are searched at a time then.
const PATCH: u64 = 120;
/// The longest memory.
const MOST_MEMORY: usize = 3_200;
/// Steps for a first plan where the stock hardly reaches.
const SQUEEZE: u64 = 1 << 21;

/// The search for one problem; it can be left and taken up again.
pub(crate) struct Tree<'a> {
    reduced: &'a Reduced,
    chance: Chance,
    best: Option<Draft>,
    /// What the best plan costs, or is worth.
    reached: u64,
    /// Memory of the next search; more after every failure, so that it cools more slowly.
    memory: usize,
    hunt: Option<Patch>,
}

/// Some sheets of the best plan under the saw, and the others.
struct Patch {
    hunt: Hunt,
    rest: Vec<DraftSheet>,
}

impl<'a> Tree<'a> {
    pub(crate) fn new(reduced: &'a Reduced, seed: u64) -> Self {
        Self {
            reduced,
            chance: Chance::new(seed),
            best: None,
            reached: u64::MAX,
            memory: Knobs::default().memory,
            hunt: None,
        }
    }

    /// A whole plan at once; `None` when the stock did not reach in any of a few tries. With
    /// [`Goal::Value`] one sheet, filled.
    pub(crate) fn first(&mut self, pace: &mut Pace<'_>) -> Option<Draft> {
        let draft = if self.reduced.goal == Goal::Value {
            first::fullest(self.reduced, pace, &mut self.chance)
        } else {
            first::first(self.reduced, pace, &mut self.chance).or_else(|| self.squeeze(pace))?
        };
        self.offer(&draft);
        self.best.clone()
    }

    /// Takes over a better plan found elsewhere.
    pub(crate) fn offer(&mut self, draft: &Draft) {
        let reached = self.reached(draft);
        if self.best.is_none() || self.betters(reached, self.reached) {
            self.reached = reached;
            self.best = Some(draft.clone());
            self.hunt = None;
        }
    }

    /// Goes on from the best plan: a strictly better one as soon as it is found; `None` when the
    /// pace is over or the best plan reaches `bound`, which nothing can pass.
    pub(crate) fn improve(&mut self, pace: &mut Pace<'_>, bound: u64) -> Option<Draft> {
        if self.best.is_none() {
            return self.first(pace);
        }
        while self.betters(bound, self.reached) && !pace.is_over() {
            let mut patch = match self.hunt.take() {
                Some(patch) => patch,
                None => self.patch()?,
            };
            let end = patch.hunt.run(pace, &mut self.chance);
            match end {
                End::Found => {
                    let draft = self.found(&patch);
                    if self.reduced.goal != Goal::Value {
                        let limit = patch.hunt.field.cost.saturating_sub(1);
                        patch.hunt.tighten(limit, &mut self.chance);
                    }
                    self.hunt = Some(patch);
                    return Some(draft);
                }
                End::Over => self.hunt = Some(patch),
                End::Tired => {
                    if patch.rest.is_empty() {
                        self.memory = (2 * self.memory).min(MOST_MEMORY);
                    }
                }
            }
        }
        None
    }

    /// At the same cost the largest free rectangle that can be found; never a costlier plan.
    pub(crate) fn gather(&mut self, pace: &mut Pace<'_>, draft: Draft) -> Draft {
        gather::gather(self.reduced, draft, pace, &mut self.chance)
    }

    /// Cost, or value with [`Goal::Value`].
    fn reached(&self, draft: &Draft) -> u64 {
        match self.reduced.goal {
            Goal::Value => self.reduced.value(draft),
            _ => self.reduced.cost(draft),
        }
    }

    fn betters(&self, one: u64, other: u64) -> bool {
        match self.reduced.goal {
            Goal::Value => one > other,
            _ => one < other,
        }
    }

    fn knobs(&self) -> Knobs {
        Knobs {
            memory: self.memory,
            ..Knobs::default()
        }
    }

    fn found(&mut self, patch: &Patch) -> Draft {
        let mut draft = Draft {
            sheets: patch.rest.clone(),
        };
        patch.hunt.field.draft(&mut draft.sheets);
        self.reached = self.reached(&draft);
        self.best = Some(draft.clone());
        draft
    }

    /// Puts some sheets of the best plan under the saw, with a cost they must not reach.
    fn patch(&mut self) -> Option<Patch> {
        let best = self.best.as_ref()?;
        if self.reduced.goal == Goal::Value {
            return Some(Patch {
                hunt: value_hunt(self.reduced, best, self.knobs()),
                rest: Vec::new(),
            });
        }
        let all: u64 = best
            .sheets
            .iter()
            .map(|sheet| sheet.copies * parts(sheet))
            .sum();
        let size = if all <= WHOLE { u64::MAX } else { PATCH };
        let (field, rest) = gather::under_the_saw(self.reduced, best, size, &mut self.chance);
        let limit = field.cost.checked_sub(1)?;
        let knobs = if rest.is_empty() {
            self.knobs()
        } else {
            Knobs {
                patience: 40,
                ..Knobs::default()
            }
        };
        let mut hunt = Hunt::new(field, Aim::Place, knobs);
        hunt.tighten(limit, &mut self.chance);
        Some(Patch { hunt, rest })
    }

    /// Stock that hardly reaches: the search for places, without a cost to beat.
    fn squeeze(&mut self, pace: &mut Pace<'_>) -> Option<Draft> {
        let all: u64 = self.reduced.parts.iter().map(|part| part.count).sum();
        if all > WHOLE {
            return None;
        }
        let mut field = Field::new(self.reduced, false);
        for (part, wanted) in self.reduced.parts.iter().enumerate() {
            field.want(part, wanted.count);
        }
        let mut hunt = Hunt::new(
            field,
            Aim::Place,
            Knobs {
                patience: 10,
                ..Knobs::default()
            },
        );
        hunt.settle();
        let mut slice = pace.slice(SQUEEZE);
        let end = hunt.run(&mut slice, &mut self.chance);
        pace.rejoin(SQUEEZE, &slice);
        if end != End::Found {
            return None;
        }
        let mut draft = Draft::default();
        hunt.field.draft(&mut draft.sheets);
        Some(draft)
    }
}

/// The search for value, from a draft of one sheet.
fn value_hunt(reduced: &Reduced, best: &Draft, knobs: Knobs) -> Hunt {
    let mut field = Field::new(reduced, true);
    let mut placed = vec![0_u64; reduced.parts.len()];
    // After a search from the best layout has led nowhere, the next ones begin anew.
    let kept = usize::from(knobs.memory == Knobs::default().memory);
    for sheet in best.sheets.iter().take(kept) {
        sheet.block.each_part(&mut |part| placed[part] += 1);
        field.adopt(sheet.stock, &sheet.block);
    }
    let all = first::useful_counts(reduced);
    let mut total = 0;
    for (part, (&all, placed)) in all.iter().zip(placed).enumerate() {
        total += all.saturating_mul(reduced.parts[part].value);
        field.want(part, all.saturating_sub(placed));
    }
    let mut hunt = Hunt::new(field, Aim::Value, knobs);
    hunt.seek_value(total, reduced.value(best));
    hunt
}

pub(super) fn parts(sheet: &DraftSheet) -> u64 {
    let mut count = 0;
    sheet.block.each_part(&mut |_| count += 1);
    count
}
