//! Frames, fillets, spacers and strainers, taken apart into strips.

use std::sync::Arc;

use measure::{Angle, Length, Size};
use sizing::{Legs, MemberSizes, SpacerSizes};
use trade::{Key, Material};

use super::{Desk, NO_CODE, NO_WIDTH, Slant, faces};
use crate::part::{Panel, Strip, named};
use crate::ware::WareKind;

/// Sides of a rectangle.
const RECTANGLE: u32 = 4;

impl Desk<'_> {
    pub(super) fn members(&mut self) {
        let sizes = self.sizes;
        for member in &sizes.members {
            self.member(member);
            if let Some(fillet) = &member.fillet {
                let part = format!("{}, fillet", member.name);
                let ring = Ring {
                    long: fillet.long.size(),
                    width: fillet.face,
                    legs: Some(&member.legs),
                };
                self.fillet(part, fillet.material.as_ref(), &ring);
            }
        }
    }

    fn member(&mut self, member: &MemberSizes) {
        let Some(material) = &member.material else {
            self.leave(member.name.clone(), NO_CODE);
            return;
        };
        let strips = if self.sizes.sides == RECTANGLE {
            let size = member.outside.size();
            legs_of_rectangle(&member.legs, size.width > size.height)
        } else {
            legs_of_polygon(&member.legs, |leg| leg.long.value)
        };
        let slant = match member.legs.compound {
            Some((gauge, blade)) => Slant::Mitred(gauge.value, blade.value),
            None => Slant::Mitred(member.legs.mitre.value, Angle::ZERO),
        };
        let rails = self.rails(member.name.clone(), strips, true, slant);
        let at_hand = member.stick.stick;
        let heap = self.heap(material, WareKind::Moulding, None);
        heap.stick = heap.stick.max(Some(at_hand));
        heap.rails.push(rails);
    }

    /// A fillet in a frame or a window: joined like a frame.
    pub(super) fn fillet(
        &mut self,
        part: String,
        material: Option<&Arc<Material>>,
        ring: &Ring<'_>,
    ) {
        let Some(material) = material else {
            self.leave(part, NO_CODE);
            return;
        };
        let mitred = self.settings.choice(Key::FilletCorners) == "mitred";
        let (strips, slant) = ring.strips(self.sizes.sides, mitred);
        let rails = self.rails(part, strips, true, slant);
        let at_hand = self.settings.length(Key::StickLength);
        let heap = self.heap(material, WareKind::Fillet, None);
        heap.stick = heap.stick.max(Some(at_hand));
        heap.rails.push(rails);
    }

    pub(super) fn spacers(&mut self) {
        let sizes = self.sizes;
        let Some(spacer) = &sizes.spacer else {
            return;
        };
        let Some(material) = &spacer.material else {
            self.leave("Spacer", NO_CODE);
            return;
        };
        let mitred = self.settings.choice(Key::SpacerCorners) == "mitred";
        let ring = Ring {
            long: sizes.package.size(),
            width: spacer.width.unwrap_or_default(),
            legs: sizes.members.last().map(|member| &member.legs),
        };
        let (strips, slant) = ring.strips(sizes.sides, mitred);
        let in_sheets = material
            .kind
            .and_then(super::kind_of)
            .is_some_and(|kind| !kind.in_sticks());
        for face in faces(sizes.double_sided) {
            let part = named("Spacer", &face);
            if in_sheets {
                self.spacer_panels(&part, spacer, &strips);
            } else {
                let rails = self.rails(part, strips.clone(), false, slant);
                let at_hand = self.settings.length(Key::StickLength);
                let heap = self.heap(material, WareKind::Spacer, None);
                heap.stick = heap.stick.max(Some(at_hand));
                heap.rails.push(rails);
            }
        }
    }

    /// Spacers cut from a board: each strip a narrow rectangle.
    fn spacer_panels(&mut self, part: &str, spacer: &SpacerSizes, strips: &[Strip]) {
        let (Some(width), Some(material)) = (spacer.width, &spacer.material) else {
            self.leave(part, NO_WIDTH);
            return;
        };
        let turn = material.one_way != Some(true);
        for strip in strips {
            let panel = Panel {
                job: self.job,
                part: named(part, &strip.side),
                copies: vec![String::new()],
                size: Size::new(strip.length, width),
                turn,
                falls: Vec::new(),
            };
            self.heap(material, WareKind::Board, None)
                .panels
                .push(panel);
        }
    }

    pub(super) fn strainer(&mut self) {
        let Some(strainer) = self.sizes.strainer else {
            return;
        };
        let (outer, inner) = (strainer.outer.size(), strainer.inner.size());
        let bars = Ring {
            long: outer,
            width: strainer.width,
            legs: None,
        };
        let (strips, slant) = bars.strips(RECTANGLE, true);
        let outer = self.rails("Strainer".to_owned(), strips, false, slant);
        let between = |count: u32, name: &str, length: Length| {
            (1..=count)
                .map(|n| strip(&format!("{name} {n}"), length))
                .collect::<Vec<_>>()
        };
        let mut bars = between(strainer.uprights, "upright", inner.height);
        bars.extend(between(strainer.cross_bars, "cross bar", inner.width));
        let inner = self.rails("Strainer".to_owned(), bars, false, Slant::Square);
        let at_hand = self.settings.length(Key::StickLength);
        let heap = self.strainer_heap(strainer.width, strainer.depth);
        heap.stick = heap.stick.max(Some(at_hand));
        heap.rails.push(outer);
        if !inner.strips.is_empty() {
            heap.rails.push(inner);
        }
    }
}

