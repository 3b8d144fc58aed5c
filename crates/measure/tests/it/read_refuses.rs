//! What is refused: the code, the bytes in the way, and the readings offered.

use std::ops::Range;

use measure::{Length, ReadError, Refusal, Unit, Wanted, read_length, read_size};

/// The text, its refusal's code, the span in bytes, and the readings.
type Row = (
    &'static str,
    &'static str,
    Range<usize>,
    &'static [&'static str],
);

/// Lengths, bare numbers in inches.
const LENGTHS_IN_INCHES: &[Row] = &[
    ("", "measure.empty", 0..0, &[]),
    ("   ", "measure.empty", 0..3, &[]),
    (
        "12345678901234567890123456789012345678901234567890123456789012345",
        "measure.too_long",
        64..65,
        &[],
    ),
    (
        "1,250",
        "measure.number.comma",
        0..5,
        &["1.25 in", "1250 in"],
    ),
    (
        "1'250",
        "measure.number.apostrophe",
        0..5,
        &["1 ft 250 in", "1250 in"],
    ),
    (
        "-1’250 mm",
        "measure.number.apostrophe",
        1..8,
        &["-1 ft 250 mm", "-1250 mm"],
    ),
    (
        "1,250 mm",
        "measure.number.comma",
        0..5,
        &["1.25 mm", "1250 mm"],
    ),
    (
        "-1,250",
        "measure.number.comma",
        1..6,
        &["-1.25 in", "-1250 in"],
    ),
    (
        "12,500 in",
        "measure.number.comma",
        0..6,
        &["12.5 in", "12500 in"],
    ),
    ("1,25,0", "measure.number.separators", 0..6, &[]),
    ("1.2.3", "measure.number.separators", 0..5, &[]),
    ("1,250.5.1", "measure.number.separators", 0..9, &[]),
    ("1.25,5.0", "measure.number.separators", 0..8, &[]),
    ("0,125,000", "measure.number.separators", 0..9, &[]),
    ("16,", "measure.number.separators", 0..3, &[]),
    (
        "1 250",
        "measure.number.pair",
        0..5,
        &["1.250 in", "1250 in"],
    ),
    (
        "16 7",
        "measure.number.pair",
        0..4,
        &["16.7 in", "16 7/8 in"],
    ),
    (
        "16 20",
        "measure.number.pair",
        0..5,
        &["16.20 in", "16 20/32 in"],
    ),
    ("1 250 000 mm", "measure.number.pair", 0..9, &["1250000 mm"]),
    (
        "16 7 mm",
        "measure.number.pair",
        0..4,
        &["16.7 mm", "16 7/8 mm"],
    ),
    (
        "5'6 7",
        "measure.number.pair",
        2..5,
        &["6.7 in", "6 7/8 in"],
    ),
    ("16.5 7", "measure.number.pair", 0..6, &[]),
    ("1 - 1/2", "measure.hyphen", 0..7, &["1 1/2 in", "1/2 in"]),
    ("1 -1/2", "measure.hyphen", 0..6, &["1 1/2 in", "1/2 in"]),
    ("1- 1/2", "measure.hyphen", 0..6, &["1 1/2 in", "1/2 in"]),
    (
        "3-4",
        "measure.hyphen.range",
        0..3,
        &["3 in", "4 in", "-1 in"],
    ),
    (
        "3 - 4",
        "measure.hyphen.range",
        0..5,
        &["3 in", "4 in", "-1 in"],
    ),
    (
        "16-7",
        "measure.hyphen.range",
        0..4,
        &["16 in", "7 in", "9 in"],
    ),
    ("1' - 4\"", "measure.hyphen", 0..7, &["16 in", "8 in"]),
    (
        "5 in - 3 in",
        "measure.hyphen.range",
        0..11,
        &["5 in", "3 in", "2 in"],
    ),
    (
        "5 in-3 in",
        "measure.hyphen.range",
        0..9,
        &["5 in", "3 in", "2 in"],
    ),
    ("1 m - 5", "measure.hyphen", 0..7, &[]),
    (
        "11/2",
        "measure.fraction.improper",
        0..4,
        &["5 1/2 in", "1 1/2 in"],
    ),
    (
        "15/8",
        "measure.fraction.improper",
        0..4,
        &["1 7/8 in", "1 5/8 in"],
    ),
    (
        "17/16",
        "measure.fraction.improper",
        0..5,
        &["1 1/16 in", "1 7/16 in"],
    ),
    (
        "117/16",
        "measure.fraction.improper",
        0..6,
        &["7 5/16 in", "11 7/16 in"],
    ),
    (
        "-11/2",
        "measure.fraction.improper",
        1..5,
        &["-5 1/2 in", "-1 1/2 in"],
    ),
    (
        "1' 11/2\"",
        "measure.fraction.improper",
        3..7,
        &["5 1/2 in", "1 1/2 in"],
    ),
    (
        "12/8",
        "measure.fraction.improper",
        0..4,
        &["1 1/2 in", "1 1/4 in"],
    ),
    (
        "105/8",
        "measure.fraction.improper",
        0..5,
        &["13 1/8 in", "10 5/8 in"],
    ),
    (
        "1 16/8",
        "measure.fraction.mixed_improper",
        0..6,
        &["3 in", "14 1/2 in"],
    ),
    (
        "16 8/8",
        "measure.fraction.mixed_improper",
        0..6,
        &["17 in", "21 in"],
    ),
    (
        "1-16/8",
        "measure.fraction.mixed_improper",
        0..6,
        &["3 in", "14 1/2 in"],
    ),
    (
        "12.5 1/2",
        "measure.fraction.after_decimals",
        0..8,
        &["12.5 in", "12 1/2 in"],
    ),
    (
        "12.5 3/2",
        "measure.fraction.after_decimals",
        0..8,
        &["12.5 in"],
    ),
    (
        "1,250 1/2",
        "measure.number.comma",
        0..5,
        &["1.25 in", "1250 in"],
    ),
    (
        "1 m 5",
        "measure.unit.missing",
        4..5,
        &["1 m 5 cm", "1 m 5 mm", "1.5 m"],
    ),
    (
        "1 m 25 cm 3",
        "measure.unit.missing",
        10..11,
        &["1 m 25 cm 3 mm"],
    ),
    (
        "5' 1/2",
        "measure.unit.missing",
        3..6,
        &["5' 1/2 in", "5 1/2 ft"],
    ),
    (
        "16 in 5",
        "measure.unit.missing",
        6..7,
        &["16 in 5 mm", "16.5 in"],
    ),
    (
        "3 mm 1/2",
        "measure.unit.missing",
        5..8,
        &["3 mm 1/2 µm", "3 1/2 mm"],
    ),
    ("3.5\" 1/2", "measure.unit.missing", 5..8, &[]),
    ("3 1/4\" 1/2", "measure.unit.missing", 7..10, &[]),
    ("16 x 20", "measure.length.two", 3..4, &[]),
    ("8 by 10 in", "measure.length.two", 2..4, &[]),
    ("16 7/", "measure.fraction.no_bottom", 3..5, &[]),
    ("16 7/ in", "measure.fraction.no_bottom", 3..5, &[]),
    ("/8", "measure.fraction.no_top", 0..2, &[]),
    (
        "16 /8",
        "measure.fraction.improper",
        0..5,
        &["2 in", "1 3/4 in"],
    ),
    ("7/0", "measure.fraction.zero_bottom", 2..3, &[]),
    ("16 7/0", "measure.fraction.zero_bottom", 5..6, &[]),
    ("7.5/8", "measure.fraction.decimals", 0..3, &[]),
    ("7/8.5", "measure.fraction.decimals", 2..5, &[]),
    ("1/2/3", "measure.fraction.second_bottom", 3..4, &[]),
    ("1/2 3", "measure.number.pair", 0..5, &[]),
    ("1/2 1/4", "measure.number.pair", 0..7, &[]),
    ("1/1000000000000000", "measure.fraction.long", 2..18, &[]),
    ("16 furlong", "measure.unit.unknown", 3..10, &[]),
    ("16 inchs", "measure.unit.unknown", 3..8, &[]),
    ("16 milimeters", "measure.unit.unknown", 3..13, &[]),
    ("16 km", "measure.unit.unknown", 3..5, &[]),
    ("16 q", "measure.unit.unknown", 3..4, &[]),
    ("16 fet", "measure.unit.unknown", 3..6, &[]),
    ("16°", "measure.unit.unknown", 2..4, &[]),
    ("1e3", "measure.number.exponent", 0..3, &[]),
    ("1.5E-3", "measure.number.exponent", 0..6, &[]),
    ("1e3 mm", "measure.number.exponent", 0..3, &[]),
    ("in", "measure.number.missing", 0..2, &[]),
    ("\"", "measure.number.missing", 0..1, &[]),
    ("in 16", "measure.number.missing", 0..2, &[]),
    ("16 in in", "measure.number.missing", 6..8, &[]),
    ("16 mm in", "measure.number.missing", 6..8, &[]),
    ("4 in 1 ft", "measure.unit.order", 7..9, &[]),
    ("1 in 1 in", "measure.unit.order", 7..9, &[]),
    ("3 mm 16 in", "measure.unit.order", 8..10, &[]),
    ("1 m 2 m", "measure.unit.order", 6..7, &[]),
    (
        "1/3 in",
        "measure.not_held",
        0..6,
        &["8.466625 mm", "8.4666875 mm", "21/64 in"],
    ),
    (
        "1/3",
        "measure.not_held",
        0..3,
        &["8.466625 mm", "8.4666875 mm", "21/64 in"],
    ),
    (
        "0.333 in",
        "measure.not_held",
        0..8,
        &["8.4581875 mm", "8.45825 mm", "21/64 in"],
    ),
    (
        "0.052",
        "measure.not_held",
        0..5,
        &["1.32075 mm", "1.3208125 mm", "3/64 in"],
    ),
    (
        "-1/3",
        "measure.not_held",
        1..4,
        &["-8.4666875 mm", "-8.466625 mm", "-21/64 in"],
    ),
    (
        "0.0001 mm",
        "measure.not_held",
        0..9,
        &["0.0000625 mm", "0.000125 mm"],
    ),
    (
        "1 ft 1/3 in",
        "measure.not_held",
        5..11,
        &["8.466625 mm", "8.4666875 mm", "21/64 in"],
    ),
    (
        "-1 ft 1/3 in",
        "measure.not_held",
        6..12,
        &["8.466625 mm", "8.4666875 mm", "21/64 in"],
    ),
    (
        "0.3333333333333333333333333333333333333333333333333333333333",
        "measure.not_held",
        0..60,
        &["8.466625 mm", "8.4666875 mm", "21/64 in"],
    ),
    (
        "1/7",
        "measure.not_held",
        0..3,
        &["3.6285625 mm", "3.628625 mm", "9/64 in"],
    ),
    ("1001 m", "measure.range", 0..6, &[]),
    ("1000.001 m", "measure.range", 0..10, &[]),
    ("-1001 m", "measure.range", 1..7, &[]),
    ("999 m 2000 mm", "measure.range", 0..13, &[]),
    (
        "99999999999999999999999999999999",
        "measure.range",
        0..32,
        &[],
    ),
    ("40000 in", "measure.range", 0..8, &[]),
    ("$16", "measure.stray", 0..1, &[]),
    ("16?", "measure.stray", 2..3, &[]),
    ("16 in²", "measure.stray", 5..7, &[]),
    ("-", "measure.stray", 0..1, &[]),
    ("--5", "measure.stray", 1..2, &[]),
    ("+-5", "measure.stray", 1..2, &[]),
    ("5-", "measure.stray", 1..2, &[]),
    ("5 in -", "measure.stray", 5..6, &[]),
    ("16 - ", "measure.stray", 3..4, &[]),
    (".", "measure.stray", 0..1, &[]),
    ("1..5", "measure.number.separators", 0..4, &[]),
    ("5 + 3", "measure.stray", 2..3, &[]),
    (
        "5 in + 3",
        "measure.unit.missing",
        7..8,
        &["5 in 3 mm", "5.3 in"],
    ),
    ("and", "measure.stray", 0..3, &[]),
    ("1 and", "measure.stray", 2..5, &[]),
    ("x", "measure.length.two", 0..1, &[]),
    ("'", "measure.number.missing", 0..1, &[]),
    ("١٦", "measure.stray", 0..2, &[]),
    ("16;5", "measure.stray", 2..3, &[]),
    ("16:5", "measure.stray", 2..3, &[]),
    ("(16)", "measure.stray", 0..1, &[]),
    ("16 7/8 7/8", "measure.number.pair", 3..10, &[]),
    ("½ ½", "measure.number.pair", 0..5, &[]),
    ("½5", "measure.number.pair", 0..3, &[]),
    ("5½½", "measure.number.pair", 1..5, &[]),
    ("²", "measure.stray", 0..2, &[]),
    ("16²", "measure.stray", 2..4, &[]),
    ("1/x", "measure.length.two", 2..3, &[]),
    ("1'2'3'", "measure.unit.order", 3..4, &[]),
    ("1 ft 2 ft", "measure.unit.order", 7..9, &[]),
    ("5'6\"7", "measure.unit.missing", 4..5, &["5'6\" 7 mm"]),
    ("7/8/", "measure.fraction.second_bottom", 3..4, &[]),
    ("//", "measure.fraction.second_bottom", 1..2, &[]),
    ("16 7/8-", "measure.stray", 6..7, &[]),
    ("-16 -7/8", "measure.hyphen", 1..8, &["-16 7/8 in"]),
    (
        "3' 4-5",
        "measure.hyphen.range",
        3..6,
        &["4 in", "5 in", "-1 in"],
    ),
    (
        "1'-1/2",
        "measure.unit.missing",
        3..6,
        &["1' 1/2 in", "1 1/2 ft"],
    ),
    (
        "1' - 1/2",
        "measure.hyphen",
        0..8,
        &["12 1/2 in", "11 1/2 in"],
    ),
    ("⅟", "measure.fraction.no_bottom", 0..3, &[]),
    ("⅟0", "measure.fraction.zero_bottom", 3..4, &[]),
];

