//! A few parts of one sheet, small enough to be a key.

/// The most parts one group holds.
pub(super) const MOST: usize = 15;
/// The most part types that can be told apart.
pub(super) const MOST_TYPES: usize = 254;

/// Parts of one sheet: byte by byte, from the lowest up, the numbers of the parts plus one in
/// rising order. The highest byte is left for whoever keeps groups in a table.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) struct Group(u128);

impl Group {
    pub(super) fn key(self, mark: u8) -> u128 {
        self.0 | u128::from(mark) << 120
    }

    pub(super) fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// How many parts.
    pub(super) fn len(self) -> usize {
        // At most sixteen bytes.
        16 - (self.0.leading_zeros() / 8) as usize
    }

    /// The parts, rising.
    pub(super) fn parts(self) -> impl Iterator<Item = usize> {
        let bytes = self.0.to_le_bytes();
        bytes
            .into_iter()
            .take(self.len())
            .map(|byte| usize::from(byte) - 1)
    }

    /// This group and one part more; `None` when it is full.
    pub(super) fn with(self, part: usize) -> Option<Self> {
        if self.len() == MOST {
            return None;
        }
        let byte = u8::try_from(part + 1).ok()?;
        let below = self.parts().take_while(|&held| held <= part).count() * 8;
        let low = self.0 & ((1 << below) - 1);
        let high = self.0 & !((1 << below) - 1);
        Some(Self(low | u128::from(byte) << below | high << 8))
    }

    /// Like [`Self::with`], for a part not below those held.
    fn on_top(self, part: usize) -> Option<Self> {
        let byte = u8::try_from(part + 1).ok()?;
        let len = self.len();
        (len < MOST).then_some(Self(self.0 | u128::from(byte) << (len * 8)))
    }

    /// This group and one part less, for each part it holds.
    pub(super) fn less_one(self) -> Vec<Self> {
        let less = |(part, _)| {
            let mut gone = false;
            let mut less = Self::default();
            for held in self.parts() {
                if held == part && !gone {
                    gone = true;
                } else {
                    less = less.on_top(held).unwrap_or(less);
                }
            }
            less
        };
        self.counts().into_iter().map(less).collect()
    }

    /// Whether all of this group is in another.
    pub(super) fn is_within(self, other: Self) -> bool {
        let mut held = other.parts();
        self.parts().all(|part| held.any(|other| other == part))
    }

    /// How many of one part.
    pub(super) fn count(self, part: usize) -> u64 {
        self.parts().map(|held| u64::from(held == part)).sum()
    }

    /// Part and how often, rising.
    pub(super) fn counts(self) -> Vec<(usize, u32)> {
        let mut counts: Vec<(usize, u32)> = Vec::with_capacity(self.len());
        for part in self.parts() {
            match counts.last_mut() {
                Some(last) if last.0 == part => last.1 += 1,
                _ => counts.push((part, 1)),
            }
        }
        counts
    }

    /// All groups within this one, from none of it to all of it. The groups at `at` and at
    /// `len − 1 − at` together are the whole. `None` when there are more than `most`.
    pub(super) fn within(self, most: usize) -> Option<Vec<Self>> {
        let mut all = vec![Self(0)];
        for (part, count) in self.counts() {
            let held = all.len();
            if held * (count as usize + 1) > most {
                return None;
            }
            for _ in 0..count {
                for at in all.len() - held..all.len() {
                    all.push(all[at].on_top(part)?);
                }
            }
        }
        Some(all)
    }
}
