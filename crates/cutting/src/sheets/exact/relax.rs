//! What covering the parts still wanted costs at least, by a linear program over the patterns.

use super::kinds::{Kind, Pattern};
use crate::Pace;
use crate::master::Master;
use crate::sheets::simplex;

/// The program, kept from one state of the search to the next.
pub(super) struct Relax {
    master: Master,
    /// Per pattern: whether the program has it.
    held: Vec<bool>,
    columns: usize,
    /// Row of each limited kind.
    rows: Vec<Option<usize>>,
    costs: Vec<u64>,
    /// One unit of cost.
    scale: u64,
    /// Right-hand sides at the start, and the price of lacking a part.
    sides: Vec<f64>,
    penalty: f64,
}

/// What is still to do in a state.
pub(super) struct State<'a> {
    pub(super) wanted: &'a [u32],
    /// Sheets left of limited kinds.
    pub(super) sheets: &'a [Option<u32>],
    /// Patterns beyond this are too dear to be used.
    pub(super) most_over: u64,
    /// Nothing is won by a bound beyond this, scaled.
    pub(super) enough: u64,
}

/// Rounds of adding patterns, patterns added in a round, and simplex steps of a round.
const MOST_ROUNDS: usize = 12;
const MOST_ADDED: usize = 12;
const MOST_PIVOTS: usize = 300;
/// Patterns in the program, after which it is begun anew.
const MOST_COLUMNS: usize = 1_000;

/// A list of patterns: each with its parts and how many.
pub(super) type Counts = [Vec<(usize, u32)>];

impl Relax {
    pub(super) fn new(wanted: &[u64], kinds: &[Kind], scale: u64, patterns: usize) -> Self {
        let mut sides: Vec<f64> = wanted.iter().map(|&count| float(count)).collect();
        let mut rows = Vec::new();
        for kind in kinds {
            rows.push(kind.count.map(|count| {
                sides.push(-float(count));
                sides.len() - 1
            }));
        }
        let costs: Vec<u64> = kinds.iter().map(|kind| kind.cost).collect();
        let most = costs.iter().max().copied().unwrap_or(0).max(1);
        let copies: u64 = wanted.iter().sum();
        let penalty = 2.0 * float(most) * float(copies + 1);
        Self {
            master: Master::new(&sides, penalty),
            sides,
            penalty,
            held: vec![false; patterns],
            columns: 0,
            rows,
            costs,
            scale,
        }
    }

    /// The same for other patterns.
    pub(super) fn renewed(&self, patterns: usize) -> Self {
        Self {
            master: Master::new(&self.sides, self.penalty),
            held: vec![false; patterns],
            columns: 0,
            rows: self.rows.clone(),
            costs: self.costs.clone(),
            scale: self.scale,
            sides: self.sides.clone(),
            penalty: self.penalty,
        }
    }

    /// A lower bound, scaled, on the cost of what is still to do.
    pub(super) fn least(
        &mut self,
        patterns: &[Pattern],
        counts: &Counts,
        state: &State,
        pace: &mut Pace<'_>,
    ) -> u64 {
        if self.columns > MOST_COLUMNS {
            *self = self.renewed(patterns.len());
        }
        for (part, &count) in state.wanted.iter().enumerate() {
            self.master.set_side(part, f64::from(count));
        }
        for (row, left) in self.rows.iter().zip(state.sheets) {
            if let (Some(row), Some(left)) = (row, left) {
                self.master.set_side(*row, -f64::from(*left));
            }
        }
        let mut best = 0;
        for _ in 0..MOST_ROUNDS {
            let solved = simplex::solve(&mut self.master, self.columns, MOST_PIVOTS, pace);
            let most = self.master.objective() * float(self.scale);
            if solved && self.master.lack() < 1e-9 && most <= float(state.enough) {
                // No prices prove more than that.
                break;
            }
            if !pace.spend(patterns.len() as u64 * 2) {
                break;
            }
            let prices = self.prices(state.wanted.len());
            let (bound, lacking) = self.certified(patterns, counts, state, &prices);
            best = best.max(bound);
            if lacking.is_empty() || best > state.enough {
                break;
            }
            for number in lacking {
                self.add(number, patterns[number].kind, &counts[number]);
            }
        }
        best
    }

