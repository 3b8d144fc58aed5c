//! `rabbet quote`: prices given to customers.

mod invoice;
mod make;
mod opened;
mod print;
mod show;

use clap::Subcommand;

use super::Desk;
use crate::exit::Exit;
use crate::problem::Trouble;

/// What can be done with quotes.
#[derive(Subcommand, Debug)]
pub enum QuoteVerb {
    Make(make::QuoteMake),
    Show(show::QuoteShow),
    Print(print::QuotePrint),
    Invoice(invoice::QuoteInvoice),
}

impl QuoteVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        match self {
            Self::Make(make) => make.run(desk),
            Self::Show(show) => show.run(desk),
            Self::Print(print) => print.run(desk),
            Self::Invoice(invoice) => invoice.run(desk),
        }
    }
}
