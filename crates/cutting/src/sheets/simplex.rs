//! The linear program solved against the pace.

use crate::Pace;
use crate::master::Master;

/// Pivots made before the first look at the pace; twice as many before each next one.
const AT_FIRST: usize = 4;

/// Solves from the last basis on, pivot by pivot counted as steps: each works through the inverse
/// and looks at every column. False when pace or pivots were not enough; the next time it goes on
/// from there.
pub(super) fn solve(master: &mut Master, columns: usize, most: usize, pace: &mut Pace<'_>) -> bool {
    let rows = master.duals().len() as u64;
    let pivot = 1 + rows * rows / 4 + 2 * columns as u64;
    let (mut left, mut next) = (most, AT_FIRST);
    while left > 0 && !pace.is_over() {
        let pivots = next.min(left);
        let solved = master.solve(pivots);
        // The last lot may have needed all of its pivots or none.
        let made = if solved { 1 + pivots / 2 } else { pivots };
        pace.spend(pivot * made as u64);
        if solved {
            return true;
        }
        left -= pivots;
        next *= 2;
    }
    false
}

#[cfg(test)]
mod tests;
