//! Reading a table and the cells of a row.

use std::collections::BTreeMap;

use measure::{Length, Mass};

/// A table of named columns.
#[derive(Debug)]
pub(super) struct Table {
    pub(super) columns: Vec<String>,
    pub(super) rows: Vec<Row>,
}

/// One row.
#[derive(Debug)]
pub(super) struct Row {
    cells: BTreeMap<String, String>,
}

/// Why a table can't be judged.
#[derive(Debug, thiserror::Error)]
pub enum TableFault {
    /// The text is no table.
    #[error("the table can't be read: {0}")]
    Unreadable(#[from] csv::Error),
    /// A column nobody knows.
    #[error("column {column} is not known; the columns are {}", .known.join(", "))]
    UnknownColumn {
        /// As written.
        column: String,
        /// Those there may be.
        known: Vec<String>,
    },
    /// A column that must be there is not.
    #[error("column {0} is missing")]
    MissingColumn(String),
    /// Two columns share a name.
    #[error("column {0} stands twice")]
    ColumnTwice(String),
    /// There are no rows.
    #[error("the table has no rows")]
    Empty,
}

impl Table {
    /// Reads CSV text; lines that start with `#` are comments.
    pub(super) fn read(text: &str) -> Result<Self, TableFault> {
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_reader(text.as_bytes());
        let columns: Vec<String> = reader.headers()?.iter().map(str::to_owned).collect();
        let mut seen = std::collections::BTreeSet::new();
        if let Some(twice) = columns.iter().find(|column| !seen.insert(column.as_str())) {
            return Err(TableFault::ColumnTwice(twice.clone()));
        }
        let mut rows = Vec::new();
        for record in reader.records() {
            let record = record?;
            let fields = record.iter().map(|field| field.trim().to_owned());
            let cells = columns.iter().cloned().zip(fields).collect();
            rows.push(Row { cells });
        }
        if rows.is_empty() {
            return Err(TableFault::Empty);
        }
        Ok(Self { columns, rows })
    }

    /// Refuses a column outside `needed` and `may`, and one of `needed` that is not there.
    pub(super) fn look_over(&self, needed: &[&str], may: &[&str]) -> Result<(), TableFault> {
        let known = || needed.iter().chain(may);
        if let Some(odd) = self
            .columns
            .iter()
            .find(|column| !known().any(|name| name == column))
        {
            return Err(TableFault::UnknownColumn {
                column: odd.clone(),
                known: known().map(|name| (*name).to_owned()).collect(),
            });
        }
        let is_there = |name: &&&str| !self.columns.iter().any(|column| column == **name);
        match needed.iter().find(is_there) {
            Some(missing) => Err(TableFault::MissingColumn((*missing).to_owned())),
            None => Ok(()),
        }
    }
}

impl Row {
    /// A cell as written; empty where there is none.
    pub(super) fn text(&self, column: &str) -> &str {
        self.cells.get(column).map_or("", String::as_str)
    }

    /// A cell as a number.
    pub(super) fn number(&self, column: &str) -> Result<f64, String> {
        let text = self.text(column);
        let number = text.parse::<f64>().ok().filter(|number| number.is_finite());
        number.ok_or_else(|| format!("{column}: “{text}” is no number"))
    }

    /// A cell as a whole number.
    pub(super) fn whole<T: std::str::FromStr>(&self, column: &str) -> Result<T, String> {
        let text = self.text(column);
        text.parse()
            .map_err(|_| format!("{column}: “{text}” is no whole number"))
    }

    /// A cell that is 1 for yes and 0 for no.
    pub(super) fn yes(&self, column: &str) -> Result<bool, String> {
        match self.text(column) {
            "1" => Ok(true),
            "0" => Ok(false),
            other => Err(format!("{column}: “{other}” is neither 1 nor 0")),
        }
    }

    /// A cell in millimetres, to the nearest quantum.
    pub(super) fn mm(&self, column: &str) -> Result<Length, String> {
        let number = self.number(column)?;
        Length::nearest_from_mm(number).ok_or_else(|| format!("{column}: {number} mm is too long"))
    }

    /// A cell in inches, to the nearest quantum.
    pub(super) fn inches(&self, column: &str) -> Result<Length, String> {
        let number = self.number(column)?;
        Length::INCH
            .scaled_nearest(number)
            .ok_or_else(|| format!("{column}: {number} in is too long"))
    }

    /// A cell in kilograms, to the nearest nanogram.
    pub(super) fn kilograms(&self, column: &str) -> Result<Mass, String> {
        let text = format!("{} kg", self.text(column));
        Mass::read_nearest(&text).map_err(|error| format!("{column}: {error}"))
    }
}
