//! A quote as a page, with its own numbers.

use maud::{Markup, html};
use pricing::Quote;

use super::super::super::shell::{Page, Place};
use super::super::less;
use crate::desk::Desk;

/// The quote, what is said of it above, and what follows below.
pub(super) fn page(desk: &Desk, quote: &Quote, above: &Markup, below: &Markup) -> Markup {
    let title = format!("Quote {}", quote.number);
    let body = html! {
        h1 { (title) }
        p.lead {
            "Given on " (quote.given)
            @if let Some(last) = quote.valid_to { ", stands to " (last) }
            ". Total " b { (quote.total()) } "."
        }
        (above)
        (amounts(quote))
        @if !quote.terms.is_empty() {
            section aria-labelledby="terms" {
                h2 #terms { "Terms" }
                ul { @for term in &quote.terms { li { (term) } } }
            }
        }
        (take_away(quote))
        (below)
    };
    Page {
        shop: &desk.options.shop,
        title: &title,
        place: Place::Elsewhere,
        kind: "care",
        customer: false,
        body,
    }
    .whole()
}

fn amounts(quote: &Quote) -> Markup {
    let totals = &quote.totals;
    let rush = quote.rules.rush.as_ref();
    html! {
        section.price aria-labelledby="price" {
            h2 #price { "What it costs" }
            dl.amounts {
                @for line in &quote.lines { dt { (line.says) } dd { (line.amount.0) } }
                dt.sum { "Together" } dd.sum { (totals.subtotal.0) }
                @if let Some(amount) = totals.rush {
                    dt { (rush.map_or("Haste", |rush| rush.says.as_str())) } dd { (amount.0) }
                }
                @for discount in &totals.discounts { dt { (discount.says) } dd { (less(discount.amount.0)) } }
                @if let Some(minimum) = totals.minimum { dt { "Up to the least order" } dd { (minimum.0) } }
                @if let Some(rounding) = totals.rounding { dt { "Rounding" } dd { (rounding.0) } }
                @for tax in &totals.taxes { dt { (tax.says) ", " (tax.share.percent()) } dd { (tax.amount.0) } }
                @if let Some(relief) = totals.relief { dt { "Tax not charged" } dd { (relief.0) } }
                dt.sum { "Total" @if totals.tax_inside { ", tax inside" } } dd.sum { b { (totals.total.0) } }
                @if let Some(deposit) = totals.deposit { dt { "Paid when ordered" } dd { (deposit.0) } }
                @if let Some(balance) = totals.balance { dt { "Left to pay" } dd { (balance.0) } }
            }
        }
    }
}

/// Its papers and its file; the buttons send the quote itself.
fn take_away(quote: &Quote) -> Markup {
    let papers = [
        ("copy=customer&paper=a4", "Customer's copy on A4"),
        ("copy=customer&paper=letter", "Customer's copy on Letter"),
        ("copy=shop&paper=a4", "Shop's copy on A4"),
        ("copy=shop&paper=letter", "Shop's copy on Letter"),
    ];
    html! {
        section.papers aria-labelledby="papers" {
            h2 #papers { "Take away" }
            form method="post" action="/quote/quote.json" {
                input type="hidden" name="quote" value=(quote.to_json());
                p.buttons { button.do type="submit" { "Quote file, JSON" } }
                p.buttons { @for (asked, word) in papers {
                    button type="submit" formaction={ "/quote/quote.pdf?" (asked) } { (word) }
                } }
            }
            p.beside { "Nothing is kept here: there is no book. Keep the quote file; opened later, it says the same to the cent. \
                It holds the shop's costs: give customers the PDF." }
        }
    }
}
