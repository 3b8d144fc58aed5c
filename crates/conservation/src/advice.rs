//! Advice: what will harm a piece, with the number, the rule, the source, and changes that cure it.
//!
//! A change is proposed only once it was tried: applied to the document, the piece derived and looked at
//! again, the advice gone and no other in its place ([`Trial`]).

mod adhesive;
mod attachment;
mod boards;
mod change;
mod climate;
mod light;
mod place;
mod sized;
mod surroundings;
mod trial;

use measure::{Length, Toward};
use sizing::{Fault, Sizes};
use trade::settings::cited;
use trade::{Catalogue, Coating, Job, Level, Material, Medium, Pane, Settings};
use working::{LineId, Working};

use crate::caution::{self, Caution};
use crate::refusal::Refusal;
use crate::spoken::said;

pub use change::{Change, Move};
pub(crate) use surroundings::ultraviolet;
pub use surroundings::{OutsideWall, Surroundings};
pub use trial::{Look as LookOver, Trial};

/// One piece of advice.
#[derive(Clone, Debug)]
pub struct Advice {
    /// What is wrong, what is allowed and what would cure it, in words; its severity and its line.
    pub fault: Fault,
    /// Whose rule it is and how far it can be trusted.
    pub source: String,
    /// Lines of [`Advised::working`] that hold its numbers, the one it rests on first.
    pub lines: Vec<LineId>,
    /// Changes of the document, each of which cures it by itself.
    pub changes: Vec<Change>,
    /// What must stand beside it wherever it is shown, where somebody or the art could be hurt.
    pub cautions: Vec<Caution>,
}

/// All advice on a piece, the worst first.
#[derive(Clone, Debug, Default)]
pub struct Advised {
    /// The advice.
    pub advice: Vec<Advice>,
    /// The working its numbers stand in: the sizes' own lines, then those of the advice.
    pub working: Working,
}

/// Everything that will harm a piece, each with the changes that cure it.
///
/// Shape:  what sizes reveal by themselves ([`Sizes::faults`]) comes too where a change cures it. How the
///         piece hangs is not looked at: `hanging::advice` looks at both, and tries every change on both.
/// Errors: none; what can't be worked out for want of a number is left out, and a number of the document
///         outside what can be is an advice of its own.
pub fn advice(job: &Job, sizes: &Sizes, catalogue: &Catalogue, shop: &Settings) -> Advised {
    let look = |job: &Job, sizes: &Sizes| looked_over(job, sizes, catalogue).faults();
    let trial = Trial::of(job, sizes, catalogue, shop, &look);
    let mut advised = looked_over(job, sizes, catalogue);
    advised.keep_cures(&trial);
    advised
}

impl Advised {
    /// The faults alone.
    pub fn faults(&self) -> Vec<Fault> {
        let faults = self.advice.iter().map(|advice| advice.fault.clone());
        faults.collect()
    }

    /// Leaves each advice only the changes that a trial proves, adds advice on what the sizes revealed
    /// where a change cures it, and puts the worst first.
    pub fn keep_cures(&mut self, trial: &Trial<'_>) {
        trial.keep_cures(&mut self.advice);
        self.advice.extend(trial.of_sizes());
        let worst = |advice: &Advice| std::cmp::Reverse(advice.fault.severity);
        self.advice.sort_by_key(worst);
    }
}

/// Looks a piece over; the changes are not tried yet.
///
/// Errors: as [`advice()`].
pub fn looked_over(job: &Job, sizes: &Sizes, catalogue: &Catalogue) -> Advised {
    let mut look = Look {
        job,
        sizes,
        catalogue,
        around: Surroundings::of(job, &sizes.settings),
        working: sizes.working.clone(),
        advice: Vec::new(),
    };
    look.light();
    look.boards();
    look.attachment();
    look.climate();
    look.place();
    Advised {
        advice: look.advice,
        working: look.working,
    }
}

/// A piece being looked over.
struct Look<'a> {
    job: &'a Job,
    sizes: &'a Sizes,
    catalogue: &'a Catalogue,
    around: Surroundings,
    working: Working,
    advice: Vec<Advice>,
}

impl Look<'_> {
    fn settings(&self) -> &Settings {
        &self.sizes.settings
    }

    /// A length that stands on a mark, or is read as the nearest.
    fn say(&self, length: Length) -> String {
        said(length, self.job.units.unit(), Toward::Nearest)
    }

    /// A length that is feared: never less than it is.
    fn say_up(&self, length: Length) -> String {
        said(length, self.job.units.unit(), Toward::Up)
    }

    /// A length that is left: never more than it is.
    fn say_down(&self, length: Length) -> String {
        said(length, self.job.units.unit(), Toward::Down)
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
            cautions: caution::beside(fault.code),
            fault,
            source: source.into(),
            lines,
            changes,
        });
    }

    /// A number of the document outside what can be, said once.
    fn refused(&mut self, refusal: &Refusal) {
        let fault = Fault::warn("place.number", "Place", refusal.to_string(), "", "");
        let said = |advice: &Advice| advice.fault == fault;
        if !self.advice.iter().any(said) {
            self.push(
                fault,
                "no source: a number that can't be",
                Vec::new(),
                Vec::new(),
            );
        }
    }

    /// The medium of the first piece of art.
    fn medium(&self) -> Medium {
        self.job
            .art
            .first()
            .map(|art| art.medium)
            .unwrap_or_default()
    }

    /// Whether the level promised is conservation or above.
    fn conserves(&self) -> bool {
        self.job.identity.level >= Some(Level::Conservation)
    }
}

/// What a source of this code says, as people read it; `CP` is common practice.
///
/// Errors: a code that is not listed panics; every advice is given by a test.
fn of_source(code: &str) -> String {
    if code == "CP" {
        return "common practice, no source".to_owned();
    }
    cited(code).to_string()
}

/// Materials that a change could name: codes, in the catalogue's order.
fn codes<'a>(
    catalogue: &'a Catalogue,
    fits: impl Fn(&Material) -> bool + 'a,
) -> impl Iterator<Item = String> + 'a {
    let found = catalogue.iter().filter(move |material| fits(material));
    found.map(|material| material.code.clone())
}

/// Whether a pane gathers static that lifts loose media.
fn gathers_static(material: &Material) -> bool {
    material.pane == Some(Pane::Acrylic) && material.coating != Some(Coating::Antistatic)
}

#[cfg(test)]
mod tests;
