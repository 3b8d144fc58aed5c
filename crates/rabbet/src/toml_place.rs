//! Faults of the shop's own TOML files, with their place.

use std::ops::Range;

use trade::{Place, reading};

use crate::problem::{Kind, Problem, Spot, Trouble, pointed};

/// The place of a byte range in a file's text.
pub fn spot(file: &str, text: &str, span: &Range<usize>) -> Spot {
    of_place(file, reading::place_at(text, span.start))
}

/// A place in a file.
pub fn of_place(file: &str, place: Place) -> Spot {
    Spot {
        file: Some(file.to_owned()),
        shown: place.text.map(|line| pointed(&line, place.column)),
        line: place.line,
        column: place.column,
        pointer: place.pointer,
    }
}

/// The trouble with a shop file that can't be read as TOML of its form.
pub fn trouble(file: &str, text: &str, error: &toml::de::Error, code: &str) -> Trouble {
    let (sentence, place) = reading::refusal(text, error);
    let problem = Problem::new(code, sentence).at(of_place(file, place));
    Trouble::one(Kind::Shop, problem)
}

/// The text of a shop file.
///
/// # Errors
/// A file that is not UTF-8.
pub fn text_of(file: &str, bytes: &[u8]) -> Result<String, Trouble> {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    match std::str::from_utf8(bytes) {
        Ok(text) => Ok(text.to_owned()),
        Err(error) => Err(Trouble::one(
            Kind::Shop,
            Problem::new(
                "file.not_text",
                format!(
                    "the file is not UTF-8 text: byte {} can't be read",
                    error.valid_up_to()
                ),
            )
            .hint("save it as UTF-8")
            .in_file(file),
        )),
    }
}
