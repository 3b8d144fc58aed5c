//! Glazing: what can drop, bind, break or show.

use measure::{Length, Size};
use trade::{Key, Pane};

use super::Bench;
use crate::brief::part_name;
use crate::fault::Fault;
use crate::is_size;
use crate::sheets::GlazingSizes;

impl Bench<'_, '_, '_> {
    pub(super) fn glazing(&mut self) {
        let sizes = self.sizes;
        for (i, pane) in sizes.glazing.iter().enumerate() {
            let part = part_name("Glazing", i, sizes.glazing.len());
            self.cover_left(&part, pane);
            self.growth(&part, pane);
            self.too_large(&part, pane);
            self.coated_face(&part, i, pane);
        }
        self.air();
        self.spacer_shows();
    }

    /// Glazing pushed hard to one side must not drop past the lip at the other.
    fn cover_left(&mut self, part: &str, pane: &GlazingSizes) {
        let Some(cover) = pane.cover else { return };
        let least = self.brief.settings.length(Key::GlazingCover);
        if cover.value >= least {
            return;
        }
        let drops = !is_size(cover.value);
        let found = if cover.value.is_negative() {
            format!(
                "pushed to one side, it comes {} clear of the lip",
                self.say(-cover.value)
            )
        } else {
            format!(
                "pushed to one side, the lip covers it by {}",
                self.say(cover.value)
            )
        };
        let allowed = format!("{} keeps it in", self.say(least));
        let cure = format!(
            "Choose a moulding with a lip {} wider, or cut the glazing larger",
            self.say(least - cover.value)
        );
        let fault = if drops {
            Fault::refuse("glazing.can_drop", part, found, allowed, cure)
        } else {
            Fault::warn("glazing.thin_cover", part, found, allowed, cure)
        };
        self.faults.push(fault.because(cover.line));
    }

    fn growth(&mut self, part: &str, pane: &GlazingSizes) {
        let Some(growth) = pane.growth else { return };
        let room = self.brief.members[pane.held_in].allowance.value + pane.undersize;
        if room < growth.value {
            self.faults.push(
                Fault::refuse(
                    "glazing.binds",
                    part,
                    format!("acrylic of this length grows {}", self.say(growth.value)),
                    format!("allowance and undersize leave it {}", self.say(room)),
                    format!("Cut it {} smaller", self.say(growth.value - room)),
                )
                .because(growth.line),
            );
        } else if pane.undersize < growth.value {
            self.faults.push(
                Fault::warn(
                    "glazing.tight",
                    part,
                    format!("acrylic of this length grows {}", self.say(growth.value)),
                    format!("its undersize is {}", self.say(pane.undersize)),
                    format!(
                        "Write `undersize = \"{}\"` or more",
                        self.typed(
                            growth
                                .value
                                .up_to(self.brief.settings.length(Key::RingStep))
                        )
                    ),
                )
                .because(growth.line),
            );
        }
    }

    fn too_large(&mut self, part: &str, pane: &GlazingSizes) {
        let size = pane.sheet.size.size();
        let thickness = pane.sheet.thickness;
        let settings = &self.brief.settings;
        let from = |key| settings.length(key);
        let limit = match pane.pane {
            Some(Pane::Glass) if thickness >= from(Key::GlassStout) => Key::GlassLimit3,
            Some(Pane::Glass) if thickness >= from(Key::GlassMiddle) => Key::GlassLimit25,
            Some(Pane::Glass) => Key::GlassLimit2,
            Some(Pane::Acrylic) if thickness >= from(Key::AcrylicStout) => Key::AcrylicLimit4,
            Some(Pane::Acrylic) if thickness >= from(Key::GlassStout) => Key::AcrylicLimit3,
            Some(Pane::Acrylic) => Key::AcrylicLimit25,
            None => return,
        };
        let most = Length::INCH.times(settings.count(limit));
        if united(size) > most {
            let cure = if pane.pane == Some(Pane::Glass) {
                "Take thicker glass or acrylic; a broken pane cuts the art and whoever carries it"
            } else {
                "Take thicker acrylic: this one bows"
            };
            self.faults.push(
                Fault::warn(
                    "glazing.too_large",
                    part,
                    format!(
                        "{} and {} make {} united",
                        self.say(size.width),
                        self.say(size.height),
                        self.say(united(size))
                    ),
                    format!(
                        "sheet of {} is used to {} united",
                        self.say(thickness),
                        self.say(most)
                    ),
                    cure,
                )
                .because(pane.sheet.size.width.line),
            );
        }
    }

    fn coated_face(&mut self, part: &str, index: usize, pane: &GlazingSizes) {
        let sided = pane
            .sheet
            .material
            .as_ref()
            .and_then(|m| m.coating)
            .is_some_and(trade::Coating::has_a_side);
        if sided && self.brief.job.glazing[index].inward.is_none() {
            self.faults.push(Fault::warn(
                "glazing.face",
                part,
                "it is coated, and the face turned to the art is not stated",
                "the ticket must say which",
                "See the maker's mark and write `inward = \"coated\"`, `\"plain\"` or `\"either\"`",
            ));
        }
    }

    fn air(&mut self) {
        let Some(air) = self.sizes.air else { return };
        let asked = crate::stack::asked_air(self.brief).value;
        let sensitive = self
            .brief
            .job
            .art
            .iter()
            .any(|art| art.medium.needs_clear_air());
        if !is_size(air.value) {
            let found = if air.value.is_zero() {
                "no air is left before the art".to_owned()
            } else {
                format!(
                    "the art stands {} too far forward and presses on it",
                    self.say(-air.value)
                )
            };
            self.faults.push(
                Fault::refuse(
                    "air.none",
                    "Glazing",
                    found,
                    "art must never touch its glazing",
                    format!(
                        "Add a mat, or spacers of {} or more",
                        self.say(asked - air.value)
                    ),
                )
                .because(air.line),
            );
        } else if sensitive && air.value < asked {
            self.faults.push(
                Fault::warn(
                    "air.little",
                    "Glazing",
                    format!("{} of air is left before the art", self.say(air.value)),
                    format!("media that stick or dust off ask for {}", self.say(asked)),
                    format!(
                        "Add {} of spacer, or a thicker mat",
                        self.say(asked - air.value)
                    ),
                )
                .because(air.line),
            );
        }
    }

    fn spacer_shows(&mut self) {
        let Some(width) = self.sizes.spacer.as_ref().and_then(|spacer| spacer.width) else {
            return;
        };
        let Some(member) = self
            .sizes
            .members
            .last()
            .filter(|member| member.floater.is_none())
        else {
            return;
        };
        let hidden = member.lip - member.allowance;
        if width > hidden {
            self.faults.push(Fault::warn(
                "spacer.shows",
                "Spacer",
                format!("it is {} wide", self.say(width)),
                format!("lip less allowance hides {}", self.say(hidden)),
                format!(
                    "Take a spacer of {} or less, or a lip of {} or more",
                    self.say(hidden.or_zero()),
                    self.say(width + member.allowance)
                ),
            ));
        }
    }
}

/// United measure: width and height together.
fn united(size: Size) -> Length {
    size.united()
}
