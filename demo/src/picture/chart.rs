//! Sea charts, and a letter in a hand nobody has.

use super::chance::Chance;
use super::curve::{Path, Point, from, lump, mix, ring, tint, trace};
use super::pen::Pen;

/// What sets one chart apart from another.
pub(crate) struct Chart {
    /// Stem of its picture's name.
    pub name: &'static str,
    /// Size of the sheet.
    pub size: Point,
    /// What chance begins with.
    pub seed: u64,
    /// Deep water, shallow water, land, ink.
    pub inks: [&'static str; 4],
    /// How many islands.
    pub islands: u32,
}

/// Where the compass rose stands, as parts of the sheet.
const ROSE: Point = (0.78, 0.72);

/// A chart of islands that nobody will ever find.
pub(crate) fn chart(of: &Chart) -> Vec<u8> {
    let (width, height) = of.size;
    let unit = width.min(height) / 100.0;
    let mut pen = Pen::new(of.name, width, height);
    let mut chance = Chance::seeded(of.seed);
    let [deep, shallow, land, ink] = of.inks;
    pen.ground(land);
    let margin = unit * 5.0;
    let sea = Path::rect(
        (margin, margin),
        (width - 2.0 * margin, height - 2.0 * margin),
    );
    pen.within(&sea, |pen| {
        pen.ground(deep);
        let islands: Vec<Vec<Point>> = (0..of.islands)
            .map(|_| island(&mut chance, of.size, unit))
            .collect();
        for shelf in 0..4_u32 {
            let reach = 2.15 - 0.3 * f64::from(shelf);
            let water = tint(deep, shallow, f64::from(shelf + 1) / 4.0);
            for shore in &islands {
                pen.fill(&Path::rounded(&swollen(shore, reach)), &water);
            }
        }
        soundings(pen, &mut chance, unit, ink);
        rhumbs(pen, (width * ROSE.0, height * ROSE.1), ink);
        for shore in &islands {
            coast(pen, shore, land, ink, unit);
        }
    });
    edge(&mut pen, of.size, margin, ink, unit);
    rose(
        &mut pen,
        (width * ROSE.0, height * ROSE.1),
        unit * 9.0,
        [ink, land, "#a8432f"],
    );
    pen.finish()
}

fn island(chance: &mut Chance, (width, height): Point, unit: f64) -> Vec<Point> {
    let mut centre = (
        chance.between(0.14, 0.86) * width,
        chance.between(0.16, 0.84) * height,
    );
    // The rose stands in open water.
    while (centre.0 - ROSE.0 * width).hypot(centre.1 - ROSE.1 * height) < unit * 30.0 {
        centre = (
            chance.between(0.14, 0.86) * width,
            chance.between(0.16, 0.84) * height,
        );
    }
    let radius = unit * 13.0 * chance.part().mul_add(0.8, 0.25);
    let stretch = chance.between(0.7, 1.5);
    lump((0.0, 0.0), radius, 0.55, chance)
        .into_iter()
        .map(|(x, y)| (centre.0 + x * stretch, centre.1 + y))
        .collect()
}

/// The outline drawn larger about its middle.
fn swollen(shore: &[Point], by: f64) -> Vec<Point> {
    let count = f64::from(u32::try_from(shore.len()).unwrap_or(1));
    let (x, y) = shore
        .iter()
        .fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
    let (x, y) = (x / count, y / count);
    shore
        .iter()
        .step_by(2)
        .map(|point| (mix(x, point.0, by), mix(y, point.1, by)))
        .collect()
}

fn coast(pen: &mut Pen, shore: &[Point], land: &str, ink: &str, unit: f64) {
    let outline = Path::rounded(shore);
    pen.fill(&outline, land);
    for (step, part) in [0.72, 0.48, 0.26].into_iter().enumerate() {
        let hill = tint(
            land,
            ink,
            0.1 + 0.06 * f64::from(u32::try_from(step).unwrap_or_default()),
        );
        pen.fill(&Path::rounded(&swollen(shore, part)), &hill);
    }
    pen.line(&outline, ink, unit * 0.28);
}

fn soundings(pen: &mut Pen, chance: &mut Chance, unit: f64, ink: &str) {
    let mut marks = Path::default();
    for _ in 0..120 {
        let (x, y) = (
            chance.between(0.05, 0.95) * pen.width(),
            chance.between(0.05, 0.95) * pen.height(),
        );
        marks = marks.and(&Path::straight(&[(x, y), (x + unit * 0.5, y - unit * 0.9)]));
    }
    pen.wash(0.5, |pen| pen.line(&marks, ink, unit * 0.16));
}

fn rhumbs(pen: &mut Pen, centre: Point, ink: &str) {
    let reach = pen.width() + pen.height();
    pen.wash(0.28, |pen| {
        for end in ring(centre, reach, 16, 0.0) {
            pen.line(&Path::straight(&[centre, end]), ink, 1.6);
        }
    });
}

fn edge(pen: &mut Pen, (width, height): Point, margin: f64, ink: &str, unit: f64) {
    for (inset, thick) in [
        (margin, 0.35),
        (margin - unit * 1.6, 0.2),
        (margin - unit * 2.2, 0.5),
    ] {
        pen.line(
            &Path::rect((inset, inset), (width - 2.0 * inset, height - 2.0 * inset)),
            ink,
            unit * thick,
        );
    }
    let scale = margin - unit * 0.8;
    let step = unit * 5.0;
    for y in [scale, height - scale] {
        pen.dashes(
            &Path::straight(&[(margin, y), (width - margin, y)]),
            ink,
            unit * 0.9,
            (step, step),
        );
    }
    for x in [scale, width - scale] {
        pen.dashes(
            &Path::straight(&[(x, margin), (x, height - margin)]),
            ink,
            unit * 0.9,
            (step, step),
        );
    }
}

fn rose(pen: &mut Pen, centre: Point, reach: f64, [ink, land, red]: [&str; 3]) {
    pen.dot(centre, reach * 0.8, land);
    pen.line(&Path::circle(centre, reach * 0.8), ink, reach * 0.02);
    pen.line(&Path::circle(centre, reach * 0.7), ink, reach * 0.012);
    for (count, long, turn) in [(8_u32, 0.62, std::f64::consts::FRAC_PI_8), (8, 0.95, 0.0)] {
        for point in 0..count {
            let angle = turn + std::f64::consts::TAU * f64::from(point) / f64::from(count)
                - std::f64::consts::FRAC_PI_2;
            let long = if count == 8 && turn < 0.1 && point % 2 == 1 {
                0.7
            } else {
                long
            };
            let tip = from(centre, reach * long, angle);
            let light = if point == 0 && turn < 0.1 { red } else { land };
            for (side, ink_of) in [(-1.0, ink), (1.0, light)] {
                let shoulder = from(centre, reach * 0.16, angle + side * 0.4);
                let path = Path::corners(&[centre, shoulder, tip]);
                pen.fill(&path, ink_of);
                pen.line(&path, ink, reach * 0.01);
            }
        }
    }
}

/// 8 1/2 × 11 in: a letter, folded twice.
pub(crate) fn letter() -> Vec<u8> {
    let mut pen = Pen::new("letter", 850.0, 1100.0);
    let mut chance = Chance::seeded(47);
    let paper = pen.fall(&[
        (0.0, "#efe2c4"),
        (0.33, "#f5ecd4"),
        (0.335, "#e6d7b4"),
        (0.36, "#f3e8ce"),
        (0.66, "#f2e7cc"),
        (0.668, "#e2d2ae"),
        (0.69, "#f0e4c8"),
        (1.0, "#e4d2a8"),
    ]);
    pen.ground(&paper);
    let stain = pen.glow(
        (0.5, 0.5),
        0.5,
        &[(0.6, "#a9793d22"), (0.92, "#a9793d44"), (1.0, "#a9793d00")],
    );
    pen.oval((690.0, 940.0), (105.0, 98.0), &stain);
    pen.group("transform=\"scale(.5)\"", |pen| lines(pen, &mut chance));
    flourish(&mut pen);
    sprig(&mut pen, (170.0, 930.0));
    pen.finish()
}

/// The lines of the letter, at twice its size.
fn lines(pen: &mut Pen, chance: &mut Chance) {
    script(pen, chance, (520.0, 120.0), 220.0);
    script(pen, chance, (90.0, 200.0), 240.0);
    for line in 0..13_u32 {
        let indent = if line % 5 == 0 { 60.0 } else { 0.0 };
        let short = if line % 5 == 4 {
            240.0
        } else {
            chance.between(0.0, 40.0)
        };
        let y = 262.0 + 46.0 * f64::from(line);
        script(pen, chance, (90.0 + indent, y), 660.0 - indent - short);
    }
    script(pen, chance, (430.0, 890.0), 200.0);
}

/// Strokes with the rhythm of a hand, and no words in them.
fn script(pen: &mut Pen, chance: &mut Chance, (left, y): Point, wide: f64) {
    let mut x = left;
    while x < left + wide - 20.0 {
        let letters = 2.0 + chance.part() * 6.0;
        let end = (x + letters * 12.0).min(left + wide);
        let mut points = vec![(x, y)];
        while x < end {
            let kind = chance.part();
            let (up, down) = if kind < 0.16 {
                (-26.0, 0.0)
            } else if kind < 0.28 {
                (-9.0, 17.0)
            } else {
                (-10.0, 0.0)
            };
            points.push((x + 4.5 + chance.about(1.0), y + up + chance.about(2.0)));
            points.push((
                x + if down > 1.0 { 1.5 } else { 6.0 },
                y + down + chance.about(1.4),
            ));
            x += chance.between(8.5, 12.5);
        }
        let doubled: Vec<Point> = points.iter().map(|(x, y)| (x * 2.0, y * 2.0)).collect();
        pen.line(&Path::flowing(&doubled), "#3a3a4d", 3.8);
        x += chance.between(11.0, 17.0);
    }
}

fn flourish(pen: &mut Pen) {
    let sweep = trace(
        "420 975, 470 930, 490 980, 520 940, 545 978, 575 930, 590 985, 640 962, \
                700 968, 600 1010, 440 1004, 520 992, 720 1000",
    );
    pen.line(&Path::flowing(&sweep), "#3a3a4d", 2.8);
}

fn sprig(pen: &mut Pen, (x, y): Point) {
    pen.line(
        &Path::stroke((x - 50.0, y + 80.0), (x, y + 20.0), (x + 30.0, y - 60.0)),
        "#6b7a4f",
        3.0,
    );
    for leaf in 0..7_u32 {
        let part = f64::from(leaf) / 6.0;
        let foot = (mix(x - 40.0, x + 28.0, part), mix(y + 66.0, y - 50.0, part));
        let side = if leaf % 2 == 0 { -1.0 } else { 1.0 };
        pen.fill(
            &Path::leaf(foot, (foot.0 + side * 42.0, foot.1 - 24.0), 11.0),
            "#7f8f5c",
        );
    }
    for (dx, dy) in [(30.0, -64.0), (16.0, -52.0), (40.0, -46.0)] {
        pen.dot((x + dx, y + dy), 9.0, "#9c5a6c");
        pen.dot((x + dx, y + dy), 3.0, "#e8c98a");
    }
}
