//! Sticks or sheets: what holds of both.

use crate::{lengths, sheets};

/// A problem of either kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// Pieces out of sticks.
    Lengths(lengths::Problem),
    /// Pieces out of sheets.
    Sheets(sheets::Problem),
}

/// A plan of either kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Plan {
    /// Sticks cut up.
    Lengths(lengths::Plan),
    /// Sheets cut up.
    Sheets(sheets::Plan),
}

impl Problem {
    /// What it is called.
    pub fn name(&self) -> &str {
        match self {
            Self::Lengths(problem) => &problem.name,
            Self::Sheets(problem) => &problem.name,
        }
    }
}

impl Plan {
    /// The cost, count or value reached.
    pub fn objective(&self) -> u64 {
        match self {
            Self::Lengths(plan) => plan.objective,
            Self::Sheets(plan) => plan.objective,
        }
    }

    /// The proven bound.
    pub fn bound(&self) -> u64 {
        match self {
            Self::Lengths(plan) => plan.bound,
            Self::Sheets(plan) => plan.bound,
        }
    }

    /// True when no better objective is possible.
    pub fn proven(&self) -> bool {
        match self {
            Self::Lengths(plan) => plan.proven(),
            Self::Sheets(plan) => plan.proven(),
        }
    }

    /// Pieces the stock does not reach for: which, and how many.
    pub fn uncut(&self) -> &[(usize, u64)] {
        match self {
            Self::Lengths(plan) => &plan.uncut,
            Self::Sheets(plan) => &plan.uncut,
        }
    }
}
