//! Art: slips of the tape, of the unit and of the hand.

use measure::Length;
use trade::{Hold, Key, Medium, Orientation, Show};

use super::Bench;
use crate::art::ArtSizes;
use crate::brief::part_name;
use crate::fault::Fault;
use crate::is_size;

impl Bench<'_, '_, '_> {
    pub(super) fn measured(&mut self) {
        let count = self.sizes.art.len();
        for (i, art) in self.sizes.art.iter().enumerate() {
            let part = part_name("Art", i, count);
            self.likely_unit(&part, art);
            self.orientation(&part, i, art);
            self.lean(&part, i, art);
            self.sheet(&part, art);
        }
        self.attachment();
        self.unframed_art();
    }

    fn likely_unit(&mut self, part: &str, art: &ArtSizes) {
        let size = art.largest.size();
        let settings = &self.brief.settings;
        let (most, least) = (
            settings.length(Key::InchLikely),
            settings.length(Key::SmallLikely),
        );
        let found = format!(
            "it measures {} × {}",
            self.say(size.width),
            self.say(size.height)
        );
        if size.long_side() > most {
            self.faults.push(Fault::warn(
                "art.unit_large",
                part,
                found,
                format!("art over {} is rare", self.say(most)),
                "If it was measured in millimetres, write mm beside the size",
            ));
        } else if size.short_side() < least {
            self.faults.push(Fault::warn(
                "art.unit_small",
                part,
                found,
                format!("art under {} is rare", self.say(least)),
                "If it was measured in inches, write in beside the size",
            ));
        }
    }

    fn orientation(&mut self, part: &str, index: usize, art: &ArtSizes) {
        let Some(stated) = self.brief.job.art[index].orientation else {
            return;
        };
        let size = art.largest.size();
        let (found, holds) = match size.width.cmp(&size.height) {
            std::cmp::Ordering::Less => ("taller than wide", stated == Orientation::Portrait),
            std::cmp::Ordering::Equal => ("as wide as tall", stated == Orientation::Square),
            std::cmp::Ordering::Greater => ("wider than tall", stated == Orientation::Landscape),
        };
        if !holds {
            let word = match stated {
                Orientation::Portrait => "portrait",
                Orientation::Landscape => "landscape",
                Orientation::Square => "square",
            };
            let turned = size.turned();
            self.faults.push(Fault::refuse(
                "art.orientation",
                part,
                format!("its sizes make it {found}"),
                format!("its picture is {word}"),
                format!(
                    "If width and height were swapped, write width {} and height {}",
                    self.typed(turned.width),
                    self.typed(turned.height)
                ),
            ));
        }
    }

    fn lean(&mut self, part: &str, index: usize, art: &ArtSizes) {
        let most = self.brief.settings.length(Key::UnsquareWarn);
        let Some(lean) = art.lean.filter(|lean| lean.value > most) else {
            return;
        };
        let hidden = self.brief.job.art[index].show != Some(Show::Float);
        let cure = if hidden {
            "Tell the customer; cover it more, or tilt it to its signature"
        } else {
            "Tell the customer: a float shows it"
        };
        self.faults.push(
            Fault::warn(
                "art.leans",
                part,
                format!("it leans {} over its height", self.say(lean.value)),
                format!("a lean of more than {} catches the eye", self.say(most)),
                cure,
            )
            .because(lean.line),
        );
    }

    fn sheet(&mut self, part: &str, art: &ArtSizes) {
        let Some(sheet) = art.sheet else { return };
        let inner = art.largest.size();
        if inner.width > sheet.width || inner.height > sheet.height {
            self.faults.push(Fault::refuse(
                "art.larger_than_sheet",
                part,
                format!(
                    "the image is {} × {}",
                    self.say(inner.width),
                    self.say(inner.height)
                ),
                format!(
                    "its sheet is {} × {}",
                    self.say(sheet.width),
                    self.say(sheet.height)
                ),
                "Measure both again; width comes first",
            ));
        }
        if !is_size(art.smallest.least()) {
            self.faults.push(Fault::refuse(
                "art.all_deckle",
                part,
                "the deckle's valleys leave nothing between them",
                "",
                "Measure how deep they run from the tips",
            ));
        }
    }

    fn attachment(&mut self) {
        let Some(attachment) = &self.brief.job.attachment else {
            return;
        };
        let original = self
            .brief
            .job
            .art
            .iter()
            .any(|art| art.medium != Medium::Reproduction);
        if attachment.hold == Hold::DryMount && original && !attachment.consent {
            self.faults.push(Fault::refuse(
                "attachment.irreversible",
                "Attachment",
                "dry mounting can't be undone",
                "an original needs the customer's written consent",
                "Hinge it, or write `consent = true` once the paper is signed",
            ));
        }
    }

    /// Without mats: art that a given frame does not fit, or does not cover.
    fn unframed_art(&mut self) {
        if !self.sizes.mats.is_empty() || self.brief.job.fit.is_none() || self.sizes.walls.is_some()
        {
            return;
        }
        let art = self.sizes.art[0].largest.size();
        let floats = self.brief.job.art[0].show == Some(Show::Float);
        let seen = self.sizes.seen().size();
        let package = self.sizes.package.size();
        let room = if floats { seen } else { package };
        if art.width > room.width || art.height > room.height {
            self.faults.push(Fault::refuse(
                "fit.too_small",
                "Art",
                format!("it is {} × {}", self.say(art.width), self.say(art.height)),
                format!(
                    "the frame leaves {} × {}",
                    self.say(room.width),
                    self.say(room.height)
                ),
                "Choose a larger frame; art is never trimmed or folded to fit",
            ));
        } else if !floats
            && self.brief.job.wrap.is_none()
            && (art.width < seen.width || art.height < seen.height)
        {
            self.faults.push(Fault::refuse(
                "fit.too_large",
                "Art",
                format!("it is {} × {}", self.say(art.width), self.say(art.height)),
                format!(
                    "the frame shows {} × {}",
                    self.say(seen.width),
                    self.say(seen.height)
                ),
                "Add a mat, float the art, or choose a smaller frame",
            ));
        }
    }
}

/// Half of what is left, for sentences.
pub(super) fn half(length: Length) -> Length {
    length.half_down()
}
