//! Which total costs stock can add up to.

/// All sums of stock costs below a limit.
pub(crate) struct Totals {
    /// What every cost is a multiple of.
    unit: u64,
    /// Bit n: n units can be reached. Empty when there would be too many.
    bits: Vec<u64>,
}

/// Most bits kept: 1 MB, and steps to fill them.
const MOST_BITS: u64 = 1 << 23;
const MOST_WORK: u64 = 1 << 28;

impl Totals {
    /// Sums up to `limit` of costs, each with how often it may be used.
    pub(crate) fn new(costs: &[(u64, u64)], limit: u64) -> Self {
        let unit = costs.iter().fold(0, |unit, &(cost, _)| gcd(unit, cost));
        let unit = unit.max(1);
        let units = limit / unit;
        let mut totals = Self {
            unit,
            bits: Vec::new(),
        };
        if units >= MOST_BITS {
            return totals;
        }
        let words = usize::try_from(units / 64 + 1).unwrap_or(1);
        let mut bits = vec![0; words];
        bits[0] = 1;
        let mut work = 0;
        for &(cost, count) in costs {
            let step = cost / unit;
            if step == 0 {
                continue;
            }
            let times = count.min(units / step);
            work += words as u64 * times;
            if work > MOST_WORK {
                return totals;
            }
            for _ in 0..times {
                if !add_shifted(&mut bits, step) {
                    break;
                }
            }
        }
        totals.bits = bits;
        totals
    }

    /// The least total that is not below this.
    pub(crate) fn from(&self, cost: u64) -> u64 {
        let mut units = cost.div_ceil(self.unit);
        let end = self.bits.len() as u64 * 64;
        if self.reaches(units) || units >= end {
            return units.saturating_mul(self.unit);
        }
        while units < end && !self.reaches(units) {
            units += 1;
        }
        units.saturating_mul(self.unit)
    }

    /// The greatest total below this; `None` when there is none.
    pub(crate) fn below(&self, cost: u64) -> Option<u64> {
        let mut units = cost.checked_sub(1)? / self.unit;
        let end = self.bits.len() as u64 * 64;
        while units < end && !self.reaches(units) {
            units = units.checked_sub(1)?;
        }
        Some(units * self.unit)
    }

    fn reaches(&self, units: u64) -> bool {
        let word = usize::try_from(units / 64).ok();
        let word = word.and_then(|word| self.bits.get(word));
        word.is_some_and(|word| word >> (units % 64) & 1 == 1)
    }
}

/// Sets all bits that are so many above a set bit; false when that changes nothing.
fn add_shifted(bits: &mut [u64], by: u64) -> bool {
    let (words, rest) = (by / 64, by % 64);
    let Ok(words) = usize::try_from(words) else {
        return false;
    };
    let mut changed = false;
    for at in (words..bits.len()).rev() {
        let mut word = bits[at - words] << rest;
        if rest > 0 && at > words {
            word |= bits[at - words - 1] >> (64 - rest);
        }
        changed |= word & !bits[at] != 0;
        bits[at] |= word;
    }
    changed
}

fn gcd(mut a: u64, mut b: u64) -> u64 {
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
