//! Repeatable random numbers: the same seed, the same choices, on every machine.

/// A small, fast generator (`SplitMix64`; Steele, Lea and Flood, "Fast splittable pseudorandom
/// number generators", OOPSLA 2014).
#[derive(Clone, Debug)]
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number below `end`; 0 when `end` is 0 or 1.
    pub(crate) fn below(&mut self, end: usize) -> usize {
        let wide = u128::from(self.next()) * end as u128;
        usize::try_from(wide >> 64).expect("less than end")
    }

    /// True once in so many.
    pub(crate) fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    /// A number from 0 up to 1.
    pub(crate) fn unit(&mut self) -> f64 {
        // 53 bits are what a double holds exactly.
        #[allow(clippy::cast_precision_loss)]
        let bits = (self.next() >> 11) as f64;
        bits / 9_007_199_254_740_992.0
    }

    pub(crate) fn shuffle<T>(&mut self, things: &mut [T]) {
        for at in (1..things.len()).rev() {
            things.swap(at, self.below(at + 1));
        }
    }
}
