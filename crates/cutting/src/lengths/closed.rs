//! The exact tail: is there a plan for at most so much?
//!
//! Once the bound is near the target, few fills can still be part of a plan that reaches it: each
//! stick that holds less worth than the bound's prices ask for uses up a part of what target and
//! bound are apart. All those fills are listed; then a search fixes one stick after the other,
//! bounding each step by a linear program over the listed fills that are left, proven in integers.
// Doubles only choose the way here.
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss
)]

mod listing;

use super::bound::{FINE, in_fractions, least_held, need};
use super::columns::side;
use super::core::{Core, Draft, Fill};
use super::start::Rest;
use crate::chance::Chance;
use crate::master::Master;
use crate::pace::Pace;
pub(super) use listing::list;

/// Worth of the dearest stick.
const UNIT: f64 = 268_435_456.0;
const MOST_WORTH: u64 = 1 << 40;

/// Pivots of one solving at most.
const PIVOTS: usize = 2_000;
/// Columns taken in at once.
const MOST_GROWTH: usize = 20;

/// What the search says.
pub(super) enum Answer {
    Found(Draft),
    /// No plan reaches the target.
    Never,
    /// The steps were over first.
    Open,
}

/// A depth-first search over the listed fills.
pub(super) struct Closed<'a> {
    core: &'a Core,
    fills: &'a [Fill],
    /// Per item: the fills that hold it.
    holders: Vec<Vec<usize>>,
    target: u64,
    master: Master,
    /// Per fill its column in the program, once it has one.
    columns: Vec<Option<usize>>,
    /// Per column its fill.
    fill_of: Vec<usize>,
    dearest: f64,
    /// Kinds with a count.
    limited: Vec<usize>,
    rest: Rest,
    paid: u64,
    chosen: Vec<usize>,
    barred: Vec<bool>,
    /// Fills barred, in order, to be let in again on the way back.
    trail: Vec<usize>,
    found: Option<Draft>,
}

impl<'a> Closed<'a> {
    /// `first` are the fills the program begins with; it takes others in as it needs them.
    pub(super) fn new(
        core: &'a Core,
        fills: &'a [Fill],
        first: impl Fn(&Fill) -> bool,
        target: u64,
    ) -> Self {
        let rest = Rest::new(core);
        let dearest = core.kinds.iter().map(|kind| kind.cost).max().unwrap_or(1);
        let dearest = dearest.max(1) as f64;
        let limited: Vec<usize> = (0..core.kinds.len())
            .filter(|&kind| core.kinds[kind].count != super::core::ENDLESS)
            .collect();
        let mut sides: Vec<f64> = rest.demands.iter().map(|&demand| demand as f64).collect();
        sides.extend(limited.iter().map(|&kind| -(rest.counts[kind] as f64)));
        let mut holders = vec![Vec::new(); core.items.len()];
        for (number, fill) in fills.iter().enumerate() {
            for &(item, _) in &fill.parts {
                holders[item].push(number);
            }
        }
        let mut closed = Self {
            core,
            fills,
            holders,
            target,
            master: Master::new(&sides, 1000.0),
            columns: vec![None; fills.len()],
            fill_of: Vec::new(),
            dearest,
            limited,
            rest,
            paid: 0,
            chosen: Vec::new(),
            barred: vec![false; fills.len()],
            trail: Vec::new(),
            found: None,
        };
        for (number, fill) in fills.iter().enumerate() {
            if first(fill) {
                closed.take_in(number);
            }
        }
        closed
    }

    /// Gives a fill its column.
    fn take_in(&mut self, number: usize) {
        let fill = &self.fills[number];
        let entry = |&(item, times): &(usize, u64)| (item, times as f64);
        let mut entries: Vec<(usize, f64)> = fill.parts.iter().map(entry).collect();
        if let Ok(at) = self.limited.binary_search(&fill.kind) {
            entries.push((self.core.items.len() + at, -1.0));
        }
        let cost = self.core.kinds[fill.kind].cost as f64 / self.dearest;
        self.columns[number] = Some(self.master.add(cost, entries));
        self.fill_of.push(number);
    }

    /// Searches until the pace is over.
    pub(super) fn run(mut self, chance: &mut Chance, pace: &mut Pace<'_>) -> Answer {
        let finished = self.go(chance, pace);
        match self.found {
            Some(draft) => Answer::Found(draft),
            None if finished => Answer::Never,
            None => Answer::Open,
        }
    }

    /// Searches below the sticks chosen so far; false when it must end unfinished.
    fn go(&mut self, chance: &mut Chance, pace: &mut Pace<'_>) -> bool {
        if self.rest.is_done() {
            self.keep();
            return true;
        }
        let work = self.fills.len() * 8 + self.core.items.len() * self.core.items.len() * 2;
        if !pace.spend(work as u64) {
            return false;
        }
        let mark = self.trail.len();
        let goes_on = match self.bounded(pace) {
            Some(open) => !open || self.branch(chance, pace),
            None => false,
        };
        self.let_in(mark);
        goes_on
    }

    fn keep(&mut self) {
        let mut draft = Draft::default();
        for &number in &self.chosen {
            draft.push(self.core, self.fills[number].clone(), 1);
        }
        self.found = Some(draft);
    }

    fn bar(&mut self, number: usize) {
        if !self.barred[number] {
            self.barred[number] = true;
            self.trail.push(number);
            if let Some(column) = self.columns[number] {
                self.master.shut(column, true);
            }
        }
    }

