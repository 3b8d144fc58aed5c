//! `rabbet quote print`

use clap::{Args, ValueEnum};
use drawing::{Ink, Look, Sheet};
use measure::Money;
use paperwork::{
    InvoiceWords, PaperworkError, QuoteHead, QuotePaper, QuotePiece, choices_of, choices_pdf,
    quote_of, quote_pdf,
};
use pricing::{Opened, Verdict};
use trade::Date;

use super::invoice::party;
use super::opened::open;
use crate::command::asking::day;
use crate::command::job_budget::amount;
use crate::command::{Desk, job_draw, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::pictures::Pictures;
use crate::printing::Printing;
use crate::problem::{Kind, Problem, Trouble};

/// Writes a quote as PDF; two to six of them as choices side by side; one of them as an invoice
///
/// Its figures are the quote's own, whatever they come to today.
#[derive(Args, Debug)]
#[command(
    before_help = "Example: rabbet quote print quote.json -o quote.pdf",
    after_help = EXIT_CODES
)]
pub struct QuotePrint {
    /// The quote; - is stdin. Several: the first is what the others are compared with
    #[arg(value_name = "FILE", required = true, num_args = 1..)]
    files: Vec<String>,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    /// Whose copy it is
    #[arg(long, value_enum, default_value = "customer")]
    copy: Whose,
    #[command(flatten)]
    printing: Printing,
    /// Print it as the invoice of this number
    #[arg(long, value_name = "NUMBER", requires_all = ["seller", "buyer"])]
    invoice: Option<String>,
    /// Who sells, as for `quote invoice`
    #[arg(long, value_name = "FILE", requires = "invoice")]
    seller: Option<String>,
    /// Who buys, as for `quote invoice`
    #[arg(long, value_name = "FILE", requires = "invoice")]
    buyer: Option<String>,
    /// The day payment is due, as 2030-11-25; left out: none is named
    #[arg(long, value_name = "DAY", value_parser = day, requires = "invoice")]
    due: Option<Date>,
    /// What was paid already, as '90.00 USD'; left out: nothing is said of it
    #[arg(long, value_name = "AMOUNT", value_parser = amount, requires = "invoice")]
    paid: Option<Money>,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

/// Whose copy it is.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Whose {
    /// Without cost, margin and minutes
    Customer,
    /// With cost, margin, minutes, the reason of each line, and cautions for the bench
    Shop,
}

impl QuotePrint {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        if self.invoice.is_some() && self.files.len() > 1 {
            let problem = Problem::new("quote.invoice", "an invoice is made of one quote")
                .hint("give one quote, or leave --invoice out");
            return Err(Trouble::one(Kind::Usage, problem));
        }
        for file in &self.files {
            job_draw::keep_apart(file, &self.output)?;
        }
        // Side by side they are printed smaller, so their lettering is laid out larger.
        let sheet = if self.files.len() > 1 {
            Sheet::Ticket
        } else {
            Sheet::Page
        };
        let files = self.files.iter();
        let pieces: Result<Vec<QuotePiece>, Trouble> =
            files.map(|file| piece(file, sheet, desk)).collect();
        let pdf = self.pdf(pieces?)?;
        let how = Writing {
            dry_run: self.dry_run,
            replace: true,
        };
        files::write(&self.output, &pdf, how, desk.terminal)?;
        Ok(Exit::Done)
    }

    fn pdf(&self, mut pieces: Vec<QuotePiece>) -> Result<Vec<u8>, Trouble> {
        let file = self.files.first().map_or("-", String::as_str);
        let unset = |error: PaperworkError| unset(file, &error);
        let units = pieces
            .first()
            .map_or(trade::Units::Inches, |first| first.quote.units);
        let paper = self.printing.paper(units);
        let head = self.head()?;
        match (pieces.pop(), pieces.is_empty()) {
            (Some(only), true) => {
                let quote = quote_of(only, head).map_err(unset)?;
                reasoned(file, &quote)?;
                quote_pdf(&quote, paper).map_err(unset)
            }
            (last, _) => {
                pieces.extend(last);
                let choices = choices_of(pieces, head).map_err(unset)?;
                choices_pdf(&choices, paper).map_err(unset)
            }
        }
    }

    fn head(&self) -> Result<QuoteHead, Trouble> {
        let (date, made) = self.printing.when();
        let invoice = match (&self.invoice, &self.seller, &self.buyer) {
            (Some(number), Some(seller), Some(buyer)) => Some(InvoiceWords {
                number: number.trim().to_owned(),
                given: date,
                due: self.due.map(|day| day.to_string()).unwrap_or_default(),
                seller: party(seller)?,
                buyer: party(buyer)?,
                paid: self.paid,
            }),
            _ => None,
        };
        let shop = &self.printing.shop_name;
        Ok(QuoteHead {
            shop: match &invoice {
                Some(invoice) if shop.is_empty() => invoice.seller.name.clone(),
                _ => shop.clone(),
            },
            made,
            copy: match self.copy {
                Whose::Customer => paperwork::Copy::Customer,
                Whose::Shop => paperwork::Copy::Shop,
            },
            invoice,
        })
    }
}

