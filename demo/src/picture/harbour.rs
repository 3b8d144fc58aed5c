//! A harbour at low tide, as a block print; a viaduct by night, as a poster.

use super::chance::Chance;
use super::curve::{Path, Point, hill, land, mix, skyline, trace};
use super::pen::Pen;

/// 16 × 12 in: boats lie on the mud below the quay.
pub(crate) fn harbour() -> Vec<u8> {
    let mut pen = Pen::new("harbour", 1600.0, 1200.0);
    let mut chance = Chance::seeded(11);
    sky(&mut pen, &mut chance);
    quay(&mut pen, &mut chance);
    mud(&mut pen, &mut chance);
    boat(&mut pen, (470.0, 905.0), -9.0, 1.15, ["#8e2f2a", "#e9dcc0"]);
    boat(&mut pen, (1130.0, 985.0), 7.0, 1.5, ["#1f4a55", "#e2a54c"]);
    boat(&mut pen, (905.0, 815.0), -4.0, 0.7, ["#d8cbb0", "#b5533a"]);
    for (x, y, reach) in [
        (930.0, 210.0, 34.0),
        (1010.0, 250.0, 26.0),
        (860.0, 285.0, 20.0),
        (1240.0, 170.0, 24.0),
    ] {
        gull(&mut pen, (x, y), reach);
    }
    pen.finish()
}

fn sky(pen: &mut Pen, chance: &mut Chance) {
    let ink = pen.fall(&[(0.0, "#c9d6cf"), (0.45, "#f0dfc0"), (0.62, "#f2bd8a")]);
    pen.ground(&ink);
    pen.dot((395.0, 395.0), 92.0, "#e4683f");
    for (y, from, long) in [
        (330.0, 300.0, 520.0),
        (372.0, 120.0, 300.0),
        (420.0, 420.0, 620.0),
        (250.0, 900.0, 540.0),
        (448.0, 60.0, 420.0),
    ] {
        let thick = chance.between(5.0, 11.0);
        let path = Path::leaf((from, y), (from + long, y + chance.about(6.0)), thick);
        pen.fill(&path, "#f7ead0");
    }
    let far = skyline((0.0, 1600.0), 470.0, 38.0, 5, chance);
    pen.fill(&hill(&far, 640.0), "#9db3ad");
    let near = skyline((760.0, 1600.0), 515.0, 42.0, 4, chance);
    pen.fill(&hill(&near, 640.0), "#6f8f8c");
}

fn quay(pen: &mut Pen, chance: &mut Chance) {
    let walls = [
        "#e8d3ae", "#c98a5d", "#dfe0d2", "#a9583f", "#8fa79e", "#e3b877", "#f0e6d2",
    ];
    let mut x = -20.0;
    while x < 830.0 {
        let wide = chance.between(62.0, 108.0);
        let high = chance.between(95.0, 190.0);
        house(
            pen,
            (x, 650.0 - high),
            (wide, high),
            chance.pick(&walls),
            chance,
        );
        x += wide;
    }
    pen.fill(
        &Path::corners(&trace("0 640, 1010 640, 1040 700, 1052 800, 0 770")),
        "#33464a",
    );
    pen.fill(
        &Path::corners(&trace("0 712, 1043 742, 1052 800, 0 772")),
        "#5d6b3d",
    );
    for course in 0..3_u32 {
        let y = 660.0 + 18.0 * f64::from(course);
        pen.dashes(
            &Path::straight(&[(0.0, y), (1015.0, y + 4.0)]),
            "#50656a",
            2.5,
            (46.0, 9.0),
        );
    }
    // The light at the quay's end.
    pen.fill(
        &Path::corners(&trace("968 640, 978 520, 1008 520, 1018 640")),
        "#f3ead6",
    );
    pen.fill(
        &Path::corners(&trace("973 580, 976 550, 1010 550, 1013 580")),
        "#a33b2c",
    );
    pen.rect((980.0, 492.0), (26.0, 28.0), "#f6c667");
    pen.fill(
        &Path::corners(&[(972.0, 494.0), (993.0, 468.0), (1014.0, 494.0)]),
        "#33464a",
    );
}

