//! Yearly limits of exposure, as schemes have them.

use std::sync::LazyLock;

use serde::Deserialize;
use trade::{Key, Settings, SourcedStatus};
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use super::medium::Class;
use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::{Text, Trust, lasting, rows, status, within};

static DAYS: Rule = cited(
    "light.days",
    "days of display a year are the year's limit over a day's exposure",
    "days = limit ÷ (lux × hours)",
    "L3",
);

/// A limit of one scheme for one class.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Limit {
    /// Whose it is.
    #[serde(deserialize_with = "lasting")]
    pub scheme: Text,
    /// The class as the scheme calls it.
    #[serde(deserialize_with = "lasting")]
    pub category: Text,
    /// Its blue wools, `1-3`; empty where the scheme names none.
    #[serde(deserialize_with = "lasting")]
    pub blue_wool_range: Text,
    /// Highest light, lux.
    #[serde(rename = "illuminance_limit_lx")]
    pub lux: Option<f64>,
    /// Highest exposure in a year, lux hours.
    #[serde(rename = "annual_exposure_limit_lxh")]
    pub yearly: Option<f64>,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
}

/// All limits of all schemes.
pub static LIMITS: LazyLock<Vec<Limit>> =
    LazyLock::new(|| rows(include_str!("../../data/light_limits.csv")));

impl Limit {
    /// Where it is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }

    /// Its yearly exposure, on its way into a line.
    pub fn stated(&self) -> Option<Stated<Figure>> {
        let yearly = self.yearly?;
        Some(Stated::table(
            self.trust().code(),
            Figure::of(yearly, "lx h"),
        ))
    }

    /// Whether it is meant for the class.
    fn is_for(&self, class: Class) -> bool {
        class.names().contains(&self.category)
    }
}

/// The limit for a class by the scheme the shop chose.
///
/// Shape:  none where the scheme sets none.
pub fn limit_of(class: Class, settings: &Settings) -> Option<&'static Limit> {
    let scheme = settings.choice(Key::LightScheme);
    let mut of_scheme = LIMITS.iter().filter(|limit| limit.scheme == scheme);
    of_scheme.find(|limit| limit.is_for(class))
}

/// Days a year a piece may be shown within a yearly limit.
///
/// days = limit ÷ (lux × hours)
///
/// Units:  days; above 365 it may hang all year.
/// Errors: a light or a time outside what can be.
/// Example: 15 000 lx h at 50 lx for 8 h: 37.5 days.
pub fn days_a_year(
    limit: Stated<Figure>,
    lux: Stated<Figure>,
    hours: Stated<Figure>,
    working: &mut Working,
) -> Result<Worked<Figure>, Refusal> {
    let daily = within("lux", lux.value)? * within("hours", hours.value)?;
    let inputs = [
        ("limit", limit.into()),
        ("lux", lux.into()),
        ("hours", hours.into()),
    ];
    let days = limit.value.value() / daily;
    let subject = Subject::of("light", "days");
    Ok(figure(
        working,
        &DAYS,
        subject,
        &inputs,
        (days, "days a year"),
    ))
}
