//! The sheets, read back with outside readers: poppler, qpdf and lopdf.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

mod bars;
mod cut_book;
mod hostile;
mod lettering;
mod long;
mod margins;
mod papers;
mod quotes;
mod reader;
mod refusals;
mod sample;
mod sheet;
mod shop;
