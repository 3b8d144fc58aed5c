//! `rabbet completions`

use clap::Args;
use clap_complete::Shell;

use super::{Desk, whole};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;

/// Writes a script that lets a shell finish commands
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet completions bash", after_help = EXIT_CODES)]
pub struct Completions {
    /// The shell
    #[arg(value_enum)]
    shell: Shell,
}

impl Completions {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let mut script = Vec::new();
        clap_complete::generate(self.shell, &mut whole(), "rabbet", &mut script);
        desk.terminal.bytes(&script)?;
        Ok(Exit::Done)
    }
}
