//! Places: a door at evening, an orchard, a gabled house, and a tile.

use super::chance::Chance;
use super::curve::{Path, Point, hill, mix, ring, tint, trace};
use super::pen::Pen;

/// An arch from its foot, as an outline.
fn arch((x, foot): Point, wide: f64, straight: f64) -> Path {
    let radius = wide / 2.0;
    let mut points = vec![(x - radius, foot)];
    for step in 0..=16_u32 {
        let angle = std::f64::consts::PI * (1.0 + f64::from(step) / 16.0);
        points.push((
            x + radius * angle.cos(),
            foot - straight + radius * angle.sin(),
        ));
    }
    points.push((x + radius, foot));
    Path::corners(&points)
}

/// 9 × 12 in: an archway at evening, light behind it.
pub(crate) fn evening_door() -> Vec<u8> {
    let mut pen = Pen::new("evening-door", 900.0, 1200.0);
    let mut chance = Chance::seeded(71);
    let wall = pen.fall(&[(0.0, "#3d3a63"), (0.6, "#6a4f74"), (1.0, "#4a3a52")]);
    pen.ground(&wall);
    for _ in 0..120 {
        let (x, y) = (chance.between(-40.0, 900.0), chance.between(0.0, 1000.0));
        pen.wash(0.2, |pen| {
            pen.rect(
                (x, y),
                (chance.between(40.0, 110.0), chance.between(14.0, 34.0)),
                chance.pick(&["#8a6f94", "#2f2c4e", "#a98aa0"]),
            );
        });
    }
    for (stone, wide) in [("#caa98a", 560.0), ("#8f6f66", 500.0)] {
        pen.fill(&arch((450.0, 1060.0), wide, 560.0), stone);
    }
    let opening = arch((450.0, 1060.0), 460.0, 560.0);
    pen.within(&opening, beyond);
    for block in 0..13_u32 {
        let angle = std::f64::consts::PI * (1.0 + f64::from(block) / 12.0);
        let centre = (450.0, 500.0);
        pen.line(
            &Path::straight(&[
                (
                    centre.0 + 232.0 * angle.cos(),
                    centre.1 + 232.0 * angle.sin(),
                ),
                (
                    centre.0 + 282.0 * angle.cos(),
                    centre.1 + 282.0 * angle.sin(),
                ),
            ]),
            "#5a4450",
            4.0,
        );
    }
    let floor = pen.fall(&[(0.0, "#8a6a6a"), (1.0, "#3a2f44")]);
    pen.rect((0.0, 1056.0), (900.0, 144.0), &floor);
    pen.wash(0.55, |pen| {
        pen.fill(
            &Path::corners(&trace("225 1058, 675 1058, 760 1200, 140 1200")),
            "#f6c67c",
        );
    });
    pots(&mut pen, &mut chance);
    pen.finish()
}

fn beyond(pen: &mut Pen) {
    let light = pen.fall(&[(0.2, "#f8e3a8"), (0.55, "#f4a867"), (0.9, "#d96a55")]);
    pen.ground(&light);
    pen.dot((500.0, 610.0), 74.0, "#fff3c9");
    for (level, ink) in [(700.0, "#c98a78"), (770.0, "#96648a"), (850.0, "#5f4a72")] {
        let range: Vec<Point> = (0..7_u32)
            .map(|step| {
                (
                    200.0 + 85.0 * f64::from(step),
                    level + 34.0 * (f64::from(step) * 1.7 + level).sin(),
                )
            })
            .collect();
        pen.fill(&hill(&range, 1060.0), ink);
    }
    for (x, high) in [(300.0, 330.0), (345.0, 250.0), (610.0, 290.0)] {
        pen.fill(
            &Path::leaf((x, 960.0), (x, 960.0 - high), high * 0.19),
            "#2f3a4a",
        );
    }
    pen.fill(
        &Path::corners(&trace("430 880, 455 880, 640 1060, 300 1060")),
        "#f1cf9a",
    );
}

