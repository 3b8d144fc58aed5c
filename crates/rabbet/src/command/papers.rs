//! The papers of a piece: label, record, care card, condition report; nail map and template of a wall.

mod card_print;
mod codes;
mod condition_print;
mod label_print;
mod paper;
mod record_key;
mod record_read;
mod record_verify;
mod record_write;
mod signing;
mod wall;
mod wall_map;
mod wall_show;
mod wall_template;

use clap::Subcommand;

use super::Desk;
use crate::exit::Exit;
use crate::problem::Trouble;

/// What is done with labels.
#[derive(Subcommand, Debug)]
pub enum LabelVerb {
    Print(label_print::LabelPrint),
}

/// What is done with records.
#[derive(Subcommand, Debug)]
pub enum RecordVerb {
    Key(record_key::RecordKeyCommand),
    Write(record_write::RecordWrite),
    Read(record_read::RecordRead),
    Verify(record_verify::RecordVerify),
}

/// What is done with care cards.
#[derive(Subcommand, Debug)]
pub enum CardVerb {
    Print(card_print::CardPrint),
}

/// What is done with walls.
#[derive(Subcommand, Debug)]
pub enum WallVerb {
    Show(wall_show::WallShow),
    Map(wall_map::WallMap),
    Template(wall_template::WallTemplateCommand),
}

/// What is done with condition reports.
#[derive(Subcommand, Debug)]
pub enum ConditionVerb {
    Print(condition_print::ConditionPrint),
}

impl LabelVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let Self::Print(print) = self;
        print.run(desk)
    }
}

impl RecordVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        match self {
            Self::Key(key) => key.run(desk),
            Self::Write(write) => write.run(desk),
            Self::Read(read) => read.run(desk),
            Self::Verify(verify) => verify.run(desk),
        }
    }
}

impl CardVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let Self::Print(print) = self;
        print.run(desk)
    }
}

impl WallVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        match self {
            Self::Show(show) => show.run(desk),
            Self::Map(map) => map.run(desk),
            Self::Template(template) => template.run(desk),
        }
    }
}

impl ConditionVerb {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let Self::Print(print) = self;
        print.run(desk)
    }
}
