//! `rabbet label print`

use clap::{Args, ValueEnum};
use paperwork::{LabelHead, LeafSize, label_of, leaf_pdf};

use super::paper;
use super::record_write::Sealing;
use crate::command::Desk;
use crate::exit::{EXIT_CODES, Exit};
use crate::printing::Printing;
use crate::problem::Trouble;

/// Writes the back label of a job as PDF, with its signed record in codes
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet label print print.toml --key shop.key -o label.pdf", after_help = EXIT_CODES)]
pub struct LabelPrint {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    #[command(flatten)]
    sealing: Sealing,
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

/// Sizes of small papers, upright; with --paper they lie on that sheet, to be cut out.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Size {
    /// 105 x 148 mm
    A6,
    /// 4 x 6 in
    #[value(name = "4x6")]
    FourBySix,
    /// 148 x 210 mm
    A5,
    /// 5 1/2 x 8 1/2 in
    HalfLetter,
}

impl Size {
    /// The size asked for, or the one usual where these units are.
    pub fn or_usual(size: Option<Self>, units: trade::Units) -> LeafSize {
        match (size, units) {
            (Some(Self::A6), _) => LeafSize::A6,
            (Some(Self::FourBySix), _) => LeafSize::FourBySix,
            (Some(Self::A5), _) | (None, trade::Units::Millimetres) => LeafSize::A5,
            (Some(Self::HalfLetter), _) | (None, trade::Units::Inches) => LeafSize::HalfLetter,
        }
    }
}

impl LabelPrint {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = paper::made(&self.file, self.anyway, desk)?;
        let record = self.sealing.record(&self.file, &derived, &self.printing)?;
        let (date, made) = self.printing.when();
        let head = LabelHead {
            shop: self.printing.shop_name.clone(),
            made,
            date,
            fallback_order: paper::fallback_order(&self.file),
        };
        let label = label_of(&derived.job, &derived.sizes, &record, head);
        let size = Size::or_usual(self.size, derived.job.units);
        let pdf = leaf_pdf(&label, size, self.printing.paper_asked())
            .map_err(|error| paper::unset(&self.file, &error))?;
        paper::write(&self.file, &self.output, &pdf, self.dry_run, desk)?;
        Ok(Exit::Done)
    }
}
