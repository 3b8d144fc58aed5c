//! Advice on how a piece hangs: what is too heavy, too flat, too slender or in the wrong place, with changes
//! that cure it.

mod place;

use conservation::advice::{Advice, Advised, Change, Trial};
use conservation::caution::beside;
use conservation::spoken::{said, weighs};
use measure::{Length, Mass, Toward, Unit};
use sizing::{Fault, Sizes};
use trade::{Catalogue, Hanger, Job, Key, Kind, Pane, Settings};
use working::LineId;

use crate::plan::{Hanging, RailPlan, WirePlan, hangs_after};
use crate::weight::least;

/// Everything that will harm a piece or bring it down, each with the changes that cure it.
///
/// Shape:  what `conservation` has to say comes too, and what the sizes reveal where a change cures it; every
///         change was tried on the document, and brings no other harm, of whichever room.
/// Errors: none; what can't be worked out for want of a number is left out, and no weight that nobody knows
///         counts as nothing without an advice that says so.
pub fn advice(job: &Job, sizes: &Sizes, catalogue: &Catalogue, shop: &Settings) -> Advised {
    let look = |job: &Job, sizes: &Sizes| looked_over(job, sizes, catalogue).faults();
    let trial = Trial::of(job, sizes, catalogue, shop, &look);
    let mut advised = looked_over(job, sizes, catalogue);
    advised.keep_cures(&trial);
    advised
}

/// Looks a piece over, its conservation and its hanging; the changes are not tried yet.
///
/// Errors: as [`advice()`].
pub fn looked_over(job: &Job, sizes: &Sizes, catalogue: &Catalogue) -> Advised {
    let conserved = conservation::advice::looked_over(job, sizes, catalogue);
    let plan = hangs_after(job, sizes, conserved.working);
    let mut look = Look {
        job,
        sizes,
        catalogue,
        plan: &plan,
        advice: conserved.advice,
    };
    if !job.frame.is_empty() {
        look.piece();
    }
    Advised {
        advice: look.advice,
        working: plan.working,
    }
}

const CUSTOM: &str = "common practice, no source";

/// A piece being looked over.
struct Look<'a> {
    job: &'a Job,
    sizes: &'a Sizes,
    catalogue: &'a Catalogue,
    plan: &'a Hanging,
    advice: Vec<Advice>,
}

