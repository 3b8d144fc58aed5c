//! Words, names and leftovers that must not stand in the project. All lists are in this file.
//!
//! Each entry of [`LEFTOVERS`] is written in two pieces, so that this file does not hold it.

use proc_macro2::{Delimiter, TokenTree};

use crate::breach::Breach;
use crate::rust;
use crate::tree::{Tree, has_extension, is_test_file};

/// Names that say nothing of the bench, for files, folders and modules.
const NAMES: [&str; 4] = ["util", "helper", "common", "manager"];

/// Words the program never says to anyone.
const UNSAID: [&str; 5] = ["invalid", "illegal", "please", "sorry", "oops"];

/// Technical names that hold such a word and are nothing the program says.
const EXCUSED: [&str; 2] = ["aria-invalid", ":invalid"];

/// The mark, in a comment beside it, of a text that is compared and never shown.
const NOT_SAID: &str = "// not said:";

/// Rooms whose documentation comments are printed as help.
const DOCS_ARE_SAID: [&str; 1] = ["crates/rabbet/"];

/// Files other than Rust whose text reaches people.
const SAID_EXTENSIONS: [&str; 3] = ["typ", "ftl", "html"];

/// Texts that may stand nowhere, and what to do instead.
const LEFTOVERS: [Leftover; 18] = [
    Leftover::open_end(concat!("TO", "DO")),
    Leftover::open_end(concat!("FIX", "ME")),
    Leftover::open_end(concat!("XX", "X")),
    Leftover::unfinished(concat!("to", "do!")),
    Leftover::unfinished(concat!("unimple", "mented!")),
    Leftover::unfinished(concat!("db", "g!")),
    Leftover::sleeping(concat!("#[ig", "nore")),
    Leftover::sleeping(concat!("```ig", "nore")),
    Leftover::place(concat!("/wo", "rk/")),
    Leftover::place(concat!("/fa", "rm/")),
    Leftover::place(concat!("/root", "/")),
    Leftover::origin(concat!("seed ", "document")),
    Leftover::origin(concat!("trans", "cript")),
    Leftover::host(concat!("crates", ".io")),
    Leftover::host(concat!("pypi", ".org")),
    Leftover::host(concat!("npmjs", ".org")),
    Leftover::host(concat!("npmjs", ".com")),
    Leftover::host(concat!("deb.", "debian")),
];

/// Everything that must not stand in these files.
pub fn breaches(tree: &Tree) -> Vec<Breach> {
    let mut found = Vec::new();
    for file in tree.files() {
        found.extend(named(&file.path));
    }
    for (path, text) in tree.texts().filter(|(path, _)| is_ours(path)) {
        found.extend(left_over(path, text));
        if has_extension(path, "rs") {
            found.extend(in_rust(path, text));
        } else if path.starts_with("crates/") && is_said(path) {
            found.extend(said_in_text(path, text));
        }
    }
    found
}

/// A text that may stand nowhere.
struct Leftover {
    text: &'static str,
    reach: Reach,
    instead: &'static str,
}

/// How a leftover is told from an innocent text that holds the same letters.
#[derive(Clone, Copy)]
enum Reach {
    /// Capitals as written, and no letter or digit on either side.
    Word,
    /// No letter, digit or dot before it.
    Start,
    /// Anywhere, in capitals or not.
    Anywhere,
}

impl Leftover {
    const fn open_end(text: &'static str) -> Self {
        let instead = "finish it, or open an issue";
        Self {
            text,
            reach: Reach::Word,
            instead,
        }
    }

    const fn unfinished(text: &'static str) -> Self {
        Self {
            text,
            reach: Reach::Start,
            instead: "write what belongs there",
        }
    }

    const fn sleeping(text: &'static str) -> Self {
        let instead = "a test or example that does not run proves nothing; make it run";
        Self {
            text,
            reach: Reach::Anywhere,
            instead,
        }
    }

    const fn place(text: &'static str) -> Self {
        let instead = "that folder is on one machine only; write the path from the repository";
        Self {
            text,
            reach: Reach::Start,
            instead,
        }
    }

    const fn origin(text: &'static str) -> Self {
        let instead = "name the published source instead";
        Self {
            text,
            reach: Reach::Anywhere,
            instead,
        }
    }

    const fn host(text: &'static str) -> Self {
        let instead = "name the package, not where it is served";
        Self {
            text,
            reach: Reach::Anywhere,
            instead,
        }
    }

    fn stands_in(&self, line: &str) -> bool {
        match self.reach {
            Reach::Anywhere => line.to_lowercase().contains(&self.text.to_lowercase()),
            Reach::Word => finds(line, self.text, |before, after| {
                !before.is_some_and(is_wordy) && !after.is_some_and(is_wordy)
            }),
            Reach::Start => finds(line, self.text, |before, _| {
                !before.is_some_and(|sign| is_wordy(sign) || sign == '.')
            }),
        }
    }
}

/// Vendored files answer to their own makers, locks to their tools.
fn is_ours(path: &str) -> bool {
    let vendored = path.split('/').any(|part| part == "vendor") || path.contains(".min.");
    let lock = has_extension(path, "lock") || path.ends_with("package-lock.json");
    !vendored && !lock
}

fn is_said(path: &str) -> bool {
    SAID_EXTENSIONS
        .iter()
        .any(|extension| has_extension(path, extension))
}