/// Lengths, bare numbers in millimetres.
const LENGTHS_IN_MILLIMETRES: &[Row] = &[
    (
        "1,250",
        "measure.number.comma",
        0..5,
        &["1.25 mm", "1250 mm"],
    ),
    (
        "16 7",
        "measure.number.pair",
        0..4,
        &["16.7 mm", "16 7/8 mm"],
    ),
    (
        "11/2 in",
        "measure.fraction.improper",
        0..4,
        &["5 1/2 in", "1 1/2 in"],
    ),
];

/// Sizes, bare numbers in inches.
const SIZES: &[Row] = &[
    ("8", "measure.size.one", 0..1, &[]),
    ("8 x", "measure.size.one", 2..3, &[]),
    ("x 10", "measure.size.one", 0..1, &[]),
    ("8 x 10 x 12", "measure.size.three", 7..8, &[]),
    (
        "200 mm x 250",
        "measure.unit.missing",
        9..12,
        &["250 mm", "250 in"],
    ),
    ("8 x 1 ft 4 in", "measure.unit.missing", 0..1, &["8 in"]),
    ("-8 x 10", "measure.size.negative", 0..2, &[]),
    ("8 x -10", "measure.size.negative", 4..7, &[]),
    (
        "8 x 1,250",
        "measure.number.comma",
        4..9,
        &["1.25 in", "1250 in"],
    ),
    (
        "8 x 10 7",
        "measure.number.pair",
        4..8,
        &["10.7 in", "10 7/8 in"],
    ),
    ("8 x 10 furlongs", "measure.unit.unknown", 7..15, &[]),
    ("", "measure.empty", 0..0, &[]),
    ("8 10", "measure.size.one", 0..4, &[]),
    ("8 xx 10", "measure.unit.unknown", 2..4, &[]),
    (
        "8 x 1/3",
        "measure.not_held",
        4..7,
        &["8.466625 mm", "8.4666875 mm", "21/64 in"],
    ),
];

