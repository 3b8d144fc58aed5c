//! `rabbet wall map`

use clap::Args;
use drawing::{Ink, Sheet, twin_text};
use paperwork::{WallHead, nail_map_pdf};

use super::{paper, wall};
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::printing::Printing;
use crate::problem::Trouble;

/// Writes the nail map of a wall as PDF, or as SVG where the output ends in .svg
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet wall map wall.toml -o map.pdf", after_help = EXIT_CODES)]
pub struct WallMap {
    /// The wall file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    /// Its measures in words instead of the drawing
    #[arg(long)]
    text: bool,
    /// Black and its greys, for any printer
    #[arg(long)]
    one_ink: bool,
    #[command(flatten)]
    printing: Printing,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

impl WallMap {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let laid = wall::laid(&self.file, desk)?;
        let ink = if self.one_ink {
            Ink::OneInk
        } else {
            Ink::Colour
        };
        let svg = self.output.to_lowercase().ends_with(".svg");
        let sheet = if svg || self.text {
            Sheet::Wide
        } else {
            Sheet::Bench
        };
        let drawn = drawing::wall(&laid.plan, ink, sheet);
        let bytes = if self.text {
            twin_text(&drawn).into_bytes()
        } else if svg {
            drawn.svg.into_bytes()
        } else {
            let map = paperwork::Drawing {
                alt: twin_text(&drawn).lines().collect::<Vec<_>>().join("; "),
                svg: drawn.svg,
            };
            let paper = self.printing.paper(laid.units);
            nail_map_pdf(&laid.plan, &map, &head(&self.printing), paper)
                .map_err(|error| paper::unset(&self.file, &error))?
        };
        paper::write(&self.file, &self.output, &bytes, self.dry_run, desk)?;
        Ok(Exit::Done)
    }
}

/// The head of a paper for the wall.
pub fn head(printing: &Printing) -> WallHead {
    use conservation::caution::Caution::{Ladder, Load};
    let (date, made) = printing.when();
    WallHead {
        shop: printing.shop_name.clone(),
        date,
        made,
        cautions: [Load, Ladder]
            .map(|caution| caution.text().to_owned())
            .to_vec(),
    }
}
