//! A cut-paper silhouette, and moths in pastel.

use super::chance::Chance;
use super::curve::{Path, Point, from, mix, tint, trace};
use super::pen::Pen;

/// 8 × 10 in: a cut-paper profile.
pub(crate) fn silhouette() -> Vec<u8> {
    let mut pen = Pen::new("silhouette", 800.0, 1000.0);
    let paper = pen.glow(
        (0.5, 0.5),
        0.72,
        &[(0.0, "#f6ecd6"), (0.75, "#eddcb9"), (1.0, "#cfb384")],
    );
    pen.ground(&paper);
    let black = "#1d1a1c";
    let head = trace(
        "352 262, 300 300, 276 352, 270 398, 276 424, 262 452, 238 488, 236 502, \
                262 510, 266 524, 250 540, 252 552, 264 558, 252 570, 256 588, 272 600, \
                266 626, 284 654, 330 662, 366 662, 384 700, 366 746, 300 786, 222 832, \
                206 890, 300 928, 450 934, 604 914, 716 866, 706 818, 636 774, 566 730, \
                536 680, 540 610, 580 540, 600 450, 586 360, 530 292, 440 252",
    );
    pen.fill(&Path::rounded(&head), black);
    bun(&mut pen, black);
    ruffle(&mut pen, "#efe0c0");
    pen.line(
        &Path::flowing(&trace("292 330, 380 318, 490 352, 590 424")),
        "#efe0c0",
        5.0,
    );
    pen.line(
        &Path::flowing(&trace("288 346, 380 334, 486 368, 588 442")),
        "#efe0c0",
        2.5,
    );
    pen.fill(&Path::leaf((452.0, 520.0), (446.0, 572.0), 9.0), "#efe0c0");
    pen.finish()
}

fn bun(pen: &mut Pen, black: &str) {
    let knot = trace("570 330, 632 300, 690 340, 694 408, 646 446, 586 424");
    pen.fill(&Path::rounded(&knot), black);
    for (tip, width) in [
        ((700.0, 520.0), 26.0),
        ((660.0, 560.0), 20.0),
        ((626.0, 570.0), 16.0),
    ] {
        pen.fill(&Path::leaf((640.0, 420.0), tip, width), black);
    }
    for (by, to) in [
        ((650.0, 330.0), (668.0, 404.0)),
        ((626.0, 330.0), (640.0, 420.0)),
    ] {
        pen.line(&Path::stroke((606.0, 350.0), by, to), "#efe0c0", 3.0);
    }
    pen.fill(&Path::leaf((352.0, 268.0), (300.0, 312.0), 30.0), black);
}

fn ruffle(pen: &mut Pen, paper: &str) {
    for fold in 0..11_u32 {
        let part = f64::from(fold) / 10.0;
        let top = (mix(380.0, 556.0, part), 722.0 + 26.0 * (part * 3.0).sin());
        let tip = (mix(262.0, 668.0, part), 822.0 + 30.0 * (part * 3.0).sin());
        pen.fill(&Path::leaf(top, tip, 13.0), paper);
    }
    for lace in 0..14_u32 {
        let part = f64::from(lace) / 13.0;
        pen.dot(
            (mix(250.0, 682.0, part), 848.0 + 30.0 * (part * 3.0).sin()),
            6.0,
            paper,
        );
    }
}

