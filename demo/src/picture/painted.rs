//! Paintings: many strokes, each taking its colour from what lies under it.

use std::collections::BTreeMap;

use super::chance::Chance;
use super::curve::{Path, Point, hill, mix, tint, trace};
use super::pen::Pen;

/// Lays `count` strokes; `look` gives the colour and the slope of the brush at a place.
fn paint(
    pen: &mut Pen,
    chance: &mut Chance,
    count: u32,
    size: f64,
    look: impl Fn(Point, &mut Chance) -> (String, f64),
) {
    let (width, height) = (pen.width(), pen.height());
    let mut strokes: BTreeMap<String, Path> = BTreeMap::new();
    for _ in 0..count {
        let place = (chance.between(-0.02, 1.02), chance.between(-0.02, 1.02));
        let (ink, slope) = look(place, chance);
        let (x, y) = (place.0 * width, place.1 * height);
        let long = size * chance.between(0.6, 1.5);
        let end = (x + long * slope.cos(), y + long * slope.sin());
        let by = (
            f64::midpoint(x, end.0) + chance.about(size * 0.2),
            f64::midpoint(y, end.1) + chance.about(size * 0.25),
        );
        let path = strokes
            .remove(&ink)
            .unwrap_or_default()
            .and(&Path::stroke((x, y), by, end));
        strokes.insert(ink, path);
    }
    for (ink, path) in &strokes {
        pen.line(path, ink, size * chance.between(0.16, 0.3));
    }
}

/// 16 × 20 in (and 20 × 16): weather coming in from the sea.
pub(crate) fn seascape() -> Vec<u8> {
    let mut pen = Pen::new("seascape", 2000.0, 1600.0);
    let mut chance = Chance::seeded(53);
    let under = pen.fall(&[
        (0.0, "#5f7f96"),
        (0.42, "#e8d3ae"),
        (0.5, "#e0b98c"),
        (0.505, "#3f6f78"),
        (0.8, "#1f4a58"),
        (1.0, "#c9b48c"),
    ]);
    pen.ground(&under);
    let sky = [
        "#5d7d98", "#8fa6b4", "#c9cdc6", "#f0dfbd", "#efc79a", "#d9a58c",
    ];
    paint(&mut pen, &mut chance, 330, 150.0, |(x, y), chance| {
        let y = y * 0.5;
        let cloud = (x * 7.0 + y * 9.0).sin() * 0.9 + chance.about(0.8);
        let place = (y * 2.0 * 5.0 + cloud).clamp(0.0, 5.0);
        let ink = pick(&sky, place);
        (ink, -0.25 + chance.about(0.25))
    });
    let level = 800.0;
    pen.rect((0.0, level), (2000.0, 800.0), &under_sea(&mut chance));
    waves(&mut pen, &mut chance, level);
    pen.finish()
}

fn under_sea(chance: &mut Chance) -> String {
    tint("#2d5e6b", "#27535f", chance.part())
}

fn pick(inks: &[&str], place: f64) -> String {
    let last = inks.len() - 1;
    let step =
        (0..last).find(|step| f64::from(u32::try_from(*step).unwrap_or_default()) + 0.5 > place);
    inks[step.unwrap_or(last)].to_owned()
}

fn waves(pen: &mut Pen, chance: &mut Chance, level: f64) {
    let inks = [
        "#6f9a9c", "#3f7480", "#2a5c6c", "#1f4858", "#4b8188", "#c9d6cc",
    ];
    for _ in 0..240 {
        let part = chance.part().powf(0.8);
        let (x, y) = (chance.between(-100.0, 2000.0), level + part * 640.0);
        let long = mix(40.0, 260.0, part);
        let crest = (x + long / 2.0, y - long * 0.12);
        let ink = chance.pick(&inks);
        pen.line(
            &Path::stroke((x, y), crest, (x + long, y + chance.about(8.0))),
            ink,
            mix(5.0, 26.0, part),
        );
    }
    let beach = trace("0 1470, 420 1420, 1000 1490, 1500 1440, 2000 1500");
    let foam: Vec<Point> = beach.iter().map(|(x, y)| (*x, y - 26.0)).collect();
    pen.fill(&hill(&foam, 1600.0), "#eef0e6");
    let wet = pen.fall(&[(0.0, "#a8906c"), (1.0, "#d9c49a")]);
    pen.fill(&hill(&beach, 1600.0), &wet);
    for _ in 0..60 {
        let (x, y) = (
            chance.between(-50.0, 2000.0),
            chance.between(1395.0, 1470.0),
        );
        pen.line(
            &Path::stroke(
                (x, y),
                (x + 40.0, y - 16.0),
                (x + chance.between(60.0, 140.0), y),
            ),
            "#fbfbf4",
            chance.between(4.0, 13.0),
        );
    }
    // One sail, far out.
    pen.fill(
        &Path::corners(&[(1386.0, 812.0), (1404.0, 700.0), (1452.0, 808.0)]),
        "#fbf3df",
    );
    pen.fill(
        &Path::corners(&[(1380.0, 812.0), (1398.0, 730.0), (1352.0, 810.0)]),
        "#d98a5c",
    );
    pen.fill(
        &Path::leaf((1340.0, 820.0), (1466.0, 818.0), 14.0),
        "#3a2f2a",
    );
}

