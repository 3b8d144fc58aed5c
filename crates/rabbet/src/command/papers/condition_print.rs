//! `rabbet condition print`

use clap::Args;
use drawing::{Ink, Look, marked_art};
use paperwork::{ConditionHead, condition_of, condition_pdf};
use trade::ArtSide;

use super::paper;
use crate::command::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::pictures::Pictures;
use crate::printing::Printing;
use crate::problem::{Kind, Problem, Trouble};

/// Writes the condition report of a job's art as PDF, its marks on its picture
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet condition print print.toml -o condition.pdf", after_help = EXIT_CODES)]
pub struct ConditionPrint {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    /// Which piece of art, where there are several
    #[arg(long, value_name = "NUMBER", default_value = "1")]
    art: usize,
    #[command(flatten)]
    printing: Printing,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

impl ConditionPrint {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = job_file::derive(&self.file, desk)?;
        let (job, sizes) = (&derived.job, &derived.sizes);
        let index = self
            .art
            .checked_sub(1)
            .filter(|index| *index < job.art.len());
        let Some(index) = index else {
            let sentence = format!(
                "the job has {} pieces of art, none is number {}",
                job.art.len(),
                self.art
            );
            let problem =
                Problem::new("condition.art", sentence).in_file(job_file::shown(&self.file));
            return Err(Trouble::one(Kind::Input, problem));
        };
        let pictures = Pictures::beside(&self.file, job);
        for missing in &pictures.missing {
            desk.terminal.talk(missing);
        }
        let named = |name: &str| pictures.named(name);
        let look = Look::ticket(&named, Ink::Colour);
        let views = [ArtSide::Front, ArtSide::Back]
            .map(|side| marked_art(&job.art[index], side, sizes.unit(), &look));
        let (date, made) = self.printing.when();
        let head = ConditionHead {
            shop: self.printing.shop_name.clone(),
            made,
            date,
            fallback_order: paper::fallback_order(&self.file),
        };
        let unset = |error| paper::unset(&self.file, &error);
        let report = condition_of(job, sizes, index, views, head).map_err(unset)?;
        let pdf = condition_pdf(&report, self.printing.paper(job.units)).map_err(unset)?;
        paper::write(&self.file, &self.output, &pdf, self.dry_run, desk)?;
        Ok(Exit::Done)
    }
}
