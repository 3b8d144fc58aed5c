//! `rabbet job convert`

use clap::{Args, ValueEnum};

use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;

/// Prints a job document in its other form; remarks are left behind
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job convert print.toml --to json", after_help = EXIT_CODES)]
pub struct JobConvert {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// The form that is wanted
    #[arg(long, value_enum)]
    to: Form,
}

/// Forms of the document.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Form {
    /// For people
    Toml,
    /// For programs
    Json,
}

impl JobConvert {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let job = job_file::read(&self.file)?;
        let text = match self.to {
            Form::Toml => job.to_toml(),
            Form::Json => format!("{:#}\n", job.to_json()),
        };
        desk.terminal.data(&text)?;
        Ok(Exit::Done)
    }
}
