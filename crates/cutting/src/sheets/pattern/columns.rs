//! The least cost for all demands, by columns: a linear program over layouts, new layouts priced
//! in one by one, and whole plans rounded from it.
//!
//! Gilmore and Gomory, "Multistage cutting stock problems of two and more dimensions", 1965.

// Prices are doubles until they are rounded; bounds are reckoned in integers only.
#![allow(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss
)]

use std::collections::{BTreeMap, BTreeSet};

use super::super::bound::Totals;
use super::super::{Block, Draft, Reduced, simplex};
use super::certify::totals;
use super::fill::{Filled, fill};
use super::grown::grown;
use super::oracle::{Oracle, Purpose};
use super::pricing::{HARDEST, PROVING};
use super::sequence::Sequence;
use super::shape::{Shape, block_uses, lawful};
use crate::Pace;
use crate::chance::Chance;
use crate::master::Master;

/// What a search by columns has reached.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Progress {
    /// No plan costs less: the best proven so far.
    pub(crate) bound: u64,
    /// A plan better than all before.
    pub(crate) draft: Option<Draft>,
    /// Nothing more is to be expected.
    pub(crate) done: bool,
}

/// Makes a plan for what is left of a problem.
pub(crate) type Finish<'f> = dyn FnMut(&Reduced, &mut Pace<'_>) -> Option<Draft> + 'f;

/// A layout that can be used any number of times.
#[derive(Clone, Debug)]
pub(super) struct Layout {
    pub(super) stock: usize,
    pub(super) uses: Vec<(usize, u64)>,
    pub(super) block: Block,
}

/// Oracles for one size of sheet.
pub(super) struct Sheet<'a> {
    pub(super) relaxed: Oracle<'a>,
    /// `None` where the relaxed one is exact.
    own: Option<Oracle<'a>>,
    /// Where the others take long.
    pub(super) quick: Option<Oracle<'a>>,
}

impl<'a> Sheet<'a> {
    fn plans(&self) -> &Oracle<'a> {
        self.own.as_ref().unwrap_or(&self.relaxed)
    }

    /// Tables for plans; none under a least strip, where they know only poor ones.
    pub(super) fn tables(&self) -> Option<&Oracle<'a>> {
        (self.relaxed.reduced.least_strip == 0).then_some(self.plans())
    }

    /// A good layout within the counts, where many answers are wanted.
    pub(super) fn filled(
        &self,
        worths: &[u64],
        counts: &[u64],
        pace: &mut Pace<'_>,
    ) -> Option<Filled> {
        if self.tables().is_none() {
            return grown(&self.relaxed, worths, counts, pace);
        }
        let plans = self.quick.as_ref().unwrap_or(self.plans());
        let best = plans.best(worths, counts, pace)?;
        fill(plans, worths, counts, best.shape, pace)
    }
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Phase {
    Start,
    Generate,
    /// Dives since the last better plan.
    Dive(u32),
}

/// A search by columns.
pub(crate) struct Columns<'a> {
    pub(super) reduced: &'a Reduced,
    /// What sheets can add up to.
    pub(super) totals: Totals,
    pub(super) sheets: Vec<Sheet<'a>>,
    /// Per stock, which of the sheets.
    pub(super) sheet_of: Vec<usize>,
    /// Per stock, its row in the program when its count binds.
    pub(super) limit_row: Vec<Option<usize>>,
    pub(super) master: Master,
    pub(super) pool: Vec<Layout>,
    /// Blocks of all layouts in the pool.
    blocks: usize,
    known: BTreeMap<(usize, Vec<(usize, u64)>), usize>,
    pub(super) chance: Chance,
    pub(super) bound: u64,
    pub(super) best: Option<(u64, Draft)>,
    better: bool,
    /// A plan as good as the best, to go on from.
    pub(super) walk: Option<(u64, Draft)>,
    phase: Phase,
    /// Plans made sheet by sheet.
    pub(super) sequence: Sequence,
    /// Rounds of pricing so far.
    rounds: u32,
    /// Prices that gave the best bound.
    pub(super) centre: Option<Vec<f64>>,
    /// How hard the next pricing tries: 0 quickly, up to [`HARDEST`].
    effort: usize,
    /// How often the pace ended a pricing without fruit.
    cut_short: u32,
}

