//! From a frozen quote to the words of its paper.

use measure::Money;
use pricing::invoice::Party;
use pricing::{LineDocument, Quote};
use sizing::Sizes;
use trade::Job;

use super::sums::{amount, number, rows, untaxed};
use super::{Copy, InvoiceWords, QuoteLine, QuotePaper};
use crate::about;
use crate::error::PaperworkError;
use crate::ticket::Drawing;
use crate::typeset::Stamp;

/// What a paper must be told that the quote does not say.
#[derive(Clone, Debug)]
pub struct QuoteHead {
    /// The shop's name.
    pub shop: String,
    /// When the file is made.
    pub made: Stamp,
    /// Whose copy it is.
    pub copy: Copy,
    /// What makes it an invoice.
    pub invoice: Option<InvoiceWords>,
}

/// A quote with its piece, derived from what the quote holds.
#[derive(Clone, Debug)]
pub struct QuotePiece {
    /// The quote.
    pub quote: Quote,
    /// Its job.
    pub job: Job,
    /// Its sizes.
    pub sizes: Sizes,
    /// Its elevation.
    pub elevation: drawing::Drawing,
}

/// The paper of a quote.
///
/// Shape:  every figure is the quote's own; none is reckoned again, but what is left of an invoice that was
///         partly paid.
///
/// # Errors
///
/// A payment in another currency, or larger than the total.
pub fn quote_of(piece: QuotePiece, head: QuoteHead) -> Result<QuotePaper, PaperworkError> {
    let QuotePiece {
        quote,
        job,
        sizes,
        elevation,
    } = piece;
    let invoice = head.invoice.as_ref();
    if let Some(paid) = invoice.and_then(|invoice| invoice.paid) {
        payable(paid, quote.total())?;
    }
    let shop = head.copy == Copy::Shop;
    let about = art_lines(&job);
    let [untaxed, untaxed_why] = invoice.map(|_| untaxed(&quote)).unwrap_or_default();
    Ok(QuotePaper {
        facts: facts(&quote, &job, invoice),
        parties: invoice.map(parties).unwrap_or_default(),
        title: title(&job),
        about: about.into_iter().chain(size_lines(&job, &sizes)).collect(),
        elevation: in_words(&elevation),
        currency: quote.total().currency.to_string(),
        lines: quote.lines.iter().map(|one| line(one, shop)).collect(),
        sums: rows(&quote, invoice),
        taxes: invoice.map(|_| breakdown(&quote)).unwrap_or_default(),
        untaxed,
        untaxed_why,
        terms: quote.terms.clone(),
        own: if shop { own(&quote) } else { Vec::new() },
        cautions: if shop {
            cautions(&job, &sizes)
        } else {
            Vec::new()
        },
        shop: head.shop,
        kind: if invoice.is_some() {
            "Invoice"
        } else {
            "Quote"
        },
        number: invoice.map_or(quote.number, |invoice| invoice.number.clone()),
        given: invoice.map_or_else(|| quote.given.to_string(), |invoice| invoice.given.clone()),
        made: head.made,
        copy: if shop { "Shop’s copy" } else { "" }.to_owned(),
    })
}

/// The drawing with the words that stand for it.
///
/// Shape:  without its scale, in the caption and in the words: it was drawn for a wider sheet than it is
///         printed on here, so the scale it names is not the one on this paper.
pub(super) fn in_words(drawn: &drawing::Drawing) -> Drawing {
    let scale = format!("{} · ", drawn.scale);
    let [headed, bare] = [format!(">Elevation · {scale}"), format!(">{scale}")];
    let svg = drawn.svg.replacen(&headed, ">Elevation · ", 1);
    let said = format!("\nScale: {}\n", drawn.scale);
    let alt = drawing::twin_text(drawn).replacen(&said, "\n", 1);
    Drawing {
        alt: alt.trim_end().replace('\n', "; "),
        svg: svg.replacen(&bare, ">", 1),
    }
}

/// What the piece is called.
pub(super) fn title(job: &Job) -> String {
    let named = job.art.iter().find_map(|art| art.title.clone());
    named.unwrap_or_else(|| "Your piece, framed".to_owned())
}

/// The whole from edge to edge.
pub(super) fn outside(sizes: &Sizes) -> String {
    let size = sizes.outside.size();
    about::size_words(size.width, size.height, sizes)
}

