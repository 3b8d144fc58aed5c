//! Exposure: how much light falls on the art.

use trade::{Key, Settings};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::within;

static YEARLY: Rule = cited(
    "light.yearly",
    "exposure is light times time: 50 lx for ten hours is 250 lx for two",
    "exposure = lux × hours × days",
    "L3",
);
static TOTAL: Rule = cited(
    "light.total",
    "years of the same exposure add up",
    "total = exposure × years",
    "L3",
);

/// How a piece is shown.
#[derive(Clone, Copy, Debug)]
pub struct Showing {
    /// Light on the art, lux.
    pub lux: Stated<Figure>,
    /// Hours of light a day.
    pub hours: Stated<Figure>,
    /// Days of display a year.
    pub days: Stated<Figure>,
}

impl Showing {
    /// As someone asks.
    pub fn asked(lux: f64, hours: f64, days: f64) -> Self {
        Self {
            lux: Stated::job(Figure::of(lux, "lx")),
            hours: Stated::job(Figure::of(hours, "h")),
            days: Stated::job(Figure::of(days, "d")),
        }
    }

    /// On a wall at home, as the shop's settings have it.
    pub fn at_home(settings: &Settings) -> Self {
        let stated = |key: Key, unit| {
            let count = i32::try_from(settings.count(key)).unwrap_or(i32::MAX);
            Stated::setting(key.id(), Figure::of(f64::from(count), unit))
        };
        Self {
            lux: stated(Key::RoomLux, "lx"),
            hours: stated(Key::LightHours, "h"),
            days: stated(Key::LightDays, "d"),
        }
    }
}

/// The light of a year on the art, lux hours.
///
/// exposure = lux × hours × days
///
/// Errors: a light or a time outside what can be.
pub fn yearly(showing: &Showing, working: &mut Working) -> Result<Worked<Figure>, Refusal> {
    let lux = within("lux", showing.lux.value)?;
    let hours = within("hours", showing.hours.value)?;
    let days = within("days", showing.days.value)?;
    let inputs = [
        ("lux", showing.lux.into()),
        ("hours", showing.hours.into()),
        ("days", showing.days.into()),
    ];
    let subject = Subject::of("light", "yearly");
    let value = (lux * hours * days, "lx h");
    Ok(figure(working, &YEARLY, subject, &inputs, value))
}

/// Light that falls on the art.
#[derive(Clone, Copy, Debug)]
pub struct Exposure {
    /// In a year, lux hours.
    pub yearly: Worked<Figure>,
    /// Over the years asked for, lux hours.
    pub total: Worked<Figure>,
}

/// The light that falls on the art.
///
/// exposure = lux × hours × days; total = exposure × years
///
/// Units:  lux, hours a day, days a year; lux hours.
/// Errors: a light, a time or a number of years outside what can be.
/// Source: reciprocity, CIE 157:2004 (from memory); checked in `suite/ref/reference`.
/// Example: 50 lx for 8 h on 365 days: 146 000 lx h a year.
pub fn exposure(
    showing: &Showing,
    years: Stated<Figure>,
    working: &mut Working,
) -> Result<Exposure, Refusal> {
    let span = within("years", years.value)?;
    let yearly = yearly(showing, working)?;
    let inputs = [("exposure", yearly.into()), ("years", years.into())];
    let total = yearly.value.value() * span;
    let subject = Subject::of("light", "total");
    Ok(Exposure {
        yearly,
        total: figure(working, &TOTAL, subject, &inputs, (total, "lx h")),
    })
}