    fn add(&mut self, number: usize, kind: usize, counts: &[(usize, u32)]) {
        self.held[number] = true;
        self.columns += 1;
        let mut entries: Vec<(usize, f64)> = Vec::new();
        for &(part, count) in counts {
            entries.push((part, f64::from(count)));
        }
        entries.extend(self.rows[kind].map(|row| (row, -1.0)));
        self.master.add(float(self.costs[kind]), entries);
    }

    /// Duals of the parts in whole steps of the scale.
    fn prices(&self, parts: usize) -> Vec<u64> {
        let scale = float(self.scale);
        let duals = self.master.duals()[..parts].iter();
        // Not negative and below 2^53.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let whole = |&dual: &f64| (dual * scale).clamp(0.0, 9.0e15) as u64;
        duals.map(whole).collect()
    }

    /// The bound that prices prove among the patterns, and the patterns that most hold them down.
    fn certified(
        &self,
        patterns: &[Pattern],
        counts: &Counts,
        state: &State,
        prices: &[u64],
    ) -> (u64, Vec<usize>) {
        // Worst cost for worth among endless sheets; highest worth beyond cost of others.
        let (mut cost, mut worst) = (1_u128, 1_u128);
        let mut rents = vec![0_u64; self.costs.len()];
        let mut lacking: Vec<(u64, usize)> = Vec::new();
        for (number, (pattern, counts)) in patterns.iter().zip(counts).enumerate() {
            if pattern.over > state.most_over || state.sheets[pattern.kind] == Some(0) {
                continue;
            }
            let each = |&(part, count): &(usize, u32)| {
                prices[part] * u64::from(count.min(state.wanted[part]))
            };
            let worth: u64 = counts.iter().map(each).sum();
            let own = self.costs[pattern.kind] * self.scale;
            let rent = self.rows[pattern.kind].map_or(0.0, |row| self.master.duals()[row]);
            let beyond = float(worth) - float(own) - rent.max(0.0) * float(self.scale);
            if !self.held[number] && beyond > float(own) * 1e-9 + 1.0 {
                // Below 2^63; only ranks.
                #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
                lacking.push((beyond as u64, number));
            }
            if worth <= own {
                continue;
            }
            if state.sheets[pattern.kind].is_some() {
                rents[pattern.kind] = rents[pattern.kind].max(worth - own);
            } else if u128::from(own) * worst < cost * u128::from(worth) {
                (cost, worst) = (u128::from(own), u128::from(worth));
            }
        }
        let worth = prices.iter().zip(state.wanted);
        let worth: u128 = worth
            .map(|(&price, &count)| u128::from(price) * u128::from(count))
            .sum();
        let rents = rents.iter().zip(state.sheets);
        let rents: u128 = rents
            .map(|(&rent, left)| u128::from(rent) * u128::from(left.unwrap_or(0)))
            .sum();
        // Lowering all prices in one ratio lowers worth and what limited sheets hold alike.
        let bound = worth.saturating_sub(rents) * cost / worst;
        lacking.sort_unstable_by_key(|&(beyond, number)| (std::cmp::Reverse(beyond), number));
        lacking.truncate(MOST_ADDED);
        let lacking = lacking.into_iter().map(|(_, number)| number).collect();
        (u64::try_from(bound).unwrap_or(u64::MAX), lacking)
    }
}

/// Counts and costs are far below what a double holds exactly, and only guide the search.
#[allow(clippy::cast_precision_loss)]
fn float(number: u64) -> f64 {
    number as f64
}