/// A quote with its piece, as it was given.
fn piece(file: &str, sheet: Sheet, desk: &Desk) -> Result<QuotePiece, Trouble> {
    let Opened {
        quote,
        job,
        verdict,
    } = open(file)?;
    let shown = job_file::shown(file);
    if verdict != Verdict::Same {
        desk.terminal.talk(&format!(
            "{shown}: its numbers do not come out the same today; printed are its own, and `rabbet quote show` tells more"
        ));
    }
    let catalogue = quote.catalogue().map_err(|fault| {
        let problem = Problem::new("quote.form", fault.to_string());
        Trouble::one(Kind::Document, problem.in_file(shown))
    })?;
    let sizes = sizing::derive(&job, &catalogue, &quote.settings())
        .map_err(|faults| Trouble::piece(shown, &faults))?;
    let pictures = Pictures::beside(file, &job);
    for missing in &pictures.missing {
        desk.terminal.talk(missing);
    }
    let named = |name: &str| pictures.named(name);
    let look = Look {
        pictures: &named,
        ink: Ink::Colour,
        sheet,
    };
    let elevation =
        drawing::elevation(&job, &sizes, &look).map_err(|error| job_draw::undrawn(file, error))?;
    Ok(QuotePiece {
        quote,
        job,
        sizes,
        elevation,
    })
}

/// An invoice says why something on it is not taxed.
fn reasoned(file: &str, paper: &QuotePaper) -> Result<(), Trouble> {
    if paper.untaxed.is_empty() || !paper.untaxed_why.is_empty() {
        return Ok(());
    }
    let sentence =
        "the invoice would say that something is not taxed, and the quote's rules hold no reason";
    let problem = Problem::new("quote.untaxed", sentence).hint(
        "add a [tax.untaxed] table with `category` and `reason` to the prices, and make the quote again",
    );
    Err(Trouble::one(
        Kind::Document,
        problem.in_file(job_file::shown(file)),
    ))
}

fn unset(file: &str, error: &PaperworkError) -> Trouble {
    let (kind, code) = match error {
        PaperworkError::NoWords { .. } | PaperworkError::Drawing { .. } => {
            (Kind::Piece, "quote.drawing")
        }
        PaperworkError::NotATime(_) => (Kind::Input, "quote.date"),
        PaperworkError::NoQuoteNumber => (Kind::Input, "quote.number"),
        PaperworkError::Choices { .. } => (Kind::Input, "quote.choices"),
        PaperworkError::OtherCurrency { .. } => (Kind::Input, "quote.currency"),
        PaperworkError::Paid { .. } => (Kind::Input, "quote.paid"),
        _ => (Kind::Ours, "quote.setting"),
    };
    let problem = Problem::new(code, error.to_string()).in_file(job_file::shown(file));
    Trouble::one(kind, problem)
}
