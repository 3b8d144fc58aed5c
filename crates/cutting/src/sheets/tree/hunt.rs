//! Ruin and recreate: some parts are taken out, all that are missing are put back where they lose
//! least; a result is kept when it is better than now or than some tries ago.
//!
//! The cost to beat is forbidden from the start: the sheets are fewer than the parts may need, and
//! the search strives for the least area of parts without a place. After T. Gardeyn and T. Wauters
//! ("A goal-driven ruin and recreate heuristic for the 2D variable-sized bin packing problem with
//! guillotine constraints", 2022) and E. Burke and Y. Bykov ("The late acceptance hill-climbing
//! heuristic", 2017).

use super::field::{Field, Opening};
use super::sheet::Sheet;
use super::terms::rounded;
use crate::Pace;
use crate::chance::Chance;

/// What the search strives for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Aim {
    /// To place everything within the limit.
    Place,
    /// Everything placed, the largest free rectangle.
    Gather,
    /// Most value.
    Value,
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum End {
    /// What is on the field is better than anything before.
    Found,
    /// The pace is over.
    Over,
    /// Nothing better for a long time.
    Tired,
}

/// Settings, all measured on problems of many kinds.
#[derive(Clone, Copy, Debug)]
pub(super) struct Knobs {
    /// A try is kept when it is better than what was held so many tries ago.
    pub(super) memory: usize,
    /// So many parts are taken out on average.
    pub(super) ruin: usize,
    /// One sheet in so many is overlooked for a part.
    pub(super) blink: usize,
    /// The weight of free space in one piece.
    pub(super) gather: f64,
    /// One ruin in so many takes a whole sheet.
    pub(super) whole: usize,
    /// So many tries without anything better are enough.
    pub(super) patience: u64,
    /// After so many tries missing parts come to weigh more.
    pub(super) press: u64,
}

impl Default for Knobs {
    fn default() -> Self {
        Self {
            memory: 200,
            ruin: 9,
            blink: 100,
            gather: 0.02,
            whole: 12,
            patience: 150,
            press: 2_000,
        }
    }
}

#[derive(Clone, Debug)]
pub(super) struct Hunt {
    pub(super) field: Field,
    pub(super) knobs: Knobs,
    aim: Aim,
    memory: Vec<f64>,
    at: usize,
    now: f64,
    best: f64,
    /// Tries since the best.
    since: u64,
    pub(super) tries: u64,
    /// Total value, with [`Aim::Value`].
    all: f64,
    total: u64,
    /// Best value, or best remnant, that was handed out.
    reached: u64,
    order: Vec<(f64, u32)>,
    parts: Vec<u32>,
}

impl Hunt {
    pub(super) fn new(field: Field, aim: Aim, knobs: Knobs) -> Self {
        Self {
            field,
            aim,
            memory: vec![0.0; knobs.memory],
            knobs,
            at: 0,
            now: 0.0,
            best: 0.0,
            since: 0,
            tries: 0,
            all: 1.0,
            total: 0,
            reached: 0,
            order: Vec::new(),
            parts: Vec::new(),
        }
    }

    /// What is better has less.
    fn energy(&self) -> f64 {
        let field = &self.field;
        let waste = self.knobs.gather * field.worth;
        match self.aim {
            Aim::Place => field.terms.share_of_weight(field.weight) - waste,
            Aim::Gather => {
                let largest = field.terms.share(self.largest());
                10.0 * field.terms.share_of_weight(field.weight) - largest - waste
            }
            Aim::Value => rounded(field.value) / self.all - waste,
        }
    }

    /// Looks for more value than this, of so much in all.
    pub(super) fn seek_value(&mut self, all: u64, reached: u64) {
        self.all = rounded(all.max(1));
        self.total = all;
        self.reached = reached;
        self.settle();
    }

    /// Looks for a free rectangle larger than now and than so much, at the cost of now.
    pub(super) fn seek_remnant(&mut self, cost: u64, elsewhere: u64) {
        self.field.limit = cost;
        self.reached = self.largest().max(elsewhere);
        self.settle();
    }

    fn largest(&self) -> u64 {
        self.field
            .sheets
            .iter()
            .map(Sheet::largest)
            .max()
            .unwrap_or(0)
    }

    /// Forgets the past.
    pub(super) fn settle(&mut self) {
        self.now = self.energy();
        self.best = self.now;
        self.memory.fill(self.now);
        self.since = 0;
    }

    /// Tries until something is found or the pace is over.
    pub(super) fn run(&mut self, pace: &mut Pace<'_>, chance: &mut Chance) -> End {
        while self.since < self.knobs.patience * self.knobs.memory as u64 {
            if self.aim == Aim::Place && self.tries % self.knobs.press == self.knobs.press - 1 {
                self.press();
            }
            self.field.steps = 8;
            self.field.mark();
            self.ruin(chance);
            self.recreate(chance);
            self.tries += 1;
            self.since += 1;
            let moved = self.judge();
            if !pace.spend(self.field.steps) {
                return if moved && self.found() {
                    End::Found
                } else {
                    End::Over
                };
            }
            if moved && self.found() {
                return End::Found;
            }
        }
        End::Tired
    }

