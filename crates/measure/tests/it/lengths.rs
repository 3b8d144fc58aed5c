//! Rounding, dividing and printing lengths and sizes.

use measure::{Length, Rounding, Size, Tape, Toward, Unit};

#[test]
fn a_quantum_makes_every_admitted_unit_whole() {
    // 25.4 mm to the inch: 25.4 × 16 000 = 406 400, and 406 400 / 128 = 3 175.
    assert_eq!(
        Length::INCH,
        Length::MILLIMETRE * 25 + Length::micrometres(400)
    );
    assert_eq!(Length::inch_128ths(128), Length::INCH);
    assert_eq!(Length::micrometres(1_000), Length::MILLIMETRE);
    assert_eq!(Unit::Foot.one(), Length::INCH * 12);
    assert_eq!(Unit::Yard.one(), Length::INCH * 36);
    assert_eq!(Unit::Metre.one(), Length::mm(1_000));
    assert_eq!(Unit::Micrometre.one() * 1_000, Length::mm(1));
}

#[test]
fn steps_round_the_way_they_say() {
    let q = Length::from_quanta;
    let check = |length: i64, down: i64, nearest: i64, up: i64| {
        let (length, step) = (q(length), q(10));
        let rounded = (
            length.down_to(step),
            length.nearest_to(step),
            length.up_to(step),
        );
        assert_eq!(rounded, (q(down), q(nearest), q(up)), "{length:?}");
    };
    check(0, 0, 0, 0);
    check(4, 0, 0, 10);
    check(5, 0, 10, 10);
    check(6, 0, 10, 10);
    check(10, 10, 10, 10);
    check(-4, -10, 0, 0);
    check(-5, -10, -10, 0);
    check(-6, -10, -10, 0);
    check(-10, -10, -10, -10);
}

#[test]
fn exact_prints() {
    let check = |length: Length, unit: Unit, text: &str| assert_eq!(length.exact(unit), text);
    check(Length::ZERO, Unit::Inch, "0 in");
    check(Length::ZERO, Unit::Foot, "0 in");
    check(Length::inch_fraction(135, 8), Unit::Inch, "16 7/8 in");
    check(-Length::inch_fraction(135, 8), Unit::Inch, "-16 7/8 in");
    check(Length::inch_fraction(-1, 4), Unit::Inch, "-1/4 in");
    check(Length::inch_fraction(2, 128), Unit::Inch, "1/64 in");
    check(Length::inch_fraction(1, 128), Unit::Inch, "1/128 in");
    check(Length::from_quanta(4_064), Unit::Inch, "0.01 in");
    check(Length::mm(10), Unit::Inch, "10 mm");
    check(Length::QUANTUM, Unit::Inch, "0.0000625 mm");
    check(Length::inches(12), Unit::Foot, "1 ft");
    check(Length::inches(-16), Unit::Foot, "-1 ft 4 in");
    check(Length::inches(5), Unit::Yard, "5 in");
    check(Length::mm(1_000), Unit::Foot, "1000 mm");
    check(
        Length::inch_fraction(135, 8),
        Unit::Millimetre,
        "428.625 mm",
    );
    check(Length::inch_fraction(135, 8), Unit::Metre, "0.428625 m");
    check(Length::mm(-3), Unit::Centimetre, "-0.3 cm");
    check(Length::QUANTUM, Unit::Micrometre, "0.0625 µm");
}

#[test]
fn both_prints() {
    let length = Length::inch_fraction(135, 8);
    assert_eq!(length.in_both(Unit::Inch), "16 7/8 in (428.625 mm)");
    assert_eq!(length.in_both(Unit::Centimetre), "42.8625 cm (16 7/8 in)");
    assert_eq!(length.in_both(Unit::Foot), "1 ft 4 7/8 in (428.625 mm)");
    // 200 mm = 7.874 in, and 7 56/64 in = 7.875 in.
    assert_eq!(
        Length::mm(200).in_both(Unit::Millimetre),
        "200 mm (7 7/8 in rounded up)"
    );
    // 250 mm = 9.8425 in, and 9 54/64 in = 9.84375 in.
    assert_eq!(
        Length::mm(250).in_both(Unit::Inch),
        "250 mm (9 27/32 in rounded up)"
    );
}

