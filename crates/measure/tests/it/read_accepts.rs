//! What people type, and what it says.
//!
//! Inch values are fractions of 25.4 mm (international yard and pound agreement, 1959).

use measure::{Length, Size, Unit, read_length, read_size};

/// Text with bare numbers in inches, and its value as a fraction of an inch.
const INCHES: &[(&str, i64, i64)] = &[
    ("16", 16, 1),
    ("0", 0, 1),
    ("007", 7, 1),
    ("16 7/8", 135, 8),
    ("  16   7/8  ", 135, 8),
    ("16-7/8", 135, 8),
    ("16–7/8", 135, 8),
    ("16⅞", 135, 8),
    ("16 ⅞", 135, 8),
    ("16-⅞", 135, 8),
    ("16 and 7/8", 135, 8),
    ("16 + 7/8", 135, 8),
    ("16 & 7/8", 135, 8),
    ("7/8", 7, 8),
    ("7 / 8", 7, 8),
    ("⅞", 7, 8),
    ("½", 1, 2),
    ("1/5", 1, 5),
    ("16 0/8", 16, 1),
    ("16.875", 135, 8),
    ("16.", 16, 1),
    ("16,5", 33, 2),
    ("16,50", 33, 2),
    (".5", 1, 2),
    (",5", 1, 2),
    ("0.5", 1, 2),
    ("1.250", 5, 4),
    ("0,125", 1, 8),
    ("1234,125", 9873, 8),
    (
        "16.8750000000000000000000000000000000000000000000000000",
        135,
        8,
    ),
    ("0000000000000000000000000000000000000016", 16, 1),
    ("3/2", 3, 2),
    ("19/8", 19, 8),
    ("8/8", 1, 1),
    ("+5", 5, 1),
    ("-5", -5, 1),
    ("−5", -5, 1),
    ("- 5", -5, 1),
    ("-1/4", -1, 4),
    ("-1-1/4", -5, 4),
    ("-1 1/4", -5, 4),
    ("-½", -1, 2),
    ("1' 4 7/8\"", 135, 8),
    ("1'4\"", 16, 1),
    ("1'-4\"", 16, 1),
    ("1'-4 7/8\"", 135, 8),
    ("1’ 4”", 16, 1),
    ("1′ 4″", 16, 1),
    ("1' 4''", 16, 1),
    ("1‘ 4’’", 16, 1),
    ("5'", 60, 1),
    ("5'6", 66, 1),
    ("5' 6 1/2", 133, 2),
    ("5'6½", 133, 2),
    ("-1' 4\"", -16, 1),
    ("1' 14\"", 26, 1),
    ("0' 4\"", 4, 1),
    ("1 ft 4 7/8 in", 135, 8),
    ("1ft4in", 16, 1),
    ("1ft. 4in.", 16, 1),
    ("1 foot 4 inches", 16, 1),
    ("2 feet", 24, 1),
    ("2 feet and 4 inches", 28, 1),
    ("1 1/2 ft", 18, 1),
    ("1.5 ft 3 in", 21, 1),
    ("1/3 ft", 4, 1),
    ("2 yd", 72, 1),
    ("1 yd 1 ft 1 in", 49, 1),
    ("16 in", 16, 1),
    ("16in", 16, 1),
    ("16in.", 16, 1),
    ("16 IN", 16, 1),
    ("16 ins", 16, 1),
    ("16 inch", 16, 1),
    ("16 inches", 16, 1),
    ("16\"", 16, 1),
    ("16 7/8\"", 135, 8),
    ("7/8 in", 7, 8),
    ("3\" 1/2", 7, 2),
    ("3\"1/2", 7, 2),
    ("3\" ½", 7, 2),
    ("3 in 1/2", 7, 2),
    ("1' 3\" 1/2", 31, 2),
    ("16 7⁄8", 135, 8),
    ("16⁷⁄₈", 135, 8),
    ("16 ⁷/₈", 135, 8),
    ("¹⁄₁₆", 1, 16),
    ("⅟16", 1, 16),
    ("2 ⅟₁₆", 33, 16),
    ("16\u{a0}7/8\u{202f}in", 135, 8),
    ("16\u{2009}in", 16, 1),
    ("1,250.5", 2501, 2),
    ("0.01", 1, 100),
    ("101.6 mm", 4, 1),
    ("1/64", 1, 64),
    ("1/128", 1, 128),
];

