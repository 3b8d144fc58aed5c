//! The imports of a catalogue file, beside it, so that each can be taken back.

use std::path::{Path, PathBuf};

use pricing::supplier::Undo;
use serde::{Deserialize, Serialize};

use crate::files;
use crate::problem::{Kind, Problem, Trouble};

/// The imports of a catalogue, the last one last.
#[derive(Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct History {
    /// Version of the form.
    history: u32,
    /// The imports.
    pub imports: Vec<Import>,
}

/// An import that was written.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Import {
    /// Whether there was no catalogue before it.
    pub made: bool,
    /// What takes it back.
    pub change: Undo,
}

/// The version of the form.
const VERSION: u32 = 1;

impl History {
    /// Where the imports of a catalogue are kept: its name with `.undo` after it.
    pub fn place(catalogue: &str) -> PathBuf {
        PathBuf::from(format!("{catalogue}.undo"))
    }

    /// The imports so far; none where none was made.
    ///
    /// # Errors
    /// A record that can't be read; nothing is done without it.
    pub fn read(catalogue: &str) -> Result<Self, Trouble> {
        let place = Self::place(catalogue);
        let name = place.to_string_lossy();
        if !place.exists() {
            return Ok(Self {
                history: VERSION,
                imports: Vec::new(),
            });
        }
        let bytes = files::read(&name)?;
        let history: Option<Self> = serde_json::from_slice(&bytes).ok();
        history
            .filter(|history| history.history == VERSION)
            .ok_or_else(|| {
                let problem = Problem::new(
                    "prices.history",
                    "this is not the record of imports it should be",
                )
                .hint("move the file away; imports before it can then no longer be taken back");
                Trouble::one(Kind::Document, problem.in_file(&name))
            })
    }

    /// Keeps the imports; a record of none is removed.
    ///
    /// # Errors
    /// Whatever keeps it from being written.
    pub fn keep(&self, catalogue: &str) -> Result<(), Trouble> {
        let place = Self::place(catalogue);
        if self.imports.is_empty() {
            return files::remove(&place);
        }
        let json = serde_json::to_vec(self).map_err(|error| {
            Trouble::one(
                Kind::Ours,
                Problem::new("prices.history", error.to_string()),
            )
        })?;
        files::put(Path::new(&place), &json, true)
    }
}

/// The text of a catalogue file, byte for byte; none where there is no such file.
///
/// # Errors
/// A file that can't be reached or is not UTF-8.
pub fn catalogue_text(catalogue: &str) -> Result<Option<String>, Trouble> {
    if !Path::new(catalogue).exists() {
        return Ok(None);
    }
    let bytes = files::read(catalogue)?;
    String::from_utf8(bytes).map(Some).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let sentence = format!("the file is not UTF-8 text: byte {at} can't be read");
        let problem = Problem::new("file.not_text", sentence).hint("save it as UTF-8");
        Trouble::one(Kind::Shop, problem.in_file(catalogue))
    })
}
