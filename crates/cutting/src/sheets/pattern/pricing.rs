//! Prices on parts, what layouts are worth at them, and what that proves.

// Prices are doubles until they are rounded; bounds are reckoned in integers only.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

use super::bounded::{Asked, held, within_counts};
use super::builds::{self, Site};
use super::certify::{Prices, least_cost};
use super::columns::{Columns, Layout, Sheet};
use super::fill::Filled;
use super::shape::{block_uses, lawful};
use crate::Pace;

/// The hardest pricing.
pub(super) const HARDEST: usize = 3;
/// The quickest pricing that proves a bound.
pub(super) const PROVING: usize = 1;
/// Relaxed problems solved in one pricing of one sheet.
const ROUNDS: [usize; HARDEST + 1] = [1, 4, 40, 100];
/// Layouts built in one exact pricing of one sheet.
const BUILDS: [usize; HARDEST + 1] = [0, 0, 40_000, 250_000];

impl Columns<'_> {
    /// The bound that prices by area prove.
    pub(super) fn area_bound(&mut self, pace: &mut Pace<'_>) {
        let prices: Vec<f64> = self
            .reduced
            .parts
            .iter()
            .map(|part| f64::from(part.width) * f64::from(part.height))
            .collect();
        // Scaled so that the dearest rate of any sheet is met; the proof finds the right ratio.
        let rate = self
            .reduced
            .stock
            .iter()
            .map(|stock| stock.cost as f64 / (f64::from(stock.width) * f64::from(stock.height)))
            .fold(0.0, f64::max);
        let prices: Vec<f64> = prices.iter().map(|price| price * rate).collect();
        self.certify(&prices, PROVING, pace);
    }

    /// Prices every kind of sheet, adds layouts that pay at the program's duals, proves what these
    /// prices prove. Answers how many layouts came in.
    pub(super) fn certify(&mut self, prices: &[f64], effort: usize, pace: &mut Pace<'_>) -> usize {
        let whole = self.rounded(prices);
        let per_cost = whole.num as f64 / whole.den as f64;
        let mut most: Vec<u64> = Vec::new();
        let mut fillings: Vec<Vec<Filled>> = Vec::new();
        for sheet in 0..self.sheets.len() {
            let enough = self.enough(sheet, per_cost, effort > PROVING);
            let Some((bound, filled)) = self.price(sheet, &whole.each, enough, effort, pace) else {
                return 0;
            };
            most.extend(bound);
            fillings.push(filled);
        }
        if most.len() == self.sheets.len() {
            let of_stock: Vec<u64> = self.sheet_of.iter().map(|&sheet| most[sheet]).collect();
            let proven = self
                .totals
                .from(least_cost(self.reduced, &whole, &of_stock));
            if proven > self.bound || self.centre.is_none() {
                self.bound = self.bound.max(proven);
                self.centre = Some(prices.to_vec());
            }
        }
        let mut added = 0;
        for stock in 0..self.sheet_of.len() {
            for filled in &fillings[self.sheet_of[stock]] {
                if self.pays(stock, &filled.uses) {
                    added += usize::from(self.add(Layout {
                        stock,
                        uses: filled.uses.clone(),
                        block: filled.block.clone(),
                    }));
                }
            }
        }
        added
    }

    /// What a layout of this sheet must be worth to pay at the least dear stock of its size; with
    /// a goal in view, what it must be worth to keep the goal from being proven.
    fn enough(&self, sheet: usize, per_cost: f64, for_goal: bool) -> u64 {
        let costs = (0..self.sheet_of.len())
            .filter(|&stock| self.sheet_of[stock] == sheet)
            .map(|stock| self.rent(stock));
        let mut least = costs.fold(f64::INFINITY, f64::min) * per_cost;
        let objective = self.master.objective();
        let below = self.totals.below(self.goal()).unwrap_or(0) as f64;
        if for_goal && below > 0.0 && objective > below {
            least *= 1.0 + (objective / below - 1.0) * 0.999;
        }
        least.floor().max(0.0) as u64
    }

    /// Cost of a stock and the dual of its limit.
    pub(super) fn rent(&self, stock: usize) -> f64 {
        let dual = self.limit_row[stock].map_or(0.0, |row| {
            self.master.duals().get(row).copied().unwrap_or(0.0)
        });
        self.reduced.stock[stock].cost as f64 + dual.max(0.0)
    }

    /// Whether a layout improves the program.
    pub(super) fn pays(&self, stock: usize, uses: &[(usize, u64)]) -> bool {
        let duals = self.master.duals();
        if duals.is_empty() {
            return false;
        }
        let worth: f64 = uses
            .iter()
            .map(|&(part, times)| duals[part] * times as f64)
            .sum();
        let rent = self.rent(stock);
        worth > rent + 1e-7 * (1.0 + rent)
    }

    /// Prices as whole numbers, as fine as narrow tables allow.
    pub(super) fn rounded(&self, prices: &[f64]) -> Prices {
        let largest = self
            .reduced
            .stock
            .iter()
            .map(|stock| f64::from(stock.width) * f64::from(stock.height))
            .fold(1.0, f64::max);
        let densest = self
            .reduced
            .parts
            .iter()
            .zip(prices)
            .map(|(part, price)| price / (f64::from(part.width) * f64::from(part.height)))
            .fold(0.0, f64::max);
        let dearest = self
            .reduced
            .stock
            .iter()
            .map(|stock| stock.cost)
            .max()
            .unwrap_or(1)
            .max(1) as f64;
        let fits = f64::from(u32::MAX / 4) / (largest * densest).max(1e-30);
        let needed = f64::from(1_u32 << 22) / dearest;
        let scale = power_below(fits.max(needed)).clamp(-60, 60);
        let power = |exponent: i32| 1_u128 << exponent.max(0);
        // A power of two: no bit of a price is lost.
        let factor = power(scale) as f64 / power(-scale) as f64;
        Prices {
            each: prices
                .iter()
                .map(|price| (price.max(0.0) * factor).floor() as u64)
                .collect(),
            num: power(scale),
            den: power(-scale),
        }
    }

    /// The most a layout of one sheet is worth, and good layouts within the demands.
    fn price(
        &self,
        sheet: usize,
        worths: &[u64],
        enough: u64,
        effort: usize,
        pace: &mut Pace<'_>,
    ) -> Option<(Option<u64>, Vec<Filled>)> {
        let sheet = &self.sheets[sheet];
        let demands = self.reduced.parts.iter().map(|part| part.count);
        let counts = held(&sheet.relaxed, demands);
        if effort < PROVING {
            let filled = sheet.filled(worths, &counts, pace);
            return Some((None, filled.into_iter().collect()));
        }
        let asked = Asked {
            worths,
            counts: &counts,
            enough,
            rounds: ROUNDS[effort],
        };
        let mut known = within_counts(&sheet.relaxed, sheet.tables(), &asked, pace)?;
        if sheet.tables().is_none() {
            known.best = sheet.filled(worths, &counts, pace);
        }
        let reached = known.best.as_ref().map_or(0, |best| best.worth);
        if BUILDS[effort] > 0
            && known.bound > enough
            && reached <= enough
            && Self::may_search(sheet)
        {
            let site = Site {
                xs: &sheet.relaxed.xs,
                ys: &sheet.relaxed.ys,
                parts: &sheet.relaxed.lying(worths, &counts),
                penalties: &known.penalties,
                counts: &counts,
                floor: enough.max(reached),
                most: BUILDS[effort].min(builds::most_kept(counts.len())),
            };
            if let Some(outcome) = site.search(pace) {
                known.bound = known.bound.min(outcome.bound);
                let (width, height) = sheet.relaxed.size();
                for (worth, shape) in outcome.found {
                    if let Some(block) = shape.dressed(width, height, self.reduced)
                        && lawful(&block, self.reduced)
                    {
                        let uses = block_uses(&block);
                        known.more.push(Filled { block, uses, worth });
                    }
                }
            }
        }
        known.more.extend(known.best);
        Some((Some(known.bound), known.more))
    }

    fn may_search(sheet: &Sheet<'_>) -> bool {
        sheet.relaxed.is_fine() && sheet.relaxed.xs.len() * sheet.relaxed.ys.len() <= 40_000
    }
}

/// The largest power of two not above a number, read from the number itself: logarithms differ
/// in their last bit from one machine to the next.
fn power_below(number: f64) -> i32 {
    // geometry: of the 64 bits of a double the exponent takes 11, biased by 1023, above the 52 of
    // the fraction.
    let exponent = number.to_bits() >> 52 & 0x7ff;
    exponent as i32 - 1023
}

#[cfg(test)]
mod tests;
