//! The search as a whole: a first plan at once, then proof and improvement in turns.
//!
//! A round gives a slice of steps each to the exact search, the tree search and the column
//! generation; what one finds, the others take over. A round is twice as long as the one before up
//! to a limit, so that small problems change hands often and large ones waste nothing.

mod search;
mod shortage;

pub(crate) use search::Search;

use super::reduce::reduce;
use super::{Plan, Problem};
use crate::{Fault, Pace, Trying, Watch};

/// The best plan for a problem that can be found within the effort, and the bound proven by then.
///
/// Shape:  ends when the plan is proven best, when the effort is spent, or when the watch says
///         enough; a first plan is always made, however little is allowed. Where the stock does
///         not reach, the most urgent pieces are cut and the others told in [`Plan::uncut`].
/// Units:  the problem's.
/// Errors: all faults of the problem.
/// Source: see the modules of the parts: tree search, column generation, exact search, bounds.
pub fn solve(problem: &Problem, trying: Trying, watch: &dyn Watch) -> Result<Plan, Vec<Fault>> {
    let (reduced, origin) = reduce(problem)?;
    let mut pace = Pace::new(watch, trying.effort);
    let mut search = Search::begin(problem, &reduced, &origin, trying.seed, watch);
    search.tell(watch);
    while !search.is_done() && !pace.is_over() {
        if search.round(&mut pace) {
            search.tell(watch);
        }
    }
    Ok(search.plan(watch))
}

#[cfg(test)]
mod tests;
