//! A quote file, opened.

use pricing::{Asked, Opened, Priced, Quote, QuoteFault, price};

use crate::command::job_file;
use crate::files;
use crate::problem::{Kind, Problem, Trouble};

/// Opens a quote, `-` from stdin.
///
/// # Errors
/// A file that can't be reached, and what is no quote or was changed.
pub fn open(file: &str) -> Result<Opened, Trouble> {
    let bytes = files::read(file)?;
    Quote::open(&String::from_utf8_lossy(&bytes)).map_err(|fault| broken(file, &fault))
}

/// The quote priced again from what it holds.
///
/// # Errors
/// A job or materials this program can't read or derive.
pub fn again(file: &str, opened: &Opened) -> Result<(Priced, measure::Unit), Trouble> {
    let quote = &opened.quote;
    let catalogue = quote.catalogue().map_err(|fault| broken(file, &fault))?;
    let sizes = sizing::derive(&opened.job, &catalogue, &quote.settings())
        .map_err(|faults| Trouble::piece(job_file::shown(file), &faults))?;
    let asked = Asked::from(&quote.asked);
    let priced = price(&opened.job, &sizes, &catalogue, &quote.rules, &asked);
    Ok((priced, sizes.unit()))
}

fn broken(file: &str, fault: &QuoteFault) -> Trouble {
    let problem = Problem::new("quote.form", fault.to_string());
    Trouble::one(Kind::Document, problem.in_file(job_file::shown(file)))
}
