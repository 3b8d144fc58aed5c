use super::Totals;
use super::scale::scales;
use crate::chance::Chance;

/// The most that bounded numbers of sizes can be worth within a room.
fn most(room: usize, sizes: &[(usize, u64, u64)]) -> u64 {
    let mut best = vec![0; room + 1];
    for &(size, value, count) in sizes {
        for _ in 0..count {
            for left in (size..=room).rev() {
                best[left] = best[left].max(best[left - size] + value);
            }
        }
    }
    best[room]
}

#[test]
fn no_function_lets_a_room_hold_more_than_itself() {
    let mut chance = Chance::new(5);
    for _ in 0..300 {
        let room = 4 + chance.below(40);
        let side = |chance: &mut Chance| u32::try_from(1 + chance.below(room)).expect("small");
        let sides: Vec<(u32, u32)> = (0..4)
            .map(|_| (side(&mut chance), side(&mut chance)))
            .collect();
        let counts: Vec<u64> = (0..4).map(|_| 1 + chance.below(4) as u64).collect();
        let all = scales(u32::try_from(room).expect("small"), &sides, &counts, 60);
        assert!(all.len() > 3);
        for scale in all {
            let mut values = Vec::new();
            // Every part as it lies or turned, whichever is worth more: all of one, all of the
            // other.
            for (at, &(width, height)) in sides.iter().enumerate() {
                values.push((width as usize, scale.sides[at].0, counts[at]));
                values.push((height as usize, scale.sides[at].1, counts[at]));
            }
            assert!(
                most(room, &values) <= scale.whole,
                "{room} {sides:?} {scale:?}"
            );
        }
    }
}

#[test]
fn totals_are_what_costs_add_up_to() {
    let costs = [(6, 3), (10, u64::MAX), (15, 1)];
    let limit = 120;
    let totals = Totals::new(&costs, limit);
    let mut sums = std::collections::BTreeSet::new();
    for sixes in 0..=3 {
        for tens in 0..=20 {
            for fifteens in 0..=1 {
                sums.insert(6 * sixes + 10 * tens + 15 * fifteens);
            }
        }
    }
    for cost in 0..=limit - 20 {
        assert_eq!(Some(&totals.from(cost)), sums.range(cost..).next());
        assert_eq!(totals.below(cost), sums.range(..cost).next_back().copied());
    }
}

#[test]
fn totals_beyond_counting_are_left_as_they_are() {
    let totals = Totals::new(&[(1_000_003, u64::MAX), (999_999_999_999, 2)], 1 << 40);
    assert_eq!(totals.from(1_234_567), 1_234_567);
    assert_eq!(totals.below(1_234_567), Some(1_234_566));
}
