//! `rabbet cut jobs`

use std::collections::BTreeSet;
use std::fs;

use clap::Args;
use cutting::Problem as Task;
use demand::{Day, Outcome, Stock};
use sizing::Sizes;
use trade::{Catalogue, Job, Settings, Units};
use web::wire;

use super::{Desk, job_file};
use crate::cut::{self, Answer, Options, Solved};
use crate::exit::{EXIT_CODES, Exit};
use crate::files;
use crate::problem::{Kind, Problem, Trouble};

/// Plans a day: every part of these jobs, cut from the rack and from what is bought
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet cut jobs print.toml canvas.toml", after_help = EXIT_CODES)]
pub struct CutJobs {
    /// Job files; - is stdin
    #[arg(value_name = "FILE", required = true)]
    files: Vec<String>,
    /// What lies on the rack and what can be bought; left out: all is bought in the catalogue's sizes
    #[arg(long, value_name = "FILE")]
    stock: Option<String>,
    /// The stock once everything is cut, with the new remnants; - is stdout
    #[arg(long, value_name = "FILE", requires = "stock")]
    stock_after: Option<String>,
    #[command(flatten)]
    options: Options,
}

impl CutJobs {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let inputs: Vec<&str> = self
            .files
            .iter()
            .chain(&self.stock)
            .map(String::as_str)
            .collect();
        let further: Vec<&str> = self.stock_after.iter().map(String::as_str).collect();
        self.options.check(&inputs, &further)?;
        self.refuse_doubles()?;
        let catalogue = desk.shop.catalogue()?;
        let jobs = match self.read(&catalogue, desk)? {
            Ok(jobs) => jobs,
            Err(exit) => return Ok(exit),
        };
        let units = jobs.first().map_or(Units::Inches, |(job, _)| job.units);
        let settings = desk.shop.settings(units)?;
        let stock = self.read_stock()?;
        let day = Day::of(&jobs, &catalogue, &stock, &settings)
            .map_err(|faults| refused(Kind::Piece, &faults))?;
        if day.batches.is_empty() {
            return Err(nothing(&cut::unplanned(&day)));
        }
        let tasks: Vec<Task> = day.batches.iter().map(cut::problem_of).collect();
        let solved = cut::solve(&tasks, &self.options, desk.terminal).map_err(|unsolved| {
            cut::told(unsolved, Kind::Piece, |place, fault| {
                problem_of(&day.batches[place].fault(fault, day.unit))
            })
        })?;
        let outcome = day
            .settle(&solved.plans)
            .map_err(|faults| refused(Kind::Ours, &faults))?;
        let sizes: Vec<&Sizes> = jobs.iter().map(|(_, sizes)| sizes).collect();
        let planned = Planned {
            day: &day,
            outcome: &outcome,
            sizes: &sizes,
            settings: &settings,
            units,
        };
        self.deliver(&planned, solved, &stock, desk)
    }

    /// Refuses a job named twice: its parts would be cut twice.
    fn refuse_doubles(&self) -> Result<(), Trouble> {
        let mut seen = BTreeSet::new();
        let mut problems = Vec::new();
        for file in &self.files {
            let place = fs::canonicalize(file).unwrap_or_else(|_| file.into());
            if !seen.insert(place) {
                let problem = Problem::new("cut.twice", "this job is named twice")
                    .hint("name it once; for two of it, write a second job with its own order");
                problems.push(problem.in_file(job_file::shown(file)));
            }
        }
        if problems.is_empty() {
            return Ok(());
        }
        Err(Trouble {
            kind: Kind::Input,
            problems,
        })
    }

    /// Every job, sized; or how the run ends once everything wrong with them is told.
    fn read(
        &self,
        catalogue: &Catalogue,
        desk: &Desk,
    ) -> Result<Result<Vec<(Job, Sizes)>, Exit>, Trouble> {
        let inches = desk.shop.settings(Units::Inches)?;
        let millimetres = desk.shop.settings(Units::Millimetres)?;
        let mut jobs = Vec::with_capacity(self.files.len());
        let mut worst = Exit::Done;
        for file in &self.files {
            let sized = job_file::read(file).and_then(|job| {
                let settings = match job.units {
                    Units::Inches => &inches,
                    Units::Millimetres => &millimetres,
                };
                match sizing::derive(&job, catalogue, settings) {
                    Ok(sizes) => Ok((job, sizes)),
                    Err(faults) => Err(Trouble::piece(job_file::shown(file), &faults)),
                }
            });
            match sized {
                Ok(sized) => jobs.push(sized),
                Err(trouble) => {
                    let exit = trouble.tell(desk.terminal);
                    if exit.code() > worst.code() {
                        worst = exit;
                    }
                }
            }
        }
        Ok(if worst == Exit::Done {
            Ok(jobs)
        } else {
            Err(worst)
        })
    }

    fn read_stock(&self) -> Result<Stock, Trouble> {
        let Some(file) = &self.stock else {
            return Ok(Stock::default());
        };
        Stock::read(&files::read(file)?).map_err(|faults| {
            let problems = faults.iter().map(|fault| {
                Problem::new("stock.unread", fault.to_string()).in_file(job_file::shown(file))
            });
            Trouble {
                kind: Kind::Shop,
                problems: problems.collect(),
            }
        })
    }

    fn deliver(
        &self,
        planned: &Planned<'_>,
        solved: Solved,
        stock: &Stock,
        desk: &Desk,
    ) -> Result<Exit, Trouble> {
        let Planned { day, outcome, .. } = *planned;
        let materials =
            cut::cut_materials_of_day(day, &solved.plans, outcome, planned.sizes, planned.settings)
                .map_err(|other| cut::ours(&other))?;
        let after = self.stock_after.iter().map(|file| {
            let after = day.stock_after(outcome, stock);
            (file.as_str(), after.to_toml().into_bytes())
        });
        let unplanned = cut::unplanned(day);
        let lacking = materials.iter().flat_map(|material| material.uncut.clone());
        let answer = Answer {
            lacking: lacking.collect(),
            materials,
            name: self.name(day),
            orders: day.jobs.iter().map(|job| job.name.clone()).collect(),
            units: planned.units,
            json: format!("{:#}\n", wire::day(day, &solved.plans, outcome)),
            further: after.collect(),
            closing: closing(&unplanned),
            stopping: solved.stopping,
        };
        cut::deliver(&answer, &self.options, desk.terminal)
    }

    /// What the plan is called: its only job, or its day.
    fn name(&self, day: &Day) -> String {
        match day.jobs.as_slice() {
            [one] => one.name.clone(),
            _ => format!("of {}", self.options.printing.when().0),
        }
    }
}

/// A day with all that is needed to say it.
struct Planned<'a> {
    day: &'a Day,
    outcome: &'a Outcome,
    sizes: &'a [&'a Sizes],
    settings: &'a Settings,
    units: Units,
}

fn closing(unplanned: &[String]) -> Vec<String> {
    if unplanned.is_empty() {
        return Vec::new();
    }
    let heading = "Not planned".to_owned();
    let lines = unplanned.iter().map(|line| format!("  {line}"));
    std::iter::once(heading).chain(lines).collect()
}

fn nothing(unplanned: &[String]) -> Trouble {
    let sentence = match unplanned {
        [] => "these jobs have no part to cut".to_owned(),
        [first, ..] => format!("no part of these jobs can be planned: {first}"),
    };
    Trouble::one(Kind::Piece, Problem::new("cut.nothing", sentence))
}

fn refused(kind: Kind, faults: &[demand::Fault]) -> Trouble {
    Trouble {
        kind,
        problems: faults.iter().map(problem_of).collect(),
    }
}

fn problem_of(fault: &demand::Fault) -> Problem {
    let mut problem = Problem::new(fault.code(), fault.to_string());
    problem.part = fault.job().map(str::to_owned);
    problem
}
