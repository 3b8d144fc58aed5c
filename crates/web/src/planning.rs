//! From jobs, a cut list or instances to plans that were checked.

use std::num::NonZeroUsize;
use std::time::Duration;

use cutting::document::{self, Instance};
use cutting::{Fault, Halt, Plan, Problem as Task, Trying, lengths, sheets};
use demand::{CutList, Day, ListBatch, Outcome, Stock};
use sizing::Sizes;
use trade::{Settings, Units};

use crate::clock::Deadline;
use crate::desk::Desk;
use crate::piece::{Piece, Refusal};
use crate::problem::{Entry, Kind, Problem};

mod pointer;

/// The longest a search may take, in seconds.
pub(crate) const LONGEST: u64 = 30;

/// How long it takes where nobody says.
pub(crate) const USUAL: u64 = 5;

/// How hard to look for a better plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Patience {
    /// Seconds, [`LONGEST`] at most.
    pub seconds: u64,
    /// How many steps for each material, and where chance begins.
    pub trying: Trying,
}

impl Patience {
    /// As good as it gets in so many seconds.
    pub fn seconds(seconds: u64) -> Self {
        Self {
            seconds,
            trying: Trying::default(),
        }
    }
}

/// A day of jobs, planned and settled.
pub(crate) struct PlannedDay {
    pub day: Day,
    pub plans: Vec<Plan>,
    pub outcome: Outcome,
    pub sizes: Vec<Sizes>,
    pub settings: Settings,
}

/// A cut list, planned.
pub(crate) struct PlannedList {
    pub batches: Vec<ListBatch>,
    pub plans: Vec<Plan>,
    pub settings: Settings,
    pub units: Units,
}

/// Instances of the cutting room, planned.
pub(crate) struct PlannedInstances {
    pub instances: Vec<Instance>,
    pub plans: Vec<Plan>,
}

/// Plans every part of these jobs; each is a job document, all are cut together.
///
/// Errors: everything that stands in the way, each fault with a pointer to its job below `/jobs`.
pub(crate) fn day(
    desk: &Desk,
    documents: &[Vec<u8>],
    stock: &Stock,
    patience: Patience,
    left: &Halt,
) -> Result<PlannedDay, Problem> {
    let jobs = read_jobs(desk, documents)?;
    let units = jobs.first().map_or(Units::Inches, |(job, _)| job.units);
    let settings = desk.options.habits.of(units).clone();
    let catalogue = &desk.options.catalogue;
    let refused = |faults: Vec<demand::Fault>| {
        let entries = faults.iter().map(|fault| Entry {
            pointer: pointer::of_job(&jobs, fault.job()),
            ..Entry::demand(fault)
        });
        Problem::with(Kind::Cuts, entries.collect())
    };
    let day = Day::of(&jobs, catalogue, stock, &settings).map_err(refused)?;
    let tasks: Vec<Task> = day.batches.iter().map(paperwork::problem_of).collect();
    if tasks.is_empty() {
        return Err(nothing(&paperwork::unplanned(&day)));
    }
    let plans = solve(&tasks, patience, left).map_err(|unsolved| {
        unsolved.told(|place, fault| Entry {
            code: "cut.refused".to_owned(),
            detail: format!("{}: {fault}", day.batches[place].ware),
            ..Entry::default()
        })
    })?;
    let outcome = day
        .settle(&plans)
        .map_err(|faults| Problem::fault(&all(&faults)))?;
    Ok(PlannedDay {
        day,
        plans,
        outcome,
        sizes: jobs.into_iter().map(|(_, sizes)| sizes).collect(),
        settings,
    })
}

/// Plans a cut list as a person types it.
///
/// Errors: every fault of the list, with its line.
pub(crate) fn list(
    desk: &Desk,
    text: &str,
    patience: Patience,
    left: &Halt,
) -> Result<PlannedList, Problem> {
    let told = |fault: &demand::ListFault| Entry::list(fault, text);
    let refused = |kind: Kind, faults: &[demand::ListFault]| {
        Problem::with(kind, faults.iter().map(told).collect())
    };
    let list = CutList::read(text.as_bytes()).map_err(|faults| refused(Kind::Document, &faults))?;
    let settings = desk.options.habits.of(list.units).clone();
    let batches = list
        .batches(&settings)
        .map_err(|faults| refused(Kind::Cuts, &faults))?;
    let tasks: Vec<Task> = batches.iter().map(|batch| batch.problem.clone()).collect();
    let unit = list.units.unit();
    let plans = solve(&tasks, patience, left).map_err(|unsolved| {
        unsolved.told(|place, fault| told(&batches[place].fault(fault, unit)))
    })?;
    Ok(PlannedList {
        batches,
        plans,
        settings,
        units: list.units,
    })
}

