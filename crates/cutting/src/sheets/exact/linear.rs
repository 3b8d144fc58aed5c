//! Prices for the parts at which no sheet holds more worth than it costs.
//!
//! Σ price · wanted, less what limited sheets hold beyond their cost, is then a lower bound. The
//! prices come from the linear program over groups; the bound is reckoned in integers from prices
//! rounded down and the exact most that each kind of sheet can hold.

use std::collections::BTreeSet;

use super::group::Group;
use super::kinds::Kind;
use super::pricing::{Offer, Outcome, Pricing};
use super::reach::Reach;
use crate::Pace;
use crate::master::Master;
use crate::sheets::{bound, simplex};

/// How far the prices have got.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Progress {
    /// The bound has risen or not; more may come.
    Going,
    /// The pace has ended.
    Paused,
    /// No better prices.
    Done,
}

/// Prices, and the bound they prove.
#[derive(Clone, Debug, Default)]
pub(super) struct Prices {
    /// Per part, scaled.
    pub(super) parts: Vec<u64>,
    /// Per kind: what it holds at most beyond its cost, scaled.
    pub(super) rents: Vec<u64>,
    /// The lower bound, scaled.
    pub(super) bound: u64,
}

pub(super) struct Linear {
    master: Master,
    /// Groups in the program: of which kind of sheet, which parts.
    known: BTreeSet<(usize, Vec<(usize, u32)>)>,
    /// One unit of cost.
    pub(super) scale: u64,
    wanted: Vec<u64>,
    areas: Vec<u64>,
    /// Row of each limited kind.
    rows: Vec<Option<usize>>,
    pub(super) best: Prices,
    round: Option<Round>,
    /// The next prices are those of the program, not halfway to the best.
    plain: bool,
}

/// One set of prices being tried.
struct Round {
    prices: Vec<u64>,
    floors: Vec<u64>,
    ceilings: Vec<u64>,
    pricing: Option<Pricing>,
    added: bool,
    whole: bool,
}

/// Nodes after which a worthwhile group is taken rather than the best one looked for.
const PATIENCE: u64 = 2_000;
/// Simplex steps at one go.
const MOST_PIVOTS: usize = 5_000;
/// Groups beyond which the program takes in no more: some 30 MB.
const MOST_GROUPS: usize = 100_000;

impl Linear {
    pub(super) fn new(wanted: &[u64], areas: &[u64], kinds: &[Kind]) -> Self {
        let most = kinds.iter().map(|kind| kind.cost).max().unwrap_or(0).max(1);
        let copies: u64 = wanted.iter().sum();
        let mut sides: Vec<f64> = wanted.iter().map(|&count| float(count)).collect();
        let mut rows = Vec::new();
        for kind in kinds {
            rows.push(kind.count.map(|count| {
                sides.push(-float(count));
                sides.len() - 1
            }));
        }
        let penalty = 2.0 * float(most) * float(copies + 1);
        let scale = (1_u64 << 52) / (most * (copies + 1));
        Self {
            master: Master::new(&sides, penalty),
            known: BTreeSet::new(),
            scale: scale.clamp(1, 1 << 32),
            wanted: wanted.to_vec(),
            areas: areas.to_vec(),
            rows,
            best: Prices {
                parts: vec![0; wanted.len()],
                rents: vec![0; kinds.len()],
                bound: 0,
            },
            round: None,
            plain: true,
        }
    }

    /// What the best prices can prove at most, in whole cost; `None` while the groups known do not
    /// hold all parts.
    pub(super) fn ceiling(&self) -> Option<u64> {
        let most = (self.master.objective() - 1e-6).ceil();
        if self.master.lack() > 1e-6 || !(0.0..9.0e15).contains(&most) {
            return None;
        }
        // Not negative and below 2^53.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let whole = most as u64;
        Some(whole)
    }

    /// Takes a group out of a kind of sheet in.
    ///
    /// False when there is no room for it, or when it is there already: the program, which reckons
    /// in doubles, may go on asking for what it has.
    pub(super) fn add(&mut self, kinds: &[Kind], number: usize, group: Group) -> bool {
        let counts = group.counts();
        let full = self.known.len() >= MOST_GROUPS;
        if full || !self.known.insert((number, counts.clone())) {
            return false;
        }
        let mut entries: Vec<(usize, f64)> = Vec::new();
        for (part, count) in counts {
            entries.push((part, f64::from(count)));
        }
        entries.extend(self.rows[number].map(|row| (row, -1.0)));
        self.master.add(float(kinds[number].cost), entries);
        true
    }

    /// Begins with prices known from elsewhere, unless they say less than those held.
    pub(super) fn begin_with(&mut self, prices: &bound::Prices, kinds: &[Kind]) {
        let scaled = |price: u64, up: u128| {
            let price = u128::from(price) * u128::from(self.scale) + up;
            u64::try_from(price / u128::from(prices.unit)).unwrap_or(u64::MAX >> 8)
        };
        let parts: Vec<u64> = prices.parts.iter().map(|&price| scaled(price, 0)).collect();
        let up = u128::from(prices.unit) - 1;
        let rent = |kind: &Kind| {
            let members = kind.members.iter();
            let most = members.map(|&(stock, _)| prices.surplus[stock]).max();
            scaled(most.unwrap_or(0), up)
        };
        let rents: Vec<u64> = kinds.iter().map(rent).collect();
        let endless = |(kind, &rent): (&Kind, &u64)| kind.count.is_some() || rent == 0;
        if !kinds.iter().zip(&rents).all(endless) {
            return;
        }
        let bound = self.worth(&parts, &rents, kinds);
        if bound > self.best.bound {
            self.best = Prices {
                parts,
                rents,
                bound,
            };
        }
    }

