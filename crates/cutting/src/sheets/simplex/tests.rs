use super::solve;
use crate::master::Master;
use crate::{Pace, Unwatched};

/// Rows of which each is met best by a column of its own: as many pivots as rows.
fn program(rows: u32) -> Master {
    let sides: Vec<f64> = (1..=rows).map(f64::from).collect();
    let mut master = Master::new(&sides, 1e6);
    for row in 0..rows as usize {
        master.add(1.0, vec![(row, 1.0)]);
    }
    master
}

#[test]
fn pivots_are_steps() {
    let mut master = program(40);
    let mut pace = Pace::new(&Unwatched, Some(u64::MAX - 1));
    assert!(solve(&mut master, 40, 1_000, &mut pace));
    let used = u64::MAX - 1 - pace.left();
    assert!(used >= 40 * (40 * 40 / 4), "only {used} steps");
    // Σ 1 … 40.
    assert!((master.objective() - 820.0).abs() < 1e-6);
}

#[test]
fn a_short_pace_ends_it_and_a_later_one_goes_on() {
    let mut master = program(40);
    let mut shares = 0;
    loop {
        shares += 1;
        assert!(shares < 100, "no progress");
        let mut pace = Pace::new(&Unwatched, Some(3_000));
        if solve(&mut master, 40, 1_000, &mut pace) {
            break;
        }
        assert!(pace.is_over());
    }
    assert!(shares > 2, "ended after {shares} shares");
    assert!((master.objective() - 820.0).abs() < 1e-6);
}
