//! `rabbet job weight`

use clap::Args;

use super::answer::{How, shown};
use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;

/// Weighs a job part by part, and tells what it hangs by, how its wire pulls and who may lift it
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job weight print.toml", after_help = EXIT_CODES)]
pub struct JobWeight {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Explain one value, or list those whose names begin so
    #[arg(long, value_name = "PATH", conflicts_with = "working")]
    why: Option<String>,
    /// Every line of the working too
    #[arg(long)]
    working: bool,
    /// As JSON; with --working, its lines too
    #[arg(long)]
    json: bool,
}

impl JobWeight {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = job_file::derive(&self.file, desk)?;
        let answer = web::care::weight(&derived.job, &derived.sizes);
        let how = How {
            why: self.why.clone(),
            working: self.working,
            json: self.json,
        };
        desk.terminal
            .data(&shown(&answer, derived.sizes.unit(), &how, desk)?)?;
        Ok(Exit::Done)
    }
}
