//! The most that one stick can hold of pieces of given worth: a bounded knapsack, exact in
//! integers, for all kinds of stick at once.
//!
//! Where the table of all lengths would be large and few pieces go on one stick, a search through
//! the combinations takes its place; where both would be too much, the answer is an upper bound
//! from rounded-down lengths and a greedy fill.

mod hunt;
mod table;

use super::core::{Core, common};
use crate::pace::Pace;
use hunt::Hunt;
use table::Table;

/// As many pieces to a stick are few.
const FEW: u64 = 8;
/// A table larger than this may lose against a search through combinations.
const WORTH_A_HUNT: u64 = 300_000;

/// What one stick of a kind can hold at most.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub(super) struct Priced {
    /// No fill is worth more.
    pub(super) most: u64,
    /// The best fill found; mostly worth that.
    pub(super) parts: Parts,
}

/// One item as it counts in the knapsack.
#[derive(Clone, Copy, Debug)]
pub(super) struct Good {
    pub(super) item: usize,
    pub(super) weight: u64,
    pub(super) bound: u64,
    pub(super) worth: u64,
}

/// Kinds that can hold the same items.
struct Class {
    /// Longest first; worth is filled in for each question.
    goods: Vec<Good>,
    kinds: Vec<usize>,
    grain: u64,
}

/// Answers for one set of demands.
pub(super) struct Pricer<'a> {
    core: &'a Core,
    classes: Vec<Class>,
    table: Table,
}

impl<'a> Pricer<'a> {
    /// For fills with at most so many of each item.
    pub(super) fn new(core: &'a Core, demands: &[u64]) -> Self {
        let mut classes: Vec<Class> = Vec::new();
        for kind in 0..core.kinds.len() {
            let run = core.kinds[kind].run;
            let within = |item: usize| core.items[item].run.is_none_or(|own| own == run);
            let items: Vec<usize> = (0..core.items.len())
                .filter(|&item| demands[item] > 0 && within(item))
                .collect();
            let same = |class: &&mut Class| {
                class
                    .goods
                    .iter()
                    .map(|good| good.item)
                    .eq(items.iter().copied())
            };
            if let Some(class) = classes.iter_mut().find(same) {
                class.kinds.push(kind);
                continue;
            }
            let lengths = items.iter().map(|&item| core.items[item].length);
            let grain = lengths.fold(0, common).max(1);
            let good = |&item: &usize| Good {
                item,
                weight: core.items[item].length / grain,
                bound: demands[item],
                worth: 0,
            };
            classes.push(Class {
                goods: items.iter().map(good).collect(),
                kinds: vec![kind],
                grain,
            });
        }
        Self {
            core,
            classes,
            table: Table::default(),
        }
    }

    /// One answer per kind; kinds without sticks left answer 0. `None` when the search must end.
    /// Worths are at most 2^40 for each part of an item.
    pub(super) fn price(
        &mut self,
        worth: &[u64],
        counts: &[u64],
        pace: &mut Pace<'_>,
    ) -> Option<Vec<Priced>> {
        let mut answers = vec![Priced::default(); self.core.kinds.len()];
        self.price_into(worth, counts, &mut answers, pace)?;
        Some(answers)
    }

    /// The same; where the search must end, the kinds not yet answered keep what they had.
    pub(super) fn price_into(
        &mut self,
        worth: &[u64],
        counts: &[u64],
        answers: &mut [Priced],
        pace: &mut Pace<'_>,
    ) -> Option<()> {
        for class in &self.classes {
            let kinds: Vec<usize> = class
                .kinds
                .iter()
                .copied()
                .filter(|&kind| counts[kind] > 0)
                .collect();
            let goods: Vec<Good> = class
                .goods
                .iter()
                .map(|good| Good {
                    worth: worth[good.item],
                    ..*good
                })
                .filter(|good| good.worth > 0)
                .collect();
            if kinds.is_empty() || goods.is_empty() {
                continue;
            }
            let question = Question {
                core: self.core,
                goods: &goods,
                grain: class.grain,
            };
            question.answer(&kinds, &mut self.table, answers, pace)?;
        }
        Some(())
    }
}

/// Item and how often, items ascending.
type Parts = Vec<(usize, u64)>;

struct Question<'a> {
    core: &'a Core,
    goods: &'a [Good],
    grain: u64,
}

