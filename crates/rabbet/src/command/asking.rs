//! What is asked for beside the piece itself: the day, haste, discounts, exemption.

use clap::Args;
use jiff::Zoned;
use pricing::Asked;
use trade::Date;

use crate::problem::{Kind, Problem, Trouble};

/// What is asked beside the piece.
#[derive(Args, Clone, Debug)]
pub struct Asking {
    /// Wanted sooner than usual
    #[arg(long)]
    rush: bool,
    /// A discount of the rule set, by its id; may be said several times
    #[arg(long = "discount", value_name = "ID")]
    discounts: Vec<String>,
    /// The customer is exempt from tax
    #[arg(long)]
    exempt: bool,
    /// The day costs are taken on, as 2030-11-25; left out: today
    #[arg(long, value_name = "DAY", value_parser = day)]
    on: Option<Date>,
}

impl Asking {
    /// As the price takes it.
    ///
    /// # Errors
    /// A clock that tells no day of the calendar.
    pub fn asked(&self) -> Result<Asked, Trouble> {
        Ok(Asked {
            day: on(self.on)?,
            rush: self.rush,
            discounts: self.discounts.clone(),
            exempt: self.exempt,
        })
    }
}

/// The day that was typed, else today.
///
/// # Errors
/// A clock that tells no day of the calendar.
pub fn on(typed: Option<Date>) -> Result<Date, Trouble> {
    match typed {
        Some(day) => Ok(day),
        None => Date::read(&Zoned::now().date().to_string()).map_err(|fault| {
            Trouble::one(Kind::Input, Problem::new("prices.today", fault.to_string()))
        }),
    }
}

/// A day as it is typed.
pub fn day(text: &str) -> Result<Date, String> {
    Date::read(text).map_err(|_| "write a day of the calendar as 2030-11-25".to_owned())
}
