//! What holds for every length, size, mass, angle, amount and text.

use std::num::NonZeroU32;

use measure::{
    Angle, Area, Currency, Length, Mass, Money, Rounding, Size, Tape, Toward, Unit, read_length,
    read_size,
};
use proptest::prelude::*;

const TAPES: [Tape; 6] = [
    Tape::Eighths,
    Tape::Sixteenths,
    Tape::ThirtySeconds,
    Tape::SixtyFourths,
    Tape::HalfMillimetre,
    Tape::Millimetre,
];

/// Any length that is read, and often one a person would type.
fn lengths() -> impl Strategy<Value = Length> {
    let limit = Length::LIMIT.quanta();
    prop_oneof![
        (-limit..=limit).prop_map(Length::from_quanta),
        (-200_000_i64..200_000).prop_map(Length::inch_128ths),
        (-2_000_000_i64..2_000_000).prop_map(Length::micrometres),
        // Hundredths of an inch end as decimals but are no fractions of a tape.
        (-100_000_i64..100_000).prop_map(|n| Length::from_quanta(n * 127)),
        (-100_000_i64..100_000).prop_map(Length::from_quanta),
    ]
}

/// Sides of a size, never below zero.
fn sides() -> impl Strategy<Value = Length> {
    (0..=Length::LIMIT.quanta()).prop_map(Length::from_quanta)
}

fn units() -> impl Strategy<Value = Unit> {
    proptest::sample::select(Unit::ALL.to_vec())
}

