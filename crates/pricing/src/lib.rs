//! Prices: charge rules, quotes, alternatives, tax, deposit; and suppliers' price lists.
//!
//! [`price`] prices a derived piece by a shop's [`RuleSet`]. Every amount is an exact decimal with its
//! currency; every rounding is named; every number is a line of working.
#![deny(
    clippy::float_arithmetic,
    clippy::as_conversions,
    clippy::integer_division
)]

mod alternatives;
mod budget;
mod charge;
mod compare;
mod cost;
mod desk;
mod exact;
pub mod invoice;
mod item;
mod laws;
mod priced;
mod quote;
mod rules;
mod scalar;
mod totals;

pub mod supplier;

pub use alternatives::{Alternative, AlternativesFault, Differs, MOST_ALTERNATIVES, alternatives};
pub use budget::{Budget, BudgetFault, Proposal, Proposed, Saving};
pub use compare::{Compared, Comparison, LineChange, Past, compare};
pub use desk::{Asked, price};
pub use laws::LAWS;
pub use priced::{
    DiscountLine, PartCost, Priced, PricedLine, Quantity, ShopSide, TaxGroup, TaxLine, Totals,
};
pub use quote::{
    AskedDocument, Difference, Heading, LineDocument, NamedAmount, Opened, PartDocument,
    QUOTE_VERSION, Quote, QuoteFault, ShopDocument, TaxDocument, TotalsDocument, Verdict,
};
pub use rules::{
    Areas, Band, Bands, Beyond, Chop, Class, Cost, Deposit, Discount, Each, Exchange, Lengths,
    Minutes, Part, Per, PerArea, RULES_VERSION, Rounding, Rule, RuleSet, RulesFault, Rush, Sheets,
    Shown, TaxCategory, TaxRate, Taxes, Tier, Untaxed, When,
};
pub use scalar::{Amount, Coin, Rate, Way};
