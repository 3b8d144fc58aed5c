//! What both `cut` commands may be told.

use std::num::NonZeroUsize;
use std::time::Duration;

use clap::Args;
use cutting::Trying;

use crate::printing::Printing;

/// How long to look for a better plan, and where it goes.
#[derive(Args, Clone, Debug)]
pub struct Options {
    /// How long to look for a better plan; 0 takes the first. Ctrl-C takes the best so far
    #[arg(long, value_name = "SECONDS", default_value = "5", value_parser = seconds, conflicts_with = "effort")]
    seconds: Duration,
    /// Search steps for each material, instead of seconds: the same answer on every machine
    #[arg(long, value_name = "STEPS", value_parser = whole::<u64>)]
    effort: Option<u64>,
    /// Where chance begins: another seed may find another plan
    #[arg(long, value_name = "NUMBER", default_value = "1", value_parser = whole::<u64>)]
    seed: u64,
    /// How many materials are planned at a time; left out: one for each core
    #[arg(long, value_name = "NUMBER", value_parser = whole::<NonZeroUsize>)]
    threads: Option<NonZeroUsize>,
    /// The cut sheets, as PDF; - is stdout
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<String>,
    /// A drawing of every sheet and stick, as SVG, in this folder
    #[arg(long, value_name = "FOLDER")]
    pub svg: Option<String>,
    /// The plan, as JSON; - is stdout
    #[arg(long, value_name = "FILE")]
    pub plan: Option<String>,
    #[command(flatten)]
    pub printing: Printing,
    /// Say what would be written, and write nothing
    #[arg(long)]
    pub dry_run: bool,
    /// The plan as JSON on stdout
    #[arg(long)]
    pub json: bool,
}

impl Options {
    /// What the search is told.
    pub fn trying(&self) -> Trying {
        Trying {
            effort: self.effort,
            seed: self.seed,
        }
    }

    /// When to end, where the clock says so.
    pub fn patience(&self) -> Option<Duration> {
        self.effort.is_none().then_some(self.seconds)
    }

    /// How many materials at a time.
    pub fn threads(&self) -> usize {
        let cores = std::thread::available_parallelism().ok();
        self.threads.or(cores).map_or(1, NonZeroUsize::get)
    }
}

/// A year; nobody waits longer.
const LONGEST: f64 = 31_536_000.0;

fn seconds(text: &str) -> Result<Duration, String> {
    let number = text.parse::<f64>().ok();
    let number = number.filter(|number| (0.0..=LONGEST).contains(number));
    let read = number.and_then(|number| Duration::try_from_secs_f64(number).ok());
    read.ok_or_else(|| format!("write a number of seconds from 0 to {LONGEST}, such as 2.5"))
}

fn whole<T: std::str::FromStr>(text: &str) -> Result<T, String> {
    text.parse()
        .map_err(|_| "write a whole number, such as 1 or 200000".to_owned())
}
