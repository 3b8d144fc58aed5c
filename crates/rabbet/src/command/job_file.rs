//! A job file read and derived, for every command that starts there.

use sizing::{Fault, Severity, Sizes};
use trade::Job;

use super::Desk;
use crate::files;
use crate::problem::Trouble;

/// A job with everything that was derived from it.
pub struct Derived {
    /// As written.
    pub job: Job,
    /// As worked out.
    pub sizes: Sizes,
}

/// Reads a job document, `-` from stdin.
///
/// # Errors
/// A file that can't be reached, a document that can't be read.
pub fn read(file: &str) -> Result<Job, Trouble> {
    Job::read(&files::read(file)?).map_err(|faults| Trouble::document(shown(file), &faults))
}

/// Reads a job document and derives it.
///
/// # Errors
/// As [`read`], and everything that is missing or unknown.
pub fn derive(file: &str, desk: &Desk) -> Result<Derived, Trouble> {
    let job = read(file)?;
    let (settings, catalogue) = (desk.shop.settings(job.units)?, desk.shop.catalogue()?);
    match sizing::derive(&job, &catalogue, &settings) {
        Ok(sizes) => Ok(Derived { job, sizes }),
        Err(faults) => Err(Trouble::piece(shown(file), &faults)),
    }
}

/// The file as messages name it.
pub fn shown(file: &str) -> &str {
    if file == "-" { "stdin" } else { file }
}

/// Tells faults on stderr: in words, or, where the run speaks JSON and one stops the piece, as an object.
pub fn tell(file: &str, faults: &[Fault], desk: &Desk) {
    let stops = faults
        .iter()
        .any(|fault| fault.severity == Severity::Refuse);
    if !faults.is_empty() && (stops || !desk.terminal.json) {
        Trouble::piece(shown(file), faults).tell(desk.terminal);
    }
}
