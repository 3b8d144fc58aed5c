//! Bounds that hold at every cost, whatever the numbers.

use super::super::core::{Core, ENDLESS, Item, Kind};
use super::{costs_between, in_whole, least_held};
use crate::pace::{Pace, Unwatched};

/// Sticks by cost and count; one item. What sticks hold is told apart, so rooms do not matter.
fn core(kinds: &[(u64, u64)]) -> Core {
    let kind = |(stock, &(cost, count)): (usize, &(u64, u64))| Kind {
        stock,
        cost,
        count,
        run: stock,
        own: 0,
        shared: true,
        stretches: vec![(0, 100)],
        room: 100,
    };
    Core {
        kerf: 0,
        items: vec![Item {
            length: 10,
            demand: 10,
            run: None,
            parts: vec![10],
        }],
        kinds: kinds.iter().enumerate().map(kind).collect(),
    }
}

#[test]
fn a_selection_of_costs_proves_one_step_only() {
    // Ten thousand million totals: far too many for a table.
    let core = core(&[(10_000_000_000, ENDLESS), (9_999_999_999, ENDLESS)]);
    let mut pace = Pace::new(&Unwatched, None);
    let between = (10_000_000_000, 30_000_000_000);
    let costs = costs_between(&core, &core.counts(), 10, &[5, 5], between, &mut pace);
    assert_eq!(costs.list[0], 10_000_000_000);
    assert!(costs.list[1] > 10_000_000_001);
    for &cost in &costs.list {
        assert_eq!(costs.after(cost), Some(cost + 1));
    }
    assert!(costs.list.iter().all(|&cost| cost < 30_000_000_000));
}

#[test]
fn every_cost_is_seen_and_the_next_one_told() {
    let core = core(&[(6, ENDLESS), (10, 1)]);
    let mut pace = Pace::new(&Unwatched, None);
    let costs = costs_between(&core, &core.counts(), 10, &[5, 7], (0, 30), &mut pace);
    assert_eq!(costs.list, [12, 16, 18, 22, 24, 28]);
    assert_eq!(costs.after(12), Some(16));
    assert_eq!(costs.after(28), None);
}

#[test]
fn a_stick_that_holds_nothing_of_worth_costs_all_the_same() {
    // A plan of one of each costs 13.
    let core = core(&[(10, ENDLESS), (3, ENDLESS)]);
    let mut pace = Pace::new(&Unwatched, None);
    let costs = costs_between(&core, &core.counts(), 5, &[5, 0], (10, 21), &mut pace);
    assert_eq!(costs.list, [10, 13, 16, 19, 20]);
    assert_eq!(costs.after(10), Some(13));
}

#[test]
fn a_bound_above_a_plan_is_not_hidden() {
    // Two sticks of 6 hold 10; whoever says that there is a plan for 6 is told otherwise.
    let core = core(&[(6, ENDLESS)]);
    let mut pace = Pace::new(&Unwatched, None);
    let mut bound = |below| in_whole(&core, &core.counts(), 10, &[5], below, &mut pace);
    assert_eq!(bound(18), 12);
    assert_eq!(bound(12), 12);
    assert!(bound(6) > 6);
}

#[test]
fn numbers_beyond_reckoning_say_nothing() {
    let core = core(&[(1 << 40, 1 << 40), (1 << 40, ENDLESS)]);
    let most = [1 << 57, 1];
    let least = least_held(&core, &core.counts(), 1 << 99, &most, u64::MAX);
    assert_eq!(least, Some(vec![0, 0]));
    // Nothing is needed: nothing is asked, even of sticks that hold nothing.
    assert_eq!(
        least_held(&core, &core.counts(), 0, &[0, 0], 0),
        Some(vec![0, 0])
    );
}
