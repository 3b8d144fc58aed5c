//! Rows of delimited text, read as they come.

use std::io::{self, Read};

use encoding_rs::WINDOWS_1252;

use super::{Cell, ListFault, Row, counted};
use crate::supplier::Encoding;
use crate::supplier::mapping::Mapping;

/// The longest row, in bytes; a quote left open would otherwise swallow the rest of the list.
const LONGEST_ROW: usize = 1_000_000; // geometry: bytes kept in memory

/// Bytes read at a time.
const AT_ONCE: usize = 1 << 16; // geometry: bytes kept in memory

/// Hands every row to `take`, in order; blank lines count and are not handed on.
///
/// Shape:  rows are numbered as a spreadsheet shows them: a line break within quotes starts none.
/// Errors: whatever keeps the list from being read to its end, and what `take` refuses.
pub fn each_row(
    list: impl Read,
    mapping: &Mapping,
    mut take: impl FnMut(Row) -> Result<(), ListFault>,
) -> Result<(), ListFault> {
    let mut rows = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(mapping.delimiter.unwrap_or(b','))
        .quoting(mapping.quotes.unwrap_or(true))
        .buffer_capacity(AT_ONCE)
        .from_reader(Watched {
            inner: list,
            seen: Vec::new(),
            first: 0,
            row: 0,
        });
    let mut record = csv::ByteRecord::new();
    let mut number = 0_u32;
    loop {
        let from = rows.position().byte();
        rows.get_mut().row = from;
        let more = rows.read_byte_record(&mut record);
        if !more.map_err(|error| broken(number, error))? {
            return Ok(());
        }
        if number == 0 && is_utf16(record.get(0).unwrap_or_default()) {
            return Err(ListFault::Utf16);
        }
        let blank = rows.get_ref().blank_lines(from);
        number = counted(number.saturating_add(1).saturating_add(blank))?;
        let cells = record
            .iter()
            .map(|bytes| cell(bytes, mapping.encoding))
            .collect();
        take(Row { number, cells })?;
    }
}

fn cell(bytes: &[u8], encoding: Encoding) -> Cell {
    match encoding {
        Encoding::Utf8 => std::str::from_utf8(bytes).map_or(Cell::NotText, Cell::of_text),
        Encoding::Windows1252 => {
            let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
            Cell::of_text(&WINDOWS_1252.decode_without_bom_handling(bytes).0)
        }
    }
}

fn is_utf16(start: &[u8]) -> bool {
    start.starts_with(b"\xff\xfe") || start.starts_with(b"\xfe\xff")
}

fn broken(row: u32, error: csv::Error) -> ListFault {
    match error.into_kind() {
        csv::ErrorKind::Io(error) if error.kind() == io::ErrorKind::FileTooLarge => {
            ListFault::Endless { row }
        }
        csv::ErrorKind::Io(error) => ListFault::Broken {
            row,
            reason: error.to_string(),
        },
        other => ListFault::Broken {
            row,
            reason: format!("{other:?}"),
        },
    }
}

/// A reader that keeps the row at hand, counts the blank lines before it, which the parser passes
/// over, and stops where a row does not end.
struct Watched<R> {
    inner: R,
    /// The bytes from `first` on that were read.
    seen: Vec<u8>,
    /// Where in the list those begin.
    first: u64,
    /// Where the row at hand begins.
    row: u64,
}

impl<R> Watched<R> {
    /// Blank lines from this place on, up to the row that follows them.
    fn blank_lines(&self, from: u64) -> u32 {
        let place = from
            .checked_sub(self.first)
            .and_then(|place| usize::try_from(place).ok());
        let before = place
            .and_then(|place| place.checked_sub(1))
            .and_then(|place| self.seen.get(place));
        let rest = place.and_then(|place| self.seen.get(place..));
        let mut rest = rest.unwrap_or_default();
        // The second half of a line end whose first half ended the row before.
        if before == Some(&b'\r') {
            rest = rest.strip_prefix(b"\n").unwrap_or(rest);
        }
        let mut blank = 0;
        loop {
            rest = match rest {
                [b'\r', b'\n', rest @ ..] | [b'\r' | b'\n', rest @ ..] => rest,
                _ => return blank,
            };
            blank += 1;
        }
    }
}

impl<R: Read> Read for Watched<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        // One byte before the row at hand is kept: it says whether a line end was cut in two.
        let kept = self.row.saturating_sub(1);
        let done = usize::try_from(kept.saturating_sub(self.first)).unwrap_or(0);
        self.seen.drain(..done.min(self.seen.len()));
        self.first = self.first.max(kept);
        if self.seen.len() > LONGEST_ROW {
            return Err(io::ErrorKind::FileTooLarge.into());
        }
        let read = self.inner.read(buffer)?;
        self.seen.extend(buffer.iter().take(read));
        Ok(read)
    }
}
