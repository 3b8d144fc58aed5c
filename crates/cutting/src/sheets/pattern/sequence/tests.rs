use super::super::super::{Part, Reduced, Stages, Stock};
use super::super::Columns;
use crate::chance::Chance;
use crate::{Goal, Pace, Unwatched};

fn reduced() -> Reduced {
    let mut chance = Chance::new(5);
    let mut size = || 20 + u32::try_from(chance.below(40)).expect("small");
    let part = |(width, height)| Part {
        width,
        height,
        count: 2,
        value: 0,
        turn: width != height,
        window: None,
    };
    let sizes: Vec<(u32, u32)> = (0..12).map(|_| (size(), size())).collect();
    let stock = |(width, height, cost)| Stock {
        width,
        height,
        cost,
        count: u64::MAX,
        window_of: None,
        remnant: false,
    };
    Reduced {
        goal: Goal::Cost,
        stages: Stages {
            most: u32::MAX,
            first: None,
            final_trim: false,
        },
        least_strip: 0,
        stock: [(100, 80, 80), (140, 110, 150)].map(stock).to_vec(),
        parts: sizes.into_iter().map(part).collect(),
    }
}

/// Broken off and taken up again, a plan is the same as made at one go.
#[test]
fn a_plan_goes_on_where_it_was_left() {
    let reduced = reduced();
    let mut at_once = Columns::new(&reduced, 1);
    at_once.follow_sequence(&mut Pace::new(&Unwatched, None));
    let mut in_parts = Columns::new(&reduced, 1);
    let mut parts = 0;
    while in_parts.sequence.made == 0 {
        parts += 1;
        assert!(parts < 1_000, "no progress");
        in_parts.follow_sequence(&mut Pace::new(&Unwatched, Some(150_000)));
    }
    assert!(parts > 1, "not broken off");
    assert_eq!(at_once.best, in_parts.best);
    assert!(at_once.best.is_some());
}

/// Where no sheet is ever filled before the pace ends, the rest of the search has its turn.
#[test]
fn a_sequence_too_slow_is_given_up() {
    let reduced = reduced();
    let mut columns = Columns::new(&reduced, 1);
    let mut tries = 0;
    while columns.sequence.is_due(0) {
        tries += 1;
        assert!(tries < 100, "no end");
        columns.follow_sequence(&mut Pace::new(&Unwatched, Some(10)));
    }
    assert_eq!((columns.sequence.made, columns.best.is_none()), (0, true));
}

#[test]
fn later_plans_are_spread_over_the_pricing() {
    let reduced = reduced();
    let mut columns = Columns::new(&reduced, 1);
    let mut pace = Pace::new(&Unwatched, None);
    let mut made = 0;
    while columns.sequence.is_due(0) {
        columns.follow_sequence(&mut pace);
        made += 1;
    }
    assert_eq!(made, super::AT_FIRST);
    assert!(!columns.sequence.is_due(7) && columns.sequence.is_due(8));
    assert!(columns.sequence.is_due(u32::MAX));
}