/// 16 × 20 in turned: a red barn under snow.
pub(crate) fn winter_barn() -> Vec<u8> {
    let mut pen = Pen::new("winter-barn", 2000.0, 1600.0);
    let mut chance = Chance::seeded(61);
    let under = pen.fall(&[
        (0.0, "#8aa0b8"),
        (0.5, "#e9d5c4"),
        (0.6, "#f1eee6"),
        (1.0, "#c9d4de"),
    ]);
    pen.ground(&under);
    let sky = ["#7f98b5", "#9fb0c2", "#c8c6c6", "#e6cdbb", "#f0d3b0"];
    paint(&mut pen, &mut chance, 260, 150.0, |(x, y), chance| {
        let place = (y * 4.6 + (x * 5.0).sin() * 0.5 + chance.about(0.7)).clamp(0.0, 4.0);
        (pick(&sky, place), 0.1 + chance.about(0.2))
    });
    let woods = trace("0 860, 300 800, 700 840, 1200 790, 1600 850, 2000 800");
    pen.fill(&hill(&woods, 1600.0), "#6a7a86");
    for _ in 0..90 {
        let x = chance.between(0.0, 2000.0);
        let foot = 900.0 + chance.about(20.0);
        let high = chance.between(50.0, 150.0);
        pen.line(
            &Path::straight(&[(x, foot), (x + chance.about(8.0), foot - high)]),
            chance.pick(&["#53606b", "#7d8b96", "#48525b"]),
            chance.between(4.0, 10.0),
        );
    }
    let field = trace("0 930, 500 880, 1100 920, 2000 860");
    let snow = pen.fall(&[(0.0, "#f7f4ee"), (0.5, "#e3e7ee"), (1.0, "#b9c6d8")]);
    pen.fill(&hill(&field, 1600.0), &snow);
    barn(&mut pen);
    drifts(&mut pen, &mut chance);
    pen.finish()
}

fn barn(pen: &mut Pen) {
    pen.wash(0.5, |pen| {
        pen.fill(
            &Path::corners(&trace("640 1130, 1500 1130, 1180 1330, 240 1300")),
            "#9fb0cc",
        );
    });
    pen.fill(
        &Path::corners(&trace("960 760, 1500 760, 1500 1130, 960 1140")),
        "#8f2f2a",
    );
    pen.fill(
        &Path::corners(&trace(
            "640 800, 700 640, 800 540, 900 640, 960 780, 960 1140, 640 1120",
        )),
        "#b23c31",
    );
    pen.fill(
        &Path::corners(&trace(
            "800 526, 1350 540, 1445 630, 1530 780, 985 790, 912 640",
        )),
        "#f4f3f0",
    );
    pen.fill(
        &Path::corners(&trace("912 640, 1445 630, 1530 780, 985 790")),
        "#d5dde8",
    );
    pen.line(
        &Path::straight(&trace("622 800, 690 636, 800 528, 912 640, 985 790")),
        "#fbfaf6",
        20.0,
    );
    openings(pen);
}

/// Boards, door and lit windows.
fn openings(pen: &mut Pen) {
    for board in 0..7_u32 {
        let x = 680.0 + 44.0 * f64::from(board);
        pen.line(&Path::straight(&[(x, 790.0), (x, 1122.0)]), "#7f2722", 3.0);
    }
    pen.rect((740.0, 900.0), (130.0, 226.0), "#5e1f1d");
    pen.line(
        &Path::straight(&[(740.0, 900.0), (870.0, 1126.0)])
            .and(&Path::straight(&[(870.0, 900.0), (740.0, 1126.0)])),
        "#efe6da",
        8.0,
    );
    pen.line(&Path::rect((740.0, 900.0), (130.0, 226.0)), "#efe6da", 8.0);
    pen.rect((770.0, 690.0), (62.0, 74.0), "#f3c765");
    for window in 0..3_u32 {
        pen.rect(
            (1060.0 + 140.0 * f64::from(window), 900.0),
            (64.0, 80.0),
            "#f0b95a",
        );
    }
}

fn drifts(pen: &mut Pen, chance: &mut Chance) {
    for _ in 0..150 {
        let part = chance.part();
        let (x, y) = (chance.between(-80.0, 2000.0), mix(1140.0, 1590.0, part));
        let long = mix(60.0, 260.0, part);
        let ink = chance.pick(&["#ffffff", "#eef1f5", "#cdd8e6", "#dfe3ea", "#f6ecdf"]);
        pen.line(
            &Path::stroke((x, y), (x + long / 2.0, y - long * 0.1), (x + long, y)),
            ink,
            mix(6.0, 26.0, part),
        );
    }
    for post in 0..8_u32 {
        let x = 90.0 + 250.0 * f64::from(post);
        let foot = 1350.0 + 20.0 * (f64::from(post) * 1.3).sin();
        pen.line(
            &Path::straight(&[(x, foot), (x + 6.0, foot - 130.0)]),
            "#4a3c34",
            14.0,
        );
        pen.line(
            &Path::straight(&[(x, foot - 96.0), (x + 250.0, foot - 92.0)]),
            "#5e4e44",
            6.0,
        );
    }
}

