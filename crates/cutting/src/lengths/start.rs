//! A first plan at once: one stick after the other, each used as often as the demands allow.

use super::core::{Core, Draft, ENDLESS, Fill};
use super::pricing::grow;
use crate::pace::Pace;

/// What is still wanted, and what is still held.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Rest {
    pub(super) demands: Vec<u64>,
    pub(super) counts: Vec<u64>,
}

impl Rest {
    pub(super) fn new(core: &Core) -> Self {
        Self {
            demands: core.demands(),
            counts: core.counts(),
        }
    }

    pub(super) fn is_done(&self) -> bool {
        self.demands.iter().all(|&demand| demand == 0)
    }

    /// How often a fill can be used before one of its demands runs short.
    pub(super) fn copies(&self, fill: &Fill) -> u64 {
        let each = |&(item, times): &(usize, u64)| self.demands[item] / times;
        let most = fill.parts.iter().map(each).min().unwrap_or(0);
        most.min(self.counts[fill.kind])
    }

    /// Takes off what the copies hold; demands do not go below 0.
    pub(super) fn take(&mut self, fill: &Fill, copies: u64) {
        for &(item, times) in &fill.parts {
            let held = times.saturating_mul(copies);
            self.demands[item] = self.demands[item].saturating_sub(held);
        }
        let count = &mut self.counts[fill.kind];
        if *count != ENDLESS {
            *count -= copies;
        }
    }

    /// The fill without what is no longer wanted; on a flawed stick as it is.
    pub(super) fn trimmed(&self, core: &Core, fill: &Fill) -> Fill {
        let mut fill = fill.clone();
        if core.kinds[fill.kind].is_clear() {
            for part in &mut fill.parts {
                part.1 = part.1.min(self.demands[part.0]);
            }
            fill.parts.retain(|part| part.1 > 0);
        }
        fill
    }
}

/// In which order pieces are tried, and how kinds of stick are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Taste {
    /// The kind whose fill costs least for its length.
    Dense,
    /// The kind with the lowest cost that takes the longest piece.
    Cheap,
    /// The longest kind.
    Long,
}

/// Fills sticks longest piece first until nothing is wanted or nothing fits; the rest says what
/// is left.
pub(super) fn greedy(core: &Core, rest: &mut Rest, taste: Taste, pace: &mut Pace<'_>) -> Draft {
    let mut draft = Draft::default();
    loop {
        let Some(first) = rest.demands.iter().position(|&demand| demand > 0) else {
            return draft;
        };
        let mut best: Option<(Rank, Fill)> = None;
        for kind in 0..core.kinds.len() {
            if rest.counts[kind] == 0 {
                continue;
            }
            let fill = longest_first(core, rest, kind, first);
            pace.spend(u64::try_from(core.items.len() - first).unwrap_or(0));
            if fill.parts.is_empty() {
                continue;
            }
            let rank = Rank::of(core, rest, &fill, first, taste);
            if best.as_ref().is_none_or(|(least, _)| rank.better(least)) {
                best = Some((rank, fill));
            }
        }
        let Some((_, fill)) = best else {
            return draft;
        };
        let copies = rest.copies(&fill).max(1);
        rest.take(&fill, copies);
        draft.push(core, fill, copies);
    }
}

fn longest_first(core: &Core, rest: &Rest, kind: usize, first: usize) -> Fill {
    let mut parts = Vec::new();
    let mut spare = core.kinds[kind].room;
    let clear = core.kinds[kind].is_clear();
    let run = core.kinds[kind].run;
    for item in first..core.items.len() {
        let (length, demand) = (core.items[item].length, rest.demands[item]);
        if demand == 0 || length > spare || core.items[item].run.is_some_and(|own| own != run) {
            continue;
        }
        if clear {
            let times = (spare / length).min(demand);
            parts.push((item, times));
            spare -= times * length;
        } else {
            grow(core, kind, &mut parts, item, demand);
            spare = core.kinds[kind].room - core.taken(&parts);
        }
    }
    Fill { kind, parts }
}

/// How good a next stick is: less is better.
struct Rank {
    /// Without the longest piece still wanted, a stick is taken only where no other is left.
    lacks_longest: bool,
    cost: u128,
    per: u128,
    taken: u64,
}

impl Rank {
    fn of(core: &Core, rest: &Rest, fill: &Fill, first: usize, taste: Taste) -> Self {
        let kind = &core.kinds[fill.kind];
        let taken = core.taken(&fill.parts);
        let all = fill.parts.iter().map(|part| part.1).sum::<u64>();
        // A stick that takes all that is left is compared by its cost alone.
        let last = u128::from(all) == rest.demands.iter().map(|&demand| u128::from(demand)).sum();
        let per = match taste {
            _ if last => 1,
            Taste::Dense => taken,
            Taste::Cheap => 1,
            Taste::Long => kind.room,
        };
        Self {
            lacks_longest: fill.parts[0].0 != first,
            cost: u128::from(kind.cost),
            per: if taste == Taste::Long && !last {
                u128::from(kind.room) * u128::from(kind.room)
            } else {
                u128::from(per)
            },
            taken,
        }
    }

    fn better(&self, other: &Self) -> bool {
        let (own, its) = (self.cost * other.per, other.cost * self.per);
        (self.lacks_longest, own)
            .cmp(&(other.lacks_longest, its))
            .then(other.taken.cmp(&self.taken))
            .is_lt()
    }
}