/// A path any part of which bears an empty name, alone or among others (`date_` + name).
fn named(path: &str) -> Option<Breach> {
    let part = path.split('/').find(|part| empty_name(part).is_some())?;
    let name = empty_name(part)?;
    let sentence = format!("“{part}” is named “{name}”; name it after what the bench calls it");
    Some(Breach::by(path, sentence))
}

fn empty_name(part: &str) -> Option<&'static str> {
    let lower = part.to_lowercase();
    let pieces: Vec<&str> = lower.split(['_', '-', '.', ' ']).collect();
    let bears = |name: &&&str| {
        pieces
            .iter()
            .any(|piece| piece.strip_suffix('s').unwrap_or(piece) == **name)
    };
    NAMES.iter().find(bears).copied()
}

fn left_over(path: &str, text: &str) -> Vec<Breach> {
    let mut found = Vec::new();
    for (index, line) in text.lines().enumerate() {
        for leftover in LEFTOVERS.iter().filter(|leftover| leftover.stands_in(line)) {
            let sentence = format!("“{}” stands here; {}", leftover.text, leftover.instead);
            found.push(Breach::at(path, index + 1, sentence));
        }
    }
    found
}

fn in_rust(path: &str, text: &str) -> Vec<Breach> {
    let tokens = match rust::tokens(text) {
        Ok(tokens) => tokens,
        Err(fault) => {
            return vec![Breach::by(
                path,
                format!("could not be read as Rust: {fault}"),
            )];
        }
    };
    let mut found = Vec::new();
    modules_named(path, &tokens, &mut found);
    if path.starts_with("crates/") && !is_test_file(path) {
        let docs = DOCS_ARE_SAID.iter().any(|room| path.starts_with(room));
        let lines: Vec<&str> = text.lines().collect();
        let spoken = Spoken {
            path,
            lines: &lines,
            docs,
        };
        spoken.gather(&rust::without_tests(tokens), &mut found);
    }
    found
}

/// Modules with an empty name, nested ones too.
fn modules_named(path: &str, tokens: &[TokenTree], found: &mut Vec<Breach>) {
    for (index, token) in tokens.iter().enumerate() {
        if let Some(inner) = rust::inside(token, Delimiter::Brace) {
            modules_named(path, &inner, found);
        }
        let Some(TokenTree::Ident(module)) = tokens.get(index + 1) else {
            continue;
        };
        if rust::is_word(token, "mod") && empty_name(&module.to_string()).is_some() {
            let sentence = format!("the module `{module}` says nothing; name it after its subject");
            found.push(Breach::at(path, rust::line(token), sentence));
        }
    }
}

/// The string literals of a file, which people may be shown.
struct Spoken<'a> {
    path: &'a str,
    lines: &'a [&'a str],
    /// Whether documentation is shown too.
    docs: bool,
}

impl Spoken<'_> {
    /// Gathers the literals that hold an unsaid word.
    fn gather(&self, tokens: &[TokenTree], found: &mut Vec<Breach>) {
        for (index, token) in tokens.iter().enumerate() {
            match token {
                TokenTree::Group(group) => {
                    let inner: Vec<TokenTree> = group.stream().into_iter().collect();
                    if self.docs || !is_doc(&tokens[..index], &inner) {
                        self.gather(&inner, found);
                    }
                }
                TokenTree::Literal(literal) => {
                    let line = rust::line(token);
                    if !rust::is_marked(self.lines, line, NOT_SAID) {
                        let written = literal.to_string();
                        let content = rust::string_content(&written).unwrap_or("");
                        found.extend(unsaid(content).map(|word| said(self.path, line, word)));
                    }
                }
                TokenTree::Ident(_) | TokenTree::Punct(_) => {}
            }
        }
    }
}

/// Whether a group is the inside of a documentation comment.
fn is_doc(before: &[TokenTree], inner: &[TokenTree]) -> bool {
    let attribute = before
        .last()
        .is_some_and(|sign| rust::is_hash(sign) || rust::is_punct(sign, '!'));
    attribute && inner.first().is_some_and(|word| rust::is_word(word, "doc"))
}

fn said_in_text(path: &str, text: &str) -> Vec<Breach> {
    let lines = text.lines().enumerate();
    lines
        .flat_map(|(index, line)| unsaid(line).map(move |word| said(path, index + 1, word)))
        .collect()
}

fn said(path: &str, line: usize, word: &str) -> Breach {
    Breach::at(
        path,
        line,
        format!("says “{word}”; say what is so and how to put it right"),
    )
}

fn unsaid(text: &str) -> impl Iterator<Item = &'static str> + use<> {
    let mut lower = text.to_lowercase();
    for excused in EXCUSED {
        lower = lower.replace(excused, "");
    }
    let whole = |before: Option<char>, after: Option<char>| {
        !before.is_some_and(is_wordy) && !after.is_some_and(is_wordy)
    };
    // An escape such as \n must not hide the word after it.
    let lower = lower.replace("\\n", " ").replace("\\t", " ");
    UNSAID
        .into_iter()
        .filter(move |word| finds(&lower, word, whole))
}

fn is_wordy(sign: char) -> bool {
    sign.is_alphanumeric()
}

/// Whether a text occurs between neighbours that fit.
fn finds(line: &str, text: &str, fits: impl Fn(Option<char>, Option<char>) -> bool) -> bool {
    line.match_indices(text).any(|(start, _)| {
        let before = line[..start].chars().next_back();
        let after = line[start + text.len()..].chars().next();
        fits(before, after)
    })
}

#[cfg(test)]
mod tests;
