//! The files of cases: what each asks, what it expects, how near is near enough.

use super::Line;
use super::answers::{Answers, Found};
use super::row::{Row, Table, TableFault};
use super::tolerance::Tolerance;
use super::{attachment, boards, climate, colour, glazing, lifting, light, loads, paper, wood};

/// A file of cases.
pub(super) struct Kind {
    /// Its name.
    pub(super) file: &'static str,
    /// Columns that ask.
    pub(super) inputs: &'static [&'static str],
    /// Columns that expect.
    pub(super) outputs: &'static [(&'static str, Tolerance)],
    /// Asks the program.
    pub(super) answer: fn(&Row) -> Result<Answers, String>,
}

/// Columns every file of cases has.
const NEEDED: [&str; 3] = ["case_id", "status", "source_id"];
/// Columns it may have.
const MAY: [&str; 1] = ["note"];

/// Every file of cases.
pub(super) fn all() -> impl Iterator<Item = &'static Kind> {
    [
        light::KINDS,
        climate::KINDS,
        wood::KINDS,
        glazing::KINDS,
        boards::KINDS,
        attachment::KINDS,
        loads::KINDS,
        lifting::KINDS,
        colour::KINDS,
        paper::KINDS,
    ]
    .into_iter()
    .flatten()
}

/// The one with this name.
pub(super) fn find(name: &str) -> Option<&'static Kind> {
    all().find(|kind| kind.file == name)
}

impl Kind {
    /// Judges a table of its cases.
    pub(super) fn judge(&self, text: &str) -> Result<Vec<Line>, TableFault> {
        let table = Table::read(text)?;
        let outputs = self.outputs.iter().map(|(column, _)| *column);
        let needed: Vec<&str> = NEEDED
            .into_iter()
            .chain(self.inputs.iter().copied())
            .chain(outputs)
            .collect();
        table.look_over(&needed, &MAY)?;
        Ok(table.rows.iter().flat_map(|row| self.lines(row)).collect())
    }

    fn lines(&self, row: &Row) -> Vec<Line> {
        match (self.answer)(row) {
            Ok(found) => self
                .outputs
                .iter()
                .map(|(column, tolerance)| line(row, column, tolerance, &found))
                .collect(),
            Err(why) => vec![Line {
                quantity: "all of it".to_owned(),
                value: why,
                expected: "an answer".to_owned(),
                tolerance: "nothing".to_owned(),
                agrees: false,
                ..about(row)
            }],
        }
    }
}

/// A line about a row, of which nothing is compared yet.
fn about(row: &Row) -> Line {
    Line {
        case: row.text("case_id").to_owned(),
        quantity: String::new(),
        value: String::new(),
        expected: String::new(),
        tolerance: String::new(),
        source: row.text("source_id").to_owned(),
        agrees: false,
    }
}

/// One value compared. A blank cell expects that there is none: a number beside it differs.
fn line(row: &Row, column: &str, tolerance: &Tolerance, found: &Answers) -> Line {
    let expected = row.text(column);
    let found = found.iter().find(|(name, _)| *name == column);
    let (value, agrees) = match found.map(|(_, found)| found) {
        None => ("no answer".to_owned(), expected.is_empty()),
        Some(Found::Number(number)) => (
            number.to_string(),
            row.number(column)
                .is_ok_and(|expected| tolerance.holds(*number, expected)),
        ),
        Some(Found::Word(word)) => (word.clone(), word == expected),
        Some(Found::Yes(yes)) => (
            u8::from(*yes).to_string(),
            row.yes(column).is_ok_and(|expected| expected == *yes),
        ),
    };
    Line {
        quantity: column.to_owned(),
        value,
        expected: if expected.is_empty() {
            "nothing".to_owned()
        } else {
            expected.to_owned()
        },
        tolerance: tolerance.to_string(),
        agrees,
        ..about(row)
    }
}