/// Where a moth sits, how it is turned and sized, and its colours.
type Moth = (Point, f64, f64, [&'static str; 3]);

static MOTHS: &[Moth] = &[
    (
        (700.0, 430.0),
        -4.0,
        1.75,
        ["#9fd0a8", "#dcefc8", "#5f8f7a"],
    ),
    (
        (330.0, 830.0),
        14.0,
        1.05,
        ["#d8a35c", "#f3d9a0", "#7a4a2c"],
    ),
    (
        (1075.0, 800.0),
        -12.0,
        1.1,
        ["#c98a94", "#f0c9c4", "#6b3547"],
    ),
    (
        (690.0, 1060.0),
        3.0,
        1.25,
        ["#e9e1cf", "#fbf7ea", "#8a8274"],
    ),
    (
        (270.0, 1370.0),
        -16.0,
        0.95,
        ["#8896b8", "#c9d2e6", "#39466b"],
    ),
    (
        (1110.0, 1330.0),
        15.0,
        1.15,
        ["#c7603c", "#efb073", "#4d2a24"],
    ),
    (
        (700.0, 1530.0),
        -3.0,
        0.85,
        ["#b9b06a", "#e9e3ac", "#5a5a30"],
    ),
];

/// 14 × 18 in: seven moths, in pastel on toned paper.
pub(crate) fn moths() -> Vec<u8> {
    let mut pen = Pen::new("moths", 1400.0, 1800.0);
    let mut chance = Chance::seeded(19);
    pen.ground("#5f6b72");
    for ink in ["#67737a", "#57636a", "#6c7674"] {
        let mut tooth = Path::default();
        for _ in 0..57 {
            let (x, y) = (chance.between(0.0, 1400.0), chance.between(0.0, 1800.0));
            tooth = tooth.and(&Path::straight(&[
                (x, y),
                (x + chance.about(60.0), y + chance.about(24.0)),
            ]));
        }
        pen.line(&tooth, ink, chance.between(8.0, 14.0));
    }
    for (kind, (place, turn, size, inks)) in (0_u32..).zip(MOTHS) {
        pen.wash(0.3, |pen| {
            let below = (place.0 + 14.0, place.1 + 26.0 * size);
            pen.oval(below, (190.0 * size, 60.0 * size), "#3f4a51");
        });
        pen.placed(*place, *turn, *size, |pen| {
            moth(pen, &mut chance, kind, *inks);
        });
    }
    pen.finish()
}

/// One moth round the origin; the first kind has long tails.
fn moth(pen: &mut Pen, chance: &mut Chance, kind: u32, inks: [&str; 3]) {
    for side in [-1.0, 1.0] {
        let tail = if kind == 0 { 210.0 } else { 96.0 };
        wings(pen, side, tail, inks);
        pen.wash(0.5, |pen| chalk(pen, chance, side, inks));
        marks(pen, side, inks);
    }
    pen.oval((0.0, 4.0), (16.0, 62.0), inks[2]);
    pen.oval((0.0, -34.0), (19.0, 25.0), inks[1]);
    for ring in 0..5_u32 {
        let y = 4.0 + 12.0 * f64::from(ring);
        let band = Path::stroke((-12.0, y), (0.0, y + 5.0), (12.0, y));
        pen.line(&band, inks[1], 2.5);
    }
}

/// Points put on one side of the body.
fn on(side: f64, points: &[Point]) -> Vec<Point> {
    points.iter().map(|(x, y)| (x * side, *y)).collect()
}

fn wings(pen: &mut Pen, side: f64, tail: f64, inks: [&str; 3]) {
    let mut hind = trace("8 6, 90 10, 122 62");
    hind.extend([
        (96.0, tail * 0.8),
        (72.0, tail),
        (54.0, tail * 0.62),
        (18.0, 60.0),
    ]);
    pen.fill(
        &Path::rounded(&on(side, &hind)),
        &tint(inks[0], inks[1], 0.35),
    );
    let fore = trace("6 -28, 80 -92, 178 -112, 196 -92, 160 -30, 120 26, 50 26, 8 10");
    pen.fill(&Path::rounded(&on(side, &fore)), inks[0]);
}

/// Bands, eyes and the feeler.
fn marks(pen: &mut Pen, side: f64, inks: [&str; 3]) {
    for (reach, ink) in [(150.0, inks[2]), (108.0, inks[1])] {
        let band = [
            (reach * 0.86, -96.0),
            (reach * 0.96, -54.0),
            (reach * 0.74, -14.0),
            (reach * 0.72, 20.0),
        ];
        pen.line(&Path::flowing(&on(side, &band)), ink, 5.0);
    }
    pen.dot((98.0 * side, -52.0), 17.0, inks[2]);
    pen.dot((98.0 * side, -52.0), 9.0, inks[1]);
    pen.dot((70.0 * side, 54.0), 11.0, inks[2]);
    let feeler = on(side, &[(4.0, -52.0), (14.0, -96.0), (48.0, -112.0)]);
    pen.line(&Path::stroke(feeler[0], feeler[1], feeler[2]), inks[2], 4.0);
}

/// Chalk strokes from the wing's root outwards.
fn chalk(pen: &mut Pen, chance: &mut Chance, side: f64, inks: [&str; 3]) {
    let mut paths = [Path::default(), Path::default(), Path::default()];
    for (place, stroke) in (0..14_u32).enumerate() {
        let angle = mix(-0.78, 0.45, f64::from(stroke) / 13.0);
        let reach = mix(186.0, 110.0, f64::from(stroke) / 13.0);
        let start = from((0.0, -14.0), reach * chance.between(0.3, 0.5), angle);
        let end = from((0.0, -14.0), reach * chance.between(0.72, 0.98), angle);
        let path = Path::straight(&[(start.0 * side, start.1), (end.0 * side, end.1)]);
        let own = &mut paths[place % 3];
        *own = own.clone().and(&path);
    }
    for (path, (ink, width)) in paths
        .iter()
        .zip([(inks[2], 4.5), (inks[1], 3.0), (inks[1], 5.5)])
    {
        pen.line(path, ink, width);
    }
}
