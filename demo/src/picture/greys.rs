//! Photographs in greys.

use super::chance::Chance;
use super::curve::{Path, Point, hill, land, mix, skyline, tint, trace};
use super::pen::Pen;

const BLACK: &str = "#17181a";
const WHITE: &str = "#f1f0ec";

/// A grey, from 0 (black) to 1 (paper white).
fn grey(part: f64) -> String {
    tint(BLACK, WHITE, part)
}

fn shaded(pen: &mut Pen, stops: &[(f64, f64)]) -> String {
    let inks: Vec<(f64, String)> = stops.iter().map(|(at, part)| (*at, grey(*part))).collect();
    let stops: Vec<(f64, &str)> = inks.iter().map(|(at, ink)| (*at, ink.as_str())).collect();
    pen.fall(&stops)
}

/// Darker corners, as a lens leaves them.
fn corners(pen: &mut Pen) {
    let ink = pen.glow((0.5, 0.5), 0.75, &[(0.6, "#00000000"), (1.0, "#00000066")]);
    pen.ground(&ink);
}

/// Ridges behind one another in mist, with firs in front.
pub(crate) fn ridges(name: &'static str, (width, height): Point, seed: u64) -> Vec<u8> {
    let mut pen = Pen::new(name, width, height);
    let mut chance = Chance::seeded(seed);
    let sky = shaded(&mut pen, &[(0.0, 0.62), (0.5, 0.93)]);
    pen.ground(&sky);
    for layer in 0..6_u32 {
        let part = f64::from(layer) / 5.0;
        let level = height * mix(0.34, 0.82, part);
        let ridge = skyline(
            (0.0, width),
            level,
            height * mix(0.09, 0.05, part),
            6,
            &mut chance,
        );
        let ink = shaded(
            &mut pen,
            &[(0.0, mix(0.66, 0.06, part)), (0.7, mix(0.9, 0.12, part))],
        );
        pen.fill(&land(&ridge, height), &ink);
    }
    for _ in 0..26 {
        let x = chance.part().powf(1.4) * width * 0.75;
        let high = height * chance.between(0.1, 0.24) * (1.15 - x / width);
        let foot = height * chance.between(0.94, 1.03);
        fir(&mut pen, &mut chance, (x, foot), high);
    }
    corners(&mut pen);
    pen.finish()
}

fn fir(pen: &mut Pen, chance: &mut Chance, (x, foot): Point, high: f64) {
    let mut left = vec![(x, foot - high)];
    let mut right = Vec::new();
    for tier in 1..9_u32 {
        let part = f64::from(tier) / 9.0;
        let y = foot - high * (1.0 - part);
        let wide = high * 0.2 * part;
        left.push((x - wide * chance.between(0.75, 1.1), y));
        left.push((x - wide * 0.45, y - high * 0.01));
        right.push((x + wide * chance.between(0.75, 1.1), y));
        right.push((x + wide * 0.45, y - high * 0.01));
    }
    right.reverse();
    left.extend(right);
    pen.fill(&Path::corners(&left), &grey(0.03));
}

/// Birches in the first frost.
pub(crate) fn birches(name: &'static str, (width, height): Point, seed: u64) -> Vec<u8> {
    let mut pen = Pen::new(name, width, height);
    let mut chance = Chance::seeded(seed);
    let mist = shaded(&mut pen, &trace("0 0.5, 0.55 0.8, 0.75 0.9, 1 0.72"));
    pen.ground(&mist);
    for layer in 0..4_u32 {
        let part = f64::from(layer) / 3.0;
        let count = 15 - 3 * layer;
        for trunk in 0..count {
            let x = width * (f64::from(trunk) + chance.between(0.1, 0.9)) / f64::from(count);
            let wide = width * mix(0.006, 0.036, part) * chance.between(0.8, 1.25);
            let tone = if layer < 2 {
                mix(0.58, 0.4, part)
            } else {
                0.93
            };
            let foot = height * (mix(0.74, 0.95, part) + chance.about(0.015));
            birch(&mut pen, &mut chance, (x, foot), wide, tone);
        }
    }
    let snow = skyline((0.0, width), height * 0.93, height * 0.01, 4, &mut chance);
    let white = shaded(&mut pen, &[(0.0, 0.98), (1.0, 0.74)]);
    pen.fill(&hill(&snow, height), &white);
    for _ in 0..46 {
        let x = chance.between(0.0, width);
        let foot = height * chance.between(0.93, 1.0);
        let tip = (
            x + chance.about(width * 0.02),
            foot - height * chance.between(0.03, 0.09),
        );
        pen.line(&Path::stroke((x, foot), (x, tip.1), tip), &grey(0.25), 1.8);
    }
    corners(&mut pen);
    pen.finish()
}