    fn let_in(&mut self, mark: usize) {
        while self.trail.len() > mark {
            if let Some(number) = self.trail.pop() {
                self.barred[number] = false;
                if let Some(column) = self.columns[number] {
                    self.master.shut(column, false);
                }
            }
        }
    }

    /// Bars what cannot be used here and solves the program; false when no plan below here can
    /// reach the target, `None` when the search must end.
    fn bounded(&mut self, pace: &mut Pace<'_>) -> Option<bool> {
        for number in 0..self.fills.len() {
            let fill = &self.fills[number];
            if !self.barred[number] && self.rest.copies(fill) == 0 {
                self.bar(number);
            }
        }
        for (row, &demand) in self.rest.demands.iter().enumerate() {
            self.master.set_side(row, side(row, demand));
        }
        for (at, &kind) in self.limited.iter().enumerate() {
            let side = -(self.rest.counts[kind] as f64);
            self.master.set_side(self.core.items.len() + at, side);
        }
        loop {
            self.master.solve_within(PIVOTS, pace);
            (!pace.is_over()).then_some(())?;
            let worth: Vec<u64> = self.master.duals()[..self.core.items.len()]
                .iter()
                .map(|&dual| ((dual.max(0.0) * UNIT) as u64).min(MOST_WORTH))
                .collect();
            if !self.cut_off(&worth) {
                return Some(false);
            }
            if !self.grow() {
                return Some(true);
            }
        }
    }

    /// Takes the fills into the program that improve it most; false when none does.
    fn grow(&mut self) -> bool {
        let duals = self.master.duals();
        let mut gains: Vec<(f64, usize)> = Vec::new();
        for (number, fill) in self.fills.iter().enumerate() {
            if self.barred[number] || self.columns[number].is_some() {
                continue;
            }
            let each = fill
                .parts
                .iter()
                .map(|&(item, times)| duals[item] * times as f64);
            let mut gain: f64 = each.sum();
            if let Ok(at) = self.limited.binary_search(&fill.kind) {
                gain -= duals[self.core.items.len() + at];
            }
            gain -= self.core.kinds[fill.kind].cost as f64 / self.dearest;
            if gain > 1e-7 {
                gains.push((gain, number));
            }
        }
        gains.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for &(_, number) in gains.iter().take(MOST_GROWTH) {
            self.take_in(number);
        }
        !gains.is_empty()
    }

    /// Bounds by these worths, and bars the fills that hold too little of them.
    fn cut_off(&mut self, worth: &[u64]) -> bool {
        let held = |fill: &Fill| -> u64 {
            let each = fill.parts.iter().map(|&(item, times)| worth[item] * times);
            each.sum()
        };
        let mut most = vec![0; self.core.kinds.len()];
        for (number, fill) in self.fills.iter().enumerate() {
            if !self.barred[number] {
                most[fill.kind] = most[fill.kind].max(held(fill));
            }
        }
        let need = need(worth, &self.rest.demands);
        let (counts, paid) = (&self.rest.counts, self.paid);
        let budget = self.target - paid;
        let fine = in_fractions(self.core, counts, need, &most);
        if fine.is_none_or(|fine| fine > u128::from(budget) * FINE) {
            return false;
        }
        let Some(least) = least_held(self.core, counts, need, &most, budget) else {
            return false;
        };
        for number in 0..self.fills.len() {
            let fill = &self.fills[number];
            if !self.barred[number] && held(fill) < least[fill.kind] {
                self.bar(number);
            }
        }
        true
    }

    /// Tries every fill for the item that has the least choice; false when it must end.
    fn branch(&mut self, chance: &mut Chance, pace: &mut Pace<'_>) -> bool {
        let mut share = vec![0.0; self.fills.len()];
        for (column, times) in self.master.solution() {
            share[self.fill_of[column]] = times;
        }
        let broken = |number: usize| (share[number] - f64::round(share[number])).abs() > 1e-3;
        let mut best = None;
        for (item, holders) in self.holders.iter().enumerate() {
            if self.rest.demands[item] == 0 {
                continue;
            }
            let open = holders.iter().filter(|&&number| !self.barred[number]);
            let choice = open.clone().count();
            let whole = !open.into_iter().any(|&number| broken(number));
            // An item whose fills are whole already says nothing; it waits.
            if best.is_none_or(|(least, _)| (whole, choice) < least) {
                best = Some(((whole, choice), item));
            }
        }
        let Some((_, item)) = best else {
            return true;
        };
        let open = |number: &usize| !self.barred[*number];
        let mut order: Vec<usize> = self.holders[item].iter().copied().filter(open).collect();
        order.sort_by(|&a, &b| share[b].total_cmp(&share[a]).then(a.cmp(&b)));
        if order.len() > 1 && chance.one_in(8) {
            order.swap(0, 1);
        }
        for number in order {
            if self.barred[number] {
                continue;
            }
            if !self.descend(number, chance, pace) {
                return false;
            }
            if self.found.is_some() {
                return true;
            }
            // Every plan with this fill has been seen.
            self.bar(number);
        }
        true
    }

    /// Takes one stick of a fill and searches on.
    fn descend(&mut self, number: usize, chance: &mut Chance, pace: &mut Pace<'_>) -> bool {
        let fills = self.fills;
        let fill = &fills[number];
        let cost = self.core.kinds[fill.kind].cost;
        if self.paid + cost > self.target {
            return true;
        }
        let before = self.rest.clone();
        self.rest.take(fill, 1);
        self.paid += cost;
        self.chosen.push(number);
        let goes_on = self.go(chance, pace);
        if self.found.is_none() {
            self.chosen.pop();
            self.paid -= cost;
            self.rest = before;
        }
        goes_on
    }
}