fn pots(pen: &mut Pen, chance: &mut Chance) {
    for (x, size) in [(110.0, 1.0), (800.0, 1.15)] {
        for _ in 0..22 {
            let tip = (
                x + chance.about(85.0) * size,
                960.0 - chance.between(20.0, 190.0) * size,
            );
            pen.fill(
                &Path::leaf((x, 985.0), tip, 15.0),
                chance.pick(&["#3f6a5a", "#2f4f4a", "#5a8a6a"]),
            );
        }
        for _ in 0..9 {
            pen.dot(
                (
                    x + chance.about(70.0) * size,
                    930.0 - chance.between(0.0, 150.0) * size,
                ),
                12.0,
                "#e8705a",
            );
        }
        pen.fill(
            &Path::corners(&[
                (x - 58.0 * size, 980.0),
                (x + 58.0 * size, 980.0),
                (x + 40.0 * size, 1100.0),
                (x - 40.0 * size, 1100.0),
            ]),
            "#b5583c",
        );
        pen.rect((x - 64.0 * size, 968.0), (128.0 * size, 24.0), "#cf7250");
    }
}

/// 400 × 250 mm at two units to the millimetre: an orchard in blossom.
pub(crate) fn orchard() -> Vec<u8> {
    let mut pen = Pen::new("orchard", 800.0, 500.0);
    let mut chance = Chance::seeded(73);
    let sky = pen.fall(&[(0.0, "#9cc4cf"), (0.5, "#f4ead0")]);
    pen.ground(&sky);
    for (level, ink, wave) in [
        (215.0, "#a9bfae", 0.0),
        (250.0, "#8fb08a", 2.0),
        (290.0, "#a8bf6a", 4.0),
    ] {
        let range: Vec<Point> = (0..8_u32)
            .map(|step| {
                (
                    115.0 * f64::from(step),
                    level + 22.0 * (f64::from(step) * 1.1 + wave).sin(),
                )
            })
            .collect();
        pen.fill(&hill(&range, 500.0), ink);
    }
    let grass = pen.fall(&[(0.0, "#b7c76a"), (1.0, "#5f8a4a")]);
    pen.fill(
        &hill(&trace("0 320, 250 305, 520 322, 800 300"), 500.0),
        &grass,
    );
    pen.fill(
        &Path::corners(&trace("392 308, 404 308, 500 500, 330 500")),
        "#e9d9a8",
    );
    for row in 0..5_u32 {
        let part = (f64::from(row) / 4.0).powf(1.4);
        let y = mix(318.0, 455.0, part);
        let size = mix(15.0, 62.0, part);
        for side in [-1.0, 1.0] {
            for rank in 0..3_u32 {
                let x = 398.0
                    + side * (mix(26.0, 128.0, part) + f64::from(rank) * mix(44.0, 190.0, part));
                blossom_tree(&mut pen, &mut chance, (x, y), size);
            }
        }
    }
    pen.finish()
}

fn blossom_tree(pen: &mut Pen, chance: &mut Chance, (x, foot): Point, size: f64) {
    if !(-90.0..890.0).contains(&x) {
        return;
    }
    pen.wash(0.3, |pen| {
        pen.oval((x + size * 0.3, foot), (size, size * 0.16), "#3f5a3a");
    });
    pen.line(
        &Path::stroke(
            (x, foot),
            (x - size * 0.06, foot - size * 0.5),
            (x + size * 0.04, foot - size),
        ),
        "#5e4436",
        size * 0.13,
    );
    for _ in 0..13 {
        let place = (
            x + chance.about(size * 0.75),
            foot - size * chance.between(0.75, 1.75),
        );
        pen.dot(
            place,
            size * chance.between(0.16, 0.36),
            chance.pick(&["#f6d5d4", "#fbeeea", "#e9aeb4", "#f3c4c2", "#d98f9c"]),
        );
    }
}

/// 10 × 12 in: a gabled house at night, in cut paper.
pub(crate) fn gable() -> Vec<u8> {
    let mut pen = Pen::new("gable", 1000.0, 1200.0);
    let mut chance = Chance::seeded(79);
    let night = pen.fall(&[(0.0, "#13294b"), (1.0, "#3b5f8a")]);
    pen.ground(&night);
    for _ in 0..80 {
        let star = (chance.between(0.0, 1000.0), chance.between(0.0, 800.0));
        pen.dot(star, chance.between(1.5, 5.0), "#f6e7b8");
    }
    pen.dot((800.0, 190.0), 84.0, "#f6e7b8");
    pen.dot((766.0, 172.0), 76.0, "#1b3355");
    timbered(&mut pen);
    let snow: Vec<Point> = (0..9_u32)
        .map(f64::from)
        .map(|step| (125.0 * step, 1070.0 + 22.0 * (step * 1.4).sin()))
        .collect();
    pen.fill(&hill(&snow, 1200.0), "#eef2f4");
    for (x, high) in trace("120 330, 60 250, 880 360, 950 230") {
        for tier in 0..3_u32 {
            let part = f64::from(tier) / 3.0;
            let top = 1100.0 - high * (1.0 - part * 0.8);
            let (wide, foot) = (high * mix(0.17, 0.32, part), top + high * 0.42);
            let tree = Path::corners(&[(x, top), (x + wide, foot), (x - wide, foot)]);
            pen.fill(&tree, chance.pick(&["#25503f", "#1d4236"]));
        }
    }
    pen.finish()
}