fn birch(pen: &mut Pen, chance: &mut Chance, (x, foot): Point, wide: f64, tone: f64) {
    let lean = chance.about(wide * 1.2);
    let bark = [grey(tone * 0.72), grey(tone), grey(tone * 0.5)];
    let ink = pen.across(&[(0.0, &bark[0]), (0.35, &bark[1]), (1.0, &bark[2])]);
    let top = (x + lean, -10.0);
    pen.fill(
        &Path::corners(&[
            (x - wide / 2.0, foot),
            (top.0 - wide * 0.3, top.1),
            (top.0 + wide * 0.3, top.1),
            (x + wide / 2.0, foot),
        ]),
        &ink,
    );
    if tone < 0.7 {
        return;
    }
    for _ in 0..13 {
        let part = chance.part();
        let (middle, y) = (x + lean * part, mix(foot, 0.0, part));
        let side = if chance.part() < 0.5 { -1.0 } else { 1.0 };
        let start = (middle + side * wide * 0.48, y);
        let end = (
            middle - side * wide * chance.about(0.35),
            y + chance.about(wide * 0.12),
        );
        pen.fill(
            &Path::leaf(start, end, wide * chance.between(0.06, 0.2)),
            &grey(0.08),
        );
    }
    for _ in 0..3 {
        let y = foot * chance.between(0.05, 0.5);
        let side = if chance.part() < 0.5 { -1.0 } else { 1.0 };
        let end = (
            x + side * wide * chance.between(2.0, 5.0),
            y - wide * chance.between(1.5, 3.5),
        );
        pen.line(
            &Path::stroke((x + lean * 0.6, y), (x + side * wide, y - wide), end),
            &grey(0.12),
            wide * 0.09 + 0.8,
        );
    }
}

/// Still water, a jetty and a far shore.
pub(crate) fn jetty(name: &'static str, (width, height): Point, seed: u64) -> Vec<u8> {
    let mut pen = Pen::new(name, width, height);
    let mut chance = Chance::seeded(seed);
    let level = height * 0.47;
    let sky = shaded(&mut pen, &[(0.0, 0.32), (0.3, 0.6), (0.47, 0.97)]);
    pen.ground(&sky);
    clouds(&mut pen, &mut chance, level * 0.72);
    let water = shaded(&mut pen, &[(0.0, 0.93), (0.35, 0.6), (1.0, 0.16)]);
    pen.rect((0.0, level), (width, height - level), &water);
    let shore = skyline(
        (0.0, width),
        level - height * 0.06,
        height * 0.05,
        6,
        &mut chance,
    );
    pen.fill(&land(&shore, level), &grey(0.22));
    let mirrored: Vec<Point> = shore
        .iter()
        .map(|(x, y)| (*x, level + (level - y) * 0.9))
        .collect();
    pen.wash(0.45, |pen| pen.fill(&land(&mirrored, level), &grey(0.2)));
    for _ in 0..60 {
        let y = mix(level, height, chance.part().powf(1.6));
        let x = chance.between(-width * 0.1, width);
        let long = width * mix(0.04, 0.2, (y - level) / (height - level));
        pen.wash(0.25, |pen| {
            pen.line(&Path::straight(&[(x, y), (x + long, y)]), &grey(0.95), 1.6);
        });
    }
    planks(&mut pen, (width, height), level);
    corners(&mut pen);
    pen.finish()
}

fn clouds(pen: &mut Pen, chance: &mut Chance, level: f64) {
    let soft = pen.glow((0.5, 0.5), 0.5, &[(0.0, "#f7f6f2bb"), (1.0, "#f7f6f200")]);
    for _ in 0..16 {
        let (x, y) = (
            chance.between(0.0, pen.width()),
            chance.between(level * 0.1, level),
        );
        let wide = pen.width() * chance.between(0.12, 0.3);
        pen.oval((x, y), (wide, wide * chance.between(0.12, 0.26)), &soft);
    }
}

