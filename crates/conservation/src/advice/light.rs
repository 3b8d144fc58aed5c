//! Light on this piece.

use sizing::Fault;
use trade::{Key, Settings};
use working::{Figure, Stated, Worked};

use super::{Change, Look, of_source};
use crate::light::{
    Class, Limit, PLACES, Showing, UvAtArt, behind, counts_as_removed, days_a_year,
    filtering_sheets, limit_of, media_of, media_or_worse, passed_by, whole, years,
};
use crate::rules::Span;

impl Look<'_> {
    pub(super) fn light(&mut self) {
        let showing = self.around.showing;
        let known = self.around.media;
        let likely = known.unwrap_or_else(|| media_of(self.medium()));
        let worse = known.unwrap_or_else(|| media_or_worse(self.medium()));
        if likely.category == Class::None && worse.category == Class::None {
            return;
        }
        let removed = self.ultraviolet(&showing);
        self.fading(&showing, (likely.category, worse.category), removed);
        self.budget(&showing, likely.category);
    }

    /// Cautions of ultraviolet at the art; whether it counts as removed.
    fn ultraviolet(&mut self, showing: &Showing) -> bool {
        let passed = passed_by(self.sizes.glazing.first());
        let content = self.around.uv;
        let limit = self.figure(Key::UvLimit, "µW/lm");
        let found = match behind(content, showing.lux, passed, &mut self.working) {
            Ok(found) => found,
            Err(refusal) => {
                self.refused(&refusal);
                return false;
            }
        };
        let within = UvAtArt::is_within(found.content, limit, &mut self.working);
        if !within.value {
            let light = match self.around.lamp {
                Some(lamp) => format!("in the light of {}", lamp.word()),
                None => "in daylight".to_owned(),
            };
            let fault = Fault::warn(
                "light.uv",
                "Glazing",
                format!(
                    "{} of ultraviolet reaches the art {light}",
                    found.content.value
                ),
                format!("{} is the limit", limit.value),
                "Take glazing that filters ultraviolet, or lamps without; either slows fading and does not stop it",
            );
            let lines = vec![found.content.line, within.line];
            let sheets = filtering_sheets(self.sizes, self.catalogue).into_iter();
            let glazing = sheets.map(|sheet| Change::SetGlazing { index: 0, sheet });
            let changes = glazing.chain([Change::SetLamp(trade::Lamp::Led)]).collect();
            self.push(fault, of_source("L6"), lines, changes);
        }
        counts_as_removed(found.content, passed, self.settings())
    }

    fn fading(&mut self, showing: &Showing, (likely, worse): (Class, Class), removed: bool) {
        let settings = self.settings().clone();
        let span = |class, removed, look: &mut Self| -> Option<Span> {
            match years(class, removed, showing, &settings, &mut look.working) {
                Ok(span) => span,
                Err(refusal) => {
                    look.refused(&refusal);
                    None
                }
            }
        };
        let Some(found) = span(likely, removed, self) else {
            return;
        };
        let least = least_years(&settings);
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
        let changes = self.darker(showing, found.low.value.value() / least);
        self.push(fault, of_source("L3"), lines, changes);
    }

    /// Less light by this share: lamps as dim as a museum's at the least, fewer days, or both; filtering glass too.
    fn darker(&self, showing: &Showing, share: f64) -> Vec<Change> {
        let (lux, days) = (showing.lux.value.value(), showing.days.value.value());
        let dimmest = PLACES.iter().map(|place| place.lux_lo).fold(lux, f64::min);
        let dimmer = (lux * share).max(dimmest);
        let both = share * lux / dimmest;
        let mut changes: Vec<Change> = filtering_sheets(self.sizes, self.catalogue)
            .into_iter()
            .map(|sheet| Change::SetGlazing { index: 0, sheet })
            .collect();
        changes.extend(whole(dimmer).map(Change::ShowAt));
        changes.extend(whole(days * share).map(Change::ShowDays));
        if let (Some(lux), Some(days)) = (whole(dimmest), whole(days * both)) {
            changes.push(Change::All(vec![
                Change::ShowAt(lux),
                Change::ShowDays(days),
            ]));
        }
        changes
    }

    /// The year's light against the limit of the scheme the shop chose.
    fn budget(&mut self, showing: &Showing, class: Class) {
        let Some(limit) = limit_of(class, self.settings()) else {
            return;
        };
        let Some(stated) = limit.stated() else { return };
        let days = days_a_year(stated, showing.lux, showing.hours, &mut self.working);
        let days = match days {
            Ok(days) => days,
            Err(refusal) => return self.refused(&refusal),
        };
        if days.value.value() < showing.days.value.value() {
            self.over_budget(showing, class, limit, (stated, days));
        }
    }

    fn over_budget(
        &mut self,
        showing: &Showing,
        class: Class,
        limit: &Limit,
        (stated, days): (Stated<Figure>, Worked<Figure>),
    ) {
        let whole_days = days.value.value().floor();
        let (within, cure) = if whole_days < 1.0 {
            let cure = "Hang it where there is far less light".to_owned();
            ("less than a day".to_owned(), cure)
        } else {
            let cure = format!("Show it {whole_days} days a year, or with less light");
            (format!("{whole_days} days"), cure)
        };
        let fault = Fault::warn(
            "light.budget",
            "Art",
            format!("this light uses up its year's {} in {within}", stated.value),
            format!(
                "{} sets that for a medium of {}",
                limit.scheme,
                class.word()
            ),
            cure,
        );
        let share = days.value.value() / showing.days.value.value();
        let changes = self.darker(showing, share);
        self.push(fault, limit.trust().sentence(), vec![days.line], changes);
    }

    /// A whole-number setting as a figure.
    pub(super) fn figure(&self, key: Key, unit: &'static str) -> Stated<Figure> {
        let count = i32::try_from(self.settings().count(key)).unwrap_or(i32::MAX);
        Stated::setting(key.id(), Figure::of(f64::from(count), unit))
    }
}

/// Years under which the shop cautions.
fn least_years(settings: &Settings) -> f64 {
    let least = settings.count(Key::LeastYears);
    f64::from(i32::try_from(least).unwrap_or(i32::MAX))
}
