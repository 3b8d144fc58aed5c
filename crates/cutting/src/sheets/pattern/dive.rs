//! Whole plans from the linear program: fix some layouts, solve for the rest, and so on.

// The program's amounts are doubles.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

use super::super::{Draft, Stock};
use super::beam::Beam;
use super::bounded::held;
use super::columns::{Columns, Finish, Layout};
use super::fill::{Filled, fill};
use super::rest::{Rest, cost_of};
use super::shape::block_uses;
use crate::Pace;

/// Rounds of pricing each time some layouts have been fixed.
const REPRICED: usize = 3;

impl Columns<'_> {
    /// A plan without the program, sheet by sheet for the most area.
    pub(super) fn first_plan(&mut self, pace: &mut Pace<'_>) {
        let prices = self.by_area(1.0);
        let mut rest = Rest::whole(self.reduced);
        if self.construct(&mut rest, prices, pace) {
            self.adopt(rest);
        }
    }

    fn by_area(&self, power: f64) -> Vec<f64> {
        let area = |part: &super::super::Part| f64::from(part.width) * f64::from(part.height);
        self.reduced
            .parts
            .iter()
            .map(|part| area(part).powf(power))
            .collect()
    }

    /// A plan made here, whose layouts join the pool.
    fn adopt(&mut self, rest: Rest) {
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
            let prices = self.by_area(1.0);
            let prices = prices
                .into_iter()
                .map(|price| price * (1.0 + 0.2 * self.chance.unit()));
            let prices = prices.collect();
            let whole = self.construct(&mut rest, prices, pace);
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
            return self.by_area(1.0);
        }
        let areas = self.by_area(1.0);
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
            self.reset_sides();
        }
        if pace.is_over() && self.best.is_some() {
            return;
        }
        let limit = self.best.as_ref().map_or(u64::MAX, |(cost, _)| *cost);
        let mut handed = finish.and_then(|finish| self.hand_over(&rest, finish, pace));
        let spread = 1.0 + 0.1 * self.chance.unit();
        let mut prices = if number.is_multiple_of(2) {
            self.dual_prices()
        } else {
            self.by_area(spread)
        };
        if number > 0 {
            for price in &mut prices {
                *price *= 1.0 + 0.1 * self.chance.unit();
            }
        }
        if self.construct(&mut rest, prices, pace) {
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
            self.master.solve(5_000);
            for _ in 0..REPRICED {
                if !self.price_rest(rest, pace) {
                    break;
                }
                self.master.solve(5_000);
            }
            let rows = self.master.duals().len() as u64;
            pace.spend(rows * rows + self.pool.len() as u64 * 4);
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

    pub(super) fn reset_sides(&mut self) {
        let whole = Rest::whole(self.reduced);
        self.set_sides(&whole);
        self.master.solve(20_000);
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

    /// A good layout of every sheet that is left, within what is left.
    fn fillings(&self, worths: &[u64], rest: &Rest, pace: &mut Pace<'_>) -> Vec<Option<Filled>> {
        let mut fillings = Vec::new();
        for (number, sheet) in self.sheets.iter().enumerate() {
            let left = |(stock, &of): (usize, &usize)| of == number && rest.stock[stock] > 0;
            if !self.sheet_of.iter().enumerate().any(left) {
                fillings.push(None);
                continue;
            }
            let plans = sheet.quick();
            let counts = held(plans, rest.parts.iter().copied());
            let best = plans.best(worths, &counts, pace);
            fillings.push(best.and_then(|best| fill(plans, worths, &counts, best.shape, pace)));
        }
        fillings
    }

    /// Fills sheet after sheet for the most worth per cost; after each, parts in sheets that are
    /// worth little become dearer. False when the pace ends or the stock does not reach.
    pub(super) fn construct(
        &mut self,
        rest: &mut Rest,
        mut prices: Vec<f64>,
        pace: &mut Pace<'_>,
    ) -> bool {
        while !rest.is_done() {
            let whole = self.rounded(&prices);
            let worths: Vec<u64> = whole.each.iter().map(|&price| price.max(1)).collect();
            let fillings = self.fillings(&worths, rest, pace);
            let mut best: Option<(f64, usize)> = None;
            for (stock, &sheet) in self.sheet_of.iter().enumerate() {
                if rest.stock[stock] == 0 {
                    continue;
                }
                if let Some(filled) = &fillings[sheet]
                    && filled.worth > 0
                {
                    let cost = self.reduced.stock[stock].cost as f64;
                    let rate = filled.worth as f64 / (cost + 1e-9);
                    if best.is_none_or(|(most, _)| rate > most) {
                        best = Some((rate, stock));
                    }
                }
            }
            let Some((_, stock)) = best else {
                if self.cut_alone(rest) {
                    continue;
                }
                return false;
            };
            let Some(filled) = &fillings[self.sheet_of[stock]] else {
                return false;
            };
            let layout = Layout {
                stock,
                uses: filled.uses.clone(),
                block: filled.block.clone(),
            };
            self.correct(&mut prices, &layout, rest);
            if rest.cut(&layout, u64::MAX) == 0 || pace.is_over() {
                return rest.is_done();
            }
        }
        true
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

fn renumber(block: &mut super::super::Block, part_of: &[usize]) {
    use super::super::Kind;
    match &mut block.kind {
        Kind::Part { part, .. } => *part = part_of[*part],
        Kind::Free => {}
        Kind::Split { blocks, .. } => {
            for inner in blocks {
                renumber(inner, part_of);
            }
        }
    }
}
