//! The crates of the workspace, as `cargo metadata --no-deps` tells them.

use std::path::Path;

use serde::Deserialize;

use crate::breach::Trouble;
use crate::house::ask;

/// The crates of the workspace.
#[derive(Deserialize)]
pub struct Workspace {
    /// All member crates.
    pub packages: Vec<Package>,
}

/// One crate.
#[derive(Deserialize)]
pub struct Package {
    /// Its name.
    pub name: String,
    /// Its `Cargo.toml`, from the root.
    pub manifest_path: String,
    /// What it asks for, of every kind (normal, development, build).
    pub dependencies: Vec<Dependency>,
    /// Its crate roots.
    pub targets: Vec<Target>,
}

/// One thing a crate uses.
#[derive(Deserialize)]
pub struct Dependency {
    /// The name of the crate that is used.
    pub name: String,
}

/// One crate root: a library, a program, a test, a bench, an example or a build script.
#[derive(Deserialize)]
pub struct Target {
    /// Its file, from the root.
    pub src_path: String,
}

impl Workspace {
    /// Asks cargo.
    pub fn read(root: &Path) -> Result<Self, Trouble> {
        let answer = ask(
            "cargo",
            &["metadata", "--no-deps", "--format-version", "1"],
            root,
        )?;
        let mut workspace: Self =
            serde_json::from_slice(&answer).map_err(|source| Trouble::Metadata { source })?;
        for package in &mut workspace.packages {
            package.manifest_path = from_root(root, &package.manifest_path);
            for target in &mut package.targets {
                target.src_path = from_root(root, &target.src_path);
            }
        }
        Ok(workspace)
    }
}

impl Package {
    /// The folder of the crate, from the root.
    pub fn folder(&self) -> &str {
        self.manifest_path
            .rsplit_once('/')
            .map_or("", |(folder, _)| folder)
    }
}

#[cfg(test)]
impl Workspace {
    /// An invented workspace: folder, what the crate uses, its crate roots below the folder.
    pub fn of(packages: &[(&str, &[&str], &[&str])]) -> Self {
        let package = |(folder, uses, roots): &(&str, &[&str], &[&str])| Package {
            name: folder.rsplit('/').next().unwrap_or(folder).to_owned(),
            manifest_path: format!("{folder}/Cargo.toml"),
            dependencies: uses
                .iter()
                .map(|name| Dependency {
                    name: (*name).to_owned(),
                })
                .collect(),
            targets: roots
                .iter()
                .map(|root| Target {
                    src_path: format!("{folder}/{root}"),
                })
                .collect(),
        };
        Self {
            packages: packages.iter().map(package).collect(),
        }
    }
}

fn from_root(root: &Path, path: &str) -> String {
    let path = Path::new(path);
    path.strip_prefix(root)
        .unwrap_or(path)
        .to_string_lossy()
        .replace('\\', "/")
}
