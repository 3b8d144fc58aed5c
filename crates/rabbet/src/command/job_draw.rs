//! `rabbet job draw`

use clap::{Args, ValueEnum};
use drawing::{Drawing, DrawingError, Ink, Look};

use super::Desk;
use super::job_file::{self, Derived};
use crate::exit::{EXIT_CODES, Exit};
use crate::files::{self, Writing};
use crate::pictures::Pictures;
use crate::problem::{Kind, Problem, Trouble};

/// Draws a job to scale, as SVG, or tells its dimensions in words
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job draw print.toml --view section -o section.svg", after_help = EXIT_CODES)]
pub struct JobDraw {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    /// What is drawn
    #[arg(long, value_enum)]
    view: View,
    /// Where it is written; - is stdout
    #[arg(short, long, value_name = "FILE", default_value = "-")]
    output: String,
    /// Its dimensions in words instead of the drawing
    #[arg(long)]
    text: bool,
    /// Black and its greys, for any printer
    #[arg(long)]
    one_ink: bool,
    /// Say what would be written, and write nothing
    #[arg(long)]
    dry_run: bool,
}

/// The drawings of a piece.
#[derive(Clone, Copy, Debug, ValueEnum)]
enum View {
    /// From the front
    Elevation,
    /// A cut through the edge, front to back
    Section,
    /// From the back, as the bench marks and cuts it
    Back,
}

impl JobDraw {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let derived = job_file::derive(&self.file, desk)?;
        let drawn = self.draw(&derived, desk).map_err(|error| {
            job_file::tell(&self.file, &derived.sizes.faults, desk);
            undrawn(&self.file, error)
        })?;
        keep_apart(&self.file, &self.output)?;
        let text = if self.text {
            format!("{}\n", drawing::twin_text(&drawn).trim_end())
        } else {
            drawn.svg
        };
        let how = Writing {
            dry_run: self.dry_run,
            replace: true,
        };
        files::write(&self.output, text.as_bytes(), how, desk.terminal)?;
        if derived.sizes.is_refused() {
            job_file::tell(&self.file, &derived.sizes.faults, desk);
        }
        Ok(Exit::Done)
    }

    fn draw(&self, Derived { job, sizes }: &Derived, desk: &Desk) -> Result<Drawing, DrawingError> {
        let pictures = Pictures::beside(&self.file, job);
        for missing in &pictures.missing {
            desk.terminal.talk(missing);
        }
        let ink = if self.one_ink {
            Ink::OneInk
        } else {
            Ink::Colour
        };
        let named = |name: &str| pictures.named(name);
        let look = Look::page(&named, ink);
        match self.view {
            View::Elevation => drawing::elevation(job, sizes, &look),
            View::Section => drawing::section(job, sizes, &look),
            View::Back => drawing::back_view(job, sizes, &look),
        }
    }
}

/// The trouble of a piece that can't be drawn.
pub fn undrawn(file: &str, error: DrawingError) -> Trouble {
    let code = match error {
        DrawingError::NoSize => "drawing.no_size",
        DrawingError::OtherJob => "drawing.other_job",
    };
    Trouble::one(
        Kind::Piece,
        Problem::new(code, error.to_string()).in_file(job_file::shown(file)),
    )
}

/// Refuses an output that is the job itself.
pub fn keep_apart(file: &str, output: &str) -> Result<(), Trouble> {
    if !files::same_file(file, output) {
        return Ok(());
    }
    let problem = Problem::new(
        "file.own_input",
        "this would replace the job it is made from",
    );
    Err(Trouble::one(
        Kind::Input,
        problem
            .hint("choose another name for the output")
            .in_file(output),
    ))
}
