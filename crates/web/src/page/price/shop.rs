//! The price as the shop reads it.

use maud::{Markup, html};
use pricing::Priced;
use sizing::Fault;
use working::Worked;

use super::super::why::Why;
use super::{faults, less, row};
use measure::Money;

/// Faults, lines, totals, then cost, margin and minutes.
pub(super) fn side(priced: &Priced, why: Why<'_>) -> Markup {
    html! {
        (faults(&priced.faults))
        section.part {
            h3 { "Lines" }
            @for line in &priced.lines {
                @let unit = line.unit.map(|unit| format!(" at {}", unit.value)).unwrap_or_default();
                @let beside = format!("{}: {}{unit}; {}", line.name, line.quantity, line.rule.why);
                (row(&line.text(), &line.amount.value.to_string(), &beside, line.amount.line, why))
            }
        }
        section.part { h3 { "In all" } (totals(priced, why)) }
        section.part {
            h3 { "The shop's side" " " span.beside { "not shown to the customer" } }
            (shops(priced, why))
        }
    }
}

fn some(label: &str, amount: Option<Worked<Money>>, why: Why<'_>) -> Markup {
    html! {
        @if let Some(amount) = amount { (row(label, &amount.value.to_string(), "", amount.line, why)) }
    }
}

fn totals(priced: &Priced, why: Why<'_>) -> Markup {
    let totals = &priced.totals;
    let total = if totals.tax_inside {
        "Total, tax inside"
    } else {
        "Total"
    };
    html! {
        (some("Lines together", Some(totals.subtotal), why))
        (some("Haste", totals.rush, why))
        @for discount in &totals.discounts {
            (row(&discount.says, &less(discount.amount.value), &discount.share.percent(), discount.amount.line, why))
        }
        (some("Up to the least order", totals.minimum, why))
        @if let Some(rounding) = totals.rounding { p.beside { "The shown price adds " (rounding) "." } }
        (some("Before tax", Some(totals.net), why))
        @for tax in &totals.taxes {
            @let beside = format!("{} on {}", tax.share.percent(), tax.base);
            (row(&tax.says, &tax.amount.to_string(), &beside, tax.line, why))
        }
        @if let Some(relief) = totals.relief { p.beside { "Tax spared: " (relief) "." } }
        div.sum { (some(total, Some(totals.total), why)) }
        (some("Deposit", totals.deposit, why))
        (some("Balance", totals.balance, why))
    }
}

fn shops(priced: &Priced, why: Why<'_>) -> Markup {
    let shop = &priced.shop;
    let unknown: Vec<&Fault> = shop
        .parts
        .iter()
        .filter_map(|part| part.unknown.as_ref())
        .collect();
    let share = priced.margin_thousandths().map(share).unwrap_or_default();
    html! {
        @for part in &shop.parts {
            @if let Some(cost) = part.cost {
                (row(&part.name, &cost.value.to_string(), part.material.as_deref().unwrap_or_default(), cost.line, why))
            }
        }
        (some("Labour", shop.labour, why))
        @if !unknown.is_empty() {
            p { "The margin is not known:" }
            ul { @for fault in unknown { li { (fault.sentence()) } } }
        }
        (some("Cost", shop.cost, why))
        @if let Some(margin) = shop.margin {
            (row("Margin", &margin.value.to_string(), &share, margin.line, why))
        }
        p { "At the bench: " b { (shop.minutes) " minutes" } "." }
    }
}

/// Thousandths as a percentage: `41.2 %`.
fn share(thousandths: i64) -> String {
    let sign = if thousandths < 0 { "−" } else { "" };
    let whole = thousandths.unsigned_abs();
    format!(
        "{sign}{}.{} % of the price before tax",
        whole / 10,
        whole % 10
    ) // geometry: tenths of a per cent
}