/// Steps of one pricing of one sheet, roughly.
const PRICING: u64 = 40_000_000;
/// Steps above which plans are made with quicker answers.
const HURRY: u64 = 600_000;
/// Part types and limited sheets beyond which there is no linear program.
const ROWS: usize = 500;
/// Part types, and sizes of sheets, beyond which the other searches are left to it.
const MOST_PARTS: usize = 20_000;
const MOST_SIZES: usize = 500;
/// Layouts kept.
const POOL: usize = 12_000;
/// Blocks of all layouts kept together: some 50 MB.
const MOST_BLOCKS: usize = 1 << 20;
/// Layouts above which half are dropped between plans.
const CROWDED: usize = 2_000;
/// Pricings without fruit that the pace may end before plans are made instead.
const OFTEN: u32 = 6;
/// Dives without a better plan until nothing more is expected.
const PATIENCE: u32 = 4000;

impl<'a> Columns<'a> {
    /// Prepares the search; `reduced` has a goal of cost or count and finite demands.
    pub(crate) fn new(reduced: &'a Reduced, seed: u64) -> Self {
        let parts = reduced.parts.len();
        let many = parts > MOST_PARTS || sizes(reduced) > MOST_SIZES;
        let (sheets, sheet_of) = if many {
            (Vec::new(), Vec::new())
        } else {
            prepared(reduced)
        };
        let all = reduced
            .parts
            .iter()
            .fold(0, |sum: u64, part| sum.saturating_add(part.count));
        let mut rows = parts;
        let mut limit_row = Vec::new();
        for stock in &reduced.stock {
            let binds = stock.count < all;
            limit_row.push(binds.then_some(rows));
            rows += usize::from(binds);
        }
        let mut columns = Self {
            reduced,
            totals: totals(reduced),
            sheets,
            sheet_of,
            limit_row,
            master: Master::new(&[], 1.0),
            pool: Vec::new(),
            blocks: 0,
            known: BTreeMap::new(),
            chance: Chance::new(seed),
            bound: 0,
            best: None,
            better: false,
            walk: None,
            phase: Phase::Start,
            sequence: Sequence::default(),
            rounds: 0,
            centre: None,
            effort: PROVING,
            cut_short: 0,
        };
        if rows <= ROWS {
            columns.master = columns.fresh_master();
        }
        columns.checked(parts)
    }

    fn fresh_master(&self) -> Master {
        let parts = self.reduced.parts.iter().map(|part| part.count as f64);
        let limits = self.reduced.stock.iter().zip(&self.limit_row);
        let limits = limits
            .filter(|(_, row)| row.is_some())
            .map(|(stock, _)| -(stock.count as f64));
        let sides: Vec<f64> = parts.chain(limits).collect();
        let dearest = self
            .reduced
            .stock
            .iter()
            .map(|stock| stock.cost)
            .max()
            .unwrap_or(0);
        Master::new(&sides, (dearest + 1) as f64 * 50.0)
    }

    fn checked(mut self, parts: usize) -> Self {
        let endless = self.reduced.parts.iter().any(|part| part.count == u64::MAX);
        if parts == 0 || self.sheets.is_empty() || endless {
            self.phase = Phase::Dive(PATIENCE);
        }
        self
    }

    /// Takes over a plan found elsewhere.
    pub(crate) fn offer(&mut self, draft: &Draft) {
        for sheet in &draft.sheets {
            self.add(Layout {
                stock: sheet.stock,
                uses: block_uses(&sheet.block),
                block: sheet.block.clone(),
            });
        }
        let cost = self.reduced.cost(draft);
        if self.best.as_ref().is_none_or(|(best, _)| cost < *best) {
            self.best = Some((cost, draft.clone()));
        }
    }

    /// Takes over a bound proven elsewhere.
    pub(crate) fn offer_bound(&mut self, bound: u64) {
        self.bound = self.bound.max(bound);
    }

    /// Prices layouts until nothing more is to be gained, for the bound alone.
    pub(crate) fn bound_alone(&mut self, pace: &mut Pace<'_>) -> u64 {
        while !pace.is_over() && !matches!(self.phase, Phase::Dive(_)) {
            self.step(pace, None);
        }
        self.bound
    }

