//! Frame members from the front: rails with their relief in the light, mitres, fillets.

use sizing::MemberSizes;

use super::View;
use crate::colour::{CLOTH, Colour, WOOD};
use crate::profile::{has_outline, section_of};
use crate::scene::{Box2, Fill, Node, Path, Pen, Point, area, clipped, part, stroke};

/// A member, with its shadow on what it frames, and the fillet under its lip.
pub(super) fn member(view: &View<'_>, index: usize) -> Vec<Node> {
    let piece = view.piece;
    let member = &piece.sizes.members[index];
    let outer = piece.rim(member.outside.size());
    let inner = piece.rim(member.sight.unwrap_or(member.rabbet).size());
    let mut nodes = Vec::new();
    if let Some(fillet) = &member.fillet {
        let sight = piece.rim(fillet.sight.size());
        let colour = fillet
            .material
            .as_ref()
            .and_then(|material| material.colour.as_deref());
        nodes.extend(shadow(&sight, LIP_SHADOW));
        let rails = rails(&inner, &sight, Colour::first(colour, None, WOOD), &FLAT);
        nodes.push(part(format!("frame.{}.fillet", index + 1), rails));
    }
    nodes.extend(shadow(&inner, LIP_SHADOW));
    let relief = relief(member);
    nodes.push(part(
        format!("frame.{}", index + 1),
        rails(&outer, &inner, colour_of(member), &relief),
    ));
    nodes
}

/// How far a lip's shadow falls, in millimetres of the piece.
const LIP_SHADOW: f64 = 3.0;

/// A strip without relief.
pub(super) const FLAT: [(f64, f64); 3] = [(0.0, 0.7), (0.2, 0.0), (0.8, -0.7)];

fn relief(member: &MemberSizes) -> Vec<(f64, f64)> {
    let plain = !has_outline(member);
    section_of(member, 0.0).relief(member.face.value.approx_mm(), plain)
}

/// The colour of a member, by its material or its role.
pub(crate) fn colour_of(member: &MemberSizes) -> Colour {
    let own = member
        .material
        .as_ref()
        .and_then(|material| material.colour.as_deref());
    let usual = if member.role == trade::Role::Liner {
        CLOTH
    } else {
        WOOD
    };
    Colour::first(own, None, usual)
}

/// Rails between two rims, mitred, lit strip by strip; `relief` gives where each strip starts, as a
/// share of the width, and how it rises inwards.
pub(super) fn rails(
    outer: &[Point],
    inner: &[Point],
    colour: Colour,
    relief: &[(f64, f64)],
) -> Vec<Node> {
    let count = outer.len().min(inner.len());
    let mut nodes = Vec::new();
    for side in 0..count {
        let next = (side + 1) % count;
        let inward = inward(outer[side], outer[next]);
        for (share, slope) in relief {
            // Each strip reaches to the inner edge, so that no paper shows between strips.
            let strip = vec![
                outer[side].toward(inner[side], *share),
                outer[next].toward(inner[next], *share),
                inner[next],
                inner[side],
            ];
            nodes.push(area(
                Path::ring(strip),
                Fill::Flat(colour.lit(light(inward, *slope))),
            ));
        }
    }
    let mitres = (0..count).map(|k| vec![outer[k], inner[k]]);
    nodes.push(stroke(Path::lines(mitres), Pen::Fine));
    nodes.push(stroke(
        Path::rings([outer.to_vec(), inner.to_vec()]),
        Pen::Outline,
    ));
    nodes
}

/// The direction inwards from an edge of a clockwise ring.
pub(super) fn inward(from: Point, to: Point) -> Point {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let long = dx.hypot(dy).max(1e-9);
    Point {
        x: -dy / long,
        y: dx / long,
    }
}

/// How bright a face looks that rises inwards by `slope`: 1 where it lies flat.
///
/// Source: Lambert's law of diffuse reflection, with a third of the light coming from all round.
pub(super) fn light(inward: Point, slope: f64) -> f64 {
    const FROM: [f64; 3] = [-0.42, -0.52, 0.74]; // over the left shoulder
    let normal = [-slope * inward.x, -slope * inward.y, 1.0];
    let long = (slope * slope + 1.0).sqrt();
    let dot: f64 = normal.iter().zip(FROM).map(|(n, l)| n / long * l).sum();
    let direct = (dot / FROM[2]).max(0.0);
    0.36 + 0.64 * direct.min(1.55)
}

/// The shadow that an edge throws on what lies within it.
pub(super) fn shadow(edge: &[Point], by: f64) -> Vec<Node> {
    let around = Box2::of(edge).grown(by * 4.0).corners();
    let cast = |share: f64, depth: f64| {
        let moved = edge
            .iter()
            .map(|p| p.plus(by * share * 0.8, by * share))
            .collect();
        area(Path::rings([around.clone(), moved]), Fill::Shadow(depth))
    };
    let soft = vec![
        cast(1.3, 0.05),
        cast(1.0, 0.07),
        cast(0.7, 0.08),
        cast(0.35, 0.10),
    ];
    vec![clipped(Path::ring(edge.to_vec()), soft)]
}
