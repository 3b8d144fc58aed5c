//! Ultraviolet at the art, behind its glazing.

use std::sync::LazyLock;

use serde::Deserialize;
use trade::SourcedStatus;
use working::{Figure, Rule, Stated, Subject, Worked, Working};

use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::{Text, Trust, lasting, rows, status, within};

static CONTENT: Rule = cited(
    "light.uv",
    "glazing lets a share of the ultraviolet through; visible light is taken as unchanged",
    "at_art = content × transmittance",
    "L6",
);
static IRRADIANCE: Rule = cited(
    "light.uv_irradiance",
    "irradiance is ultraviolet for each lumen times the light: 1 µW/lm at 1 lx is 1 µW/m²",
    "irradiance = content × lux × transmittance ÷ 1000",
    "L6",
);
static WITHIN: Rule = cited(
    "light.uv_within",
    "what reaches the art lies within the limit or on it",
    "within = found ≤ limit + limit ÷ 1000000000",
    "L6",
);

/// A figure of the ultraviolet table.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct UvFigure {
    /// What it is.
    #[serde(deserialize_with = "lasting")]
    pub item: Text,
    /// How much.
    pub value: f64,
    /// Its unit, as the table writes it.
    #[serde(deserialize_with = "lasting")]
    pub unit: Text,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
}

impl UvFigure {
    /// Where it is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }

    /// The row about this item.
    ///
    /// Errors: no such item panics; a test tries all that the program asks for.
    pub fn named(item: &str) -> &'static Self {
        let found = ULTRAVIOLET.iter().find(|row| row.item == item);
        found.unwrap_or_else(|| panic!("{item} stands in the ultraviolet table"))
    }
}

/// The ultraviolet table.
pub static ULTRAVIOLET: LazyLock<Vec<UvFigure>> =
    LazyLock::new(|| rows(include_str!("../../data/light_uv.csv")));

/// Ultraviolet that reaches the art.
#[derive(Clone, Copy, Debug)]
pub struct UvAtArt {
    /// For each lumen, µW/lm.
    pub content: Worked<Figure>,
    /// On the art, mW/m².
    pub irradiance: Worked<Figure>,
}

/// Ultraviolet at the art behind a glazing that lets this share of it through.
///
/// at art = content × transmittance; irradiance = content × lux × transmittance ÷ 1000
///
/// Units:  µW/lm, lx, share; µW/lm and mW/m².
/// Errors: a content, a light or a share outside what can be.
/// Source: definitions; a meter's handbook. Checked in `suite/ref/reference`.
/// Example: 150 µW/lm at 200 lx behind nothing: 30 mW/m².
pub fn behind(
    content: Stated<Figure>,
    lux: Stated<Figure>,
    transmittance: Stated<Figure>,
    working: &mut Working,
) -> Result<UvAtArt, Refusal> {
    let uv = within("uv", content.value)?;
    let light = within("lux", lux.value)?;
    let share = within("share", transmittance.value)?;
    let both = [
        ("content", content.into()),
        ("transmittance", transmittance.into()),
    ];
    let subject = |quantity| Subject::of("light", quantity);
    let all = [both[0], both[1], ("lux", lux.into())];
    let milli = 1e-3; // geometry: a prefix
    Ok(UvAtArt {
        content: figure(
            working,
            &CONTENT,
            subject("uv"),
            &both,
            (uv * share, "µW/lm"),
        ),
        irradiance: figure(
            working,
            &IRRADIANCE,
            subject("uv_irradiance"),
            &all,
            (uv * light * share * milli, "mW/m²"),
        ),
    })
}

impl UvAtArt {
    /// Whether a figure of it lies within a limit or on it.
    pub fn is_within(
        found: Worked<Figure>,
        limit: Stated<Figure>,
        working: &mut Working,
    ) -> Worked<bool> {
        let inputs = [("found", found.into()), ("limit", limit.into())];
        let most = limit.value.value() + limit.value.value() / 1e9; // geometry: a float's grain
        let holds = found.value.value() <= most;
        working.by(&WITHIN, Subject::of("light", "uv_within"), &inputs, holds)
    }
}