/// Strips that run round a rectangle, or round a polygon's rabbet.
pub(super) struct Ring<'a> {
    /// Over the strips' outer edges.
    pub long: Size,
    /// Width of a strip, in plan.
    pub width: Length,
    /// The legs of the frame it lies in, for polygons.
    pub legs: Option<&'a Legs>,
}

impl Ring<'_> {
    /// The strips and how their ends are cut.
    ///
    /// Shape:  mitred, each is as long as its side; square, the upright pair stands between the
    ///         level one. In a polygon each is as long as the rabbet's side, the least that is
    ///         certain to reach.
    fn strips(&self, sides: u32, mitred: bool) -> (Vec<Strip>, Slant) {
        if let (true, Some(legs)) = (sides != RECTANGLE, self.legs) {
            let slant = Slant::Mitred(legs.mitre.value, Angle::ZERO);
            return (legs_of_polygon(legs, |leg| leg.rabbet.value), slant);
        }
        let (upright, slant) = if mitred {
            (self.long.height, Slant::QUARTER)
        } else {
            (self.long.height - self.width.twice(), Slant::Square)
        };
        let strips = vec![
            strip("left", upright),
            strip("right", upright),
            strip("top", self.long.width),
            strip("bottom", self.long.width),
        ];
        (strips, slant)
    }
}

fn strip(side: &str, length: Length) -> Strip {
    Strip {
        side: side.to_owned(),
        length,
    }
}

/// The legs of a rectangle; `lying` where it is wider than high. The longer pair comes first.
fn legs_of_rectangle(legs: &Legs, lying: bool) -> Vec<Strip> {
    const UPRIGHT: [&str; 2] = ["left", "right"];
    const LEVEL: [&str; 2] = ["top", "bottom"];
    let sides = if lying {
        [LEVEL, UPRIGHT]
    } else {
        [UPRIGHT, LEVEL]
    };
    let pairs = legs.each.iter().zip(sides);
    pairs
        .flat_map(|(leg, sides)| sides.map(|side| strip(side, leg.long.value)))
        .collect()
}

fn legs_of_polygon(legs: &Legs, edge: impl Fn(&sizing::Leg) -> Length) -> Vec<Strip> {
    let all = legs
        .each
        .iter()
        .flat_map(|leg| (0..leg.count).map(|_| edge(leg)));
    all.enumerate()
        .map(|(i, length)| strip(&format!("side {}", i + 1), length))
        .collect()
}
