//! Light on this piece.

use sizing::Fault;
use trade::{Catalogue, Key, Pane};
use working::{Figure, Stated};

use super::{Change, Look, codes, of_source, stops_ultraviolet};
use crate::light::{
    Class, Showing, UvAtArt, UvFigure, behind, days_a_year, limit_of, media_of, media_or_worse,
    years,
};

/// What plain glass stops, of the ultraviolet table.
const PLAIN: &str = "UV blocked by plain 2-3 mm float glass";
/// What filtering glazing stops at least.
const FILTERING: &str = "UV blocked by conservation-grade glazing, lower claim";

impl Look<'_> {
    pub(super) fn light(&mut self) {
        let showing = self.around.showing;
        let showing = showing.unwrap_or_else(|| Showing::at_home(self.settings()));
        let likely = self.around.media.unwrap_or_else(|| media_of(self.medium()));
        let worse = self
            .around
            .media
            .unwrap_or_else(|| media_or_worse(self.medium()));
        if likely.category == Class::None && worse.category == Class::None {
            return;
        }
        let removed = self.ultraviolet(&showing);
        self.fading(&showing, (likely.category, worse.category), removed);
        self.budget(&showing, likely.category);
    }

    /// The share of ultraviolet the glazing lets through.
    fn transmittance(&self) -> Stated<Figure> {
        let material = self.sizes.glazing.first();
        let coating = material.and_then(|pane| pane.sheet.material.as_ref()?.coating);
        let item = match (material, coating) {
            (None, _) => return Stated::job(Figure::of(1.0, "")),
            (_, Some(coating)) if stops_ultraviolet(coating) => FILTERING,
            _ => PLAIN,
        };
        let row = UvFigure::named(item);
        Stated::table(row.trust().code(), Figure::of(1.0 - row.value, ""))
    }

    /// Cautions of ultraviolet at the art; whether it counts as removed.
    fn ultraviolet(&mut self, showing: &Showing) -> bool {
        let passed = self.transmittance();
        let content = self.figure(Key::UvContent, "µW/lm");
        let limit = self.figure(Key::UvLimit, "µW/lm");
        let Ok(found) = behind(content, showing.lux, passed, &mut self.working) else {
            return false;
        };
        let within = UvAtArt::is_within(found.content, limit, &mut self.working);
        if !within.value {
            let fault = Fault::warn(
                "light.uv",
                "Glazing",
                format!(
                    "{} of ultraviolet reaches the art in daylight",
                    found.content.value
                ),
                format!("{} is the limit", limit.value),
                "Take glazing that filters ultraviolet; it slows fading and does not stop it",
            );
            let lines = vec![found.content.line, within.line];
            let pane = self.sizes.glazing.first().map(|glazing| glazing.pane);
            let sheets = pane.map(|pane| filtering(self.catalogue, pane));
            let changes = sheets
                .into_iter()
                .flatten()
                .map(|sheet| Change::SetGlazing { index: 0, sheet });
            let changes = changes.collect();
            self.push(fault, of_source("L6"), lines, changes);
        }
        let stopped = 100.0 * (1.0 - passed.value.value()); // geometry: per cent
        stopped >= self.figure(Key::UvRemovedFrom, "%").value.value()
    }

    fn fading(&mut self, showing: &Showing, (likely, worse): (Class, Class), removed: bool) {
        let settings = self.settings().clone();
        let span = |class, removed, look: &mut Self| {
            years(class, removed, showing, &settings, &mut look.working)
                .ok()
                .flatten()
        };
        let Some(found) = span(likely, removed, self) else {
            return;
        };
        let least = settings.count(Key::LeastYears);
        let least = f64::from(i32::try_from(least).unwrap_or(i32::MAX));
        if found.low.value.value() >= least {
            return;
        }
        let mut lines = vec![found.low.line, found.high.line];
        let mut bought = Vec::new();
        if let Some(without) = (!removed).then(|| span(likely, true, self)).flatten() {
            lines.extend([without.low.line, without.high.line]);
            bought.push(format!("without ultraviolet {without}"));
        }
        bought.push("half the light doubles the years".to_owned());
        let doubt = match worse {
            worse if worse == likely => String::new(),
            worse => span(worse, removed, self)
                .map(|span| format!("; were it of {}, {span}", worse.word()))
                .unwrap_or_default(),
        };
        let fault = Fault::warn(
            "light.fade",
            "Art",
            format!(
                "at {} it fades noticeably within {found}, taken for a medium of {}{doubt}",
                showing.lux.value,
                likely.word()
            ),
            format!("the shop cautions under {least} years"),
            format!(
                "Hang it darker or for part of the year: {}",
                bought.join(", ")
            ),
        );
        self.push(fault, of_source("L3"), lines, Vec::new());
    }

    /// The year's light against the limit of the scheme the shop chose.
    fn budget(&mut self, showing: &Showing, class: Class) {
        let Some(limit) = limit_of(class, self.settings()) else {
            return;
        };
        let Some(stated) = limit.stated() else { return };
        let days = days_a_year(stated, showing.lux, showing.hours, &mut self.working);
        let Ok(days) = days else { return };
        if days.value.value() >= showing.days.value.value() {
            return;
        }
        let whole = days.value.value().floor();
        let fault = Fault::warn(
            "light.budget",
            "Art",
            format!(
                "this light uses up its year's {} in {whole} days",
                stated.value
            ),
            format!(
                "{} sets that for a medium of {}",
                limit.scheme,
                class.word()
            ),
            format!("Show it {whole} days a year, or with less light"),
        );
        self.push(fault, limit.trust().sentence(), vec![days.line], Vec::new());
    }

    /// A whole-number setting as a figure.
    pub(super) fn figure(&self, key: Key, unit: &'static str) -> Stated<Figure> {
        let count = i32::try_from(self.settings().count(key)).unwrap_or(i32::MAX);
        Stated::setting(key.id(), Figure::of(f64::from(count), unit))
    }
}

/// Sheets of the catalogue that filter ultraviolet, of this pane where it is known.
fn filtering(catalogue: &Catalogue, pane: Option<Pane>) -> Vec<String> {
    let fits = move |material: &trade::Material| {
        material.coating.is_some_and(stops_ultraviolet) && (pane.is_none() || material.pane == pane)
    };
    codes(catalogue, fits).collect()
}
