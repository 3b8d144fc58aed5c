//! Plans sheet by sheet: each filled for the most worth per cost, large parts favoured.
//!
//! Parts that end in poor sheets become dearer on the way (sequential value correction). Without a
//! favour for large parts the small ones, which go everywhere, are used up first, and the last
//! sheets hold large parts beside much waste.

// Worths are doubles until they are rounded.
#![allow(clippy::cast_precision_loss)]

use super::bounded::held;
use super::columns::{Columns, Layout};
use super::fill::Filled;
use super::rest::Rest;
use crate::Pace;

/// How much more for its area the largest part is worth than the smallest, plan after plan.
const FAVOURS: [f64; 8] = [2.0, 6.0, 20.0, 1.0, 10.0, 3.0, 4.0, 0.5];
/// How often a sheet may take longer than the pace allows before the sequence is given up.
const PATIENCE: u32 = 4;
/// Plans that are made before the first layouts are priced.
const AT_FIRST: usize = 3;

/// Plans made in this way, and the one under way when the pace ended.
#[derive(Default)]
pub(super) struct Sequence {
    made: usize,
    under_way: Option<(Rest, Vec<f64>)>,
    /// How often the pace has ended before a single sheet was filled.
    stalled: u32,
}

impl Sequence {
    /// Whether plans in this way are still to be made, after so many rounds of pricing.
    pub(super) fn is_due(&self, rounds: u32) -> bool {
        // The others are spread over the pricing.
        self.stalled <= PATIENCE
            && self.made < FAVOURS.len()
            && self.made < AT_FIRST + (rounds / 8) as usize
    }
}

impl Columns<'_> {
    /// Makes the next plan of the sequence, or goes on with it.
    pub(super) fn follow_sequence(&mut self, pace: &mut Pace<'_>) {
        let favour = FAVOURS[self.sequence.made % FAVOURS.len()];
        let under_way = self.sequence.under_way.take();
        let (mut rest, mut prices) =
            under_way.unwrap_or_else(|| (Rest::whole(self.reduced), self.by_area(favour)));
        let before = rest.parts.clone();
        let whole = self.construct(&mut rest, &mut prices, pace);
        if !whole && pace.is_over() {
            self.sequence.stalled += u32::from(rest.parts == before);
            self.sequence.under_way = Some((rest, prices));
            return;
        }
        self.sequence.made += 1;
        if whole {
            self.adopt(rest);
        }
    }

    /// Areas; with a favour, the largest part is worth so much more for its area. Roots are the
    /// same on every machine, which powers are not.
    pub(super) fn by_area(&self, favour: f64) -> Vec<f64> {
        let area = |part: &super::super::Part| f64::from(part.width) * f64::from(part.height);
        let areas = self.reduced.parts.iter().map(area);
        let largest = areas.clone().fold(1.0, f64::max);
        areas
            .map(|area| area * (1.0 + favour * (area / largest).sqrt()))
            .collect()
    }

    /// A favour by chance: small ones as often as large ones.
    pub(super) fn some_favour(&mut self) -> f64 {
        let chance = self.chance.unit();
        12.0 * chance * chance
    }

    /// Fills sheet after sheet for the most worth per cost; after each, parts in sheets that are
    /// worth little become dearer. False when the pace ends or the stock does not reach.
    pub(super) fn construct(
        &mut self,
        rest: &mut Rest,
        prices: &mut [f64],
        pace: &mut Pace<'_>,
    ) -> bool {
        while !rest.is_done() {
            let whole = self.rounded(prices);
            let worths: Vec<u64> = whole.each.iter().map(|&price| price.max(1)).collect();
            let fillings = self.fillings(&worths, rest, pace);
            if pace.is_over() {
                return false;
            }
            let Some(layout) = self.worth_most(&fillings, rest) else {
                if self.cut_alone(rest) {
                    continue;
                }
                return false;
            };
            self.correct(prices, &layout, rest);
            if rest.cut(&layout, u64::MAX) == 0 {
                return rest.is_done();
            }
        }
        true
    }

    /// Of the fillings the one that is worth the most for what its sheet costs.
    fn worth_most(&self, fillings: &[Option<Filled>], rest: &Rest) -> Option<Layout> {
        let mut best: Option<(f64, usize, &Filled)> = None;
        for (stock, &sheet) in self.sheet_of.iter().enumerate() {
            if let Some(filled) = &fillings[sheet]
                && rest.stock[stock] > 0
                && filled.worth > 0
            {
                let cost = self.reduced.stock[stock].cost as f64;
                let rate = filled.worth as f64 / (cost + 1e-9);
                if best.is_none_or(|(most, ..)| rate > most) {
                    best = Some((rate, stock, filled));
                }
            }
        }
        best.map(|(_, stock, filled)| Layout {
            stock,
            uses: filled.uses.clone(),
            block: filled.block.clone(),
        })
    }

    /// A good layout of every sheet that is left, within what is left.
    pub(super) fn fillings(
        &self,
        worths: &[u64],
        rest: &Rest,
        pace: &mut Pace<'_>,
    ) -> Vec<Option<Filled>> {
        let mut fillings = Vec::new();
        for (number, sheet) in self.sheets.iter().enumerate() {
            let left = |(stock, &of): (usize, &usize)| of == number && rest.stock[stock] > 0;
            if !self.sheet_of.iter().enumerate().any(left) {
                fillings.push(None);
                continue;
            }
            let counts = held(&sheet.relaxed, rest.parts.iter().copied());
            fillings.push(sheet.filled(worths, &counts, pace));
        }
        fillings
    }

    /// Cuts the first part that is left on the cheapest sheet that takes it alone.
    fn cut_alone(&self, rest: &mut Rest) -> bool {
        let Some(part) = rest.parts.iter().position(|&left| left > 0) else {
            return false;
        };
        let held = (0..self.sheet_of.len()).filter(|&stock| rest.stock[stock] > 0);
        let layouts = held.filter_map(|stock| self.alone(part, stock));
        let cheapest = layouts.min_by_key(|layout| self.reduced.stock[layout.stock].cost);
        cheapest.is_some_and(|layout| rest.cut(&layout, 1) > 0)
    }

    fn correct(&self, prices: &mut [f64], layout: &Layout, rest: &Rest) {
        let sheet = &self.reduced.stock[layout.stock];
        let area = |width: u32, height: u32| f64::from(width) * f64::from(height);
        let used: f64 = layout
            .uses
            .iter()
            .map(|&(part, times)| {
                let part = &self.reduced.parts[part];
                area(part.width, part.height) * times as f64
            })
            .sum();
        let poverty = area(sheet.width, sheet.height) / used.max(1.0);
        for &(part, times) in &layout.uses {
            let share = times as f64 / (rest.parts[part] as f64 + times as f64);
            prices[part] *= 1.0 + share * (poverty - 1.0).min(0.5) * 0.5;
        }
    }
}

#[cfg(test)]
mod tests;
