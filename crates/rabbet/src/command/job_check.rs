//! `rabbet job check`

use clap::Args;
use serde_json::{Value, json};
use sizing::Fault;

use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use web::wire;

/// Tells what is wrong with jobs, and what would cure it
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job check print.toml canvas.toml", after_help = EXIT_CODES)]
pub struct JobCheck {
    /// Job files; - is stdin
    #[arg(value_name = "FILE", required = true)]
    files: Vec<String>,
    /// The faults as JSON on stdout
    #[arg(long)]
    json: bool,
}

impl JobCheck {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let mut worst = Exit::Done;
        let mut checked = Vec::new();
        for file in &self.files {
            let (exit, entry) = self.check(file, desk);
            checked.push(entry);
            if exit.code() > worst.code() {
                worst = exit;
            }
        }
        if self.json {
            desk.terminal
                .data(&format!("{:#}\n", json!({ "checked": checked })))?;
        }
        Ok(worst)
    }

    fn check(&self, file: &str, desk: &Desk) -> (Exit, Value) {
        let name = job_file::shown(file);
        match job_file::derive(file, desk) {
            Ok(derived) => {
                let faults = &derived.sizes.faults;
                let refused = derived.sizes.is_refused();
                job_file::tell(file, faults, desk);
                if !self.json && !refused {
                    desk.terminal.talk(&format!("{name}: {}", verdict(faults)));
                }
                let exit = if refused { Exit::Refused } else { Exit::Done };
                (
                    exit,
                    json!({ "file": name, "refused": refused, "faults": wire::faults(faults, &derived.sizes.working) }),
                )
            }
            Err(trouble) => {
                let exit = trouble.tell(desk.terminal);
                (
                    exit,
                    json!({ "file": name, "refused": true, "problem": trouble.as_json() }),
                )
            }
        }
    }
}

fn verdict(faults: &[Fault]) -> String {
    match faults.len() {
        0 => "nothing stands in the way".to_owned(),
        1 => "it can be made; mind the one above".to_owned(),
        several => format!("it can be made; mind the {several} above"),
    }
}
