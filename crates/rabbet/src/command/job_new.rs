//! `rabbet job new`

use clap::{Args, ValueEnum};

use super::{Desk, Units};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::problem::Trouble;

/// Writes a job document to start from; its remarks explain it
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job new --kind double-mat -o new.toml", after_help = EXIT_CODES)]
pub struct JobNew {
    /// The kind of piece
    #[arg(long, value_enum, default_value_t)]
    kind: Kind,
    /// What a bare number means
    #[arg(long, value_enum, default_value_t)]
    units: Units,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE", default_value = "-")]
    output: String,
    /// Replace a file that is there
    #[arg(long)]
    force: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

/// Kinds of pieces to start from.
#[derive(Clone, Copy, Debug, Default, ValueEnum)]
enum Kind {
    /// A print under one mat
    #[default]
    SingleMat,
    /// A watercolour under two mats
    DoubleMat,
    /// Several openings in one mat
    Multi,
    /// Art floated whole, with no mat over it
    Float,
    /// A stretched canvas in a frame
    Canvas,
    /// A stretched canvas in a floater
    Floater,
    /// Objects in a box
    Shadowbox,
    /// A textile on a wrapped board
    Textile,
    /// A frame with a liner in it
    Liner,
    /// A piece seen from both sides
    DoubleSided,
    /// A frame with other than four sides
    Polygon,
    /// A piece for a frame at hand
    FitFrame,
}

impl Kind {
    /// Its title and what follows the common head.
    const fn template(self) -> (&'static str, &'static str) {
        match self {
            Self::SingleMat => (
                "A print under one mat.",
                include_str!("../template/single-mat.toml"),
            ),
            Self::DoubleMat => (
                "A watercolour under two mats.",
                include_str!("../template/double-mat.toml"),
            ),
            Self::Multi => (
                "Three photographs in one mat.",
                include_str!("../template/multi.toml"),
            ),
            Self::Float => (
                "A deckled print floated on a board.",
                include_str!("../template/float.toml"),
            ),
            Self::Canvas => (
                "A stretched canvas in a frame.",
                include_str!("../template/canvas.toml"),
            ),
            Self::Floater => (
                "A stretched canvas in a floater.",
                include_str!("../template/floater.toml"),
            ),
            Self::Shadowbox => (
                "An object in a box.",
                include_str!("../template/shadowbox.toml"),
            ),
            Self::Textile => (
                "A textile on a wrapped board.",
                include_str!("../template/textile.toml"),
            ),
            Self::Liner => (
                "A panel in a frame with a liner.",
                include_str!("../template/liner.toml"),
            ),
            Self::DoubleSided => (
                "A letter seen from both sides.",
                include_str!("../template/double-sided.toml"),
            ),
            Self::Polygon => (
                "A six-sided frame.",
                include_str!("../template/polygon.toml"),
            ),
            Self::FitFrame => (
                "A print for a frame at hand.",
                include_str!("../template/fit-frame.toml"),
            ),
        }
    }
}

impl JobNew {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let (title, body) = self.kind.template();
        let text = format!(
            "{}{body}",
            include_str!("../template/head.toml").replace("{{title}}", title)
        );
        let how = Writing {
            dry_run: self.dry_run,
            replace: self.force,
        };
        files::write(
            &self.output,
            in_units(&text, self.units).as_bytes(),
            how,
            desk.terminal,
        )?;
        Ok(Exit::Done)
    }
}

/// A template's text with the choice for `units` taken of every `{{inches|millimetres}}`.
fn in_units(template: &str, units: Units) -> String {
    let mut text = String::with_capacity(template.len());
    let mut rest = template;
    while let Some((before, from)) = rest.split_once("{{") {
        let (choice, after) = from
            .split_once("}}")
            .expect("every choice of a template is closed");
        let (inches, millimetres) = choice
            .split_once('|')
            .expect("every choice of a template is between two");
        text.push_str(before);
        text.push_str(match units {
            Units::In => inches,
            Units::Mm => millimetres,
        });
        rest = after;
    }
    text.push_str(rest);
    text
}
