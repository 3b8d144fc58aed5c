//! Against problems solved by hand.

use super::Master;
use crate::pace::{Pace, Unwatched};

#[test]
fn two_patterns_share_a_demand() {
    // Patterns (2,0), (1,1), (0,3) for demands 4 and 3: 2 × (1,1)… the least is
    // x(2,0) = 2, x(0,3) = 1 at a cost of 3.
    let mut master = Master::new(&[4.0, 3.0], 100.0);
    master.add(1.0, vec![(0, 2.0)]);
    master.add(1.0, vec![(0, 1.0), (1, 1.0)]);
    master.add(1.0, vec![(1, 3.0)]);
    assert!(master.solve(100));
    assert!((master.objective() - 3.0).abs() < 1e-9);
    assert!((master.duals()[0] - 0.5).abs() < 1e-9);
    assert!((master.duals()[1] - 1.0 / 3.0).abs() < 1e-9);
    assert!(master.lack() < 1e-9);
}

#[test]
fn a_limit_is_a_row_of_its_own() {
    // The cheap column may be used once only; the rest comes from the dear one.
    let mut master = Master::new(&[3.0, -1.0], 100.0);
    master.add(1.0, vec![(0, 1.0), (1, -1.0)]);
    master.add(5.0, vec![(0, 1.0)]);
    assert!(master.solve(100));
    assert!((master.objective() - 11.0).abs() < 1e-9);
    assert!((master.duals()[1] - 4.0).abs() < 1e-9);
}

#[test]
fn changed_sides_and_later_columns_go_on_from_the_last_basis() {
    let mut master = Master::new(&[4.0, 3.0], 100.0);
    master.add(1.0, vec![(0, 2.0)]);
    master.add(1.0, vec![(1, 1.0)]);
    assert!(master.solve(100));
    assert!((master.objective() - 5.0).abs() < 1e-9);
    master.set_side(0, 2.0);
    master.set_side(1, -1.0);
    assert!(master.solve(100));
    assert!((master.objective() - 1.0).abs() < 1e-9);
    master.set_side(1, 6.0);
    assert!(master.solve(100));
    assert!((master.objective() - 7.0).abs() < 1e-9);
    master.add(1.0, vec![(0, 1.0), (1, 3.0)]);
    assert!(master.solve(100));
    assert!(
        (master.objective() - 2.0).abs() < 1e-9,
        "{}",
        master.objective()
    );
}

#[test]
fn what_no_column_can_meet_is_told() {
    let mut master = Master::new(&[1.0, 1.0], 50.0);
    master.add(1.0, vec![(0, 1.0)]);
    assert!(master.solve(100));
    assert!((master.lack() - 1.0).abs() < 1e-9);
}

#[test]
fn pivots_are_steps() {
    let sides: Vec<f64> = (1..=30).map(f64::from).collect();
    let mut master = Master::new(&sides, 1000.0);
    for row in 0..30 {
        master.add(1.0, vec![(row, 1.0), ((row * 7 + 3) % 30, 2.0)]);
    }
    let mut short = Pace::new(&Unwatched, Some(200));
    assert!(!master.solve_within(10_000, &mut short));
    assert!(short.is_over());
    let mut long = Pace::new(&Unwatched, Some(1_000_000));
    assert!(master.solve_within(10_000, &mut long));
    assert!(!long.is_over() && long.left() < 999_800, "{}", long.left());
    assert!(master.lack() < 1e-6);
}