/// Text with bare numbers in millimetres, and its value in micrometres.
const METRIC: &[(&str, i64)] = &[
    ("428.6", 428_600),
    ("428.6mm", 428_600),
    ("428,6 mm", 428_600),
    ("428.6 MM", 428_600),
    ("42.86 cm", 428_600),
    ("42,86cm", 428_600),
    ("1 m", 1_000_000),
    ("1.25 m", 1_250_000),
    ("1,25 m", 1_250_000),
    ("1 m 25 cm 3 mm", 1_253_000),
    ("1m25cm", 1_250_000),
    ("16 in 3 mm", 409_400),
    ("1 ft 8.466 mm", 313_266),
    ("250 µm", 250),
    ("250 μm", 250),
    ("250um", 250),
    ("250 microns", 250),
    ("1 micrometre", 1),
    ("2 metres", 2_000_000),
    ("2 meters 5 centimeters", 2_050_000),
    ("3 millimetres", 3_000),
    ("1,250.5 mm", 1_250_500),
    ("1.250,5 mm", 1_250_500),
    ("1.250,500 mm", 1_250_500),
    ("900 mm 1 µm", 900_001),
    ("1,000,000", 1_000_000_000),
    ("1.000.000", 1_000_000_000),
    ("1,000,000.0", 1_000_000_000),
    ("-1000 m", -1_000_000_000),
    ("1 cm 1/2 mm", 10_500),
    ("½ cm", 5_000),
    ("5'6", 1_676_400),
    ("1\"", 25_400),
];

#[test]
fn inches_are_read_as_typed() {
    for (text, top, bottom) in INCHES {
        let read = read_length(text, Unit::Inch).unwrap_or_else(|e| panic!("{text:?}: {e}"));
        assert_eq!(
            read.times(*bottom),
            Length::inches(*top),
            "{text:?} read as {read}"
        );
    }
}

#[test]
fn metric_is_read_as_typed() {
    for (text, micrometres) in METRIC {
        let read = read_length(text, Unit::Millimetre).unwrap_or_else(|e| panic!("{text:?}: {e}"));
        assert_eq!(
            read,
            Length::micrometres(*micrometres),
            "{text:?} read as {}",
            read.exact_mm()
        );
    }
}

#[test]
fn the_bare_unit_counts_only_for_bare_numbers() {
    for unit in Unit::ALL {
        assert_eq!(read_length("2", unit), Ok(unit.one().twice()));
        assert_eq!(read_length("2 cm", unit), Ok(Length::mm(20)));
        let typed = format!("2 {unit}");
        assert_eq!(read_length(&typed, Unit::Inch), Ok(unit.one().twice()));
    }
}

#[test]
fn sizes_are_read_width_first() {
    let inches = |w, h| Size::new(Length::inches(w), Length::inches(h));
    let mm = |w, h| Size::new(Length::mm(w), Length::mm(h));
    let table = [
        ("8 x 10", inches(8, 10)),
        ("8x10", inches(8, 10)),
        ("8X10", inches(8, 10)),
        ("8×10", inches(8, 10)),
        ("8 * 10", inches(8, 10)),
        ("8 by 10", inches(8, 10)),
        ("8\" x 10\"", inches(8, 10)),
        ("8\"x10\"", inches(8, 10)),
        ("8\" x 10", inches(8, 10)),
        ("8 x 10 in", inches(8, 10)),
        ("8inx10in", inches(8, 10)),
        ("8 in. by 10 in.", inches(8, 10)),
        ("1' x 1'4\"", inches(12, 16)),
        ("1 ft 4 in x 2 ft", inches(16, 24)),
        ("200 x 250 mm", mm(200, 250)),
        ("200mm x 250mm", mm(200, 250)),
        ("20 x 25 cm", mm(200, 250)),
        ("20 cm x 250 mm", mm(200, 250)),
    ];
    for (text, size) in table {
        assert_eq!(read_size(text, Unit::Inch), Ok(size), "{text:?}");
    }
    assert_eq!(
        read_size("101.6 mm x 4", Unit::Millimetre),
        Ok(Size::new(Length::inches(4), Length::mm(4)))
    );
    let half = Size::new(Length::inch_fraction(17, 2), Length::inches(11));
    assert_eq!(read_size("8 1/2 x 11", Unit::Inch), Ok(half));
    assert_eq!(read_size("8½ x 11\"", Unit::Millimetre), Ok(half));
}