fn planks(pen: &mut Pen, (width, height): Point, level: f64) {
    let far = (width * 0.55, level + height * 0.06);
    let deck = [
        (width * 0.2, height),
        (far.0 - width * 0.018, far.1),
        (far.0 + width * 0.018, far.1),
        (width * 0.62, height),
    ];
    let ink = shaded(pen, &[(0.0, 0.4), (1.0, 0.1)]);
    pen.fill(&Path::corners(&deck), &ink);
    for board in 1..16_u32 {
        let part = (f64::from(board) / 16.0).powf(2.2);
        let y = mix(far.1, height, part);
        let edge = |near: f64, away: f64| mix(away, near, part);
        let seam = [
            (edge(width * 0.2, far.0 - width * 0.018), y),
            (edge(width * 0.62, far.0 + width * 0.018), y),
        ];
        pen.line(&Path::straight(&seam), &grey(0.04), mix(0.8, 5.0, part));
    }
    for post in 0..5_u32 {
        let part = (f64::from(post) / 4.4).powf(2.0);
        for (near, away) in [
            (width * 0.2, far.0 - width * 0.018),
            (width * 0.62, far.0 + width * 0.018),
        ] {
            let (x, y) = (mix(away, near, part), mix(far.1, height, part));
            let high = height * mix(0.05, 0.3, part);
            pen.rect(
                (x - high * 0.05, y - high * 0.7),
                (high * 0.1, high),
                &grey(0.04),
            );
        }
    }
}

/// One bare tree on a snowfield.
pub(crate) fn lone_tree(name: &'static str, (width, height): Point, seed: u64) -> Vec<u8> {
    let mut pen = Pen::new(name, width, height);
    let mut chance = Chance::seeded(seed);
    let sky = shaded(&mut pen, &[(0.0, 0.5), (0.66, 0.9)]);
    pen.ground(&sky);
    let snow = [
        (0.0, height * 0.74),
        (width * 0.35, height * 0.7),
        (width * 0.7, height * 0.73),
        (width, height * 0.69),
    ];
    let white = shaded(&mut pen, &[(0.0, 0.99), (1.0, 0.68)]);
    pen.fill(&hill(&snow, height), &white);
    let foot = (width * 0.52, height * 0.725);
    pen.wash(0.3, |pen| {
        pen.fill(
            &Path::leaf(foot, (width * 0.05, height * 0.93), height * 0.02),
            &grey(0.3),
        );
    });
    let mut twigs: Vec<(Point, Point, f64)> = Vec::new();
    let trunk = height * 0.15;
    grow(
        &mut twigs,
        &mut chance,
        (foot, -std::f64::consts::FRAC_PI_2, trunk),
        6,
    );
    for tier in 0..=6_u32 {
        let thick = height * 0.022 * 0.62_f64.powi(i32::try_from(tier).unwrap_or_default());
        let path = twigs
            .iter()
            .filter(|(_, _, depth)| (*depth - f64::from(tier)).abs() < 0.5)
            .fold(Path::default(), |path, (a, b, _)| {
                path.and(&Path::straight(&[*a, *b]))
            });
        pen.line(&path, &grey(0.06), thick.max(0.8));
    }
    for post in 0..7_u32 {
        let x = width * (0.03 + 0.065 * f64::from(post));
        pen.rect(
            (x, height * 0.75),
            (height * 0.007, height * 0.06),
            &grey(0.2),
        );
    }
    corners(&mut pen);
    pen.finish()
}

fn grow(
    twigs: &mut Vec<(Point, Point, f64)>,
    chance: &mut Chance,
    (foot, angle, long): (Point, f64, f64),
    left: u32,
) {
    let tip = super::curve::from(foot, long, angle);
    twigs.push((foot, tip, f64::from(6 - left)));
    if left == 0 {
        return;
    }
    for side in [-1.0_f64, 0.2, 1.0] {
        if left < 3 && side.abs() < 0.5 {
            continue;
        }
        let turned = angle + side * chance.between(0.25, 0.6);
        let shorter = long * chance.between(0.66, 0.84);
        grow(twigs, chance, (tip, turned, shorter), left - 1);
    }
}