/// Plans an instance of the cutting room, a set or a list of them.
///
/// Errors: every fault of the text, each with its pointer.
pub(crate) fn instances(
    text: &str,
    patience: Patience,
    left: &Halt,
) -> Result<PlannedInstances, Problem> {
    let instances = document::read(text).map_err(|refusals| {
        let entries = refusals.iter().map(|one| pointer::entry_of(one, text));
        Problem::with(Kind::Document, entries.collect())
    })?;
    if instances.is_empty() {
        let entry = Entry {
            code: "cut.nothing".to_owned(),
            detail: "There is nothing to cut in this set; give it at least one instance."
                .to_owned(),
            ..Entry::default()
        };
        return Err(Problem::with(Kind::Cuts, vec![entry]));
    }
    let tasks: Vec<Task> = instances.iter().map(|one| one.problem.clone()).collect();
    let plans = solve(&tasks, patience, left).map_err(|unsolved| {
        unsolved.told(|place, fault| Entry {
            pointer: pointer::of_instance(place, text),
            code: "cut.refused".to_owned(),
            detail: format!("{}: {fault}", tasks[place].name()),
            ..Entry::default()
        })
    })?;
    Ok(PlannedInstances { instances, plans })
}

/// Every job, sized; or everything wrong with all of them.
fn read_jobs(desk: &Desk, documents: &[Vec<u8>]) -> Result<Vec<(trade::Job, Sizes)>, Problem> {
    let (mut jobs, mut entries) = (Vec::with_capacity(documents.len()), Vec::new());
    let mut kind = Kind::Piece;
    for (place, document) in documents.iter().enumerate() {
        match Piece::of(desk, document) {
            Ok(piece) => jobs.push((piece.job, piece.sizes)),
            Err(refusal) => {
                if matches!(refusal, Refusal::Document(_)) {
                    kind = Kind::Document;
                }
                entries.extend(refusal.entries().into_iter().map(|entry| Entry {
                    pointer: format!("/jobs/{place}{}", entry.pointer),
                    ..entry
                }));
            }
        }
    }
    if entries.is_empty() {
        return Ok(jobs);
    }
    Err(Problem::with(kind, entries))
}

/// Why there are no plans.
enum Unsolved {
    /// Problems that can't be planned as they stand: which, and why.
    Faults(Vec<(usize, Vec<Fault>)>),
    /// The steps asked for take longer than is waited.
    Slow,
    /// A plan that breaks a law: a fault of the program.
    Broken(String),
}

impl Unsolved {
    fn told(self, say: impl Fn(usize, Fault) -> Entry) -> Problem {
        match self {
            Self::Faults(all) => {
                let faults = all.into_iter().flat_map(|(place, faults)| {
                    faults.into_iter().map(move |fault| (place, fault))
                });
                let entries = faults.map(|(place, fault)| say(place, fault));
                Problem::with(Kind::Cuts, entries.collect())
            }
            Self::Slow => {
                let detail = format!(
                    "So many steps take longer than {LONGEST} seconds; ask for fewer, or for seconds."
                );
                Problem::plain(Kind::Slow, detail)
            }
            Self::Broken(why) => Problem::fault(&why),
        }
    }
}

/// Plans every problem on all cores, and holds every plan to all laws before anybody sees it.
fn solve(tasks: &[Task], patience: Patience, left: &Halt) -> Result<Vec<Plan>, Unsolved> {
    let seconds = Duration::from_secs(patience.seconds.min(LONGEST));
    let deadline = Deadline::after(seconds, left);
    let cores = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
    let found = cutting::day::solve(tasks, patience.trying, cores, &deadline);
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
    if patience.trying.effort.is_some() && deadline.struck() {
        return Err(Unsolved::Slow);
    }
    if plans.len() != tasks.len() {
        return Err(Unsolved::Broken(
            "a problem came back without a plan".to_owned(),
        ));
    }
    for (task, plan) in tasks.iter().zip(&plans) {
        hold(task, plan).map_err(Unsolved::Broken)?;
    }
    Ok(plans)
}

/// Holds a plan to its problem's laws.
fn hold(task: &Task, plan: &Plan) -> Result<(), String> {
    let held = match (task, plan) {
        (Task::Lengths(problem), Plan::Lengths(plan)) => lengths::check(problem, plan),
        (Task::Sheets(problem), Plan::Sheets(plan)) => sheets::check(problem, plan),
        _ => return Err(format!("the plan for {} is of the other kind", task.name())),
    };
    match held {
        Ok(_) => Ok(()),
        Err(law) => Err(format!("the plan for {} does not hold: {law}", task.name())),
    }
}

fn nothing(unplanned: &[String]) -> Problem {
    let detail = match unplanned {
        [] => "These jobs have no part to cut.".to_owned(),
        [first, ..] => format!("No part of these jobs can be planned. {first}."),
    };
    let entry = Entry {
        code: "cut.nothing".to_owned(),
        detail,
        ..Entry::default()
    };
    Problem::with(Kind::Cuts, vec![entry])
}

fn all(faults: &[demand::Fault]) -> String {
    let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
    faults.join("; ")
}