/// The shop's own side of a quote.
pub(super) fn own(quote: &Quote) -> Vec<[String; 2]> {
    let known = |money: Option<pricing::Amount>| {
        money.map_or_else(
            || "not known: some cost is missing".to_owned(),
            |money| amount(money.0),
        )
    };
    let minutes = quote.shop.minutes;
    [
        ("Cost", known(quote.shop.cost)),
        ("Margin", known(quote.shop.margin)),
        ("Bench", format!("{minutes} min")),
    ]
    .map(|(label, value)| [label.to_owned(), value])
    .to_vec()
}

fn payable(paid: Money, total: Money) -> Result<(), PaperworkError> {
    match total.checked_sub(paid) {
        Ok(left) if left.minor >= 0 && paid.minor >= 0 => Ok(()),
        _ => Err(PaperworkError::Paid { paid, total }),
    }
}

fn facts(quote: &Quote, job: &Job, invoice: Option<&InvoiceWords>) -> Vec<[String; 2]> {
    let identity = &job.identity;
    let text = |value: Option<&String>| value.cloned().unwrap_or_default();
    let mut facts = match invoice {
        None => vec![
            ("For", text(identity.customer.as_ref())),
            ("Given", quote.given.to_string()),
            (
                "Stands to",
                quote
                    .valid_to
                    .map_or_else(|| "withdrawn".to_owned(), |day| day.to_string()),
            ),
        ],
        Some(invoice) => vec![
            ("Given", invoice.given.clone()),
            ("Due", invoice.due.clone()),
            ("Quote", format!("{} of {}", quote.number, quote.given)),
        ],
    };
    facts.push(("Order", text(identity.order.as_ref())));
    facts.retain(|(_, value)| !value.is_empty());
    facts
        .into_iter()
        .map(|(label, value)| [label.to_owned(), value])
        .collect()
}

fn parties(invoice: &InvoiceWords) -> Vec<(String, Vec<String>)> {
    [("From", &invoice.seller), ("To", &invoice.buyer)]
        .map(|(who, party)| (who.to_owned(), party_lines(party)))
        .to_vec()
}

fn party_lines(party: &Party) -> Vec<String> {
    let place = [party.post_code.as_deref(), party.town.as_deref()];
    let place: Vec<&str> = place.into_iter().flatten().collect();
    let numbered = |says: &str, number: &Option<String>| {
        number.as_ref().map(|number| format!("{says} {number}"))
    };
    [
        Some(party.name.clone()),
        party.street.clone(),
        Some(place.join(" ")),
        Some(party.country.clone()),
        numbered("VAT number", &party.vat_number),
        numbered("Registered", &party.register_number),
    ]
    .into_iter()
    .flatten()
    .filter(|line| !line.trim().is_empty())
    .collect()
}

/// The art in words; its title stands above where it is the only one.
fn art_lines(job: &Job) -> Vec<String> {
    let mut lines = about::art_lines(job);
    if let ([only], Some(title)) = (lines.as_mut_slice(), &job.art[0].title) {
        let rest = only.strip_prefix(title.as_str());
        if let Some(rest) = rest.and_then(|rest| rest.strip_prefix(", ")) {
            *only = about::capital(rest);
        }
    }
    lines
}

fn size_lines(job: &Job, sizes: &Sizes) -> Vec<String> {
    let of_art = job.art.iter().map(|art| {
        let (width, height) = (*art.width, art.height.map_or(*art.width, |height| *height));
        format!("Art {}", about::size_words(width, height, sizes))
    });
    let framed = format!("Framed {}", outside(sizes));
    of_art.chain([framed]).collect()
}

fn line(line: &LineDocument, shop: bool) -> QuoteLine {
    let own = |text: &String| if shop { text.clone() } else { String::new() };
    QuoteLine {
        says: line.says.clone(),
        part: if line.says.starts_with(&line.part) {
            String::new()
        } else {
            own(&line.part)
        },
        why: own(&line.why),
        quantity: line.quantity.clone(),
        unit: line.unit.map(|unit| number(unit.0)).unwrap_or_default(),
        amount: number(line.amount.0),
        discount: if line.discount.0.minor == 0 {
            String::new()
        } else {
            format!("−{}", number(line.discount.0))
        },
    }
}

fn breakdown(quote: &Quote) -> Vec<[String; 3]> {
    let row = |tax: &pricing::TaxDocument| {
        [
            format!("{}, {}", tax.says, tax.share.percent()),
            number(tax.base.0),
            number(tax.amount.0),
        ]
    };
    quote.totals.taxes.iter().map(row).collect()
}

fn cautions(job: &Job, sizes: &Sizes) -> Vec<[String; 2]> {
    let found = conservation::caution::of(job, sizes).into_iter();
    found
        .map(|one| [one.title().to_owned(), one.text().to_owned()])
        .collect()
}
