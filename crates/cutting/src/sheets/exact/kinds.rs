//! Stock as the exact search sees it: sheets of one size and cost are one kind.

use super::group::Group;
use super::reach::{Fits, Reach};
use crate::sheets::{Reduced, Stock};

/// Sheets of one size and cost.
#[derive(Clone, Debug)]
pub(super) struct Kind {
    pub(super) size: (u32, u32),
    pub(super) cost: u64,
    /// How many there are; `None`: as many as can be needed.
    pub(super) count: Option<u64>,
    /// Index of the stock, and how many of it.
    pub(super) members: Vec<(usize, u64)>,
    /// Per part: bits of the parts that can share a sheet with it.
    pub(super) pairs: Vec<Pairs>,
}

/// A bit for every part.
pub(super) type Pairs = [u64; 4];

impl Kind {
    /// Finds out which parts can share a sheet.
    pub(super) fn pair(&mut self, reduced: &Reduced, reach: &mut Reach) {
        let parts = reduced.parts.len();
        self.pairs = vec![[0; 4]; parts];
        for one in 0..parts {
            for other in one..parts {
                let pair = Group::default()
                    .with(one)
                    .and_then(|group| group.with(other));
                let fits = pair.is_none_or(|pair| reach.fits(pair, self.size) != Fits::No);
                self.pairs[one][other / 64] |= u64::from(fits) << (other % 64);
                self.pairs[other][one / 64] |= u64::from(fits) << (one % 64);
            }
        }
    }

    pub(super) fn area(&self) -> u64 {
        u64::from(self.size.0) * u64::from(self.size.1)
    }
}

/// A group out of a sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct Pattern {
    pub(super) kind: usize,
    pub(super) group: Group,
    /// What the sheet costs beyond what its parts are worth, scaled.
    pub(super) over: u64,
}

/// The kinds of stock for so many parts, the cheap ones first.
pub(super) fn kinds(reduced: &Reduced, copies: u64) -> Vec<Kind> {
    let mut kinds: Vec<Kind> = Vec::new();
    let mut order: Vec<usize> = (0..reduced.stock.len()).collect();
    let rank = |stock: &Stock| (stock.cost, stock.width, stock.height);
    order.sort_by_key(|&number| rank(&reduced.stock[number]));
    for number in order {
        let stock = &reduced.stock[number];
        let size = (stock.width, stock.height);
        match kinds.last_mut() {
            Some(kind) if kind.size == size && kind.cost == stock.cost => {
                kind.members.push((number, stock.count));
                kind.count = kind.count.map(|count| count.saturating_add(stock.count));
            }
            _ => kinds.push(Kind {
                size,
                cost: stock.cost,
                count: Some(stock.count),
                members: vec![(number, stock.count)],
                pairs: Vec::new(),
            }),
        }
    }
    for kind in &mut kinds {
        kind.count = kind.count.filter(|&count| count < copies);
    }
    kinds
}
