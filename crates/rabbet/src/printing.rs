//! What is asked of everything that goes to a printer: paper, date, the shop's name.

use clap::{Args, ValueEnum};
use jiff::civil::Date;
use jiff::{Timestamp, Zoned, tz::TimeZone};
use paperwork::{Paper, Stamp};

/// How a sheet is printed.
#[derive(Args, Clone, Debug)]
pub struct Printing {
    /// The paper in the printer; left out: letter where inches are printed, a4 for millimetres
    #[arg(long, value_enum)]
    paper: Option<Sheet>,
    /// The day on the paper, as 2030-11-25; left out: today
    #[arg(long, value_name = "DAY", value_parser = day)]
    date: Option<Date>,
    /// The shop's name on the paper
    #[arg(long, value_name = "NAME", default_value = "")]
    pub shop_name: String,
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

impl Printing {
    /// The paper that was asked for, or the one usual where these units are.
    pub fn paper(&self, units: trade::Units) -> Paper {
        match (self.paper, units) {
            (Some(Sheet::A4), _) | (None, trade::Units::Millimetres) => Paper::A4,
            (Some(Sheet::Letter), _) | (None, trade::Units::Inches) => Paper::Letter,
        }
    }

    /// The paper that was asked for, where one was.
    pub fn paper_asked(&self) -> Option<Paper> {
        self.paper.map(|sheet| match sheet {
            Sheet::A4 => Paper::A4,
            Sheet::Letter => Paper::Letter,
        })
    }

    /// The day on the paper, and the moment the file says it was made.
    pub fn when(&self) -> (String, Stamp) {
        let (date, made) = match self.date {
            Some(date) => (date, date.at(0, 0, 0, 0)),
            None => (
                Zoned::now().date(),
                Timestamp::now().to_zoned(TimeZone::UTC).datetime(),
            ),
        };
        let stamp = Stamp {
            year: part(made.year()),
            month: part(made.month()),
            day: part(made.day()),
            hour: part(made.hour()),
            minute: part(made.minute()),
        };
        (date.to_string(), stamp)
    }
}

/// A part of a calendar date as paperwork holds it; a year before the common era becomes 0, which
/// paperwork refuses in its own words.
fn part<T: TryFrom<i64> + Default>(number: impl Into<i64>) -> T {
    T::try_from(number.into()).unwrap_or_default()
}
