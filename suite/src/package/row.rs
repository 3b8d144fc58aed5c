//! Reading a table.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use super::columns::{INPUTS, KINDS, OUTPUTS};

/// A table of cases.
#[derive(Debug)]
pub struct Table {
    /// Its rows in order.
    pub rows: Vec<Row>,
}

/// One case.
#[derive(Debug)]
pub struct Row {
    fields: BTreeMap<String, String>,
    used: RefCell<BTreeSet<&'static str>>,
}

/// Why a table can't be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// The text is no table.
    #[error("the table can't be read: {0}")]
    Unreadable(#[from] csv::Error),
    /// A column nobody knows.
    #[error("column {0} is not known; the columns are those of suite/src/package/columns.rs")]
    UnknownColumn(String),
    /// A column that must be there is not.
    #[error("column {0} is missing")]
    MissingColumn(&'static str),
    /// There are no rows.
    #[error("the table has no rows")]
    Empty,
    /// A kind nobody knows.
    #[error("row {id}: kind {kind} is not known; the kinds are {}", KINDS.join(", "))]
    UnknownKind {
        /// The row.
        id: String,
        /// Its kind.
        kind: String,
    },
    /// Two rows share an id.
    #[error("two rows have the id {0}")]
    Twice(String),
}

impl Table {
    /// Reads CSV text; lines that start with `#` are comments.
    ///
    /// Errors: unknown or missing columns, unknown kinds, ids used twice, no rows.
    pub fn read(text: &str) -> Result<Self, TableFault> {
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_reader(text.as_bytes());
        let headers: Vec<String> = reader.headers()?.iter().map(str::to_owned).collect();
        for header in &headers {
            if !INPUTS.contains(&header.as_str()) && !OUTPUTS.contains(&header.as_str()) {
                return Err(TableFault::UnknownColumn(header.clone()));
            }
        }
        for wanted in ["id", "kind"] {
            if !headers.iter().any(|header| header == wanted) {
                return Err(TableFault::MissingColumn(wanted));
            }
        }
        let mut rows = Vec::new();
        let mut ids = BTreeSet::new();
        for record in reader.records() {
            let record = record?;
            let fields = headers
                .iter()
                .cloned()
                .zip(record.iter().map(|field| field.trim().to_owned()))
                .collect();
            let row = Row {
                fields,
                used: RefCell::default(),
            };
            if !KINDS.contains(&row.kind()) {
                return Err(TableFault::UnknownKind {
                    id: row.id().to_owned(),
                    kind: row.kind().to_owned(),
                });
            }
            if !ids.insert(row.id().to_owned()) {
                return Err(TableFault::Twice(row.id().to_owned()));
            }
            rows.push(row);
        }
        if rows.is_empty() {
            Err(TableFault::Empty)
        } else {
            Ok(Self { rows })
        }
    }
}

impl Row {
    /// Its id.
    pub fn id(&self) -> &str {
        self.fields.get("id").map_or("", String::as_str)
    }

    /// Its kind.
    pub fn kind(&self) -> &str {
        self.fields.get("kind").map_or("", String::as_str)
    }

    /// An input that is filled; asking for it counts as using it.
    pub(super) fn input(&self, column: &'static str) -> Option<&str> {
        assert!(INPUTS.contains(&column), "{column} is an input column");
        self.used.borrow_mut().insert(column);
        self.fields
            .get(column)
            .map(String::as_str)
            .filter(|field| !field.is_empty())
    }

    /// An expected value that is filled.
    pub(super) fn expected(&self, column: &str) -> Option<&str> {
        self.fields
            .get(column)
            .map(String::as_str)
            .filter(|field| !field.is_empty())
    }

    /// Inputs that are filled and that nobody asked for.
    pub(super) fn unused(&self) -> Vec<&'static str> {
        let used = self.used.borrow();
        let plain = ["id", "kind", "note"];
        INPUTS
            .iter()
            .copied()
            .filter(|column| !plain.contains(column) && !used.contains(column))
            .filter(|column| {
                self.fields
                    .get(*column)
                    .is_some_and(|field| !field.is_empty())
            })
            .collect()
    }
}
