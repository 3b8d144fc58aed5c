//! Layers of the package, front to back.

use measure::Length;
use sizing::{LayerKind, MatSizes, Window};
use trade::Bevel;

use super::frame::{rect, tint};
use super::labels::Said;
use super::pile::Layer;
use super::ruler::{PAST, Stretches};
use super::{Cut, pale};
use crate::colour::{BOARD, Colour, PAPER, WOOD};
use crate::elevation::{core_colour, face_colour};
use crate::hatch::Grain;
use crate::scene::{Path, Pen, at};
use crate::twin::numbered;

/// A layer being drawn, with where its rabbet's front lies.
struct Laying<'l> {
    layer: &'l Layer,
    top: f64,
    bottom: f64,
    /// Where labels of full sheets hang.
    label_x: f64,
    right: f64,
}

impl Cut<'_> {
    /// Draws everything in a member's rabbet.
    pub(super) fn lay(&mut self, index: usize, layers: &[Layer], rabbet: f64) {
        let innermost = index + 1 == self.piece.sizes.members.len();
        if let (Some(first), Some(last)) = (layers.first(), layers.last()) {
            let from = rabbet + first.top;
            self.broken[0] = if index == 0 {
                from
            } else {
                self.broken[0].min(from)
            };
            self.broken[1] = self.broken[1].max(rabbet + last.bottom);
        }
        let mut mats_seen = Vec::new();
        let mut hang = 0.0;
        for (k, layer) in layers.iter().enumerate() {
            self.said = self.listed(index, k);
            let reversed = layer.what == LayerKind::Mat && mats_seen.contains(&layer.index);
            if layer.what == LayerKind::Mat {
                mats_seen.push(layer.index);
            }
            hang += 2.0;
            let right = self.end() + PAST;
            let laying = Laying {
                layer,
                top: rabbet + layer.top,
                bottom: rabbet + layer.bottom,
                label_x: self.end() - 1.5 - hang % 6.0,
                right,
            };
            self.one(index, &laying, reversed);
        }
        if innermost {
            let art = layers.iter().position(|layer| layer.what == LayerKind::Art);
            self.said = art.map_or(Said::Else, |k| self.listed(index, k));
            self.art(layers, rabbet);
        }
    }

    /// What is drawn across: everything round edges, and little of what lies even between them.
    pub(super) fn across(&self) -> Stretches {
        let sizes = self.piece.sizes;
        let mut places = self.places.clone();
        for member in &sizes.members {
            let sight = member.sight.unwrap_or(member.rabbet);
            places.extend(
                [member.outside, member.rabbet, sight].map(|size| self.edge(size.width.value)),
            );
            if let Some(fillet) = &member.fillet {
                places.push(self.edge(fillet.sight.width.value));
            }
            if let Some(floater) = &member.floater {
                places.push(self.edge(floater.ledge_opening.width.value));
            }
        }
        let package = self.edge(sizes.package.width.value);
        for (mat, window) in self.cut_windows() {
            let face = package + window.x.value.approx_mm();
            places.extend([face, face + mat.slope.value.approx_mm()]);
            if let Some(fillet) = &window.fillet {
                places.push(
                    face + (window.face.width.value - fillet.sight.width.value).approx_mm() / 2.0,
                );
                places.push(
                    face - (fillet.long.width.value - window.face.width.value).approx_mm() / 2.0,
                );
            }
        }
        if let Some(laid) = self.cut_art().filter(|laid| laid.whole) {
            places.push(self.art_left(&laid));
        }
        if let (Some(sink), Some(laid)) = (&sizes.sink, self.cut_art()) {
            let hollow = sink.hollow.width.value.approx_mm();
            let art = self.art_left(&laid);
            places.extend([art, art + (laid.at.width() - hollow) / 2.0]);
        }
        if let Some(strainer) = &sizes.strainer {
            places.push(self.edge(strainer.inner.width.value));
        }
        if let Some(walls) = &sizes.walls {
            places.push(package + walls.thickness.approx_mm());
        }
        // A single moulding is shown whole where it can be; of several, wide faces are shortened.
        let unbroken = if sizes.members.len() > 1 { 16.0 } else { 55.0 };
        let floats = sizes.members.iter().any(|member| member.floater.is_some());
        Stretches::round(
            &places,
            if floats { f64::INFINITY } else { self.sight() },
            unbroken,
        )
    }

    /// Where the innermost member ends.
    pub(super) fn sight(&self) -> f64 {
        let innermost = self.piece.sizes.members.last();
        innermost.map_or(0.0, |member| {
            self.edge(member.sight.unwrap_or(member.rabbet).width.value)
        })
    }

    /// The window of each mat that the cut goes through first.
    fn cut_windows(&self) -> Vec<(&MatSizes, &Window)> {
        let mats = &self.piece.sizes.mats;
        let Some(first) = mats
            .first()
            .and_then(|mat| mat.windows.iter().min_by_key(|window| window.x.value))
        else {
            return Vec::new();
        };
        let opening = first.openings.first();
        mats.iter()
            .filter_map(|mat| {
                let window = mat
                    .windows
                    .iter()
                    .find(|window| opening.is_some_and(|o| window.openings.contains(o)));
                window.map(|window| (mat, window))
            })
            .collect()
    }

    fn one(&mut self, member: usize, laying: &Laying<'_>, reversed: bool) {
        let sizes = self.piece.sizes;
        match laying.layer.what {
            LayerKind::Glazing => self.pane(laying),
            LayerKind::Mount | LayerKind::Backing => self.board(laying),
            LayerKind::Mat => self.mat(laying, reversed),
            LayerKind::MatFillet => self.mat_fillet(laying),
            LayerKind::FrameFillet => self.frame_fillet(member, laying),
            LayerKind::Spacer => {
                let width = sizes.spacer.as_ref().and_then(|spacer| spacer.width);
                self.strip("spacer", "Spacer", width, laying, Grain::Crossed);
            }
            LayerKind::Walls => {
                let width = sizes.walls.as_ref().map(|walls| walls.thickness);
                self.strip("walls", "Wall, high", width, laying, Grain::Slanted);
            }
            LayerKind::Sink => self.sink(laying),
            LayerKind::Strainer => self.strainer(laying),
            // Strips on the back of a member within are drawn with that member.
            LayerKind::Art | LayerKind::Member | LayerKind::BuildUp => {}
        }
    }

    fn pane(&mut self, laying: &Laying<'_>) {
        let index = laying.layer.index;
        let pane = &self.piece.sizes.glazing[index];
        let name = match pane.pane {
            Some(trade::Pane::Glass) => "Glass",
            Some(trade::Pane::Acrylic) => "Acrylic",
            None => "Glazing",
        };
        let left = self.edge(pane.sheet.size.width.value);
        let part = format!("glazing.{}", index + 1);
        self.full(&part, name, left, laying, (PAPER, Grain::Glass));
    }

    /// The mount, or a backing board.
    fn board(&mut self, laying: &Laying<'_>) {
        let sizes = self.piece.sizes;
        let (layer, index) = (laying.layer, laying.layer.index);
        let colour = tint(layer.material.as_ref(), BOARD);
        if layer.what == LayerKind::Mount {
            let size = sizes
                .mount
                .as_ref()
                .map_or(sizes.package, |mount| mount.size);
            let left = self.edge(size.width.value);
            self.full("mount", "Mount", left, laying, (colour, Grain::Plies(2)));
            return;
        }
        let left = self.edge(sizes.backing[index].size.width.value);
        let name = numbered("Backing", index, sizes.backing.len());
        let part = format!("backing.{}", index + 1);
        self.full(&part, &name, left, laying, (colour, Grain::Dots));
    }

    /// A sheet that runs on past the right end.
    fn full(
        &mut self,
        part: &str,
        name: &str,
        left: f64,
        laying: &Laying<'_>,
        (colour, grain): (Colour, Grain),
    ) {
        let path = rect([left, laying.top], [laying.right, laying.bottom]);
        self.solid(part, path, colour, grain);
        let spot = [laying.label_x, f64::midpoint(laying.top, laying.bottom)];
        self.label_thick(part, spot, name, laying.layer.thickness);
    }

    /// A strip at the package's edge.
    fn strip(
        &mut self,
        part: &str,
        name: &str,
        width: Option<Length>,
        laying: &Laying<'_>,
        grain: Grain,
    ) {
        let left = self.edge(self.piece.sizes.package.width.value);
        if width.is_none() {
            self.notes.push(format!(
                "{name}: its width is not known; it is drawn by guess."
            ));
        }
        let right = left + width.map_or(3.0, Length::approx_mm);
        let colour = tint(laying.layer.material.as_ref(), BOARD);
        self.solid(
            part,
            rect([left, laying.top], [right, laying.bottom]),
            colour,
            grain,
        );
        let y = laying.top + (laying.bottom - laying.top) * 0.4;
        self.label_thick(
            part,
            [f64::midpoint(left, right), y],
            name,
            laying.layer.thickness,
        );
    }

    fn mat(&mut self, laying: &Laying<'_>, reversed: bool) {
        let sizes = self.piece.sizes;
        let index = laying.layer.index;
        let mat = &sizes.mats[index];
        let found = self
            .cut_windows()
            .iter()
            .find(|(own, _)| std::ptr::eq(*own, mat))
            .map(|(_, window)| window.x.value);
        let left = self.edge(mat.sheet.size.width.value);
        let face = found.map_or(laying.right, |x| {
            self.edge(sizes.package.width.value) + x.approx_mm()
        });
        let slope = mat.slope.value.approx_mm();
        let foot = match mat.bevel {
            Bevel::Normal => face + slope,
            Bevel::Reverse => face - slope,
            Bevel::Square => face,
        };
        let (above, below) = if reversed { (foot, face) } else { (face, foot) };
        let (top, bottom) = (laying.top, laying.bottom);
        let path = Path::ring(vec![
            at(left, top),
            at(above, top),
            at(below, bottom),
            at(left, bottom),
        ]);
        let surface = if reversed {
            [at(left, bottom), at(below, bottom)]
        } else {
            [at(left, top), at(above, top)]
        };
        let part = format!("mat.{}", index + 1);
        let colour = core_colour(mat);
        let solid = self.solid(part.clone(), path, colour, Grain::Plies(3));
        solid.edges.push((
            Path::open(surface.to_vec()),
            Pen::Heavy,
            Some(face_colour(mat)),
        ));
        solid
            .edges
            .push((Path::open(surface.to_vec()), Pen::Fine, None));
        let name = numbered("Mat", index, sizes.mats.len());
        let spot = [above.min(below) - 1.6, f64::midpoint(top, bottom)];
        self.label_thick(part, spot, name, mat.sheet.thickness);
    }

    fn mat_fillet(&mut self, laying: &Laying<'_>) {
        let sizes = self.piece.sizes;
        let index = laying.layer.index;
        let mat = &sizes.mats[index];
        let window = self
            .cut_windows()
            .iter()
            .find(|(own, _)| std::ptr::eq(*own, mat))
            .map(|(_, window)| (*window).clone());
        let Some((window, fillet)) =
            window.and_then(|window| window.fillet.map(|fillet| (window, fillet)))
        else {
            return;
        };
        let face = self.edge(sizes.package.width.value) + window.x.value.approx_mm();
        let half = |inner: Length, outer: Length| (outer - inner).approx_mm() / 2.0;
        let left = face - half(window.face.width.value, fillet.long.width.value);
        let right = face + half(fillet.sight.width.value, window.face.width.value);
        let part = format!("mat.{}.window.{}.fillet", index + 1, 1);
        let colour = tint(laying.layer.material.as_ref(), WOOD);
        self.solid(
            part.clone(),
            rect([left, laying.top], [right, laying.bottom]),
            colour,
            Grain::Wood(1),
        );
        let spot = [right - 1.5, f64::midpoint(laying.top, laying.bottom)];
        self.label_thick(part, spot, "Fillet", laying.layer.thickness);
    }

    fn frame_fillet(&mut self, member: usize, laying: &Laying<'_>) {
        let Some(fillet) = &self.piece.sizes.members[member].fillet else {
            return;
        };
        let (left, right) = (
            self.edge(fillet.long.width.value),
            self.edge(fillet.sight.width.value),
        );
        let thickness = fillet.thickness;
        let part = format!("frame.{}.fillet", member + 1);
        let colour = tint(laying.layer.material.as_ref(), WOOD);
        self.solid(
            part.clone(),
            rect([left, laying.top], [right, laying.bottom]),
            colour,
            Grain::Wood(1),
        );
        let spot = [right - 1.5, f64::midpoint(laying.top, laying.bottom)];
        self.label_thick(part, spot, "Fillet", thickness);
    }

    fn strainer(&mut self, laying: &Laying<'_>) {
        let Some(strainer) = &self.piece.sizes.strainer else {
            return;
        };
        let (left, right) = (
            self.edge(strainer.outer.width.value),
            self.edge(strainer.inner.width.value),
        );
        let path = rect([left, laying.top], [right, laying.bottom]);
        self.solid("strainer", path, pale(WOOD), Grain::Wood(0));
        let spot = [left + 3.0, f64::midpoint(laying.top, laying.bottom)];
        self.label_thick("strainer", spot, "Strainer", laying.layer.thickness);
    }

    fn sink(&mut self, laying: &Laying<'_>) {
        let Some(sink) = &self.piece.sizes.sink else {
            return;
        };
        let left = self.edge(self.piece.sizes.package.width.value);
        let hollow = sink.hollow.width.value.approx_mm();
        let right = self.cut_art().map_or(laying.right, |laid| {
            self.art_left(&laid) + (laid.at.width() - hollow) / 2.0
        });
        let colour = tint(laying.layer.material.as_ref(), BOARD);
        let path = rect([left, laying.top], [right, laying.bottom]);
        self.solid("sink", path, colour, Grain::Slanted);
        let spot = [right - 2.0, f64::midpoint(laying.top, laying.bottom)];
        self.label_thick("sink", spot, "Sink", laying.layer.thickness);
    }
}
