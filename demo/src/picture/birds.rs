//! Birds: an owl and a heron.

use super::chance::Chance;
use super::curve::{Path, from, mix, trace};
use super::pen::Pen;

/// 8 × 10 in: an owl, cut in lino.
pub(crate) fn owl() -> Vec<u8> {
    let mut pen = Pen::new("owl", 800.0, 1000.0);
    let mut chance = Chance::seeded(31);
    pen.ground("#1f2d3d");
    pen.dot((560.0, 250.0), 150.0, "#f0dfae");
    for _ in 0..60 {
        let (x, y) = (chance.between(0.0, 800.0), chance.between(0.0, 960.0));
        pen.line(
            &Path::straight(&[(x, y), (x + 26.0, y - 8.0)]),
            "#2f4257",
            4.0,
        );
    }
    let body = trace(
        "290 330, 400 292, 510 330, 556 470, 540 640, 462 760, 400 800, 338 760, \
                260 640, 244 470",
    );
    pen.fill(&Path::rounded(&body), "#c98d4b");
    pen.fill(
        &Path::rounded(&trace(
            "330 480, 400 460, 470 480, 484 620, 400 770, 316 620",
        )),
        "#f4ecd8",
    );
    feathers(&mut pen);
    for side in [-1.0, 1.0] {
        owl_face(&mut pen, side);
    }
    pen.fill(&Path::leaf((400.0, 410.0), (400.0, 476.0), 24.0), "#a8683a");
    pen.fill(&Path::leaf((40.0, 870.0), (800.0, 800.0), 34.0), "#6a4a34");
    for leaf in 0..9_u32 {
        let x = 90.0 + 80.0 * f64::from(leaf);
        let up = if leaf % 2 == 0 { -1.0 } else { 1.0 };
        let foot = (x, 856.0 - x * 0.07);
        let tip = (x + 56.0, foot.1 + 54.0 * up);
        pen.fill(&Path::leaf(foot, tip, 22.0), "#5d8a6a");
    }
    pen.finish()
}

/// Half of the face, and the foot below it.
fn owl_face(pen: &mut Pen, side: f64) {
    let face = trace("0 360, 62 322, 118 360, 112 440, 52 482, 0 496");
    let face: Vec<_> = face.iter().map(|(x, y)| (400.0 + x * side, *y)).collect();
    pen.fill(&Path::rounded(&face), "#f8f1df");
    let eye = (400.0 + 58.0 * side, 404.0);
    for ray in 0..9_u32 {
        let angle = mix(-1.5, 1.5, f64::from(ray) / 8.0);
        let outwards = std::f64::consts::PI - angle;
        let way = if side > 0.0 { angle } else { outwards };
        let ray = Path::straight(&[from(eye, 34.0, way), from(eye, 50.0, way)]);
        pen.line(&ray, "#c98d4b", 3.0);
    }
    pen.dot(eye, 26.0, "#1a1715");
    pen.dot((400.0 + 52.0 * side, 396.0), 7.0, "#ffffff");
    let x = 400.0 + 40.0 * side;
    let foot = Path::stroke((x, 790.0), (x + 4.0 * side, 812.0), (x, 834.0));
    pen.line(&foot, "#d9a441", 12.0);
}

fn feathers(pen: &mut Pen) {
    for row in 0..6_u32 {
        for column in 0..5_u32 {
            let x = 348.0 + 26.0 * f64::from(column) + if row % 2 == 0 { 0.0 } else { 13.0 };
            let y = 530.0 + 36.0 * f64::from(row);
            if (x - 400.0).abs() < 76.0 - 10.0 * f64::from(row) {
                pen.fill(&Path::leaf((x, y), (x, y + 26.0), 9.0), "#8a5a33");
            }
        }
    }
    for side in [-1.0, 1.0] {
        for row in 0..7_u32 {
            let part = f64::from(row) / 6.0;
            let x = 400.0 + side * mix(134.0, 100.0, part);
            let y = mix(470.0, 660.0, part);
            pen.fill(
                &Path::leaf((x, y), (x - side * 26.0, y + 86.0), 20.0),
                if row % 2 == 0 { "#8a5a33" } else { "#6d4428" },
            );
            pen.line(
                &Path::stroke(
                    (x, y + 8.0),
                    (x - side * 8.0, y + 36.0),
                    (x - side * 20.0, y + 68.0),
                ),
                "#e5bd85",
                3.0,
            );
        }
    }
}

