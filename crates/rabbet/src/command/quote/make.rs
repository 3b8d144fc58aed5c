//! `rabbet quote make`

use clap::Args;
use pricing::{Heading, Quote};

use crate::command::asking::{Asking, day, on};
use crate::command::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::problem::{Kind, Problem, Trouble};
use trade::Date;

/// Freezes a job's price with its rules, costs, settings and sizes, so that it stays what it is
#[derive(Args, Debug)]
#[command(
    before_help = "Example: rabbet quote make print.toml --number Q-1 -o q-1.json --shop .",
    after_help = EXIT_CODES
)]
pub struct QuoteMake {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// The quote's number
    #[arg(long, value_name = "TEXT")]
    number: String,
    /// The day it is given, as 2030-11-25; left out: the day of --on, else today
    #[arg(long, value_name = "DAY", value_parser = day)]
    given: Option<Date>,
    #[command(flatten)]
    asking: Asking,
    /// Where the quote is written; left out: stdout
    #[arg(short, long, value_name = "FILE")]
    output: Option<String>,
    /// Replace a file that is there
    #[arg(long, requires = "output")]
    force: bool,
    /// Say what would be written, and write nothing
    #[arg(long, requires = "output")]
    dry_run: bool,
}

impl QuoteMake {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        if self.number.trim().is_empty() {
            let problem = Problem::new("quote.number", "the quote's number is empty");
            let problem = problem.hint("say what it is found by, as --number Q-1");
            return Err(Trouble::one(Kind::Input, problem));
        }
        let rules = desk.shop.rules()?.rules;
        let catalogue = desk.shop.catalogue()?;
        let asked = self.asking.asked()?;
        let derived = job_file::derive(&self.file, desk)?;
        let shown = job_file::shown(&self.file);
        if derived.sizes.is_refused() {
            return Err(Trouble::piece(shown, &derived.sizes.faults));
        }
        let heading = Heading {
            number: self.number.trim().to_owned(),
            given: on(self.given.or(Some(asked.day)))?,
        };
        let piece = (&derived.job, &derived.sizes);
        let priced = pricing::price(piece.0, piece.1, &catalogue, &rules, &asked);
        if priced.is_refused() {
            return Err(Trouble::piece(shown, &priced.faults));
        }
        let (quote, priced) =
            Quote::give(&heading, piece, &catalogue, &rules, &asked).map_err(|fault| {
                let problem = Problem::new("quote.refused", fault.to_string());
                Trouble::one(Kind::Piece, problem.in_file(shown))
            })?;
        let how = Writing {
            dry_run: self.dry_run,
            replace: self.force,
        };
        let place = self.output.as_deref().unwrap_or("-");
        files::write(place, quote.to_json().as_bytes(), how, desk.terminal)?;
        job_file::tell(&self.file, &priced.faults, desk);
        if place != "-" {
            desk.terminal.talk(&format!(
                "Quote {}: {}{}",
                quote.number,
                quote.total(),
                quote
                    .valid_to
                    .map_or_else(String::new, |last| format!(", stands to {last}"))
            ));
        }
        Ok(Exit::Done)
    }
}