impl Look<'_> {
    fn piece(&mut self) {
        self.sagging();
        if self.plan.hanger == Hanger::None {
            return;
        }
        self.unweighed();
        self.doubted();
        self.hanger();
        self.hooks();
        self.flat_wire();
        self.screws();
        self.lifting();
        self.place();
    }

    fn settings(&self) -> &Settings {
        &self.sizes.settings
    }

    fn push(
        &mut self,
        fault: Fault,
        source: impl Into<String>,
        lines: Vec<LineId>,
        changes: Vec<Change>,
    ) {
        let fault = match lines.first() {
            Some(line) => fault.because(*line),
            None => fault,
        };
        self.advice.push(Advice {
            cautions: beside(fault.code),
            fault,
            source: source.into(),
            lines,
            changes,
        });
    }

    fn unit(&self) -> Unit {
        self.job.units.unit()
    }

    /// A whole number of kilograms, as the shop reads it.
    fn kilograms(&self, count: i64) -> String {
        weighs(Mass::KILOGRAM.times(count), self.unit())
    }

    fn mass(&self) -> Mass {
        self.plan.weight.total.value
    }

    /// Parts nobody knows the weight of: every load is higher in truth.
    fn unweighed(&mut self) {
        let weight = &self.plan.weight;
        if weight.uncounted().is_empty() {
            return;
        }
        let fault = Fault::warn(
            "hanging.unweighed",
            "Weight",
            format!("it weighs {}", weight.sentence()),
            "a part that nobody weighed counts as nothing, and every load below is higher in truth",
            "Put the finished piece on a scale and state its `grams` under [hardware]",
        );
        let lines = vec![weight.total.line];
        self.push(fault, CUSTOM, lines, Vec::new());
    }

    /// A scale that shows less than half of what the known parts weigh.
    fn doubted(&mut self) {
        let Some(doubted) = self.plan.weight.doubted else {
            return;
        };
        let fault = Fault::warn(
            "hanging.scale",
            "Weight",
            format!(
                "its `grams` say {}, its known parts alone weigh {}",
                weighs(doubted, self.unit()),
                self.plan.weight.sentence()
            ),
            "a scale shows no less than half of what the parts come to; the parts are counted here",
            "Put the finished piece on a scale again and correct its `grams` under [hardware]",
        );
        let lines = vec![self.plan.weight.total.line];
        self.push(fault, CUSTOM, lines, Vec::new());
    }

    /// A hanger lighter than the weight asks for.
    fn hanger(&mut self) {
        let (stated, wanted) = (self.plan.hanger, &self.plan.choice);
        if rank(stated) >= rank(wanted.hanger) {
            return;
        }
        let fault = Fault::warn(
            "hanging.hardware",
            "Hardware",
            format!(
                "it hangs by wire or rings and weighs {}",
                self.plan.weight.sentence()
            ),
            format!("this weight takes {}", wanted.frame),
            format!("Use {}; in the wall, {}", wanted.frame, wanted.wall),
        );
        let changes = vec![Change::SetHanger(wanted.hanger)];
        let lines = vec![self.plan.weight.total.line];
        self.push(fault, CUSTOM, lines, changes);
    }

    /// A wire measured for one hook that its weight hangs on two.
    fn hooks(&mut self) {
        let Some(wire) = self.plan.wire.filter(|wire| wire.hooks > 1) else {
            return;
        };
        let marks = self.sizes.hangers.and_then(|hangers| hangers.wire);
        if marks.is_none_or(|marks| marks.hooks_apart.is_some()) {
            return;
        }
        let most = self.kilograms(self.settings().count(Key::OneHookTo));
        let fault = Fault::warn(
            "hanging.hooks",
            "Hardware",
            format!(
                "its wire is measured for one hook, and it weighs {}",
                self.plan.weight.sentence()
            ),
            format!("one hook serves to {most}; two wall points are safer than one"),
            "Measure its wire for two hooks",
        );
        let lines = vec![self.plan.weight.total.line, wire.run.tension.line];
        let source = trade::settings::cited("HP").to_string();
        self.push(fault, source, lines, vec![Change::TwoHooks]);
    }

    /// A wire so flat that it pulls many times the weight.
    fn flat_wire(&mut self) {
        let Some(WirePlan { run, .. }) = self.plan.wire else {
            return;
        };
        let least = self.settings().angle(Key::LeastWireAngle);
        if run.angle.value >= least {
            return;
        }
        let fault = Fault::warn(
            "hanging.flat_wire",
            "Hardware",
            run.sentence_in(self.unit()),
            format!("under {least} a wire pulls its rails inward"),
            "Leave the wire slacker, or hang it by rings on two hooks",
        );
        let lines = vec![run.angle.line, run.tension.line, run.inward.line];
        let changes = vec![Change::SetHanger(Hanger::Rings), Change::TwoHooks];
        self.push(fault, CUSTOM, lines, changes);
    }

    /// Hangers whose screws bear less than the pull on them.
    fn screws(&mut self) {
        let Some(screws) = self
            .plan
            .screws
            .filter(|screws| screws.actual.value.value() < 1.0)
        else {
            return;
        };
        let fault = Fault::warn(
            "hanging.screws",
            "Hardware",
            screws.sentence_in(self.unit()),
            "screws bear at least what pulls on them",
            "Take thicker or more screws, a slacker wire, or rings on two hooks",
        );
        let lines = vec![screws.actual.line, screws.held.line];
        let changes = vec![Change::SetHanger(Hanger::Rings), Change::TwoHooks];
        let source = trade::settings::cited("H1").to_string();
        self.push(fault, source, lines, changes);
    }

    /// A piece that one person should not lift alone.
    fn lifting(&mut self) {
        let guide = self.settings().count(Key::LiftGuide);
        let index = |lift: Option<crate::lift::Lifted>| lift.and_then(|lift| lift.index);
        let (bench, wall) = (index(self.plan.bench), index(self.plan.wall));
        // No index: the lift is outside what anybody should do alone.
        let strains = |lift: Option<crate::lift::Lifted>| {
            lift.is_some_and(|lift| lift.index.is_none_or(|index| index.value.value() > 1.0))
        };
        let heavy = self.mass() > Mass::KILOGRAM.times(guide);
        if !heavy && !strains(self.plan.bench) && !strains(self.plan.wall) {
            return;
        }
        let say = |index: Option<working::Worked<working::Figure>>| match index {
            Some(index) => {
                let times = conservation::rules::rough(index.value.value());
                format!("{times} times what one person should lift")
            }
            None => "more than one person should lift".to_owned(),
        };
        let fault = Fault::warn(
            "hanging.lift",
            "Handling",
            format!(
                "it weighs {}: {} to the bench, {} to the wall",
                self.plan.weight.sentence(),
                say(bench),
                say(wall)
            ),
            format!(
                "one person lifts to an index of 1, and {} close to the body at the most",
                self.kilograms(guide)
            ),
            "Lift it by two people, hang it from a platform, and clear the way before",
        );
        let lines = [bench, wall].into_iter().flatten();
        let mut lines: Vec<LineId> = lines.map(|index| index.line).collect();
        lines.push(self.plan.weight.total.line);
        let changes = self.acrylic();
        let source = trade::settings::cited("F1").to_string();
        self.push(fault, source, lines, changes);
    }

    /// Acrylic for every pane of glass, sheet by sheet of the catalogue.
    fn acrylic(&self) -> Vec<Change> {
        let panes = self.sizes.glazing.iter().enumerate();
        let glass: Vec<usize> = panes
            .filter(|(_, pane)| pane.pane != Some(Pane::Acrylic))
            .map(|(index, _)| index)
            .collect();
        if glass.is_empty() {
            return Vec::new();
        }
        let sheets = self.catalogue.iter().filter(|material| {
            material.kind == Some(Kind::Glazing) && material.pane == Some(Pane::Acrylic)
        });
        let each = sheets.map(|material| {
            let panes = glass.iter().map(|index| Change::SetGlazing {
                index: *index,
                sheet: material.code.clone(),
            });
            let mut panes: Vec<Change> = panes.collect();
            match (panes.pop(), panes.is_empty()) {
                (Some(only), true) => only,
                (last, _) => Change::All(panes.into_iter().chain(last).collect()),
            }
        });
        each.collect()
    }

    /// A bottom rail that gives way under the package.
    fn sagging(&mut self) {
        let Some(rail) = self.plan.rail.filter(|rail| rail.sag.is_too_much()) else {
            return;
        };
        let fault = self.sag_fault(&rail);
        let sag = rail.sag;
        let mut lines = vec![sag.free.line, sag.fixed.line, sag.lasting.line];
        lines.extend(rail.wanted.map(|wanted| wanted.line));
        lines.extend(rail.bar.map(|bar| bar.line));
        let mut changes = self.strainers(&rail);
        changes.extend(self.acrylic());
        let source = rail.wood.strength_trust().sentence();
        self.push(fault, source, lines, changes);
    }

    fn sag_fault(&self, rail: &RailPlan) -> Fault {
        let (sag, weight) = (&rail.sag, &self.plan.weight);
        let up = |length: Length| said(length, self.unit(), Toward::Up);
        let load = least(
            weight.package.value,
            &weight.uncounted_in_package(),
            self.unit(),
        );
        let helped = if rail.rail.helped.is_some() {
            ", its strainer with it,"
        } else {
            ""
        };
        let bars = rail.bar.map_or_else(
            || "stouter bars".to_owned(),
            |bar| format!("bars {} wide", up(bar.value)),
        );
        let cure = match rail.wanted {
            None => format!("Take a strainer with {bars}, a stiffer wood, or acrylic"),
            Some(wanted) => format!(
                "Add a strainer with {bars}, take acrylic, or {} of wood outside the rabbet",
                up(wanted.value)
            ),
        };
        Fault::warn(
            "hanging.sag",
            self.sizes
                .members
                .first()
                .map_or_else(String::new, |member| member.name.clone()),
            format!(
                "its bottom rail{helped} sags by {} to {} under a package of {load}, to {} after years",
                said(sag.fixed.value, self.unit(), Toward::Nearest),
                up(sag.free.value),
                up(sag.lasting.value)
            ),
            format!(
                "{} passes on this span",
                said(sag.allowed.value, self.unit(), Toward::Down)
            ),
            cure,
        )
    }

    /// Strainers whose bars make up what stiffness the rail lacks, and not less than the shop's least, alone
    /// and with strips on the frame's back.
    fn strainers(&self, rail: &RailPlan) -> Vec<Change> {
        let settings = self.settings();
        let wanted = rail.bar.map_or(Length::ZERO, |bar| bar.value);
        let width = wanted
            .max(settings.length(Key::FaceLight3))
            .up_to(settings.length(Key::RingStep));
        let bar = Change::AddStrainer {
            width,
            depth: settings.length(Key::HeightBand2),
            uprights: 1,
        };
        vec![bar.clone(), Change::All(vec![bar, Change::AddBuildUp])]
    }
}

const fn rank(hanger: Hanger) -> u8 {
    match hanger {
        Hanger::Wire | Hanger::None => 0,
        Hanger::Rings => 1,
        Hanger::Plates | Hanger::Cleat => 2,
    }
}

#[cfg(test)]
mod tests;
