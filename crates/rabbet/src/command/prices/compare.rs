//! `rabbet prices compare`

use clap::Args;
use pricing::{Asked, Comparison, Past, Quote, RuleSet, compare};
use sizing::{Fault, Severity};
use trade::Job;
use web::wire;

use crate::command::asking::Asking;
use crate::command::job_compare::name;
use crate::command::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::files;
use crate::problem::{Kind, Problem, Trouble};
use crate::report;
use crate::shop::rules_of;

/// Shows what new rules would have done to jobs and to quotes already given
///
/// A quote is priced on its own day, with its own costs and what was asked then; a job by the options.
#[derive(Args, Debug)]
#[command(
    before_help = "Example: rabbet prices compare prices.toml later.toml print.toml --shop .",
    after_help = EXIT_CODES
)]
pub struct PricesCompare {
    /// The rule set that holds
    #[arg(value_name = "OLD")]
    old: String,
    /// The rule set that is to hold
    #[arg(value_name = "NEW")]
    new: String,
    /// Job files and quotes
    #[arg(value_name = "FILE", required = true)]
    files: Vec<String>,
    #[command(flatten)]
    asking: Asking,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl PricesCompare {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let (old, new) = (rules_of(&self.old)?.rules, rules_of(&self.new)?.rules);
        let asked = self.asking.asked()?;
        let mut whole: Option<Comparison> = None;
        for file in &self.files {
            let one = one(file, [&old, &new], &asked, desk)?;
            whole = Some(match whole {
                None => one,
                Some(mut whole) => {
                    whole.pieces.extend(one.pieces);
                    whole.idle.retain(|id| one.idle.contains(id));
                    whole
                }
            });
        }
        let whole = whole.unwrap_or(Comparison {
            pieces: Vec::new(),
            idle: Vec::new(),
        });
        let text = if self.json {
            format!("{:#}\n", wire::comparison(&whole))
        } else {
            report::of_comparison(&whole).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        let mut exit = Exit::Done;
        for (file, piece) in self.files.iter().zip(&whole.pieces) {
            job_file::tell(file, &piece.faults, desk);
            let stops = |fault: &Fault| fault.severity == Severity::Refuse;
            if piece.faults.iter().any(stops) {
                exit = Exit::Refused;
            }
        }
        Ok(exit)
    }
}

/// One piece priced by both: a quote by what it froze, a job by the shop as it is.
fn one(
    file: &str,
    [old, new]: [&RuleSet; 2],
    asked: &Asked,
    desk: &Desk,
) -> Result<Comparison, Trouble> {
    let bytes = files::read(file)?;
    let is_quote = serde_json::from_slice::<serde_json::Value>(&bytes)
        .is_ok_and(|value| value.get("quote").is_some());
    let shown = job_file::shown(file);
    if is_quote {
        let broken = |fault: pricing::QuoteFault| {
            let problem = Problem::new("quote.form", fault.to_string());
            Trouble::one(Kind::Document, problem.in_file(shown))
        };
        let quote = Quote::read(&String::from_utf8_lossy(&bytes)).map_err(broken)?;
        let (job, catalogue) = (
            quote.job().map_err(broken)?,
            quote.catalogue().map_err(broken)?,
        );
        let sizes = sizing::derive(&job, &catalogue, &quote.settings())
            .map_err(|faults| Trouble::piece(shown, &faults))?;
        let asked = Asked::from(&quote.asked);
        let past = Past {
            name: &quote.number,
            job: &job,
            sizes: &sizes,
            asked: &asked,
        };
        return Ok(compare(old, new, &catalogue, &[past]));
    }
    let job = Job::read(&bytes).map_err(|faults| Trouble::document(shown, &faults))?;
    let catalogue = desk.shop.catalogue()?;
    let sizes = sizing::derive(&job, &catalogue, &desk.shop.settings(job.units)?)
        .map_err(|faults| Trouble::piece(shown, &faults))?;
    let past = Past {
        name: name(file),
        job: &job,
        sizes: &sizes,
        asked,
    };
    Ok(compare(old, new, &catalogue, &[past]))
}
