//! Buffering: how long a package keeps its own humidity.

use working::{Figure, Rule, Stated, Subject, Worked, Working};

use super::air::saturated_vapour;
use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::within;

static SIMPLE: Rule = cited(
    "buffer.half_time_simple",
    "a package's humidity goes half way to the room's in the time its buffer takes to give or take the vapour that leaks",
    "half_time = ln(2) × reservoir × buffer ÷ (0.01 × saturated × changes)",
    "H21",
);
static FULL: Rule = cited(
    "buffer.half_time",
    "the air of the package counts too",
    "half_time = ln(2) ÷ changes × (1 + reservoir × buffer ÷ (0.01 × saturated))",
    "H21",
);

/// A package and what it holds.
#[derive(Clone, Copy, Debug)]
pub struct Buffer {
    /// Moisture given for each kilogram and each % RH, grams.
    pub reservoir: Stated<Figure>,
    /// Buffer in each cubic metre of free air, kilograms.
    pub buffer: Stated<Figure>,
    /// Changes of air a day.
    pub changes: Stated<Figure>,
    /// Temperature, °C.
    pub celsius: Stated<Figure>,
}

/// How long a package's humidity takes to go half way to the room's, days.
#[derive(Clone, Copy, Debug)]
pub struct HalfTime {
    /// By its buffer alone.
    pub simple: Worked<Figure>,
    /// Its air counted too.
    pub full: Worked<Figure>,
}

/// Half-time of a buffered package.
///
/// half-time = ln 2 ÷ N × (1 + M B ÷ (0.01 c)), c the vapour of saturated air, 17.3 g/m³ at 20 °C
///
/// Units:  g/(kg % RH), kg/m³, changes a day; days.
/// Errors: numbers outside what can be.
/// Source: Thomson 1977 (rederived from the moisture balance; rule from memory).
/// Example: wood, 20 kg/m³, one change a day: 129 days.
pub fn half_time(package: &Buffer, working: &mut Working) -> Result<HalfTime, Refusal> {
    let gives = within("reservoir", package.reservoir.value)?;
    let holds = within("buffer", package.buffer.value)?;
    let leaks = within("changes", package.changes.value)?;
    within("temperature", package.celsius.value)?;
    let saturated = saturated_vapour(package.celsius, working);
    let inputs = [
        ("reservoir", package.reservoir.into()),
        ("buffer", package.buffer.into()),
        ("changes", package.changes.into()),
        ("saturated", saturated.into()),
    ];
    let share = gives * holds / (0.01 * saturated.value.value()); // geometry: per cent
    let half = std::f64::consts::LN_2 / leaks;
    let subject = |quantity| Subject::of("package", quantity);
    Ok(HalfTime {
        simple: figure(
            working,
            &SIMPLE,
            subject("half_time_simple"),
            &inputs,
            (half * share, "days"),
        ),
        full: figure(
            working,
            &FULL,
            subject("half_time"),
            &inputs,
            (half * (1.0 + share), "days"),
        ),
    })
}
