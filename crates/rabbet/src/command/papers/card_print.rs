//! `rabbet card print`

use clap::Args;
use paperwork::{CardHead, card_of, leaf_pdf};

use super::label_print::Size;
use super::paper;
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::printing::Printing;
use crate::problem::Trouble;

/// Writes the care card of a job for its customer, as PDF
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet card print print.toml -o card.pdf", after_help = EXIT_CODES)]
pub struct CardPrint {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    /// How large it is; left out: half-letter where inches are printed, a5 for millimetres
    #[arg(long, value_enum)]
    size: Option<Size>,
    #[command(flatten)]
    printing: Printing,
    /// Print a piece that can't be made as described
    #[arg(long)]
    anyway: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

impl CardPrint {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = paper::made(&self.file, self.anyway, desk)?;
        let (date, made) = self.printing.when();
        let head = CardHead {
            shop: self.printing.shop_name.clone(),
            made,
            date,
            fallback_order: paper::fallback_order(&self.file),
        };
        let unset = |error| paper::unset(&self.file, &error);
        let catalogue = desk.shop.catalogue()?;
        let card = card_of(&derived.job, &derived.sizes, &catalogue, head).map_err(unset)?;
        let size = Size::or_usual(self.size, derived.job.units);
        let pdf = leaf_pdf(&card, size, self.printing.paper_asked()).map_err(unset)?;
        paper::write(&self.file, &self.output, &pdf, self.dry_run, desk)?;
        Ok(Exit::Done)
    }
}
