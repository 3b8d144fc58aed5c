//! The art from the front: its picture, or a quiet hatching with its title.

use trade::Art;

use super::View;
use super::frames::shadow;
use crate::colour::{BLANK, CLOTH, Colour, GAP};
use crate::hatch::inside;
use crate::piece::Laid;
use crate::scene::{
    Anchor, Box2, Face, Fill, Image, Node, Path, Pen, Point, Shape, Text, area, at, clipped, part,
    shape, stroke,
};
use crate::sheet::{LEADING, text_width, wrapped};

/// What lies behind everything: the mount, the cloth, the ground of a box, the dark of a floater's gap.
pub(super) fn ground(view: &View<'_>) -> Node {
    let piece = view.piece;
    let sizes = piece.sizes;
    if let Some(member) = sizes
        .members
        .last()
        .filter(|member| member.floater.is_some())
    {
        let gap = area(Path::ring(piece.rim(member.rabbet.size())), Fill::Flat(GAP));
        return part(format!("frame.{}", sizes.members.len()), vec![gap]);
    }
    let mount = sizes
        .mount
        .as_ref()
        .and_then(|mount| mount.material.as_ref());
    let own = mount.and_then(|material| material.colour.as_deref());
    let (name, colour) = if sizes.wrap.is_some() {
        ("wrap", CLOTH)
    } else {
        ("mount", Colour::first(own, None, BLANK))
    };
    let rim = piece.rim(sizes.package.size());
    let mut nodes = vec![area(Path::ring(rim), Fill::Flat(colour))];
    if let Some(walls) = &sizes.walls {
        let inner = piece.rim(sizes.package.size().shrink(walls.thickness));
        nodes.extend(shadow(&inner, walls.height.value.approx_mm() * 0.35));
        nodes.push(stroke(Path::ring(inner), Pen::Fine));
    }
    part(name, nodes)
}

/// Every piece of art where it lies.
pub(super) fn pieces(view: &View<'_>, remarks: &mut Vec<String>) -> Vec<Node> {
    let laid = view.piece.laid();
    laid.iter().map(|laid| one(view, laid, remarks)).collect()
}

fn one(view: &View<'_>, laid: &Laid, remarks: &mut Vec<String>) -> Node {
    let art = &view.piece.job.art[laid.art];
    let sizes = &view.piece.sizes.art[laid.art];
    let mut nodes = Vec::new();
    let canvas = view
        .piece
        .sizes
        .members
        .last()
        .is_some_and(|member| member.floater.is_some());
    if laid.whole || canvas {
        nodes.extend(own_shadow(laid.at, if canvas { 2.0 } else { 1.6 }));
    } else if let Some(sheet) = sizes.sheet {
        let paper = Box2::round(
            laid.at.centre(),
            sheet.width.approx_mm(),
            sheet.height.approx_mm(),
        );
        nodes.push(shape(
            Path::ring(paper.corners()),
            Fill::Flat(BLANK),
            Pen::Fine,
        ));
    }
    let picture = shown_picture(view, art, remarks);
    match picture {
        Some((mime, bytes)) => {
            nodes.push(Node::Image(Image {
                at: laid.at,
                mirrored: false,
                mime,
                bytes,
            }));
        }
        None => nodes.extend(placeholder(view, laid, art)),
    }
    if laid.whole || canvas {
        nodes.push(stroke(Path::ring(laid.at.corners()), Pen::Fine));
    }
    let group = part(format!("art.{}", laid.art + 1), nodes);
    if view.piece.sizes.sides == 4 {
        return group;
    }
    clipped(
        Path::ring(view.piece.rim(view.piece.sizes.package.size())),
        vec![group],
    )
}

/// The picture, where there is one that can be shown; otherwise a note says why not.
fn shown_picture(
    view: &View<'_>,
    art: &Art,
    remarks: &mut Vec<String>,
) -> Option<(&'static str, Vec<u8>)> {
    let name = art.picture.as_deref()?;
    let mut note = |why: String| {
        if !remarks.contains(&why) {
            remarks.push(why);
        }
    };
    match (view.look.pictures)(name) {
        Some(picture) if picture.can_be_shown() => Some((picture.mime, picture.bytes)),
        Some(picture) => {
            note(format!(
                "The picture {name} is {}; save it as PNG, JPEG or SVG to see it here.",
                picture.mime
            ));
            None
        }
        None => {
            note(format!(
                "The picture {name} is not beside the job; hatching stands in its place."
            ));
            None
        }
    }
}

