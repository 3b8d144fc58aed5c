//! The art in the section, what lifts it, and the air before it.

use sizing::LayerKind;
use trade::{Medium, Show};

use super::frame::rect;
use super::labels::Said;
use super::pile::{Layer, art_plane};
use super::ruler::PAST;
use super::{Cut, pale};
use crate::colour::{BOARD, CLOTH, Colour, PAPER, WOOD};
use crate::hatch::Grain;
use crate::piece::Laid;
use crate::scene::{Path, Pen, Point, at};

/// Art thicker than this stands as a body, in millimetres.
const BODY: f64 = 2.0;

impl Cut<'_> {
    /// The art where it lies: in line, on the mount, or lifted off it; and the air before it.
    pub(super) fn art(&mut self, layers: &[Layer], rabbet: f64) {
        let Some(laid) = self.cut_art() else { return };
        let sizes = self.piece.sizes;
        let in_line = layers
            .iter()
            .find(|layer| matches!(layer.what, LayerKind::Art | LayerKind::Sink));
        let ground = rabbet + in_line.map_or_else(|| art_plane(layers), |layer| layer.bottom);
        let left = self
            .art_left(&laid)
            .max(self.edge(sizes.package.width.value));
        let back = self.lifted(&laid, left, ground);
        let thick = sizes.art[laid.art].thickness;
        let front = back - thick.approx_mm();
        let beyond = self.end() + PAST;
        let right = if laid.whole {
            beyond.min(left + laid.at.width())
        } else {
            beyond
        };

        let stated = &self.piece.job.art[laid.art];
        let body = laid.whole && thick.approx_mm() > BODY;
        let path = rect([left, front], [right, back]);
        let edge = if body {
            path.clone()
        } else if stated.medium == Medium::Canvas {
            Path::open(vec![at(right, front), at(left, front), at(left, back)])
        } else {
            Path::open(vec![at(right, front), at(left, front)])
        };
        let (grain, fill) = substance(stated.medium);
        let part = format!("art.{}", laid.art + 1);
        let solid = self.solid(part.clone(), path, fill, grain);
        solid.edges.push((edge, Pen::Heavy, None));
        let name = if body {
            stated.title.as_deref().unwrap_or("Object")
        } else {
            "Art"
        };
        let spot = (self.end() - 7.0).min(right - 1.0).max(left + 1.0);
        self.label_thick(part, [spot, front], name, thick);
        self.said = Said::Else;
        self.air(layers, rabbet, at(self.end() - 3.5, front));
    }

    /// Draws the hidden board under a float; returns where the back of the art lies.
    fn lifted(&mut self, laid: &Laid, edge: f64, ground: f64) -> f64 {
        let stated = &self.piece.job.art[laid.art];
        if !laid.whole || stated.show != Some(Show::Float) {
            return ground;
        }
        let lift = self.piece.lift(stated);
        let back = ground - lift.approx_mm();
        let inner = edge + 5.0;
        let path = rect([inner, back], [self.end() + PAST, ground]);
        self.solid("lift", path, BOARD, Grain::Plies(2));
        let art = std::mem::replace(&mut self.said, Said::Else);
        let spot = [inner + 2.5, f64::midpoint(back, ground)];
        self.label_thick("lift", spot, "Lift", lift);
        self.said = art;
        back
    }

    fn air(&mut self, layers: &[Layer], rabbet: f64, front: Point) {
        let Some(air) = self.piece.sizes.air else {
            return;
        };
        let pane = layers
            .iter()
            .find(|layer| layer.what == LayerKind::Glazing)
            .map(|layer| rabbet + layer.bottom);
        let from = front.y - air.value.approx_mm();
        let spot = [front.x, from.midpoint(front.y)];
        if !air.value.is_positive() {
            self.label("package", spot, "Air", "none");
            return;
        }
        if pane.is_none_or(|pane| (pane - from).abs() < 0.6) {
            self.gaps.push([front.x, from, front.y]);
        }
        self.label_thick("package", spot, "Air", air.value);
    }

    /// The art that the cut goes through.
    pub(super) fn cut_art(&self) -> Option<Laid> {
        self.piece
            .laid()
            .into_iter()
            .min_by(|a, b| a.at.left.total_cmp(&b.at.left))
    }

    pub(super) fn art_left(&self, laid: &Laid) -> f64 {
        self.piece.sizes.outside.width.value.approx_mm() / 2.0 + laid.at.left
    }
}

/// Hatching and colour of what carries the art.
fn substance(medium: Medium) -> (Grain, Colour) {
    match medium {
        Medium::Canvas => (Grain::Wood(1), pale(WOOD)),
        Medium::Textile => (Grain::Crossed, CLOTH),
        _ => (Grain::Plies(0), PAPER),
    }
}
