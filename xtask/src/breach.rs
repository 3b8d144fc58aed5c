//! What a check found, and what keeps a check from running at all.

use std::fmt;
use std::io;
use std::path::PathBuf;

/// One departure from the house rules: where, and a sentence that says what to change.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Breach {
    file: String,
    line: Option<usize>,
    sentence: String,
}

impl Breach {
    /// A breach at one line of a file; lines count from 1.
    pub fn at(file: &str, line: usize, sentence: String) -> Self {
        Self {
            file: file.to_owned(),
            line: Some(line),
            sentence,
        }
    }

    /// A breach by a file as a whole.
    pub fn by(file: &str, sentence: String) -> Self {
        Self {
            file: file.to_owned(),
            line: None,
            sentence,
        }
    }
}

impl fmt::Display for Breach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            Some(line) => write!(f, "{}:{line}: {}", self.file, self.sentence),
            None => write!(f, "{}: {}", self.file, self.sentence),
        }
    }
}

/// Why a chore could not be carried out.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// The current folder is not inside the workspace.
    #[error("no folder above {} holds xtask/Cargo.toml; run this inside the repository", .start.display())]
    OutsideRepository { start: PathBuf },
    /// A file or folder could not be read or written.
    #[error("{}: {source}", .path.display())]
    File { path: PathBuf, source: io::Error },
    /// A program could not be started.
    #[error("{program} could not be started: {source}")]
    Start {
        program: &'static str,
        source: io::Error,
    },
    /// A program ran and reported failure.
    #[error("{program} failed: {said}")]
    Failed { program: &'static str, said: String },
    /// The answer of `cargo metadata` has another shape than expected.
    #[error("the answer of cargo metadata could not be read: {source}")]
    Metadata { source: serde_json::Error },
    /// A name in the tree is not UTF-8.
    #[error("the file name {name:?} is not UTF-8; rename it")]
    Name { name: String },
    /// The report could not be printed.
    #[error("the report could not be printed: {0}")]
    Print(#[from] io::Error),
}
