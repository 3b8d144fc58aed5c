//! From problems to plans that were checked.

use std::fmt::Display;

use cutting::day::{Unsolved, checked};
use cutting::{Fault, Plan, Problem, Watch as _};

use super::options::Options;
use super::progress::{Stopping, Waiting};
use crate::problem::{self, Kind, Trouble};
use crate::terminal::Terminal;

/// Plans for all problems, in their order.
pub struct Solved {
    /// Every one holds.
    pub plans: Vec<Plan>,
    /// Ctrl-C, which is listened for from now on.
    pub stopping: Stopping,
}

/// Why there are no plans, as it is told; `say` puts a fault of the problem at a place into words.
pub fn told(
    unsolved: Unsolved,
    kind: Kind,
    say: impl Fn(usize, &Fault) -> problem::Problem,
) -> Trouble {
    let all = match unsolved {
        Unsolved::Faults(all) => all,
        broken @ (Unsolved::OtherKind(_) | Unsolved::Broken { .. }) => return ours(&broken),
    };
    let mut problems = Vec::new();
    for (place, faults) in &all {
        problems.extend(faults.iter().map(|fault| say(*place, fault)));
    }
    Trouble { kind, problems }
}

/// Plans every problem, and holds every plan to all laws before anybody sees it.
///
/// # Errors
/// Faults of the problems; a plan that breaks a law, which is a fault of this program.
pub fn solve(
    problems: &[Problem],
    options: &Options,
    terminal: Terminal,
) -> Result<Solved, Unsolved> {
    let stopping = Stopping::listen().unwrap_or_else(|error| {
        terminal.talk(&format!("Ctrl-C will end without a plan: {error}"));
        Stopping::default()
    });
    let waiting = Waiting::new(&stopping, options.patience(), problems);
    let found = checked(problems, options.trying(), options.threads(), &waiting);
    waiting.end();
    let short = stopping.stopped() && waiting.enough();
    drop(waiting);
    let plans = found?;
    if short && !plans.iter().all(Plan::proven) {
        terminal.talk("Stopped: this is the best plan so far.");
    }
    Ok(Solved { plans, stopping })
}

/// A fault of this program.
pub fn ours(why: &impl Display) -> Trouble {
    let problem = problem::Problem::new("cut.broken", why.to_string())
        .hint("nothing is written; report it with the command you typed and the files you gave");
    Trouble::one(Kind::Ours, problem)
}
