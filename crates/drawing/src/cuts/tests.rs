//! Spreading marks, sharing out roundings, and how numbers are printed.

use measure::{Length, Size, Tape, Toward};
use proptest::prelude::*;

use super::counting::allotted;
use super::ordinates::spread;
use super::{Counting, Shown};

proptest! {
    /// Marks keep their order, their distance and their bounds.
    #[test]
    fn marks_are_spread(mut places in prop::collection::vec(0.0..100.0_f64, 1..12)) {
        places.sort_by(f64::total_cmp);
        let out = spread(&places, 7.0, -2.0, 102.0).unwrap();
        for pair in out.windows(2) {
            prop_assert!(pair[1] - pair[0] >= 7.0 - 1e-9, "{out:?}");
        }
        prop_assert!(out[0] >= -2.0 - 1e-9 && out[out.len() - 1] <= 102.0 + 1e-9, "{out:?}");
    }

    /// Printed parts add up to the printed whole, and none is off by a whole step.
    #[test]
    fn roundings_are_shared_out(parts in prop::collection::vec(0_u128..100_000, 1..8), step in 1_u128..999) {
        let steps = allotted(&parts, step).unwrap();
        let whole: u128 = parts.iter().sum();
        prop_assert_eq!(steps.iter().sum::<u128>(), (whole + step / 2) / step);
        for (part, steps) in parts.iter().zip(steps) {
            prop_assert!(steps * step < part + step && part < &((steps + 1) * step), "{part} {steps}");
        }
    }
}

/// Where marks have room they stay where they are; where there is none, that is said.
#[test]
fn marks_with_room_stay() {
    assert_eq!(spread(&[1.0, 20.0], 7.0, 0.0, 30.0), Some(vec![1.0, 20.0]));
    assert_eq!(spread(&[10.0, 10.0], 7.0, 0.0, 30.0), Some(vec![6.5, 13.5]));
    assert_eq!(spread(&[1.0, 2.0, 3.0], 7.0, 0.0, 10.0), None);
    assert_eq!(spread(&[], 7.0, 0.0, 10.0), Some(Vec::new()));
}

/// Thirds of a step: the whole is one step, and it goes to the first.
#[test]
fn a_step_that_is_wanting_goes_to_what_lost_most() {
    assert_eq!(allotted(&[1, 1, 1], 3), Some(vec![1, 0, 0]));
    assert_eq!(allotted(&[1, 2, 0], 3), Some(vec![0, 1, 0]));
    assert_eq!(allotted(&[u128::MAX, 1], 3), None);
}

fn shown(text: &str, beside: Option<&str>) -> Shown {
    Shown {
        text: text.to_owned(),
        beside: beside.map(str::to_owned),
    }
}

/// Tenths of a millimetre on a tape of whole ones.
fn tenths() -> Counting {
    Counting::Lengths {
        each: Length::micrometres(100),
        tape: Tape::Millimetre,
        toward: Toward::Nearest,
    }
}

/// By hand: 300.25 mm are cut at 300.3, the next tenth; the tape's nearest mark is 300.
#[test]
fn a_piece_is_said_exactly_and_what_it_is_set_to_beside_it() {
    let exact = |micrometres: i64| Some(Length::micrometres(micrometres));
    let said = |count: u64, micrometres: i64| tenths().shown_length(count, exact(micrometres));
    assert_eq!(
        said(3003, 300_250),
        shown("300", Some("exactly 300.25 mm, set to 300.3 mm"))
    );
    assert_eq!(said(3003, 300_300), shown("300", Some("exactly 300.3 mm")));
    assert_eq!(said(3010, 300_950), shown("301", Some("exactly 300.95 mm")));
    assert_eq!(said(3010, 301_000), shown("301", None));
    let size = Size::new(Length::micrometres(300_250), Length::mm(200));
    assert_eq!(
        tenths().shown_piece((3003, 2000), Some(size)),
        shown(
            "300 × 200",
            Some("exactly 300.25 × 200 mm, set to 300.3 × 200 mm")
        )
    );
}

/// By hand: 699.6 mm lie nearest to 700, and are not 700.
#[test]
fn what_is_kept_is_never_said_larger_than_it_is() {
    assert_eq!(
        tenths().kept(&[6996]),
        shown("699", Some("at least 699.6 mm"))
    );
    assert_eq!(
        tenths().kept(&[6996, 5000]),
        shown("699 × 500", Some("at least 699.6 × 500 mm"))
    );
    let size = [3909, 2893].map(|tenth| Length::micrometres(tenth * 100));
    // 390.9 mm are 15.39 in, 289.3 mm are 11.39 in; the sixteenths below are 6/16 of each.
    assert_eq!(
        Shown::kept(&size, Tape::Sixteenths, "exactly").in_full("in"),
        "15 3/8 × 11 3/8 in (exactly 390.9 × 289.3 mm)"
    );
}

/// Tenths of a millimetre on a tape of inches: no number carries the wrong unit.
#[test]
fn lengths_that_are_no_fraction_of_an_inch_stay_millimetres() {
    let counting = Counting::Lengths {
        each: Length::micrometres(100),
        tape: Tape::Sixteenths,
        toward: Toward::Nearest,
    };
    assert_eq!(
        counting.shown(2258),
        shown("8 7/8", Some("set to 225.8 mm"))
    );
    assert_eq!(counting.exact_size((2258, 254)), "225.8 × 25.4 mm");
    let stretches = counting.stretches(&[2258, 254]).expect("few");
    assert_eq!(
        stretches,
        (vec!["225.8".to_owned(), "25.4".to_owned()], "mm".to_owned())
    );
}

#[test]
fn numbers_are_printed_for_the_tape() {
    let inches = Counting::Lengths {
        each: Length::inch_fraction(1, 64),
        tape: Tape::Sixteenths,
        toward: Toward::Down,
    };
    assert_eq!(
        inches.shown(64 + 7),
        shown("1 1/16", Some("set to 1 7/64 in"))
    );
    assert_eq!(inches.shown(64 + 8), shown("1 1/8", None));
    assert_eq!(
        inches.shown_size((71, 128)),
        shown("1 1/16 × 2", Some("set to 1 7/64 × 2 in"))
    );
    assert!(inches.holds(64 * 39_370) && !inches.holds(64 * 39_371));
    // 1 m² = 10 000 cm²; half a square centimetre is rounded up.
    let metric = Counting::Lengths {
        each: Length::mm(1),
        tape: Tape::Millimetre,
        toward: Toward::Nearest,
    };
    assert_eq!(metric.areas(&[12_350, 0]).unwrap(), ["0.0124", "0"]);
    let plain = Counting::Plain {
        unit: String::new(),
    };
    assert_eq!(plain.shown_size((3, 4)), shown("3 × 4", None));
    assert_eq!(plain.exact(u64::MAX), u64::MAX.to_string());
}
