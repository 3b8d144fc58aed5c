//! From characters to numbers, fractions, marks and words.

use std::ops::Range;

use crate::Unit;

use super::scale::Scale;
use super::{ReadError, Refusal, Wanted};

/// The most characters that are read.
pub(super) const LIMIT: usize = 64;

/// A mark that stands for a unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Mark {
    Foot,
    Inch,
    Degree,
}

/// What a stretch of text is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Kind<'t> {
    /// Digits with points and commas, as typed.
    Number(&'t str),
    /// Raised digits, as plain ones.
    Raised(String),
    /// Lowered digits, as plain ones.
    Lowered(String),
    /// A fraction in one character, top and bottom.
    Vulgar(u64, u64),
    /// `⅟`, waiting for its bottom number.
    OneOver,
    /// A fraction's stroke.
    Slash,
    /// A hyphen, dash or minus.
    Minus,
    /// A plus sign, `&` or `and`.
    And,
    /// A mark that stands for a unit.
    Mark(Mark),
    /// Letters, with a final point if there is one.
    Word(&'t str),
    /// What stands between a width and a height.
    Times,
    /// Anything else.
    Other,
}

/// A stretch of text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Token<'t> {
    pub kind: Kind<'t>,
    /// Its bytes.
    pub span: Range<usize>,
    /// Whether a space stands before it.
    pub gap: bool,
}

impl Token<'_> {
    /// Whether it names a unit.
    pub fn is_unit(&self) -> bool {
        matches!(self.kind, Kind::Mark(_) | Kind::Word(_))
    }
}

/// The bytes from the first token to the last; empty at the start where there are none.
pub(super) fn extent(tokens: &[Token]) -> Range<usize> {
    match (tokens.first(), tokens.last()) {
        (Some(first), Some(last)) => first.span.start..last.span.end,
        _ => 0..0,
    }
}

/// The text in tokens, or why it is not read at all.
pub(super) fn tokens(text: &str, wanted: Wanted) -> Result<Vec<Token<'_>>, ReadError> {
    let chars = text.chars().count();
    if chars > LIMIT {
        let beyond = text
            .char_indices()
            .nth(LIMIT)
            .map_or(text.len(), |(at, _)| at);
        return Err(ReadError::new(
            wanted,
            beyond..text.len(),
            Refusal::TooLong {
                chars,
                limit: LIMIT,
            },
        ));
    }
    let mut tokens = Vec::new();
    let mut rest = text;
    loop {
        let trimmed = rest.trim_start_matches(is_space);
        let Some(first) = trimmed.chars().next() else {
            break;
        };
        let (kind, after) = token(first, trimmed);
        let span = offset(text, trimmed)..offset(text, after);
        let exponent = matches!(kind, Kind::Number(_))
            .then(|| exponent(after))
            .flatten();
        if let Some(after) = exponent {
            let span = span.start..offset(text, after);
            let typed = text.get(span.clone()).unwrap_or(text).to_owned();
            return Err(ReadError::new(wanted, span, Refusal::Exponent { typed }));
        }
        tokens.push(Token {
            kind,
            span,
            gap: trimmed.len() < rest.len(),
        });
        rest = after;
    }
    if tokens.is_empty() {
        return Err(ReadError::new(wanted, 0..text.len(), Refusal::Empty));
    }
    Ok(tokens)
}

/// White space, and the characters of no width that come along when text is copied.
fn is_space(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{200b}' | '\u{2060}' | '\u{feff}')
}

/// Where `rest` starts in the `text` it ends.
fn offset(text: &str, rest: &str) -> usize {
    text.len().saturating_sub(rest.len())
}