fn house(pen: &mut Pen, (x, y): Point, (wide, high): Point, wall: &str, chance: &mut Chance) {
    pen.rect((x, y), (wide, high), wall);
    let roof = chance.pick(&["#5b3a34", "#44515a", "#74443a"]);
    let ridge = y - chance.between(30.0, 58.0);
    pen.fill(
        &Path::corners(&[
            (x - 3.0, y + 3.0),
            (x + wide / 2.0, ridge),
            (x + wide + 3.0, y + 3.0),
        ]),
        roof,
    );
    pen.rect((x + wide * 0.68, ridge + 2.0), (10.0, 30.0), "#8a4a3a");
    let mut floor = y + 20.0;
    while floor < y + high - 40.0 {
        for part in [0.18, 0.58] {
            let lit = chance.part() < 0.3;
            pen.rect(
                (x + wide * part, floor),
                (wide * 0.22, 22.0),
                if lit { "#f9d27a" } else { "#3b4a4f" },
            );
        }
        floor += 40.0;
    }
}

fn mud(pen: &mut Pen, chance: &mut Chance) {
    let flats = trace("0 765, 300 775, 800 790, 1050 790, 1350 640, 1600 600");
    pen.fill(&hill(&flats, 1200.0), "#a98d6c");
    let sea = [(1040.0, 650.0), (1200.0, 628.0), (1600.0, 600.0)];
    pen.fill(&hill(&sea, 690.0), "#cfd8cb");
    let water = trace(
        "1600 640, 1380 668, 1190 720, 1210 790, 980 850, 700 900, 620 985, \
                760 1080, 600 1200, 220 1200, 470 1085, 410 985, 640 865, 930 800, \
                1110 770, 1070 715, 1250 640, 1600 605",
    );
    let silver = pen.fall(&[(0.0, "#e9ddc2"), (0.5, "#b9c9c4"), (1.0, "#7fa0a3")]);
    pen.fill(&Path::rounded(&water), &silver);
    for _ in 0..95 {
        let y = chance.between(0.0, 1.0).sqrt().mul_add(400.0, 800.0);
        let x = chance.between(-60.0, 1600.0);
        let long = mix(30.0, 150.0, (y - 800.0) / 400.0) * chance.between(0.5, 1.2);
        let ink = chance.pick(&["#8d7355", "#bda27f", "#7a6349", "#c9b394"]);
        pen.fill(
            &Path::leaf(
                (x, y),
                (x + long, y + chance.about(5.0)),
                mix(3.0, 9.0, (y - 800.0) / 400.0),
            ),
            ink,
        );
    }
    for part in 0..14_u32 {
        let y = 862.0 + 24.0 * f64::from(part);
        let x = chance.between(430.0, 640.0);
        pen.line(
            &Path::straight(&[(x, y), (x + chance.between(30.0, 90.0), y)]),
            "#eef0e2",
            4.0,
        );
    }
}

fn boat(pen: &mut Pen, place: Point, lean: f64, size: f64, [hull, sail]: [&str; 2]) {
    pen.oval(
        (place.0 + 10.0, place.1 + 14.0 * size),
        (150.0 * size, 16.0 * size),
        "#6d5740",
    );
    pen.placed(place, lean, size, |pen| {
        let planks = trace("-150 -62, -60 -46, 60 -46, 162 -74, 120 0, 60 14, -90 12, -130 -12");
        pen.fill(&Path::rounded(&planks), hull);
        pen.line(
            &Path::flowing(&trace("-146 -58, -60 -42, 60 -42, 158 -68")),
            "#f3ead6",
            7.0,
        );
        pen.line(
            &Path::straight(&[(-10.0, -48.0), (-14.0, -300.0)]),
            "#4a382c",
            8.0,
        );
        pen.line(
            &Path::straight(&[(-14.0, -290.0), (-140.0, -62.0)]),
            "#4a382c",
            2.0,
        );
        pen.line(
            &Path::straight(&[(-14.0, -290.0), (152.0, -70.0)]),
            "#4a382c",
            2.0,
        );
        pen.fill(
            &Path::rounded(&trace("-4 -84, 60 -94, 128 -86, 126 -68, 60 -70, -2 -66")),
            sail,
        );
        pen.fill(
            &Path::corners(&trace("-92 -52, -88 -94, -40 -90, -40 -48")),
            "#efe5cf",
        );
        pen.rect((-80.0, -84.0), (26.0, 16.0), "#33464a");
    });
}

fn gull(pen: &mut Pen, (x, y): Point, reach: f64) {
    let wings = Path::stroke(
        (x - reach, y - reach * 0.2),
        (x - reach * 0.4, y - reach * 0.6),
        (x, y),
    )
    .and(&Path::stroke(
        (x, y),
        (x + reach * 0.5, y - reach * 0.7),
        (x + reach, y - reach * 0.1),
    ));
    pen.line(&wings, "#fbf6e8", 6.0);
}