    /// Goes on for one round: some pricing, or one plan.
    pub(crate) fn step(
        &mut self,
        pace: &mut Pace<'_>,
        finish: Option<&mut Finish<'_>>,
    ) -> Progress {
        match self.phase {
            Phase::Start => {
                if self.best.is_none() {
                    self.first_plan(pace);
                }
                self.first_layouts();
                self.phase = if self.has_program() {
                    Phase::Generate
                } else {
                    Phase::Dive(0)
                };
                self.area_bound(pace);
                self.effort = self.least_effort();
            }
            Phase::Generate | Phase::Dive(_) if self.is_sequence_due(finish.is_some()) => {
                self.follow_sequence(pace);
            }
            Phase::Generate => {
                self.rounds = self.rounds.saturating_add(1);
                if self.generate(pace) {
                    self.phase = Phase::Dive(0);
                }
            }
            Phase::Dive(idle) => {
                self.rounds = self.rounds.saturating_add(1);
                if idle < PATIENCE && !self.is_proven() {
                    self.plan_anew(idle, pace, finish);
                }
                self.phase = Phase::Dive(if self.better { 0 } else { idle + 1 });
            }
        }
        let draft = if self.better {
            self.best.as_ref().map(|(_, draft)| draft.clone())
        } else {
            None
        };
        self.better = false;
        Progress {
            bound: self.bound,
            draft,
            done: self.is_proven() || matches!(self.phase, Phase::Dive(idle) if idle >= PATIENCE),
        }
    }

    /// Whether a plan is to be made sheet by sheet: not where only the bound is wanted.
    fn is_sequence_due(&self, for_plans: bool) -> bool {
        for_plans && self.sequence.is_due(self.rounds)
    }

    /// True while layouts are still being priced in, which moves neither plan nor bound for long.
    pub(crate) fn is_generating(&self) -> bool {
        matches!(self.phase, Phase::Start | Phase::Generate)
    }

    /// One plan, in one way or another.
    fn plan_anew(&mut self, idle: u32, pace: &mut Pace<'_>, finish: Option<&mut Finish<'_>>) {
        match idle % 12 {
            1 if self.has_program() => {
                self.beam_down(2 + (idle / 12).min(6) as usize, pace);
            }
            0 | 6 => self.dive(idle, pace, finish),
            _ => self.repack(pace),
        }
        if self.has_program() {
            self.reset_sides(pace);
            if self.pool.len() > CROWDED || self.blocks > MOST_BLOCKS / 2 {
                self.thin_out(pace);
            }
        }
    }

    /// Keeps the layouts that cost least beyond what they are worth.
    fn thin_out(&mut self, pace: &mut Pace<'_>) {
        let mut ranked: Vec<(f64, usize)> = (0..self.pool.len())
            .map(|column| (self.master.reduced_cost(column), column))
            .collect();
        ranked.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let mut blocks = 0;
        let mut room = |&(_, column): &(f64, usize)| {
            blocks += self.pool[column].block.count();
            blocks <= MOST_BLOCKS / 4
        };
        let best = ranked.iter().take(CROWDED / 2);
        let few = best.take_while(|one| room(one)).count();
        ranked.truncate(few);
        let mut kept: Vec<usize> = ranked.into_iter().map(|(_, column)| column).collect();
        kept.sort_unstable();
        let mut pool: Vec<Option<Layout>> = std::mem::take(&mut self.pool)
            .into_iter()
            .map(Some)
            .collect();
        self.known.clear();
        self.blocks = 0;
        self.master = self.fresh_master();
        for column in kept {
            if let Some(layout) = pool[column].take() {
                self.add(layout);
            }
        }
        self.solve(50_000, pace);
    }

    /// Solves the program from its last basis on; false when pace or pivots are not enough.
    pub(super) fn solve(&mut self, most: usize, pace: &mut Pace<'_>) -> bool {
        simplex::solve(&mut self.master, self.pool.len(), most, pace)
    }

    /// Whether there is a linear program at all.
    pub(super) fn has_program(&self) -> bool {
        !self.master.duals().is_empty()
    }

    fn is_proven(&self) -> bool {
        self.best
            .as_ref()
            .is_some_and(|(cost, _)| *cost <= self.bound)
    }

    /// A plan made here: kept when it is better.
    pub(super) fn found(&mut self, draft: Draft) {
        let cost = self.reduced.cost(&draft);
        if self.best.as_ref().is_none_or(|(best, _)| cost < *best) {
            self.best = Some((cost, draft));
            self.better = true;
        }
    }

