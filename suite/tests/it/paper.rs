//! Sheet sizes of ISO 216:2007, *Writing paper and certain classes of printed matter — Trimmed
//! sizes — A and B series*: known from memory, not looked up. A0 is 841 × 1189 mm and B0
//! 1000 × 1414 mm; each next size is the one before, cut across its longer side, rounded down.

use measure::{Length, Size, Unit, read_size};
use sizing::derive;
use trade::{Art, Catalogue, Job, Member, Settings, Units};

const A: [(i64, i64); 11] = [
    (841, 1189),
    (594, 841),
    (420, 594),
    (297, 420),
    (210, 297),
    (148, 210),
    (105, 148),
    (74, 105),
    (52, 74),
    (37, 52),
    (26, 37),
];
const B: [(i64, i64); 11] = [
    (1000, 1414),
    (707, 1000),
    (500, 707),
    (353, 500),
    (250, 353),
    (176, 250),
    (125, 176),
    (88, 125),
    (62, 88),
    (44, 62),
    (31, 44),
];

#[test]
fn the_tables_follow_the_halving_rule() {
    for series in [A, B] {
        for pair in series.windows(2) {
            let ((width, height), next) = (pair[0], pair[1]);
            assert_eq!(next, (height / 2, width), "{width} × {height} halved");
        }
    }
}

#[test]
fn sheets_read_exactly_in_every_spelling() {
    for (width, height) in A.into_iter().chain(B) {
        let sheet = Size::new(Length::mm(width), Length::mm(height));
        let tenths = |n: i64| format!("{}.{}", n / 10, n % 10);
        for text in [
            format!("{width} x {height} mm"),
            format!("{width} mm x {height} mm"),
            format!("{width}x{height}mm"),
            format!("{width} × {height} mm"),
            format!("{} cm x {} cm", tenths(width), tenths(height)),
        ] {
            assert_eq!(
                read_size(&text, Unit::Inch).expect("it reads"),
                sheet,
                "{text}"
            );
        }
        assert_eq!(
            read_size(&sheet.exact(Unit::Millimetre), Unit::Inch),
            Ok(sheet)
        );
    }
}

/// Two sheets side by side are the sheet before them, short of it by the rounding alone.
#[test]
fn two_halves_make_the_sheet_before() {
    for series in [A, B] {
        for pair in series.windows(2) {
            let ((_, height), (width, _)) = (pair[0], pair[1]);
            let short = Length::mm(height) - Length::mm(width).twice();
            assert!(
                short == Length::ZERO || short == Length::MILLIMETRE,
                "{height}"
            );
        }
    }
}

#[test]
fn a_sheet_framed_close_is_the_package_to_the_quantum() {
    for (width, height) in A {
        let mut job = Job::empty(Units::Millimetres);
        job.art
            .push(Art::sized(Length::mm(width), Length::mm(height)));
        job.frame.push(Member {
            face: Some(Length::mm(25).into()),
            lip: Some(Length::mm(6).into()),
            ..Member::default()
        });
        let settings = Settings::defaults(Units::Millimetres);
        let sizes = derive(&job, &Catalogue::default(), &settings).expect("the job is whole");
        let package = sizes.package.size();
        assert_eq!(
            (package.width.quanta(), package.height.quanta()),
            (width * 16_000, height * 16_000)
        );
        assert_eq!(sizes.outside.size(), package.widen(Length::mm(3 - 12 + 50)));
    }
}
