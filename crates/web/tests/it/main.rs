//! The door as visitors meet it: the router alone, and in a real browser.

mod api;
mod browser;
mod care;
mod cuts;
mod guards;
mod inks;
mod pages;
mod price;
mod quotes;
mod visit;