/// The shadow of something that stands off its ground.
fn own_shadow(at: Box2, by: f64) -> Vec<Node> {
    let cast = |share: f64, depth: f64| {
        let corners = at
            .corners()
            .iter()
            .map(|p| p.plus(by * share * 0.8, by * share))
            .collect();
        area(Path::ring(corners), Fill::Shadow(depth))
    };
    vec![
        cast(1.5, 0.06),
        cast(1.1, 0.08),
        cast(0.7, 0.10),
        cast(0.35, 0.12),
    ]
}

/// Hatching both ways, and the title.
fn placeholder(view: &View<'_>, laid: &Laid, art: &Art) -> Vec<Node> {
    let seen = visible(view, laid.at);
    let ring = laid.at.corners();
    let lines = crossed(laid.at, 4.5 / view.factor);
    let kept: Vec<Vec<Point>> = lines
        .iter()
        .flat_map(|line| inside(line, &[&ring]))
        .collect();
    let pale = Colour([0xd9, 0xd5, 0xca]);
    let mut nodes = vec![
        area(Path::ring(ring), Fill::Flat(BLANK)),
        Node::Shape(Shape {
            path: Path::lines(kept),
            fill: Fill::None,
            pen: Pen::Hair,
            colour: Some(pale),
        }),
    ];
    let title = art
        .title
        .as_deref()
        .or(art.name.as_deref())
        .unwrap_or("art");
    let several = view.piece.windows().len() > 1;
    let measured = view
        .piece
        .windows()
        .first()
        .is_some_and(|window| window.outline == sizing::Outline::Rectangle);
    let beside = if several || !measured { 6.0 } else { 34.0 };
    let room = (seen.width() * view.factor - beside).max(text_width("art…"));
    let lines = wrapped(title, room, if several { 2 } else { 3 });
    let short = several && seen.height() * view.factor < TITLED;
    if short || is_maimed(&lines) {
        // A number, or the list, stands for it.
        return nodes;
    }
    nodes.extend(titled(&lines, seen.centre(), view.factor));
    nodes
}

/// Whether so much of a title is cut off that it says nothing.
fn is_maimed(lines: &[String]) -> bool {
    const TELLING: usize = 6;
    let (last, before) = lines
        .split_last()
        .map_or((None, lines), |(last, before)| (Some(last), before));
    let cut = |line: &String| line.ends_with('…');
    before.iter().any(cut) || last.is_some_and(|line| cut(line) && line.chars().count() <= TELLING)
}

/// Lines of a title about a place.
fn titled(lines: &[String], centre: Point, factor: f64) -> Vec<Node> {
    let above = lines.iter().skip(1).map(|_| LEADING).sum::<f64>() / 2.0;
    let mut y = centre.y - (above - 1.6) / factor;
    let mut nodes = Vec::new();
    for line in lines {
        nodes.push(Node::Text(Text {
            at: at(centre.x, y),
            words: line.clone(),
            anchor: Anchor::Middle,
            face: Face::Plain,
            upright: false,
            halo: true,
        }));
        y += LEADING / factor;
    }
    nodes
}

/// The least height of one window among several that holds its title under its number.
const TITLED: f64 = 30.0;

/// What is seen of the art: as much as lies within the sight or its window.
fn visible(view: &View<'_>, art: Box2) -> Box2 {
    let size = view.piece.sizes.seen().size();
    let sight = Box2::round(
        Point::default(),
        size.width.approx_mm(),
        size.height.approx_mm(),
    );
    Box2 {
        left: art.left.max(sight.left),
        top: art.top.max(sight.top),
        right: art.right.min(sight.right),
        bottom: art.bottom.min(sight.bottom),
    }
}

fn crossed(bounds: Box2, apart: f64) -> Vec<Vec<Point>> {
    let high = bounds.height();
    let mut lines = Vec::new();
    let mut x = bounds.left - high;
    while x < bounds.right {
        lines.push(vec![at(x, bounds.bottom), at(x + high, bounds.top)]);
        lines.push(vec![at(x + high, bounds.bottom), at(x, bounds.top)]);
        x += apart;
    }
    lines
}
