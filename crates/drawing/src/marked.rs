//! One side of the art with numbered marks: what was seen on it when it was taken in.

use measure::Unit;
use trade::{Art, ArtSide, ConditionMark};

use crate::caption::caption;
use crate::colour::{BLANK, PAPER};
use crate::input::{Look, Picture};
use crate::scene::{
    Anchor, Box2, Face, Fill, Image, Node, Path, Pen, Point, area, at, part, shape, stroke, text,
};
use crate::sheet::{Finished, Scale, TEXT_SIZE, wrapped};
use crate::twin::{Drawing, Twin};

/// A side of the art, its marks numbered from 1 over both sides as the document lists them.
///
/// Shape:  the front shows the art's own picture where there is one, the back is left blank; a mark
///         of some size is a rectangle, another a cross.
/// Units:  places in the twin in `unit`, from the left and top edges as that side is looked at.
pub fn marked_art(art: &Art, side: ArtSide, unit: Unit, look: &Look<'_>) -> Drawing {
    let (width, height) = (*art.width, art.height.map_or(*art.width, |height| *height));
    let sheet = look.sheet;
    let room = [
        sheet.width() - 2.0 * sheet.margin() - 2.0 * ROUND,
        MOST_HIGH,
    ];
    let needed = [width.approx_mm().max(1.0), height.approx_mm().max(1.0)];
    let scale = Scale::fitting(needed, room);
    let factor = scale.factor();
    let centre = at(
        sheet.width() / 2.0,
        sheet.margin() + ROUND + needed[1] * factor / 2.0,
    );
    let rim = Box2::round(centre, needed[0] * factor, needed[1] * factor);
    let mut nodes = ground(art, side, rim, look);
    let mut badges: Vec<Point> = Vec::new();
    let mut twin = Twin::new(unit);
    twin.length("Width", width);
    twin.length("Height", height);
    for (index, mark) in art
        .marks
        .iter()
        .enumerate()
        .filter(|(_, mark)| mark.side == side)
    {
        nodes.push(one(index, mark, (rim, factor), &mut badges));
        say(index, mark, &mut twin);
    }
    let first = format!("{} · {}", capital(side.word()), scale.words());
    let (words, height) = caption(sheet, rim.bottom + ROUND - 2.0, &first, &[]);
    nodes.extend(words);
    let title = art.title.as_deref().unwrap_or("the art");
    Finished {
        kind: match side {
            ArtSide::Front => "front",
            ArtSide::Back => "reverse",
        },
        title: format!("{} of {title}", capital(side.word())),
        description: format!(
            "The {} of the art with its marks, {}.",
            side.word(),
            scale.words()
        ),
        scale,
        height,
        nodes,
        twin,
        look,
    }
    .write()
}

/// Paper round the art, for numbers that stand off its edge.
const ROUND: f64 = 5.0;
/// The most art is drawn high.
const MOST_HIGH: f64 = 104.0;
/// Half a number's ring.
const BADGE: f64 = 3.6;

fn ground(art: &Art, side: ArtSide, rim: Box2, look: &Look<'_>) -> Vec<Node> {
    let mut nodes = vec![area(Path::ring(rim.corners()), Fill::Flat(BLANK))];
    let named = art.picture.as_deref().filter(|_| side == ArtSide::Front);
    let picture = named.and_then(look.pictures);
    if let Some(Picture { mime, bytes }) = picture.filter(Picture::can_be_shown) {
        nodes.push(Node::Image(Image {
            at: rim,
            mirrored: false,
            mime,
            bytes,
        }));
    } else {
        let words = match side {
            ArtSide::Front => art.title.as_deref().unwrap_or("front"),
            ArtSide::Back => "back, as it is looked at",
        };
        let lines = wrapped(words, rim.width() - 4.0, 3);
        for (line, words) in (0u32..).zip(lines) {
            let y = rim.bottom - 3.0 - f64::from(2_u32.saturating_sub(line)) * TEXT_SIZE;
            let place = at(rim.centre().x, y);
            nodes.push(text(place, words, Anchor::Middle, Face::Quiet));
        }
    }
    nodes.push(stroke(Path::ring(rim.corners()), Pen::Outline));
    nodes
}

