//! `rabbet quote invoice`

use clap::Args;
use measure::Money;
use pricing::Verdict;
use pricing::invoice::{Invoice, InvoiceHeading, Law, Party, invoice};
use trade::Date;

use super::opened::{again, open};
use crate::command::asking::{day, on};
use crate::command::job_budget::amount;
use crate::command::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::problem::{Kind, Problem, Trouble};
use crate::toml_place;

/// Writes a quote as a structured invoice: the model of EN 16931, in UBL 2.1
///
/// A seller or buyer is a file of lines: `name`, `street`, `town`, `post_code`, `country`, `vat_number`, `register_number`.
#[derive(Args, Debug)]
#[command(
    before_help = "Example: rabbet quote invoice quote.json --number 1 --seller seller.toml --buyer buyer.toml",
    after_help = EXIT_CODES
)]
pub struct QuoteInvoice {
    /// The quote; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// The invoice's number
    #[arg(long, value_name = "TEXT")]
    number: String,
    /// Who sells
    #[arg(long, value_name = "FILE")]
    seller: String,
    /// Who buys
    #[arg(long, value_name = "FILE")]
    buyer: String,
    /// The day of the invoice, as 2030-11-25; left out: today
    #[arg(long, value_name = "DAY", value_parser = day)]
    on: Option<Date>,
    /// The day payment is due; left out: the day of the invoice
    #[arg(long, value_name = "DAY", value_parser = day)]
    due: Option<Date>,
    /// What was paid already, as '90.00 USD'; left out: nothing
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    paid: Option<Money>,
    /// What is said on it
    #[arg(long, value_name = "TEXT")]
    note: Option<String>,
    /// What the buyer calls the order
    #[arg(long, value_name = "TEXT")]
    buyer_reference: Option<String>,
    /// Where the invoice is written; left out: stdout
    #[arg(short, long, value_name = "FILE")]
    output: Option<String>,
    /// Replace a file that is there
    #[arg(long, requires = "output")]
    force: bool,
    /// Say what would be written, and write nothing
    #[arg(long, requires = "output")]
    dry_run: bool,
}

impl QuoteInvoice {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let opened = open(&self.file)?;
        let refused = |code: &str, sentence: String| {
            let problem = Problem::new(code, sentence);
            Trouble::one(Kind::Document, problem.in_file(job_file::shown(&self.file)))
        };
        if opened.verdict != Verdict::Same {
            let sentence = "its numbers do not come out the same today, so an invoice made from it would say others; \
                `rabbet quote show` tells which";
            return Err(refused("quote.not_same", sentence.to_owned()));
        }
        let (priced, _) = again(&self.file, &opened)?;
        let heading = self.heading(priced.totals.total.value)?;
        let made = invoice(&priced, &opened.quote.rules, heading)
            .map_err(|fault| refused("invoice.refused", fault.to_string()))?;
        keeps_the_laws(&made)?;
        let how = Writing {
            dry_run: self.dry_run,
            replace: self.force,
        };
        let place = self.output.as_deref().unwrap_or("-");
        files::write(place, made.to_ubl().as_bytes(), how, desk.terminal)?;
        Ok(Exit::Done)
    }

    fn heading(&self, total: Money) -> Result<InvoiceHeading, Trouble> {
        let given = on(self.on)?;
        Ok(InvoiceHeading {
            number: self.number.clone(),
            given,
            due: self.due.unwrap_or(given),
            note: self.note.clone(),
            buyer_reference: self.buyer_reference.clone(),
            seller: party(&self.seller)?,
            buyer: party(&self.buyer)?,
            paid: self.paid.unwrap_or_else(|| Money::zero(total.currency)),
        })
    }
}

/// Nothing leaves whose sums do not hold by the standard's own rules.
fn keeps_the_laws(made: &Invoice) -> Result<(), Trouble> {
    let laws = made.laws();
    let broken = |law: &&Law| law.stated != law.given;
    match laws.iter().find(broken) {
        None => Ok(()),
        Some(law) => {
            let sentence = format!(
                "{}: the invoice would state {}, the rule gives {}",
                law.name, law.stated, law.given
            );
            Err(Trouble::one(
                Kind::Ours,
                Problem::new("invoice.law", sentence),
            ))
        }
    }
}

/// Reads who sells or buys.
pub(super) fn party(file: &str) -> Result<Party, Trouble> {
    #[derive(serde::Deserialize)]
    #[serde(deny_unknown_fields)]
    struct File {
        name: String,
        street: Option<String>,
        town: Option<String>,
        post_code: Option<String>,
        country: String,
        vat_number: Option<String>,
        register_number: Option<String>,
    }
    let text = toml_place::text_of(file, &files::read(file)?)?;
    let read: File = toml::from_str(&text)
        .map_err(|error| toml_place::trouble(file, &text, &error, "party.form"))?;
    Ok(Party {
        name: read.name,
        street: read.street,
        town: read.town,
        post_code: read.post_code,
        country: read.country,
        vat_number: read.vat_number,
        register_number: read.register_number,
    })
}
