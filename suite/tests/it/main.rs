//! What the engine promises, held against laws, tables, golden jobs and a reference library.

mod bad_input;
mod cutting_models;
mod demo_jobs;
mod draw;
mod golden;
mod invoices;
mod largest;
mod laws;
mod metric;
mod mitres;
mod moist_air;
mod naive;
mod package_cases;
mod paper;
mod python;
mod record;
mod reference;
mod second_price;
mod shapes;
