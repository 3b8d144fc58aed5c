//! The door as visitors meet it: the router alone, and in a real browser.

mod api;
mod browser;
mod cuts;
mod guards;
mod inks;
mod pages;
mod visit;
