//! What takes an import back.

use std::fmt::Write as _;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use trade::Date;

/// What takes an import back: every place it wrote to, and what stood there before.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Undo {
    /// Version of the form.
    #[serde(rename = "undo")]
    pub(super) version: u32,
    /// Whose list it was.
    pub supplier: String,
    /// The day its prices hold from.
    pub on: Date,
    /// The text before.
    pub before: Print,
    /// The text after.
    pub after: Print,
    pub(super) edits: Vec<Edit>,
}

/// A place of the new text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Edit {
    /// Where, in bytes.
    pub at: usize,
    /// How many bytes were put there.
    pub length: usize,
    /// What stood there.
    pub was: String,
}

/// What tells one text from any other.
///
/// Source: SHA-256, FIPS 180-4.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Print {
    /// Its length in bytes.
    pub bytes: usize,
    /// Its SHA-256, in hexadecimal.
    pub sha256: String,
}

impl Print {
    /// The print of a text.
    pub fn of(text: &str) -> Self {
        let digest = Sha256::digest(text.as_bytes());
        let sha256 = digest.iter().fold(String::new(), |mut text, byte| {
            write!(text, "{byte:02x}").expect("a string takes any text");
            text
        });
        Self {
            bytes: text.len(),
            sha256,
        }
    }
}

/// Why an import is not taken back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum UndoFault {
    /// The text is not the one the import left.
    #[error(
        "the catalogue was changed after this import; what was written by hand would be lost. Take that change back first, or mend the prices by hand"
    )]
    Changed,
    /// The text is the one from before it.
    #[error("the catalogue is as it was before this import; there is nothing to take back")]
    Already,
    /// The record does not lead back to the text it names.
    #[error(
        "the undo record does not lead back to the catalogue it names; nothing is changed. Restore the catalogue from a copy"
    )]
    Damaged,
}

impl Undo {
    /// The text as it was before the import, byte for byte.
    ///
    /// Errors: a text that is not the one the import left, and a record that does not lead back.
    pub fn take_back(&self, text: &str) -> Result<String, UndoFault> {
        let now = Print::of(text);
        if now != self.after {
            return Err(if now == self.before {
                UndoFault::Already
            } else {
                UndoFault::Changed
            });
        }
        let old = self.unedited(text).ok_or(UndoFault::Damaged)?;
        if Print::of(&old) == self.before {
            Ok(old)
        } else {
            Err(UndoFault::Damaged)
        }
    }

    fn unedited(&self, text: &str) -> Option<String> {
        let mut old = String::new();
        let mut copied = 0;
        for edit in &self.edits {
            old.push_str(text.get(copied..edit.at)?);
            old.push_str(&edit.was);
            copied = edit.at.checked_add(edit.length)?;
        }
        old.push_str(text.get(copied..)?);
        Some(old)
    }
}