    /// The bound that prices and rents prove, if no sheet is worth more than cost and rent.
    fn worth(&self, parts: &[u64], rents: &[u64], kinds: &[Kind]) -> u64 {
        let worth = parts.iter().zip(&self.wanted);
        let worth = worth.map(|(&price, &count)| i128::from(price) * i128::from(count));
        let rents = kinds.iter().zip(rents);
        let rents =
            rents.map(|(kind, &rent)| i128::from(rent) * i128::from(kind.count.unwrap_or(0)));
        let bound = worth.sum::<i128>() - rents.sum::<i128>();
        u64::try_from(bound.max(0)).unwrap_or(u64::MAX)
    }

    /// Parts on offer at these prices.
    pub(super) fn offers(&self, prices: &[u64]) -> Vec<Offer> {
        let each = |(part, &price): (usize, &u64)| Offer {
            part,
            price,
            area: self.areas[part],
            count: self.wanted[part],
        };
        prices.iter().enumerate().map(each).collect()
    }

    /// Tries one set of prices.
    pub(super) fn step(&mut self, kinds: &[Kind], reach: &mut Reach, pace: &mut Pace) -> Progress {
        let Some(mut round) = self.round.take().or_else(|| self.begin(kinds, pace)) else {
            return Progress::Paused;
        };
        while round.ceilings.len() < kinds.len() {
            let number = round.ceilings.len();
            let mut pricing = round.pricing.take().unwrap_or_else(|| {
                let mut offers = self.offers(&round.prices);
                offers.retain(|offer| offer.price > 0);
                Pricing::best(&kinds[number], &offers, round.floors[number], PATIENCE)
            });
            match pricing.run(reach, pace) {
                Outcome::Paused => {
                    round.pricing = Some(pricing);
                    self.round = Some(round);
                    return Progress::Paused;
                }
                Outcome::Done => {}
                Outcome::Enough | Outcome::TooMany => round.whole = false,
            }
            round.ceilings.push(pricing.ceiling());
            for &(_, group) in pricing.found().iter().rev().take(4) {
                round.added |= self.add(kinds, number, group);
            }
        }
        if round.whole {
            self.certify(kinds, &round);
        }
        let more = round.added || !self.plain;
        self.plain = !round.added || self.best.bound == 0;
        if more {
            Progress::Going
        } else {
            Progress::Done
        }
    }

    /// Prices to try; `None` when the pace ends before the program is solved.
    fn begin(&mut self, kinds: &[Kind], pace: &mut Pace) -> Option<Round> {
        if !simplex::solve(&mut self.master, self.known.len(), MOST_PIVOTS, pace) && pace.is_over()
        {
            return None;
        }
        let duals = self.master.duals();
        // Halfway to the best prices so far: what is worth more there than it costs is so at the
        // prices of the program, too, and the prices swing less.
        let between = |dual: f64, best: u64| {
            let scaled = self.scaled(dual);
            if self.plain {
                scaled
            } else {
                scaled.midpoint(best)
            }
        };
        let parts = duals.iter().zip(&self.best.parts);
        let prices = parts.map(|(&dual, &best)| between(dual, best)).collect();
        let mut floors = Vec::with_capacity(kinds.len());
        for (number, kind) in kinds.iter().enumerate() {
            let rent =
                self.rows[number].map_or(0, |row| between(duals[row], self.best.rents[number]));
            let floor = kind.cost * self.scale + rent;
            // A little more, so that rounding does not find the same group again and again.
            floors.push(floor + (floor >> 26) + 1);
        }
        Some(Round {
            prices,
            floors,
            ceilings: Vec::new(),
            pricing: None,
            added: false,
            whole: true,
        })
    }

    /// A dual in whole steps of the scale.
    fn scaled(&self, dual: f64) -> u64 {
        let scaled = (dual * float(self.scale)).clamp(0.0, 9.0e15);
        // Not negative and below 2^53.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let whole = scaled as u64;
        whole
    }

    /// Reckons the bound of a round, whose ceilings hold for its prices.
    fn certify(&mut self, kinds: &[Kind], round: &Round) {
        // All prices are lowered in the worst ratio of what an unlimited sheet costs and holds
        // (Farley, "A note on bounding a class of linear programming problems, including cutting
        // stock problems", 1990).
        let (mut cost, mut held) = (1_u128, 1_u128);
        for (kind, &ceiling) in kinds.iter().zip(&round.ceilings) {
            let this = u128::from(kind.cost) * u128::from(self.scale);
            let ceiling = u128::from(ceiling);
            if kind.count.is_none() && this < ceiling && this * held < cost * ceiling {
                (cost, held) = (this, ceiling);
            }
        }
        let lowered = |price: u64, up: u128| {
            let lowered = (u128::from(price) * cost + up) / held;
            u64::try_from(lowered).unwrap_or(u64::MAX)
        };
        let parts: Vec<u64> = round
            .prices
            .iter()
            .map(|&price| lowered(price, 0))
            .collect();
        let mut rents = Vec::with_capacity(kinds.len());
        for (kind, &ceiling) in kinds.iter().zip(&round.ceilings) {
            let beyond = || lowered(ceiling, held - 1).saturating_sub(kind.cost * self.scale);
            rents.push(kind.count.map_or(0, |_| beyond()));
        }
        let bound = self.worth(&parts, &rents, kinds);
        if bound >= self.best.bound {
            self.best = Prices {
                parts,
                rents,
                bound,
            };
        }
    }
}

/// Counts and costs are far below what a double holds exactly, and only guide the search.
#[allow(clippy::cast_precision_loss)]
fn float(number: u64) -> f64 {
    number as f64
}
