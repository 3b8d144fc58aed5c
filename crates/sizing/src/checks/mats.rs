//! Windows, borders and fillets.

use measure::{Length, Size};
use trade::{Key, Measured};
use working::{Axis, Worked};

use super::Bench;
use super::measured::half;
use crate::borders::BorderSizes;
use crate::brief::{OpeningBrief, part_name};
use crate::fault::Fault;
use crate::is_size;
use crate::mat::MatSizes;
use crate::sheets::side;
use crate::trace::along;
use crate::window::Window;

impl Bench<'_, '_, '_> {
    pub(super) fn mats(&mut self) {
        let sizes = self.sizes;
        for (m, mat) in sizes.mats.iter().enumerate() {
            let part = part_name("Mat", m, sizes.mats.len());
            for window in &mat.windows {
                self.window_size(&part, window);
                self.window_edge(&part, window);
            }
            self.neighbours(&part, &mat.windows);
            self.groove(&part, mat);
            self.fillet(&part, mat);
        }
        if let Some(innermost) = sizes.mats.last() {
            for window in &innermost.windows {
                self.cover(window);
                self.signature(window);
            }
        }
        self.reveals();
        self.borders();
    }

    fn window_size(&mut self, part: &str, window: &Window) {
        let edge = window.edge().size();
        if !is_size(edge.short_side()) {
            self.faults.push(
                Fault::refuse(
                    "window.none",
                    part,
                    format!(
                        "its window is {} × {}",
                        self.say(edge.width),
                        self.say(edge.height)
                    ),
                    "a window must be above zero both ways",
                    "Cover the art less",
                )
                .because(window.face.width.line),
            );
        }
    }

    /// A window that runs past the board it is cut in.
    fn window_edge(&mut self, part: &str, window: &Window) {
        let sides = [window.x, window.right, window.y, window.bottom];
        if let Some(gone) = sides.iter().find(|side| !is_size(side.value)) {
            let found = if gone.value.is_zero() {
                "a window reaches the board's edge".to_owned()
            } else {
                format!(
                    "a window runs {} past the board's edge",
                    self.say(-gone.value)
                )
            };
            self.faults.push(
                Fault::refuse(
                    "border.none",
                    part,
                    found,
                    "every window needs a border all round",
                    "Choose a larger frame, narrower borders, or cover the art more",
                )
                .because(gone.line),
            );
        }
    }

    /// Windows of one mat that overlap, or stand too close.
    fn neighbours(&mut self, part: &str, windows: &[Window]) {
        let least = self.brief.settings.length(Key::MinGutter);
        let free = self
            .brief
            .job
            .layout
            .as_ref()
            .is_some_and(|l| l.arrange == trade::Arrangement::Free);
        for (i, a) in windows.iter().enumerate() {
            for (j, b) in windows.iter().enumerate().skip(i + 1) {
                let gap = gap(a, b);
                if gap.is_negative() || gap.is_zero() {
                    self.faults.push(Fault::refuse(
                        "opening.overlap",
                        format!("{part}, openings {} and {}", i + 1, j + 1),
                        if gap.is_zero() {
                            "they touch".to_owned()
                        } else {
                            format!("they overlap by {}", self.say(-gap))
                        },
                        format!("at least {} must stand between them", self.say(least)),
                        "Move one of them, or widen the gutter",
                    ));
                } else if free && gap < least {
                    self.faults.push(Fault::refuse(
                        "layout.gutter",
                        format!("{part}, openings {} and {}", i + 1, j + 1),
                        format!("{} stands between them", self.say(gap)),
                        format!("the least strip that holds is {}", self.say(least)),
                        format!("Move one of them {} further", self.say(least - gap)),
                    ));
                }
            }
        }
    }

    fn groove(&mut self, part: &str, mat: &MatSizes) {
        let least = self.brief.settings.length(Key::GrooveClear);
        if let Some(groove) = mat.groove.filter(|groove| *groove < least) {
            self.faults.push(Fault::warn(
                "mat.groove",
                part,
                format!("its groove runs {} from the window", self.say(groove)),
                format!("{} keeps the strip between them whole", self.say(least)),
                format!("Write `groove = \"{}\"` or more", self.typed(least)),
            ));
        }
    }

    fn fillet(&mut self, part: &str, mat: &MatSizes) {
        let land = self.brief.settings.length(Key::FilletLand);
        let package = self.sizes.package.size();
        for window in &mat.windows {
            let Some(fillet) = window.fillet else {
                continue;
            };
            let long = fillet.long.size();
            let room = package.shrink(land);
            if long.width > room.width || long.height > room.height {
                self.faults.push(
                    Fault::refuse(
                        "fillet.past_mat",
                        format!("{part}, fillet"),
                        format!(
                            "its long points are {} × {}",
                            self.say(long.width),
                            self.say(long.height)
                        ),
                        format!(
                            "the mat leaves {} × {}",
                            self.say(room.width),
                            self.say(room.height)
                        ),
                        "Widen the borders, or tuck the fillet less",
                    )
                    .because(fillet.long.width.line),
                );
            }
        }
    }

    /// How far the innermost window covers its art, or clears it.
    fn cover(&mut self, window: &Window) {
        let opening = &self.brief.openings[window.openings[0]];
        let Some(index) = opening.art else { return };
        let art = &self.sizes.art[index];
        let edge = window.edge();
        if opening.floats {
            for axis in [Axis::Width, Axis::Height] {
                self.float_gap(opening, axis, edge.along(axis), art.largest.along(axis));
            }
            self.float_corners(&opening.name, window, art.largest.size());
        } else if opening.overlap.value.is_negative()
            && art.sheet.is_none()
            && !edge
                .size()
                .shrink(Length::ZERO - Length::QUANTUM)
                .fits_in(art.smallest.size())
        {
            self.faults.push(Fault::warn(
                "art.no_sheet",
                opening.name.clone(),
                "its window is larger than the image, and the sheet's size is not given",
                "",
                "Measure the whole sheet and write `sheet = \"…\"`",
            ));
        } else {
            let behind = art.behind_window();
            for axis in [Axis::Width, Axis::Height] {
                self.covers(&opening.name, axis, edge.along(axis), side(behind, axis));
            }
        }
    }

    /// A window that hides the edges of the art floated in it.
    fn float_gap(
        &mut self,
        opening: &OpeningBrief<'_>,
        axis: Axis,
        edge: Worked<Length>,
        art: Worked<Length>,
    ) {
        let gap = half(edge.value - art.value);
        if is_size(gap) {
            return;
        }
        let more = opening.margin.value - gap;
        self.faults.push(
            Fault::refuse(
                "float.covered",
                opening.name.clone(),
                if gap.is_zero() {
                    format!("its {axis} leaves nothing round the floated art")
                } else {
                    format!(
                        "its {axis} hides {} of the floated art on each side",
                        self.say(-gap)
                    )
                },
                "a float shows its edges",
                format!("Write a margin of more than {}", self.say(more)),
            )
            .because(edge.line),
        );
    }

    /// A curved or many-sided window that hides the corners of the art floated in it.
    fn float_corners(&mut self, name: &str, window: &Window, art: Size) {
        let (face, edge) = (window.face.size(), window.edge().size());
        let inside = window
            .outline
            .grown_nearest(face, half(edge.width - face.width));
        if art.fits_in(edge) && !inside.shows_corners(edge, art) {
            self.faults.push(
                Fault::refuse(
                    "float.corners_covered",
                    name,
                    "its outline hides the corners of the floated art",
                    "a float shows its edges",
                    "Write a wider margin, or a rectangular window",
                )
                .because(window.face.width.line),
            );
        }
    }

    /// A window past the art `behind` it, or barely on it.
    fn covers(&mut self, name: &str, axis: Axis, edge: Worked<Length>, behind: Length) {
        let least = self.brief.settings.length(Key::MinCover);
        let cover = half(behind - edge.value);
        let mend = format!("Cover it by {} more on each side", self.say(least - cover));
        if edge.value >= behind {
            self.faults.push(
                Fault::refuse(
                    "window.past_art",
                    name,
                    format!(
                        "its {axis} at the edge next to the art is {}",
                        self.say(edge.value)
                    ),
                    format!("the art behind it is {}", self.say(behind)),
                    mend,
                )
                .because(edge.line),
            );
        } else if cover < least {
            self.faults.push(
                Fault::warn(
                    "window.thin_cover",
                    name,
                    format!("its {axis} covers the art by {} a side", self.say(cover)),
                    format!("{} holds it", self.say(least)),
                    mend,
                )
                .because(edge.line),
            );
        }
    }

    fn signature(&mut self, window: &Window) {
        let opening = &self.brief.openings[window.openings[0]];
        let Some(index) = opening.art.filter(|_| !opening.floats) else {
            return;
        };
        let Some(signature) = self.brief.job.art[index].signature else {
            return;
        };
        let art = self.sizes.art[index].smallest.size();
        let edge = window.edge().size();
        let hidden = [
            (Axis::Width, *signature.x, *signature.width),
            (Axis::Height, *signature.y, *signature.height),
        ]
        .into_iter()
        .map(|(axis, from, long)| {
            let cover = half(along(art, axis) - along(edge, axis));
            (cover - from).max(from + long - (along(art, axis) - cover))
        })
        .max()
        .unwrap_or_default();
        if is_size(hidden) {
            self.faults.push(Fault::warn(
                "window.hides_signature",
                opening.name.clone(),
                format!("it hides the signature by {}", self.say(hidden)),
                "a signature is to be seen",
                format!("Cover the art by {} less on each side", self.say(hidden)),
            ));
        }
    }

    /// Reveals that the bevel above swallows.
    fn reveals(&mut self) {
        let count = self.sizes.mats.len();
        for (m, mat) in self.sizes.mats.iter().enumerate() {
            let Some(seen) = mat.reveal_seen.filter(|seen| !is_size(seen.value)) else {
                continue;
            };
            self.faults.push(
                Fault::warn(
                    "reveal.hidden",
                    part_name("Mat", m, count),
                    format!(
                        "{} of the mat below is seen inside its bevel",
                        self.say(seen.value)
                    ),
                    "a reveal wider than the bevel's slope is seen",
                    format!("Write a reveal of more than {}", self.say(mat.slope.value)),
                )
                .because(seen.line),
            );
        }
    }

    /// A border that the lip hides whole, `seen` being what is left of `cut`.
    ///
    /// Where no border is left at all, `border.none` has said so.
    fn hidden_border(&mut self, name: &str, cut: Length, seen: Worked<Length>) {
        if !is_size(cut) {
            return;
        }
        let cover = cut - seen.value;
        let cure = format!(
            "Make it wider than {}, take a narrower lip, or take the mat out",
            self.say(cover)
        );
        self.faults.push(
            Fault::refuse(
                "border.hidden",
                format!("Border, {name}"),
                format!("it is cut {} wide", self.say(cut)),
                format!("the lip covers {} and hides all of it", self.say(cover)),
                cure,
            )
            .because(seen.line),
        );
    }

    /// Borders stated beside a given size, which leaves others.
    fn given_borders(&mut self, borders: BorderSizes) {
        let Some(stated) = self
            .brief
            .job
            .borders
            .filter(|_| self.brief.job.fit.is_some())
        else {
            return;
        };
        let visible = self.brief.settings.choice(Key::BorderMeasured) == "visible";
        let measured = borders.visible.filter(|_| visible).unwrap_or(borders.cut);
        let named = [stated.left, stated.right, stated.top, stated.bottom];
        for ((name, border), own) in measured.named().into_iter().zip(named) {
            // Where nothing is left, `border.none` or `border.hidden` says so.
            let differs = |asked: &Measured| **asked != border.value && is_size(border.value);
            let Some(asked) = own.or(stated.all).filter(differs) else {
                continue;
            };
            self.faults.push(
                Fault::refuse(
                    "border.given_size",
                    format!("Border, {name}"),
                    format!("{} is stated", self.say(*asked)),
                    format!("the given size leaves {}", self.say(border.value)),
                    "Leave the line out, change the window, or take `[fit]` out",
                )
                .because(border.line),
            );
        }
    }

    fn borders(&mut self) {
        let Some(borders) = self.sizes.borders else {
            return;
        };
        let least = self.brief.settings.length(Key::MinBorder);
        self.given_borders(borders);
        let seen = borders.visible.unwrap_or(borders.cut).named();
        for ((name, border), (_, cut)) in seen.into_iter().zip(borders.cut.named()) {
            if !is_size(border.value) {
                self.hidden_border(name, cut.value, border);
            } else if border.value < least {
                self.faults.push(
                    Fault::warn(
                        "border.narrow",
                        format!("Border, {name}"),
                        format!("{} of it is seen", self.say(border.value)),
                        format!("{} is the least that cuts and holds", self.say(least)),
                        format!("Widen it by {}", self.say(least - border.value)),
                    )
                    .because(border.line),
                );
            }
        }
        let (top, bottom) = (borders.cut.top, borders.cut.bottom);
        if bottom.value < top.value {
            self.faults.push(
                Fault::warn(
                    "border.light_bottom",
                    "Border, bottom",
                    format!("it is {}", self.say(bottom.value)),
                    format!("the top one is {}", self.say(top.value)),
                    "A bottom border no narrower than the top looks level",
                )
                .because(bottom.line),
            );
        }
        let stated = self.brief.job.borders.unwrap_or_default();
        let asked = stated.left.is_some() || stated.right.is_some();
        let (left, right) = (borders.cut.left.value, borders.cut.right.value);
        if !asked && (left - right).abs() > Length::QUANTUM {
            self.faults.push(Fault::warn(
                "border.uneven",
                "Borders, left and right",
                format!("they are {} and {}", self.say(left), self.say(right)),
                "nobody asked for a difference",
                "Move the openings, or name both borders",
            ));
        }
    }
}

/// The gap between two windows, along the axis that separates them best.
fn gap(a: &Window, b: &Window) -> Length {
    let apart = |a0: Length, a1: Length, b0: Length, b1: Length| {
        let (a_end, b_end) = (a0 + a1, b0 + b1);
        (b0 - a_end).max(a0 - b_end)
    };
    let across = apart(a.x.value, a.face.width.value, b.x.value, b.face.width.value);
    let down = apart(
        a.y.value,
        a.face.height.value,
        b.y.value,
        b.face.height.value,
    );
    across.max(down)
}
