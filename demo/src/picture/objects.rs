//! Things with depth: shells, an urchin, a medal. And a looking glass.

use super::chance::Chance;
use super::curve::{Path, Point, from, mix, ring, tint, trace};
use super::pen::Pen;

/// 3 × 3 in: a scallop.
pub(crate) fn scallop() -> Vec<u8> {
    let mut pen = Pen::new("scallop", 300.0, 300.0);
    let hinge = (150.0, 250.0);
    shadow(&mut pen, (156.0, 170.0), (128.0, 112.0));
    let shell = pen.glow(
        (0.5, 0.9),
        0.95,
        &[
            (0.0, "#f7e6d0"),
            (0.45, "#e9a988"),
            (0.8, "#c9694f"),
            (1.0, "#8f3f38"),
        ],
    );
    pen.fill(
        &Path::corners(&trace("106 228, 194 228, 182 264, 118 264")),
        "#d59273",
    );
    let mut edge = vec![hinge];
    for rib in 0..=12_u32 {
        let part = f64::from(rib) / 12.0;
        edge.push(on_scallop(hinge, 196.0, part));
        if rib < 12 {
            edge.push(on_scallop(hinge, 185.0, part + 0.046));
        }
    }
    pen.fill(&Path::rounded(&edge), &shell);
    for rib in 0..=12_u32 {
        let part = f64::from(rib) / 12.0;
        let (foot, tip) = (
            on_scallop(hinge, 26.0, part),
            on_scallop(hinge, 192.0, part),
        );
        pen.wash(0.45, |pen| pen.fill(&Path::leaf(foot, tip, 5.0), "#fbeee0"));
    }
    for (band, ink) in [(0.42, "#a4523f"), (0.62, "#8f3f38"), (0.82, "#7a302e")] {
        let arc: Vec<Point> = (0..=12_u32)
            .map(|step| on_scallop(hinge, 194.0 * band, f64::from(step) / 12.0))
            .collect();
        pen.wash(0.4, |pen| pen.line(&Path::flowing(&arc), ink, 5.0));
    }
    pen.finish()
}

/// A place on the shell, `part` of the way round its fan.
fn on_scallop(hinge: Point, reach: f64, part: f64) -> Point {
    let angle = mix(-2.6, -0.54, part);
    let full = 1.0 - 0.1 * (angle + std::f64::consts::FRAC_PI_2).abs();
    from(hinge, reach * full, angle)
}

/// Something soft below an object.
fn shadow(pen: &mut Pen, place: Point, reach: Point) {
    let soft = pen.glow((0.5, 0.5), 0.5, &[(0.55, "#00000055"), (1.0, "#00000000")]);
    pen.oval(
        (place.0 + 6.0, place.1 + 10.0),
        (reach.0 * 1.12, reach.1 * 1.12),
        &soft,
    );
}

/// 2 1/2 × 4 in: a whelk.
pub(crate) fn whelk() -> Vec<u8> {
    let mut pen = Pen::new("whelk", 250.0, 400.0);
    shadow(&mut pen, (125.0, 215.0), (86.0, 160.0));
    let shell = pen.across(&[
        (0.0, "#a88158"),
        (0.35, "#f2dfc0"),
        (0.7, "#c99f70"),
        (1.0, "#7b5636"),
    ]);
    for whorl in 0..6_u32 {
        let part = f64::from(whorl) / 5.0;
        let size = mix(88.0, 16.0, part.powf(0.8));
        let centre = (mix(122.0, 128.0, part), mix(222.0, 54.0, part.powf(0.8)));
        pen.placed(centre, -12.0, 1.0, |pen| {
            pen.oval((0.0, 0.0), (size, size * 0.62), &shell);
            for line in 0..4_u32 {
                let y = size * mix(-0.4, 0.45, f64::from(line) / 3.0);
                let reach = (1.0 - (y / (size * 0.62)).powi(2)).max(0.0).sqrt() * size;
                pen.line(
                    &Path::stroke((-reach, y), (0.0, y + size * 0.16), (reach, y)),
                    "#8a6440",
                    1.6,
                );
            }
        });
    }
    let body = trace("44 226, 64 300, 110 372, 132 388, 142 350, 196 290, 208 220, 130 250");
    pen.fill(&Path::rounded(&body), &shell);
    let mouth = pen.fall(&[(0.0, "#f6d9b8"), (0.6, "#d98e62"), (1.0, "#8a4a32")]);
    pen.fill(
        &Path::rounded(&trace(
            "150 232, 190 236, 188 290, 146 340, 132 366, 128 310",
        )),
        &mouth,
    );
    pen.line(
        &Path::flowing(&[(60.0, 262.0), (110.0, 292.0), (140.0, 286.0)]),
        "#8a6440",
        2.0,
    );
    pen.line(
        &Path::flowing(&[(76.0, 306.0), (110.0, 326.0), (128.0, 320.0)]),
        "#8a6440",
        2.0,
    );
    pen.finish()
}

