//! `rabbet job budget`

use std::fmt::Write as _;

use clap::Args;
use measure::Money;
use pricing::{Budget, Proposal, Proposed};
use trade::Catalogue;
use web::wire;

use super::Desk;
use super::asking::Asking;
use super::job_file::{self, Derived};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::problem::{Kind, Problem, Trouble};
use crate::terminal::Ink;

/// Proposes the smallest changes that bring a price under a ceiling; makes one of them on request
#[derive(Args, Debug)]
#[command(
    before_help = "Example: rabbet job budget print.toml --ceiling '180.00 USD' --shop .",
    after_help = EXIT_CODES
)]
pub struct JobBudget {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// The most it may cost, tax included, as '180.00 USD'
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    ceiling: Money,
    #[command(flatten)]
    asking: Asking,
    /// Make the changes of this proposal, by its number
    #[arg(long, value_name = "N")]
    apply: Option<usize>,
    /// Where the changed job is written; left out: stdout
    #[arg(short, long, value_name = "FILE", requires = "apply")]
    output: Option<String>,
    /// Replace a file that is there
    #[arg(long, requires = "output")]
    force: bool,
    /// Say what would be written, and write nothing
    #[arg(long, requires = "apply")]
    dry_run: bool,
    /// As JSON
    #[arg(long, conflicts_with = "apply")]
    json: bool,
}

/// An amount as it is typed.
pub fn amount(text: &str) -> Result<Money, String> {
    Money::read(text).map_err(|error| format!("{error}; write it as '180.00 USD'"))
}

impl JobBudget {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let ruled = desk.shop.rules()?;
        let catalogue = desk.shop.catalogue()?;
        let asked = self.asking.asked()?;
        let derived = job_file::derive(&self.file, desk)?;
        let settings = desk.shop.settings(derived.job.units)?;
        let budget = Budget {
            job: &derived.job,
            catalogue: &catalogue,
            shop: &settings,
            rules: &ruled.rules,
            asked: &asked,
            ceiling: self.ceiling,
        };
        let proposed = budget.propose().map_err(|fault| {
            let problem = Problem::new("budget.refused", fault.to_string());
            Trouble::one(Kind::Piece, problem.in_file(job_file::shown(&self.file)))
        })?;
        if let Some(number) = self.apply {
            return self.apply(number, &proposed, &derived, desk);
        }
        let text = if self.json {
            let value = wire::proposed(&proposed, &derived.job, &catalogue);
            format!("{value:#}\n")
        } else {
            self.told(&proposed, &catalogue, desk)
        };
        desk.terminal.data(&text)?;
        let met = proposed.before.minor <= self.ceiling.minor || !proposed.proposals.is_empty();
        Ok(if met { Exit::Done } else { Exit::Refused })
    }

    fn apply(
        &self,
        number: usize,
        proposed: &Proposed,
        derived: &Derived,
        desk: &Desk,
    ) -> Result<Exit, Trouble> {
        let chosen = number
            .checked_sub(1)
            .and_then(|at| proposed.proposals.get(at));
        let Some(chosen) = chosen else {
            let sentence = match proposed.proposals.len() {
                0 => "there is no proposal to make".to_owned(),
                count => format!("there is no proposal {number}; they are numbered 1 to {count}"),
            };
            let problem = Problem::new("budget.no_proposal", sentence)
                .hint("leave --apply out to see what is proposed");
            return Err(Trouble::one(Kind::Input, problem));
        };
        let document = chosen.applied(&derived.job).to_toml();
        let how = Writing {
            dry_run: self.dry_run,
            replace: self.force,
        };
        let place = self.output.as_deref().unwrap_or("-");
        files::write(place, document.as_bytes(), how, desk.terminal)?;
        desk.terminal.talk(&format!(
            "{} instead of {}, {} less",
            chosen.total, proposed.before, chosen.saving
        ));
        Ok(Exit::Done)
    }

    fn told(&self, proposed: &Proposed, catalogue: &Catalogue, desk: &Desk) -> String {
        let (before, ceiling) = (proposed.before, self.ceiling);
        if before.minor <= ceiling.minor {
            return format!("It costs {before}, which is within {ceiling}: nothing to change.\n");
        }
        let mut text = format!("It costs {before}, which is more than {ceiling}.\n");
        for (at, proposal) in proposed.proposals.iter().enumerate() {
            let heading = format!("{}: {}, {} less", at + 1, proposal.total, proposal.saving);
            let heading = desk.terminal.ink_out(Ink::Heading, &heading);
            writeln!(text, "\n{heading}").expect("writing to a string");
            text.push_str(&changes(proposal, catalogue));
        }
        if proposed.proposals.is_empty() {
            writeln!(
                text,
                "Nothing meets it without harm: {} changes that save were looked at, {} of them up to {} together.",
                proposed.looked_at, proposed.put_together, proposed.deepest
            )
            .expect("writing to a string");
            if let Some(cheapest) = &proposed.cheapest {
                writeln!(text, "\nThe least that was met with is {}:", cheapest.total)
                    .expect("writing to a string");
                text.push_str(&changes(cheapest, catalogue));
            }
        }
        text
    }
}

fn changes(proposal: &Proposal, catalogue: &Catalogue) -> String {
    let each = proposal.changes.iter();
    let lines: Vec<String> = each
        .map(|(change, saving)| format!("  {}: saves {saving}\n", change.words(catalogue)))
        .collect();
    lines.concat()
}
