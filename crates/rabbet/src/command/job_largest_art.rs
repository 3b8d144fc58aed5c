//! `rabbet job largest-art`

use clap::Args;
use serde_json::json;

use super::job_sizes::all_lines;
use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::report::{Report, Words};
use web::wire;

/// Shows the largest art that a frame at hand (the job's [fit]) and its borders leave room for
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job largest-art fit.toml", after_help = EXIT_CODES)]
pub struct JobLargestArt {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Every line of the working too
    #[arg(long)]
    working: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl JobLargestArt {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let job = job_file::read(&self.file)?;
        let (settings, catalogue) = (desk.shop.settings(job.units)?, desk.shop.catalogue()?);
        let largest = sizing::largest_art(&job, &catalogue, &settings)
            .map_err(|faults| Trouble::piece(job_file::shown(&self.file), &faults))?;
        let unit = job.units.unit();
        if self.json {
            let mut value = json!({ "art": wire::size(largest.art.size(), unit) });
            if self.working {
                value["working"] = wire::working(&largest.working, unit).into();
            }
            desk.terminal.data(&format!("{value:#}\n"))?;
            return Ok(Exit::Done);
        }
        let mut report = Report::default();
        Words::exact(unit, &largest.working).worked_size(
            report.group("Largest art"),
            "art",
            largest.art,
        );
        let mut text = report.render(desk.terminal);
        if self.working {
            text.push('\n');
            text.push_str(&all_lines(&largest.working));
        }
        desk.terminal.data(&text)?;
        Ok(Exit::Done)
    }
}
