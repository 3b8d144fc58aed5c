//! Botanical studies: a fern, and poppies.

use super::chance::Chance;
use super::curve::{Path, Point, from, mix, ring, tint};
use super::pen::Pen;

/// 9 × 13 in: a fern with a young frond still curled.
pub(crate) fn fern() -> Vec<u8> {
    let mut pen = Pen::new("fern", 900.0, 1300.0);
    let mut chance = Chance::seeded(23);
    paper(&mut pen);
    frond(
        &mut pen,
        &mut chance,
        [(470.0, 1100.0), (440.0, 700.0), (560.0, 150.0)],
        250.0,
        "#4f7a3a",
    );
    frond(
        &mut pen,
        &mut chance,
        [(455.0, 1110.0), (330.0, 820.0), (170.0, 520.0)],
        130.0,
        "#7c9a4a",
    );
    crozier(&mut pen, (620.0, 1105.0), (700.0, 760.0));
    for root in 0..9_u32 {
        let reach = -60.0 + 17.0 * f64::from(root);
        let end = (
            470.0 + reach + chance.about(20.0),
            chance.between(1150.0, 1195.0),
        );
        pen.line(
            &Path::stroke((490.0 + reach * 0.4, 1100.0), (480.0 + reach, 1130.0), end),
            "#6d4e34",
            4.0,
        );
    }
    pen.oval((500.0, 1105.0), (72.0, 20.0), "#6d4e34");
    caption(&mut pen, &mut chance, (300.0, 1240.0), 300.0);
    pen.finish()
}

/// 11 × 14 in: poppies, open, closing and gone to seed.
pub(crate) fn poppies() -> Vec<u8> {
    let mut pen = Pen::new("poppies", 1100.0, 1400.0);
    let mut chance = Chance::seeded(7);
    paper(&mut pen);
    let foot = (560.0, 1260.0);
    for (bend, top) in [
        ((430.0, 900.0), (350.0, 470.0)),
        ((620.0, 800.0), (690.0, 330.0)),
        ((760.0, 1000.0), (860.0, 690.0)),
        ((420.0, 1050.0), (230.0, 820.0)),
        ((600.0, 900.0), (560.0, 640.0)),
    ] {
        pen.line(&Path::stroke(foot, bend, top), "#6f8a4f", 7.0);
    }
    for leaf in 0..7_u32 {
        let angle = mix(-2.9, -0.3, f64::from(leaf) / 6.0);
        jagged_leaf(
            &mut pen,
            foot,
            angle,
            chance.between(200.0, 330.0),
            &mut chance,
        );
    }
    poppy(&mut pen, (350.0, 420.0), 165.0, &mut chance);
    poppy(&mut pen, (700.0, 285.0), 190.0, &mut chance);
    poppy(&mut pen, (870.0, 660.0), 120.0, &mut chance);
    bud(&mut pen, (228.0, 815.0));
    seed_head(&mut pen, (560.0, 620.0));
    caption(&mut pen, &mut chance, (380.0, 1345.0), 340.0);
    pen.finish()
}

fn paper(pen: &mut Pen) {
    let ink = pen.glow(
        (0.5, 0.45),
        0.8,
        &[(0.0, "#f8f1e0"), (0.7, "#f3e8d0"), (1.0, "#e3d2b0")],
    );
    pen.ground(&ink);
}

/// A place on the bend through three points, and the way it heads there.
fn bend([foot, by, tip]: [Point; 3], part: f64) -> (Point, f64) {
    let rest = 1.0 - part;
    let along = |a: f64, b: f64, c: f64| rest * rest * a + 2.0 * rest * part * b + part * part * c;
    let heading = |a: f64, b: f64, c: f64| 2.0 * (rest * (b - a) + part * (c - b));
    let place = (along(foot.0, by.0, tip.0), along(foot.1, by.1, tip.1));
    let way = (heading(foot.0, by.0, tip.0), heading(foot.1, by.1, tip.1));
    (place, way.1.atan2(way.0))
}

fn frond(pen: &mut Pen, chance: &mut Chance, rib: [Point; 3], reach: f64, green: &str) {
    let pairs = 23_u32;
    for pair in 0..pairs {
        let part = mix(0.2, 0.985, f64::from(pair) / f64::from(pairs - 1));
        let (place, heading) = bend(rib, part);
        let full = (std::f64::consts::PI * part.powf(0.8)).sin().max(0.05);
        for side in [-1.0, 1.0] {
            let angle = heading + side * mix(1.25, 0.75, part);
            let long = reach * full * chance.between(0.92, 1.06);
            let ink = tint(green, "#2f4f2b", chance.between(0.0, 0.8));
            pinna(pen, place, angle, (long, side), &ink);
        }
    }
    let points: Vec<Point> = (0..=10_u32)
        .map(|step| bend(rib, f64::from(step) / 10.0).0)
        .collect();
    pen.line(&Path::flowing(&points), "#5a5a2c", 6.0);
}

/// One side branch, with its leaflets as one outline.
fn pinna(pen: &mut Pen, foot: Point, angle: f64, (long, side): (f64, f64), ink: &str) {
    let leaflets = if long > 90.0 { 6_u32 } else { 3 };
    let droop = |part: f64| angle + side * 0.25 * part;
    let mut path = Path::leaf(foot, from(foot, long, droop(1.0)), long * 0.05);
    for leaflet in 0..leaflets {
        let part = mix(0.12, 0.88, f64::from(leaflet) / f64::from(leaflets - 1));
        let place = from(foot, long * part, droop(part));
        let short = long * 0.24 * (1.0 - part * 0.75) + 4.0;
        for lean in [-1.0, 1.0] {
            path = path.and(&Path::leaf(
                place,
                from(place, short, droop(part) + lean * 0.95),
                short * 0.28,
            ));
        }
    }
    pen.fill(&path, ink);
}

