//! Sticks or sheets: what holds of both.

use std::fmt;

use crate::{Broken, Goal, Tally, lengths, sheets};

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

/// A problem and a plan of the same kind.
#[derive(Clone, Copy, Debug)]
pub enum Pair<'a> {
    /// Sticks.
    Lengths(&'a lengths::Problem, &'a lengths::Plan),
    /// Sheets.
    Sheets(&'a sheets::Problem, &'a sheets::Plan),
}

/// A plan for sheets where sticks were asked, or the other way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherKind {
    /// The problem's name.
    pub problem: String,
}

impl Problem {
    /// What it is called.
    pub fn name(&self) -> &str {
        match self {
            Self::Lengths(problem) => &problem.name,
            Self::Sheets(problem) => &problem.name,
        }
    }

    /// What it strives for.
    pub fn goal(&self) -> Goal {
        match self {
            Self::Lengths(problem) => problem.goal,
            Self::Sheets(problem) => problem.goal,
        }
    }

    /// This problem with a plan.
    ///
    /// Errors: the plan is of the other kind.
    pub fn with<'a>(&'a self, plan: &'a Plan) -> Result<Pair<'a>, OtherKind> {
        match (self, plan) {
            (Self::Lengths(problem), Plan::Lengths(plan)) => Ok(Pair::Lengths(problem, plan)),
            (Self::Sheets(problem), Plan::Sheets(plan)) => Ok(Pair::Sheets(problem, plan)),
            _ => Err(OtherKind {
                problem: self.name().to_owned(),
            }),
        }
    }
}

impl Pair<'_> {
    /// Holds the plan to all laws of its problem.
    ///
    /// Errors: the first law it breaks.
    pub fn check(&self) -> Result<Tally, Broken> {
        match self {
            Self::Lengths(problem, plan) => lengths::check(problem, plan),
            Self::Sheets(problem, plan) => sheets::check(problem, plan),
        }
    }
}

impl fmt::Display for OtherKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "the plan for {} is for sheets where sticks were asked, or the other way; plan again",
            self.problem
        )
    }
}

impl std::error::Error for OtherKind {}

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
