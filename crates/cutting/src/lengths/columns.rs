//! Column generation: the best mix of fills in fractions, and the bound it proves.
// Doubles only steer the search here; every bound is reckoned afresh in integers.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss
)]

use std::collections::BTreeSet;

use super::bound::{grain, in_fractions, need, whole};
use super::core::{Core, ENDLESS, Fill};
use super::pricing::{Priced, Pricer};
use super::start::Rest;
use crate::master::Master;
use crate::pace::Pace;

/// The dearest stick's cost, as worth.
const UNIT: f64 = 268_435_456.0;
/// Worths are at most this, so that sums stay within `u64`.
const MOST_WORTH: u64 = 1 << 40;
const PIVOTS: usize = 5_000;
/// Fills looked for beside the best.
const BESIDE: usize = 4;
/// See [`side`]; below it a fraction is none.
pub(super) const TRIFLE: f64 = 1e-5;
const ENOUGH: f64 = 1e-7;

/// What the program asks of a row: a trifle more than the demand, and not the same trifle for
/// every row. Without it most steps of the simplex would change nothing.
pub(super) fn side(row: usize, demand: u64) -> f64 {
    if demand == 0 {
        return 0.0;
    }
    let spread = (row as u64).wrapping_mul(2_654_435_761) % 1009 + 1;
    demand as f64 + TRIFLE * spread as f64 / 1009.0
}

/// A linear program over fills, for a core and whatever is left of its demands.
pub(super) struct Mix<'a> {
    pub(super) core: &'a Core,
    master: Master,
    pub(super) fills: Vec<Fill>,
    known: BTreeSet<Fill>,
    /// Kinds with a count: one row each, behind the rows of the items.
    limited: Vec<usize>,
    dearest: f64,
    /// Every total cost is a multiple of this.
    grain: u64,
    /// Worths that proved the best bound, per unit of cost.
    center: Vec<f64>,
}

/// How far column generation goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Depth {
    pub(super) rounds: usize,
    /// Go on until no fill improves the mix; else the bound rounded up is enough.
    pub(super) settle: bool,
}

impl Depth {
    pub(super) const ROUNDED: Self = Self {
        rounds: usize::MAX,
        settle: false,
    };
    pub(super) const SETTLED: Self = Self {
        rounds: usize::MAX,
        settle: true,
    };
}

/// How far column generation came.
#[derive(Clone, Debug)]
pub(super) struct Reached {
    /// Proven in fractions of sticks, rounded up; `u64::MAX` when the stock cannot hold it all.
    pub(super) bound: u64,
    /// The same before rounding, in fine parts.
    fine: u128,
    /// The program's own value, in cost.
    pub(super) value: f64,
    /// No fill improves the mix any more.
    pub(super) settled: bool,
    /// The worths behind the bound, and what each kind can hold of them.
    pub(super) worth: Vec<u64>,
    pub(super) most: Vec<u64>,
    /// The worths looked at last.
    last: Vec<u64>,
}

impl<'a> Mix<'a> {
    pub(super) fn new(core: &'a Core) -> Self {
        let dearest = core.kinds.iter().map(|kind| kind.cost).max().unwrap_or(1);
        let dearest = dearest.max(1) as f64;
        let limited: Vec<usize> = (0..core.kinds.len())
            .filter(|&kind| core.kinds[kind].count != ENDLESS)
            .collect();
        let mut sides: Vec<f64> = core.items.iter().map(|item| item.demand as f64).collect();
        sides.extend(limited.iter().map(|&kind| -(core.kinds[kind].count as f64)));
        let densest = core
            .kinds
            .iter()
            .map(|kind| kind.cost as f64 / kind.room as f64)
            .fold(f64::INFINITY, f64::min);
        let center = core
            .items
            .iter()
            .map(|item| item.length as f64 * densest / dearest)
            .collect();
        Self {
            core,
            grain: grain(core),
            master: Master::new(&sides, 1000.0),
            fills: Vec::new(),
            known: BTreeSet::new(),
            limited,
            dearest,
            center,
        }
    }

    pub(super) fn add(&mut self, fill: &Fill) -> bool {
        if fill.parts.is_empty() || !self.known.insert(fill.clone()) {
            return false;
        }
        let mut entries: Vec<(usize, f64)> = fill
            .parts
            .iter()
            .map(|&(item, times)| (item, times as f64))
            .collect();
        if let Ok(at) = self.limited.binary_search(&fill.kind) {
            entries.push((self.core.items.len() + at, -1.0));
        }
        let cost = self.core.kinds[fill.kind].cost as f64 / self.dearest;
        self.master.add(cost, entries);
        self.fills.push(fill.clone());
        true
    }

    pub(super) fn knows(&self, fill: &Fill) -> bool {
        self.known.contains(fill)
    }

    pub(super) fn set(&mut self, rest: &Rest) {
        for (row, &demand) in rest.demands.iter().enumerate() {
            self.master.set_side(row, side(row, demand));
        }
        let rows = self.core.items.len();
        for (at, &kind) in self.limited.iter().enumerate() {
            self.master.set_side(rows + at, -(rest.counts[kind] as f64));
        }
    }

    /// Fills in use, with how much of each, most first.
    pub(super) fn solution(&self) -> Vec<(usize, f64)> {
        let mut used = self.master.solution();
        used.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        used
    }

    pub(super) fn lacks(&self) -> bool {
        self.master.lack() > 1e-2
    }

