//! The price as the customer reads it: no cost, no margin, no minutes, no working.

use maud::{Markup, html};
use pricing::{Priced, RuleSet};

use super::less;

/// Lines and totals.
pub(super) fn side(priced: &Priced, rules: &RuleSet) -> Markup {
    let totals = &priced.totals;
    html! {
        section.price aria-labelledby="price" {
            h2 #price { "What it costs" }
            dl.amounts {
                @for line in &priced.lines { dt { (line.text()) } dd { (line.amount.value) } }
                @if let Some(rush) = totals.rush {
                    dt { (rules.rush.as_ref().map_or("Haste", |rush| rush.says.as_str())) } dd { (rush.value) }
                }
                @for discount in &totals.discounts { dt { (discount.says) } dd { (less(discount.amount.value)) } }
                @if let Some(minimum) = totals.minimum { dt { "Up to the least order" } dd { (minimum.value) } }
                @if let Some(rounding) = totals.rounding { dt { "Rounding" } dd { (rounding) } }
                @for tax in &totals.taxes { dt { (tax.says) ", " (tax.share.percent()) } dd { (tax.amount) } }
                dt.sum { "Total" @if totals.tax_inside { ", tax inside" } } dd.sum { b { (totals.total.value) } }
                @if let Some(deposit) = totals.deposit { dt { "Paid when ordered" } dd { (deposit.value) } }
                @if let Some(balance) = totals.balance { dt { "Left to pay" } dd { (balance.value) } }
            }
        }
    }
}
