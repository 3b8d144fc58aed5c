//! Mouldings in the section, their fillets and strips, and what holds the package in them.

use measure::Length;

use super::labels::Said;
use super::{Cut, pale};
use crate::colour::{Colour, METAL, WOOD};
use crate::elevation::colour_of;
use crate::hatch::Grain;
use crate::profile::Section;
use crate::scene::{Path, Pen, at};

impl Cut<'_> {
    /// The moulding of a member.
    pub(super) fn profile(&mut self, index: usize, section: &Section, front: f64) {
        let sizes = self.piece.sizes;
        let member = &sizes.members[index];
        let left = self.edge(member.outside.width.value);
        let path = section.standing(left, front);
        let name = format!("frame.{}", index + 1);
        let colour = colour_of(member);
        let solid = self.solid(name.clone(), path.clone(), pale(colour), Grain::Wood(index));
        solid.edges.push((path, Pen::Outline, None));
        let face = member.face.value.approx_mm();
        let title = member
            .material
            .as_ref()
            .map_or("", |material| material.title());
        let (x, y) = if member.floater.is_some() {
            (left + face / 2.0, front + section.height * 0.12)
        } else {
            (
                left + face - member.lip.approx_mm() * 0.5,
                front + section.lip_front * 0.55,
            )
        };
        self.label(name, [x, y], member.name.clone(), title.to_owned());
    }

    /// Points, clips and strips at the back of a member.
    pub(super) fn hold(&mut self, index: usize, section: &Section, front: f64, thick: f64) {
        let sizes = self.piece.sizes;
        let member = &sizes.members[index];
        let Some(stack) = &member.stack else { return };
        let wall = self.edge(member.rabbet.width.value);
        let rabbet = front + section.lip_front;
        let (package, frame_back) = (rabbet + thick, front + section.height);
        let name = format!("frame.{}", index + 1);
        if let Some(strips) = stack.build_up.filter(|strips| strips.is_positive()) {
            self.said = self.strips_listed(index);
            let outside = self.edge(member.outside.width.value);
            self.strips(&name, [outside, wall, frame_back], strips);
            self.said = Said::Elsewhere;
        }
        let bottom = frame_back + stack.build_up.map_or(0.0, Length::approx_mm);
        self.back = self.back.max(bottom).max(package);
        self.broken[1] = self.broken[1].max(package);
        let innermost = index + 1 == sizes.members.len();
        if !innermost {
            return;
        }
        let over = stack.slack.value;
        if stack.proud.value.is_positive() {
            self.proud(&name, [wall, bottom, package]);
        } else if stack.tail.is_positive() {
            self.point(&name, wall, package);
        }
        let x = wall + TICKS_IN;
        if stack.proud.value.is_positive() {
            return;
        }
        if over.is_positive() {
            let to = package + over.approx_mm();
            self.gaps.push([x, package, to]);
            self.label_thick(name.clone(), [x, f64::midpoint(package, to)], "Slack", over);
        } else if over.is_zero() {
            self.label(name.clone(), [x, package], "Slack", "none");
        } else {
            self.label_thick(name.clone(), [x, package], "Too deep by", over.abs());
        }
        if stack.tail.is_positive() {
            let from = bottom - stack.tail.approx_mm();
            self.gaps.push([x, from, bottom]);
            self.label_thick(name, [x, f64::midpoint(from, bottom)], "Tail", stack.tail);
        }
    }

    /// Strips glued to the back.
    fn strips(&mut self, name: &str, [outside, wall, back]: [f64; 3], depth: Length) {
        let stated = self
            .piece
            .job
            .build_up
            .as_ref()
            .and_then(|strips| strips.width);
        let width = stated
            .map_or(15.0, |width| width.approx_mm())
            .min(wall - outside);
        let path = rect([wall - width, back], [wall, back + depth.approx_mm()]);
        self.solid(name, path, pale(WOOD), Grain::Wood(1));
        self.label_thick(
            name,
            [wall - 2.0, back + depth.approx_mm() / 2.0],
            "Strip on the back",
            depth,
        );
    }

    /// A point driven into the rabbet wall behind the package.
    fn point(&mut self, name: &str, wall: f64, package: f64) {
        let path = Path::ring(vec![
            at(wall - 6.0, package + 0.45),
            at(wall - 4.0, package),
            at(wall + 9.0, package),
            at(wall + 9.0, package + 0.9),
            at(wall - 4.0, package + 0.9),
        ]);
        let solid = self.solid(name, path, METAL, Grain::Plies(0));
        solid.grain = None;
    }

    /// How far the package stands out, and the clip that holds it.
    fn proud(&mut self, name: &str, [wall, frame_back, package]: [f64; 3]) {
        let sizes = self.piece.sizes;
        let Some(stack) = sizes
            .members
            .last()
            .and_then(|member| member.stack.as_ref())
        else {
            return;
        };
        self.gaps.push([wall - 3.0, frame_back, package]);
        let spot = [wall - 3.0, f64::midpoint(frame_back, package)];
        self.label_thick(name, spot, "Stands proud", stack.proud.value);
        let Some(clip) = stack.clip else { return };
        let reach = frame_back + clip.value.approx_mm();
        let bend = wall - 0.8;
        let line = vec![
            at(bend - 13.0, frame_back + 0.4),
            at(bend, frame_back + 0.4),
            at(bend, package.max(reach) + 0.4),
            at(wall + 13.0, package.max(reach) + 0.4),
        ];
        let path = rect([bend - 13.0, frame_back], [bend - 12.9, frame_back + 0.1]);
        let solid = self.solid(name, path, METAL, Grain::Plies(0));
        solid.grain = None;
        solid
            .edges
            .push((Path::open(line), Pen::Heavy, Some(METAL.lit(0.6))));
        let screw = vec![
            at(bend - 8.0, frame_back + 1.0),
            at(bend - 8.0, frame_back - 9.0),
        ];
        solid.edges.push((Path::open(screw), Pen::Fine, None));
        self.back = self.back.max(package.max(reach) + 1.5);
        self.label_thick(
            name,
            [wall + 11.0, package.max(reach) + 0.4],
            "Clip, offset",
            clip.value,
        );
    }
}

/// Where slack and tail are ticked, from the rabbet wall.
const TICKS_IN: f64 = 11.5;

/// A rectangle by two corners.
pub(super) fn rect([left, top]: [f64; 2], [right, bottom]: [f64; 2]) -> Path {
    Path::ring(vec![
        at(left, top),
        at(right, top),
        at(right, bottom),
        at(left, bottom),
    ])
}

/// The colour of a material, paled.
pub(super) fn tint(material: Option<&std::sync::Arc<trade::Material>>, last: Colour) -> Colour {
    pale(Colour::first(
        material.and_then(|material| material.colour.as_deref()),
        None,
        last,
    ))
}