impl Question<'_> {
    fn capacity(&self, kind: usize) -> u64 {
        self.core.kinds[kind].room / self.grain
    }

    fn answer(
        &self,
        kinds: &[usize],
        table: &mut Table,
        answers: &mut [Priced],
        pace: &mut Pace<'_>,
    ) -> Option<()> {
        let largest = kinds.iter().map(|&kind| self.capacity(kind)).max()?;
        let effort = table::effort(self.goods, largest);
        let shortest = self.goods.last()?.weight;
        let too_large = effort > table::MOST_EFFORT;
        let few = largest / shortest <= FEW && effort > WORTH_A_HUNT;
        if few || too_large {
            let limit = if too_large {
                hunt::MOST_STEPS
            } else {
                effort / 8
            };
            let left = self.hunted(kinds, limit, answers, pace)?;
            if left.is_empty() {
                return Some(());
            }
            if too_large {
                for (kind, parts) in left {
                    pace.spend(table::MOST_EFFORT / 16).then_some(())?;
                    let most = coarse(self.goods, self.capacity(kind), table);
                    answers[kind] = Priced { most, parts };
                }
                return Some(());
            }
        }
        pace.spend(effort / 4).then_some(())?;
        table.fill(self.goods, largest);
        for &kind in kinds {
            let capacity = self.capacity(kind);
            answers[kind] = Priced {
                most: table.most(capacity),
                parts: table.parts(self.goods, capacity),
            };
            if !self.core.kinds[kind].is_clear() {
                answers[kind].most = answers[kind].most.min(self.by_stretch(kind, table));
                answers[kind].parts = self.on_flawed(kind, table);
            }
        }
        Some(())
    }

    /// By combinations; the kinds for which they were too many are left, with the best seen.
    fn hunted(
        &self,
        kinds: &[usize],
        limit: u64,
        answers: &mut [Priced],
        pace: &mut Pace<'_>,
    ) -> Option<Vec<(usize, Parts)>> {
        let mut left = Vec::new();
        for &kind in kinds {
            let mut hunt = Hunt::new(self.goods, self.capacity(kind), limit);
            let all = hunt.run();
            pace.spend(hunt.steps).then_some(())?;
            let mut parts = hunt.parts(self.goods);
            if !self.core.kinds[kind].is_clear() {
                while !parts.is_empty() && !self.core.fits(kind, &parts) {
                    parts.pop();
                }
            }
            if all {
                answers[kind] = Priced {
                    most: hunt.best,
                    parts,
                };
            } else {
                left.push((kind, parts));
            }
        }
        Some(left)
    }

    /// The sum of what each stretch can hold: a bound where no bundle can lie across a flaw.
    fn by_stretch(&self, kind: usize, table: &Table) -> u64 {
        let bundle = |good: &Good| self.core.items[good.item].parts.len() > 1;
        if self.goods.iter().any(bundle) {
            return u64::MAX;
        }
        let stick = &self.core.kinds[kind];
        let of = |&(from, to): &(u64, u64)| table.most((to - from + self.core.kerf) / self.grain);
        stick.stretches.iter().map(of).sum()
    }

    /// The longest stretch by the table, the others as it comes.
    fn on_flawed(&self, kind: usize, table: &Table) -> Vec<(usize, u64)> {
        let stick = &self.core.kinds[kind];
        let long = stick.stretches.iter().map(|&(from, to)| to - from).max();
        let capacity = (long.unwrap_or(0) + self.core.kerf) / self.grain;
        let mut parts = table.parts(self.goods, capacity);
        while !parts.is_empty() && !self.core.fits(kind, &parts) {
            parts.pop();
        }
        let mut order: Vec<&Good> = self.goods.iter().collect();
        let density = |good: &Good| u128::from(good.worth) * 256 / u128::from(good.weight);
        order.sort_by_key(|good| std::cmp::Reverse((density(good), good.worth)));
        for good in order {
            grow(self.core, kind, &mut parts, good.item, good.bound);
        }
        parts
    }
}

/// Adds as many of an item as fit, up to so many in all.
pub(super) fn grow(
    core: &Core,
    kind: usize,
    parts: &mut Vec<(usize, u64)>,
    item: usize,
    most: u64,
) {
    let stick = &core.kinds[kind];
    if core.items[item].run.is_some_and(|run| run != stick.run) {
        return;
    }
    let at = parts.binary_search_by_key(&item, |&(own, _)| own);
    let held = at.map_or(0, |at| parts[at].1);
    let spare = stick.room.saturating_sub(core.taken(parts));
    let mut more = (spare / core.items[item].length).min(most.saturating_sub(held));
    while more > 0 {
        let mut grown = parts.clone();
        match at {
            Ok(at) => grown[at].1 += more,
            Err(at) => grown.insert(at, (item, more)),
        }
        if stick.is_clear() || core.fits(kind, &grown) {
            *parts = grown;
            return;
        }
        more -= 1;
    }
}

/// An upper bound: with lengths and capacity rounded down to a coarser unit, more fits, not less.
fn coarse(goods: &[Good], capacity: u64, table: &mut Table) -> u64 {
    let mut grain = 2;
    loop {
        let rounded: Vec<Good> = goods
            .iter()
            .map(|good| Good {
                weight: good.weight / grain,
                bound: good.bound.min(capacity / good.weight),
                ..*good
            })
            .collect();
        let (free, heavy): (Vec<Good>, Vec<Good>) =
            rounded.into_iter().partition(|good| good.weight == 0);
        let capacity = capacity / grain;
        if table::effort(&heavy, capacity) <= table::MOST_EFFORT {
            table.fill(&heavy, capacity);
            let gift = |good: &Good| good.worth.saturating_mul(good.bound);
            let gifts = free.iter().map(gift).fold(0, u64::saturating_add);
            return table.most(capacity).saturating_add(gifts);
        }
        grain *= 2;
    }
}
