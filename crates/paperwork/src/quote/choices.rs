//! Up to six quotes of one piece side by side.

use pricing::{LineDocument, Quote};
use serde_json::{Value, json};

use super::of_quote::{in_words, outside, own, title};
use super::sums::{amount, number, rush_words};
use super::{Copy, LONG, MIDDLING, QuoteHead, QuotePiece, SHORT, name_of, picture};
use crate::error::PaperworkError;
use crate::legible::Legible;
use crate::ticket::{Drawing, Paper};
use crate::typeset::{Sheet, Stamp, pdf};

/// The most choices on one sheet.
pub const MOST_CHOICES: usize = pricing::MOST_ALTERNATIVES;

/// Quotes side by side, as they are to be read.
#[derive(Clone, Debug)]
pub struct Choices {
    /// The shop's name.
    pub shop: String,
    /// What the piece is called.
    pub title: String,
    /// When the file was made; the only time it knows.
    pub made: Stamp,
    /// Whose copy it is, where it is not the customer's.
    pub copy: String,
    /// For whom, where the job says it.
    pub customer: String,
    /// Two to six, the first being what the others are compared with.
    pub choices: Vec<Choice>,
    /// What stands under all of them.
    pub terms: Vec<String>,
}

/// One of several quotes.
#[derive(Clone, Debug)]
pub struct Choice {
    /// The quote's number.
    pub number: String,
    /// The day it was given.
    pub given: String,
    /// The last day it stands.
    pub valid_to: String,
    /// The piece from the front.
    pub elevation: Drawing,
    /// The scale it was drawn at, sheet to piece, from which all are brought to one; not printed.
    pub scale: String,
    /// The whole from edge to edge.
    pub outside: String,
    /// What is paid, with its currency.
    pub total: String,
    /// How much more or less than the first, with its sign.
    pub difference: String,
    /// What differs from the first; all materials of the first.
    pub differs: Vec<String>,
    /// Deposit, where one is asked.
    pub deposit: String,
    /// The shop's own side; empty on the customer's copy.
    pub own: Vec<[String; 2]>,
}

/// The sheet of several quotes.
///
/// # Errors
///
/// Fewer than two or more than six, two currencies.
pub fn choices_of(pieces: Vec<QuotePiece>, head: QuoteHead) -> Result<Choices, PaperworkError> {
    let given = pieces.len();
    if !(2..=MOST_CHOICES).contains(&given) {
        return Err(PaperworkError::Choices {
            given,
            most: MOST_CHOICES,
        });
    }
    let shop = head.copy == Copy::Shop;
    let first = pieces[0].quote.clone();
    let job = &pieces[0].job;
    let mut terms: Vec<String> = Vec::new();
    for term in pieces.iter().flat_map(|piece| &piece.quote.terms) {
        if !terms.contains(term) {
            terms.push(term.clone());
        }
    }
    Ok(Choices {
        shop: head.shop,
        title: title(job),
        made: head.made,
        copy: if shop { "Shop’s copy" } else { "" }.to_owned(),
        customer: job.identity.customer.clone().unwrap_or_default(),
        terms,
        choices: pieces
            .into_iter()
            .enumerate()
            .map(|(place, piece)| choice(&first, place, &piece, shop))
            .collect::<Result<_, _>>()?,
    })
}

/// The choices, as PDF.
///
/// Shape:  two or three in a row, all at one scale and on one wall line, the price and its difference under
///         each.
///
/// # Errors
///
/// A choice without a number; a drawing without words, one not readable as SVG; a moment off the calendar.
pub fn choices_pdf(choices: &Choices, paper: Paper) -> Result<Vec<u8>, PaperworkError> {
    pdf(sheet(choices, paper)?)
}

static FILES: [&str; MOST_CHOICES] = [
    "choice-1.svg",
    "choice-2.svg",
    "choice-3.svg",
    "choice-4.svg",
    "choice-5.svg",
    "choice-6.svg",
];

fn sheet(choices: &Choices, paper: Paper) -> Result<Sheet, PaperworkError> {
    let unnumbered = |one: &Choice| one.number.trim().is_empty();
    if choices.choices.iter().any(unnumbered) {
        return Err(PaperworkError::NoQuoteNumber);
    }
    let mut text = Legible::new();
    let drawings = choices.choices.iter().zip(FILES);
    let drawings: Result<Vec<_>, _> = drawings
        .map(|(one, file)| picture("elevation", file, &one.elevation, &mut text))
        .collect();
    let listed = choices.choices.iter().zip(FILES);
    let listed: Vec<Value> = listed
        .map(|(one, file)| data(one, file, &mut text))
        .collect();
    let numbers: Vec<&str> = choices.choices.iter().map(|one| &*one.number).collect();
    let mut data = json!({
        "paper": name_of(paper),
        "shop": text.line(&choices.shop, MIDDLING),
        "title": text.line(&choices.title, MIDDLING),
        "copy": choices.copy,
        "customer": text.line(&choices.customer, MIDDLING),
        "choices": listed,
        "terms": choices.terms.iter().map(|line| text.line(line, LONG)).collect::<Vec<_>>(),
    });
    data["replaced"] = json!(text.replaced);
    Ok(Sheet {
        template: "choices.typ",
        data,
        drawings: drawings?,
        identity: format!("choices {} {}", numbers.join(" "), choices.copy),
        made: choices.made,
    })
}