/// 3 × 3 in: a sea urchin's shell.
pub(crate) fn urchin() -> Vec<u8> {
    let mut pen = Pen::new("urchin", 300.0, 300.0);
    let centre = (150.0, 150.0);
    shadow(&mut pen, centre, (128.0, 126.0));
    let shell = pen.glow(
        (0.4, 0.36),
        0.7,
        &[(0.0, "#efe3ee"), (0.5, "#b79bc0"), (1.0, "#5f4a73")],
    );
    pen.dot(centre, 132.0, &shell);
    for spoke in 0..20_u32 {
        let angle = std::f64::consts::TAU * f64::from(spoke) / 20.0;
        let wide = spoke % 4 < 2;
        for bead in 0..9_u32 {
            let part = f64::from(bead) / 8.0;
            let place = from(
                centre,
                mix(22.0, 124.0, part),
                angle + if wide { 0.0 } else { 0.06 },
            );
            let size =
                (std::f64::consts::PI * mix(0.12, 0.9, part)).sin() * if wide { 6.4 } else { 3.6 };
            pen.dot(place, size, if wide { "#f4ecf3" } else { "#8a6f9c" });
        }
    }
    pen.dot(centre, 19.0, "#4a3a5c");
    for plate in ring(centre, 13.0, 5, 0.0) {
        pen.dot(plate, 5.0, "#d9c6dc");
    }
    pen.finish()
}

/// 2 × 4 in: a swimming club's medal on its ribbon.
pub(crate) fn medal() -> Vec<u8> {
    let mut pen = Pen::new("medal", 200.0, 400.0);
    shadow(&mut pen, (100.0, 294.0), (90.0, 90.0));
    let silk = Path::corners(&trace("42 10, 158 10, 158 150, 100 206, 42 150"));
    pen.within(&silk, |pen| {
        pen.ground("#1f4a6b");
        for (x, wide, ink) in [
            (64.0, 14.0, "#efe6cf"),
            (88.0, 24.0, "#b8392f"),
            (122.0, 14.0, "#efe6cf"),
        ] {
            pen.rect((x, 0.0), (wide, 240.0), ink);
        }
        for fold in 0..5_u32 {
            let y = 20.0 + 36.0 * f64::from(fold);
            pen.wash(0.12, |pen| pen.rect((0.0, y), (200.0, 12.0), "#ffffff"));
        }
    });
    pen.rect((34.0, 6.0), (132.0, 14.0), "#b8963f");
    pen.line(&Path::circle((100.0, 208.0), 13.0), "#a8842f", 6.0);
    let gold = pen.glow(
        (0.36, 0.3),
        0.8,
        &[(0.0, "#fff3c4"), (0.4, "#d9b04a"), (1.0, "#7a5a1c")],
    );
    pen.dot((100.0, 302.0), 86.0, &gold);
    pen.line(&Path::circle((100.0, 302.0), 76.0), "#7a5a1c", 3.0);
    for bead in ring((100.0, 302.0), 81.0, 36, 0.0) {
        pen.dot(bead, 2.2, "#fbe9ae");
    }
    for wave in 0..4_u32 {
        let y = 306.0 + 15.0 * f64::from(wave);
        let reach = (66.0_f64.powi(2) - (y - 302.0).powi(2)).max(0.0).sqrt();
        let points: Vec<Point> = (0..=8_u32)
            .map(|step| {
                let x = mix(100.0 - reach, 100.0 + reach, f64::from(step) / 8.0);
                (x, y + 4.0 * (f64::from(step) * 1.7).sin())
            })
            .collect();
        pen.line(&Path::flowing(&points), "#6d4f18", 3.0);
    }
    pen.fill(
        &Path::rounded(&trace("62 296, 84 270, 112 268, 136 290, 112 286, 92 292")),
        "#6d4f18",
    );
    pen.dot((132.0, 268.0), 9.0, "#6d4f18");
    pen.finish()
}

/// 14 in across: what a looking glass shows of an empty room.
pub(crate) fn mirror() -> Vec<u8> {
    let mut pen = Pen::new("mirror", 1400.0, 1400.0);
    let mut chance = Chance::seeded(2);
    let silver = pen.fall(&[
        (0.0, "#eaf0f0"),
        (0.45, "#cfdadb"),
        (0.7, "#aebdc0"),
        (1.0, "#c9c4b6"),
    ]);
    pen.ground(&silver);
    let window = pen.fall(&[(0.0, "#fdfdf6"), (1.0, "#e3edf0")]);
    for pane in 0..4_u32 {
        let place = (
            250.0 + 190.0 * f64::from(pane % 2),
            260.0 + 250.0 * f64::from(pane / 2),
        );
        pen.wash(0.85, |pen| pen.rect(place, (170.0, 230.0), &window));
    }
    let floor = trace("0 1120, 1400 1010, 1400 1400, 0 1400");
    pen.wash(0.6, |pen| pen.fill(&Path::corners(&floor), "#9a8468"));
    for sheen in 0..6_u32 {
        let x = 620.0 + 120.0 * f64::from(sheen) + chance.about(30.0);
        let wide = chance.between(14.0, 70.0);
        let band = [
            (x, 0.0),
            (x + wide, 0.0),
            (x + wide - 700.0, 1400.0),
            (x - 700.0, 1400.0),
        ];
        pen.wash(0.22, |pen| {
            pen.fill(
                &Path::corners(&band),
                &tint("#ffffff", "#dfe9ea", chance.part()),
            );
        });
    }
    pen.finish()
}
