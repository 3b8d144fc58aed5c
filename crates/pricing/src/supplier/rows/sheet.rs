//! Rows of a workbook's sheet.

use std::io::{self, Read, Seek};

use calamine::{DataRef, Reader, Xlsx, XlsxError};

use super::{Cell, ListFault, Row, counted};
use crate::supplier::mapping::Mapping;

/// What a workbook may unpack to, in bytes.
const LARGEST: u64 = 512 << 20; // geometry: bytes kept in memory

/// Columns that are looked at, as many as a spreadsheet has.
const MOST_COLUMNS: u32 = 1 << 14; // geometry: of the file form

/// Hands every row that holds anything to `take`, in order.
///
/// Shape:  numbers arrive as the fifteen digits a spreadsheet shows.
/// Errors: whatever keeps the sheet from being read to its end, and what `take` refuses.
pub fn each_row(
    mut list: impl Read + Seek,
    mapping: &Mapping,
    mut take: impl FnMut(Row) -> Result<(), ListFault>,
) -> Result<(), ListFault> {
    refuse_what_swells(&mut list, LARGEST)?;
    let mut book = Xlsx::new(list).map_err(|error| no_workbook(&error))?;
    let name = sheet_name(&book, mapping)?;
    let mut cells = book
        .worksheet_cells_reader(&name)
        .map_err(|error| no_workbook(&error))?;
    let mut row = Row {
        number: 0,
        cells: Vec::new(),
    };
    while let Some(cell) = cells.next_cell().map_err(|error| no_workbook(&error))? {
        let (down, across) = cell.get_position();
        let number = counted(down.saturating_add(1))?;
        if number < row.number || across >= MOST_COLUMNS {
            let reason = "its cells are not in order".to_owned();
            return Err(ListFault::NotWorkbook { reason });
        }
        if number > row.number {
            let full = std::mem::replace(
                &mut row,
                Row {
                    number,
                    cells: Vec::new(),
                },
            );
            hand_on(full, &mut take)?;
        }
        let across = usize::try_from(across).unwrap_or(0);
        if row.cells.len() <= across {
            row.cells.resize(across + 1, Cell::Blank);
        }
        if let Some(place) = row.cells.get_mut(across) {
            *place = read(cell.get_value());
        }
    }
    hand_on(row, &mut take)
}

fn hand_on(row: Row, take: &mut impl FnMut(Row) -> Result<(), ListFault>) -> Result<(), ListFault> {
    if row.cells.iter().all(|cell| *cell == Cell::Blank) {
        return Ok(());
    }
    take(row)
}

/// Unpacks every part once, counting, so that a small file can't fill the memory.
fn refuse_what_swells(list: &mut (impl Read + Seek), largest: u64) -> Result<(), ListFault> {
    let unreadable = |reason: String| ListFault::NotWorkbook { reason };
    let mut archive =
        zip::ZipArchive::new(&mut *list).map_err(|e| unreadable(said(&e.to_string())))?;
    let mut left = largest;
    for place in 0..archive.len() {
        let part = archive
            .by_index(place)
            .map_err(|e| unreadable(said(&e.to_string())))?;
        let mut counted = part.take(left.saturating_add(1));
        let size = io::copy(&mut counted, &mut io::sink())
            .map_err(|e| unreadable(said(&e.to_string())))?;
        left = left.checked_sub(size).ok_or(ListFault::TooLarge)?;
    }
    drop(archive);
    list.rewind().map_err(|e| unreadable(said(&e.to_string())))
}

fn sheet_name<R: Read + Seek>(book: &Xlsx<R>, mapping: &Mapping) -> Result<String, ListFault> {
    let names = book.sheet_names();
    let there = names
        .iter()
        .map(|name| format!("\"{name}\""))
        .collect::<Vec<_>>()
        .join(", ");
    let found = match &mapping.sheet {
        Some(wanted) => names.iter().find(|name| *name == wanted),
        None => names.first(),
    };
    found.cloned().ok_or_else(|| ListFault::NoSheet {
        name: mapping.sheet.clone().unwrap_or_default(),
        there: if there.is_empty() {
            "none".to_owned()
        } else {
            there
        },
    })
}

fn read(value: &DataRef<'_>) -> Cell {
    match value {
        DataRef::Int(number) => Cell::Number(number.to_string()),
        DataRef::Float(number) => number_of(*number),
        DataRef::String(text) => Cell::of_text(text),
        DataRef::SharedString(text) => Cell::of_text(text),
        DataRef::Bool(is) => Cell::of_text(if *is { "TRUE" } else { "FALSE" }),
        DataRef::DateTime(_) | DataRef::DateTimeIso(_) | DataRef::DurationIso(_) => Cell::Date,
        DataRef::Error(error) => Cell::Failed(error.to_string()),
        DataRef::Empty => Cell::Blank,
    }
}

/// Digits a spreadsheet shows of a number after the first.
const DIGITS: usize = 14; // geometry: of IEEE 754 binary64, which holds fifteen decimal digits

/// The most digits on either side of the point that are written out.
const WRITTEN_OUT: usize = 30; // geometry: beyond any price or size

/// A number of the sheet in plain digits.
fn number_of(number: f64) -> Cell {
    let shown = format!("{number:.DIGITS$e}");
    let plain = shown
        .split_once('e')
        .and_then(|(digits, power)| plain(digits, power));
    plain.map_or_else(|| Cell::Text(shown.clone()), Cell::Number)
}

/// `1.2340e2` as `123.4`, moving the point and nothing else.
fn plain(digits: &str, power: &str) -> Option<String> {
    let power: isize = power.parse().ok()?;
    let (sign, digits) = match digits.strip_prefix('-') {
        Some(digits) => ("-", digits),
        None => ("", digits),
    };
    let digits: String = digits.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_end_matches('0');
    if digits.is_empty() {
        return Some("0".to_owned());
    }
    let apart = power.unsigned_abs();
    if apart > WRITTEN_OUT {
        return None;
    }
    if power < 0 {
        let zeros = "0".repeat(apart - 1);
        return Some(format!("{sign}0.{zeros}{digits}"));
    }
    let whole = apart + 1;
    let padded = format!("{digits:0<whole$}");
    let (whole, decimals) = padded.split_at_checked(whole)?;
    let point = if decimals.is_empty() { "" } else { "." };
    Some(format!("{sign}{whole}{point}{decimals}"))
}

fn no_workbook(error: &XlsxError) -> ListFault {
    ListFault::NotWorkbook {
        reason: said(&error.to_string()),
    }
}

/// A library's own words, with the words this house does not say put otherwise.
fn said(words: &str) -> String {
    let words = words.replace("nvalid", "nreadable"); // not said: what a reader says, put into other words
    words
        .replace("Inreadable", "Unreadable")
        .replace("inreadable", "unreadable")
}

#[cfg(test)]
mod tests;
