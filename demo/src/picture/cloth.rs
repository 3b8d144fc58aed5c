//! A sampler in cross stitch, and a quilt block.

use super::chance::Chance;
use super::curve::{Path, Point, from, mix, ring};
use super::pen::Pen;

/// Motifs, one letter a stitch; a dot is bare linen.
const TREE: &[&str] = &[
    "....g....",
    "...ggg...",
    "..ggrgg..",
    ".ggggggg.",
    "..grggg..",
    ".ggggrgg.",
    "ggggggggg",
    "....b....",
    "....b....",
    "...bbb...",
];
const HOUSE: &[&str] = &[
    "......bb.........",
    ".....rbbr........",
    "....rrrrrrrrrr...",
    "...rrrrrrrrrrrr..",
    "..rrrrrrrrrrrrrr.",
    "..yyyyyyyyyyyyyy.",
    "..yuuyyyuuyyyuuy.",
    "..yuuyyyuuyyyuuy.",
    "..yyyyyyyyyyyyyy.",
    "..yuuyyybbyyyuuy.",
    "..yuuyyybbyyyuuy.",
    "..yyyyyybbyyyyyy.",
];
const BIRD: &[&str] = &[
    "..uu......",
    ".uuuu.....",
    "yuuuuu....",
    ".uuuuuuuu.",
    "..uuuuuuuu",
    "..uuuuu...",
    "...uuu....",
    "...b.b....",
];
const STAG: &[&str] = &[
    "b.b.......",
    ".bb.......",
    ".bbb......",
    "bbb.......",
    "..bbbbbbb.",
    "..bbbbbbbb",
    "..bbbbbbb.",
    "..b.b.b.b.",
    "..b.b.b.b.",
];
const HEART: &[&str] = &[
    ".rr.rr.", "rrrrrrr", "rrrrrrr", ".rrrrr.", "..rrr..", "...r...",
];

/// 14 × 14 in: a sampler.
pub(crate) fn sampler() -> Vec<u8> {
    let mut pen = Pen::new("sampler", 1400.0, 1400.0);
    pen.ground("#ece2cb");
    pen.wash(0.35, |pen| {
        for thread in 0..70_u32 {
            let at = 20.0 * f64::from(thread) + 10.0;
            let weave = Path::straight(&[(at, 0.0), (at, 1400.0)])
                .and(&Path::straight(&[(0.0, at), (1400.0, at)]));
            pen.line(&weave, "#cfc2a2", 2.0);
        }
    });
    let mut stitches: Vec<(char, i32, i32)> = Vec::new();
    border(&mut stitches);
    for (motif, column, row, mirrored) in [
        (HOUSE, 27, 40, false),
        (TREE, 13, 42, false),
        (TREE, 48, 42, false),
        (BIRD, 16, 29, false),
        (BIRD, 44, 29, true),
        (STAG, 10, 16, false),
        (STAG, 50, 16, true),
        (HEART, 32, 29, false),
        (TREE, 31, 13, false),
        (HEART, 23, 17, false),
        (HEART, 41, 17, false),
    ] {
        lay(&mut stitches, motif, (column, row), mirrored);
    }
    for column in 9..=60 {
        stitches.push(('g', column, 52));
        let wave = [0, 1, 2, 1][usize::try_from(column % 4).unwrap_or_default()];
        stitches.push(('r', column, 24 + wave));
        stitches.push(('u', column, 54 + wave));
    }
    for (thread, ink) in [
        ('g', "#4f6f4a"),
        ('r', "#a63d40"),
        ('u', "#3f5f86"),
        ('y', "#d9a94e"),
        ('b', "#5a4132"),
    ] {
        stitch(&mut pen, &stitches, thread, ink);
    }
    pen.finish()
}

fn lay(
    stitches: &mut Vec<(char, i32, i32)>,
    motif: &[&str],
    (column, row): (i32, i32),
    mirrored: bool,
) {
    for (line, text) in (0_i32..).zip(motif) {
        let count = i32::try_from(text.len()).unwrap_or_default();
        for (place, thread) in (0_i32..).zip(text.chars()) {
            let across = if mirrored { count - 1 - place } else { place };
            if thread != '.' {
                stitches.push((thread, column + across, row + line));
            }
        }
    }
}

/// A strawberry vine round all four sides.
fn border(stitches: &mut Vec<(char, i32, i32)>) {
    for place in 3..=66 {
        let turn = place % 8;
        let wave = [0, 1, 2, 2, 2, 1, 0, 0][usize::try_from(turn).unwrap_or_default()];
        for (column, row) in [
            (place, 3 + wave),
            (place, 66 - wave),
            (3 + wave, place),
            (66 - wave, place),
        ] {
            stitches.push(('g', column, row));
        }
        if turn == 6 {
            for (column, row) in [(place, 5), (place, 64), (5, place), (64, place)] {
                stitches.extend([
                    ('r', column, row),
                    ('r', column + 1, row),
                    ('r', column, row + 1),
                ]);
            }
        }
    }
}

