//! `rabbet quote show`

use clap::Args;
use pricing::{Difference, Opened, Verdict};
use web::wire;

use super::opened::{again, open};
use crate::command::Desk;
use crate::command::job_sizes::why;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::{Kind, Problem, Trouble};
use crate::report;

/// Shows a quote with its own numbers, and whether they still come out the same
///
/// Exit code 1 where they come out otherwise or can't be reckoned again; the quote's own numbers stand.
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet quote show quote.json", after_help = EXIT_CODES)]
pub struct QuoteShow {
    /// The quote; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// With cost, margin and minutes, which are no customer's
    #[arg(long)]
    shop_copy: bool,
    /// Explain one amount, or list those whose names begin so
    #[arg(long, value_name = "PATH")]
    why: Option<String>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl QuoteShow {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let opened = open(&self.file)?;
        if let Some(path) = &self.why {
            let (priced, unit) = self.priced(&opened)?;
            let text = why(path, &priced.working, unit, self.json)?;
            desk.terminal.data(&text)?;
            return Ok(Exit::Done);
        }
        let text = if self.json {
            let value = serde_json::json!({
                "quote": wire::quote(&opened.quote, self.shop_copy),
                "verdict": wire::verdict(&opened),
            });
            format!("{value:#}\n")
        } else {
            let table = report::of_quote(&opened.quote, self.shop_copy).render(desk.terminal);
            format!("{table}\n{}", told(&opened.verdict))
        };
        desk.terminal.data(&text)?;
        Ok(match opened.verdict {
            Verdict::Same => Exit::Done,
            Verdict::Different(_) | Verdict::Unknown(_) => Exit::Refused,
        })
    }

    /// Explained is only what comes out as it was printed.
    fn priced(&self, opened: &Opened) -> Result<(pricing::Priced, measure::Unit), Trouble> {
        if opened.verdict == Verdict::Same {
            return again(&self.file, opened);
        }
        let sentence =
            "its numbers do not come out the same today, so today's working would explain others";
        let problem = Problem::new("quote.not_same", sentence)
            .hint("leave --why out to see what comes out otherwise");
        Err(Trouble::one(Kind::Document, problem.in_file(&self.file)))
    }
}

fn told(verdict: &Verdict) -> String {
    match verdict {
        Verdict::Same => "Same: every number comes out as printed.\n".to_owned(),
        Verdict::Different(found) => {
            let one = |one: &Difference| {
                format!(
                    "  {}: printed {}; today {}\n",
                    one.of, one.printed, one.today
                )
            };
            let lines: Vec<String> = found.iter().map(one).collect();
            let words = "Different: the quote's own numbers stand; this program reckons otherwise.";
            format!("{words}\n{}", lines.concat())
        }
        Verdict::Unknown(why) => {
            let words = "Unknown: the quote's own numbers stand; it can't be priced again.";
            format!("{words}\n  {}\n", why.join("\n  "))
        }
    }
}
