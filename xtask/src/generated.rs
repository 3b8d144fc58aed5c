//! Documents that are written by the code they describe.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};

use crate::breach::{Breach, Trouble};
use crate::tree::Tree;

/// The generated documents: path from the root, and text. A new one is one more entry here.
pub fn generated_files() -> Vec<(PathBuf, String)> {
    vec![(PathBuf::from("SETTINGS.md"), trade::settings::as_markdown())]
}

/// Documents in the tree that differ from what the code would write.
pub fn breaches(expected: &[(PathBuf, String)], tree: &Tree) -> Vec<Breach> {
    expected
        .iter()
        .filter_map(|(path, text)| breach(path, text, tree))
        .collect()
}

/// Writes every document that has changed, and says which.
pub fn write(root: &Path, out: &mut impl Write) -> Result<bool, Trouble> {
    write_files(root, &generated_files(), out)
}

fn breach(path: &Path, expected: &str, tree: &Tree) -> Option<Breach> {
    let path = path.to_string_lossy();
    let Some(text) = tree.text(&path) else {
        return Some(Breach::by(
            &path,
            "is missing; run cargo xtask generated".to_owned(),
        ));
    };
    let line = first_difference(text, expected)?;
    let sentence = "is not what the code would write; run cargo xtask generated".to_owned();
    Some(Breach::at(&path, line, sentence))
}

/// The first line in which two texts differ, counted from 1.
fn first_difference(one: &str, other: &str) -> Option<usize> {
    if one == other {
        return None;
    }
    let (ones, others) = (one.split('\n'), other.split('\n'));
    Some(
        1 + ones
            .zip(others)
            .take_while(|(one, other)| one == other)
            .count(),
    )
}

fn write_files(
    root: &Path,
    files: &[(PathBuf, String)],
    out: &mut impl Write,
) -> Result<bool, Trouble> {
    for (path, text) in files {
        let place = root.join(path);
        let same = fs::read_to_string(&place).is_ok_and(|old| old == *text);
        if !same {
            fs::write(&place, text).map_err(|source| Trouble::File {
                path: place,
                source,
            })?;
            writeln!(out, "wrote {}", path.display())?;
        }
    }
    Ok(true)
}

#[cfg(test)]
mod tests;
