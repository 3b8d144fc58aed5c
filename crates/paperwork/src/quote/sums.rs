//! From the lines of a price to what is paid, row by row.

use measure::Money;
use pricing::{Class, LineDocument, Quote, TaxCategory, TotalsDocument};
use serde_json::{Value, json};

use super::InvoiceWords;
use crate::legible::Legible;

/// A row from the lines to the total.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct QuoteSum {
    /// What it is.
    pub says: String,
    /// How much.
    pub amount: String,
    /// Whether it is what the rows above come to.
    pub total: bool,
}

/// A number as a column prints it; the minus as wide as a digit.
pub(super) fn number(money: Money) -> String {
    money.number().replace('-', "−")
}

/// An amount on its own, with its currency.
pub(super) fn amount(money: Money) -> String {
    format!("{} {}", number(money), money.currency)
}

/// The rows of a price, in the order it was reckoned.
///
/// Shape:  where tax is added it stands above the total, where the prices hold it below, with what the
///         price is without.
pub(super) fn rows(quote: &Quote, invoice: Option<&InvoiceWords>) -> Vec<QuoteSum> {
    let totals = &quote.totals;
    let mut rows = before(quote);
    let taxed = taxes(totals);
    let total = QuoteSum {
        says: "Total".to_owned(),
        amount: amount(totals.total.0),
        total: true,
    };
    if totals.tax_inside {
        rows.push(total);
        rows.extend(taxed);
    } else {
        rows.extend(taxed);
        rows.push(total);
    }
    if let Some(invoice) = invoice {
        rows.extend(left(totals.total.0, invoice.paid));
    } else {
        let parts = [
            ("Deposit, with the order", totals.deposit),
            ("Balance, when it is fetched", totals.balance),
        ];
        let parts = parts
            .into_iter()
            .filter_map(|(says, part)| Some(plain(says, number(part?.0))));
        rows.extend(parts);
    }
    rows
}

/// The rows as the template reads them.
pub(super) fn data(rows: &[QuoteSum], text: &mut Legible) -> Vec<Value> {
    let row = |row: &QuoteSum| {
        json!({
            "says": text.line(&row.says, super::MIDDLING),
            "amount": text.line(&row.amount, super::SHORT),
            "total": row.total,
        })
    };
    rows.iter().map(row).collect()
}

/// What no rate of tax is on, and why.
///
/// Shape:  two texts; both empty where every line has its rate, the second where the quote's rules hold no
///         reason. Where nothing at all is taxed the lines are not named one by one.
pub(super) fn untaxed(quote: &Quote) -> [String; 2] {
    let tax = &quote.rules.tax;
    let free = |class: Class| quote.asked.exempt || !tax.rates.iter().any(|rate| rate.is_on(class));
    let class = |line: &LineDocument| {
        let rule = quote.rules.rules.iter().find(|rule| rule.id == line.rule);
        rule.map_or(Class::Goods, |rule| rule.class)
    };
    let lines = quote.lines.iter();
    let lines = lines.filter(|line| line.amount.0.minor != 0 && free(class(line)));
    let mut found: Vec<String> = lines.map(|line| line.says.clone()).collect();
    let totals = &quote.totals;
    found.extend(
        totals
            .rush
            .filter(|_| free(Class::Rush))
            .map(|_| rush_words(quote)),
    );
    found.extend(
        totals
            .minimum
            .filter(|_| free(Class::Minimum))
            .map(|_| minimum_words(quote)),
    );
    found.dedup();
    if found.is_empty() {
        return [String::new(), String::new()];
    }
    let what = if totals.taxes.is_empty() {
        "Not taxed".to_owned()
    } else {
        format!("Not taxed ({})", found.join("; "))
    };
    let why = tax.untaxed.as_ref().and_then(|untaxed| {
        let reason = untaxed
            .reason
            .clone()
            .filter(|reason| !reason.trim().is_empty());
        reason.or_else(|| category_words(untaxed.category).map(str::to_owned))
    });
    [what, why.unwrap_or_default()]
}

/// What a category says of itself; the standard one is no reason.
const fn category_words(category: TaxCategory) -> Option<&'static str> {
    match category {
        TaxCategory::S => None,
        TaxCategory::Z => Some("zero rated"),
        TaxCategory::E => Some("exempt from tax"),
        TaxCategory::O => Some("outside the scope of tax"),
    }
}

/// What the rules frozen in the quote call haste.
pub(super) fn rush_words(quote: &Quote) -> String {
    quote.rules.rush.as_ref().map_or_else(
        || "Wanted sooner than usual".to_owned(),
        |rush| format!("{}, {}", rush.says, rush.share.percent()),
    )
}

/// What they charge at the least.
fn minimum_words(quote: &Quote) -> String {
    let least = quote.rules.minimum_order;
    least.map_or_else(
        || "Raised to the least order".to_owned(),
        |least| format!("Raised to the least order, {}", number(least.0)),
    )
}

/// What stands above tax.
fn before(quote: &Quote) -> Vec<QuoteSum> {
    let totals = &quote.totals;
    let mut rows = vec![plain("Subtotal", number(totals.subtotal.0))];
    if let Some(rush) = totals.rush {
        rows.push(plain(&rush_words(quote), number(rush.0)));
    }
    for discount in &totals.discounts {
        rows.push(plain(&discount.says, less(discount.amount.0)));
    }
    if let Some(minimum) = totals.minimum {
        rows.push(plain(&minimum_words(quote), number(minimum.0)));
    }
    if let Some(relief) = totals.relief {
        rows.push(plain("Tax you are exempt from", less(relief.0)));
    }
    if let Some(rounding) = totals.rounding {
        rows.push(plain("Brought to a round price", number(rounding.0)));
    }
    rows
}

/// What the price is without tax, and tax rate by rate.
fn taxes(totals: &TotalsDocument) -> Vec<QuoteSum> {
    if totals.taxes.is_empty() {
        return Vec::new();
    }
    let inside = totals.tax_inside;
    let net = if inside {
        "In it, without tax"
    } else {
        "Without tax"
    };
    let mut rows = vec![plain(net, number(totals.net.0))];
    rows.extend(totals.taxes.iter().map(|tax| {
        let says = format!(
            "{}{}, {} on {}",
            if inside { "In it, " } else { "" },
            tax.says,
            tax.share.percent(),
            number(tax.base.0)
        );
        plain(&says, number(tax.amount.0))
    }));
    rows
}

/// What was paid of an invoice and what is left.
fn left(total: Money, paid: Option<Money>) -> Vec<QuoteSum> {
    let Some(paid) = paid else {
        return Vec::new();
    };
    let left = total.checked_sub(paid).unwrap_or(total);
    vec![
        plain("Paid already", less(paid)),
        QuoteSum {
            says: "To pay".to_owned(),
            amount: amount(left),
            total: true,
        },
    ]
}

fn less(money: Money) -> String {
    if money.minor == 0 {
        number(money)
    } else {
        format!("−{}", number(money))
    }
}

fn plain(says: &str, amount: String) -> QuoteSum {
    QuoteSum {
        says: says.to_owned(),
        amount,
        total: false,
    }
}
