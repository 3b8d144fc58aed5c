//! Chance that always falls the same way: a seeded sequence of numbers.

/// A sequence of numbers that looks random and depends on its seed alone.
pub(crate) struct Chance {
    state: u64,
}

impl Chance {
    /// The sequence of this seed.
    pub fn seeded(seed: u64) -> Self {
        Self { state: seed }
    }

    /// The next 64 bits (the splitmix64 step, constants from memory).
    fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.state;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    /// A number from 0 up to 1.
    pub fn part(&mut self) -> f64 {
        let high = u32::try_from(self.bits() >> 32).unwrap_or_default();
        f64::from(high) / 4_294_967_296.0
    }

    /// A number between the two.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.part()
    }

    /// As far to one side as to the other.
    pub fn about(&mut self, reach: f64) -> f64 {
        self.between(-reach, reach)
    }

    /// One of several.
    pub fn pick<T: Copy>(&mut self, from: &[T]) -> T {
        let count = u64::try_from(from.len()).unwrap_or(1).max(1);
        let place = usize::try_from(self.bits() % count).unwrap_or_default();
        from[place]
    }
}
