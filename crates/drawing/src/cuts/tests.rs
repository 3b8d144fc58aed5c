//! Spreading marks, sharing out roundings, and how numbers are printed.

use measure::{Length, Tape, Toward};
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

#[test]
fn numbers_are_printed_for_the_tape() {
    let inches = Counting::Lengths {
        each: Length::inch_fraction(1, 64),
        tape: Tape::Sixteenths,
        toward: Toward::Down,
    };
    let shown = |text: &str, exact: Option<&str>| Shown {
        text: text.to_owned(),
        exact: exact.map(str::to_owned),
    };
    assert_eq!(inches.shown(64 + 7), shown("1 1/16", Some("1 7/64")));
    assert_eq!(inches.shown(64 + 8), shown("1 1/8", None));
    assert_eq!(
        inches.shown_size((71, 128)),
        shown("1 1/16 × 2 in", Some("1 7/64 × 2 in"))
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
