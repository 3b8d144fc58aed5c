//! Freezing a price.

use std::collections::BTreeMap;

use measure::Money;
use sizing::Sizes;
use trade::settings::{KEYS, Setting};
use trade::{Catalogue, Date, Job, Material};
use working::Worked;

use super::{
    Heading, LineDocument, NamedAmount, PartDocument, QUOTE_VERSION, Quote, ShopDocument,
    TaxDocument, TotalsDocument,
};
use crate::alternatives::parts;
use crate::desk::{Asked, price};
use crate::priced::{Priced, PricedLine, ShopSide, Totals};
use crate::quote::QuoteFault;
use crate::rules::RuleSet;
use crate::scalar::{Amount, Rate};

impl Quote {
    /// Prices a derived piece and freezes the price with everything it was made from.
    ///
    /// Shape:  it stands for as many days as the rule set says, the day it is given counted as the first.
    /// Errors: a price with a fault that refuses is not given to a customer.
    pub fn give(
        heading: &Heading,
        (job, sizes): (&Job, &Sizes),
        catalogue: &Catalogue,
        rules: &RuleSet,
        asked: &Asked,
    ) -> Result<(Self, Priced), QuoteFault> {
        let priced = price(job, sizes, catalogue, rules, asked);
        if priced.is_refused() {
            let sentences = priced.faults.iter().map(sizing::Fault::sentence);
            return Err(QuoteFault::NotPriced(sentences.collect()));
        }
        let quote = Self {
            quote: QUOTE_VERSION,
            number: heading.number.clone(),
            given: heading.given,
            valid_to: valid_to(rules, heading.given),
            terms: rules.terms.clone(),
            asked: asked.into(),
            units: job.units,
            job: job.to_json(),
            materials: materials(job, sizes, catalogue),
            settings: settings(sizes),
            rules: rules.clone(),
            sizes: words(sizes),
            lines: priced.lines.iter().map(line).collect(),
            totals: totals(&priced.totals),
            shop: shop(&priced.shop),
        };
        Ok((quote, priced))
    }
}

fn amount(worked: Worked<Money>) -> Amount {
    Amount(worked.value)
}

/// The last day a quote stands, the day it is given counted as the first.
pub(super) fn valid_to(rules: &RuleSet, given: Date) -> Option<Date> {
    let days = rules.valid_days.and_then(|days| days.checked_sub(1));
    days.and_then(|days| given.after(days))
}

/// The shop's side as it is frozen.
pub(super) fn shop(shop: &ShopSide) -> ShopDocument {
    ShopDocument {
        cost: shop.cost.map(amount),
        margin: shop.margin.map(amount),
        minutes: shop.minutes,
    }
}

/// Parts with their materials and sizes.
pub(super) fn words(sizes: &Sizes) -> Vec<PartDocument> {
    let parts = parts(sizes).into_iter();
    parts.map(|(part, is)| PartDocument { part, is }).collect()
}

/// Every material the piece uses, as the catalogue has it today, and those it is derived with that the bill
/// does not name.
fn materials(job: &Job, sizes: &Sizes, catalogue: &Catalogue) -> Vec<Material> {
    let mut found: BTreeMap<String, Material> = BTreeMap::new();
    let mut named: Vec<&str> = Vec::new();
    named.extend(job.frame.iter().filter_map(|own| own.moulding.as_deref()));
    let fillets = job.frame.iter().filter_map(|own| own.fillet.as_ref());
    named.extend(fillets.filter_map(|own| own.fillet.as_deref()));
    named.extend(job.glazing.iter().filter_map(|own| own.sheet.as_deref()));
    named.extend(job.mat.iter().filter_map(|own| own.board.as_deref()));
    let fillets = job.mat.iter().filter_map(|own| own.fillet.as_ref());
    named.extend(fillets.filter_map(|own| own.fillet.as_deref()));
    named.extend(job.backing.iter().filter_map(|own| own.board.as_deref()));
    named.extend(job.mount.iter().filter_map(|own| own.board.as_deref()));
    named.extend(job.sink.iter().filter_map(|own| own.board.as_deref()));
    named.extend(job.walls.iter().filter_map(|own| own.board.as_deref()));
    named.extend(job.spacer.iter().filter_map(|own| own.strip.as_deref()));
    named.extend(job.material.iter().filter_map(|own| own.like.as_deref()));
    for code in named {
        if let Ok(material) = catalogue.find(code) {
            found.insert(code.to_owned(), material.as_ref().clone());
        }
    }
    for line in &sizes.bill {
        if let Some(own) = &line.material {
            let material = || own.as_ref().clone();
            found.entry(own.code.clone()).or_insert_with(material);
        }
    }
    found.into_values().collect()
}

/// Every setting, as text that reads back exactly.
fn settings(sizes: &Sizes) -> BTreeMap<String, String> {
    let unit = sizes.unit();
    let text = |setting: Setting| match setting {
        Setting::Length(length) => length.exact(unit),
        other => other.to_string(),
    };
    KEYS.iter()
        .map(|key| (key.id().to_owned(), text(sizes.settings.get(*key))))
        .collect()
}

/// A line as it is printed.
pub(super) fn line(line: &PricedLine) -> LineDocument {
    LineDocument {
        rule: line.rule.id.clone(),
        part: line.name.clone(),
        says: line.text(),
        why: line.rule.why.clone(),
        quantity: line.quantity.to_string(),
        unit: line.unit.map(amount),
        amount: amount(line.amount),
        discount: Amount(line.discount),
    }
}

/// Totals as they are printed.
pub(super) fn totals(totals: &Totals) -> TotalsDocument {
    let discounts = totals.discounts.iter().map(|discount| NamedAmount {
        says: discount.says.clone(),
        amount: amount(discount.amount),
    });
    let taxes = totals.taxes.iter().map(|tax| TaxDocument {
        says: tax.says.clone(),
        share: Rate(tax.share),
        base: Amount(tax.base),
        amount: Amount(tax.amount),
    });
    TotalsDocument {
        subtotal: amount(totals.subtotal),
        rush: totals.rush.map(amount),
        discounts: discounts.collect(),
        minimum: totals.minimum.map(amount),
        rounding: totals.rounding.map(Amount),
        net: amount(totals.net),
        taxes: taxes.collect(),
        tax_inside: totals.tax_inside,
        relief: totals.relief.map(Amount),
        total: amount(totals.total),
        deposit: totals.deposit.map(amount),
        balance: totals.balance.map(amount),
    }
}
