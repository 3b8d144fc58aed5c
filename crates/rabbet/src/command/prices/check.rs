//! `rabbet prices check`

use clap::Args;
use sizing::Severity;
use trade::Date;
use web::wire;

use crate::command::asking::{day, on};
use crate::command::{Desk, job_file};
use crate::exit::{EXIT_CODES, Exit};
use crate::problem::Trouble;
use crate::shop::rules_of;

/// Looks a rule set over: rules that never match, that overlap, and parts nothing charges for
#[derive(Args, Debug)]
#[command(before_help = "Example: rabbet prices check prices.toml", after_help = EXIT_CODES)]
pub struct PricesCheck {
    /// The rule set; left out: the shop's own
    #[arg(value_name = "RULES")]
    rules: Option<String>,
    /// The day it is looked over on, as 2030-11-25; left out: today
    #[arg(long, value_name = "DAY", value_parser = day)]
    on: Option<Date>,
    /// As JSON
    #[arg(long)]
    json: bool,
}

impl PricesCheck {
    pub fn run(&self, desk: &Desk) -> Result<Exit, Trouble> {
        let own = match &self.rules {
            Some(file) => rules_of(file)?,
            None => desk.shop.rules()?,
        };
        let rules = &own.rules;
        let faults = rules.check(on(self.on)?);
        let stopping = faults
            .iter()
            .filter(|fault| fault.severity == Severity::Refuse)
            .count();
        let words = if self.json {
            format!("{:#}\n", wire::rules_checked(rules, &faults))
        } else {
            let verdict = match (faults.len(), stopping) {
                (0, _) => "nothing stands in the way".to_owned(),
                (1, 0) => "it can be used; mind one thing".to_owned(),
                (all, 0) => format!("it can be used; mind {all} things"),
                (_, 1) => "it can't be used yet: one thing stops it".to_owned(),
                (_, several) => format!("it can't be used yet: {several} things stop it"),
            };
            format!(
                "{}, {}, holds from {}: {} rules, {verdict}\n",
                rules.name,
                rules.currency(),
                rules.holds_from,
                rules.rules.len()
            )
        };
        desk.terminal.data(&words)?;
        job_file::tell(&own.file, &faults, desk);
        Ok(if stopping > 0 {
            Exit::Refused
        } else {
            Exit::Done
        })
    }
}
