use super::super::super::{Part, Reduced, Stages, Stock};
use super::super::oracle::{Oracle, Purpose};
use super::grown;
use crate::{Goal, Pace, Unwatched};

fn part(width: u32, height: u32, count: u64) -> Part {
    Part {
        width,
        height,
        count,
        value: 0,
        turn: false,
        window: None,
    }
}

/// Arithmetic: 50 + 50 fill the width of 100; 50 + 45 leave 5, too narrow a strip of waste for a
/// least of 10, so that the dearer part is laid alone or with what leaves enough.
#[test]
fn a_layout_keeps_the_least_strip_and_the_counts() {
    let reduced = Reduced {
        goal: Goal::Cost,
        stages: Stages {
            most: u32::MAX,
            first: None,
            final_trim: false,
        },
        least_strip: 10,
        stock: vec![Stock {
            width: 100,
            height: 60,
            cost: 7,
            count: u64::MAX,
            window_of: None,
            remnant: false,
        }],
        parts: vec![part(50, 60, 1), part(45, 60, 5), part(40, 30, 3)],
    };
    let oracle = Oracle::new(&reduced, 0, Purpose::Bound, 64);
    let mut pace = Pace::new(&Unwatched, None);
    let counts = [1, 5, 3];
    let filled = grown(&oracle, &[100, 90, 40], &counts, &mut pace).expect("a layout");
    // Two of 45 leave exactly 10: worth 180; 50 with two of 40 × 30 leave 10 as well: also 180.
    assert_eq!(filled.worth, 180);
    assert!(
        filled
            .uses
            .iter()
            .all(|&(part, times)| times <= counts[part])
    );
    // What is worth nothing or is not wanted stays out.
    let filled = grown(&oracle, &[100, 0, 40], &[1, 5, 0], &mut pace).expect("a layout");
    assert_eq!((filled.uses, filled.worth), (vec![(0, 1)], 100));
    assert!(grown(&oracle, &[0, 0, 40], &[1, 5, 0], &mut pace).is_none());
}
