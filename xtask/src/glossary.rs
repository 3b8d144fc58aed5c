//! Every public type of `trade` is explained in the glossary.

use proc_macro2::{Delimiter, TokenTree};

use crate::breach::Breach;
use crate::rust;
use crate::tree::{Tree, is_test_file};

/// Where the nouns of the trade are.
const NOUNS: &str = "crates/trade/src/";

/// Where they are explained.
const GLOSSARY: &str = "GLOSSARY.md";

/// Public types without a row in the glossary.
pub fn breaches(tree: &Tree) -> Vec<Breach> {
    let mut found = Vec::new();
    let rows: Option<Vec<&str>> = tree.text(GLOSSARY).map(|text| rows(text).collect());
    if rows.is_none() {
        found.push(Breach::by(
            GLOSSARY,
            "is missing; it explains the words".to_owned(),
        ));
    }
    let rows = rows.unwrap_or_default();
    let nouns = |(path, _): &(&str, &str)| path.starts_with(NOUNS) && !is_test_file(path);
    for (path, text) in tree.rust().filter(nouns) {
        match rust::tokens(text) {
            Ok(tokens) => {
                let types = public_types(&rust::without_tests(tokens));
                found.extend(types.iter().filter_map(|noun| noun.breach(path, &rows)));
            }
            Err(fault) => {
                found.push(Breach::by(
                    path,
                    format!("could not be read as Rust: {fault}"),
                ));
            }
        }
    }
    found
}

/// A public type.
struct Noun {
    name: String,
    line: usize,
}

impl Noun {
    fn breach(&self, path: &str, rows: &[&str]) -> Option<Breach> {
        let word = spaced(&self.name);
        let ticked = format!("`{}`", self.name);
        if rows
            .iter()
            .any(|row| row.contains(&ticked) || explains(row, &word))
        {
            return None;
        }
        let sentence = format!("`{}` has no row in {GLOSSARY}; add “{word}”", self.name);
        Some(Breach::at(path, self.line, sentence))
    }
}

/// The rows of the glossary's tables.
fn rows(text: &str) -> impl Iterator<Item = &str> {
    text.lines()
        .map(str::trim)
        .filter(|line| line.starts_with('|'))
}

/// Whether the first cell of a row is this word, or lists it among its spellings.
fn explains(row: &str, word: &str) -> bool {
    let first = row.trim_start_matches('|').split('|').next().unwrap_or("");
    let spellings = first.split(['/', ',', '(', ')', ';']);
    spellings
        .map(|spelling| spelling.trim_matches([' ', '*', '`']))
        .any(|spelling| spelling.to_lowercase() == word)
}

/// The trade word of a type: `MatFillet` is “mat fillet”.
fn spaced(name: &str) -> String {
    let mut word = String::new();
    for sign in name.chars() {
        if (sign.is_uppercase() || sign.is_ascii_digit()) && !word.is_empty() {
            word.push(' ');
        }
        word.extend(sign.to_lowercase());
    }
    word
}

/// `pub struct` and `pub enum`, also inside modules; `pub(crate)` is not public.
fn public_types(tokens: &[TokenTree]) -> Vec<Noun> {
    let mut found = Vec::new();
    for place in tokens.windows(3) {
        match place {
            [public, kind, TokenTree::Ident(name)]
                if rust::is_word(public, "pub")
                    && (rust::is_word(kind, "struct") || rust::is_word(kind, "enum")) =>
            {
                found.push(Noun {
                    name: name.to_string(),
                    line: rust::line(public),
                });
            }
            [keyword, TokenTree::Ident(_), body] if rust::is_word(keyword, "mod") => {
                let inner = rust::inside(body, Delimiter::Brace).unwrap_or_default();
                found.extend(public_types(&inner));
            }
            _ => {}
        }
    }
    found
}

#[cfg(test)]
mod tests;
