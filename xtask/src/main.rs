//! Repository chores and checks: `cargo xtask <what>`.
//!
//! Each check reads the whole tree once, through [`house::House`], and answers with sentences
//! that name a file and what to change. A new check is a file here and a row in [`tidy::CHECKS`].

mod breach;
mod cases;
mod cut_bench;
mod generated;
mod glossary;
mod house;
mod numbers;
mod rooms;
mod rust;
mod testfiles;
mod tidy;
mod tree;
mod words;
mod workspace;

use std::io::{self, Write};
use std::process::ExitCode;

use clap::{Parser, Subcommand};

use crate::breach::Trouble;
use crate::house::House;

/// Repository chores and checks.
///
/// Example: cargo xtask tidy
#[derive(Parser)]
#[command(name = "cargo xtask", bin_name = "cargo xtask")]
struct Arguments {
    #[command(subcommand)]
    chore: Chore,
}

#[derive(Subcommand)]
enum Chore {
    /// Compare what each crate uses with the table of rooms.
    Rooms,
    /// Look for words, names and leftovers that must not stand in the project.
    Words,
    /// Look for forgotten test files, unmatched golden cases and files that grew too long.
    Tests,
    /// Write the generated documents.
    Generated {
        /// Only compare them with what stands in the tree.
        #[arg(long)]
        check: bool,
    },
    /// Look for trade numbers outside the table of settings.
    Numbers,
    /// Compare the public types of `trade` with the glossary.
    Glossary,
    /// Check the program against a table of cases.
    Cases {
        /// Which kind of table.
        #[command(subcommand)]
        cases: cases::Cases,
    },
    /// Try the cutting solver on a set of benchmark instances.
    CutBench(cut_bench::CutBench),
    /// Run every check.
    Tidy,
}

fn main() -> ExitCode {
    let arguments = Arguments::parse();
    match perform(&arguments.chore, &mut io::stdout().lock()) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::from(1),
        Err(trouble) => {
            // With standard error gone too, the exit code is all that is left to say it.
            let _ = writeln!(io::stderr(), "xtask: {trouble}");
            ExitCode::from(3)
        }
    }
}

/// Does one chore; true when nothing was found.
fn perform(chore: &Chore, out: &mut impl Write) -> Result<bool, Trouble> {
    match chore {
        Chore::Cases { cases } => cases::run(cases, out),
        Chore::CutBench(bench) => cut_bench::run(bench, out),
        Chore::Generated { check: false } => generated::write(&House::open()?.root, out),
        Chore::Tidy => tidy::run(&tidy::CHECKS, &House::open()?, out),
        Chore::Rooms => tidy::run(&[tidy::ROOMS], &House::open()?, out),
        Chore::Words => tidy::run(&[tidy::WORDS], &House::open()?, out),
        Chore::Tests => tidy::run(&[tidy::TESTS], &House::open()?, out),
        Chore::Generated { check: true } => tidy::run(&[tidy::GENERATED], &House::open()?, out),
        Chore::Numbers => tidy::run(&[tidy::NUMBERS], &House::open()?, out),
        Chore::Glossary => tidy::run(&[tidy::GLOSSARY], &House::open()?, out),
    }
}