/// Texts of the characters lengths are typed with, which go deeper than any text.
fn near_lengths() -> impl Strategy<Value = String> {
    let pieces = [
        "0", "1", "7", "16", "250", " ", " ", "/", "-", ".", ",", "'", "\"", "in", "ft", "mm",
        "cm", "m", "x", "½", "⅞", "¹", "⁄", "₁₆", "⅟", "−", "+", "and", "e3", "µm", "\u{a0}", "”",
        "’", "'-", "ß", "İ", "°",
    ];
    proptest::collection::vec(proptest::sample::select(pieces.to_vec()), 0..24)
        .prop_map(|p| p.concat())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn exact_print_then_read_is_the_same_length(length in lengths(), unit in units(), bare in units()) {
        let typed = length.exact(unit);
        prop_assert_eq!(read_length(&typed, bare), Ok(length), "{}", typed);
        prop_assert_eq!(read_length(&length.exact_inches(), bare), Ok(length));
        prop_assert_eq!(read_length(&length.exact_mm(), bare), Ok(length));
        prop_assert_eq!(read_length(&length.to_string(), bare), Ok(length));
    }

    #[test]
    fn exact_print_of_a_size_then_read_is_the_same_size(
        width in sides(), height in sides(), unit in units(), bare in units(),
    ) {
        let size = Size::new(width, height);
        prop_assert_eq!(read_size(&size.exact(unit), bare), Ok(size));
    }

    #[test]
    fn both_prints_start_with_the_exact_one(length in lengths(), unit in units()) {
        let both = length.in_both(unit);
        prop_assert!(both.starts_with(&length.exact(unit)), "{}", both);
        prop_assert!(both.contains("in") || both.contains("ft"), "{}", both);
        prop_assert!(both.contains('m'), "{}", both);
    }

    #[test]
    fn shrink_undoes_grow_and_narrow_undoes_widen(w in lengths(), h in lengths(), d in lengths()) {
        let size = Size::new(w, h);
        prop_assert_eq!(size.grow(d).shrink(d), size);
        prop_assert_eq!(size.shrink(d).grow(d), size);
        prop_assert_eq!(size.widen(d).narrow(d), size);
        prop_assert_eq!(size.grow(d), size.widen(d + d));
        prop_assert_eq!(size.turned().turned(), size);
    }

    #[test]
    fn parts_sum_to_the_whole_and_differ_by_a_quantum(
        length in lengths(), n in 1_u32..500,
    ) {
        let n = NonZeroU32::new(n).expect("at least one part");
        let parts: Vec<Length> = length.split(n).collect();
        prop_assert_eq!(parts.len(), n.get() as usize);
        prop_assert_eq!(parts.iter().copied().sum::<Length>(), length);
        prop_assert!(parts.is_sorted_by(|earlier, later| earlier >= later));
        let (first, last) = (parts[0], parts[parts.len() - 1]);
        prop_assert!(first - last <= Length::QUANTUM);
    }

    #[test]
    fn the_halves_of_a_length_differ_by_at_most_a_quantum(length in lengths()) {
        let other = length - length.half_down();
        prop_assert!(other == length.half_down() || other == length.half_down() + Length::QUANTUM);
    }

    #[test]
    fn a_tape_is_never_off_by_its_step_and_says_which_way(length in lengths()) {
        for tape in TAPES {
            for toward in [Toward::Nearest, Toward::Down, Toward::Up] {
                let printed = length.on_tape(tape, toward);
                let mark = read_length(&printed.text, Unit::Inch).expect("a mark is read");
                prop_assert_eq!(mark.down_to(tape.step()), mark, "{} is a mark", printed.text);
                prop_assert!((mark - length).abs() < tape.step());
                match printed.rounding {
                    Rounding::Exact => prop_assert_eq!(mark, length),
                    Rounding::Up(by) => prop_assert!(by.is_positive() && mark - by == length),
                    Rounding::Down(by) => prop_assert!(by.is_positive() && mark + by == length),
                }
                match toward {
                    Toward::Down => prop_assert!(mark <= length),
                    Toward::Up => prop_assert!(mark >= length),
                    Toward::Nearest => prop_assert!((mark - length).abs().twice() <= tape.step()),
                }
                let said = printed.to_string();
                prop_assert_eq!(said.contains("rounded up"), mark > length);
                prop_assert_eq!(said.contains("rounded down"), mark < length);
            }
        }
    }

    #[test]
    fn no_text_panics_and_every_refusal_points_into_it(
        text in prop_oneof![any::<String>(), near_lengths()], bare in units(),
    ) {
        let spans = [
            read_length(&text, bare).err(),
            read_size(&text, bare).err(),
            Mass::read_nearest(&text).err(),
            Angle::read(&text).err(),
            Money::read(&text).err(),
        ];
        for error in spans.into_iter().flatten() {
            prop_assert!(text.get(error.span()).is_some(), "{:?}: {:?}", text, error);
            prop_assert!(!error.to_string().is_empty() && !error.hint().is_empty());
            prop_assert!(error.caret(&text).contains('^'));
            let is_empty = error.span().is_empty();
            prop_assert!(!is_empty || text.is_empty(), "{:?}: {:?}", text, error);
        }
    }

    #[test]
    fn what_is_read_prints_and_reads_back(text in near_lengths(), bare in units()) {
        if let Ok(length) = read_length(&text, bare) {
            prop_assert!(length.abs() <= Length::LIMIT);
            prop_assert_eq!(read_length(&length.exact(bare), bare), Ok(length));
        }
    }

    #[test]
    fn offered_readings_are_read_whatever_the_bare_unit(text in near_lengths(), bare in units()) {
        let Err(error) = read_length(&text, bare) else { return Ok(()) };
        for reading in error.readings() {
            match read_length(&reading, Unit::Inch) {
                Ok(length) => prop_assert_eq!(read_length(&reading, Unit::Metre), Ok(length)),
                // A reading may itself be too long or too fine, or meet the next difficulty.
                Err(next) => prop_assert!(
                    matches!(
                        next.code(),
                        "measure.range" | "measure.not_held" | "measure.too_long" | "measure.fraction.improper"
                            | "measure.number.comma" | "measure.number.separators"
                    ),
                    "{:?} offers {:?}: {}", text, reading, next
                ),
            }
        }
    }

    #[test]
    fn floats_come_back_to_the_length_they_were_made_from(length in lengths()) {
        prop_assert_eq!(Length::nearest_from_mm(length.approx_mm()), Some(length));
        prop_assert_eq!(length.scaled_nearest(1.0), Some(length));
    }

    #[test]
    fn masses_angles_and_money_print_and_read_back(
        n in -1_000_000_000_000_000_i64..=1_000_000_000_000_000,
        angle in -360_000_000_000_i64..=360_000_000_000,
        code in proptest::sample::select(vec!["USD", "JPY", "KWD", "CLF"]),
    ) {
        let mass = Mass::from_nanograms(n);
        prop_assert_eq!(Mass::read_nearest(&mass.exact_kg()), Ok(mass));
        let angle = Angle::from_millionths(angle);
        prop_assert_eq!(Angle::read(&angle.to_string()), Ok(angle));
        let money = Money::new(n, Currency::from_code(code).expect("a listed code"));
        prop_assert_eq!(Money::read(&money.to_string()), Ok(money));
    }

    #[test]
    fn area_is_the_same_turned_and_adds_up(w in lengths(), h in lengths(), more in lengths()) {
        let size = Size::new(w, h);
        prop_assert_eq!(size.area(), size.turned().area());
        prop_assert_eq!(Area::of(w, h) + Area::of(w, more), Area::of(w, h + more));
    }
}
