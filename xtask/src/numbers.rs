//! Trade numbers live in one table; the rooms that work things out hold none of their own.

use proc_macro2::{Delimiter, TokenTree};

use crate::breach::Breach;
use crate::rust;
use crate::tree::{Tree, is_test_file};

/// The rooms that are looked at.
const ROOMS: [&str; 4] = ["sizing", "conservation", "hanging", "pricing"];

/// Numbers that carry no habit of the trade: none, one, and both sides.
const PLAIN: [f64; 3] = [0.0, 1.0, 2.0];

/// The mark, in a comment beside it, of a number that follows from geometry alone.
const GEOMETRY: &str = "// geometry:";

/// Words before square brackets that then hold a list and not an index.
const LIST_FOLLOWS: [&str; 7] = ["return", "in", "else", "match", "if", "mut", "break"];

/// Every other number written in those rooms, outside their tests.
pub fn breaches(tree: &Tree) -> Vec<Breach> {
    let mut found = Vec::new();
    for (path, text) in tree.rust().filter(|(path, _)| is_watched(path)) {
        let tokens = match rust::tokens(text) {
            Ok(tokens) => rust::without_tests(tokens),
            Err(fault) => {
                found.push(Breach::by(
                    path,
                    format!("could not be read as Rust: {fault}"),
                ));
                continue;
            }
        };
        let lines: Vec<&str> = text.lines().collect();
        for number in numbers(&tokens, Within::Code) {
            if !rust::is_marked(&lines, number.line, GEOMETRY) {
                found.push(number.breach(path));
            }
        }
    }
    found
}

/// A number that may not stand where it does.
struct Number {
    written: String,
    line: usize,
}

impl Number {
    fn breach(&self, path: &str) -> Breach {
        let sentence = format!(
            "the number {} stands in the code; all trade numbers live in \
             crates/trade/src/settings.rs (one of pure geometry has `{GEOMETRY} why` on \
             its line)",
            self.written
        );
        Breach::at(path, self.line, sentence)
    }
}

fn is_watched(path: &str) -> bool {
    let in_room = |room: &str| {
        path.strip_prefix("crates/")
            .and_then(|path| path.strip_prefix(room))
            .is_some_and(|rest| rest.starts_with("/src/"))
    };
    ROOMS.iter().any(|room| in_room(room)) && !is_test_file(path)
}

/// What a run of tokens stands in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Within {
    /// The square brackets of an index.
    Index,
    /// Other square brackets: a list, or an array and its length.
    List,
    /// Anything else.
    Code,
}

/// The numbers of a run of tokens.
fn numbers(tokens: &[TokenTree], within: Within) -> Vec<Number> {
    let mut found = Vec::new();
    for (place, token) in tokens.iter().enumerate() {
        let before = &tokens[..place];
        match token {
            TokenTree::Group(group) if !is_attribute(before, token) => {
                let inner: Vec<TokenTree> = group.stream().into_iter().collect();
                found.extend(numbers(&inner, within_brackets(before, token)));
            }
            TokenTree::Literal(literal) => {
                let written = literal.to_string();
                let excused = match within {
                    Within::Index => tokens.len() == 1,
                    Within::List => before.last().is_some_and(|sign| rust::is_punct(sign, ';')),
                    Within::Code => false,
                };
                if is_trade_number(&written) && !excused && !is_field(before) {
                    found.push(Number {
                        written,
                        line: rust::line(token),
                    });
                }
            }
            TokenTree::Group(_) | TokenTree::Ident(_) | TokenTree::Punct(_) => {}
        }
    }
    found
}

fn is_attribute(before: &[TokenTree], token: &TokenTree) -> bool {
    let opened = match before {
        [.., hash, not] if rust::is_punct(not, '!') => rust::is_hash(hash),
        [.., hash] => rust::is_hash(hash),
        [] => false,
    };
    opened && rust::inside(token, Delimiter::Bracket).is_some()
}

/// An index stands behind a name, a call or another index.
fn within_brackets(before: &[TokenTree], token: &TokenTree) -> Within {
    if rust::inside(token, Delimiter::Bracket).is_none() {
        return Within::Code;
    }
    let indexed = match before.last() {
        Some(TokenTree::Ident(word)) => !LIST_FOLLOWS.iter().any(|keyword| word == keyword),
        Some(TokenTree::Group(group)) => group.delimiter() != Delimiter::Brace,
        Some(TokenTree::Punct(sign)) => sign.as_char() == '?',
        Some(TokenTree::Literal(_)) | None => false,
    };
    if indexed { Within::Index } else { Within::List }
}

/// Behind a single dot: a field of a tuple, not the end of a range.
fn is_field(before: &[TokenTree]) -> bool {
    match before {
        [.., first, dot] if rust::is_punct(dot, '.') => !rust::is_punct(first, '.'),
        _ => false,
    }
}

/// A number literal whose value is not a plain one. A number too large to read is none either.
fn is_trade_number(written: &str) -> bool {
    written.starts_with(|sign: char| sign.is_ascii_digit())
        && value(written).is_none_or(|value| !PLAIN.contains(&value))
}

fn value(written: &str) -> Option<f64> {
    let digits = written.replace('_', "");
    for (prefix, radix) in [("0x", 16), ("0o", 8), ("0b", 2)] {
        if let Some(digits) = digits.strip_prefix(prefix) {
            let end = digits
                .find(|sign: char| !sign.is_digit(radix))
                .unwrap_or(digits.len());
            let value = u32::from_str_radix(&digits[..end], radix).ok()?;
            return Some(f64::from(value));
        }
    }
    let end = digits.find(['i', 'u', 'f']).unwrap_or(digits.len());
    digits[..end].parse().ok()
}

#[cfg(test)]
mod tests;
