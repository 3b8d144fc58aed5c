//! Mats from the front: boards in their colours, windows in their outlines, bevels and fillets.

use measure::Length;
use sizing::{MatSizes, Window};
use trade::Bevel;

use super::View;
use super::frames::{FLAT, inward, light, rails, shadow};
use crate::colour::{BOARD, CORE, Colour, WOOD};
use crate::scene::{Fill, Node, Path, Pen, Point, area, part, shape, stroke};

/// A mat: its shadow on what lies below, its fillets, the board, the bevels.
pub(super) fn mat(view: &View<'_>, index: usize) -> Vec<Node> {
    let mat = &view.piece.sizes.mats[index];
    let name = format!("mat.{}", index + 1);
    let throw = mat.sheet.thickness.approx_mm() * 0.9;
    let mut nodes = Vec::new();
    for (w, window) in mat.windows.iter().enumerate() {
        let face = view.piece.ring(window, Length::ZERO);
        if let Some(fillet) = fillet(view, mat, w, window) {
            let sight = view.piece.ring(window, mat.fillets[w].face);
            nodes.extend(shadow(&sight, throw));
            nodes.push(part(format!("{name}.window.{}.fillet", w + 1), fillet));
        }
        nodes.extend(shadow(&face, throw));
    }
    nodes.push(part(name, board(view, mat)));
    nodes
}

/// The colour of a mat's face.
pub(crate) fn face_colour(mat: &MatSizes) -> Colour {
    let catalogue = mat
        .sheet
        .material
        .as_ref()
        .and_then(|material| material.colour.as_deref());
    Colour::first(mat.colour.as_deref(), catalogue, BOARD)
}

/// The colour of a mat's core.
pub(crate) fn core_colour(mat: &MatSizes) -> Colour {
    let catalogue = mat
        .sheet
        .material
        .as_ref()
        .and_then(|material| material.core.as_deref());
    Colour::first(catalogue, None, CORE)
}

fn board(view: &View<'_>, mat: &MatSizes) -> Vec<Node> {
    let piece = view.piece;
    let rim = piece.rim(mat.sheet.size.size());
    let faces: Vec<Vec<Point>> = mat
        .windows
        .iter()
        .map(|window| piece.ring(window, Length::ZERO))
        .collect();
    let colour = face_colour(mat);
    let rings = std::iter::once(rim).chain(faces.iter().cloned());
    let mut nodes = vec![area(Path::rings(rings), Fill::Flat(colour))];
    if let Some(groove) = mat.groove {
        let rings: Vec<Vec<Point>> = mat
            .windows
            .iter()
            .map(|window| piece.ring(window, -groove))
            .collect();
        nodes.push(stroke(Path::rings(rings), Pen::Fine));
    }
    for (window, face) in mat.windows.iter().zip(&faces) {
        nodes.extend(bevel(view, mat, window, face));
    }
    nodes
}

/// The bevel as its core shows: a face falling inwards, edge by edge in the light.
fn bevel(view: &View<'_>, mat: &MatSizes, window: &Window, face: &[Point]) -> Vec<Node> {
    if mat.bevel != Bevel::Normal {
        return vec![stroke(Path::ring(face.to_vec()), Pen::Fine)];
    }
    let foot = view.piece.ring(window, mat.slope.value);
    let core = core_colour(mat);
    let whole = Path::rings([face.to_vec(), foot.clone()]);
    let mut nodes = vec![area(whole, Fill::Flat(core))];
    let count = face.len().min(foot.len());
    for k in 0..count {
        let next = (k + 1) % count;
        let quad = vec![face[k], face[next], foot[next], foot[k]];
        let lit = core.lit(light(inward(face[k], face[next]), -0.5).min(1.06));
        nodes.push(area(Path::ring(quad), Fill::Flat(lit)));
    }
    let edge = core.lit(0.62);
    for ring in [face.to_vec(), foot] {
        nodes.push(Node::Shape(crate::scene::Shape {
            path: Path::ring(ring),
            fill: Fill::None,
            pen: Pen::Hair,
            colour: Some(edge),
        }));
    }
    nodes
}

fn fillet(view: &View<'_>, mat: &MatSizes, w: usize, window: &Window) -> Option<Vec<Node>> {
    let fillet = mat.fillets.get(w)?;
    let outer = view.piece.ring(window, Length::ZERO);
    let sight = view.piece.ring(window, fillet.face);
    let own = fillet
        .material
        .as_ref()
        .and_then(|material| material.colour.as_deref());
    let colour = Colour::first(own, None, WOOD);
    if window.outline == sizing::Outline::Rectangle {
        return Some(rails(&outer, &sight, colour, &FLAT));
    }
    let ring = Path::rings([outer.clone(), sight.clone()]);
    let mut nodes = vec![shape(ring, Fill::Flat(colour), Pen::Fine)];
    let count = outer.len().min(sight.len());
    for k in 0..count {
        let next = (k + 1) % count;
        let inward = inward(outer[k], outer[next]);
        for (share, slope) in FLAT {
            let quad = vec![
                outer[k].toward(sight[k], share),
                outer[next].toward(sight[next], share),
                sight[next],
                sight[k],
            ];
            nodes.push(area(
                Path::ring(quad),
                Fill::Flat(colour.lit(light(inward, slope))),
            ));
        }
    }
    nodes.push(stroke(Path::rings([outer, sight]), Pen::Fine));
    Some(nodes)
}
