//! The customer's papers: a quote, the choices side by side, an invoice.

use serde_json::{Value, json};

use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::{Drawing, Paper};
use crate::typeset::{Picture, Sheet, Stamp, pdf};

mod choices;
mod of_quote;
mod sums;

pub use choices::{Choice, Choices, MOST_CHOICES, choices_of, choices_pdf};
pub use of_quote::{QuoteHead, QuotePiece, quote_of};
pub use sums::QuoteSum;

use pricing::invoice::Party;

/// Whose copy a price is printed on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Copy {
    /// Without cost, margin and minutes.
    Customer,
    /// With cost, margin, minutes, the reason of each line, and cautions for the bench.
    Shop,
}

/// What makes an invoice of a quote.
///
/// Shape:  the figures stay the quote's own.
#[derive(Clone, Debug)]
pub struct InvoiceWords {
    /// Its number.
    pub number: String,
    /// The day it is given.
    pub given: String,
    /// The day payment is due; empty leaves it out.
    pub due: String,
    /// Who sells.
    pub seller: Party,
    /// Who buys.
    pub buyer: Party,
    /// What was paid already.
    pub paid: Option<measure::Money>,
}

/// A quote or an invoice as it is to be read.
///
/// Shape:  strings, already worded; empty ones leave their place out.
/// Units:  numbers in `currency`, with its decimals; the total with its code.
#[derive(Clone, Debug)]
pub struct QuotePaper {
    /// The shop's name.
    pub shop: String,
    /// `Quote` or `Invoice`.
    pub kind: &'static str,
    /// Its number, on every page.
    pub number: String,
    /// The day it was given, on every page.
    pub given: String,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
    /// Whose copy it is, where it is not the customer's.
    pub copy: String,
    /// Facts beside the drawing: label and value.
    pub facts: Vec<[String; 2]>,
    /// Who sells and who buys: a heading and lines.
    pub parties: Vec<(String, Vec<String>)>,
    /// What the piece is called.
    pub title: String,
    /// The art in words, and sizes.
    pub about: Vec<String>,
    /// The piece from the front; printed at a scale the paper does not name.
    pub elevation: Drawing,
    /// The code of the currency.
    pub currency: String,
    /// Its lines.
    pub lines: Vec<QuoteLine>,
    /// From the lines to the total.
    pub sums: Vec<QuoteSum>,
    /// Tax rate by rate, on an invoice: rate, what it is on, tax.
    pub taxes: Vec<[String; 3]>,
    /// What no rate is on, on an invoice; empty where everything has one.
    pub untaxed: String,
    /// Why; empty where the quote's rules hold no reason.
    pub untaxed_why: String,
    /// What stands under it.
    pub terms: Vec<String>,
    /// The shop's own side: label and value; empty on the customer's copy.
    pub own: Vec<[String; 2]>,
    /// What goes with the piece: a word and a sentence; empty on the customer's copy.
    pub cautions: Vec<[String; 2]>,
}

/// One line.
#[derive(Clone, Debug)]
pub struct QuoteLine {
    /// What the customer reads.
    pub says: String,
    /// Which part, where the words don't say it.
    pub part: String,
    /// Why it is charged; empty on the customer's copy.
    pub why: String,
    /// How much of it.
    pub quantity: String,
    /// The price of one.
    pub unit: String,
    /// The line.
    pub amount: String,
    /// Its part of the discounts; empty for none.
    pub discount: String,
}

/// A quote or an invoice, as PDF.
///
/// Shape:  as many pages as its lines need; every page carries number, date and its own number. Text of
///         10.4 pt, read in the hand.
///
/// # Errors
///
/// No number; a drawing without words, one not readable as SVG; a moment off the calendar.
pub fn quote_pdf(quote: &QuotePaper, paper: Paper) -> Result<Vec<u8>, PaperworkError> {
    pdf(sheet(quote, paper)?)
}

fn sheet(quote: &QuotePaper, paper: Paper) -> Result<Sheet, PaperworkError> {
    if quote.number.trim().is_empty() {
        return Err(PaperworkError::NoQuoteNumber);
    }
    let mut text = Legible::new();
    let drawing = picture("elevation", "elevation.svg", &quote.elevation, &mut text)?;
    let mut data = json!({
        "paper": name_of(paper),
        "shop": text.line(&quote.shop, MIDDLING),
        "kind": quote.kind,
        "number": text.line(&quote.number, SHORT),
        "given": text.line(&quote.given, SHORT),
        "copy": quote.copy,
        "facts": pairs(&quote.facts, &mut text),
        "parties": quote.parties.iter().map(|(who, lines)| json!({
            "who": who,
            "lines": lines.iter().map(|line| text.line(line, MIDDLING)).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
        "title": text.line(&quote.title, MIDDLING),
        "about": quote.about.iter().map(|line| text.line(line, LONG)).collect::<Vec<_>>(),
        "alt": text.line(&quote.elevation.alt, LONG),
        "currency": text.line(&quote.currency, SHORT),
        "lines": quote.lines.iter().map(|one| line(one, &mut text)).collect::<Vec<_>>(),
        "sums": sums::data(&quote.sums, &mut text),
        "taxes": quote.taxes.iter().map(|row| row.each_ref().map(|cell| text.line(cell, MIDDLING))).collect::<Vec<_>>(),
        "untaxed": text.line(&quote.untaxed, LONG),
        "untaxed_why": text.line(&quote.untaxed_why, LONG),
        "terms": quote.terms.iter().map(|line| text.line(line, LONG)).collect::<Vec<_>>(),
        "own": pairs(&quote.own, &mut text),
        "cautions": pairs(&quote.cautions, &mut text),
    });
    data["replaced"] = json!(text.replaced);
    Ok(Sheet {
        template: "quote.typ",
        data,
        drawings: vec![drawing],
        identity: format!("{} {} {}", quote.kind, quote.number, quote.copy),
        made: quote.made,
    })
}

const SHORT: usize = 60;
const MIDDLING: usize = 160;
const LONG: usize = 900;

fn line(line: &QuoteLine, text: &mut Legible) -> Value {
    json!({
        "says": text.line(&line.says, MIDDLING),
        "part": text.line(&line.part, MIDDLING),
        "why": text.line(&line.why, LONG),
        "quantity": text.line(&line.quantity, MIDDLING),
        "unit": text.line(&line.unit, SHORT),
        "amount": text.line(&line.amount, SHORT),
        "discount": text.line(&line.discount, SHORT),
    })
}

fn pairs(rows: &[[String; 2]], text: &mut Legible) -> Vec<[String; 2]> {
    let row = |row: &[String; 2]| row.each_ref().map(|cell| text.line(cell, LONG));
    rows.iter().map(row).collect()
}

const fn name_of(paper: Paper) -> &'static str {
    match paper {
        Paper::A4 => "a4",
        Paper::Letter => "us-letter",
    }
}

/// The drawing with every letter drawable, once it is known to have words.
fn picture(
    drawing: &'static str,
    file: &'static str,
    given: &Drawing,
    text: &mut Legible,
) -> Result<Picture, PaperworkError> {
    if given.alt.trim().is_empty() {
        return Err(PaperworkError::NoWords { drawing });
    }
    let svg = text.drawn(&given.svg);
    Ok(Picture { drawing, file, svg })
}
