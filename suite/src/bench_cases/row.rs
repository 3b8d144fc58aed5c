//! Reading a table, and reading the inputs of a row.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use measure::{Angle, Length, Mass, Size, Unit, read_length, read_size};

/// A table of cases.
#[derive(Debug)]
pub struct Table {
    /// Its rows in order.
    pub rows: Vec<Row>,
}

/// One case.
#[derive(Debug)]
pub struct Row {
    /// Its id.
    pub id: String,
    /// Its kind.
    pub kind: String,
    inputs: BTreeMap<String, String>,
    outputs: BTreeMap<String, String>,
    used: RefCell<BTreeSet<String>>,
}

/// Why a table can't be read.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// The text is no table.
    #[error("the table can't be read: {0}")]
    Unreadable(#[from] csv::Error),
    /// A column nobody knows.
    #[error("column {0} is not known; the columns are id, kind, inputs, outputs and note")]
    UnknownColumn(String),
    /// A column that must be there is not.
    #[error("column {0} is missing")]
    MissingColumn(&'static str),
    /// There are no rows.
    #[error("the table has no rows")]
    Empty,
    /// A kind nobody knows.
    #[error("row {id}: kind {kind} is not known; the kinds are {}", super::kinds().collect::<Vec<_>>().join(", "))]
    UnknownKind {
        /// The row.
        id: String,
        /// Its kind.
        kind: String,
    },
    /// Two rows share an id.
    #[error("two rows have the id {0}")]
    Twice(String),
    /// Something that is no `name=value`.
    #[error("row {id}: “{text}” is not written name=value")]
    NoPair {
        /// The row.
        id: String,
        /// As written.
        text: String,
    },
    /// A name that stands twice among a row's inputs or outputs.
    #[error("row {id}: {name} stands twice")]
    NameTwice {
        /// The row.
        id: String,
        /// The name.
        name: String,
    },
    /// A row that expects nothing.
    #[error("row {0} has no outputs to compare")]
    NothingExpected(String),
}

const NEEDED: [&str; 4] = ["id", "kind", "inputs", "outputs"];

impl Table {
    /// Reads CSV text; lines that start with `#` are comments.
    ///
    /// Errors: unknown or missing columns, unknown kinds, ids or names used twice, text that is no
    /// `name=value`, rows without outputs, no rows.
    pub fn read(text: &str) -> Result<Self, TableFault> {
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_reader(text.as_bytes());
        let headers: Vec<String> = reader.headers()?.iter().map(str::to_owned).collect();
        let is_known = |header: &str| NEEDED.contains(&header) || header == "note";
        if let Some(odd) = headers.iter().find(|header| !is_known(header)) {
            return Err(TableFault::UnknownColumn(odd.clone()));
        }
        if let Some(missing) = NEEDED
            .into_iter()
            .find(|needed| !headers.iter().any(|header| header == needed))
        {
            return Err(TableFault::MissingColumn(missing));
        }
        let mut rows: Vec<Row> = Vec::new();
        for record in reader.records() {
            let record = record?;
            let fields: BTreeMap<&str, &str> = headers
                .iter()
                .map(String::as_str)
                .zip(record.iter().map(str::trim))
                .collect();
            let row = Row::read(NEEDED.map(|name| fields.get(name).copied().unwrap_or("")))?;
            if rows.iter().any(|other| other.id == row.id) {
                return Err(TableFault::Twice(row.id));
            }
            rows.push(row);
        }
        if rows.is_empty() {
            return Err(TableFault::Empty);
        }
        Ok(Self { rows })
    }
}

impl Row {
    fn read([id, kind, inputs, outputs]: [&str; 4]) -> Result<Self, TableFault> {
        let row = Self {
            id: id.to_owned(),
            kind: kind.to_owned(),
            inputs: pairs(id, inputs)?,
            outputs: pairs(id, outputs)?,
            used: RefCell::default(),
        };
        if !super::kinds().any(|known| known == kind) {
            return Err(TableFault::UnknownKind {
                id: row.id,
                kind: row.kind,
            });
        }
        if row.outputs.is_empty() {
            return Err(TableFault::NothingExpected(row.id));
        }
        Ok(row)
    }

    /// Expected outputs, by name.
    pub(super) fn outputs(&self) -> impl Iterator<Item = (&str, &str)> {
        let each = self.outputs.iter();
        each.map(|(name, value)| (name.as_str(), value.as_str()))
    }

    /// Inputs that nobody asked for.
    pub(super) fn unused(&self) -> Vec<&str> {
        let used = self.used.borrow();
        let names = self.inputs.keys().filter(|name| !used.contains(*name));
        names.map(String::as_str).collect()
    }

    /// An input as written; asking for it counts as using it.
    pub(super) fn find(&self, name: &str) -> Option<&str> {
        self.used.borrow_mut().insert(name.to_owned());
        self.inputs.get(name).map(String::as_str)
    }

    /// An input the kind can't do without, as written.
    pub(super) fn text(&self, name: &str) -> Result<&str, String> {
        self.find(name)
            .ok_or_else(|| format!("input {name} is missing; kind {} needs it", self.kind))
    }

    pub(super) fn length(&self, name: &str) -> Result<Length, String> {
        length(name, self.text(name)?)
    }

    pub(super) fn lengths(&self, name: &str) -> Result<Vec<Length>, String> {
        let parts = self.text(name)?.split('|');
        parts.map(|part| length(name, part)).collect()
    }

    pub(super) fn size(&self, name: &str) -> Result<Size, String> {
        read_size(self.text(name)?, Unit::Inch).map_err(|error| format!("{name}: {error}"))
    }

    pub(super) fn angle(&self, name: &str) -> Result<Angle, String> {
        Angle::read(self.text(name)?).map_err(|error| format!("{name}: {error}"))
    }

    /// A mass whose number is in `unit`.
    pub(super) fn mass(&self, name: &str, unit: &str) -> Result<Mass, String> {
        let text = format!("{} {unit}", self.text(name)?);
        Mass::read_nearest(&text).map_err(|error| format!("{name}: {error}"))
    }

    pub(super) fn whole<T: std::str::FromStr>(&self, name: &str) -> Result<T, String> {
        let text = self.text(name)?;
        text.parse()
            .map_err(|_| format!("{name}: {text} is no whole number"))
    }

    /// A plain decimal in millionths.
    pub(super) fn millionths(&self, name: &str) -> Result<i64, String> {
        let text = self.text(name)?;
        millionths(text)
            .ok_or_else(|| format!("{name}: {text} is no decimal of six places or fewer"))
    }
}

fn length(name: &str, text: &str) -> Result<Length, String> {
    read_length(text, Unit::Inch).map_err(|error| format!("{name}: {error}"))
}

/// `name=value; name=value` by name.
fn pairs(id: &str, text: &str) -> Result<BTreeMap<String, String>, TableFault> {
    let mut found = BTreeMap::new();
    for part in text
        .split(';')
        .map(str::trim)
        .filter(|part| !part.is_empty())
    {
        let (name, value) = part
            .split_once('=')
            .map(|(name, value)| (name.trim(), value.trim()))
            .filter(|(name, value)| !name.is_empty() && !value.is_empty())
            .ok_or_else(|| TableFault::NoPair {
                id: id.to_owned(),
                text: part.to_owned(),
            })?;
        if found.insert(name.to_owned(), value.to_owned()).is_some() {
            return Err(TableFault::NameTwice {
                id: id.to_owned(),
                name: name.to_owned(),
            });
        }
    }
    Ok(found)
}

/// A plain decimal, exactly, in millionths; none where it has more than six places.
fn millionths(text: &str) -> Option<i64> {
    let (whole, decimals) = text.split_once('.').unwrap_or((text, ""));
    let decimals = decimals.trim_end_matches('0');
    let plain = |digits: &str| digits.bytes().all(|digit| digit.is_ascii_digit());
    if whole.is_empty() || decimals.len() > 6 || !plain(whole) || !plain(decimals) {
        return None;
    }
    format!("{whole}{decimals:0<6}").parse().ok()
}
