//! `rabbet job compare`

use std::path::Path;

use clap::Args;
use pricing::{Alternative, AlternativesFault, MOST_ALTERNATIVES, alternatives};
use trade::{Job, Units};
use web::wire;

use super::asking::Asking;
use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{Kind, Problem, Trouble};
use crate::report;

/// Sets up to six alternatives side by side: what each costs, what differs from the first, by how much
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job compare print.toml canvas.toml --shop .", after_help = EXIT_CODES)]
pub struct JobCompare {
    /// Job files, the one to compare with first; - is stdin
    #[arg(value_name = "FILE", required = true)]
    files: Vec<String>,
    #[command(flatten)]
    asking: Asking,
    /// With cost, margin and minutes, which are no customer's
    #[arg(long)]
    shop_copy: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl JobCompare {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        if self.files.len() > MOST_ALTERNATIVES {
            let given = self.files.len();
            return Err(fault(&AlternativesFault::TooMany { given }));
        }
        let ruled = desk.shop.rules()?;
        let catalogue = desk.shop.catalogue()?;
        let asked = self.asking.asked()?;
        let jobs = self.read()?;
        let units = self.units(&jobs)?;
        let settings = desk.shop.settings(units)?;
        let named: Vec<(&str, &Job)> = self
            .files
            .iter()
            .map(|file| name(file))
            .zip(&jobs)
            .collect();
        let found = alternatives(&named, &catalogue, &settings, &ruled.rules, &asked)
            .map_err(|refused| fault(&refused))?;
        let text = if self.json {
            format!("{:#}\n", wire::alternatives(&found, self.shop_copy))
        } else {
            report::of_alternatives(&found, self.shop_copy).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        let mut exit = Exit::Done;
        for (file, one) in self.files.iter().zip(&found) {
            job_file::tell(file, &faults(one), desk);
            if one.sizes.is_refused() || one.priced.is_refused() {
                exit = Exit::Refused;
            }
        }
        Ok(exit)
    }

    /// Every job; all that can't be read are told together.
    fn read(&self) -> Result<Vec<Job>, Trouble> {
        let (mut jobs, mut troubles) = (Vec::new(), Vec::new());
        for file in &self.files {
            match job_file::read(file) {
                Ok(job) => jobs.push(job),
                Err(trouble) => troubles.push(trouble),
            }
        }
        let kind = troubles.first().map(|trouble: &Trouble| trouble.kind);
        match kind {
            None => Ok(jobs),
            Some(kind) => Err(Trouble {
                kind,
                problems: troubles
                    .into_iter()
                    .flat_map(|trouble| trouble.problems)
                    .collect(),
            }),
        }
    }

    /// The units all of them speak in.
    fn units(&self, jobs: &[Job]) -> Result<Units, Trouble> {
        let units = jobs.first().map_or(Units::Inches, |job| job.units);
        let other = jobs.iter().position(|job| job.units != units);
        match other {
            None => Ok(units),
            Some(at) => {
                let sentence =
                    "it speaks in other units than the first, so the shop's habits for both differ";
                let problem = Problem::new("compare.units", sentence)
                    .hint("give all of them the same `units`")
                    .in_file(job_file::shown(&self.files[at]));
                Err(Trouble::one(Kind::Input, problem))
            }
        }
    }
}

fn faults(one: &Alternative) -> Vec<sizing::Fault> {
    [&one.sizes.faults[..], &one.priced.faults].concat()
}

/// What a file is called beside the others: its stem.
pub fn name(file: &str) -> &str {
    let stem = Path::new(file).file_stem().and_then(|stem| stem.to_str());
    stem.unwrap_or(file)
}

fn fault(fault: &AlternativesFault) -> Trouble {
    match fault {
        AlternativesFault::NotDerived { name, faults } => Trouble::piece(name, faults),
        AlternativesFault::None | AlternativesFault::TooMany { .. } => Trouble::one(
            Kind::Input,
            Problem::new("compare.count", fault.to_string()),
        ),
    }
}
