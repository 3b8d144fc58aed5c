//! The knapsack by a table over all lengths.

use super::Good;

/// Cells looked at in one filling; also the bytes of its memory of choices.
pub(super) const MOST_EFFORT: u64 = 24_000_000;

/// Best worth for every capacity up to the largest, and the choices that lead there.
#[derive(Default)]
pub(super) struct Table {
    worth: Vec<u64>,
    next: Vec<u64>,
    /// Per batch and capacity: whether the batch was taken.
    taken: Vec<u8>,
    /// Good and how many of it are taken at once.
    batches: Vec<(usize, u64)>,
}

/// Cells that a filling looks at.
pub(super) fn effort(goods: &[Good], capacity: u64) -> u64 {
    let each = |good: &Good| {
        let most = (capacity / good.weight).min(good.bound);
        u64::from(u64::BITS - most.leading_zeros())
    };
    let batches: u64 = goods.iter().map(each).sum();
    batches.saturating_mul(capacity + 1)
}

impl Table {
    pub(super) fn fill(&mut self, goods: &[Good], capacity: u64) {
        self.batches.clear();
        for (number, good) in goods.iter().enumerate() {
            let mut left = (capacity / good.weight).min(good.bound);
            let mut batch = 1;
            while left > 0 {
                let here = batch.min(left);
                self.batches.push((number, here));
                left -= here;
                batch *= 2;
            }
        }
        let cells = usize::try_from(capacity).unwrap_or(usize::MAX - 1) + 1;
        self.worth.clear();
        self.worth.resize(cells, 0);
        self.next.clear();
        self.next.resize(cells, 0);
        self.taken.clear();
        self.taken.resize(self.batches.len() * cells, 0);
        for (batch, &(number, times)) in self.batches.iter().enumerate() {
            let weight = usize::try_from(goods[number].weight * times).unwrap_or(usize::MAX);
            let worth = goods[number].worth * times;
            let taken = &mut self.taken[batch * cells..(batch + 1) * cells];
            let (low, high) = self.next.split_at_mut(weight);
            low.copy_from_slice(&self.worth[..weight]);
            let without = &self.worth[weight..];
            let with = &self.worth[..cells - weight];
            let marks = &mut taken[weight..];
            for (((next, mark), &without), &with) in
                high.iter_mut().zip(marks).zip(without).zip(with)
            {
                let with = with + worth;
                *mark = u8::from(with > without);
                *next = with.max(without);
            }
            std::mem::swap(&mut self.worth, &mut self.next);
        }
    }

    /// The most worth within a capacity.
    pub(super) fn most(&self, capacity: u64) -> u64 {
        let at = usize::try_from(capacity).unwrap_or(usize::MAX);
        self.worth[at.min(self.worth.len() - 1)]
    }

    /// What is worth that: item and how often, items ascending.
    pub(super) fn parts(&self, goods: &[Good], capacity: u64) -> Vec<(usize, u64)> {
        let cells = self.worth.len();
        let at = usize::try_from(capacity).unwrap_or(usize::MAX);
        let mut at = at.min(cells - 1);
        let mut parts: Vec<(usize, u64)> = Vec::new();
        for (batch, &(number, times)) in self.batches.iter().enumerate().rev() {
            if self.taken[batch * cells + at] == 0 {
                continue;
            }
            let weight = goods[number].weight * times;
            at -= usize::try_from(weight).unwrap_or(at);
            match parts.last_mut() {
                Some(last) if last.0 == goods[number].item => last.1 += times,
                _ => parts.push((goods[number].item, times)),
            }
        }
        parts.reverse();
        parts
    }
}
