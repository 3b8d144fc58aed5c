use std::collections::BTreeSet;

use super::scale::scales;
use super::{Totals, gcd};
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
    let mut sums = BTreeSet::new();
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

/// All sums of costs within their counts, one sheet after another.
fn sums(costs: &[(u64, u64)], limit: u64) -> BTreeSet<u64> {
    let mut sums = BTreeSet::from([0]);
    for &(cost, count) in costs {
        for _ in 0..count.min(limit) {
            let more: Vec<u64> = sums.iter().map(|sum| sum + cost).collect();
            let held = sums.len();
            sums.extend(more.into_iter().filter(|&sum| sum <= limit));
            if sums.len() == held {
                break;
            }
        }
    }
    sums
}

#[test]
fn totals_are_those_of_trying_every_count() {
    let mut chance = Chance::new(8);
    for _ in 0..400 {
        let limit = 1 + chance.below(700) as u64;
        let one = |chance: &mut Chance| {
            let cost = [0, 1, 64, 65][chance.below(4)] + chance.below(40) as u64;
            let endless = chance.one_in(4);
            let count = chance.below(9) as u64;
            (cost, if endless { u64::MAX } else { count })
        };
        let number = 1 + chance.below(4);
        let costs: Vec<(u64, u64)> = (0..number).map(|_| one(&mut chance)).collect();
        let totals = Totals::new(&costs, limit);
        let sums = sums(&costs, limit + 200);
        for cost in 0..=limit {
            let context = format!("{costs:?} up to {limit}, from {cost}");
            let next = sums.range(cost..).next().copied().unwrap_or(u64::MAX);
            if next <= limit {
                assert_eq!(totals.from(cost), next, "{context}");
            } else {
                // Beyond the limit nothing is told, but never too much.
                assert!((cost..=next).contains(&totals.from(cost)), "{context}");
            }
            let below = sums.range(..cost).next_back().copied();
            assert_eq!(totals.below(cost), below, "{context}");
        }
    }
}

#[test]
fn divisors_are_the_greatest() {
    for a in 0..40_u64 {
        for b in 0..40_u64 {
            let divides = |d: &u64| a % d == 0 && b % d == 0;
            let greatest = (1..=a.max(b)).rev().find(divides).unwrap_or(0);
            assert_eq!(gcd(a, b), greatest);
        }
    }
}

#[test]
fn totals_beyond_counting_are_left_as_they_are() {
    let totals = Totals::new(&[(1_000_003, u64::MAX), (999_999_999_999, 2)], 1 << 40);
    assert_eq!(totals.from(1_234_567), 1_234_567);
    assert_eq!(totals.below(1_234_567), Some(1_234_566));
}
