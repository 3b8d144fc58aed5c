//! `rabbet prices undo`

use std::path::Path;

use clap::Args;
use pricing::supplier::UndoFault;
use serde_json::json;

use super::history::{History, Import, catalogue_text};
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::files;
use crate::problem::{Kind, Problem, Trouble};

/// Takes the last import of a price list back: the catalogue is as it was, byte for byte
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet prices undo --catalogue shop.toml", after_help = EXIT_CODES)]
pub struct PricesUndo {
    /// The catalogue file
    #[arg(long, value_name = "FILE")]
    catalogue: String,
    /// Say what would be taken back, and write nothing
    #[arg(long)]
    dry_run: bool,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl PricesUndo {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let mut history = History::read(&self.catalogue)?;
        let Some(last) = history.imports.pop() else {
            let problem =
                Problem::new("prices.no_import", "no import was made into this catalogue")
                    .hint("name the catalogue that `rabbet prices import` wrote");
            return Err(self.trouble(problem));
        };
        let text = catalogue_text(&self.catalogue)?.unwrap_or_default();
        match last.change.take_back(&text) {
            Ok(old) => self.restore(&last, &old, &history)?,
            // The import, or taking it back, was broken off between the two files.
            Err(UndoFault::Already) if !self.dry_run => history.keep(&self.catalogue)?,
            Err(UndoFault::Already) => {}
            Err(fault) => {
                return Err(self.trouble(Problem::new(code(fault), fault.to_string())));
            }
        }
        self.tell(&last, desk)
    }

    fn restore(&self, last: &Import, old: &str, history: &History) -> Result<(), Trouble> {
        if self.dry_run {
            return Ok(());
        }
        let place = Path::new(&self.catalogue);
        if last.made && old.is_empty() {
            files::remove(place)?;
        } else {
            files::put(place, old.as_bytes(), true)?;
        }
        history.keep(&self.catalogue)
    }

    fn tell(&self, last: &Import, desk: &Desk) -> Result<Exit, Trouble> {
        let change = &last.change;
        if self.json {
            let told = json!({
                "catalogue": self.catalogue,
                "supplier": change.supplier,
                "on": change.on.to_string(),
                "dry_run": self.dry_run,
                "bytes": change.before.bytes,
            });
            desk.terminal.data(&format!("{told:#}\n"))?;
            return Ok(Exit::Done);
        }
        let what = format!("the list of {} from {}", change.supplier, change.on);
        let told = if self.dry_run {
            format!("would take back {what}; nothing is (--dry-run)")
        } else {
            format!("{what} is taken back")
        };
        desk.terminal.talk(&format!("{}: {told}", self.catalogue));
        Ok(Exit::Done)
    }

    fn trouble(&self, problem: Problem) -> Trouble {
        Trouble::one(Kind::Shop, problem.in_file(&self.catalogue))
    }
}

const fn code(fault: UndoFault) -> &'static str {
    match fault {
        UndoFault::Changed => "prices.changed_since",
        UndoFault::Already => "prices.already",
        UndoFault::Damaged => "prices.damaged",
    }
}
