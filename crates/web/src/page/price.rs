//! The price beside the sizes, each amount opening its working; the customer's view without costs.

mod alternatives;
mod budget;
mod customer;
mod quote;
mod shop;
mod wish;

use std::sync::Arc;

use maud::{Markup, html};
use measure::Money;
use pricing::{Priced, RuleSet, price};
use sizing::{Fault, Severity};
use working::LineId;

use self::budget::form as budget_form;
use self::quote::form as quote_form;
use super::caution::{ended, found, sign};
use super::why::Why;
use crate::clock;
use crate::desk::Desk;
use crate::piece::Piece;

pub(crate) use alternatives::alternatives;
pub(crate) use budget::budget;
pub(crate) use quote::{quote_file, quote_opened, quote_pdf, quote_way_in, quoted};
pub(super) use wish::Wish;

/// The price of a piece, or why there is none.
pub(super) enum PiecePrice {
    /// The shop's prices are not given.
    Unruled,
    /// The clock gives no day to price on.
    Undated,
    /// Priced today.
    Priced {
        priced: Box<Priced>,
        rules: Arc<RuleSet>,
    },
}

impl PiecePrice {
    /// By the shop's rules, today.
    pub fn of(desk: &Desk, piece: &Piece, wish: &Wish) -> Self {
        if desk.options.prices.is_none() {
            return Self::Unruled;
        }
        let Ok((rules, asked)) = wish.today(desk) else {
            return Self::Undated;
        };
        let catalogue = &desk.options.catalogue;
        let priced = price(&piece.job, &piece.sizes, catalogue, &rules, &asked);
        Self::Priced {
            priced: Box::new(priced),
            rules,
        }
    }

    /// What can be asked beside the piece, to a budget, and as a quote; nothing where nothing is priced.
    pub fn forms(&self, wish: &Wish, name: &str) -> Markup {
        match self {
            Self::Unruled | Self::Undated => html! {},
            Self::Priced { priced, rules } => html! {
                (quote_form(wish, rules, priced.day, name))
                (budget_form(name))
            },
        }
    }

    /// Lines, totals and the shop's own side, each amount opening its working.
    pub fn for_the_shop(&self, piece: &Piece) -> Markup {
        html! {
            section.price.sizes aria-labelledby="price" {
                h2 #price { "Price" @if let Self::Priced { priced, rules } = self {
                    span.beside { (rules.name) ", " (priced.day) }
                } }
                @match self {
                    Self::Unruled => {
                        p { "The shop's prices are not given, so nothing is priced." }
                        p.beside { "Start with " code { "rabbet serve --prices prices.toml" } ", or with "
                            code { "--shop FOLDER" } " where a prices.toml lies in the folder; "
                            code { "rabbet demo write" } " writes an invented one." }
                    }
                    Self::Undated => { p { (clock::NO_DAY) } }
                    Self::Priced { priced, .. } => { (shop::side(priced, why(priced, piece))) }
                }
            }
        }
    }

    /// Lines and totals as the customer reads them; nothing where there is no price to give.
    pub fn for_the_customer(&self) -> Markup {
        match self {
            Self::Priced { priced, rules } if !priced.is_refused() => customer::side(priced, rules),
            Self::Unruled | Self::Undated | Self::Priced { .. } => html! {},
        }
    }

    /// Every line of the price's working that the sizes' own does not hold.
    pub fn working(&self, piece: &Piece) -> Markup {
        match self {
            Self::Unruled | Self::Undated => html! {},
            Self::Priced { priced, .. } => why(priced, piece).under("Working of the price"),
        }
    }
}

/// The price's working goes on from the sizes'.
fn why<'a>(priced: &'a Priced, piece: &Piece) -> Why<'a> {
    Why {
        working: &priced.working,
        unit: piece.sizes.unit(),
        name: "price-",
        shown: piece.sizes.working.len(),
    }
}

/// An amount that opens its working.
pub(super) fn row(label: &str, amount: &str, beside: &str, line: LineId, why: Why<'_>) -> Markup {
    html! {
        details.size.valued {
            summary {
                span.label { (label) } span.figure { (amount) }
                @if !beside.is_empty() { span.beside { (beside) } }
            }
            (why.line(line))
        }
    }
}

/// What is wrong with a price, as sentences.
pub(super) fn faults(all: &[Fault]) -> Markup {
    html! {
        @if !all.is_empty() {
            ul.cautions { @for fault in all {
                li.stop[fault.severity == Severity::Refuse].mind[fault.severity == Severity::Warn] {
                    p { (sign(fault.severity)) " " b { (fault.part) ":" } " " (found(fault)) }
                    @if !fault.cure.is_empty() { p.cure { (ended(&fault.cure)) } }
                }
            } }
        }
    }
}

/// Taken off: with a minus before it.
pub(super) fn less(amount: Money) -> String {
    format!("−{amount}")
}

/// With its sign: `+3.00 USD`, `−3.00 USD`.
pub(super) fn signed(amount: Money) -> String {
    match amount.minor {
        0 => "no difference".to_owned(),
        1.. => format!("+{amount}"),
        minor => less(Money {
            minor: minor.saturating_neg(),
            ..amount
        }),
    }
}