/// The token at the start of `text`, which starts with `first`, and the text after it.
fn token(first: char, text: &str) -> (Kind<'_>, &str) {
    let after = text.get(first.len_utf8()..).unwrap_or("");
    if first.is_ascii_digit()
        || is_separator(first) && after.starts_with(|c: char| c.is_ascii_digit())
    {
        let (digits, after) = run(text, |c| c.is_ascii_digit() || is_separator(c));
        return (Kind::Number(digits), after);
    }
    if raised(first).is_some() {
        let (digits, after) = run(text, |c| raised(c).is_some());
        return (
            Kind::Raised(digits.chars().filter_map(raised).collect()),
            after,
        );
    }
    if lowered(first).is_some() {
        let (digits, after) = run(text, |c| lowered(c).is_some());
        return (
            Kind::Lowered(digits.chars().filter_map(lowered).collect()),
            after,
        );
    }
    if let Some((top, bottom)) = vulgar(first) {
        return (Kind::Vulgar(top, bottom), after);
    }
    if is_foot(first) {
        // Two foot marks are how an inch mark is typed without one.
        return match after.strip_prefix(is_foot) {
            Some(after) => (Kind::Mark(Mark::Inch), after),
            None => (Kind::Mark(Mark::Foot), after),
        };
    }
    if first.is_alphabetic() && first != 'º' {
        return word(text);
    }
    let kind = match first {
        '/' | '\u{2044}' | '\u{2215}' => Kind::Slash,
        '-' | '\u{2010}'..='\u{2015}' | '\u{2212}' => Kind::Minus,
        '+' | '&' => Kind::And,
        '"' | '“' | '”' | '„' | '‟' | '″' | '˝' | 'ʺ' => Kind::Mark(Mark::Inch),
        '°' | 'º' | '˚' => Kind::Mark(Mark::Degree),
        '×' | '✕' | '*' => Kind::Times,
        '⅟' => Kind::OneOver,
        _ => Kind::Other,
    };
    (kind, after)
}

/// Letters with a final point; `x`, `by` and `and` by what they stand for.
fn word(text: &str) -> (Kind<'_>, &str) {
    let (letters, after) = run(text, |c| c.is_alphabetic() && c != 'º');
    match letters.to_lowercase().as_str() {
        "x" | "by" => return (Kind::Times, after),
        "and" => return (Kind::And, after),
        _ => {}
    }
    // In 8inx10in the x belongs to the size.
    let before_x = letters
        .strip_suffix(['x', 'X'])
        .filter(|unit| Unit::of_word(unit).is_some());
    if let Some(unit) = before_x {
        return (Kind::Word(unit), text.get(unit.len()..).unwrap_or(""));
    }
    match after.strip_prefix('.') {
        Some(after) => (
            Kind::Word(text.get(..offset(text, after)).unwrap_or(letters)),
            after,
        ),
        None => (Kind::Word(letters), after),
    }
}

/// The text after an exponent, where `text` starts with one: `e3`, `E-3`.
fn exponent(text: &str) -> Option<&str> {
    let after = text.strip_prefix(['e', 'E'])?;
    let digits = after.strip_prefix(['+', '-', '\u{2212}']).unwrap_or(after);
    let (digits, after) = run(digits, |c| c.is_ascii_digit());
    (!digits.is_empty()).then_some(after)
}

/// The longest start of `text` whose characters all belong, and the rest.
fn run(text: &str, belongs: impl Fn(char) -> bool) -> (&str, &str) {
    let end = text.find(|c| !belongs(c)).unwrap_or(text.len());
    text.split_at(end)
}

fn is_separator(c: char) -> bool {
    matches!(c, '.' | ',')
}

fn is_foot(c: char) -> bool {
    matches!(c, '\'' | '‘' | '’' | '‛' | '′' | '`' | '´' | 'ʹ' | 'ʼ')
}

fn raised(c: char) -> Option<char> {
    digit(c, ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'])
}

fn lowered(c: char) -> Option<char> {
    digit(c, ['₀', '₁', '₂', '₃', '₄', '₅', '₆', '₇', '₈', '₉'])
}

/// The plain digit of a raised or lowered one.
fn digit(c: char, forms: [char; 10]) -> Option<char> {
    ('0'..='9')
        .zip(forms)
        .find(|(_, form)| *form == c)
        .map(|(plain, _)| plain)
}

/// A fraction in one character.
fn vulgar(c: char) -> Option<(u64, u64)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}