fn check(row: &Row, read: Result<String, ReadError>) {
    let (text, code, span, readings) = row;
    let error = match read {
        Err(error) => error,
        Ok(read) => panic!("{text:?} was read as {read}"),
    };
    assert_eq!(
        (error.code(), error.span()),
        (*code, span.clone()),
        "{text:?}: {error}"
    );
    assert_eq!(error.readings(), *readings, "{text:?}");
    check_words(&error.to_string());
    check_words(&error.hint());
    check_marks(text, &error);
}

/// A message never scolds.
fn check_words(message: &str) {
    assert!(!message.is_empty());
    for word in ["invalid", "illegal", "please", "sorry", "oops"] {
        assert!(!message.to_lowercase().contains(word), "{message:?}");
    }
}

/// The marks stand under the characters of the span.
fn check_marks(text: &str, error: &ReadError) {
    let caret = error.caret(text);
    let (line, marks) = caret.split_once('\n').expect("two lines");
    assert_eq!(line, text);
    let under = line
        .chars()
        .zip(marks.chars())
        .filter(|(_, mark)| *mark == '^');
    let marked: String = under.map(|(c, _)| c).collect();
    assert_eq!(marked, text[error.span()], "{caret}");
}

#[test]
fn lengths_are_refused_with_their_place_and_readings() {
    for row in LENGTHS_IN_INCHES {
        check(row, read_length(row.0, Unit::Inch).map(Length::exact_mm));
    }
    for row in LENGTHS_IN_MILLIMETRES {
        check(
            row,
            read_length(row.0, Unit::Millimetre).map(Length::exact_mm),
        );
    }
}