    /// Improves the mix for what is left until it is the best, its bound reaches `enough`, or it
    /// is deep enough. `None` when the search must end.
    pub(super) fn generate(
        &mut self,
        rest: &Rest,
        enough: u64,
        depth: Depth,
        pace: &mut Pace<'_>,
    ) -> Option<Reached> {
        self.set(rest);
        let mut pricer = Pricer::new(self.core, &rest.demands);
        let mut reached = Reached {
            bound: 0,
            fine: 0,
            value: f64::INFINITY,
            settled: false,
            worth: vec![0; self.core.items.len()],
            most: vec![0; self.core.kinds.len()],
            last: Vec::new(),
        };
        for _ in 0..depth.rounds {
            self.solve(pace)?;
            reached.value = self.value(rest);
            let found = self.price(rest, &mut pricer, &mut reached, pace)?;
            if !found {
                reached.settled = true;
                return Some(reached);
            }
            if reached.bound >= enough {
                return Some(reached);
            }
            let steps = (reached.value / self.grain as f64 - 1e-6).ceil();
            if !depth.settle && !self.lacks() && reached.bound.div_ceil(self.grain) as f64 >= steps
            {
                return Some(reached);
            }
        }
        self.solve(pace)?;
        reached.value = self.value(rest);
        Some(reached)
    }

    /// `None` when the search must end.
    fn solve(&mut self, pace: &mut Pace<'_>) -> Option<()> {
        pace.spend(self.fills.len() as u64).then_some(())?;
        self.master.solve_within(PIVOTS, pace);
        (!pace.is_over()).then_some(())
    }

    /// The program's value for the true demands.
    fn value(&self, rest: &Rest) -> f64 {
        let duals = self.master.duals();
        let rows = self.core.items.len();
        let items = rest.demands.iter().zip(duals);
        let worth: f64 = items.map(|(&demand, dual)| demand as f64 * dual).sum();
        let sticks = self.limited.iter().zip(&duals[rows..]);
        let price = sticks.map(|(&kind, dual)| rest.counts[kind] as f64 * dual);
        (worth - price.sum::<f64>()) * self.dearest
    }

    /// Looks for fills that improve the mix; first at worths drawn towards those of the best
    /// bound, which keeps the worths from leaping about, then at the program's own.
    fn price(
        &mut self,
        rest: &Rest,
        pricer: &mut Pricer<'_>,
        reached: &mut Reached,
        pace: &mut Pace<'_>,
    ) -> Option<bool> {
        let duals: Vec<f64> = self.master.duals()[..self.core.items.len()]
            .iter()
            .map(|dual| dual.max(0.0))
            .collect();
        for pull in [0.7, 0.3, 0.0] {
            let mixed: Vec<f64> = duals
                .iter()
                .zip(&self.center)
                .map(|(dual, center)| pull * center + (1.0 - pull) * dual)
                .collect();
            let worth: Vec<u64> = mixed
                .iter()
                .map(|worth| ((worth * UNIT) as u64).min(MOST_WORTH))
                .collect();
            let answers = pricer.price(&worth, &rest.counts, pace)?;
            let most: Vec<u64> = answers.iter().map(|priced| priced.most).collect();
            let need = need(&worth, &rest.demands);
            let fine = in_fractions(self.core, &rest.counts, need, &most).unwrap_or(u128::MAX);
            reached.last.clone_from(&worth);
            if fine > reached.fine {
                reached.fine = fine;
                reached.bound = whole(fine);
                reached.worth = worth;
                reached.most = most;
                self.center = mixed;
            }
            if self.take(rest, &answers) {
                self.take_beside(rest, &reached.last, answers, pace)?;
                return Some(true);
            }
        }
        Some(false)
    }

    /// More fills at the same worths, of what the ones just found leave: they serve the other
    /// items, so that the mix needs fewer rounds.
    fn take_beside(
        &mut self,
        rest: &Rest,
        worth: &[u64],
        mut answers: Vec<Priced>,
        pace: &mut Pace<'_>,
    ) -> Option<()> {
        let mut left = rest.clone();
        for _ in 0..BESIDE {
            let gain = |kind: usize| {
                let parts = answers[kind].parts.clone();
                self.gain(&Fill { kind, parts })
            };
            let best = (0..answers.len()).max_by(|&a, &b| gain(a).total_cmp(&gain(b)))?;
            for &(item, times) in &answers[best].parts {
                left.demands[item] = left.demands[item].saturating_sub(times);
            }
            answers = Pricer::new(self.core, &left.demands).price(worth, &rest.counts, pace)?;
            if !self.take(rest, &answers) {
                break;
            }
        }
        Some(())
    }

    /// Adds the fills that improve the mix at the program's own worths.
    fn take(&mut self, rest: &Rest, answers: &[Priced]) -> bool {
        let mut added = false;
        for (kind, priced) in answers.iter().enumerate() {
            if priced.parts.is_empty() {
                continue;
            }
            let fill = Fill {
                kind,
                parts: priced.parts.clone(),
            };
            if self.gain(&fill) > ENOUGH {
                added |= self.add(&self.filled_up(rest, fill));
            }
        }
        added
    }

    /// What one stick of this fill would save.
    fn gain(&self, fill: &Fill) -> f64 {
        let duals = self.master.duals();
        let mut worth: f64 = fill
            .parts
            .iter()
            .map(|&(item, times)| duals[item] * times as f64)
            .sum();
        if let Ok(at) = self.limited.binary_search(&fill.kind) {
            worth -= duals[self.core.items.len() + at];
        }
        worth - self.core.kinds[fill.kind].cost as f64 / self.dearest
    }

    /// The fill with more of what fits, longest first.
    fn filled_up(&self, rest: &Rest, mut fill: Fill) -> Fill {
        if self.core.kinds[fill.kind].is_clear() {
            for item in 0..self.core.items.len() {
                if rest.demands[item] > 0 {
                    super::pricing::grow(
                        self.core,
                        fill.kind,
                        &mut fill.parts,
                        item,
                        rest.demands[item],
                    );
                }
            }
        }
        fill
    }
}
