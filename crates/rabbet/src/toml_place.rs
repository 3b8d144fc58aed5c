//! Faults of the shop's own TOML files, with their place.

use std::ops::Range;

use crate::problem::{Kind, Problem, Spot, Trouble, pointed};

/// The place of a byte range in a file's text.
pub fn spot(file: &str, text: &str, span: &Range<usize>) -> Spot {
    let at = text.floor_char_boundary(span.start);
    let before = &text[..at];
    let start = before.rfind('\n').map_or(0, |newline| newline + 1);
    let line = text[start..].lines().next().unwrap_or_default();
    let shown: String = line.chars().take(SHOWN).collect();
    let column = before[start..].chars().count() + 1;
    Spot {
        file: Some(file.to_owned()),
        line: Some(before.matches('\n').count() + 1),
        column: Some(column),
        pointer: None,
        shown: Some(pointed(&shown, Some(column))),
    }
}

/// How much of a line is shown.
const SHOWN: usize = 120;

/// The trouble with a shop file that can't be read as TOML of its form.
pub fn trouble(file: &str, text: &str, error: &toml::de::Error, code: &str) -> Trouble {
    let spot = error.span().map_or_else(
        || Spot {
            file: Some(file.to_owned()),
            ..Spot::default()
        },
        |span| spot(file, text, &span),
    );
    Trouble::one(
        Kind::Shop,
        Problem::new(code, plain(error.message())).at(spot),
    )
}

/// A reader's words in ours.
fn plain(message: &str) -> String {
    message
        .trim()
        .replace("invalid type: ", "found ") // not said: what a reader says, put into other words
        .replace("invalid value: ", "found ") // not said: what a reader says, put into other words
        .replace("invalid ", "unreadable ") // not said: what a reader says, put into other words
        .replace("unknown field", "there is no field")
        .replace("unknown variant", "there is no choice")
        .replace("missing field", "it lacks the field")
        .replace('\n', "; ")
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
