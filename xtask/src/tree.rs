//! The files of the repository: tracked ones, and new ones that are not ignored.

use std::fs;
use std::io;
use std::path::Path;

use crate::breach::Trouble;
use crate::house::ask;

/// One file.
pub struct File {
    /// Path from the root, with `/` between folders.
    pub path: String,
    /// Its text; none for a file that is not UTF-8.
    pub text: Option<String>,
}

/// All files, ordered by path.
pub struct Tree {
    files: Vec<File>,
}

impl Tree {
    /// Reads every tracked file and every new one that `.gitignore` does not name.
    pub fn read(root: &Path) -> Result<Self, Trouble> {
        let listing = [
            "ls-files",
            "-z",
            "--cached",
            "--others",
            "--exclude-standard",
        ];
        let answer = ask("git", &listing, root)?;
        let mut files = Vec::new();
        for name in answer
            .split(|byte| *byte == 0)
            .filter(|name| !name.is_empty())
        {
            let path = String::from_utf8(name.to_vec()).map_err(|_| Trouble::Name {
                name: String::from_utf8_lossy(name).into_owned(),
            })?;
            files.extend(read_file(root, path)?);
        }
        Ok(Self::from_files(files))
    }

    /// All files.
    pub fn files(&self) -> impl Iterator<Item = &File> {
        self.files.iter()
    }

    /// Every file that holds text: its path and the text.
    pub fn texts(&self) -> impl Iterator<Item = (&str, &str)> {
        self.files
            .iter()
            .filter_map(|file| Some((file.path.as_str(), file.text.as_deref()?)))
    }

    /// Every Rust file.
    pub fn rust(&self) -> impl Iterator<Item = (&str, &str)> {
        self.texts().filter(|(path, _)| has_extension(path, "rs"))
    }

    /// The text of one file.
    pub fn text(&self, path: &str) -> Option<&str> {
        self.texts()
            .find(|(known, _)| *known == path)
            .map(|(_, text)| text)
    }

    fn from_files(mut files: Vec<File>) -> Self {
        files.sort_by(|one, other| one.path.cmp(&other.path));
        files.dedup_by(|one, other| one.path == other.path);
        Self { files }
    }
}

#[cfg(test)]
impl Tree {
    /// A small invented tree.
    pub fn of(files: &[(&str, &str)]) -> Self {
        let files = files.iter().map(|(path, text)| File {
            path: (*path).to_owned(),
            text: Some((*text).to_owned()),
        });
        Self::from_files(files.collect())
    }
}

/// Whether a path ends in `.extension`.
pub fn has_extension(path: &str, extension: &str) -> bool {
    Path::new(path)
        .extension()
        .is_some_and(|found| found == extension)
}

/// Whether a file holds only tests: `tests.rs`, or anything below a folder `tests`.
pub fn is_test_file(path: &str) -> bool {
    path.split('/')
        .any(|part| part == "tests" || part == "tests.rs")
}

/// A deleted file whose deletion is not yet committed is still listed; it is none.
fn read_file(root: &Path, path: String) -> Result<Option<File>, Trouble> {
    let place = root.join(&path);
    let found = fs::symlink_metadata(&place).and_then(|found| {
        if found.is_file() {
            fs::read(&place).map(Some)
        } else {
            Ok(None)
        }
    });
    match found {
        Ok(Some(bytes)) => Ok(Some(File {
            path,
            text: String::from_utf8(bytes).ok(),
        })),
        Ok(None) => Ok(None),
        Err(source) if source.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(source) => Err(Trouble::File {
            path: place,
            source,
        }),
    }
}
