//! The rows of a list, one at a time.

mod csv;
mod sheet;

pub(super) use csv::each_row as each_csv_row;
pub(super) use sheet::each_row as each_sheet_row;

/// A row of a list.
pub(super) struct Row {
    /// From 1, as a spreadsheet counts.
    pub number: u32,
    /// Its cells, from the first column on.
    pub cells: Vec<Cell>,
}

/// What a cell holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) enum Cell {
    /// Nothing, or only spaces.
    #[default]
    Blank,
    /// Text, trimmed.
    Text(String),
    /// A number of the spreadsheet itself, in plain digits with a point.
    Number(String),
    /// A date of the spreadsheet.
    Date,
    /// A failed formula.
    Failed(String),
    /// Bytes that are no text.
    NotText,
}

impl Cell {
    fn of_text(text: &str) -> Self {
        let text = text.trim_matches(|c: char| c.is_whitespace() || c == '\u{feff}');
        if text.is_empty() {
            Self::Blank
        } else {
            Self::Text(text.to_owned())
        }
    }
}

/// Why a list can't be read at all.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ListFault {
    /// The bytes stop coming.
    #[error("it can't be read on after row {row}: {reason}")]
    Broken {
        /// The last row that was read.
        row: u32,
        /// The system's reason.
        reason: String,
    },
    /// A quote that is never closed, or no line ends.
    #[error(
        "after row {row} more than a million bytes follow without the row's end; close the quotes there, or say `quotes = false` in the mapping"
    )]
    Endless {
        /// The last row that was read.
        row: u32,
    },
    /// UTF-16 text.
    #[error("it is UTF-16 text; save it as CSV in UTF-8")]
    Utf16,
    /// More rows than any spreadsheet has.
    #[error("it has more than 1048576 rows; cut it into several lists")]
    TooManyRows,
    /// No row with the headings.
    #[error(
        "it ends before row {header}, where the mapping has the headings; change `header`, or is it the right file?"
    )]
    NoHeader {
        /// Where they should stand.
        header: u32,
    },
    /// Nothing but headings.
    #[error("there are no rows below the headings in row {header}; is it the right file?")]
    NoRows {
        /// Where they stand.
        header: u32,
    },
    /// Headings that the mapping names and the list lacks.
    #[error(
        "row {header} has no heading \"{heading}\"; it has {there}. Change the mapping, or its `header` or `delimiter`"
    )]
    NoHeading {
        /// The row.
        header: u32,
        /// The heading named.
        heading: String,
        /// Those it has.
        there: String,
    },
    /// Two columns of one heading.
    #[error(
        "row {header} has the heading \"{heading}\" twice, in {first} and {second}; name the column by its letter, as {{ letter = \"{first}\" }}"
    )]
    TwoHeadings {
        /// The row.
        header: u32,
        /// The heading.
        heading: String,
        /// The one letter.
        first: String,
        /// The other.
        second: String,
    },
    /// Not a workbook.
    #[error(
        "it can't be read as a workbook: {reason}; open it in a spreadsheet and save it again as XLSX or CSV"
    )]
    NotWorkbook {
        /// What the reader says.
        reason: String,
    },
    /// A workbook that unpacks to far more than a price list.
    #[error("the workbook unpacks to more than 512 MiB; save the one sheet as CSV")]
    TooLarge,
    /// A sheet that is not there.
    #[error("the workbook has no sheet \"{name}\"; it has {there}. Change `sheet` in the mapping")]
    NoSheet {
        /// The sheet named.
        name: String,
        /// Those it has.
        there: String,
    },
}

impl ListFault {
    /// A stable code for programs.
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Broken { .. } => "list.broken",
            Self::Endless { .. } => "list.endless",
            Self::Utf16 => "list.utf16",
            Self::TooManyRows => "list.too_many_rows",
            Self::NoHeader { .. } | Self::NoRows { .. } => "list.no_rows",
            Self::NoHeading { .. } => "list.no_heading",
            Self::TwoHeadings { .. } => "list.two_headings",
            Self::NotWorkbook { .. } => "list.not_workbook",
            Self::TooLarge => "list.too_large",
            Self::NoSheet { .. } => "list.no_sheet",
        }
    }
}

/// The rows of the largest sheet a spreadsheet holds.
const MOST_ROWS: u32 = 1 << 20; // geometry: of the file form

/// Counts a row, and refuses one too many.
fn counted(number: u32) -> Result<u32, ListFault> {
    if number > MOST_ROWS {
        Err(ListFault::TooManyRows)
    } else {
        Ok(number)
    }
}
