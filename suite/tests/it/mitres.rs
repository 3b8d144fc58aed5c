//! Saw settings of sloped sides, against the table of the trade handbook's §3, whose formulas are
//! those of Snyder and Gottesman, *Compound-Angle Joinery*, note, 2014, revised 2015.

use measure::{Angle, Length};
use sizing::derive;
use trade::{Art, Catalogue, Job, Measured, Member, Settings, Turned, Units};

/// Tilts from flat, in degrees.
const TILTS: [i64; 7] = [0, 15, 30, 45, 60, 75, 90];

/// Sides, then gauge and blade for each tilt, in degrees to two places.
const TABLE: [(u32, [(&str, &str); 7]); 3] = [
    (
        4,
        [
            ("45.00", "0.00"),
            ("44.01", "10.55"),
            ("40.89", "20.70"),
            ("35.26", "30.00"),
            ("26.57", "37.76"),
            ("14.51", "43.08"),
            ("0.00", "45.00"),
        ],
    ),
    (
        6,
        [
            ("30.00", "0.00"),
            ("29.15", "7.44"),
            ("26.57", "14.48"),
            ("22.21", "20.70"),
            ("16.10", "25.66"),
            ("8.50", "28.88"),
            ("0.00", "30.00"),
        ],
    ),
    (
        8,
        [
            ("22.50", "0.00"),
            ("21.81", "5.68"),
            ("19.73", "11.03"),
            ("16.32", "15.70"),
            ("11.70", "19.35"),
            ("6.12", "21.69"),
            ("0.00", "22.50"),
        ],
    ),
];

fn sloped(sides: u32, tilt: i64) -> (Angle, Angle) {
    let mut job = Job::empty(Units::Inches);
    job.sides = sides;
    job.art
        .push(Art::sized(Length::inches(10), Length::inches(10)));
    let inches = |n| Some(Measured(Length::inches(n)));
    job.frame.push(Member {
        face: inches(4),
        lip: Some(Measured(Length::inch_fraction(1, 4))),
        tilt: Some(Turned(Angle::degrees(tilt))),
        ..Member::default()
    });
    let settings = Settings::defaults(Units::Inches);
    let piece = derive(&job, &Catalogue::default(), &settings).expect("the job is whole");
    assert_eq!(piece.working.recheck(), []);
    let (gauge, blade) = piece.members[0].legs.compound.expect("the sides slope");
    (gauge.value, blade.value)
}

#[test]
fn gauge_and_blade_agree_with_the_table() {
    for (sides, row) in TABLE {
        for (tilt, (gauge, blade)) in TILTS.into_iter().zip(row) {
            let found = sloped(sides, tilt);
            let shown = |angle: Angle| format!("{:.2}", angle.approx_degrees());
            let found = (shown(found.0), shown(found.1));
            assert_eq!(
                found,
                (gauge.to_owned(), blade.to_owned()),
                "{sides} sides at {tilt}°"
            );
        }
    }
}

#[test]
fn flat_sides_take_the_plain_mitre_and_upright_ones_only_the_blade() {
    for sides in 3..=12 {
        let mitre = 180.0 / f64::from(sides);
        let near = |angle: Angle, degrees: f64| (angle.approx_degrees() - degrees).abs() < 1e-6;
        let (gauge, blade) = sloped(sides, 0);
        assert!(near(gauge, mitre) && near(blade, 0.0), "{sides} flat sides");
        let (gauge, blade) = sloped(sides, 90);
        assert!(
            near(gauge, 0.0) && near(blade, mitre),
            "{sides} upright sides"
        );
    }
}
