//! A cold wall: what room air does at its surface, and the gap that cures it.

use measure::Length;
use trade::{Key, Settings};
use working::{Figure, Rule, Source, Stated, Status, Subject, Worked, Working};

use super::air::{Air, MoistAir, moist_air, saturation};
use crate::refusal::Refusal;
use crate::rules::{cited, figure};
use crate::table::{Fact, within};

static AT_SURFACE: Rule = cited(
    "wall.humidity",
    "room air at a colder surface keeps its vapour and so is damper: above 100 % water settles",
    "humidity = 100 × vapour ÷ saturation",
    "H17",
);
static CONDENSES: Rule = cited(
    "wall.condenses",
    "water settles on a surface colder than the dew point",
    "condenses = surface < dew_point",
    "H17",
);
static MOULDS: Rule = cited(
    "wall.mould",
    "mould grows where the air stays damp for weeks",
    "moulds = humidity > limit",
    "H13",
);
static SURFACE: Rule = Rule {
    id: "wall.surface",
    words: "a wall's inner surface is colder than the room by its share of the insulation between room and outdoors",
    formula: "surface = room - (room - outdoors) × transmittance × resistance",
    source: Source::CommonPractice,
    status: Status::CommonPractice,
};

/// Room air at a cold surface.
#[derive(Clone, Copy, Debug)]
pub struct ColdSurface {
    /// The room's air.
    pub air: MoistAir,
    /// Relative humidity at the surface; above 100 % water settles.
    pub humidity: Worked<Figure>,
    /// Whether water settles.
    pub condenses: Worked<bool>,
    /// Whether mould may grow within weeks.
    pub moulds: Worked<bool>,
}

/// What room air comes to at a surface of this temperature.
///
/// humidity = vapour of the room ÷ saturation at the surface
///
/// Units:  °C; % RH, above 100 where water settles.
/// Errors: as [`moist_air`].
/// Source: psychrometrics (H17); the limit for mould is a setting (75 % H13, 65 % H14).
/// Example: 20 °C and 50 % against 9 °C: 102 %, water settles.
pub fn cold_surface(
    room: &Air,
    surface: Stated<Figure>,
    settings: &Settings,
    working: &mut Working,
) -> Result<ColdSurface, Refusal> {
    let cold = within("temperature", surface.value)?;
    let air = moist_air(room, working)?;
    let held = saturation(surface, "surface_saturation", working);
    let inputs = [("vapour", air.vapour.into()), ("saturation", held.into())];
    let value = 100.0 * air.vapour.value.value() / held.value.value(); // geometry: per cent
    let subject = |quantity| Subject::of("wall", quantity);
    let humidity = figure(
        working,
        &AT_SURFACE,
        subject("humidity"),
        &inputs,
        (value, "% RH"),
    );
    let inputs = [
        ("surface", surface.into()),
        ("dew_point", air.dew_point.into()),
    ];
    let falls = cold < air.dew_point.value.value();
    let condenses = working.by(&CONDENSES, subject("condenses"), &inputs, falls);
    let limit = mould_from(settings);
    let inputs = [("humidity", humidity.into()), ("limit", limit.into())];
    let grows = value > limit.value.value();
    Ok(ColdSurface {
        air,
        humidity,
        condenses,
        moulds: working.by(&MOULDS, subject("mould"), &inputs, grows),
    })
}

/// The humidity from which mould is feared, as the shop has it.
fn mould_from(settings: &Settings) -> Stated<Figure> {
    let limit = i32::try_from(settings.count(Key::MouldFrom)).unwrap_or(i32::MAX);
    Stated::setting(Key::MouldFrom.id(), Figure::of(f64::from(limit), "% RH"))
}

/// The surface behind a piece, touching the wall and with a gap.
#[derive(Clone, Copy, Debug)]
pub struct WallGap {
    /// Behind a piece that lies against the wall.
    pub touching: ColdSurface,
    /// Behind one that stands off.
    pub apart: ColdSurface,
    /// How far it must stand off.
    pub gap: Length,
}

/// What a gap behind a piece changes on an outside wall.
///
/// surface = room − (room − outdoors) × U × resistance inside it
///
/// Shape:  without a gap the piece keeps the room's warmth from the wall, and the surface is colder;
///         with the gap that the shop asks for (about 20 mm) the room's air reaches it.
/// Units:  °C, W/m²K.
/// Errors: as [`cold_surface`].
/// Source: surface resistances are custom of the building trade; the gap is H12.
pub fn gap_behind(
    room: &Air,
    outdoors: Stated<Figure>,
    transmittance: Stated<Figure>,
    settings: &Settings,
    working: &mut Working,
) -> Result<WallGap, Refusal> {
    let warm = within("temperature", room.celsius.value)?;
    let cold = within("temperature", outdoors.value)?;
    let loss = within("transmittance", transmittance.value)?;
    let inside = Fact::named("wall.inside");
    let mut surface = |resistance: f64, quantity: &'static str| {
        let inputs = [
            ("room", room.celsius.into()),
            ("outdoors", outdoors.into()),
            ("transmittance", transmittance.into()),
            ("resistance", inside.stated(resistance).into()),
        ];
        let value = warm - (warm - cold) * loss * resistance;
        let subject = Subject::of("wall", quantity);
        figure(working, &SURFACE, subject, &inputs, (value, "°C"))
    };
    let touching = surface(inside.high(), "surface_touching");
    let apart = surface(inside.low(), "surface_apart");
    Ok(WallGap {
        touching: cold_surface(room, touching.into(), settings, working)?,
        apart: cold_surface(room, apart.into(), settings, working)?,
        gap: settings.length(Key::WallGap),
    })
}
