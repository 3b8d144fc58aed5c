//! Openings and how each piece of art is shown, looked up.

use std::borrow::Cow;

use measure::Length;
use trade::{Art, Key, Opening, Shape, Show};

use super::{Desk, part_name};
use crate::fault::Fault;
use crate::trace::Fact;

/// An opening with the art behind it.
pub(crate) struct OpeningBrief<'a> {
    pub opening: Cow<'a, Opening>,
    pub name: String,
    /// Index of the art seen through it.
    pub art: Option<usize>,
    /// Under the window's edge, or whole within it.
    pub floats: bool,
    pub overlap: Fact,
    pub margin: Fact,
}

impl<'a> Desk<'a, '_> {
    pub(super) fn openings(&mut self) -> Vec<OpeningBrief<'a>> {
        let job = self.job;
        if job.mat.is_empty() {
            if !job.opening.is_empty() {
                self.faults.push(Fault::refuse(
                    "opening.no_mat",
                    "Openings",
                    format!("there are {} and no mat to cut them in", job.opening.len()),
                    "",
                    "Add a [[mat]] table, or take the [[opening]] tables out",
                ));
            }
            return Vec::new();
        }
        let openings: Vec<Cow<'a, Opening>> = if job.opening.is_empty() {
            job.art
                .iter()
                .map(|_| Cow::Owned(Opening::default()))
                .collect()
        } else {
            job.opening.iter().map(Cow::Borrowed).collect()
        };
        let count = openings.len();
        let mut next = 0;
        openings
            .into_iter()
            .enumerate()
            .filter_map(|(i, opening)| self.opening(opening, i, count, &mut next))
            .collect()
    }

    fn opening(
        &mut self,
        opening: Cow<'a, Opening>,
        index: usize,
        count: usize,
        next: &mut usize,
    ) -> Option<OpeningBrief<'a>> {
        let name = opening
            .name
            .clone()
            .unwrap_or_else(|| part_name("Opening", index, count));
        let art = match (&opening.art, opening.empty) {
            (_, true) => None,
            (Some(wanted), false) => Some(self.art_named(&name, wanted)?),
            (None, false) => Some(self.next_art(&name, next)?),
        };
        if art.is_none() && opening.window.is_none() {
            self.faults.push(Fault::refuse(
                "opening.no_size",
                &name,
                "it has neither art behind it nor a window size",
                "",
                "Write `window = \"8 x 10\"` in its table",
            ));
            return None;
        }
        self.check_shape(&opening, &name);
        let piece = art.map(|art| &self.job.art[art]);
        let floats = piece.is_some_and(|art| {
            matches!(art.show, Some(Show::Float | Show::Wrapped | Show::Object))
        });
        Some(OpeningBrief {
            overlap: self.overlap(piece),
            margin: self.or_setting(
                piece.and_then(|art| art.margin).map(|m| *m),
                Key::FloatMargin,
            ),
            opening,
            name,
            art,
            floats,
        })
    }

    /// The only piece of art, or the next in order.
    fn next_art(&mut self, name: &str, next: &mut usize) -> Option<usize> {
        if self.job.art.len() == 1 {
            return Some(0);
        }
        if *next >= self.job.art.len() {
            self.faults.push(Fault::refuse(
                "opening.no_art",
                name,
                format!(
                    "there is no art left for it: the job has {} pieces",
                    self.job.art.len()
                ),
                "",
                "Add an [[art]] table, name one with `art = \"…\"`, or write `empty = true`",
            ));
            return None;
        }
        *next += 1;
        Some(*next - 1)
    }

    fn art_named(&mut self, part: &str, wanted: &str) -> Option<usize> {
        let found = self
            .job
            .art
            .iter()
            .position(|art| art.name.as_deref() == Some(wanted));
        if found.is_none() {
            self.faults.push(Fault::refuse(
                "opening.unknown_art",
                part,
                format!("it shows \"{wanted}\", and no art has that name"),
                "",
                format!("Write `name = \"{wanted}\"` in an [[art]] table"),
            ));
        }
        found
    }

    /// What covers the art: its own overlap, else the shop's, larger for large or unsquare art.
    fn overlap(&self, art: Option<&Art>) -> Fact {
        let stated = art.and_then(|art| art.overlap).map(|overlap| *overlap);
        let large = art.is_some_and(|art| {
            let height = art.height.unwrap_or(art.width);
            let unsquare = !art.width_readings.is_empty() || !art.height_readings.is_empty();
            unsquare || (*art.width).max(*height) > self.settings.length(Key::LargeArt)
        });
        self.or_setting(
            stated,
            if large {
                Key::MatOverlapLarge
            } else {
                Key::MatOverlap
            },
        )
    }

    /// Numbers that belong to another shape than the one named.
    fn check_shape(&mut self, opening: &Opening, name: &str) {
        let odd = [
            (
                "radius",
                opening.radius.is_some(),
                opening.shape == Shape::Rounded,
            ),
            (
                "rise",
                opening.rise.is_some(),
                opening.shape == Shape::LowArch,
            ),
            (
                "corner",
                opening.corner.is_some(),
                opening.shape == Shape::Octagon,
            ),
            (
                "sides",
                opening.sides.is_some(),
                opening.shape == Shape::Polygon,
            ),
            (
                "points",
                !opening.points.is_empty(),
                opening.shape == Shape::Free,
            ),
        ];
        for (field, given, wanted) in odd {
            if given && !wanted {
                self.faults.push(Fault::refuse(
                    "opening.odd_field",
                    name,
                    format!("it gives `{field}`, which its shape does not use"),
                    "",
                    "Take the line out, or name the shape that uses it",
                ));
            }
        }
    }
}

/// The lift under floated art, where it names none.
pub(crate) fn lift_of(art: &Art, settings: &trade::Settings) -> Fact {
    let lift: Option<Length> = art.lift.map(|lift| *lift);
    lift.map_or_else(|| Fact::setting(settings, Key::FloatLift), Fact::job)
}
