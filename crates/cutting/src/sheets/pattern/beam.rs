//! Whole plans from the linear program, several at a time: a beam over which layout to fix next.
//!
//! What is spent and the program's least cost for the rest together are what a plan from here can
//! cost at best with the layouts known, so the few most promising beginnings are followed.

// The program's amounts are doubles.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

use super::columns::Columns;
use super::rest::{Rest, cost_of};
use crate::Pace;

/// A beginning of a plan.
#[derive(Clone)]
struct Begun {
    parts: Vec<u64>,
    stock: Vec<u64>,
    /// Layouts fixed, and how many sheets of each.
    taken: Vec<(usize, u64)>,
    spent: u64,
    /// The least it can come to.
    hope: f64,
    /// What the program would fix: layouts and amounts.
    amounts: Vec<(usize, f64)>,
}

/// How wide a beam is, and what plans are sought.
#[derive(Clone, Copy)]
pub(super) struct Beam {
    /// Beginnings followed.
    pub(super) width: usize,
    /// Ways on from each.
    pub(super) choices: usize,
    /// Only plans that cost less.
    pub(super) limit: u64,
}

impl Columns<'_> {
    /// Completes a plan along several beginnings; `None` when none costs less than the limit.
    pub(super) fn beam(&mut self, start: &Rest, beam: Beam, pace: &mut Pace<'_>) -> Option<Rest> {
        let mut beam = beam;
        let begun = Begun {
            parts: start.parts.clone(),
            stock: start.stock.clone(),
            taken: Vec::new(),
            spent: cost_of(self.reduced, &start.sheets),
            hope: 0.0,
            amounts: Vec::new(),
        };
        let mut begun = self.looked_into(begun, beam.limit, pace)?;
        // Most of what the program wants whole is fixed at once, some left open.
        for (column, amount) in begun.amounts.clone() {
            let open = 0.5 + self.chance.unit() * 1.5;
            let copies = (amount - open).ceil();
            if copies >= 1.0 {
                self.fix(&mut begun, column, copies as u64);
            }
        }
        let mut all = vec![self.looked_into(begun, beam.limit, pace)?];
        let mut found = None;
        while !all.is_empty() && !pace.is_over() {
            let mut next: Vec<Begun> = Vec::new();
            for begun in &all {
                for child in self.ways_on(begun, beam.choices) {
                    let known =
                        |other: &Begun| other.parts == child.parts && other.spent <= child.spent;
                    if next.iter().any(known) {
                        continue;
                    }
                    let Some(child) = self.looked_into(child, beam.limit, pace) else {
                        continue;
                    };
                    if child.parts.iter().all(|&left| left == 0) {
                        beam.limit = child.spent;
                        found = Some(child);
                    } else {
                        next.push(child);
                    }
                }
            }
            next.sort_by(|a, b| a.hope.total_cmp(&b.hope));
            next.truncate(beam.width);
            all = next;
        }
        found.map(|found| self.finished(start, &found))
    }

    /// Solves for the rest; `None` when it cannot beat the best plan.
    fn looked_into(&mut self, mut begun: Begun, limit: u64, pace: &mut Pace<'_>) -> Option<Begun> {
        for (part, &left) in begun.parts.iter().enumerate() {
            self.master.set_side(part, left as f64);
        }
        for (stock, row) in self.limit_row.iter().enumerate() {
            if let Some(row) = *row {
                self.master.set_side(row, -(begun.stock[stock] as f64));
            }
        }
        self.solve(2_000, pace);
        if begun.parts.iter().any(|&left| left > 0) {
            let rest = Rest {
                parts: begun.parts.clone(),
                stock: begun.stock.clone(),
                sheets: Vec::new(),
            };
            for _ in 0..2 {
                if !self.price_rest(&rest, pace) {
                    break;
                }
                self.solve(2_000, pace);
            }
        }
        if pace.is_over() || self.master.lack() > 1e-6 {
            return None;
        }
        begun.hope = begun.spent as f64 + self.master.objective();
        let least = self.totals.from((begun.hope - 1e-6).ceil().max(0.0) as u64);
        if least >= limit {
            return None;
        }
        begun.amounts = self.master.solution();
        begun.amounts.retain(|&(_, amount)| amount > 1e-6);
        Some(begun)
    }

    fn fix(&self, begun: &mut Begun, column: usize, copies: u64) -> bool {
        let layout = &self.pool[column];
        let copies = copies.min(begun.stock[layout.stock]);
        if copies == 0 {
            return false;
        }
        for &(part, times) in &layout.uses {
            begun.parts[part] = begun.parts[part].saturating_sub(times * copies);
        }
        if begun.stock[layout.stock] != u64::MAX {
            begun.stock[layout.stock] -= copies;
        }
        begun.spent += self.reduced.stock[layout.stock].cost * copies;
        match begun.taken.iter_mut().find(|(taken, _)| *taken == column) {
            Some((_, times)) => *times += copies,
            None => begun.taken.push((column, copies)),
        }
        true
    }

    /// Beginnings one layout further.
    fn ways_on(&mut self, begun: &Begun, choices: usize) -> Vec<Begun> {
        let mut amounts = begun.amounts.clone();
        amounts.sort_by(|a, b| b.1.total_cmp(&a.1));
        let mut ways = Vec::new();
        for (column, _) in amounts.into_iter().take(choices) {
            let mut child = begun.clone();
            if self.fix(&mut child, column, 1) {
                ways.push(child);
            }
        }
        ways
    }

    fn finished(&self, start: &Rest, begun: &Begun) -> Rest {
        let mut rest = start.clone();
        for &(column, copies) in &begun.taken {
            rest.cut_all(&self.pool[column], copies);
        }
        rest
    }
}
