//! `rabbet prices`: suppliers' price lists, and the shop's own rules.

mod check;
mod compare;
mod history;
mod import;
mod told;
mod undo;

use clap::Subcommand;

use super::Desk;
use crate::exit::Exit;
use crate::problem::Trouble;

/// What can be done with prices.
#[derive(Subcommand, Debug)]
pub enum PricesVerb {
    Import(import::PricesImport),
    Undo(undo::PricesUndo),
    Check(check::PricesCheck),
    Compare(compare::PricesCompare),
}

impl PricesVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        match self {
            Self::Import(import) => import.run(desk),
            Self::Undo(undo) => undo.run(desk),
            Self::Check(check) => check.run(desk),
            Self::Compare(compare) => compare.run(desk),
        }
    }
}
