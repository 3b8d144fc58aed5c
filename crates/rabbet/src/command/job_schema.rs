//! `rabbet job schema`

use clap::Args;
use trade::Job;

use super::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;

/// Prints the JSON Schema of the job document
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job schema", after_help = EXIT_CODES)]
pub struct JobSchema {
    /// It is JSON already; the flag is taken so that every read takes it
    #[arg(long, hide = true)]
    json: bool,
}

impl JobSchema {
    #[allow(clippy::unused_self, reason = "every command runs alike")]
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        desk.terminal.data(&format!("{:#}\n", Job::schema()))?;
        Ok(Exit::Done)
    }
}