#[test]
fn sizes_are_refused_with_their_place_and_readings() {
    for row in SIZES {
        check(
            row,
            read_size(row.0, Unit::Inch).map(|size| size.to_string()),
        );
        assert_eq!(
            read_size(row.0, Unit::Inch).map_err(|e| e.wanted()),
            Err(Wanted::Size)
        );
    }
}

#[test]
fn every_reading_of_a_length_can_be_typed_and_has_its_own_unit() {
    for (text, _, _, readings) in LENGTHS_IN_INCHES.iter().chain(LENGTHS_IN_MILLIMETRES) {
        for reading in *readings {
            let as_inch = read_length(reading, Unit::Inch);
            let beyond = |e: &ReadError| matches!(e.refusal(), Refusal::OutOfRange { .. });
            if as_inch.as_ref().is_err_and(beyond) {
                continue;
            }
            let as_metric = read_length(reading, Unit::Millimetre);
            assert!(as_inch.is_ok(), "{text:?} offers {reading:?}: {as_inch:?}");
            assert_eq!(as_inch, as_metric, "{text:?} offers {reading:?}");
        }
    }
}

#[test]
fn what_is_not_held_lies_between_the_lengths_offered() {
    // 1/3 in is 8.4666... mm, by long division.
    let error = read_length("1/3 in", Unit::Millimetre).expect_err("a third is not held");
    let Refusal::NotHeld { below, above, .. } = error.refusal() else {
        panic!("{error}")
    };
    let read = |text: &str| read_length(text, Unit::Inch).expect("offered lengths are read");
    assert_eq!(read(above) - read(below), Length::QUANTUM);
    assert!(read(below).times(3) < Length::INCH && Length::INCH < read(above).times(3));
}

#[test]
fn the_limit_is_read_and_one_quantum_more_is_not() {
    assert_eq!(read_length("1000 m", Unit::Inch), Ok(Length::LIMIT));
    assert_eq!(read_length("-1000 m", Unit::Inch), Ok(-Length::LIMIT));
    let beyond = (Length::LIMIT + Length::QUANTUM).exact_mm();
    let error = read_length(&beyond, Unit::Inch).expect_err("beyond the limit");
    assert_eq!(error.code(), "measure.range");
}
