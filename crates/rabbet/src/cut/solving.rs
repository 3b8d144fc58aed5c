//! From problems to plans that were checked.

use cutting::{Fault, Plan, Problem, Watch as _, lengths, sheets};

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

/// Why there are no plans.
pub enum Unsolved {
    /// Problems that can't be planned as they stand: which, and why.
    Faults(Vec<(usize, Vec<Fault>)>),
    /// Anything else.
    Trouble(Trouble),
}

impl Unsolved {
    /// As it is told; `say` puts a fault of the problem at a place into words.
    pub fn told(self, say: impl Fn(usize, Fault) -> problem::Problem) -> Trouble {
        match self {
            Self::Trouble(trouble) => trouble,
            Self::Faults(all) => {
                let faults = all.into_iter().flat_map(|(place, faults)| {
                    faults.into_iter().map(move |fault| (place, fault))
                });
                Trouble {
                    kind: Kind::Document,
                    problems: faults.map(|(place, fault)| say(place, fault)).collect(),
                }
            }
        }
    }
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
    let found = cutting::day::solve(problems, options.trying(), options.threads(), &waiting);
    waiting.end();
    let short = stopping.stopped() && waiting.enough();
    let (mut plans, mut faults) = (Vec::with_capacity(found.len()), Vec::new());
    for (place, found) in found.into_iter().enumerate() {
        match found {
            Ok(plan) => plans.push(plan),
            Err(these) => faults.push((place, these)),
        }
    }
    if !faults.is_empty() {
        return Err(Unsolved::Faults(faults));
    }
    for (problem, plan) in problems.iter().zip(&plans) {
        hold(problem, plan).map_err(Unsolved::Trouble)?;
    }
    if plans.len() != problems.len() {
        return Err(Unsolved::Trouble(broken(
            "a problem came back without a plan",
        )));
    }
    if short && !plans.iter().all(Plan::proven) {
        terminal.talk("Stopped: this is the best plan so far.");
    }
    drop(waiting);
    Ok(Solved { plans, stopping })
}

/// Holds a plan to its problem's laws.
fn hold(problem: &Problem, plan: &Plan) -> Result<(), Trouble> {
    let held = match (problem, plan) {
        (Problem::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
        (Problem::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
        _ => {
            return Err(broken(
                "a plan came back for sheets where sticks were asked, or the other way",
            ));
        }
    };
    match held {
        Ok(_) => Ok(()),
        Err(law) => Err(broken(&format!(
            "the plan for {} does not hold: {law}",
            problem.name()
        ))),
    }
}

fn broken(sentence: &str) -> Trouble {
    Trouble::one(
        Kind::Ours,
        problem::Problem::new("cut.broken", sentence).hint(
            "nothing is written; report it with the command you typed and the files you gave",
        ),
    )
}