/// 16 × 20 in: a train crosses a viaduct under a large moon.
pub(crate) fn night_crossing() -> Vec<u8> {
    let mut pen = Pen::new("night-crossing", 1600.0, 2000.0);
    let mut chance = Chance::seeded(5);
    let night = pen.fall(&[
        (0.0, "#0e1d3a"),
        (0.55, "#2b4a73"),
        (0.8, "#d88a5b"),
        (1.0, "#f1c27a"),
    ]);
    pen.ground(&night);
    for _ in 0..70 {
        let place = (chance.between(0.0, 1600.0), chance.between(0.0, 900.0));
        pen.dot(place, chance.between(1.5, 4.0), "#f7efd8");
    }
    let halo = pen.glow((0.5, 0.5), 0.5, &[(0.55, "#f8e7b955"), (1.0, "#f8e7b900")]);
    pen.dot((1040.0, 560.0), 520.0, &halo);
    pen.dot((1040.0, 560.0), 300.0, "#f8e7b9");
    for (x, y, radius) in [
        (960.0, 480.0, 60.0),
        (1120.0, 610.0, 84.0),
        (1010.0, 690.0, 40.0),
        (1170.0, 440.0, 32.0),
    ] {
        pen.dot((x, y), radius, "#efd69c");
    }
    for (level, ink) in [
        (1130.0, "#2a4468"),
        (1230.0, "#1f3554"),
        (1340.0, "#172943"),
    ] {
        let ridge = skyline((0.0, 1600.0), level, 110.0, 6, &mut chance);
        pen.fill(&land(&ridge, 2000.0), ink);
    }
    viaduct(&mut pen);
    train(&mut pen);
    let valley = trace("0 1780, 380 1850, 800 1810, 1240 1880, 1600 1760");
    pen.fill(&hill(&valley, 2000.0), "#0b1526");
    for _ in 0..16 {
        let (x, high) = (chance.between(0.0, 1600.0), chance.between(90.0, 200.0));
        let foot = 1850.0 + (x / 260.0).sin() * 24.0;
        let tree = [
            (x, foot - high),
            (x + high * 0.22, foot + 30.0),
            (x - high * 0.22, foot + 30.0),
        ];
        pen.fill(&Path::corners(&tree), "#0b1526");
    }
    pen.finish()
}

fn viaduct(pen: &mut Pen) {
    let mut outline = Path::rect((-10.0, 1330.0), (1620.0, 620.0));
    for arch in 0..6_u32 {
        let left = 30.0 + 265.0 * f64::from(arch);
        let mut points = vec![(left, 1960.0)];
        for part in 0..=12_u32 {
            let angle = std::f64::consts::PI * (1.0 + f64::from(part) / 12.0);
            points.push((
                left + 105.0 + 105.0 * angle.cos(),
                1520.0 + 105.0 * angle.sin(),
            ));
        }
        points.push((left + 210.0, 1960.0));
        // Wound the other way than the wall, so that it stays open.
        points.reverse();
        outline = outline.and(&Path::corners(&points));
    }
    let stone = pen.fall(&[(0.0, "#b8674a"), (0.35, "#7a4140"), (1.0, "#2b2233")]);
    pen.fill(&outline, &stone);
    pen.rect((0.0, 1318.0), (1600.0, 26.0), "#e0a070");
}

fn train(pen: &mut Pen) {
    for car in 0..4_u32 {
        let left = -60.0 + 330.0 * f64::from(car);
        pen.rect((left, 1218.0), (312.0, 86.0), "#7d1f2b");
        pen.rect((left, 1208.0), (312.0, 14.0), "#c9b58a");
        for window in 0..5_u32 {
            pen.rect(
                (left + 22.0 + 57.0 * f64::from(window), 1236.0),
                (40.0, 32.0),
                "#ffdf8c",
            );
        }
        for wheel in [50.0, 100.0, 216.0, 266.0] {
            pen.dot((left + wheel, 1306.0), 15.0, "#10121a");
        }
    }
    let nose = trace("1262 1208, 1400 1212, 1500 1262, 1518 1304, 1262 1304");
    pen.fill(&Path::corners(&nose), "#8f2531");
    pen.fill(
        &Path::corners(&trace("1390 1226, 1420 1228, 1464 1258, 1390 1258")),
        "#ffdf8c",
    );
    let beam = pen.across(&[(0.0, "#ffe9a8cc"), (1.0, "#ffe9a800")]);
    pen.fill(
        &Path::corners(&trace("1512 1274, 1600 1240, 1600 1330, 1516 1292")),
        &beam,
    );
}
