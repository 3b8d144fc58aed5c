//! How this piece is held.

use measure::{Length, Size};
use sizing::{Fault, grammage, hinge_spacing};
use trade::{Hold, Key, Medium, Show};
use working::{Rule, Stated, Subject, Worked};

use super::adhesive::refused;
use super::{Change, Look, of_source};
use crate::attachment::{Sheet, as_figure, grows, hinge_is_weakest, hinges, is_paper, of_art};
use crate::climate::{Cover, after_shrinking, drier};
use crate::rules::geometry;
use crate::table::Fact;

static COVER: Rule = geometry(
    "cover.art",
    "a window in the middle of a sheet covers it by half of what it is smaller, on the side where that is least",
    "cover = half_down(min(wide - window_wide, tall - window_tall))",
);

impl Look<'_> {
    pub(super) fn attachment(&mut self) {
        self.adhesive();
        self.hinge_count();
        self.weakest();
        self.corners();
        self.cover_left();
        self.room_to_grow();
    }

    fn adhesive(&mut self) {
        let Some(attachment) = self.job.attachment.as_ref() else {
            return;
        };
        let words = [&attachment.adhesive, &attachment.material];
        let words: Vec<&str> = words
            .into_iter()
            .filter_map(|words| words.as_deref())
            .collect();
        let never = self.settings().choice(Key::TapesOnArt) == "never";
        let named = words.iter().find_map(|words| refused(words));
        let Some(named) = named.filter(|_| never || self.conserves()) else {
            return;
        };
        if self.medium() == Medium::Reproduction {
            return;
        }
        let (allowed, source) = named.allowed();
        let fault = Fault::warn(
            "attachment.adhesive",
            "Attachment",
            format!("the art is held with {}", words.join(" on ")),
            allowed,
            "Use mulberry paper with starch paste, or corners",
        );
        let bonded = attachment.hold == Hold::DryMount;
        self.push(fault, of_source(source), Vec::new(), reversible(bonded));
    }

    /// Fewer hinges stated than the published spacing asks for. A count that nobody stated is the sizes' own,
    /// by the same rule or by the shop's two only, and is not questioned here.
    fn hinge_count(&mut self) {
        let (Some(marks), Some(art)) = (self.sizes.hinges, self.sizes.art.first()) else {
            return;
        };
        let stated = self.job.attachment.as_ref().and_then(|found| found.count);
        if stated.is_none() {
            return;
        }
        let grams = grammage(self.job.art.first(), self.settings());
        let spacing = hinge_spacing(grams.value, self.settings());
        let edge: Stated<Length> = art.largest.width.into();
        let wanted = hinges(edge, marks.inset.into(), spacing, &mut self.working);
        let wanted = match wanted {
            Ok(wanted) => wanted,
            Err(refusal) => return self.refused(&refusal),
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

    /// A hinge as heavy as the art: the art tears before it.
    fn weakest(&mut self) {
        let stated = self.job.attachment.as_ref().and_then(|held| held.grammage);
        let (Some(hinge), Some(_)) = (stated, self.sizes.hinges) else {
            return;
        };
        let art = grammage(self.job.art.first(), self.settings());
        let hinge = as_figure(Stated::job(i64::from(hinge)));
        let weakest = hinge_is_weakest(hinge, as_figure(art), &mut self.working);
        let weakest = match weakest {
            Ok(weakest) => weakest,
            Err(refusal) => return self.refused(&refusal),
        };
        if weakest.value {
            return;
        }
        let lighter = u32::try_from(art.value.div_euclid(2))
            .unwrap_or_default()
            .max(1);
        let fault = Fault::warn(
            "attachment.weakest",
            "Attachment",
            format!(
                "the hinges' paper is {}, the art {}",
                hinge.value,
                as_figure(art).value
            ),
            "a hinge is always lighter than the art, so that it gives way first",
            format!("Hinge it with paper of {lighter} g/m² or less"),
        );
        let changes = vec![Change::SetHingePaper(lighter)];
        self.push(fault, of_source("M3"), vec![weakest.line], changes);
    }

    /// Room that a sheet of paper needs in the dampest air, in the rabbet it lies in.
    fn room_to_grow(&mut self) {
        let (sizes, job) = (self.sizes, self.job);
        let ([art], Some(member)) = (sizes.art.as_slice(), sizes.members.last()) else {
            return;
        };
        if !is_paper(job)
            || job
                .attachment
                .as_ref()
                .is_some_and(|held| held.hold == Hold::DryMount)
        {
            return;
        }
        let Some(growth) = grows(of_art(art), sizes, &mut self.working) else {
            return;
        };
        let (sheet, rabbet) = (art.largest.size(), member.rabbet.size());
        let short = [
            growth[0].value - (rabbet.width - sheet.width),
            growth[1].value - (rabbet.height - sheet.height),
        ];
        let [across, up] = short;
        let (worst, longer) = if across > up {
            (across, growth[0])
        } else {
            (up, growth[1])
        };
        if !worst.is_positive() || !sizes.mats.is_empty() {
            return;
        }
        let step = self.settings().length(Key::RingStep);
        let allowance = (member.allowance + worst).up_to(step);
        self.short_of_room(longer, worst, allowance);
    }

    fn short_of_room(&mut self, longer: Worked<Length>, lacks: Length, allowance: Length) {
        let fault = Fault::warn(
            "attachment.room",
            "Art",
            format!(
                "in the dampest room its sheet may grow by {}",
                self.say_up(longer.value)
            ),
            format!(
                "the rabbet leaves it {}; paper without room to grow buckles",
                self.say_down(longer.value - lacks)
            ),
            format!(
                "Make the frame {} larger than the package",
                self.say(allowance)
            ),
        );
        let index = self.sizes.members.len() - 1;
        let changes = vec![Change::SetAllowance { index, allowance }];
        let source = Fact::named("paper.across").trust().sentence();
        self.push(fault, source, vec![longer.line], changes);
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
        let settings = self.settings().clone();
        let drier = drier(&settings, &mut self.working);
        let across = Fact::named("paper.across");
        let damp = across.stated(across.high());
        let left = after_shrinking(
            sheet,
            cover.into(),
            [damp; 2],
            drier.into(),
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
    fn covered(&mut self) -> Option<(Sheet, Worked<Length>)> {
        let sizes = self.sizes;
        let ([art], Some(mat)) = (sizes.art.as_slice(), sizes.mats.last()) else {
            return None;
        };
        let window = mat.windows.first()?;
        let (of_sheet, foot) = (art.smallest, window.foot);
        let (size, seen) = (of_sheet.size(), foot.size());
        let over = Size::new(size.width - seen.width, size.height - seen.height);
        let cover = over.short_side().half_down();
        let counts = self.is_paper_under_window() && art.sheet.is_none() && cover.is_positive();
        let sheet = Sheet {
            width: of_sheet.width.into(),
            height: of_sheet.height.into(),
        };
        let inputs = [
            ("wide", of_sheet.width.into()),
            ("tall", of_sheet.height.into()),
            ("window_wide", foot.width.into()),
            ("window_tall", foot.height.into()),
        ];
        let subject = Subject::of("cover", "art");
        counts.then(|| (sheet, self.working.by(&COVER, subject, &inputs, cover)))
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
                self.say_down(worst)
            )
        } else {
            format!(
                "in the driest room the sheet's edge shows by up to {}",
                self.say_up(-worst)
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
        let paper = is_paper(self.job);
        let show = self.job.art.first().and_then(|art| art.show);
        paper && show.is_none_or(|show| show == Show::Window)
    }
}

/// Ways of holding that come off again; from a bond, the hold changes with the adhesive.
fn reversible(bonded: bool) -> Vec<Change> {
    let paste = Change::SetAdhesive {
        material: "mulberry paper",
        adhesive: "wheat starch paste",
    };
    let corners = Change::SetAdhesive {
        material: "polyester film",
        adhesive: "none on the art",
    };
    let hinged = if bonded {
        Change::All(vec![paste, Change::SetHold(Hold::THinge)])
    } else {
        paste
    };
    vec![
        hinged,
        Change::All(vec![corners, Change::SetHold(Hold::Corners)]),
    ]
}
