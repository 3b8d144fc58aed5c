//! `rabbet job ticket`

use std::path::Path;

use clap::{Args, ValueEnum};
use drawing::{DrawingError, Ink, Look};
use jiff::civil::Date;
use jiff::{Timestamp, Zoned, tz::TimeZone};
use paperwork::{Drawings, Letterhead, Paper, PaperworkError, Stamp, ticket_of, ticket_pdf};

use super::job_file::{self, Derived};
use super::{Desk, job_draw};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::pictures::Pictures;
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
    /// The paper in the printer; left out: letter for a job in inches, a4 for one in millimetres
    #[arg(long, value_enum)]
    paper: Option<Sheet>,
    /// The day on the ticket, as 2030-11-25; left out: today
    #[arg(long, value_name = "DAY", value_parser = day)]
    date: Option<Date>,
    /// The shop's name on the ticket
    #[arg(long, value_name = "NAME", default_value = "")]
    shop_name: String,
    /// Print a piece that can't be made as described; its faults stand on the ticket
    #[arg(long)]
    anyway: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

/// Papers.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum Sheet {
    /// 210 x 297 mm
    A4,
    /// 8 1/2 x 11 in
    Letter,
}

fn day(text: &str) -> Result<Date, String> {
    text.parse()
        .map_err(|_| "write a day of the calendar as 2030-11-25".to_owned())
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
        let paper = match (self.paper, derived.job.units) {
            (Some(Sheet::A4), _) | (None, trade::Units::Millimetres) => Paper::A4,
            (Some(Sheet::Letter), _) | (None, trade::Units::Inches) => Paper::Letter,
        };
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
        let (date, made) = match self.date {
            Some(date) => (date, date.at(0, 0, 0, 0)),
            None => (
                Zoned::now().date(),
                Timestamp::now().to_zoned(TimeZone::UTC).datetime(),
            ),
        };
        let stem = Path::new(&self.file)
            .file_stem()
            .map(|stem| stem.to_string_lossy().into_owned());
        Letterhead {
            shop: self.shop_name.clone(),
            made: Stamp {
                year: part(made.year()),
                month: part(made.month()),
                day: part(made.day()),
                hour: part(made.hour()),
                minute: part(made.minute()),
            },
            date: date.to_string(),
            fallback_order: stem
                .filter(|stem| stem != "-")
                .unwrap_or_else(|| "stdin".to_owned()),
        }
    }
}

/// A part of a calendar date as paperwork holds it; a year before the common era becomes 0, which
/// paperwork refuses in its own words.
fn part<T: TryFrom<i64> + Default>(number: impl Into<i64>) -> T {
    T::try_from(number.into()).unwrap_or_default()
}

fn unset(file: &str, error: &PaperworkError) -> Trouble {
    let (kind, code) = match error {
        PaperworkError::NoWords { .. } | PaperworkError::Drawing { .. } => {
            (Kind::Piece, "ticket.drawing")
        }
        PaperworkError::NotATime(_) => (Kind::Input, "ticket.date"),
        PaperworkError::NoOrder => (Kind::Input, "ticket.order"),
        PaperworkError::Setting(_) | PaperworkError::Finishing(_) => (Kind::Ours, "ticket.setting"),
    };
    Trouble::one(
        kind,
        Problem::new(code, error.to_string()).in_file(job_file::shown(file)),
    )
}
