//! What every command that prints a piece's papers shares.

use std::path::Path;

use paperwork::PaperworkError;

use crate::command::job_file::{self, Derived};
use crate::command::{Desk, job_draw};
use crate::files::{self, Writing};
use crate::problem::{Kind, Problem, Trouble};

/// A job that can be made, derived; the faults of one that can't are told.
///
/// # Errors
/// As [`job_file::derive`], and a piece that can't be made as described.
pub fn made(file: &str, anyway: bool, desk: &Desk) -> Result<Derived, Trouble> {
    let derived = job_file::derive(file, desk)?;
    if derived.sizes.is_refused() && !anyway {
        job_file::tell(file, &derived.sizes.faults, desk);
        let problem = Problem::new(
            "paper.refused",
            "nothing is printed for a piece that can't be made as described",
        )
        .hint("mend what is named above, or say --anyway to print it all the same");
        return Err(Trouble::one(
            Kind::Piece,
            problem.in_file(job_file::shown(file)),
        ));
    }
    Ok(derived)
}

/// The name a piece without an order number goes by: its file's.
pub fn fallback_order(file: &str) -> String {
    let stem = Path::new(file).file_stem();
    let stem = stem.map(|stem| stem.to_string_lossy().into_owned());
    stem.filter(|stem| stem != "-")
        .unwrap_or_else(|| "stdin".to_owned())
}

/// Writes a paper beside its job, never over it.
///
/// # Errors
/// An output that is the job itself, and whatever keeps it from being written.
pub fn write(
    file: &str,
    output: &str,
    bytes: &[u8],
    dry_run: bool,
    desk: &Desk,
) -> Result<(), Trouble> {
    job_draw::keep_apart(file, output)?;
    let how = Writing {
        dry_run,
        replace: true,
    };
    files::write(output, bytes, how, desk.terminal)
}

/// The trouble of a paper that could not be made.
pub fn unset(file: &str, error: &PaperworkError) -> Trouble {
    let (kind, code) = match error {
        PaperworkError::NoWords { .. } | PaperworkError::Drawing { .. } => {
            (Kind::Piece, "paper.drawing")
        }
        PaperworkError::MarkOff { .. } => (Kind::Piece, "paper.mark"),
        PaperworkError::Figures(_) => (Kind::Piece, "paper.figures"),
        PaperworkError::Nothing(_) => (Kind::Input, "paper.nothing"),
        PaperworkError::NotATime(_) => (Kind::Input, "paper.date"),
        PaperworkError::NoOrder => (Kind::Input, "paper.order"),
        _ => (Kind::Ours, "paper.setting"),
    };
    let problem = Problem::new(code, error.to_string()).in_file(job_file::shown(file));
    Trouble::one(kind, problem)
}
