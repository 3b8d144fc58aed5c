//! Pieces on a stick with flaws: several clear stretches, one behind the other.

use super::core::Core;

/// Where one item of a fill lies: the start of each of its parts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Spot {
    pub(super) item: usize,
    /// One for each part of the item; on a clear stick the first only, the others follow.
    pub(super) at: Vec<u64>,
}

/// Steps after which the search for an arrangement gives up.
const MOST_STEPS: u32 = 20_000;

/// Parts on one flawed stick at most.
const MOST_PARTS: usize = 1_000;

/// Lays the parts on a stick of this kind; `None` when no arrangement is found. The same
/// question has always the same answer.
pub(super) fn arrange(core: &Core, kind: usize, parts: &[(usize, u64)]) -> Option<Vec<Spot>> {
    let stick = &core.kinds[kind];
    if stick.is_clear() {
        return in_a_row(core, stick.stretches[0], parts);
    }
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
    if loose.len() > MOST_PARTS {
        return None;
    }
    loose.sort_by_key(|&(length, ..)| std::cmp::Reverse(length));
    let mut laying = Laying {
        kerf: core.kerf,
        stretches: &stick.stretches,
        loose: &loose,
        within: vec![usize::MAX; loose.len()],
        taken: vec![0; stick.stretches.len()],
        steps: 0,
    };
    if !laying.place(0) {
        return None;
    }
    let starts = laying.starts()?;
    for (&(_, spot, part), start) in loose.iter().zip(starts) {
        spots[spot].at[part] = start;
    }
    Some(spots)
}

fn in_a_row(core: &Core, stretch: (u64, u64), parts: &[(usize, u64)]) -> Option<Vec<Spot>> {
    let mut at = stretch.0;
    let mut spots = Vec::new();
    for &(item, times) in parts {
        for _ in 0..times {
            spots.push(Spot { item, at: vec![at] });
            at = at.checked_add(core.items[item].length)?;
        }
    }
    (at <= stretch.1 + core.kerf).then_some(spots)
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
        if next == self.loose.len() {
            return self.starts().is_some();
        }
        self.steps += 1;
        if self.steps > MOST_STEPS {
            return false;
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
