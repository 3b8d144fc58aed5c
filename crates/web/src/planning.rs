//! From jobs, a cut list or cutting problems in JSON to plans that were checked.

use std::num::NonZeroUsize;
use std::time::Duration;

use cutting::day::{Unsolved, checked};
use cutting::document::{self, Instance};
use cutting::{Fault, Halt, Plan, Problem as Task, Trying};
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

/// Cutting problems in JSON, planned.
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
    let entry_of = |fault: &demand::Fault| Entry {
        pointer: pointer::of_job(&jobs, fault.job()),
        ..Entry::demand(fault)
    };
    let refused = |faults: Vec<demand::Fault>| {
        Problem::with(Kind::Cuts, faults.iter().map(entry_of).collect())
    };
    let day = Day::of(&jobs, catalogue, stock, &settings).map_err(refused)?;
    let tasks: Vec<Task> = day.batches.iter().map(paperwork::problem_of).collect();
    if tasks.is_empty() {
        return Err(nothing(&paperwork::unplanned(&day)));
    }
    let plans = solve(&tasks, patience, left, |place, fault| {
        entry_of(&day.batches[place].fault(fault, day.unit))
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
    let plans = solve(&tasks, patience, left, |place, fault| {
        told(&batches[place].fault(fault, unit))
    })?;
    Ok(PlannedList {
        batches,
        plans,
        settings,
        units: list.units,
    })
}

/// Plans a cutting problem in JSON, a set or a list of them.
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
            detail: "There is nothing to cut in this set; give it at least one problem.".to_owned(),
            ..Entry::default()
        };
        return Err(Problem::with(Kind::Cuts, vec![entry]));
    }
    let tasks: Vec<Task> = instances.iter().map(|one| one.problem.clone()).collect();
    let plans = solve(&tasks, patience, left, |place, fault| Entry {
        pointer: pointer::of_instance(place, text),
        code: "cut.refused".to_owned(),
        detail: format!("{}: {fault}", tasks[place].name()),
        ..Entry::default()
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

/// Plans every problem on all cores, and holds every plan to all laws before anybody sees it.
///
/// Errors: faults of the problems, put into words by `say`; more steps than are waited for; a plan
///         that breaks a law, which is a fault of the program.
fn solve(
    tasks: &[Task],
    patience: Patience,
    left: &Halt,
    say: impl Fn(usize, &Fault) -> Entry,
) -> Result<Vec<Plan>, Problem> {
    let seconds = Duration::from_secs(patience.seconds.min(LONGEST));
    let deadline = Deadline::after(seconds, left);
    let cores = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
    let plans = match checked(tasks, patience.trying, cores, &deadline) {
        Ok(plans) => plans,
        Err(Unsolved::Faults(all)) => {
            let mut entries = Vec::new();
            for (place, faults) in &all {
                entries.extend(faults.iter().map(|fault| say(*place, fault)));
            }
            return Err(Problem::with(Kind::Cuts, entries));
        }
        Err(broken @ (Unsolved::OtherKind(_) | Unsolved::Broken { .. })) => {
            return Err(Problem::fault(&broken));
        }
    };
    if patience.trying.effort.is_some() && deadline.struck() {
        let detail = format!(
            "So many steps take longer than {LONGEST} seconds; ask for fewer, or for seconds."
        );
        return Err(Problem::plain(Kind::Slow, detail));
    }
    Ok(plans)
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
