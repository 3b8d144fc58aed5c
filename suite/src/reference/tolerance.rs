//! How far a value may lie from what is expected, and why.

use std::fmt;

/// How far a value may lie from what is expected, and why.
#[derive(Clone, Copy, Debug)]
pub struct Tolerance {
    /// As a part of what is expected.
    pub relative: f64,
    /// In its unit.
    pub absolute: f64,
    /// Why so far and no further.
    pub why: &'static str,
}

/// A part of what is expected.
pub(super) const fn part(relative: f64, why: &'static str) -> Tolerance {
    Tolerance {
        relative,
        absolute: 0.0,
        why,
    }
}

/// So much in its unit.
pub(super) const fn by(absolute: f64, why: &'static str) -> Tolerance {
    Tolerance {
        relative: 0.0,
        absolute,
        why,
    }
}

/// Words and yes or no agree or differ.
pub(super) const EXACT: Tolerance = by(0.0, "words and yes or no");

impl Tolerance {
    /// Whether `found` lies near enough to `expected`.
    pub fn holds(&self, found: f64, expected: f64) -> bool {
        // A whisker for the decimals of the table itself.
        let whisker = 1e-12 * expected.abs().max(1.0);
        let most = self.absolute.max(self.relative * expected.abs()) + whisker;
        (found - expected).abs() <= most
    }
}

impl fmt::Display for Tolerance {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.relative > 0.0, self.absolute > 0.0) {
            (true, true) => write!(
                f,
                "{} or {}% ({})",
                self.absolute,
                self.relative * 100.0,
                self.why
            ),
            (true, false) => write!(f, "{}% ({})", self.relative * 100.0, self.why),
            (false, true) => write!(f, "{} ({})", self.absolute, self.why),
            (false, false) => write!(f, "nothing ({})", self.why),
        }
    }
}
