//! A priced piece as a structured invoice: the semantic model of EN 16931, written as UBL 2.1.
//!
//! The names `BT-…`, `BG-…` and `BR-…` are those of EN 16931-1:2017, *Electronic invoicing: semantic data model
//! of the core elements of an electronic invoice* (from memory; the totals are checked by its rules in this
//! room's tests).

mod sums;
mod ubl;

use measure::Money;
use trade::Date;
use working::Decimal;

use crate::priced::Priced;
use crate::rules::{RuleSet, TaxCategory};

pub use sums::{Law, Sums};

/// Somebody who sells or buys.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Party {
    /// Name (BT-27, BT-44).
    pub name: String,
    /// Street and number (BT-35, BT-50).
    pub street: Option<String>,
    /// Town (BT-37, BT-52).
    pub town: Option<String>,
    /// Post code (BT-38, BT-53).
    pub post_code: Option<String>,
    /// Country, by its two letters of ISO 3166-1 (BT-40, BT-55).
    pub country: String,
    /// VAT number, with its country's letters (BT-31, BT-48).
    pub vat_number: Option<String>,
    /// Number in a register of companies (BT-30, BT-47).
    pub register_number: Option<String>,
}

/// What an invoice is headed with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InvoiceHeading {
    /// Its number (BT-1).
    pub number: String,
    /// The day it is given (BT-2).
    pub given: Date,
    /// The day payment is due (BT-9).
    pub due: Date,
    /// What is said on it (BT-22).
    pub note: Option<String>,
    /// What the buyer calls the order (BT-10).
    pub buyer_reference: Option<String>,
    /// Who sells.
    pub seller: Party,
    /// Who buys.
    pub buyer: Party,
    /// What was paid already (BT-113): the deposit.
    pub paid: Money,
}

/// An invoice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Invoice {
    /// What it is headed with.
    pub heading: InvoiceHeading,
    /// Its lines (BG-25).
    pub lines: Vec<InvoiceLine>,
    /// Allowances and charges on the whole (BG-20, BG-21).
    pub adjustments: Vec<Adjustment>,
    /// Tax, category by category (BG-23).
    pub breakdown: Vec<Breakdown>,
    /// Its totals (BG-22).
    pub sums: Sums,
}

/// A line (BG-25).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InvoiceLine {
    /// What it is (BT-153).
    pub name: String,
    /// Which part of the piece (BT-154).
    pub description: String,
    /// How much (BT-129).
    pub quantity: String,
    /// In what, by UN/ECE Recommendation 20 (BT-130).
    pub unit_code: &'static str,
    /// The price of one, without tax (BT-146).
    pub price: Money,
    /// The line, without tax (BT-131).
    pub net: Money,
    /// How it is taxed (BT-151, BT-152).
    pub taxed: TaxedAs,
}

/// How something is taxed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TaxedAs {
    /// The category.
    pub category: TaxCategory,
    /// The rate.
    pub share: Decimal,
    /// Why there is none (BT-120).
    pub reason: Option<String>,
}

/// An allowance or a charge on the whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Adjustment {
    /// Whether it is a charge (BG-21), not an allowance (BG-20).
    pub is_charge: bool,
    /// The amount, without tax, above zero (BT-92, BT-99).
    pub amount: Money,
    /// Why (BT-97, BT-104).
    pub reason: String,
    /// How it is taxed (BT-95, BT-102).
    pub taxed: TaxedAs,
}

/// Tax of one category and rate (BG-23).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Breakdown {
    /// How it is taxed.
    pub taxed: TaxedAs,
    /// What is taxed (BT-116).
    pub taxable: Money,
    /// The tax (BT-117).
    pub tax: Money,
}

/// Why a price can't be put on a structured invoice.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum InvoiceFault {
    /// A price with faults.
    #[error("the price has faults; mend them before it is invoiced")]
    NotPriced,
    /// Two rates on one line.
    #[error(
        "{first} and {second} are both on one line; EN 16931 knows one rate for a line, so put each on classes of its own"
    )]
    Stacked {
        /// One rate.
        first: String,
        /// The other.
        second: String,
    },
    /// Lines without a rate, and no word why.
    #[error(
        "some lines are not taxed and the rule set does not say why; add a [tax.untaxed] table with `category` and `reason`"
    )]
    Untaxed,
    /// A seller without a VAT number, where tax is charged.
    #[error("the seller has no VAT number (BT-31), which a taxed invoice needs")]
    NoVatNumber,
    /// Something that must be said.
    #[error("the invoice does not say {what} ({term}); fill it in")]
    Missing {
        /// What.
        what: &'static str,
        /// The standard's name for it.
        term: &'static str,
    },
    /// What was paid is in another currency or more than can be held.
    #[error("what was paid is {paid}, the invoice is in {currency}; state it in {currency}")]
    Paid {
        /// What was paid.
        paid: Money,
        /// The currency of the invoice.
        currency: measure::Currency,
    },
    /// Larger than can be held.
    #[error("an amount is larger than can be held")]
    TooLarge,
}

/// A priced piece as an invoice.
///
/// Shape:  lines without tax, also where the shop's prices hold it; discounts, haste, the least and what the
///         shown price adds stand as allowances and charges on the whole. Tax is reckoned once for each category
///         on its sum (BR-CO-17); where the price reckoned it otherwise, BT-114 holds the difference, so that
///         what is due is what the price says.
/// Errors: a faulty price, stacked rates, untaxed lines without a reason, what must be said and is not.
pub fn invoice(
    priced: &Priced,
    rules: &RuleSet,
    heading: InvoiceHeading,
) -> Result<Invoice, InvoiceFault> {
    if priced.is_refused() {
        return Err(InvoiceFault::NotPriced);
    }
    if heading.paid.currency != priced.currency {
        return Err(InvoiceFault::Paid {
            paid: heading.paid,
            currency: priced.currency,
        });
    }
    said(&heading)?;
    let sorted = sums::sorted(priced, rules)?;
    let taxed = |part: &Breakdown| part.taxed.category == TaxCategory::S;
    if heading.seller.vat_number.is_none() && sorted.breakdown.iter().any(taxed) {
        return Err(InvoiceFault::NoVatNumber);
    }
    let total = priced.totals.total.value;
    let sums = Sums::of(&sorted, total, heading.paid).ok_or(InvoiceFault::TooLarge)?;
    Ok(Invoice {
        heading,
        lines: sorted.lines,
        adjustments: sorted.adjustments,
        breakdown: sorted.breakdown,
        sums,
    })
}

fn said(heading: &InvoiceHeading) -> Result<(), InvoiceFault> {
    let needed = [
        (&heading.number, "its number", "BT-1"),
        (&heading.seller.name, "who sells", "BT-27"),
        (&heading.seller.country, "the seller's country", "BT-40"),
        (&heading.buyer.name, "who buys", "BT-44"),
        (&heading.buyer.country, "the buyer's country", "BT-55"),
    ];
    for (text, what, term) in needed {
        if text.trim().is_empty() {
            return Err(InvoiceFault::Missing { what, term });
        }
    }
    Ok(())
}

impl Invoice {
    /// The invoice as UBL 2.1 XML.
    pub fn to_ubl(&self) -> String {
        ubl::written(self)
    }

    /// The standard's rules of calculation, each with both of its sides.
    pub fn laws(&self) -> Vec<Law> {
        sums::laws(self)
    }
}
