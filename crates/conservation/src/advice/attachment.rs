//! How this piece is held.

use measure::{Length, Size};
use sizing::Fault;
use trade::{Hold, Key, Medium, Show};
use working::{Figure, Stated};

use super::{Change, Look, of_source};
use crate::attachment::{hinges, spacing_for};
use crate::climate::{Cover, after_shrinking};
use crate::table::Fact;

/// Words of adhesives and tapes that no source calls suitable on art.
const REFUSED: [&str; 6] = [
    "tape",
    "pressure",
    "self-adhesive",
    "gummed",
    "rubber",
    "spray",
];

impl Look<'_> {
    pub(super) fn attachment(&mut self) {
        self.adhesive();
        self.hinge_count();
        self.corners();
        self.cover_left();
    }

    fn adhesive(&mut self) {
        let Some(attachment) = self.job.attachment.as_ref() else {
            return;
        };
        let words = [&attachment.adhesive, &attachment.material]
            .map(|words| words.as_deref().unwrap_or_default().to_lowercase());
        let named = REFUSED
            .iter()
            .any(|word| words.iter().any(|words| words.contains(word)));
        let never = self.settings().choice(Key::TapesOnArt) == "never";
        if !named || !(never || self.conserves()) || self.medium() == Medium::Reproduction {
            return;
        }
        let fault = Fault::warn(
            "attachment.adhesive",
            "Attachment",
            format!("the art is held with {}", words.join(" ").trim()),
            "no pressure-sensitive adhesive is suitable for hinging; gummed tape only joins boards",
            "Use mulberry paper with starch paste, or corners",
        );
        let changes = vec![
            Change::SetAdhesive {
                material: "mulberry paper",
                adhesive: "wheat starch paste",
            },
            Change::All(vec![
                Change::SetAdhesive {
                    material: "polyester film",
                    adhesive: "none on the art",
                },
                Change::SetHold(Hold::Corners),
            ]),
        ];
        self.push(fault, of_source("M3"), Vec::new(), changes);
    }

    /// Fewer hinges than the published spacing asks for, unless the shop uses two only.
    fn hinge_count(&mut self) {
        let (Some(marks), Some(art)) = (self.sizes.hinges, self.sizes.art.first()) else {
            return;
        };
        let stated = self.job.attachment.as_ref().and_then(|found| found.count);
        if stated.is_none() && self.settings().choice(Key::HingeRule) == "two" {
            return;
        }
        let sheet = self.figure(Key::UsualSheet, "g/m²");
        let spacing = spacing_for(sheet.value, self.settings());
        let (edge, inset) = (
            Stated::job(art.largest.width.value),
            Stated::job(marks.inset.value),
        );
        let Ok(wanted) = hinges(edge, inset, spacing, &mut self.working) else {
            return;
        };
        if marks.count.value >= wanted.count.value {
            return;
        }
        let count = u32::try_from(wanted.count.value).unwrap_or(u32::MAX);
        let fault = Fault::warn(
            "attachment.hinges",
            "Attachment",
            format!(
                "{} hinges carry an edge of {}",
                marks.count.value,
                self.say(edge.value)
            ),
            format!(
                "no more than {} from one to the next asks for {count}; other sources say two only",
                self.say(spacing.value)
            ),
            format!("Use {count} hinges, {} apart", self.say(wanted.apart.value)),
        );
        let lines = vec![wanted.count.line, wanted.apart.line];
        self.push(
            fault,
            of_source("M6"),
            lines,
            vec![Change::SetHinges(count)],
        );
    }

    fn corners(&mut self) {
        let corners = |hold: Hold| hold == Hold::Corners;
        let held = self.job.attachment.as_ref().map(|found| found.hold);
        let Some(art) = self.sizes.art.first().filter(|_| held.is_some_and(corners)) else {
            return;
        };
        let most = self.settings().length(Key::CornersTo);
        let side = art.largest.size().long_side();
        if side <= most {
            return;
        }
        let fault = Fault::warn(
            "attachment.corners",
            "Attachment",
            format!("four corners carry a sheet {} long", self.say(side)),
            format!("upright they serve to {}", self.say(most)),
            "Hold it by edge strips, or rest its foot on a ledge",
        );
        let changes = vec![Change::SetHold(Hold::Strips)];
        self.push(fault, of_source("CP"), Vec::new(), changes);
    }

    /// What a window still covers when the sheet has dried from the shop's air to the room's driest.
    fn cover_left(&mut self) {
        let Some((sheet, cover)) = self.covered() else {
            return;
        };
        let made = self.figure(Key::MadeAt, "% RH").value.value();
        let dry = self.figure(Key::DriestRoom, "% RH").value.value();
        let drier = Figure::of((made - dry).max(0.0), "% RH");
        let drier = Stated::setting(Key::DriestRoom.id(), drier);
        let across = Fact::named("paper.across");
        let damp = across.stated(across.high());
        let left = after_shrinking(
            sheet,
            Stated::job(cover),
            [damp; 2],
            drier,
            &mut self.working,
        );
        let Ok(left) = left else { return };
        let worst = left.side.value.min(left.bottom.value);
        let least = self.settings().length(Key::CoverLeft);
        if worst < least {
            self.thin_cover(&left, worst, least);
        }
    }

    /// The only sheet under a window and how far that covers it, where it does.
    fn covered(&self) -> Option<(Size, Length)> {
        let ([art], Some(mat)) = (self.sizes.art.as_slice(), self.sizes.mats.last()) else {
            return None;
        };
        let window = mat.windows.first()?;
        let (sheet, foot) = (art.smallest.size(), window.foot.size());
        let over = Size::new(sheet.width - foot.width, sheet.height - foot.height);
        let cover = over.short_side().half_down();
        let counts = self.is_paper_under_window() && art.sheet.is_none() && cover.is_positive();
        counts.then_some((sheet, cover))
    }

    fn thin_cover(&mut self, left: &Cover, worst: Length, least: Length) {
        let own = self.job.art[0].overlap.map_or_else(
            || self.settings().length(Key::MatOverlap),
            |overlap| *overlap,
        );
        let step = self.settings().length(Key::RingStep);
        let overlap = (own + least - worst).up_to(step);
        let found = if worst.is_positive() {
            format!(
                "in the driest room {} of the sheet's edge stays covered",
                self.say(worst)
            )
        } else {
            format!(
                "in the driest room the sheet's edge shows by up to {}",
                self.say(-worst)
            )
        };
        let fault = Fault::warn(
            "attachment.cover",
            "Window",
            found,
            format!(
                "{} should be left; the paper's shrinkage is from memory, at its highest",
                self.say(least)
            ),
            format!("Cover the art by {}", self.say(overlap)),
        );
        let lines = vec![left.bottom.line, left.side.line];
        let changes = vec![Change::SetOverlap { art: 0, overlap }];
        let source = Fact::named("paper.across").trust().sentence();
        self.push(fault, source, lines, changes);
    }

    fn is_paper_under_window(&self) -> bool {
        let paper = !matches!(
            self.medium(),
            Medium::Canvas | Medium::Panel | Medium::Textile | Medium::Object | Medium::Mirror
        );
        let show = self.job.art.first().and_then(|art| art.show);
        paper && show.is_none_or(|show| show == Show::Window)
    }
}
