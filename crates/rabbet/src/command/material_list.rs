//! `rabbet material list`

use clap::{Args, ValueEnum};
use serde_json::json;

use super::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::report::Report;
use web::wire;

/// Lists materials by kind
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet material list --kind moulding", after_help = EXIT_CODES)]
pub struct MaterialList {
    /// Only those of one kind
    #[arg(long, value_enum)]
    kind: Option<Kind>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

/// Kinds of materials.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Kind {
    /// Mat and mount boards
    Board,
    /// Backing boards
    Backing,
    /// Glazing
    Glazing,
    /// Mouldings
    Moulding,
    /// Fillets
    Fillet,
    /// Spacers
    Spacer,
    /// Hardware
    Hardware,
    /// Services
    Service,
}

impl Kind {
    /// In the order they are listed.
    const ALL: [Self; 8] = [
        Self::Board,
        Self::Backing,
        Self::Glazing,
        Self::Moulding,
        Self::Fillet,
        Self::Spacer,
        Self::Hardware,
        Self::Service,
    ];

    const fn of_trade(self) -> trade::Kind {
        match self {
            Self::Board => trade::Kind::Board,
            Self::Backing => trade::Kind::Backing,
            Self::Glazing => trade::Kind::Glazing,
            Self::Moulding => trade::Kind::Moulding,
            Self::Fillet => trade::Kind::Fillet,
            Self::Spacer => trade::Kind::Spacer,
            Self::Hardware => trade::Kind::Hardware,
            Self::Service => trade::Kind::Service,
        }
    }
}

impl MaterialList {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let catalogue = desk.shop.catalogue()?;
        let wanted = self.kind.map(Kind::of_trade);
        if self.json {
            let chosen = catalogue
                .iter()
                .filter(|material| wanted.is_none() || material.kind == wanted);
            let list: Vec<_> = chosen.map(wire::material).collect();
            desk.terminal
                .data(&format!("{:#}\n", json!({ "materials": list })))?;
            return Ok(Exit::Done);
        }
        let mut report = Report::default();
        let kinds = Kind::ALL
            .into_iter()
            .map(|kind| Some(kind.of_trade()))
            .chain([None]);
        for kind in kinds.filter(|kind| wanted.is_none() || *kind == wanted) {
            let group = report.group(kind.map_or("of no kind", trade::Kind::word));
            for material in catalogue.iter().filter(|material| material.kind == kind) {
                group.row(&material.code, material.title().to_owned());
            }
        }
        desk.terminal.data(&report.render(desk.terminal))?;
        Ok(Exit::Done)
    }
}