/// 12 × 16 in turned: pears and a copper jug.
pub(crate) fn pears() -> Vec<u8> {
    let mut pen = Pen::new("pears", 1600.0, 1200.0);
    let mut chance = Chance::seeded(67);
    let wall = pen.across(&[(0.0, "#5a5a4a"), (0.5, "#3a3c36"), (1.0, "#23241f")]);
    pen.ground(&wall);
    paint(&mut pen, &mut chance, 150, 150.0, |(x, y), chance| {
        let light = (0.75 - x * 0.55 - y * 0.2 + chance.about(0.08)).clamp(0.0, 1.0);
        let step = (light * 5.0).round() / 5.0;
        (tint("#26271f", "#6d6c56", step), 0.9 + chance.about(0.3))
    });
    let table = pen.fall(&[(0.0, "#8a5f3c"), (1.0, "#4d3120")]);
    pen.rect((0.0, 800.0), (1600.0, 400.0), &table);
    let linen = trace(
        "120 850, 500 800, 1010 830, 1120 930, 900 1060, 700 1200, 520 1120, \
                240 1060",
    );
    let white = pen.fall(&[(0.0, "#f4ecdc"), (0.6, "#d9cfbd"), (1.0, "#a49882")]);
    pen.fill(&Path::rounded(&linen), &white);
    for (a, b, c) in [
        ((300.0, 860.0), (420.0, 960.0), (380.0, 1080.0)),
        ((620.0, 850.0), (660.0, 980.0), (610.0, 1120.0)),
        ((900.0, 860.0), (880.0, 930.0), (800.0, 1010.0)),
    ] {
        pen.wash(0.5, |pen| pen.line(&Path::stroke(a, b, c), "#9c8f78", 12.0));
    }
    jug(&mut pen);
    pear(
        &mut pen,
        (400.0, 860.0),
        1.1,
        -12.0,
        ["#e9d27a", "#b98f35", "#6d5a24"],
    );
    pear(
        &mut pen,
        (640.0, 930.0),
        1.0,
        24.0,
        ["#d9b45c", "#b0602f", "#5e2f1c"],
    );
    pear(
        &mut pen,
        (830.0, 890.0),
        0.85,
        4.0,
        ["#c9cf7c", "#7f8f3c", "#3f4a20"],
    );
    pen.finish()
}

fn jug(pen: &mut Pen) {
    pen.wash(0.5, |pen| {
        pen.oval((1240.0, 900.0), (300.0, 46.0), "#1c120c");
    });
    let copper = pen.across(&[
        (0.0, "#7a3a1f"),
        (0.22, "#e9a06a"),
        (0.34, "#fbd9b0"),
        (0.5, "#c4683a"),
        (0.85, "#5e2a18"),
        (1.0, "#8a4a2c"),
    ]);
    pen.line(
        &Path::flowing(&trace("1330 420, 1450 440, 1480 600, 1370 740")),
        "#7a3a1f",
        34.0,
    );
    pen.line(
        &Path::flowing(&trace("1330 414, 1446 434, 1474 600, 1366 734")),
        "#d98a56",
        9.0,
    );
    let body = trace(
        "1070 380, 1000 330, 1180 366, 1350 370, 1322 480, 1400 680, 1370 850, \
                1210 892, 1050 850, 1014 690, 1092 490",
    );
    pen.fill(&Path::rounded(&body), &copper);
    pen.oval((1190.0, 372.0), (150.0, 24.0), "#3a1a0f");
    pen.line(
        &Path::stroke((1094.0, 486.0), (1200.0, 520.0), (1322.0, 482.0)),
        "#f3c79a",
        6.0,
    );
    pen.wash(0.8, |pen| {
        pen.oval((1098.0, 640.0), (15.0, 84.0), "#fff0dc");
    });
}

fn pear(pen: &mut Pen, place: Point, size: f64, turn: f64, [light, middle, dark]: [&str; 3]) {
    pen.wash(0.45, |pen| {
        pen.oval(
            (place.0 + 50.0, place.1 + 6.0),
            (150.0 * size, 34.0 * size),
            "#3a2a1c",
        );
    });
    let skin = pen.glow(
        (0.34, 0.5),
        0.75,
        &[(0.0, light), (0.5, middle), (1.0, dark)],
    );
    pen.placed(place, turn, size, |pen| {
        let outline = trace(
            "0 -290, 42 -262, 56 -190, 108 -110, 112 -36, 56 10, 0 14, -60 8, \
                -114 -40, -106 -114, -54 -190, -42 -262",
        );
        pen.line(
            &Path::stroke((0.0, -280.0), (6.0, -320.0), (30.0, -346.0)),
            "#4a3220",
            12.0,
        );
        pen.fill(&Path::rounded(&outline), &skin);
        pen.wash(0.55, |pen| {
            pen.oval((-42.0, -90.0), (16.0, 34.0), "#fffbe6");
        });
    });
}
