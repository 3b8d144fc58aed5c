//! `rabbet job place`

use clap::Args;

use super::answer::{How, shown};
use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{Kind, Problem, Trouble};

/// Tells what light and air do to a job where it will hang (its [place]), and what a change would buy
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job place print.toml", after_help = EXIT_CODES)]
pub struct JobPlace {
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

impl JobPlace {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = job_file::derive(&self.file, desk)?;
        let catalogue = desk.shop.catalogue()?;
        let answer = web::care::place(&derived.job, &derived.sizes, &catalogue);
        let answer = answer.map_err(|refusal| {
            let problem = Problem::new("place.refused", refusal);
            Trouble::one(Kind::Piece, problem.in_file(job_file::shown(&self.file)))
        })?;
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
