//! Reference tables: published figures and worked cases, file by file, held against the program.
//!
//! A file of cases has a row a case: inputs, expected outputs, and `case_id`, `status`, `source_id`, `note`. Each
//! is answered by the rooms of the program; nothing is worked out here that one of them works out. A file of
//! constants is held against the program's own copy, cell by cell, and against the arithmetic that ties its
//! columns together. A file, a column or a key that nobody knows fails.

mod answers;
mod attachment;
mod boards;
mod climate;
mod colour;
mod constants;
mod facts;
mod glazing;
mod kinds;
mod lifting;
mod light;
mod loads;
mod paper;
mod row;
mod tolerance;
mod wood;

pub use row::TableFault;
pub use tolerance::Tolerance;

/// What came of one value.
#[derive(Clone, Debug)]
pub struct Line {
    /// The case, or the row of a table.
    pub case: String,
    /// Which of its values.
    pub quantity: String,
    /// What the program gives.
    pub value: String,
    /// What the table expects.
    pub expected: String,
    /// How far apart they may lie, and why.
    pub tolerance: String,
    /// Codes of the sources.
    pub source: String,
    /// Whether they lie no further apart.
    pub agrees: bool,
}

impl std::fmt::Display for Line {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let word = if self.agrees { "agrees" } else { "DIFFERS" };
        write!(
            f,
            "{} {}: {word}: {}, expected {}, within {} [{}]",
            self.case, self.quantity, self.value, self.expected, self.tolerance, self.source
        )
    }
}

/// Why a file could not be judged.
#[derive(Debug, thiserror::Error)]
pub enum FileFault {
    /// No such file is known.
    #[error("no check knows a file {0}; rename it, or add its check to suite/src/reference")]
    UnknownFile(String),
    /// It can't be read as its kind of table.
    #[error(transparent)]
    Table(#[from] TableFault),
    /// It can't be read as TOML.
    #[error("it can't be read: {0}")]
    Unreadable(String),
}

/// Whether a check knows a file of this name.
pub fn knows(name: &str) -> bool {
    kinds::find(name).is_some() || constants::find(name) || facts::find(name)
}

/// Every file a check knows.
pub fn files() -> impl Iterator<Item = &'static str> {
    let cases = kinds::all().map(|kind| kind.file);
    cases.chain(constants::FILES).chain(facts::FILES)
}

/// Judges one file by its name.
///
/// Errors: an unknown file, one that can't be read, unknown or missing columns or keys, no rows.
pub fn judge(name: &str, text: &str) -> Result<Vec<Line>, FileFault> {
    if let Some(kind) = kinds::find(name) {
        return Ok(kind.judge(text)?);
    }
    if constants::find(name) {
        return Ok(constants::judge(name, text)?);
    }
    if facts::find(name) {
        return facts::judge(name, text);
    }
    Err(FileFault::UnknownFile(name.to_owned()))
}
