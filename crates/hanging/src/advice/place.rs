//! Places that ask for more: over people, in public, on stairs, where the ground shakes.

use conservation::Fact;
use conservation::advice::{Change, Move};
use conservation::caution::Caution;
use measure::Mass;
use sizing::Fault;
use trade::{Above, Hanger, Key, Pane, Site};

use super::{CUSTOM, Look};

impl Look<'_> {
    pub(super) fn place(&mut self) {
        let job = self.job;
        let Some(place) = job.place.as_ref() else {
            return;
        };
        self.breaking_glass(place);
        if let Some(above) = place.above.filter(|above| above.is_over_people()) {
            self.people(above);
        }
        if place.earthquakes {
            self.earthquakes();
        }
        if place.public && !matches!(self.plan.hanger, Hanger::Plates | Hanger::Cleat) {
            let fault = Fault::warn(
                "hanging.public",
                "Hardware",
                "it hangs in a public place by what a hand lifts off",
                "in public, keyed plates: two at the top, one that locks below",
                "Fix it with plates that only a tool opens",
            );
            let changes = vec![Change::SetHanger(Hanger::Plates)];
            self.push(fault, CUSTOM, Vec::new(), changes);
        }
        if place.stairs && self.plan.wire.is_some_and(|wire| wire.hooks == 1) {
            let fault = Fault::warn(
                "hanging.stairs",
                "Hardware",
                "on a stairway it hangs by a wire on one hook",
                "people brush past and turn it; two points hold it straight",
                "Hang it on two hooks, and fix its foot",
            );
            let changes = vec![Change::TwoHooks, Change::SetHanger(Hanger::Rings)];
            self.push(fault, CUSTOM, Vec::new(), changes);
        }
    }

    /// Glass where a broken pane hurts somebody.
    fn breaking_glass(&mut self, place: &Site) {
        let mut panes = self.sizes.glazing.iter();
        if panes.all(|pane| pane.pane == Some(Pane::Acrylic)) {
            return;
        }
        let over = place.above.filter(|above| above.is_over_people());
        let over = over.map(|above| format!("above {}", above.word()));
        let flags = [
            (place.children, "where children play"),
            (place.public, "in a public place"),
            (place.stairs, "on a stairway"),
            (place.earthquakes, "where the ground shakes"),
        ];
        let flags = flags.into_iter().filter(|(is, _)| *is);
        let flags = flags.map(|(_, word)| word.to_owned());
        let where_it_hurts: Vec<String> = over.into_iter().chain(flags).collect();
        if where_it_hurts.is_empty() {
            return;
        }
        let fault = Fault::warn(
            "glazing.breaks",
            "Glazing",
            format!("glass hangs {}", where_it_hurts.join(" and ")),
            "acrylic does not break into edges that cut",
            "Take acrylic",
        );
        let changes = self.acrylic();
        self.push(fault, CUSTOM, Vec::new(), changes);
    }

    /// Over people hangs only what is soft and light: without glazing, and light enough for a single ring.
    fn people(&mut self, above: Above) {
        let most = self.settings().count(Key::SingleRingTo);
        let light = self.mass() <= Mass::KILOGRAM.times(most);
        let known = self.plan.weight.uncounted().is_empty();
        if light && known && self.sizes.glazing.is_empty() {
            return;
        }
        let factor = self.settings().count(Key::PeopleFactor);
        let fault = Fault::warn(
            "hanging.people",
            "Place",
            format!(
                "{} of it hang above {}",
                self.plan.weight.sentence(),
                above.word()
            ),
            "nothing large or glazed hangs over a bed, a seat or a door",
            format!(
                "Hang it elsewhere; where it must hang there, every part is rated for {factor} times its load"
            ),
        );
        let lines = vec![self.plan.weight.total.line];
        let changes = vec![Change::Move(Move::FromPeople)];
        self.push(fault, Caution::OverPeople.source(), lines, changes);
    }

    fn earthquakes(&mut self) {
        if self.plan.hanger == Hanger::Wire && self.plan.wire.is_none_or(|wire| wire.hooks == 1) {
            let fault = Fault::warn(
                "hanging.earthquake",
                "Hardware",
                "where the ground shakes it hangs by a wire on one hook",
                "two points into studs, closed hooks or open ones bent until the wire only just passes",
                "Hang it on two closed hooks, with a stay at its foot",
            );
            let changes = vec![Change::SetHanger(Hanger::Rings), Change::TwoHooks];
            self.push(fault, Caution::Earthquake.source(), Vec::new(), changes);
        }
        let most = Fact::named("earthquake.stud");
        if self.mass().approx_kg() > most.low() {
            let fault = Fault::warn(
                "hanging.earthquake_weight",
                "Hardware",
                format!("it weighs {}", self.plan.weight.sentence()),
                format!(
                    "a closed hanger screwed to a stud serves to {}",
                    most.only().value
                ),
                "Have it fixed by someone licensed to fix such weights",
            );
            let lines = vec![self.plan.weight.total.line];
            let changes = self.acrylic();
            self.push(fault, most.trust().sentence(), lines, changes);
        }
    }
}
