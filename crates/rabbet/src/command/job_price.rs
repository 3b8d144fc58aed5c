//! `rabbet job price`

use clap::Args;
use pricing::price;
use web::wire;

use super::asking::Asking;
use super::job_sizes::why;
use super::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::report;

/// Prices a job by the shop's rules, and says why every amount is what it is
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet job price print.toml --shop .", after_help = EXIT_CODES)]
pub struct JobPrice {
    /// The job file; - is stdin
    #[arg(value_name = "FILE")]
    file: String,
    #[command(flatten)]
    asking: Asking,
    /// With cost, margin and minutes, which are no customer's
    #[arg(long)]
    shop_copy: bool,
    /// Explain one amount, or list those whose names begin so
    #[arg(long, value_name = "PATH")]
    why: Option<String>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl JobPrice {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let ruled = desk.shop.rules()?;
        let catalogue = desk.shop.catalogue()?;
        let asked = self.asking.asked()?;
        let derived = job_file::derive(&self.file, desk)?;
        let sizes = &derived.sizes;
        let priced = price(&derived.job, sizes, &catalogue, &ruled.rules, &asked);
        if let Some(path) = &self.why {
            let text = why(path, &priced.working, sizes.unit(), self.json)?;
            desk.terminal.data(&text)?;
            return Ok(Exit::Done);
        }
        let text = if self.json {
            let value = wire::price_of(sizes, &priced, self.shop_copy);
            format!("{value:#}\n")
        } else {
            report::of_price(&priced, &ruled.rules, self.shop_copy).render(desk.terminal)
        };
        desk.terminal.data(&text)?;
        let faults = [&sizes.faults[..], &priced.faults].concat();
        job_file::tell(&self.file, &faults, desk);
        Ok(if sizes.is_refused() || priced.is_refused() {
            Exit::Refused
        } else {
            Exit::Done
        })
    }
}