fn crozier(pen: &mut Pen, foot: Point, top: Point) {
    let mut points = vec![foot, (foot.0 - 10.0, mix(foot.1, top.1, 0.5))];
    for step in 0..26_u32 {
        let part = f64::from(step) / 25.0;
        let radius = mix(78.0, 8.0, part);
        points.push(from(
            (top.0 - 8.0, top.1),
            radius,
            std::f64::consts::PI + part * 14.0,
        ));
    }
    pen.line(&Path::flowing(&points), "#7f9440", 17.0);
    pen.line(&Path::flowing(&points), "#a8b968", 6.0);
    for (place, point) in (0_u32..).zip(&points).skip(3).take(18) {
        let angle = std::f64::consts::PI + f64::from(place - 2) / 25.0 * 14.0;
        pen.fill(
            &Path::leaf(*point, from(*point, 24.0, angle + 0.6), 7.0),
            "#8a6a3c",
        );
    }
}

fn poppy(pen: &mut Pen, centre: Point, size: f64, chance: &mut Chance) {
    let reds = ["#d8452b", "#c4301f", "#e55a35", "#b8281c"];
    for (petal, ink) in (0_u32..).zip(reds) {
        let angle = 0.5 + 1.55 * f64::from(petal);
        let middle = from(centre, size * 0.42, angle);
        let edge: Vec<Point> = ring(middle, size * 0.68, 14, angle)
            .into_iter()
            .map(|(x, y)| (x + chance.about(size * 0.06), y + chance.about(size * 0.06)))
            .collect();
        pen.fill(&Path::rounded(&edge), ink);
        pen.wash(0.35, |pen| {
            for fold in 0..7_u32 {
                let way = angle + mix(-0.9, 0.9, f64::from(fold) / 6.0);
                let end = from(centre, size * chance.between(0.75, 0.98), way);
                pen.line(
                    &Path::stroke(centre, from(centre, size * 0.5, way + 0.15), end),
                    "#7c1512",
                    2.5,
                );
            }
        });
    }
    pen.dot(centre, size * 0.24, "#2a1a22");
    for stamen in 0..26_u32 {
        let way = f64::from(stamen) * 0.2417 * 10.0;
        let end = from(centre, size * chance.between(0.2, 0.36), way);
        pen.dot(end, size * 0.022, "#1c1218");
    }
    pen.dot(centre, size * 0.12, "#8c9a5b");
    for ray in ring(centre, size * 0.1, 8, 0.0) {
        pen.line(&Path::straight(&[centre, ray]), "#3c4526", 2.0);
    }
}

fn bud(pen: &mut Pen, top: Point) {
    pen.fill(
        &Path::leaf(
            (top.0 - 8.0, top.1 - 18.0),
            (top.0 - 34.0, top.1 + 116.0),
            52.0,
        ),
        "#7b9157",
    );
    pen.fill(
        &Path::leaf(
            (top.0 - 20.0, top.1 + 40.0),
            (top.0 - 36.0, top.1 + 118.0),
            14.0,
        ),
        "#d8452b",
    );
    for hair in 0..12_u32 {
        let y = top.1 + 8.0 * f64::from(hair);
        pen.line(
            &Path::straight(&[(top.0 - 10.0, y), (top.0 + 22.0, y - 8.0)]),
            "#7b9157",
            1.5,
        );
    }
}

fn seed_head(pen: &mut Pen, (x, y): Point) {
    let green = pen.across(&[(0.0, "#b5b98a"), (1.0, "#6d7a4e")]);
    pen.fill(
        &Path::rounded(&[
            (x - 42.0, y - 40.0),
            (x, y - 52.0),
            (x + 42.0, y - 40.0),
            (x + 34.0, y + 24.0),
            (x, y + 52.0),
            (x - 34.0, y + 24.0),
        ]),
        &green,
    );
    pen.oval((x, y - 52.0), (54.0, 15.0), "#5d6642");
    for part in [-0.6, -0.2, 0.2, 0.6] {
        pen.line(
            &Path::stroke(
                (x + part * 60.0, y - 40.0),
                (x + part * 80.0, y),
                (x + part * 30.0, y + 44.0),
            ),
            "#5d6642",
            2.0,
        );
    }
}

fn jagged_leaf(pen: &mut Pen, foot: Point, angle: f64, long: f64, chance: &mut Chance) {
    let ink = tint("#6f8a4f", "#3f5a3c", chance.part());
    let tip = from(foot, long, angle);
    let mut path = Path::leaf(foot, tip, long * 0.09);
    for lobe in 1..6_u32 {
        let part = f64::from(lobe) / 6.0;
        let place = from(foot, long * part, angle);
        for side in [-1.0, 1.0] {
            let reach = long * 0.3 * (1.05 - part);
            path = path.and(&Path::leaf(
                place,
                from(place, reach, angle + side * 0.75),
                reach * 0.22,
            ));
        }
    }
    pen.fill(&path, &ink);
}

/// A pencilled line that reads as a name without being one.
fn caption(pen: &mut Pen, chance: &mut Chance, (x, y): Point, wide: f64) {
    let mut points = Vec::new();
    let mut along = 0.0;
    while along < wide {
        points.push((x + along, y + chance.between(-14.0, 8.0)));
        along += chance.between(6.0, 13.0);
    }
    pen.line(&Path::flowing(&points), "#8b8172", 2.0);
}
