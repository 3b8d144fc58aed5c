//! A quick hash for groups, the same on every machine.

use std::hash::{BuildHasherDefault, Hasher};

/// For tables that are only looked up in.
pub(super) type Quick = BuildHasherDefault<Mixer>;

/// Multiplies and folds; good enough for keys that nobody chooses in bad faith, since a table that
/// grows slow only slows the search down.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Mixer(u64);

impl Mixer {
    fn mix(&mut self, word: u64) {
        let wide = u128::from(self.0 ^ word ^ 0x243F_6A88_85A3_08D3) * 0x9E37_79B9_7F4A_7C15;
        self.0 = high(wide) ^ low(wide);
    }
}

impl Hasher for Mixer {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            let mut word = [0; 8];
            word[..chunk.len()].copy_from_slice(chunk);
            self.mix(u64::from_le_bytes(word) ^ chunk.len() as u64);
        }
    }

    fn write_u128(&mut self, number: u128) {
        self.mix(low(number));
        self.mix(high(number));
    }
}

// Half of the bits are meant to be dropped.
#[allow(clippy::cast_possible_truncation)]
fn low(number: u128) -> u64 {
    number as u64
}

fn high(number: u128) -> u64 {
    low(number >> 64)
}