/// 5 × 7 in: a heron among reeds, on a gilded ground.
pub(crate) fn heron() -> Vec<u8> {
    let mut pen = Pen::new("heron", 500.0, 700.0);
    let mut chance = Chance::seeded(13);
    let gold = pen.glow(
        (0.62, 0.3),
        0.9,
        &[(0.0, "#f1dc9a"), (0.5, "#d7b25e"), (1.0, "#9a7434")],
    );
    pen.ground(&gold);
    for leaf in 0..20_u32 {
        let (x, y) = (f64::from(leaf % 4) * 125.0, f64::from(leaf / 4) * 140.0);
        pen.line(&Path::rect((x, y), (125.0, 140.0)), "#b58f47", 0.8);
    }
    pen.dot((352.0, 168.0), 62.0, "#c5482f");
    let water = pen.fall(&[(0.0, "#3f6f73"), (1.0, "#1c3a47")]);
    pen.rect((0.0, 560.0), (500.0, 140.0), &water);
    for _ in 0..22 {
        let (x, y) = (chance.between(0.0, 500.0), chance.between(572.0, 694.0));
        pen.line(
            &Path::straight(&[(x, y), (x + chance.between(20.0, 60.0), y)]),
            "#8fb3a6",
            1.6,
        );
    }
    reeds(&mut pen, &mut chance);
    bird(&mut pen);
    pen.finish()
}

fn reeds(pen: &mut Pen, chance: &mut Chance) {
    for reed in 0..22_u32 {
        let near = reed % 3 == 0;
        let x = if reed < 13 {
            chance.between(10.0, 150.0)
        } else {
            chance.between(380.0, 495.0)
        };
        let tip = (
            x + chance.between(-30.0, 60.0),
            chance.between(170.0, 420.0),
        );
        let ink = if near { "#2c4a3a" } else { "#5f7a4a" };
        pen.fill(
            &Path::leaf((x, 640.0), tip, if near { 7.0 } else { 5.0 }),
            ink,
        );
        if near {
            pen.line(
                &Path::straight(&[(tip.0, tip.1 - 4.0), (tip.0 + 3.0, tip.1 + 44.0)]),
                "#5b3524",
                10.0,
            );
        }
    }
}

fn bird(pen: &mut Pen) {
    for (knee, foot) in [(258.0, (252.0, 622.0)), (286.0, (292.0, 632.0))] {
        let leg = Path::straight(&[(272.0, 448.0), (knee, 522.0), foot]);
        pen.line(&leg, "#4b4636", 5.0);
        let toe = foot.1 + 5.0;
        let toes = Path::straight(&[(foot.0 - 16.0, toe), foot, (foot.0 + 16.0, toe)]);
        pen.line(&toes, "#4b4636", 4.0);
    }
    let neck = trace("238 372, 206 320, 232 268, 250 222, 226 184");
    pen.line(&Path::flowing(&neck), "#eef0ea", 25.0);
    let body = trace("214 352, 262 330, 330 380, 392 462, 404 500, 330 478, 262 462, 218 410");
    pen.fill(&Path::rounded(&body), "#8fa3b0");
    plumage(pen);
    pen.oval((214.0, 176.0), (25.0, 17.0), "#eef0ea");
    let bill = trace("196 168, 110 196, 196 186");
    pen.fill(&Path::corners(&bill), "#d9922f");
    let crest = Path::stroke((204.0, 164.0), (250.0, 150.0), (296.0, 186.0));
    pen.line(&crest, "#20303c", 7.0);
    pen.dot((206.0, 174.0), 3.6, "#20303c");
}

fn plumage(pen: &mut Pen) {
    for feather in 0..6_u32 {
        let part = f64::from(feather) / 5.0;
        let start = (mix(252.0, 300.0, part), mix(356.0, 440.0, part));
        let tip = (mix(372.0, 408.0, part), mix(440.0, 512.0, part));
        let dark = feather % 2 == 0;
        let ink = if dark { "#5e7483" } else { "#b9c7cd" };
        pen.fill(&Path::leaf(start, tip, 11.0), ink);
    }
    for plume in 0..4_u32 {
        let x = 212.0 + 9.0 * f64::from(plume);
        let plume = Path::stroke((x + 6.0, 380.0), (x, 430.0), (x - 8.0, 458.0));
        pen.line(&plume, "#eef0ea", 3.0);
    }
}
