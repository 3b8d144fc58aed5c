//! What another lamp, place or glazing would buy.

use sizing::{GlazingSizes, Sizes};
use trade::{Catalogue, Coating, Job, Key, Lamp, Material, Pane, Settings};
use working::{Figure, Stated, Worked, Working};

use super::exposure::Showing;
use super::fade::years;
use super::limit::{Limit, days_a_year, limit_of};
use super::medium::{Class, PLACES, media_of};
use super::ultraviolet::{UvFigure, behind};
use crate::advice::{Change, Surroundings};
use crate::refusal::Refusal;
use crate::rules::Span;

/// What plain glass stops, of the ultraviolet table.
const PLAIN: &str = "UV blocked by plain 2-3 mm float glass";
/// What filtering glazing stops at least.
const FILTERING: &str = "UV blocked by conservation-grade glazing, lower claim";

/// How long a piece lasts in one kind of light.
#[derive(Clone, Debug)]
pub struct Kept {
    /// The light and the glazing, in words.
    pub what: String,
    /// Years to a just noticeable fade, from the first of its class to the last.
    pub years: Span,
    /// Days a year it may be shown within the limit of the shop's scheme; none where that sets none.
    pub days: Option<Worked<Figure>>,
    /// Whether ultraviolet counts as removed.
    pub without_uv: bool,
    /// The change of the document that brings it; none for what is.
    pub change: Option<Change>,
}

/// How long a piece lasts as it is to hang, and otherwise.
#[derive(Clone, Debug)]
pub struct Outlook {
    /// The class of sensitivity it is taken for.
    pub class: Class,
    /// As it is.
    pub now: Kept,
    /// With one thing changed, the longest first.
    pub would: Vec<Kept>,
    /// The working its numbers stand in, the sizes' own lines first.
    pub working: Working,
}

/// How long a piece lasts as it is to hang, and what another lamp, place or glazing would buy.
///
/// Shape:  none for what light does not fade. Each alternative changes one thing: a sheet that filters
///         ultraviolet, lamps without it, half the light, a museum's light, half the days.
/// Units:  years, days of display a year.
/// Errors: a light or a time of the document outside what can be.
/// Source: as [`years`].
pub fn outlook(
    job: &Job,
    sizes: &Sizes,
    catalogue: &Catalogue,
) -> Result<Option<Outlook>, Refusal> {
    let around = Surroundings::of(job, &sizes.settings);
    let medium = job.art.first().map(|art| art.medium).unwrap_or_default();
    let class = around.media.unwrap_or_else(|| media_of(medium)).category;
    let mut working = sizes.working.clone();
    let passed = passed_by(sizes.glazing.first());
    let mut scene = Scene {
        class,
        settings: &sizes.settings,
        working: &mut working,
    };
    let Some(now) = scene.kept(&around.showing, (around.uv, passed), "as it is", None)? else {
        return Ok(None);
    };
    let mut would = Vec::new();
    for (what, showing, light, change) in alternatives(&around, sizes, catalogue, passed) {
        would.extend(scene.kept(&showing, light, &what, Some(change))?);
    }
    would.retain(|kept| kept.years.low.value.value() > now.years.low.value.value());
    would.sort_by(|a, b| {
        let low = |kept: &Kept| kept.years.low.value.value();
        low(b).total_cmp(&low(a))
    });
    Ok(Some(Outlook {
        class,
        now,
        would,
        working,
    }))
}

/// The share of ultraviolet that glazing lets through; all of it where there is none.
pub(crate) fn passed_by(glazing: Option<&GlazingSizes>) -> Stated<Figure> {
    let coating = glazing.and_then(|pane| pane.sheet.material.as_ref()?.coating);
    let item = match (glazing, coating) {
        (None, _) => return Stated::job(Figure::of(1.0, "")),
        (_, Some(coating)) if stops_ultraviolet(coating) => FILTERING,
        _ => PLAIN,
    };
    stopped_by(item)
}

fn stopped_by(item: &str) -> Stated<Figure> {
    let row = UvFigure::named(item);
    Stated::table(row.trust().code(), Figure::of(1.0 - row.value, ""))
}

