//! Abstract work: colour fields, an ink sheet, turned squares, quarter circles.

use super::chance::Chance;
use super::curve::{Path, Point, mix, ring, tint, trace};
use super::pen::Pen;

/// 11 × 14 in: three fields of an evening.
pub(crate) fn evening() -> Vec<u8> {
    let mut pen = Pen::new("evening", 1100.0, 1400.0);
    let mut chance = Chance::seeded(3);
    let ground = pen.fall(&[(0.0, "#7a2f3b"), (1.0, "#4d1f3a")]);
    pen.ground(&ground);
    field(
        &mut pen,
        &mut chance,
        (90.0, 90.0),
        (920.0, 560.0),
        ["#e8863f", "#f2b35a"],
    );
    field(
        &mut pen,
        &mut chance,
        (90.0, 690.0),
        (920.0, 190.0),
        ["#d4526a", "#f0a08a"],
    );
    field(
        &mut pen,
        &mut chance,
        (90.0, 920.0),
        (920.0, 390.0),
        ["#2a2350", "#4a3a78"],
    );
    pen.finish()
}

/// 400 × 600 mm, drawn at one unit to 0.5 mm: bands of water between two tides.
pub(crate) fn tide_table() -> Vec<u8> {
    let mut pen = Pen::new("tide-table", 800.0, 1200.0);
    let mut chance = Chance::seeded(17);
    pen.ground("#efe7d6");
    let inks = [
        "#f3d9a4", "#cfd9c3", "#8fb8b0", "#4f8f97", "#2a6379", "#1b3f5c", "#2a6379", "#6fa7a6",
        "#dfe3cd", "#e9b27c",
    ];
    let mut top = 50.0;
    for (band, ink) in (0_u32..).zip(inks) {
        let high = 62.0 + 26.0 * (f64::from(band) * 0.8).sin() + 40.0;
        field(
            &mut pen,
            &mut chance,
            (55.0, top),
            (690.0, high),
            [ink, &tint(ink, "#ffffff", 0.25)],
        );
        top += high + 8.0;
    }
    pen.dot((560.0, 250.0), 58.0, "#d9542f");
    pen.finish()
}

/// A soft-edged field, brushed across.
fn field(
    pen: &mut Pen,
    chance: &mut Chance,
    (x, y): Point,
    (wide, high): Point,
    [low, high_ink]: [&str; 2],
) {
    for layer in 0..6_u32 {
        let inset = 5.0 * f64::from(layer) - 14.0;
        let edge: Vec<Point> = edge_points(
            (x + inset, y + inset),
            (wide - 2.0 * inset, high - 2.0 * inset),
        )
        .into_iter()
        .map(|(x, y)| (x + chance.about(6.0), y + chance.about(6.0)))
        .collect();
        pen.wash(0.34, |pen| pen.fill(&Path::rounded(&edge), low));
    }
    pen.wash(0.16, |pen| {
        let mut down = y + 12.0;
        while down < y + high - 12.0 {
            let start = x + chance.between(8.0, wide * 0.3);
            let end = x + wide - chance.between(8.0, wide * 0.3);
            let bend = down + chance.about(9.0);
            pen.line(
                &Path::stroke(
                    (start, down),
                    (f64::midpoint(start, end), bend),
                    (end, down + chance.about(5.0)),
                ),
                high_ink,
                chance.between(5.0, 15.0),
            );
            down += chance.between(9.0, 19.0);
        }
    });
}

fn edge_points((x, y): Point, (wide, high): Point) -> Vec<Point> {
    let mut points = Vec::new();
    let across = 5_u32;
    let part = |step: u32| f64::from(step) / f64::from(across);
    points.extend((0..across).map(|step| (x + wide * part(step), y)));
    points.extend((0..across).map(|step| (x + wide, y + high * part(step))));
    points.extend((0..across).map(|step| (x + wide * (1.0 - part(step)), y + high)));
    points.extend((0..across).map(|step| (x, y + high * (1.0 - part(step)))));
    points
}

/// 11 × 15 in: ink on a handmade sheet, its deckle on all four edges.
pub(crate) fn ink_tide() -> Vec<u8> {
    let mut pen = Pen::new("ink-tide", 1100.0, 1500.0);
    let mut chance = Chance::seeded(41);
    let mut edge = Vec::new();
    for (x, y) in edge_steps((18.0, 18.0), (1064.0, 1464.0)) {
        edge.push((x + chance.about(11.0), y + chance.about(11.0)));
    }
    pen.fill(&Path::rounded(&edge), "#f4efe2");
    let mut fibres = Path::default();
    for _ in 0..110 {
        let (x, y) = (chance.between(50.0, 1050.0), chance.between(50.0, 1450.0));
        let by = (x + chance.about(20.0), y + chance.about(20.0));
        fibres = fibres.and(&Path::stroke(
            (x, y),
            by,
            (x + chance.about(34.0), y + chance.about(34.0)),
        ));
    }
    pen.line(&fibres, "#ddd3bd", 1.6);
    for stroke in 0..9_u32 {
        let level = 1230.0 - 78.0 * f64::from(stroke);
        let dark = mix(0.85, 0.18, f64::from(stroke) / 8.0);
        brush(&mut pen, &mut chance, level, dark);
    }
    pen.wash(0.9, |pen| pen.dot((760.0, 330.0), 105.0, "#c33b27"));
    pen.rect((890.0, 1310.0), (58.0, 58.0), "#b02f22");
    pen.line(
        &Path::straight(&[(902.0, 1326.0), (936.0, 1326.0)])
            .and(&Path::straight(&[(919.0, 1322.0), (919.0, 1356.0)]))
            .and(&Path::straight(&[(904.0, 1352.0), (934.0, 1344.0)])),
        "#f4efe2",
        5.0,
    );
    pen.finish()
}

