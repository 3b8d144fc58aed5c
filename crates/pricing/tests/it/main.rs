//! Tests of prices, from the outside.

mod by_hand;
mod demo_jobs;
mod invoices;
mod laws;
mod quotes;
mod rounding;
mod rule_sets;
mod worked_quotes;
