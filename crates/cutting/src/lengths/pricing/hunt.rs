//! The knapsack by a search through combinations, for few pieces to a stick and long sticks.

use super::Good;

/// Combinations looked at before giving up.
pub(super) const MOST_STEPS: u64 = 4_000_000;

/// Different pieces on one stick at most; beyond that it gives up.
const MOST_DEEP: usize = 400;

pub(super) struct Hunt<'a> {
    goods: &'a [Good],
    capacity: u64,
    /// Per good: the densest from here on (worth, weight).
    densest: Vec<(u64, u64)>,
    /// Per good: the most worth of a single one from here on, and which.
    dearest: Vec<(u64, usize)>,
    /// Good and how often, on the way down.
    path: Vec<(usize, u64)>,
    pub(super) best: u64,
    best_path: Vec<(usize, u64)>,
    pub(super) steps: u64,
    limit: u64,
}

impl<'a> Hunt<'a> {
    pub(super) fn new(goods: &'a [Good], capacity: u64, limit: u64) -> Self {
        let count = goods.len();
        let mut densest = vec![(0, 1); count + 1];
        let mut dearest = vec![(0, count); count + 1];
        for (at, good) in goods.iter().enumerate().rev() {
            let (worth, weight) = densest[at + 1];
            let denser = wide(good.worth, weight) > wide(worth, good.weight);
            densest[at] = if denser {
                (good.worth, good.weight)
            } else {
                (worth, weight)
            };
            dearest[at] = if good.worth > dearest[at + 1].0 {
                (good.worth, at)
            } else {
                dearest[at + 1]
            };
        }
        Self {
            goods,
            capacity,
            densest,
            dearest,
            path: Vec::new(),
            best: 0,
            best_path: Vec::new(),
            steps: 0,
            limit,
        }
    }

    /// False when it gave up; the best found is kept.
    pub(super) fn run(&mut self) -> bool {
        self.go(0, self.capacity, 0);
        self.steps <= self.limit
    }

    pub(super) fn parts(&self, goods: &[Good]) -> Vec<(usize, u64)> {
        let named = |&(at, times): &(usize, u64)| (goods[at].item, times);
        self.best_path.iter().map(named).collect()
    }

    fn keep(&mut self, worth: u64, last: Option<usize>) {
        if worth > self.best {
            self.best = worth;
            self.best_path.clone_from(&self.path);
            self.best_path.extend(last.map(|at| (at, 1)));
        }
    }

    fn go(&mut self, from: usize, room: u64, worth: u64) {
        let shortest = self.goods[self.goods.len() - 1].weight;
        let first = from + self.goods[from..].partition_point(|good| good.weight > room);
        if room < 2 * shortest {
            // One more at most.
            self.steps += 1;
            let (more, at) = self.dearest[first];
            self.keep(worth + more, (more > 0).then_some(at));
            return;
        }
        self.keep(worth, None);
        // As the pieces grow shorter, more room is left: this only ever moves to the front.
        let mut reach = self.goods.len();
        for at in first..self.goods.len() {
            let (dense, per) = self.densest[at];
            // At the density of the densest that is left the best is not beaten.
            if self.best >= worth && wide(dense, room) <= wide(self.best - worth, per) {
                return;
            }
            if self.path.len() > MOST_DEEP {
                self.steps = self.limit;
            }
            self.steps += 1;
            if self.steps > self.limit {
                return;
            }
            let good = self.goods[at];
            for times in (1..=good.bound.min(room / good.weight)).rev() {
                let (left, held) = (room - times * good.weight, worth + times * good.worth);
                if times == 1 && left < 2 * shortest {
                    while reach > 0 && self.goods[reach - 1].weight <= left {
                        reach -= 1;
                    }
                    let (more, last) = self.dearest[reach.max(at + 1)];
                    if held + more > self.best {
                        self.path.push((at, 1));
                        self.keep(held + more, (more > 0).then_some(last));
                        self.path.pop();
                    }
                    continue;
                }
                self.path.push((at, times));
                if at + 1 < self.goods.len() {
                    self.go(at + 1, left, held);
                } else {
                    self.keep(held, None);
                }
                self.path.pop();
            }
        }
    }
}

fn wide(a: u64, b: u64) -> u128 {
    u128::from(a) * u128::from(b)
}