    /// Adds a layout; false when it is known already or there is no room for it.
    pub(super) fn add(&mut self, layout: Layout) -> bool {
        let full = self.pool.len() >= POOL || self.blocks >= MOST_BLOCKS;
        if layout.uses.is_empty() || full || !self.has_program() {
            return false;
        }
        let key = (layout.stock, layout.uses.clone());
        if self.known.contains_key(&key) {
            return false;
        }
        let mut entries: Vec<(usize, f64)> = layout
            .uses
            .iter()
            .map(|&(part, times)| (part, times as f64))
            .collect();
        if let Some(row) = self.limit_row[layout.stock] {
            entries.push((row, -1.0));
        }
        let number = self
            .master
            .add(self.reduced.stock[layout.stock].cost as f64, entries);
        debug_assert_eq!(number, self.pool.len());
        self.known.insert(key, number);
        self.blocks += layout.block.count();
        self.pool.push(layout);
        true
    }

    /// For every part and sheet a layout of that part alone, so that demands can be met.
    fn first_layouts(&mut self) {
        for part in 0..self.reduced.parts.len() {
            for stock in 0..self.reduced.stock.len() {
                if let Some(layout) = self.alone(part, stock) {
                    self.add(layout);
                }
            }
        }
    }

    /// One part and nothing else on a sheet.
    pub(super) fn alone(&self, part: usize, stock: usize) -> Option<Layout> {
        let sheet = &self.reduced.stock[stock];
        let ways: &[bool] = if self.reduced.parts[part].turn {
            &[false, true]
        } else {
            &[false]
        };
        let block = ways
            .iter()
            .filter_map(|&turned| {
                let shape = Shape::Part { part, turned };
                shape.dressed(sheet.width, sheet.height, self.reduced)
            })
            .find(|block| lawful(block, self.reduced))?;
        Some(Layout {
            stock,
            uses: vec![(part, 1)],
            block,
        })
    }

    /// One round of pricing; true when nothing more is to be gained.
    fn generate(&mut self, pace: &mut Pace<'_>) -> bool {
        self.solve(20_000, pace);
        let duals = self.master.duals()[..self.reduced.parts.len()].to_vec();
        let smooth: Vec<f64> = match &self.centre {
            Some(centre) if self.effort == PROVING => duals
                .iter()
                .zip(centre)
                .map(|(dual, centre)| 0.5 * (dual + centre))
                .collect(),
            _ => duals.clone(),
        };
        let mut added = self.certify(&smooth, self.effort, pace);
        if added == 0 && smooth != duals {
            added = self.certify(&duals, PROVING, pace);
        }
        if pace.is_over() && added == 0 {
            self.cut_short += 1;
            return self.cut_short > OFTEN;
        }
        let hopeless = self.goal() <= self.bound && self.master.lack() < 1e-6;
        if added > 0 {
            self.effort = self.effort.saturating_sub(1).max(self.least_effort());
            return hopeless;
        }
        if self.effort == HARDEST || hopeless {
            return true;
        }
        self.effort += 1;
        false
    }

    fn least_effort(&self) -> usize {
        let quick = self.sheets.iter().any(|sheet| sheet.quick.is_some());
        if quick { 0 } else { PROVING }
    }

    /// The bound that the program promises once all layouts are priced in.
    pub(super) fn goal(&self) -> u64 {
        let objective = self.master.objective();
        self.totals.from((objective - 1e-6).ceil().max(0.0) as u64)
    }
}

/// How many different sizes of sheets there are.
fn sizes(reduced: &Reduced) -> usize {
    let sizes = reduced
        .stock
        .iter()
        .map(|stock| (stock.width, stock.height));
    sizes.collect::<BTreeSet<_>>().len()
}

/// Oracles per size of sheet, and per stock which of them.
fn prepared(reduced: &Reduced) -> (Vec<Sheet<'_>>, Vec<usize>) {
    let mut sheets: Vec<Sheet<'_>> = Vec::new();
    let mut sheet_of = Vec::new();
    for (number, stock) in reduced.stock.iter().enumerate() {
        let same = |sheet: &Sheet<'_>| sheet.relaxed.size() == (stock.width, stock.height);
        let at = sheets.iter().position(same).unwrap_or_else(|| {
            let relaxed = Oracle::within(reduced, number, Purpose::Bound, PRICING);
            let strips = reduced.least_strip > 0;
            let own = (!relaxed.is_exact() && !strips)
                .then(|| Oracle::within(reduced, number, Purpose::Plan, PRICING / 4));
            let plans = own.as_ref().unwrap_or(&relaxed);
            let quick = (strips || plans.effort() > HURRY).then(|| Oracle::quick(reduced, number));
            sheets.push(Sheet {
                relaxed,
                own,
                quick,
            });
            sheets.len() - 1
        });
        sheet_of.push(at);
    }
    (sheets, sheet_of)
}
