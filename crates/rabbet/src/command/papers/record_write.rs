//! `rabbet record write`

use clap::Args;
use paperwork::{RecordHead, SealedRecord, record_of};

use super::{paper, signing};
use crate::command::Desk;
use crate::command::job_file::Derived;
use crate::exit::{EXIT_CODES, Exit};
use crate::printing::Printing;
use crate::problem::Trouble;

/// Who signs a record, and what it leaves out.
#[derive(Args, Clone, Debug)]
pub struct Sealing {
    /// The shop's key file, as `record key` makes it
    #[arg(long, value_name = "FILE", env = "RABBET_KEY", hide_env_values = true)]
    key: String,
    /// Leave the customer's name out of the record: a label travels on with the piece
    #[arg(long)]
    without_customer: bool,
}

impl Sealing {
    /// The signed record of a piece.
    ///
    /// # Errors
    /// A key that can't be read.
    pub fn record(
        &self,
        file: &str,
        Derived { job, sizes }: &Derived,
        printing: &Printing,
    ) -> Result<SealedRecord, Trouble> {
        let key = signing::read(&self.key)?;
        let (date, _) = printing.when();
        let head = RecordHead {
            shop: printing.shop_name.clone(),
            date,
            fallback_order: paper::fallback_order(file),
            without_customer: self.without_customer,
        };
        Ok(SealedRecord::seal(&record_of(job, sizes, &head), &key))
    }
}

/// Writes the signed record of a job, the text of each code on a line
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet record write print.toml --key shop.key -o print.txt", after_help = EXIT_CODES)]
pub struct RecordWrite {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE", default_value = "-")]
    output: String,
    #[command(flatten)]
    sealing: Sealing,
    #[command(flatten)]
    printing: Printing,
    /// Write the record of a piece that can't be made as described
    #[arg(long)]
    anyway: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

impl RecordWrite {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = paper::made(&self.file, self.anyway, desk)?;
        let record = self.sealing.record(&self.file, &derived, &self.printing)?;
        let text = format!("{}\n", record.texts().join("\n"));
        paper::write(
            &self.file,
            &self.output,
            text.as_bytes(),
            self.dry_run,
            desk,
        )?;
        Ok(Exit::Done)
    }
}
