//! Where a piece will hang, as its document says and the shop's settings have the rest.

use measure::Length;
use trade::{Job, Key, Lamp, Settings, WallSide};
use working::{Figure, Stated};

use crate::climate::Air;
use crate::light::{Media, Showing, UvFigure, media_named};
use crate::refusal::Refusal;
use crate::table::Fact;

/// Where a piece will hang: its light, its air, its wall.
#[derive(Clone, Debug)]
pub struct Surroundings {
    /// Its light; what nobody said is the shop's wall at home.
    pub showing: Showing,
    /// What lights it, where somebody said.
    pub lamp: Option<Lamp>,
    /// Ultraviolet in that light, µW/lm; where nobody said, daylight's.
    pub uv: Stated<Figure>,
    /// What the art is, better known than by the document's medium.
    pub media: Option<&'static Media>,
    /// Why what the document calls the art's colours is not known.
    pub unknown_colours: Option<Refusal>,
    /// The room's air while it is cold outdoors.
    pub room: Air,
    /// The outside wall it hangs on, where it does.
    pub outside_wall: Option<OutsideWall>,
    /// How far it stands off its wall, where somebody said.
    pub off_wall: Option<Stated<Length>>,
}

/// An outside wall in the cold.
#[derive(Clone, Copy, Debug)]
pub struct OutsideWall {
    /// Outdoors, °C.
    pub outdoors: Stated<Figure>,
    /// Heat it lets through, W/(m²K).
    pub transmittance: Stated<Figure>,
}

impl Surroundings {
    /// The place that the document names; what it leaves out is as the shop has it.
    ///
    /// Errors: none here; a number outside what can be is refused where it is worked with.
    pub fn of(job: &Job, settings: &Settings) -> Self {
        let place = job.place.clone().unwrap_or_default();
        let figure = |stated: Option<i64>, key: Key, unit| match stated {
            Some(count) => Stated::job(of_count(count, unit)),
            None => Stated::setting(key.id(), of_count(settings.count(key), unit)),
        };
        let showing = Showing {
            lux: figure(place.lux.map(i64::from), Key::RoomLux, "lx"),
            hours: figure(place.hours.map(i64::from), Key::LightHours, "h"),
            days: figure(place.days.map(i64::from), Key::LightDays, "d"),
        };
        let room = Air {
            celsius: figure(place.celsius.map(i64::from), Key::RoomTemperature, "°C"),
            humidity: figure(place.humidity.map(i64::from), Key::HeatedRoom, "% RH"),
            pressure: Fact::named("air.pressure").only(),
        };
        let outdoors = figure(place.outdoors.map(i64::from), Key::Outdoors, "°C");
        let named = job.art.first().and_then(|art| art.colours.as_deref());
        let (media, unknown_colours) = match named.map(media_named) {
            None => (None, None),
            Some(Ok(media)) => (Some(media), None),
            Some(Err(refusal)) => (None, Some(refusal)),
        };
        let bumpers = job.hardware.as_ref().and_then(|found| found.bumpers);
        Self {
            showing,
            lamp: place.lamp,
            uv: ultraviolet(place.lamp, settings),
            media,
            unknown_colours,
            room,
            outside_wall: place
                .wall
                .and_then(wall_fact)
                .map(|transmittance| OutsideWall {
                    outdoors,
                    transmittance,
                }),
            off_wall: bumpers.map(|bumpers| Stated::job(*bumpers)),
        }
    }
}

/// A whole number as a figure.
fn of_count(count: i64, unit: &'static str) -> Figure {
    let count = i32::try_from(count).unwrap_or(i32::MAX);
    Figure::of(f64::from(count), unit)
}

/// Heat that an outside wall lets through; none for an inner one.
fn wall_fact(side: WallSide) -> Option<Stated<Figure>> {
    match side {
        WallSide::Inner => None,
        WallSide::Outer => Some(Fact::named("wall.solid").only()),
        WallSide::OuterInsulated => Some(Fact::named("wall.insulated").only()),
    }
}

/// Ultraviolet in the light of a lamp, µW/lm; where nobody said, as much as daylight may hold.
pub(crate) fn ultraviolet(lamp: Option<Lamp>, settings: &Settings) -> Stated<Figure> {
    let item = match lamp {
        None | Some(Lamp::Daylight) => {
            let key = Key::UvContent;
            return Stated::setting(key.id(), of_count(settings.count(key), "µW/lm"));
        }
        Some(Lamp::Led) => "UV from white LED, typical",
        Some(Lamp::Incandescent) => "UV from 60 W incandescent",
        Some(Lamp::Fluorescent) => "UV from fluorescent tubes, highest",
    };
    let row = UvFigure::named(item);
    Stated::table(row.trust().code(), Figure::of(row.value, "µW/lm"))
}