/// All stitches of one thread, as one path on the linen's own grid.
fn stitch(pen: &mut Pen, stitches: &[(char, i32, i32)], thread: char, ink: &str) {
    let mut places: Vec<(i32, i32)> = stitches
        .iter()
        .filter(|(own, _, _)| *own == thread)
        .map(|(_, column, row)| (*column, *row))
        .collect();
    places.sort_unstable();
    places.dedup();
    let path = Path::crosses(&places);
    pen.group("transform=\"scale(20)\" stroke-opacity=\"0.92\"", |pen| {
        pen.line(&path, ink, 0.3);
    });
}

/// 12 × 12 in: one block of a quilt, a star of many prints.
pub(crate) fn quilt() -> Vec<u8> {
    let mut pen = Pen::new("quilt", 1200.0, 1200.0);
    let mut chance = Chance::seeded(37);
    pen.ground("#f1e7d3");
    let cell = 150.0;
    for row in 0..8_u32 {
        for column in 0..8_u32 {
            let place = (cell * f64::from(column), cell * f64::from(row));
            patch(&mut pen, &mut chance, place, (column, row));
        }
    }
    for spot in 0..9_u32 {
        let centre = (
            300.0 + 300.0 * f64::from(spot % 3),
            300.0 + 300.0 * f64::from(spot / 3),
        );
        for radius in [60.0, 105.0] {
            pen.dashes(&Path::circle(centre, radius), "#fbf5e6", 2.6, (9.0, 8.0));
        }
    }
    for seam in 1..8_u32 {
        let at = cell * f64::from(seam);
        pen.wash(0.25, |pen| {
            pen.line(
                &Path::straight(&[(at, 0.0), (at, 1200.0)])
                    .and(&Path::straight(&[(0.0, at), (1200.0, at)])),
                "#4a3b2e",
                2.0,
            );
        });
    }
    pen.finish()
}

/// Which colours meet in a square of the block: folded into one eighth, so that it is a star.
fn patch(pen: &mut Pen, chance: &mut Chance, (x, y): Point, (column, row): (u32, u32)) {
    let (a, b) = (column.min(7 - column), row.min(7 - row));
    let (low, high) = (a.min(b), a.max(b));
    let inks = match (low, high) {
        (0, 0) => ["#27475c", "#27475c"],
        (0, 1 | 2) => ["#e8d9b8", "#27475c"],
        (0, _) => ["#b5443a", "#e8d9b8"],
        (1, 1) => ["#d99a3d", "#e8d9b8"],
        (1, 2) => ["#b5443a", "#27475c"],
        (1, _) => ["#27475c", "#d99a3d"],
        (2, 2) => ["#6d8f7b", "#b5443a"],
        (2, _) => ["#d99a3d", "#b5443a"],
        _ => ["#f4ead2", "#6d8f7b"],
    };
    let size = 150.0;
    pen.rect((x, y), (size, size), inks[0]);
    let (left, top) = (column < 4, row < 4);
    let corner = (
        if left { x } else { x + size },
        if top { y } else { y + size },
    );
    let across = (if left { x + size } else { x }, corner.1);
    let down = (corner.0, if top { y + size } else { y });
    let half = Path::corners(&[corner, across, down]);
    pen.fill(&half, inks[1]);
    prints(pen, chance, (x, y), size, low + high);
}

fn prints(pen: &mut Pen, chance: &mut Chance, (x, y): Point, size: f64, kind: u32) {
    let spots: Vec<Point> = (0..9_u32)
        .map(|spot| {
            let part = |place: u32| size * (f64::from(place) + 0.5) / 3.0;
            (x + part(spot % 3), y + part(spot / 3))
        })
        .collect();
    pen.wash(0.3, |pen| match kind % 3 {
        0 => pen.dots(&spots, 6.0, "#fff8e8"),
        1 => {
            let dashes = spots.iter().fold(Path::default(), |path, spot| {
                let turn = chance.between(0.0, 1.5);
                path.and(&Path::straight(&[
                    from(*spot, 10.0, turn),
                    from(*spot, -10.0, turn),
                ]))
            });
            pen.line(&dashes, "#fff8e8", 3.5);
        }
        _ => {
            let petals: Vec<Point> = spots
                .iter()
                .flat_map(|spot| ring(*spot, 7.0, 4, mix(0.0, 0.8, chance.part())))
                .collect();
            pen.dots(&petals, 3.2, "#fff8e8");
        }
    });
}