/// The house itself: walls, roof, smoke, beams and lit panes.
fn timbered(pen: &mut Pen) {
    let house = trace("250 1080, 250 560, 500 230, 750 560, 750 1080");
    pen.fill(&Path::corners(&house), "#d9c7a4");
    let roof = trace("206 606, 500 216, 794 606");
    pen.line(&Path::straight(&roof), "#8f3a30", 46.0);
    pen.rect((610.0, 240.0), (64.0, 150.0), "#8f3a30");
    for puff in 0..5_u32 {
        let part = f64::from(puff) / 4.0;
        let place = (646.0 + 60.0 * (part * 4.0).sin(), 210.0 - 170.0 * part);
        pen.wash(0.65, |pen| pen.dot(place, 24.0 + 22.0 * part, "#a9b8cc"));
    }
    for beam in [
        "250 700, 750 700",
        "250 900, 750 900",
        "500 700, 500 900",
        "250 700, 500 900",
        "750 700, 500 900",
    ] {
        pen.line(&Path::straight(&trace(beam)), "#6a4633", 20.0);
    }
    for place in trace("450 470, 320 590, 580 590, 300 925, 600 925") {
        pane(pen, place);
    }
    pen.fill(&arch((500.0, 1080.0), 110.0, 90.0), "#3f5a4a");
}

fn pane(pen: &mut Pen, (x, y): Point) {
    pen.rect((x, y), (100.0, 86.0), "#ffd676");
    pen.line(
        &Path::rect((x, y), (100.0, 86.0))
            .and(&Path::straight(&[(x + 50.0, y), (x + 50.0, y + 86.0)]))
            .and(&Path::straight(&[(x, y + 43.0), (x + 100.0, y + 43.0)])),
        "#6a4633",
        8.0,
    );
}

/// 10 × 10 in: a painted tile with an eightfold star.
pub(crate) fn tile() -> Vec<u8> {
    let mut pen = Pen::new("tile", 1000.0, 1000.0);
    pen.ground("#f3eddd");
    let centre = (500.0, 500.0);
    let inks = ["#1d4f7a", "#2f8f8a", "#e0a13a", "#c4512d"];
    for (layer, reach) in [470.0, 400.0, 320.0, 236.0, 150.0].into_iter().enumerate() {
        let turn = if layer % 2 == 0 {
            0.0
        } else {
            std::f64::consts::PI / 8.0
        };
        star(&mut pen, centre, reach, turn, [inks[layer % 4], "#f3eddd"]);
    }
    for petal in ring(centre, 92.0, 8, std::f64::consts::PI / 8.0) {
        pen.fill(&Path::leaf(centre, petal, 26.0), "#1d4f7a");
    }
    pen.dot(centre, 24.0, "#e0a13a");
    for corner in trace("0 0, 1000 0, 1000 1000, 0 1000") {
        for (radius, ink) in [
            (190.0, "#1d4f7a"),
            (150.0, "#f3eddd"),
            (112.0, "#2f8f8a"),
            (64.0, "#e0a13a"),
        ] {
            pen.dot(corner, radius, ink);
        }
    }
    for bead in ring(centre, 492.0, 64, 0.0) {
        pen.dot(bead, 5.0, &tint("#1d4f7a", "#2f8f8a", 0.5));
    }
    pen.finish()
}

fn star(pen: &mut Pen, centre: Point, reach: f64, turn: f64, [ink, edge]: [&str; 2]) {
    let outer = ring(centre, reach, 8, turn);
    let inner = ring(centre, reach * 0.72, 8, turn + std::f64::consts::PI / 8.0);
    let points: Vec<Point> = outer
        .into_iter()
        .zip(inner)
        .flat_map(|(tip, valley)| [tip, valley])
        .collect();
    let path = Path::corners(&points);
    pen.fill(&path, ink);
    pen.line(&path, edge, 9.0);
}
