//! Our solver on one instance, with a clock beside it.

use std::panic::{self, AssertUnwindSafe};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use cutting::document::{self, Written};
use cutting::{Goal, News, Tally, Trying, Watch, lengths, sheets};
use cutting::{Plan, Problem};

/// What came of one instance.
pub struct Ours {
    /// The plan, or why there is none.
    pub outcome: Result<Plan, Vec<String>>,
    /// What our own check says of the plan.
    pub checked: Option<Result<Tally, String>>,
    /// When the first plan was there.
    pub first: Duration,
    /// When the plan was as good as in the end.
    pub best: Duration,
    /// When it was proven; `None` if it was not.
    pub proof: Option<Duration>,
    /// When the solver came back.
    pub end: Duration,
    problem: Problem,
}

impl Ours {
    /// The objective reached.
    pub fn objective(&self) -> Option<u64> {
        match self.outcome.as_ref().ok()? {
            Plan::Lengths(plan) => Some(plan.objective),
            Plan::Sheets(plan) => Some(plan.objective),
        }
    }

    /// The bound claimed.
    pub fn bound(&self) -> Option<u64> {
        match self.outcome.as_ref().ok()? {
            Plan::Lengths(plan) => Some(plan.bound),
            Plan::Sheets(plan) => Some(plan.bound),
        }
    }

    /// Pieces the stock did not reach for.
    pub fn uncut(&self) -> u64 {
        let uncut = match self.outcome.as_ref() {
            Ok(Plan::Lengths(plan)) => &plan.uncut,
            Ok(Plan::Sheets(plan)) => &plan.uncut,
            Err(_) => return 0,
        };
        uncut.iter().map(|&(_, count)| count).sum()
    }

    /// What the instance strives for.
    pub fn goal(&self) -> Goal {
        match &self.problem {
            Problem::Lengths(problem) => problem.goal,
            Problem::Sheets(problem) => problem.goal,
        }
    }

    /// The plan as text; none of a plan that our own check refuses, for it may name what is not.
    pub fn written(&self) -> Option<Written> {
        if !matches!(self.checked, Some(Ok(_))) {
            return None;
        }
        match (&self.problem, self.outcome.as_ref().ok()?) {
            (Problem::Lengths(problem), Plan::Lengths(plan)) => {
                Some(document::lengths_plan(problem, plan))
            }
            (Problem::Sheets(problem), Plan::Sheets(plan)) => {
                Some(document::sheets_plan(problem, plan))
            }
            _ => None,
        }
    }
}

/// Solves one problem within a time.
pub fn solve(problem: &Problem, limit: Duration, seed: u64) -> Ours {
    let clock = Clock {
        start: Instant::now(),
        limit,
        heard: Mutex::new(Heard::default()),
    };
    let trying = Trying { effort: None, seed };
    let told = |faults: Vec<cutting::Fault>| faults.iter().map(ToString::to_string).collect();
    // A crash on one instance is told in its row, and the others are still solved.
    let outcome = panic::catch_unwind(AssertUnwindSafe(|| match problem {
        Problem::Lengths(problem) => lengths::solve(problem, trying, &clock).map(Plan::Lengths),
        Problem::Sheets(problem) => sheets::solve(problem, trying, &clock).map(Plan::Sheets),
    }));
    let outcome = match outcome {
        Ok(outcome) => outcome.map_err(told),
        Err(_) => Err(vec!["the solver crashed, see standard error".to_owned()]),
    };
    let end = clock.start.elapsed();
    let heard = clock
        .heard
        .into_inner()
        .unwrap_or_else(PoisonError::into_inner);
    let checked = outcome.as_ref().ok().map(|plan| check(problem, plan));
    let mut ours = Ours {
        outcome,
        checked,
        first: heard.first.unwrap_or(end),
        best: end,
        proof: None,
        end,
        problem: problem.clone(),
    };
    if let Some((objective, when)) = heard.best
        && ours.objective() == Some(objective)
    {
        ours.best = when;
    }
    if ours.objective() == ours.bound() && ours.uncut() == 0 && ours.outcome.is_ok() {
        ours.proof = Some(heard.proof.unwrap_or(end));
    }
    ours
}

fn check(problem: &Problem, plan: &Plan) -> Result<Tally, String> {
    let checked = match (problem, plan) {
        (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
        (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
        _ => return Err("a plan of the other kind came back".to_owned()),
    };
    checked.map_err(|broken| broken.to_string())
}

/// Ends the search when the time is up, and notes when what was heard.
struct Clock {
    start: Instant,
    limit: Duration,
    heard: Mutex<Heard>,
}

#[derive(Default)]
struct Heard {
    first: Option<Duration>,
    /// The last objective that differed from the one before, and when.
    best: Option<(u64, Duration)>,
    proof: Option<Duration>,
}

impl Watch for Clock {
    fn enough(&self) -> bool {
        self.start.elapsed() >= self.limit
    }

    fn news(&self, news: News<'_>) {
        let now = self.start.elapsed();
        let mut heard = self.heard.lock().unwrap_or_else(PoisonError::into_inner);
        let Some(objective) = news.objective else {
            return;
        };
        heard.first.get_or_insert(now);
        if heard.best.is_none_or(|(last, _)| last != objective) {
            heard.best = Some((objective, now));
        }
        if objective == news.bound {
            heard.proof.get_or_insert(now);
        }
    }
}