/// Dunes in low sun.
pub(crate) fn dunes(name: &'static str, (width, height): Point, seed: u64) -> Vec<u8> {
    let mut pen = Pen::new(name, width, height);
    let mut chance = Chance::seeded(seed);
    let sky = shaded(&mut pen, &[(0.0, 0.2), (0.4, 0.66)]);
    pen.ground(&sky);
    for layer in 0..4_u32 {
        let part = f64::from(layer) / 3.0;
        let level = height * mix(0.36, 0.74, part);
        let peak = width * chance.between(0.25, 0.75);
        let rise = height * mix(0.1, 0.2, part);
        let crest = [
            (-width * 0.1, level + rise),
            (peak * 0.55, level + rise * 0.45),
            (peak, level),
            (mix(peak, width, 0.5), level + rise * 0.4),
            (width * 1.1, level + rise * 0.7),
        ];
        let light = shaded(
            &mut pen,
            &[(0.0, mix(0.8, 0.98, part)), (1.0, mix(0.6, 0.5, part))],
        );
        pen.fill(&hill(&crest, height), &light);
        let lee = [
            (peak, level),
            (peak + width * 0.05, level + rise * 0.6),
            (peak - width * 0.06, level + rise * 1.5),
            (peak + width * 0.1, height),
            (width * 1.1, height),
            (width * 1.1, level + rise * 0.7),
            (mix(peak, width, 0.5), level + rise * 0.4),
        ];
        let dark = shaded(
            &mut pen,
            &[(0.0, mix(0.34, 0.06, part)), (1.0, mix(0.55, 0.3, part))],
        );
        pen.fill(&Path::flowing(&lee).closed(), &dark);
        ripples(&mut pen, (peak, level), rise);
    }
    corners(&mut pen);
    pen.finish()
}

/// What the wind leaves on the lit side of a dune.
fn ripples(pen: &mut Pen, (peak, level): Point, rise: f64) {
    let (width, height) = (pen.width(), pen.height());
    pen.wash(0.2, |pen| {
        for ripple in 1..13_u32 {
            let ripple = f64::from(ripple);
            let down = level + rise * (0.35 + 0.22 * ripple);
            let points: Vec<Point> = (0..6_u32)
                .map(|step| {
                    let x = mix(-10.0, peak * 0.8, f64::from(step) / 5.0);
                    let wave = (x / width * 14.0 + ripple).sin();
                    (x, down + wave * height * 0.008)
                })
                .collect();
            pen.line(&Path::flowing(&points), &grey(0.2), 1.6);
        }
    });
}

/// The moon over a mountain lake.
pub(crate) fn moonrise(name: &'static str, (width, height): Point, seed: u64) -> Vec<u8> {
    let mut pen = Pen::new(name, width, height);
    let mut chance = Chance::seeded(seed);
    let sky = shaded(&mut pen, &[(0.0, 0.05), (0.6, 0.42)]);
    pen.ground(&sky);
    let size = width.min(height) * 0.06;
    let moon = (width * 0.66, height * 0.2);
    let halo = pen.glow((0.5, 0.5), 0.5, &[(0.15, "#ffffff77"), (1.0, "#ffffff00")]);
    pen.dot(moon, size * 5.0, &halo);
    pen.dot(moon, size, &grey(0.99));
    let level = height * 0.7;
    let peaks = skyline((0.0, width), height * 0.45, height * 0.16, 7, &mut chance);
    let rock = shaded(&mut pen, &[(0.0, 0.62), (0.5, 0.2), (1.0, 0.1)]);
    pen.fill(&land(&peaks, level), &rock);
    let near = skyline((0.0, width), height * 0.63, height * 0.05, 6, &mut chance);
    pen.fill(&land(&near, level), &grey(0.07));
    let lake = shaded(&mut pen, &[(0.0, 0.5), (1.0, 0.06)]);
    pen.rect((0.0, level), (width, height - level), &lake);
    for _ in 0..70 {
        let part = chance.part();
        let y = mix(level, height, part);
        let x = moon.0 + chance.about(width * mix(0.02, 0.12, part));
        let long = width * mix(0.01, 0.05, part);
        pen.line(
            &Path::straight(&[(x - long, y), (x + long, y)]),
            &grey(chance.between(0.6, 0.98)),
            mix(1.0, 3.0, part),
        );
    }
    corners(&mut pen);
    pen.finish()
}