fn edge_steps((x, y): Point, (wide, high): Point) -> Vec<Point> {
    let step = |count: u32, place: u32| f64::from(place) / f64::from(count);
    let mut points = Vec::new();
    points.extend((0..30).map(|place| (x + wide * step(30, place), y)));
    points.extend((0..40).map(|place| (x + wide, y + high * step(40, place))));
    points.extend((0..30).map(|place| (x + wide * (1.0 - step(30, place)), y + high)));
    points.extend((0..40).map(|place| (x, y + high * (1.0 - step(40, place)))));
    points
}

/// One wide brush stroke of many hairs, running dry to the right.
fn brush(pen: &mut Pen, chance: &mut Chance, level: f64, dark: f64) {
    let (start, swell, phase) = (
        chance.between(110.0, 200.0),
        chance.between(26.0, 52.0),
        chance.between(0.0, 3.0),
    );
    pen.wash(dark, |pen| {
        for hair in 0..15_u32 {
            let offset = 2.9 * f64::from(hair) - 20.0;
            let end = chance.between(680.0, 960.0);
            let points: Vec<Point> = (0..=5_u32)
                .map(|step| {
                    let x = mix(start, end, f64::from(step) / 5.0) + chance.about(2.0);
                    (x, level + offset + swell * (x / 190.0 + phase).sin())
                })
                .collect();
            pen.line(&Path::flowing(&points), "#23262e", chance.between(1.5, 4.2));
        }
    });
}

/// 16 × 16 in: nine squares, each turned further.
pub(crate) fn nine_turns() -> Vec<u8> {
    let mut pen = Pen::new("nine-turns", 1600.0, 1600.0);
    pen.ground("#f2ede1");
    for row in 0..3_u32 {
        for column in 0..3_u32 {
            let centre = (
                330.0 + 470.0 * f64::from(column),
                330.0 + 470.0 * f64::from(row),
            );
            let turn = f64::from(row * 3 + column);
            for nest in 0..12_u32 {
                let radius = 280.0 - 22.0 * f64::from(nest);
                let angle = std::f64::consts::FRAC_PI_4 + turn * f64::from(nest) * 0.022;
                let ink = if (row + column) % 2 == 0 {
                    tint("#17345c", "#c8492f", f64::from(nest) / 11.0)
                } else {
                    tint("#c8492f", "#17345c", f64::from(nest) / 11.0)
                };
                pen.line(&Path::corners(&ring(centre, radius, 4, angle)), &ink, 4.5);
            }
        }
    }
    pen.finish()
}

/// 18 × 24 in: quarter circles on a grid, painted flat.
pub(crate) fn quarters() -> Vec<u8> {
    let mut pen = Pen::new("quarters", 1800.0, 2400.0);
    let mut chance = Chance::seeded(29);
    let grounds = [
        "#e9dfc9", "#1f3b4d", "#d9a441", "#c4512d", "#7fa39a", "#2d2a32",
    ];
    for row in 0..4_u32 {
        for column in 0..3_u32 {
            let place = (600.0 * f64::from(column), 600.0 * f64::from(row));
            let ground = chance.pick(&grounds);
            pen.rect(place, (600.0, 600.0), ground);
            quarter_cell(&mut pen, &mut chance, place, &grounds, ground);
        }
    }
    pen.finish()
}

fn quarter_cell(pen: &mut Pen, chance: &mut Chance, (x, y): Point, inks: &[&str], ground: &str) {
    let cell = Path::rect((x, y), (600.0, 600.0));
    let corner = chance.pick(&trace("0 0, 600 0, 600 600, 0 600"));
    let centre = (x + corner.0, y + corner.1);
    let nested = chance.part() < 0.55;
    let mut last = ground;
    pen.within(&cell, |pen| {
        for radius in [600.0, 400.0, 200.0] {
            let others: Vec<&str> = inks
                .iter()
                .copied()
                .filter(|ink| *ink != last && *ink != ground)
                .collect();
            last = chance.pick(&others);
            pen.dot(centre, radius, last);
            if !nested {
                break;
            }
        }
        if !nested {
            let far = (x + 600.0 - corner.0, y + 600.0 - corner.1);
            let others: Vec<&str> = inks
                .iter()
                .copied()
                .filter(|ink| *ink != last && *ink != ground)
                .collect();
            pen.dot(far, 230.0, chance.pick(&others));
        }
    });
}