    /// Parts that are left out for long come to weigh more.
    fn press(&mut self) {
        let before = self.energy();
        self.field.press();
        let risen = self.energy() - before;
        self.now += risen;
        self.best += risen;
        for old in &mut self.memory {
            *old += risen;
        }
    }

    /// True when the try is kept.
    fn judge(&mut self) -> bool {
        let energy = self.energy();
        let old = self.memory[self.at];
        let kept = energy <= self.now || energy <= old;
        if kept {
            self.now = energy;
            if energy < self.best - 1e-12 {
                self.best = energy;
                self.since = 0;
            }
        } else {
            self.field.undo();
        }
        self.memory[self.at] = old.min(self.now);
        self.at = (self.at + 1) % self.memory.len();
        kept
    }

    fn found(&mut self) -> bool {
        let reached = match self.aim {
            Aim::Place => return self.field.missing == 0,
            Aim::Gather if self.field.missing > 0 => return false,
            Aim::Gather => self.largest(),
            Aim::Value => self.total - self.field.value,
        };
        let more = reached > self.reached;
        self.reached = self.reached.max(reached);
        more
    }

    fn ruin(&mut self, chance: &mut Chance) {
        let field = &mut self.field;
        let open = field.sheets.len();
        if open == 0 {
            return;
        }
        if chance.one_in(self.knobs.whole)
            && let Some(slot) = any_open(field, chance)
            // The more parts there are on it, the less likely it is to be filled as well again.
            && chance.below(field.sheets[slot].parts as usize) < 12
        {
            field.steps += field.sheets[slot].nodes() as u64;
            field.take_away(slot, &mut self.parts);
            return;
        }
        let mut left = 1 + chance.below(2 * self.knobs.ruin - 1);
        let sheets = 1 + chance.below(3);
        for turn in 0..sheets {
            let Some(slot) = any_open(field, chance) else {
                return;
            };
            let mut share = if turn + 1 == sheets {
                left
            } else {
                left.div_ceil(sheets - turn)
            };
            left -= share;
            field.steps += 2 * field.sheets[slot].nodes() as u64;
            while share > 0 && field.sheets[slot].parts > 0 {
                let sheet = &field.sheets[slot];
                let node = sheet.any_node(chance.below(sheet.nodes()));
                field.take_out(slot, node, &mut self.parts);
                share = share.saturating_sub(self.parts.len());
            }
            field.level(slot);
            if left == 0 {
                return;
            }
        }
    }

    /// Puts back what is missing, one kind after the other.
    fn recreate(&mut self, chance: &mut Chance) {
        let opening = match chance.below(8) {
            0..=3 => Opening::Reaching,
            4 => Opening::Cheap,
            _ => Opening::Any,
        };
        let way = chance.below(8);
        self.order.clear();
        for &kind in &self.field.kinds {
            if self.field.left[kind as usize] == 0 {
                continue;
            }
            let (area, width, height, value) = self.field.measures(kind);
            let (area, value) = (rounded(area), rounded(value));
            let noise = 1.0 + 0.2 * chance.unit();
            let key = if self.aim == Aim::Value {
                match way {
                    0..=2 => value / area,
                    3..=4 => value,
                    5 => area,
                    _ => chance.unit(),
                }
            } else {
                match way {
                    0..=2 => area,
                    3 => f64::from(width),
                    4 => f64::from(height),
                    5 => f64::from(width.max(height)),
                    6 => f64::from(width.min(height)),
                    _ => chance.unit(),
                }
            };
            self.order.push((-key * noise, kind));
        }
        self.order
            .sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        for at in 0..self.order.len() {
            let kind = self.order[at].1;
            while self.field.left[kind as usize] > 0 {
                if !self.field.put(kind, opening, self.knobs.blink, chance) {
                    break;
                }
            }
        }
    }

    /// Takes sheets away until the cost keeps the limit.
    pub(super) fn tighten(&mut self, limit: u64, chance: &mut Chance) {
        let field = &mut self.field;
        field.limit = limit;
        field.mark();
        while field.cost > limit {
            let mut least: Option<(f64, usize)> = None;
            for (slot, sheet) in field.sheets.iter().enumerate() {
                if !sheet.open || field.cost_of(sheet.stock) == 0 {
                    continue;
                }
                let full = field.terms.share(sheet.used) / rounded(field.cost_of(sheet.stock));
                let full = full * (0.7 + 0.6 * chance.unit());
                if least.is_none_or(|(least, _)| full < least) {
                    least = Some((full, slot));
                }
            }
            let Some((_, slot)) = least else {
                break;
            };
            field.take_away(slot, &mut self.parts);
        }
        self.field.relax();
        self.settle();
    }
}

fn any_open(field: &Field, chance: &mut Chance) -> Option<usize> {
    let count = field.sheets.len();
    let lot = chance.below(count);
    (0..count)
        .map(|step| (lot + step) % count)
        .find(|&slot| field.sheets[slot].open)
}
