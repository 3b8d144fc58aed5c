//! Pieces on a stick with flaws: several clear stretches, one behind the other.

use super::core::Core;

/// Where one item of a fill lies: the start of each of its parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Spot {
    pub(super) item: usize,
    /// One for each part of the item; on a clear stick the first only, the others follow.
    pub(super) at: Vec<u64>,
}

/// Whether parts can lie on a stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Laid {
    /// They can: where each lies.
    Spots(Vec<Spot>),
    /// They cannot.
    Never,
    /// The search gave up; nobody knows.
    Open,
}

/// Steps after which the search for an arrangement gives up.
const MOST_STEPS: u32 = 20_000;

/// Parts on one flawed stick at most.
const MOST_PARTS: u64 = 1_000;

/// Lays the parts on a stick of this kind; says how many steps that took, too. The same question
/// has always the same answer.
pub(super) fn arrange(core: &Core, kind: usize, parts: &[(usize, u64)]) -> (Laid, u64) {
    let stick = &core.kinds[kind];
    if core.taken(parts) > stick.room {
        return (Laid::Never, 1);
    }
    if stick.is_clear() {
        return (in_a_row(core, stick.stretches[0], parts), 1);
    }
    let loose = |&(item, times): &(usize, u64)| {
        let each = u64::try_from(core.items[item].parts.len()).unwrap_or(u64::MAX);
        each.saturating_mul(times)
    };
    if parts.iter().map(loose).fold(0, u64::saturating_add) > MOST_PARTS {
        return (Laid::Open, 1);
    }
    among_flaws(core, &stick.stretches, parts)
}

fn among_flaws(core: &Core, stretches: &[(u64, u64)], parts: &[(usize, u64)]) -> (Laid, u64) {
    let mut loose = Vec::new();
    let mut spots = Vec::new();
    for &(item, times) in parts {
        for _ in 0..times {
            for (part, &length) in core.items[item].parts.iter().enumerate() {
                loose.push((length, spots.len(), part));
            }
            let at = vec![0; core.items[item].parts.len()];
            spots.push(Spot { item, at });
        }
    }
    loose.sort_by_key(|&(length, ..)| std::cmp::Reverse(length));
    let mut laying = Laying {
        kerf: core.kerf,
        stretches,
        loose: &loose,
        within: vec![usize::MAX; loose.len()],
        taken: vec![0; stretches.len()],
        steps: 0,
    };
    let placed = laying.place(0);
    let steps = u64::from(laying.steps);
    let Some(starts) = laying.starts().filter(|_| placed) else {
        let laid = if laying.steps > MOST_STEPS {
            Laid::Open
        } else {
            Laid::Never
        };
        return (laid, steps);
    };
    for (&(_, spot, part), start) in loose.iter().zip(starts) {
        spots[spot].at[part] = start;
    }
    (Laid::Spots(spots), steps)
}

/// One behind the other; they are known to fit.
fn in_a_row(core: &Core, stretch: (u64, u64), parts: &[(usize, u64)]) -> Laid {
    let mut at = stretch.0;
    let mut spots = Vec::new();
    for &(item, times) in parts {
        for _ in 0..times {
            spots.push(Spot { item, at: vec![at] });
            at += core.items[item].length;
        }
    }
    Laid::Spots(spots)
}

/// A search for a stretch for each loose part, longest first.
struct Laying<'a> {
    kerf: u64,
    stretches: &'a [(u64, u64)],
    loose: &'a [(u64, usize, usize)],
    within: Vec<usize>,
    taken: Vec<u64>,
    steps: u32,
}

impl Laying<'_> {
    fn place(&mut self, next: usize) -> bool {
        if self.steps > MOST_STEPS {
            return false;
        }
        self.steps += 1;
        if next == self.loose.len() {
            return self.starts().is_some();
        }
        let length = self.loose[next].0;
        // Equal parts go into stretches in ascending order: the others are the same again.
        let from = match next.checked_sub(1) {
            Some(last) if self.loose[last].0 == length => self.within[last],
            _ => 0,
        };
        for stretch in from..self.stretches.len() {
            let (start, end) = self.stretches[stretch];
            if self.taken[stretch] + length > end - start {
                continue;
            }
            self.taken[stretch] += length + self.kerf;
            self.within[next] = stretch;
            if self.place(next + 1) {
                return true;
            }
            self.taken[stretch] -= length + self.kerf;
        }
        false
    }

    /// Every part as far to the start as it goes: between two parts lies a kerf, even where a
    /// flaw narrower than the kerf is between them.
    fn starts(&self) -> Option<Vec<u64>> {
        let mut starts = vec![0; self.loose.len()];
        let mut free = 0;
        for (number, &(start, end)) in self.stretches.iter().enumerate() {
            let mut at = start.max(free);
            for (part, &(length, ..)) in self.loose.iter().enumerate() {
                if self.within[part] == number {
                    starts[part] = at;
                    if at + length > end {
                        return None;
                    }
                    at += length + self.kerf;
                    free = at;
                }
            }
        }
        Some(starts)
    }
}

#[cfg(test)]
mod tests;
