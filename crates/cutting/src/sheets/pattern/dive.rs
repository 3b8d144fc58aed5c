//! Whole plans from the linear program: fix some layouts, solve for the rest, and so on.

// The program's amounts are doubles.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

use super::super::{Draft, Stock};
use super::beam::Beam;
use super::columns::{Columns, Finish, Layout};
use super::grown::renumber;
use super::rest::{Rest, cost_of};
use super::shape::block_uses;
use crate::Pace;

/// Rounds of pricing each time some layouts have been fixed.
const REPRICED: usize = 3;

impl Columns<'_> {
    /// A plan without the program, sheet by sheet for the most area.
    pub(super) fn first_plan(&mut self, pace: &mut Pace<'_>) {
        let mut prices = self.by_area(0.0);
        let mut rest = Rest::whole(self.reduced);
        if self.construct(&mut rest, &mut prices, pace) {
            self.adopt(rest);
        }
    }

    /// A plan made here, whose layouts join the pool.
    pub(super) fn adopt(&mut self, rest: Rest) {
        let draft = rest.draft();
        for sheet in &draft.sheets {
            self.add(Layout {
                stock: sheet.stock,
                uses: block_uses(&sheet.block),
                block: sheet.block.clone(),
            });
        }
        self.found(draft);
    }

    /// Takes some sheets out of the plan and plans their parts anew; a plan no dearer is walked on.
    pub(super) fn repack(&mut self, pace: &mut Pace<'_>) {
        let Some((cost, draft)) = self.walk.take().or_else(|| self.best.clone()) else {
            return;
        };
        let mut rest = self.some_taken_out(&draft);
        let best = self.best.as_ref().map_or(u64::MAX, |(best, _)| *best);
        let least = self
            .reduced
            .stock
            .iter()
            .map(|stock| stock.cost)
            .filter(|&cost| cost > 0)
            .min();
        let leeway = (least.unwrap_or(0) as f64 * 0.3 * self.chance.unit()) as u64;
        let limit = cost.max(best.saturating_add(leeway)).saturating_add(1);
        let again = if self.has_program() {
            let beam = Beam {
                width: 1 + self.chance.below(3),
                choices: 4,
                limit,
            };
            self.beam(&rest, beam, pace)
        } else {
            let favour = self.some_favour();
            let mut prices = self.by_area(favour);
            for price in &mut prices {
                *price *= 1.0 + 0.2 * self.chance.unit();
            }
            let whole = self.construct(&mut rest, &mut prices, pace);
            whole.then_some(rest)
        };
        self.walk = Some((cost, draft));
        if let Some(again) = again {
            let found = cost_of(self.reduced, &again.sheets);
            if found < best {
                self.walk = None;
                self.adopt(again);
            } else if found < limit {
                self.walk = Some((found, again.draft()));
            }
        }
    }

    /// The plan without some of its sheets, drawn by chance.
    fn some_taken_out(&mut self, draft: &Draft) -> Rest {
        let mut rest = Rest::whole(self.reduced);
        let total: u64 = draft.sheets.iter().map(|sheet| sheet.copies).sum();
        let most = usize::try_from(total).unwrap_or(usize::MAX).min(14);
        let wanted = 2 + self.chance.below(most.max(2) - 1);
        let mut kept: Vec<u64> = draft.sheets.iter().map(|sheet| sheet.copies).collect();
        let mut order: Vec<usize> = (0..draft.sheets.len()).collect();
        self.chance.shuffle(&mut order);
        let mut taken = 0;
        for at in order {
            while kept[at] > 0 && taken < wanted {
                kept[at] -= 1;
                taken += 1;
                if self.chance.one_in(3) {
                    break;
                }
            }
        }
        for (sheet, &copies) in draft.sheets.iter().zip(&kept) {
            for (part, times) in block_uses(&sheet.block) {
                rest.parts[part] -= times * copies;
            }
            if copies > 0 {
                rest.take(sheet.stock, copies, sheet.block.clone());
            }
        }
        rest
    }

    /// A whole plan by a beam, when it is better than the best.
    pub(super) fn beam_down(&mut self, width: usize, pace: &mut Pace<'_>) {
        let beam = Beam {
            width,
            choices: 6,
            limit: self.best.as_ref().map_or(u64::MAX, |(cost, _)| *cost),
        };
        let whole = Rest::whole(self.reduced);
        if let Some(rest) = self.beam(&whole, beam, pace) {
            self.adopt(rest);
        }
    }

    /// Duals of the program, none of them nothing.
    fn dual_prices(&self) -> Vec<f64> {
        if !self.has_program() {
            return self.by_area(0.0);
        }
        let areas = self.by_area(0.0);
        let duals = self.master.duals().iter().zip(areas);
        duals.map(|(dual, area)| dual.max(area * 1e-6)).collect()
    }

    /// One plan; the first follows the program closely, later ones stray.
    pub(super) fn dive(
        &mut self,
        number: u32,
        pace: &mut Pace<'_>,
        finish: Option<&mut Finish<'_>>,
    ) {
        let mut rest = Rest::whole(self.reduced);
        let stray = if number == 0 {
            0.0
        } else {
            0.15 * f64::from(number % 4 + 1)
        };
        if self.has_program() {
            self.descend(&mut rest, stray, pace);
            self.reset_sides(pace);
        }
        if pace.is_over() && self.best.is_some() {
            return;
        }
        let limit = self.best.as_ref().map_or(u64::MAX, |(cost, _)| *cost);
        let mut handed = finish.and_then(|finish| self.hand_over(&rest, finish, pace));
        let favour = self.some_favour();
        let mut prices = if number.is_multiple_of(2) {
            self.dual_prices()
        } else {
            self.by_area(favour)
        };
        if number > 0 {
            for price in &mut prices {
                *price *= 1.0 + 0.1 * self.chance.unit();
            }
        }
        if self.construct(&mut rest, &mut prices, pace) {
            if let Some(other) = handed.take()
                && self.reduced.cost(&other) < cost_of(self.reduced, &rest.sheets).min(limit)
            {
                self.found(other);
                return;
            }
            self.adopt(rest);
        } else if let Some(other) = handed {
            self.found(other);
        }
    }

    /// Fixes layouts by the program until little is left.
    fn descend(&mut self, rest: &mut Rest, stray: f64, pace: &mut Pace<'_>) {
        let limit = self
            .best
            .as_ref()
            .map_or(f64::INFINITY, |(cost, _)| *cost as f64 * 1.1);
        let mut spent = 0.0;
        while !rest.is_done() {
            self.set_sides(rest);
            self.solve(5_000, pace);
            for _ in 0..REPRICED {
                if !self.price_rest(rest, pace) {
                    break;
                }
                self.solve(5_000, pace);
            }
            if pace.is_over() || self.master.lack() > 1e-6 {
                return;
            }
            if spent + self.master.objective() > limit + 1e-6 {
                return;
            }
            let mut amounts = self.master.solution();
            amounts.retain(|&(column, _)| self.useful(column, rest));
            let whole: Vec<(usize, f64)> = amounts
                .iter()
                .copied()
                .filter(|&(_, amount)| amount > 1.0 - 1e-6)
                .collect();
            let mut cut = 0;
            for &(column, amount) in &whole {
                let copies = rest.cut(&self.pool[column], (amount + 1e-6).floor() as u64);
                spent += self.reduced.stock[self.pool[column].stock].cost as f64 * copies as f64;
                cut += copies;
            }
            if cut > 0 {
                continue;
            }
            let Some(column) = self.liked(amounts, stray) else {
                return;
            };
            if rest.cut(&self.pool[column], 1) == 0 {
                return;
            }
            spent += self.reduced.stock[self.pool[column].stock].cost as f64;
        }
    }

    /// The column with the largest amount, chance having its say.
    fn liked(&mut self, amounts: Vec<(usize, f64)>, stray: f64) -> Option<usize> {
        let mut best: Option<(f64, usize)> = None;
        for (column, amount) in amounts {
            let liking = amount + stray * self.chance.unit();
            if best.is_none_or(|(most, _)| liking > most) {
                best = Some((liking, column));
            }
        }
        best.map(|(_, column)| column)
    }

    fn useful(&self, column: usize, rest: &Rest) -> bool {
        let layout = &self.pool[column];
        rest.stock[layout.stock] > 0 && layout.uses.iter().any(|&(part, _)| rest.parts[part] > 0)
    }

    fn set_sides(&mut self, rest: &Rest) {
        for (part, &left) in rest.parts.iter().enumerate() {
            self.master.set_side(part, left as f64);
        }
        for (stock, row) in self.limit_row.iter().enumerate() {
            if let Some(row) = *row {
                self.master.set_side(row, -(rest.stock[stock] as f64));
            }
        }
    }

    pub(super) fn reset_sides(&mut self, pace: &mut Pace<'_>) {
        let whole = Rest::whole(self.reduced);
        self.set_sides(&whole);
        self.solve(20_000, pace);
    }

    /// Adds layouts within what is left that pay; false when there are none.
    pub(super) fn price_rest(&mut self, rest: &Rest, pace: &mut Pace<'_>) -> bool {
        let duals = self.master.duals()[..self.reduced.parts.len()].to_vec();
        let whole = self.rounded(&duals);
        let fillings = self.fillings(&whole.each, rest, pace);
        let mut added = false;
        for stock in 0..self.sheet_of.len() {
            if let Some(filled) = &fillings[self.sheet_of[stock]]
                && rest.stock[stock] > 0
                && self.pays(stock, &filled.uses)
            {
                added |= self.add(Layout {
                    stock,
                    uses: filled.uses.clone(),
                    block: filled.block.clone(),
                });
            }
        }
        added
    }

    /// Lets someone else plan what is left; answers the whole plan.
    fn hand_over(
        &self,
        rest: &Rest,
        finish: &mut Finish<'_>,
        pace: &mut Pace<'_>,
    ) -> Option<Draft> {
        if rest.is_done() {
            return None;
        }
        let mut residual = self.reduced.clone();
        residual.stock.clear();
        residual.parts.clear();
        let mut stock_of = Vec::new();
        let mut part_of = Vec::new();
        for (number, part) in self.reduced.parts.iter().enumerate() {
            if rest.parts[number] > 0 {
                part_of.push(number);
                residual.parts.push(super::super::Part {
                    count: rest.parts[number],
                    window: None,
                    ..part.clone()
                });
            }
        }
        for (number, stock) in self.reduced.stock.iter().enumerate() {
            if rest.stock[number] > 0 {
                stock_of.push(number);
                residual.stock.push(Stock {
                    count: rest.stock[number],
                    window_of: None,
                    ..stock.clone()
                });
            }
        }
        let found = finish(&residual, pace)?;
        let mut sheets = rest.sheets.clone();
        for mut sheet in found.sheets {
            sheet.stock = stock_of[sheet.stock];
            renumber(&mut sheet.block, &part_of);
            sheets.push(sheet);
        }
        Some(Draft { sheets })
    }
}
