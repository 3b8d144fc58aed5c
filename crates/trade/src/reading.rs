//! Where the reader of a TOML or JSON file stopped, and why, in a framer's words.

mod near;
mod words;

use crate::Place;

pub use near::nearest;
pub use words::in_words;

/// How much of a line is shown.
const SHOWN: usize = 120;

/// What a TOML reader refused, and where.
pub fn refusal(text: &str, error: &toml::de::Error) -> (String, Place) {
    let Some(span) = error.span() else {
        return (in_words(error.message(), None), Place::default());
    };
    let key = key_at(text, span.start);
    let key = key.or_else(|| duplicated(text, &span, error.message()));
    (
        in_words(error.message(), key.as_deref()),
        place_at(text, span.start),
    )
}

/// Line, column and shown line of a byte of a text.
pub fn place_at(text: &str, at: usize) -> Place {
    let before = &text[..text.floor_char_boundary(at)];
    let start = before.rfind('\n').map_or(0, |newline| newline + 1);
    let line = text[start..].lines().next().unwrap_or_default();
    Place {
        line: Some(before.matches('\n').count() + 1),
        column: Some(before[start..].chars().count() + 1),
        pointer: None,
        text: Some(clip(line)),
    }
}

/// A line short enough to show.
pub fn clip(line: &str) -> String {
    line.chars()
        .take(SHOWN)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect()
}

/// The field whose value a byte stands in, on its line: `count` of `count = "two"`.
fn key_at(text: &str, at: usize) -> Option<String> {
    let at = text.floor_char_boundary(at);
    let start = text[..at].rfind('\n').map_or(0, |newline| newline + 1);
    let before = &text[start..at];
    let Some((name, _)) = before.rsplit_once('=') else {
        // A table's own line: `[piece]`.
        let line = text[start..].lines().next()?.trim();
        let name = line.strip_prefix('[')?.trim_start_matches('[');
        return bare(name.split(']').next()?);
    };
    bare(name.rsplit(['{', ',']).next()?)
}

/// The key itself, where it stands twice.
fn duplicated(text: &str, span: &std::ops::Range<usize>, message: &str) -> Option<String> {
    message
        .starts_with("duplicate key")
        .then(|| text.get(span.clone()))
        .flatten()
        .and_then(bare)
}

/// A key without quotes and spaces; none where it is no plain key.
fn bare(key: &str) -> Option<String> {
    let key = key.trim().trim_matches('"');
    let plain = |c: char| c.is_alphanumeric() || "_-.".contains(c);
    (!key.is_empty() && key.chars().all(plain)).then(|| key.to_owned())
}

#[cfg(test)]
mod tests;
