//! `rabbet record key`

use std::path::Path;

use clap::Args;
use serde_json::json;

use super::signing;
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;

/// Makes the key a shop signs its records with, or tells the public half of one that is there
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet record key shop.key", after_help = EXIT_CODES)]
pub struct RecordKeyCommand {
    /// The key file; made where it is not there yet, never replaced
    #[arg(value_name = "FILE")]
    file: String,
    /// As JSON
    #[arg(long)]
    json: bool,
    /// Say what would be made, and make nothing
    #[arg(long)]
    dry_run: bool,
}

impl RecordKeyCommand {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let there = Path::new(&self.file).exists();
        if !there && self.dry_run {
            desk.terminal.talk(&format!(
                "{}: a key would be made; nothing is (--dry-run)",
                self.file
            ));
            return Ok(Exit::Done);
        }
        let key = if there {
            signing::read(&self.file)?
        } else {
            let key = signing::make(&self.file)?;
            desk.terminal.talk(&format!(
                "{}: written, for this account alone; keep a copy with the shop's backups",
                self.file
            ));
            key
        };
        let text = if self.json {
            format!("{:#}\n", json!({ "public": key.public(), "made": !there }))
        } else {
            format!("{}\n", key.public())
        };
        desk.terminal.data(&text)?;
        Ok(Exit::Done)
    }
}
