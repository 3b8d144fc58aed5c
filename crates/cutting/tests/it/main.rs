//! Cutting as its callers see it: against every way there is where that can be counted, and
//! against laws no plan may break.

mod days;
mod draw;
mod every_sheet;
mod every_stick;
mod hostile;
mod laws;
#[path = "../../benches/day/shop.rs"]
mod shop;
