use proptest::prelude::*;

use super::super::super::{Part, Reduced, Stages, Stock};
use super::{Oracle, Purpose};
use crate::{Goal, Pace, Unwatched};

/// Points of a grid that is coarse, and of one that is not.
const COARSE: usize = 16;
const FINE: usize = 4096;

fn reduced(size: (u32, u32), parts: Vec<Part>, stages: Stages) -> Reduced {
    Reduced {
        goal: Goal::Value,
        stages,
        least_strip: 0,
        stock: vec![Stock {
            width: size.0,
            height: size.1,
            cost: 1,
            count: 1,
            window_of: None,
            remnant: false,
        }],
        parts,
    }
}

fn part(width: u32, height: u32, count: u64, turn: bool) -> Part {
    Part {
        width,
        height,
        count,
        value: 1 + u64::from(width) * u64::from(height),
        turn,
        window: None,
    }
}

fn most(reduced: &Reduced, purpose: Purpose, points: usize) -> u64 {
    let oracle = Oracle::new(reduced, 0, purpose, points);
    assert_eq!(oracle.is_fine(), points == FINE, "not the grid meant");
    let worths: Vec<u64> = reduced.parts.iter().map(|part| part.value).collect();
    let counts: Vec<u64> = reduced.parts.iter().map(|part| part.count).collect();
    let mut pace = Pace::new(&Unwatched, None);
    let best = oracle.best(&worths, &counts, &mut pace);
    best.expect("time enough").worth
}

const ANY: Stages = Stages {
    most: u32::MAX,
    first: None,
    final_trim: false,
};

/// Beside a part that leaves 3 of the width, 300 crumbs of 3 × 3 lie one on another. In a grid of
/// 16 points each crumb would count as a whole step if it were rounded up.
#[test]
fn parts_smaller_than_the_grid_are_all_counted() {
    let parts = vec![
        part(997, 1000, 1, false),
        part(3, 3, 300, false),
        part(41, 57, 1, true),
        part(29, 83, 1, true),
    ];
    let reduced = reduced((1000, 1000), parts, ANY);
    let held = 1 + 997 * 1000 + 300 * (1 + 9);
    assert!(most(&reduced, Purpose::Bound, COARSE) >= held);
}

/// Arithmetic: 19 strips 53 wide make 1007 of 1010; in steps of 64 each would take up a step, and
/// 15 steps are all there are.
#[test]
fn strips_are_rounded_down_for_a_bound() {
    for most_stages in [2, 3] {
        let stages = Stages {
            most: most_stages,
            first: None,
            final_trim: false,
        };
        let parts = vec![part(53, 1010, 19, false), part(31, 1010, 1, false)];
        let reduced = reduced((1010, 1010), parts, stages);
        let held = 19 * (1 + 53 * 1010);
        assert!(most(&reduced, Purpose::Bound, COARSE) >= held);
    }
}

/// Rows of every height of so many parts would not fit in memory: more stages bound them, fewer
/// make plans.
#[test]
fn too_many_heights_are_not_kept() {
    let stages = Stages {
        most: 3,
        first: None,
        final_trim: true,
    };
    let parts = (0..2_000).map(|more| part(900 + more, 700 + more, 1, true));
    let reduced = reduced((9_000, 7_000), parts.collect(), stages);
    assert_eq!(Oracle::new(&reduced, 0, Purpose::Bound, FINE).stages, None);
    assert_eq!(
        Oracle::new(&reduced, 0, Purpose::Plan, FINE).stages,
        Some(2)
    );
}

fn parts() -> impl Strategy<Value = Vec<Part>> {
    // Counts beyond what a sheet holds: the fine answer does not regard them between rows.
    let one = (1_u32..=200, 1_u32..=200, any::<bool>());
    prop::collection::vec(one, 4..=8).prop_map(|all| {
        let each = |(w, h, turn)| part(w, h, 200_000, turn && w != h);
        all.into_iter().map(each).collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_coarse_bound_is_no_less_than_a_fine_one(
        parts in parts(), width in 200_u32..=420, height in 200_u32..=420,
        most_stages in 1_u32..=4, final_trim in any::<bool>(),
    ) {
        let limited = if most_stages == 4 { u32::MAX } else { most_stages };
        let stages = Stages { most: limited, first: None, final_trim };
        let reduced = reduced((width, height), parts, stages);
        let of = |points| Oracle::new(&reduced, 0, Purpose::Bound, points);
        prop_assume!(!of(COARSE).is_fine() && of(FINE).is_fine());
        let fine = most(&reduced, Purpose::Bound, FINE);
        prop_assert!(most(&reduced, Purpose::Bound, COARSE) >= fine);
    }
}
