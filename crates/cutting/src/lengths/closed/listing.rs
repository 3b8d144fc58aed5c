//! Every fill that holds at least so much worth.

use super::super::core::{Core, Fill, common};
use crate::pace::Pace;

/// Fills listed at most.
const MOST_FILLS: usize = 30_000;
/// Items at most, one level of the search each.
const MOST_ITEMS: usize = 1_000;
/// Steps of one listing at most.
const MOST_STEPS: u64 = 8_000_000;
/// Cells of the table of what later items can still add, at most.
const MOST_CELLS: u64 = 3_000_000;

/// All fills of all kinds with at least the worth that is asked of their kind; `None` when they
/// are too many, or a stick has flaws.
pub(in crate::lengths) fn list(
    core: &Core,
    worth: &[u64],
    least: &[u64],
    pace: &mut Pace<'_>,
) -> Option<Vec<Fill>> {
    if core.items.len() > MOST_ITEMS {
        return None;
    }
    let mut fills = Vec::new();
    for (kind, stick) in core.kinds.iter().enumerate() {
        if stick.count == 0 {
            continue;
        }
        if !stick.is_clear() {
            return None;
        }
        let within = |&item: &usize| {
            let run = core.items[item].run;
            run.is_none_or(|run| run == stick.run)
        };
        let items: Vec<usize> = (0..core.items.len()).filter(within).collect();
        let lengths = items.iter().map(|&item| core.items[item].length);
        let grain = lengths.fold(0, common).max(1);
        let capacity = stick.room / grain;
        let goods: Vec<Listed> = items
            .iter()
            .map(|&item| Listed {
                item,
                weight: core.items[item].length / grain,
                bound: core.items[item].demand,
                worth: worth[item],
            })
            .collect();
        let later = Later::new(&goods, capacity, pace)?;
        let mut listing = Listing {
            kind,
            goods: &goods,
            later,
            least: least[kind],
            parts: Vec::new(),
            fills: &mut fills,
            steps: 0,
        };
        let finished = listing.go(0, capacity, 0);
        let steps = listing.steps;
        if !pace.spend(steps) || !finished {
            return None;
        }
    }
    Some(fills)
}

struct Listed {
    item: usize,
    weight: u64,
    bound: u64,
    worth: u64,
}

struct Listing<'a> {
    kind: usize,
    goods: &'a [Listed],
    later: Later,
    least: u64,
    parts: Vec<(usize, u64)>,
    fills: &'a mut Vec<Fill>,
    steps: u64,
}

impl Listing<'_> {
    fn go(&mut self, at: usize, room: u64, worth: u64) -> bool {
        self.steps += 1;
        if self.steps > MOST_STEPS || self.fills.len() > MOST_FILLS {
            return false;
        }
        let Some(good) = self.goods.get(at) else {
            if !self.parts.is_empty() {
                self.fills.push(Fill {
                    kind: self.kind,
                    parts: self.parts.clone(),
                });
            }
            return true;
        };
        let (item, weight, each) = (good.item, good.weight, good.worth);
        for times in (0..=(room / weight).min(good.bound)).rev() {
            let (left, held) = (room - times * weight, worth + times * each);
            if held + self.later.most(self.goods, at + 1, left) < self.least {
                continue;
            }
            if times > 0 {
                self.parts.push((item, times));
            }
            let goes_on = self.go(at + 1, left, held);
            if times > 0 {
                self.parts.pop();
            }
            if !goes_on {
                return false;
            }
        }
        true
    }
}

/// The most worth that items from one on can add in a room.
enum Later {
    /// Exactly: a line of capacities per item.
    Table(Vec<u64>, usize),
    /// By the densest item that is left: worth and weight.
    Density(Vec<(u64, u64)>),
}

impl Later {
    fn new(goods: &[Listed], capacity: u64, pace: &mut Pace<'_>) -> Option<Self> {
        let lines = u64::try_from(goods.len()).ok()? + 1;
        if lines.saturating_mul(capacity + 1) > MOST_CELLS {
            let mut densest = vec![(0, 1); goods.len() + 1];
            for (at, good) in goods.iter().enumerate().rev() {
                let (worth, weight) = densest[at + 1];
                let wide = |a: u64, b: u64| u128::from(a) * u128::from(b);
                let denser = wide(good.worth, weight) > wide(worth, good.weight);
                densest[at] = if denser {
                    (good.worth, good.weight)
                } else {
                    (worth, weight)
                };
            }
            return Some(Self::Density(densest));
        }
        let cells = usize::try_from(capacity).ok()? + 1;
        let mut table = vec![0; cells * (goods.len() + 1)];
        for (at, good) in goods.iter().enumerate().rev() {
            let (head, tail) = table.split_at_mut((at + 1) * cells);
            let (line, below) = (&mut head[at * cells..], &tail[..cells]);
            line.copy_from_slice(below);
            let most = (capacity / good.weight).min(good.bound);
            pace.spend(most * capacity).then_some(())?;
            for times in 1..=most {
                let weight = usize::try_from(times * good.weight).ok()?;
                let worth = times * good.worth;
                for (entry, &under) in line[weight..].iter_mut().zip(below) {
                    *entry = (*entry).max(under + worth);
                }
            }
        }
        Some(Self::Table(table, cells))
    }

    fn most(&self, goods: &[Listed], at: usize, room: u64) -> u64 {
        match self {
            Self::Table(table, cells) => {
                let room = usize::try_from(room).unwrap_or(0);
                table[at * cells + room]
            }
            Self::Density(densest) => {
                let (worth, weight) = densest[at.min(goods.len())];
                let most = u128::from(worth) * u128::from(room) / u128::from(weight);
                u64::try_from(most).unwrap_or(u64::MAX)
            }
        }
    }
}
