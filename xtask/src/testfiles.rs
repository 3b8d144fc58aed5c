//! Forgotten test files, golden cases without a partner, and files that grew too long.

use std::collections::{BTreeMap, BTreeSet};

use proc_macro2::{Delimiter, TokenTree};

use crate::breach::Breach;
use crate::rust;
use crate::tree::{Tree, has_extension};
use crate::workspace::Workspace;

/// The longest a Rust file may be, in lines.
const LONGEST: usize = 600;

/// A folder with a workspace of its own, which `cargo metadata` does not tell of.
const APART: &str = "fuzz/";

/// Everything forgotten in this tree.
pub fn breaches(workspace: &Workspace, tree: &Tree) -> Vec<Breach> {
    let mut found = unreached(workspace, tree);
    found.extend(unpaired(tree));
    found.extend(too_long(tree));
    found
}

/// Rust files that no `mod` line leads to and that are no crate root: nothing compiles them.
fn unreached(workspace: &Workspace, tree: &Tree) -> Vec<Breach> {
    let mut reached = BTreeSet::new();
    let roots = workspace
        .packages
        .iter()
        .flat_map(|package| &package.targets);
    for root in roots {
        let folder = folder_of(&root.src_path).to_owned();
        follow(tree, &root.src_path, &folder, &mut reached);
    }
    let forgotten = |path: &&str| !path.starts_with(APART) && !reached.contains(*path);
    let paths = tree.rust().map(|(path, _)| path);
    let sentence = "no `mod` line leads here, so it is never compiled; add one, or remove the file";
    paths
        .filter(forgotten)
        .map(|path| Breach::by(path, sentence.to_owned()))
        .collect()
}

/// Marks a file as reached, and every file its modules lead to.
///
/// `folder` is where the files of its own modules lie. Source that is no Rust leads nowhere; the
/// compiler and the check of words both name it.
fn follow(tree: &Tree, path: &str, folder: &str, reached: &mut BTreeSet<String>) {
    let Some(text) = tree.text(path) else { return };
    if !reached.insert(path.to_owned()) {
        return;
    }
    if let Ok(tokens) = rust::tokens(text) {
        follow_modules(
            tree,
            &tokens,
            &Folders {
                file: folder_of(path),
                modules: folder,
            },
            reached,
        );
    }
}

/// Where the files of modules are looked for.
struct Folders<'a> {
    /// The folder of the file itself: `#[path]` starts there.
    file: &'a str,
    /// The folder for modules without `#[path]`.
    modules: &'a str,
}

fn follow_modules(
    tree: &Tree,
    tokens: &[TokenTree],
    folders: &Folders<'_>,
    reached: &mut BTreeSet<String>,
) {
    for (index, pair) in tokens.windows(3).enumerate() {
        let [keyword, TokenTree::Ident(name), body] = pair else {
            continue;
        };
        if !rust::is_word(keyword, "mod") {
            continue;
        }
        let name = name.to_string();
        let name = name.trim_start_matches("r#");
        let below = joined(folders.modules, name);
        if let Some(inner) = rust::inside(body, Delimiter::Brace) {
            let folders = Folders {
                file: folders.file,
                modules: &below,
            };
            follow_modules(tree, &inner, &folders, reached);
        } else if let Some(given) = given_path(&tokens[..index]) {
            let path = joined(folders.file, &given);
            let folder = folder_of(&path).to_owned();
            follow(tree, &path, &folder, reached);
        } else {
            follow(tree, &format!("{below}.rs"), &below, reached);
            follow(tree, &format!("{below}/mod.rs"), &below, reached);
        }
    }
}

/// The value of `#[path = "..."]` among the attributes right before a `mod`.
fn given_path(before: &[TokenTree]) -> Option<String> {
    let visible = |token: &TokenTree| {
        rust::is_word(token, "pub") || rust::inside(token, Delimiter::Parenthesis).is_some()
    };
    let attributes = before.iter().rev().skip_while(|token| visible(token));
    let attributes = attributes.take_while(|token| {
        rust::is_hash(token) || rust::inside(token, Delimiter::Bracket).is_some()
    });
    attributes
        .filter_map(|token| rust::inside(token, Delimiter::Bracket))
        .find_map(|words| match words.as_slice() {
            [key, _, TokenTree::Literal(value)] if rust::is_word(key, "path") => {
                rust::string_content(&value.to_string()).map(str::to_owned)
            }
            _ => None,
        })
}

fn folder_of(path: &str) -> &str {
    path.rsplit_once('/').map_or("", |(folder, _)| folder)
}

/// Joins a path below a folder, taking `.` and `..` out.
fn joined(folder: &str, path: &str) -> String {
    let mut parts: Vec<&str> = folder.split('/').filter(|part| !part.is_empty()).collect();
    for part in path.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                parts.pop();
            }
            name => parts.push(name),
        }
    }
    parts.join("/")
}

/// Golden cases: below `suite`, a folder `ok` or `ex` holds inputs `NAME.job.toml` (or another
/// kind of input) and, beside each, one or more outputs `NAME.ref.KIND`.
fn unpaired(tree: &Tree) -> Vec<Breach> {
    let mut cases: BTreeMap<String, Case<'_>> = BTreeMap::new();
    for file in tree.files().filter(|file| is_golden(&file.path)) {
        let (folder, name) = file.path.rsplit_once('/').unwrap_or(("", &file.path));
        let (case, kind) = name.split_once('.').unwrap_or((name, ""));
        let case = cases.entry(format!("{folder}/{case}")).or_default();
        let side = if kind.starts_with("ref.") {
            &mut case.outputs
        } else {
            &mut case.inputs
        };
        side.push(&file.path);
    }
    cases.values().flat_map(Case::breaches).collect()
}

fn is_golden(path: &str) -> bool {
    let parts: Vec<&str> = path.split('/').collect();
    let in_case_folder = parts.len() > 2 && matches!(parts[parts.len() - 2], "ok" | "ex");
    in_case_folder && parts[0] == "suite" && !has_extension(path, "md")
}

/// The files of one golden case.
#[derive(Default)]
struct Case<'a> {
    inputs: Vec<&'a str>,
    outputs: Vec<&'a str>,
}

impl Case<'_> {
    fn breaches(&self) -> Vec<Breach> {
        let alone = |paths: &[&str], sentence: &str| {
            paths
                .iter()
                .map(|path| Breach::by(path, sentence.to_owned()))
                .collect()
        };
        if self.outputs.is_empty() {
            return alone(
                &self.inputs,
                "has no .ref. file beside it, so nothing is compared",
            );
        }
        if self.inputs.is_empty() {
            return alone(
                &self.outputs,
                "has no input beside it, so nothing is compared",
            );
        }
        Vec::new()
    }
}

fn too_long(tree: &Tree) -> Vec<Breach> {
    let mut found = Vec::new();
    for (path, text) in tree.rust() {
        let lines = text.lines().count();
        if lines > LONGEST {
            let sentence = format!("has {lines} lines, {LONGEST} at most; split the noun");
            found.push(Breach::by(path, sentence));
        }
    }
    found
}

#[cfg(test)]
mod tests;
