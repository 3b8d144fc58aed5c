//! Advice: what will harm a piece, with the number, the rule, the source, and changes that cure it.
//!
//! A change is proposed only once it was tried: applied to the document, the piece derived and looked at
//! again, the advice gone and no new fault in its place that stops the piece.

mod attachment;
mod boards;
mod change;
mod climate;
mod light;
mod sized;

use measure::Length;
use sizing::{Fault, Severity, Sizes, derive};
use trade::{Catalogue, Coating, Job, Level, Material, Medium, Pane, Settings};
use working::{Figure, LineId, Stated, Working};

use crate::light::{Media, Showing};

pub use change::Change;

/// Where a piece will hang, as far as somebody said.
#[derive(Clone, Copy, Debug, Default)]
pub struct Surroundings {
    /// Its light; left out: the shop's wall at home.
    pub showing: Option<Showing>,
    /// What the art is, better known than the document's medium.
    pub media: Option<&'static Media>,
    /// The outside wall it hangs on, where it does.
    pub outside_wall: Option<OutsideWall>,
}

/// An outside wall in the cold.
#[derive(Clone, Copy, Debug)]
pub struct OutsideWall {
    /// Outdoors, °C.
    pub outdoors: Stated<Figure>,
    /// Heat it lets through, W/(m²K).
    pub transmittance: Stated<Figure>,
}

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
}

/// All advice on a piece, the worst first.
#[derive(Clone, Debug, Default)]
pub struct Advised {
    /// The advice.
    pub advice: Vec<Advice>,
    /// The working its numbers stand in.
    pub working: Working,
}

/// Everything that will harm a piece, each with the changes that cure it.
///
/// Shape:  what sizes reveal by themselves ([`Sizes::faults`]) comes too where a change cures it, its
///         line one of the sizes' own working.
/// Errors: none; what can't be worked out for want of a number is left out.
pub fn advice(
    job: &Job,
    sizes: &Sizes,
    catalogue: &Catalogue,
    shop: &Settings,
    around: &Surroundings,
) -> Advised {
    let mut advised = looked_over(job, sizes, catalogue, around);
    let look = Trial {
        job,
        sizes,
        catalogue,
        shop,
        around,
    };
    for advice in &mut advised.advice {
        advice
            .changes
            .retain(|change| look.cures(change, advice.fault.code, &advice.fault.part));
    }
    advised.advice.extend(look.of_sizes());
    let worst = |advice: &Advice| std::cmp::Reverse(advice.fault.severity);
    advised.advice.sort_by_key(worst);
    advised
}

/// Looks a piece over; the changes are not tried yet.
fn looked_over(job: &Job, sizes: &Sizes, catalogue: &Catalogue, around: &Surroundings) -> Advised {
    let mut look = Look {
        job,
        sizes,
        catalogue,
        around,
        working: Working::new(),
        advice: Vec::new(),
    };
    look.light();
    look.boards();
    look.attachment();
    look.climate();
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
    around: &'a Surroundings,
    working: Working,
    advice: Vec<Advice>,
}

impl Look<'_> {
    fn settings(&self) -> &Settings {
        &self.sizes.settings
    }

    fn say(&self, length: Length) -> String {
        length.in_both(self.job.units.unit())
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
        let source = source.into();
        self.advice.push(Advice {
            fault,
            source,
            lines,
            changes,
        });
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

/// What a source of this code says, as people read it.
fn of_source(code: &str) -> String {
    match trade::settings::citation(code) {
        Some(citation) => citation.to_string(),
        None => "common practice, no source".to_owned(),
    }
}

/// A piece on which changes are tried.
struct Trial<'a> {
    job: &'a Job,
    sizes: &'a Sizes,
    catalogue: &'a Catalogue,
    shop: &'a Settings,
    around: &'a Surroundings,
}

impl Trial<'_> {
    /// Whether a change takes this advice away and brings no fault that stops the piece.
    fn cures(&self, change: &Change, code: &str, part: &str) -> bool {
        let job = change.applied(self.job);
        let Ok(sizes) = derive(&job, self.catalogue, self.shop) else {
            return false;
        };
        let stops = |fault: &Fault| fault.severity == Severity::Refuse;
        let had = |fault: &Fault| self.sizes.faults.iter().any(|old| old.code == fault.code);
        if sizes.faults.iter().any(|fault| stops(fault) && !had(fault)) {
            return false;
        }
        let is_it = |fault: &Fault| fault.code == code && fault.part == part;
        let after = looked_over(&job, &sizes, self.catalogue, self.around);
        let still = after.advice.iter().any(|advice| is_it(&advice.fault));
        !still && !sizes.faults.iter().any(is_it)
    }
}

/// Materials that a change could name: codes, in the catalogue's order.
fn codes<'a>(
    catalogue: &'a Catalogue,
    fits: impl Fn(&Material) -> bool + 'a,
) -> impl Iterator<Item = String> + 'a {
    let found = catalogue.iter().filter(move |material| fits(material));
    found.map(|material| material.code.clone())
}

/// Whether a pane stops ultraviolet, as its coating tells.
const fn stops_ultraviolet(coating: Coating) -> bool {
    matches!(coating, Coating::Ultraviolet)
}

/// Whether a pane gathers static that lifts loose media.
fn gathers_static(material: &Material) -> bool {
    material.pane == Some(Pane::Acrylic) && material.coating != Some(Coating::Antistatic)
}

#[cfg(test)]
mod tests;
