//! A canvas in a floater.

use super::frame::rect;
use super::ruler::PAST;
use super::{Cut, pale};
use crate::colour::WOOD;
use crate::hatch::Grain;
use crate::profile::Section;
use crate::scene::{Path, Pen, at};

impl Cut<'_> {
    /// The canvas on the ledge, with its gap and setback.
    pub(super) fn canvas_in_floater(&mut self, index: usize, section: &Section, front: f64) {
        let sizes = self.piece.sizes;
        let member = &sizes.members[index];
        let Some(floater) = &member.floater else {
            return;
        };
        let recess = member
            .rabbet_depth
            .map_or(section.height - 10.0, measure::Length::approx_mm);
        let ledge = front + recess;
        let thickness = sizes.art[0].thickness;
        let (deep, face) = (thickness.approx_mm(), ledge - thickness.approx_mm());
        self.front = self.front.min(face);
        self.broken = [face, ledge];
        let left = self.edge(member.contents.width.value);
        self.canvas([left, face], ledge);
        self.label_thick(
            "art.1",
            [self.end() - 4.0, face + deep * 0.4],
            "Canvas",
            thickness,
        );
        let name = format!("frame.{}", index + 1);
        let gap = f64::midpoint(self.edge(member.rabbet.width.value), left);
        self.label_thick(name.clone(), [gap, face + deep * 0.2], "Gap", floater.gap);
        if let Some(setback) = floater.setback {
            let x = left + 3.0;
            if setback.value.is_positive() {
                self.gaps.push([x, front, face]);
            }
            let spot = [x, f64::midpoint(front, face)];
            self.label_thick(name, spot, "Setback", setback.value);
        }
        if !sizes.glazing.is_empty() {
            let why = "The floater's glazing is not drawn: what holds it is not described.";
            self.notes.push(why.to_owned());
        }
    }

    /// The stretcher bar with the canvas over its front and side.
    fn canvas(&mut self, [left, face]: [f64; 2], ledge: f64) {
        let right = self.end() + PAST;
        let path = rect([left, face], [right, ledge]);
        let solid = self.solid("art.1", path, pale(WOOD), Grain::Wood(1));
        let cloth = vec![at(right, face), at(left, face), at(left, ledge)];
        solid.edges.push((Path::open(cloth), Pen::Heavy, None));
    }
}