#[test]
fn tapes_say_how_far_off_they_are() {
    // 428.6 mm is 25 µm short of 16 7/8 in.
    let length = Length::micrometres(428_600);
    let printed = length.on_tape(Tape::Sixteenths, Toward::Nearest);
    assert_eq!(printed.text, "16 7/8 in");
    assert_eq!(printed.rounding, Rounding::Up(Length::micrometres(25)));
    let printed = length.on_tape(Tape::HalfMillimetre, Toward::Nearest);
    assert_eq!(printed.to_string(), "428.5 mm (rounded down)");
    assert_eq!(printed.rounding, Rounding::Down(Length::micrometres(100)));
    let printed = length.on_tape(Tape::Millimetre, Toward::Up);
    assert_eq!(printed.to_string(), "429 mm (rounded up)");
    let printed = Length::inches(3).on_tape(Tape::Eighths, Toward::Down);
    assert_eq!(
        (printed.to_string().as_str(), printed.rounding),
        ("3 in", Rounding::Exact)
    );
}

#[test]
fn floats_that_are_no_length_are_none() {
    for mm in [
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        1e300,
        1_000_000.001,
        -1_000_000.001,
    ] {
        assert_eq!(Length::nearest_from_mm(mm), None, "{mm}");
    }
    assert_eq!(Length::nearest_from_mm(1_000_000.0), Some(Length::LIMIT));
    assert_eq!(Length::inches(1).scaled_nearest(f64::NAN), None);
    assert_eq!(Length::LIMIT.scaled_nearest(1.5), None);
    assert_eq!(
        Length::inches(3).scaled_nearest(0.5),
        Some(Length::inch_fraction(3, 2))
    );
    // Half a quantum goes away from zero.
    assert_eq!(Length::QUANTUM.scaled_nearest(0.5), Some(Length::QUANTUM));
    assert_eq!(
        (-Length::QUANTUM).scaled_nearest(0.5),
        Some(-Length::QUANTUM)
    );
}

#[test]
fn sizes_fit_as_they_stand_or_turned() {
    let inches = |w, h| Size::new(Length::inches(w), Length::inches(h));
    let sheet = inches(32, 40);
    assert!(sheet.fits_in(sheet));
    assert!(inches(30, 40).fits_in(sheet) && !inches(40, 30).fits_in(sheet));
    assert!(inches(40, 30).fits_in_either_way(sheet));
    assert!(!inches(41, 3).fits_in_either_way(sheet));
    assert_eq!(
        (sheet.long_side(), sheet.short_side()),
        (Length::inches(40), Length::inches(32))
    );
    assert_eq!(
        (sheet.united(), sheet.perimeter()),
        (Length::inches(72), Length::inches(144))
    );
    assert_eq!(sheet.to_string(), "32 in x 40 in");
    assert_eq!(
        Size::square(Length::mm(5)),
        Size::new(Length::mm(5), Length::mm(5))
    );
}

#[test]
#[should_panic(expected = "a step is above zero")]
fn a_step_of_nothing_is_our_bug() {
    let _ = Length::INCH.down_to(Length::ZERO);
}

#[test]
#[should_panic(expected = "length out of range")]
fn a_sum_that_can_not_be_held_is_our_bug() {
    let _ = Length::from_quanta(i64::MAX) + Length::QUANTUM;
}

/// Three and four make five; one and one the root of two, 25.4 mm × 1.414 213 562 = 35.921 024 5 mm.
#[test]
fn the_long_side_of_a_right_triangle_is_the_nearest() {
    let long = |one, other| Length::long_side_nearest(one, other);
    assert_eq!(
        long(Length::inches(3), Length::inches(-4)),
        Some(Length::inches(5))
    );
    assert_eq!(
        long(Length::INCH, Length::INCH),
        Some(Length::from_quanta(574_736))
    );
    assert_eq!(long(Length::ZERO, Length::ZERO), Some(Length::ZERO));
    // 1 and 2 quanta: the root of five is 2.236, nearer to two; 2 and 2: 2.828, nearer to three.
    let quanta = |n| Length::from_quanta(n);
    assert_eq!(long(quanta(1), quanta(2)), Some(quanta(2)));
    assert_eq!(long(quanta(2), quanta(2)), Some(quanta(3)));
    assert_eq!(long(quanta(i64::MAX), quanta(i64::MAX)), None);
}