fn data(one: &Choice, file: &str, text: &mut Legible) -> Value {
    json!({
        "file": file,
        "alt": text.line(&one.elevation.alt, LONG),
        "scale": one.scale,
        "number": text.line(&one.number, SHORT),
        "given": text.line(&one.given, SHORT),
        "valid_to": text.line(&one.valid_to, SHORT),
        "outside": text.line(&one.outside, SHORT),
        "total": text.line(&one.total, SHORT),
        "difference": text.line(&one.difference, SHORT),
        "differs": one.differs.iter().map(|line| text.line(line, MIDDLING)).collect::<Vec<_>>(),
        "deposit": text.line(&one.deposit, SHORT),
        "own": super::pairs(&one.own, text),
    })
}

fn choice(
    first: &Quote,
    place: usize,
    piece: &QuotePiece,
    shop: bool,
) -> Result<Choice, PaperworkError> {
    let quote = &piece.quote;
    let difference = quote.total().checked_sub(first.total());
    let difference = difference.map_err(|_| PaperworkError::OtherCurrency {
        number: quote.number.clone(),
        currency: quote.total().currency,
        first: first.total().currency,
    })?;
    Ok(Choice {
        number: quote.number.clone(),
        given: quote.given.to_string(),
        valid_to: quote
            .valid_to
            .map(|day| day.to_string())
            .unwrap_or_default(),
        scale: piece.elevation.scale.clone(),
        outside: outside(&piece.sizes),
        total: amount(quote.total()),
        difference: match difference.minor {
            _ if place == 0 => String::new(),
            0 => "the same price".to_owned(),
            1.. => format!("+{}", number(difference)),
            _ => number(difference),
        },
        differs: if place == 0 {
            made_of(quote)
        } else {
            differs(first, quote)
        },
        deposit: quote
            .totals
            .deposit
            .map(|deposit| number(deposit.0))
            .unwrap_or_default(),
        own: if shop { own(quote) } else { Vec::new() },
        elevation: in_words(&piece.elevation),
    })
}

/// What the first is made of: what is charged first for each part.
fn made_of(quote: &Quote) -> Vec<String> {
    let chief = quote.lines.iter().filter(|line| is_chief(quote, line));
    let mut found: Vec<String> = chief.map(|line| line.says.clone()).collect();
    found.dedup();
    found
}

/// What one has otherwise than the first.
///
/// Shape:  what it has and the first has not; what it lacks and has nothing in place of. What follows from
///         another material of the same part (its cutting and joining) is not said again. Where words are all
///         alike, the parts that are of other sizes. Last, haste, discounts and exemption.
fn differs(first: &Quote, this: &Quote) -> Vec<String> {
    let new = own_lines(this, first);
    let gone = own_lines(first, this);
    let gone = gone
        .iter()
        .filter(|gone| !new.iter().any(|new| new.part == gone.part));
    let mut found: Vec<String> = new.iter().map(|line| line.says.clone()).collect();
    found.extend(gone.map(|line| format!("Without {}", line.says)));
    if found.is_empty() {
        let other = this.sizes.iter().filter(|part| !first.sizes.contains(part));
        found.extend(other.map(|part| format!("{}: {}", part.part, part.is)));
    }
    let (new, old) = (asked(this), asked(first));
    found.extend(new.iter().filter(|one| !old.contains(one)).cloned());
    let gone = old.iter().filter(|one| !new.contains(one));
    found.extend(gone.map(|one| format!("Without: {one}")));
    found.dedup();
    found
}

/// What was asked beside the piece, as far as it changes the price.
fn asked(quote: &Quote) -> Vec<String> {
    let totals = &quote.totals;
    let discounts = totals.discounts.iter().map(|one| one.says.clone());
    let rush = totals.rush.map(|_| rush_words(quote));
    let exempt = quote.asked.exempt.then(|| "Exempt from tax".to_owned());
    rush.into_iter().chain(discounts).chain(exempt).collect()
}

/// Lines one quote has and the other has not, and of each part that is otherwise altogether only the chief one.
fn own_lines<'a>(this: &'a Quote, other: &Quote) -> Vec<&'a LineDocument> {
    let lacks = |line: &LineDocument| !other.lines.iter().any(|own| own.says == line.says);
    let chief_differs = |part: &str| {
        let mut lines = this.lines.iter();
        lines.find(|line| line.part == part).is_some_and(lacks)
    };
    let lines = this.lines.iter();
    lines
        .filter(|line| lacks(line) && (is_chief(this, line) || !chief_differs(&line.part)))
        .collect()
}

/// Whether it is the first line of its part.
fn is_chief(quote: &Quote, line: &LineDocument) -> bool {
    let first = quote.lines.iter().find(|other| other.part == line.part);
    first.is_some_and(|first| std::ptr::eq(first, line))
}