/// Whether a fade counts without ultraviolet: the glazing stops most of it, or hardly any reaches the art.
pub(crate) fn counts_as_removed(
    at_art: Worked<Figure>,
    passed: Stated<Figure>,
    settings: &Settings,
) -> bool {
    let count = |key: Key| f64::from(i32::try_from(settings.count(key)).unwrap_or(i32::MAX));
    let stopped = 100.0 * (1.0 - passed.value.value()); // geometry: per cent
    let strictest = UvFigure::named("UV limit, current good practice and CIE 157");
    stopped >= count(Key::UvRemovedFrom) || at_art.value.value() <= strictest.value
}

/// Sheets of the catalogue that filter ultraviolet, of the pane it has where that is known.
pub(crate) fn filtering_sheets(sizes: &Sizes, catalogue: &Catalogue) -> Vec<String> {
    let Some(glazing) = sizes.glazing.first() else {
        return Vec::new();
    };
    let of_pane = |material: &Material| glazing.pane.is_none() || material.pane == glazing.pane;
    let fits =
        |material: &&Material| material.coating.is_some_and(stops_ultraviolet) && of_pane(material);
    let found = catalogue.iter().filter(fits);
    found.map(|material| material.code.clone()).collect()
}

/// Whether a pane stops ultraviolet, as its coating tells.
const fn stops_ultraviolet(coating: Coating) -> bool {
    matches!(coating, Coating::Ultraviolet)
}

type Light = (Stated<Figure>, Stated<Figure>);

/// One thing changed: in words, the light, what the glazing passes, the change.
fn alternatives(
    around: &Surroundings,
    sizes: &Sizes,
    catalogue: &Catalogue,
    passed: Stated<Figure>,
) -> Vec<(String, Showing, Light, Change)> {
    let showing = around.showing;
    let same = (around.uv, passed);
    let mut found = Vec::new();
    if let Some(sheet) = filtering_sheets(sizes, catalogue).into_iter().next() {
        let word = match sizes.glazing.first().and_then(|pane| pane.pane) {
            Some(Pane::Acrylic) => "acrylic",
            _ => "glass",
        };
        let change = Change::SetGlazing { index: 0, sheet };
        let light = (around.uv, stopped_by(FILTERING));
        found.push((
            format!("behind {word} that filters ultraviolet"),
            showing,
            light,
            change,
        ));
    }
    let led = crate::advice::ultraviolet(Some(Lamp::Led), &sizes.settings);
    let change = Change::SetLamp(Lamp::Led);
    let what = format!("by {} alone", Lamp::Led.word());
    found.push((what, showing, (led, passed), change));
    let dimmest = PLACES.iter().map(|place| place.lux_lo);
    let dimmest = dimmest.fold(f64::INFINITY, f64::min);
    for lux in [showing.lux.value.value() / 2.0, dimmest] {
        let Some(lux) = whole(lux) else { continue };
        let own = Showing {
            lux: Stated::job(Figure::of(f64::from(lux), "lx")),
            ..showing
        };
        found.push((format!("at {lux} lx"), own, same, Change::ShowAt(lux)));
    }
    if let Some(days) = whole(showing.days.value.value() / 2.0) {
        let own = Showing {
            days: Stated::job(Figure::of(f64::from(days), "d")),
            ..showing
        };
        let what = format!("shown {days} days a year");
        found.push((what, own, same, Change::ShowDays(days)));
    }
    found
}

struct Scene<'a> {
    class: Class,
    settings: &'a Settings,
    working: &'a mut Working,
}

impl Scene<'_> {
    fn kept(
        &mut self,
        showing: &Showing,
        (content, passed): Light,
        what: &str,
        change: Option<Change>,
    ) -> Result<Option<Kept>, Refusal> {
        let at_art = behind(content, showing.lux, passed, self.working)?;
        let without_uv = counts_as_removed(at_art.content, passed, self.settings);
        let span = years(self.class, without_uv, showing, self.settings, self.working)?;
        let Some(years) = span else { return Ok(None) };
        let limit = limit_of(self.class, self.settings).and_then(Limit::stated);
        let days = limit
            .map(|limit| days_a_year(limit, showing.lux, showing.hours, self.working))
            .transpose()?;
        Ok(Some(Kept {
            what: what.to_owned(),
            years,
            days,
            without_uv,
            change,
        }))
    }
}

/// The whole number at or below, where it is one or more.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "what is between one and a million fits"
)]
pub(crate) fn whole(value: f64) -> Option<u32> {
    let down = value.floor();
    (1.0..=1e6).contains(&down).then_some(down as u32) // geometry: more than any light or year
}

#[cfg(test)]
mod tests;
