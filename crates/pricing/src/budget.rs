//! Bringing a price to a budget: the smallest changes that meet a ceiling and harm nothing.

mod change;
mod search;

use measure::Money;
use trade::{Catalogue, Job, Settings};

use crate::desk::Asked;
use crate::rules::RuleSet;

pub use change::Saving;

/// What is priced, and by what.
#[derive(Clone, Copy, Debug)]
pub struct Budget<'a> {
    /// The job as it stands.
    pub job: &'a Job,
    /// Materials to choose from.
    pub catalogue: &'a Catalogue,
    /// The shop's settings: `budget.colour_near`, `budget.most_changes`, `budget.put_together`.
    pub shop: &'a Settings,
    /// The rule set.
    pub rules: &'a RuleSet,
    /// What is asked beside the piece.
    pub asked: &'a Asked,
    /// The most it may cost.
    pub ceiling: Money,
}

/// What can be done about a price.
#[derive(Clone, Debug)]
pub struct Proposed {
    /// What it costs as it stands.
    pub before: Money,
    /// Proposals that meet the ceiling, the fewest changes first, then the least saved beyond what is needed.
    pub proposals: Vec<Proposal>,
    /// How many single changes were looked at that save something and harm nothing.
    pub looked_at: usize,
    /// How many of these were put together, where single ones do not do: fewer than were looked at in a large
    /// catalogue (`budget.put_together`), then evenly spread over what they save.
    pub put_together: usize,
    /// How many changes were put together at most.
    pub deepest: usize,
    /// The cheapest that was met with, where nothing meets the ceiling.
    pub cheapest: Option<Proposal>,
}

/// Changes that together meet the ceiling.
#[derive(Clone, Debug)]
pub struct Proposal {
    /// The changes, each with what it saves by itself.
    pub changes: Vec<(Saving, Money)>,
    /// What the piece then costs.
    pub total: Money,
    /// What they save together.
    pub saving: Money,
}

impl Proposal {
    /// The job with the changes made.
    pub fn applied(&self, job: &Job) -> Job {
        let changes = self.changes.iter().map(|(change, _)| change);
        change::applied(job, changes)
    }
}

/// Why no proposal can be looked for.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BudgetFault {
    /// The job can't be derived.
    #[error("the job can't be derived; mend it first")]
    NotDerived,
    /// The job's price has a fault.
    #[error("the job can't be priced: {0}")]
    NotPriced(String),
    /// The ceiling is in another currency.
    #[error("the ceiling is {ceiling}, the prices are in {currency}; state it in {currency}")]
    Currency {
        /// The ceiling.
        ceiling: Money,
        /// The currency of the rule set.
        currency: measure::Currency,
    },
}

impl Budget<'_> {
    /// The smallest changes that meet the ceiling.
    ///
    /// Shape:  one change at a time first; two, then three together only where fewer do not do. Each proposal
    ///         was tried: derived, priced, and looked over, with no fault that was not there, or was milder,
    ///         before. Boards give way only to boards of their class; a moulding only to one of its colour family.
    /// Errors: a job that can't be derived or priced, a ceiling in another currency.
    pub fn propose(&self) -> Result<Proposed, BudgetFault> {
        search::propose(self)
    }
}