/// A mark with its number beside it.
fn one(
    index: usize,
    mark: &ConditionMark,
    (rim, factor): (Box2, f64),
    badges: &mut Vec<Point>,
) -> Node {
    let on = |x: f64, y: f64| {
        at(
            (rim.left + x * factor).min(rim.right),
            (rim.top + y * factor).min(rim.bottom),
        )
    };
    let (x, y) = (mark.x.approx_mm(), mark.y.approx_mm());
    let corner = on(x, y);
    let size = |length: Option<trade::Measured>| length.map_or(0.0, |length| length.approx_mm());
    let (wide, high) = (size(mark.width), size(mark.height));
    let far = on(x + wide, y + high);
    let outline = if wide > 0.0 || high > 0.0 {
        let extent = Box2 {
            left: corner.x,
            top: corner.y,
            right: far.x,
            bottom: far.y,
        };
        Path::ring(extent.corners())
    } else {
        Path::lines([
            vec![corner.plus(-1.6, -1.6), corner.plus(1.6, 1.6)],
            vec![corner.plus(-1.6, 1.6), corner.plus(1.6, -1.6)],
        ])
    };
    let badge = free(far.plus(BADGE + 2.0, -BADGE - 2.0), rim, badges);
    badges.push(badge);
    let ring = circle(badge);
    part(
        format!("mark.{}", index + 1),
        vec![
            stroke(outline.clone(), Pen::Halo),
            stroke(outline, Pen::Outline),
            stroke(Path::open(vec![at(far.x, corner.y), badge]), Pen::Halo),
            stroke(Path::open(vec![at(far.x, corner.y), badge]), Pen::Dimension),
            shape(ring, Fill::Flat(PAPER), Pen::Outline),
            text(
                badge.plus(0.0, TEXT_SIZE * 0.36),
                (index + 1).to_string(),
                Anchor::Middle,
                Face::Plain,
            ),
        ],
    )
}

/// The place nearest to where a number is wanted that no other number covers, on the art or at its edge.
fn free(wanted: Point, rim: Box2, taken: &[Point]) -> Point {
    const STEPS: u32 = 12;
    let inside = |p: Point| {
        at(
            p.x.clamp(rim.left - 1.0, rim.right + 1.0),
            p.y.clamp(rim.top - 1.0, rim.bottom + 1.0),
        )
    };
    let clear = |p: &Point| {
        taken
            .iter()
            .all(|other| (other.x - p.x).hypot(other.y - p.y) >= 2.2 * BADGE)
    };
    let rings = (0..STEPS).flat_map(|ring| {
        (0..STEPS).map(move |step| {
            let turn = f64::from(step) * std::f64::consts::TAU / f64::from(STEPS);
            let radius = f64::from(ring) * 2.0 * BADGE;
            wanted.plus(turn.cos() * radius, turn.sin() * radius)
        })
    });
    rings
        .map(inside)
        .find(clear)
        .unwrap_or_else(|| inside(wanted))
}

fn circle(centre: Point) -> Path {
    const STEPS: u32 = 28;
    let ring = (0..STEPS).map(|step| {
        let turn = f64::from(step) * std::f64::consts::TAU / f64::from(STEPS);
        centre.plus(turn.cos() * BADGE, turn.sin() * BADGE)
    });
    Path::ring(ring.collect())
}

fn say(index: usize, mark: &ConditionMark, twin: &mut Twin) {
    let name = format!("{} {}", index + 1, mark.kind.word());
    twin.length(format!("{name}, from the left"), *mark.x);
    twin.length(format!("{name}, from the top"), *mark.y);
    if let Some(width) = mark.width {
        twin.length(format!("{name}, width"), *width);
    }
    if let Some(height) = mark.height {
        twin.length(format!("{name}, height"), *height);
    }
    if let Some(words) = &mark.words {
        twin.words(name, words.clone());
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
