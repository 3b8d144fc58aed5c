//! Everything the checks look at, read once.

use std::env;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::breach::Trouble;
use crate::tree::Tree;
use crate::workspace::Workspace;

/// The repository as the checks see it.
pub struct House {
    /// Where it stands on this machine.
    pub root: PathBuf,
    /// Its files.
    pub tree: Tree,
    /// Its crates.
    pub workspace: Workspace,
}

impl House {
    /// Reads the repository that holds the current folder.
    pub fn open() -> Result<Self, Trouble> {
        let start = env::current_dir().map_err(|source| Trouble::File {
            path: PathBuf::from("."),
            source,
        })?;
        let root = root_above(&start)?;
        let tree = Tree::read(&root)?;
        let workspace = Workspace::read(&root)?;
        Ok(Self {
            root,
            tree,
            workspace,
        })
    }
}

/// Runs a program in a folder and returns what it printed.
pub fn ask(program: &'static str, arguments: &[&str], folder: &Path) -> Result<Vec<u8>, Trouble> {
    let answer = Command::new(program)
        .args(arguments)
        .current_dir(folder)
        .output()
        .map_err(|source| Trouble::Start { program, source })?;
    if answer.status.success() {
        return Ok(answer.stdout);
    }
    let said = String::from_utf8_lossy(&answer.stderr).trim().to_owned();
    Err(Trouble::Failed { program, said })
}

fn root_above(start: &Path) -> Result<PathBuf, Trouble> {
    start
        .ancestors()
        .find(|folder| folder.join("xtask/Cargo.toml").is_file())
        .map(Path::to_path_buf)
        .ok_or_else(|| Trouble::OutsideRepository {
            start: start.to_path_buf(),
        })
}
