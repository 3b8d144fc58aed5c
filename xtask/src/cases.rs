//! `cargo xtask cases`: checks the program against tables of cases from outside.

use std::fmt::Display;
use std::io::Write;
use std::path::{Path, PathBuf};

use clap::Subcommand;
use suite::{bench_cases, package, reference};
use trade::Catalogue;

use crate::breach::Trouble;

/// Which kind of table.
#[derive(Subcommand)]
pub enum Cases {
    /// Sizes of whole pieces: a CSV with the columns of suite/ref/package/cases.csv.
    Package {
        /// The table.
        path: PathBuf,
    },
    /// Single questions of the bench: a CSV with the columns of suite/ref/bench/cases.csv.
    Bench {
        /// The table.
        path: PathBuf,
    },
    /// Published figures and worked checks: a folder with files as in suite/ref/reference.
    Reference {
        /// The folder.
        folder: PathBuf,
    },
}

/// Judges every case; true when nothing differs.
pub fn run(cases: &Cases, out: &mut impl Write) -> Result<bool, Trouble> {
    match cases {
        Cases::Package { path } => told(path, package_verdicts(&read(path)?), out),
        Cases::Bench { path } => told(path, bench_verdicts(&read(path)?), out),
        Cases::Reference { folder } => references(folder, out),
    }
}

fn read(path: &Path) -> Result<String, Trouble> {
    std::fs::read_to_string(path).map_err(|source| file_trouble(path, source))
}

fn file_trouble(path: &Path, source: std::io::Error) -> Trouble {
    Trouble::File {
        path: path.to_path_buf(),
        source,
    }
}

fn told(
    path: &Path,
    judged: Result<Vec<Verdict>, String>,
    out: &mut impl Write,
) -> Result<bool, Trouble> {
    match judged {
        Ok(verdicts) => tell(path, &verdicts, out),
        Err(fault) => {
            writeln!(out, "{}: {fault}", path.display())?;
            Ok(false)
        }
    }
}

/// Judges every file of a folder by its name; true when nothing differs and every file is known.
fn references(folder: &Path, out: &mut impl Write) -> Result<bool, Trouble> {
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(|source| file_trouble(folder, source))? {
        paths.push(entry.map_err(|source| file_trouble(folder, source))?.path());
    }
    paths.sort();
    let mut failed = Vec::new();
    let mut judged = 0_usize;
    for path in &paths {
        let name = path
            .file_name()
            .map(|name| name.to_string_lossy().into_owned());
        let name = name.unwrap_or_default();
        let agrees = match name.as_str() {
            "README.md" => continue,
            // Whole pieces in the form of suite/ref/package.
            "package_cases.csv" => told(path, package_verdicts(&read(path)?), out)?,
            _ => reference(path, &name, out)?,
        };
        judged += 1;
        if !agrees {
            failed.push(name);
        }
    }
    if judged == 0 {
        writeln!(out, "{}: there is no table in it", folder.display())?;
        return Ok(false);
    }
    writeln!(
        out,
        "{judged} files judged, {} of them failed",
        failed.len()
    )?;
    for name in &failed {
        writeln!(out, "    {name}")?;
    }
    Ok(failed.is_empty())
}

fn reference(path: &Path, name: &str, out: &mut impl Write) -> Result<bool, Trouble> {
    if !reference::knows(name) {
        let fault = reference::FileFault::UnknownFile(name.to_owned());
        writeln!(out, "{}: {fault}", path.display())?;
        return Ok(false);
    }
    let lines = match reference::judge(name, &read(path)?) {
        Ok(lines) => lines,
        Err(fault) => {
            writeln!(out, "{}: {fault}", path.display())?;
            return Ok(false);
        }
    };
    for line in &lines {
        writeln!(out, "{line}")?;
    }
    let failed = lines.iter().filter(|line| !line.agrees).count();
    let agreed = lines.len() - failed;
    writeln!(out, "{name}: {agreed} passed, {failed} failed")?;
    Ok(failed == 0)
}

/// What is told of one case.
struct Verdict {
    id: String,
    kind: String,
    compared: usize,
    differences: Vec<String>,
}

fn package_verdicts(text: &str) -> Result<Vec<Verdict>, String> {
    let table = package::Table::read(text).map_err(sentence)?;
    let catalogue = Catalogue::default();
    let judged = table.rows.iter().map(|row| {
        let verdict = package::judge(row, &catalogue);
        Verdict {
            id: verdict.id,
            kind: verdict.kind,
            compared: verdict.compared,
            differences: verdict.differences.iter().map(sentence).collect(),
        }
    });
    Ok(judged.collect())
}

fn bench_verdicts(text: &str) -> Result<Vec<Verdict>, String> {
    let table = bench_cases::Table::read(text).map_err(sentence)?;
    let catalogue = Catalogue::default();
    let judged = table.rows.iter().map(|row| {
        let verdict = bench_cases::judge(row, &catalogue);
        Verdict {
            id: verdict.id,
            kind: verdict.kind,
            compared: verdict.compared,
            differences: verdict.differences,
        }
    });
    Ok(judged.collect())
}

fn sentence(said: impl Display) -> String {
    said.to_string()
}

fn tell(path: &Path, verdicts: &[Verdict], out: &mut impl Write) -> Result<bool, Trouble> {
    let mut failed = 0_usize;
    for verdict in verdicts {
        let agrees = verdict.differences.is_empty();
        let word = if agrees { "agrees" } else { "differs" };
        let (id, kind, compared) = (&verdict.id, &verdict.kind, verdict.compared);
        writeln!(out, "{id} {kind}: {word} ({compared} columns compared)")?;
        for difference in &verdict.differences {
            writeln!(out, "    {difference}")?;
        }
        failed += usize::from(!agrees);
    }
    let agreed = verdicts.len() - failed;
    writeln!(out, "{}: {agreed} passed, {failed} failed", path.display())?;
    Ok(failed == 0)
}
