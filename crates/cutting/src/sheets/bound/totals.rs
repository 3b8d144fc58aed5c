//! Which total costs stock can add up to.

/// All sums of stock costs below a limit.
pub(crate) struct Totals {
    /// What every cost is a multiple of.
    unit: u64,
    /// Bit n: n units can be reached. Empty when there would be too many.
    bits: Vec<u64>,
    /// Units below this are told; of others every one may be reached.
    end: u64,
}

/// Most bits kept: 1 MB, and words to look at while they are filled.
const MOST_BITS: u64 = 1 << 23;
const MOST_WORK: u64 = 1 << 26;

impl Totals {
    /// Sums up to `limit` of costs, each with how often it may be used.
    pub(crate) fn new(costs: &[(u64, u64)], limit: u64) -> Self {
        let unit = costs.iter().fold(0, |unit, &(cost, _)| gcd(unit, cost));
        let mut totals = Self {
            unit: unit.max(1),
            bits: Vec::new(),
            end: 0,
        };
        let units = limit / totals.unit;
        if units < MOST_BITS
            && let Some(bits) = totals.reached(costs, units)
        {
            totals.bits = bits;
            totals.end = units + 1;
        }
        totals
    }

    /// Bits of all sums up to so many units; `None` where that takes too long.
    fn reached(&self, costs: &[(u64, u64)], units: u64) -> Option<Vec<u64>> {
        let words = usize::try_from(units / 64 + 1).ok()?;
        let mut bits = vec![0; words];
        bits[0] = 1;
        let mut work = 0;
        for &(cost, count) in costs {
            let step = cost / self.unit;
            if step == 0 {
                continue;
            }
            // Multiples of 1, 2, 4, … and a rest, each once or not, are all numbers up to the count.
            let mut left = count.min(units / step);
            let mut times = 1;
            while left > 0 {
                let taken = times.min(left);
                work += words as u64;
                if work > MOST_WORK {
                    return None;
                }
                add_shifted(&mut bits, step * taken);
                left -= taken;
                times *= 2;
            }
        }
        Some(bits)
    }

    /// The least total that is not below this.
    pub(crate) fn from(&self, cost: u64) -> u64 {
        let mut units = cost.div_ceil(self.unit);
        while !self.reaches(units) {
            units += 1;
        }
        units.saturating_mul(self.unit)
    }

    /// The greatest total below this; `None` when there is none.
    pub(crate) fn below(&self, cost: u64) -> Option<u64> {
        let mut units = cost.checked_sub(1)? / self.unit;
        while !self.reaches(units) {
            units = units.checked_sub(1)?;
        }
        Some(units * self.unit)
    }

    fn reaches(&self, units: u64) -> bool {
        if units >= self.end {
            return true;
        }
        let word = usize::try_from(units / 64).ok();
        let word = word.and_then(|word| self.bits.get(word));
        word.is_some_and(|word| word >> (units % 64) & 1 == 1)
    }
}

/// Sets all bits that are so many above a set bit.
fn add_shifted(bits: &mut [u64], by: u64) {
    let (words, rest) = (by / 64, by % 64);
    let Ok(words) = usize::try_from(words) else {
        return;
    };
    // From the top down, so that every bit read is still the old one.
    for at in (words..bits.len()).rev() {
        let mut word = bits[at - words] << rest;
        if rest > 0 && at > words {
            word |= bits[at - words - 1] >> (64 - rest);
        }
        bits[at] |= word;
    }
}

/// The greatest common divisor; of 0 and a number, that number.
pub(crate) fn gcd<N>(mut a: N, mut b: N) -> N
where
    N: Copy + Default + PartialEq + std::ops::Rem<Output = N>,
{
    while b != N::default() {
        (a, b) = (b, a % b);
    }
    a
}
