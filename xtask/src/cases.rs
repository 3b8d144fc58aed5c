//! `cargo xtask cases`: checks the program against tables of cases from outside.

use std::fmt::Display;
use std::io::Write;
use std::path::{Path, PathBuf};

use clap::Subcommand;
use suite::{bench_cases, package};
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
}

/// Judges every case; true when nothing differs.
pub fn run(cases: &Cases, out: &mut impl Write) -> Result<bool, Trouble> {
    let (Cases::Package { path } | Cases::Bench { path }) = cases;
    let text = std::fs::read_to_string(path).map_err(|source| Trouble::File {
        path: path.clone(),
        source,
    })?;
    let judged = match cases {
        Cases::Package { .. } => package_verdicts(&text),
        Cases::Bench { .. } => bench_verdicts(&text),
    };
    match judged {
        Ok(verdicts) => tell(path, &verdicts, out),
        Err(fault) => {
            writeln!(out, "{}: {fault}", path.display())?;
            Ok(false)
        }
    }
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
