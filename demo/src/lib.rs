//! An invented shop: its jobs, each a document of the trade, and the art that lies in its bins.
//!
//! Nobody and nothing here exists. The pictures are drawn by this crate's own code, the same on
//! every run.

mod jobs;
mod picture;

pub use jobs::JOBS;
pub use picture::{PICTURES, picture};

/// One job of the shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DemoJob {
    /// Stem of its file: `harbour` for `harbour.toml`.
    pub name: &'static str,
    /// Title of its (first) piece of art.
    pub title: &'static str,
    /// The job document, as a person would write it.
    pub toml: &'static str,
}

/// The job of this name.
pub fn job(name: &str) -> Option<&'static DemoJob> {
    JOBS.iter().find(|job| job.name == name)
}

/// What lies on the shop's racks, and what it can order: a stock document.
pub static STOCK: &str = include_str!("../stock.toml");

/// A list of pieces to cut with no job behind them, as a person would type it.
pub static CUT_LIST: &str = include_str!("../cut-list.toml");

/// What the shop's materials cost it: a catalogue file to lay over the starter catalogue.
pub static CATALOGUE: &str = include_str!("../catalogue.toml");

/// What the shop charges: a rule set.
pub static PRICES: &str = include_str!("../prices.toml");

/// The shop itself, as it stands on its papers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shop {
    /// Its name.
    pub name: &'static str,
    /// What it says under its name.
    pub line: &'static str,
    /// Where it stands, line by line.
    pub address: [&'static str; 2],
    /// Its telephone, from the numbers kept for fiction.
    pub telephone: &'static str,
    /// Where to write to, under the domain kept for examples.
    pub mail: &'static str,
    /// When its door is open.
    pub hours: &'static str,
}

/// The invented shop.
pub static SHOP: Shop = Shop {
    name: "Lanternfield Frames",
    line: "Mats, mouldings and mending, cut to the thirty-second",
    address: ["4 Tallow Yard", "Lanternfield"],
    telephone: "555-0142",
    mail: "counter@lanternfield.example",
    hours: "Tuesday to Saturday, 9 to 5",
};
