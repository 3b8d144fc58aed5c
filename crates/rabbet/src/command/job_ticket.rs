//! `rabbet job ticket`

use std::path::Path;

use clap::Args;
use drawing::{DrawingError, Ink, Look};
use paperwork::{Drawings, Letterhead, PaperworkError, ticket_of, ticket_pdf};

use super::job_file::{self, Derived};
use super::{Desk, job_draw};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::pictures::Pictures;
use crate::printing::Printing;
use crate::problem::{Kind, Problem, Trouble};

/// Writes the bench ticket of a job as PDF
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job ticket print.toml -o ticket.pdf", after_help = EXIT_CODES)]
pub struct JobTicket {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE")]
    output: String,
    #[command(flatten)]
    printing: Printing,
    /// Print a piece that can't be made as described; its faults stand on the ticket
    #[arg(long)]
    anyway: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

impl JobTicket {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = job_file::derive(&self.file, desk)?;
        let refused = derived.sizes.is_refused();
        if refused && !self.anyway {
            job_file::tell(&self.file, &derived.sizes.faults, desk);
            let problem = Problem::new(
                "ticket.refused",
                "no ticket is written for a piece that can't be made as described",
            )
            .hint("mend what is named above, or say --anyway to print it with its faults");
            return Err(Trouble::one(
                Kind::Piece,
                problem.in_file(job_file::shown(&self.file)),
            ));
        }
        job_draw::keep_apart(&self.file, &self.output)?;
        let pdf = self.pdf(&derived, desk)?;
        let how = Writing {
            dry_run: self.dry_run,
            replace: true,
        };
        files::write(&self.output, &pdf, how, desk.terminal)?;
        job_file::tell(&self.file, &derived.sizes.faults, desk);
        Ok(Exit::Done)
    }

    fn pdf(&self, derived: &Derived, desk: &Desk) -> Result<Vec<u8>, Trouble> {
        let drawings = self
            .drawings(derived, desk)
            .map_err(|error| job_draw::undrawn(&self.file, error))?;
        let ticket = ticket_of(&derived.job, &derived.sizes, drawings, self.letterhead());
        let paper = self.printing.paper(derived.job.units);
        ticket_pdf(&ticket, paper).map_err(|error| unset(&self.file, &error))
    }

    fn drawings(
        &self,
        Derived { job, sizes }: &Derived,
        desk: &Desk,
    ) -> Result<Drawings, DrawingError> {
        let pictures = Pictures::beside(&self.file, job);
        for missing in &pictures.missing {
            desk.terminal.talk(missing);
        }
        let named = |name: &str| pictures.named(name);
        let look = Look::ticket(&named, Ink::Colour);
        Ok(Drawings {
            elevation: drawing::elevation(job, sizes, &look)?,
            section: drawing::section(job, sizes, &look)?,
            back_view: drawing::back_view(job, sizes, &look)?,
        })
    }

    /// What the job does not say: the shop, the day, and a name where there is no order number.
    fn letterhead(&self) -> Letterhead {
        let (date, made) = self.printing.when();
        let stem = Path::new(&self.file)
            .file_stem()
            .map(|stem| stem.to_string_lossy().into_owned());
        Letterhead {
            shop: self.printing.shop_name.clone(),
            made,
            date,
            fallback_order: stem
                .filter(|stem| stem != "-")
                .unwrap_or_else(|| "stdin".to_owned()),
        }
    }
}

fn unset(file: &str, error: &PaperworkError) -> Trouble {
    let (kind, code) = match error {
        PaperworkError::NoWords { .. } | PaperworkError::Drawing { .. } => {
            (Kind::Piece, "ticket.drawing")
        }
        PaperworkError::NotATime(_) => (Kind::Input, "ticket.date"),
        PaperworkError::NoOrder => (Kind::Input, "ticket.order"),
        _ => (Kind::Ours, "ticket.setting"),
    };
    Trouble::one(
        kind,
        Problem::new(code, error.to_string()).in_file(job_file::shown(file)),
    )
}
