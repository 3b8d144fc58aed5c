//! The ways of large problems, tried on small ones, against the table of all ways.

use super::super::core::{Core, Draft, ENDLESS, Item, Kind};
use super::super::start::Rest;
use super::super::tiny::Tiny;
use super::Search;
use crate::chance::Chance;
use crate::pace::{Pace, Unwatched};

const SEEDS: std::ops::Range<u64> = 0..200;

fn up_to(chance: &mut Chance, most: usize) -> u64 {
    u64::try_from(chance.below(most + 1)).unwrap()
}

fn any_core(chance: &mut Chance) -> Core {
    let mut lengths: Vec<u64> = (0..=chance.below(5))
        .map(|_| 3 + up_to(chance, 25))
        .collect();
    lengths.sort_unstable();
    lengths.dedup();
    lengths.reverse();
    let item = |length: u64, chance: &mut Chance| Item {
        length,
        demand: 1 + up_to(chance, 3),
        run: None,
        parts: vec![length],
    };
    // Costs too spread for a table of totals, too.
    let spread = [1, 1, 1_000_003, 10_000_019][chance.below(4)];
    let kind = |stock: usize, chance: &mut Chance| {
        let room = 28 + up_to(chance, 30);
        Kind {
            stock,
            cost: (1 + up_to(chance, 15)) * spread + up_to(chance, 2),
            count: if chance.one_in(2) {
                ENDLESS
            } else {
                1 + up_to(chance, 3)
            },
            run: 0,
            own: 0,
            shared: true,
            stretches: vec![(0, room)],
            room,
        }
    };
    Core {
        kerf: 0,
        items: lengths
            .into_iter()
            .map(|length| item(length, chance))
            .collect(),
        kinds: (0..=chance.below(4))
            .map(|stock| kind(stock, chance))
            .collect(),
    }
}

#[test]
fn mixes_and_the_exact_tail_claim_nothing_false() {
    let (mut whole, mut proven) = (0, 0);
    for seed in SEEDS {
        let mut chance = Chance::new(seed);
        let core = any_core(&mut chance);
        let all = Rest::new(&core);
        let table = Tiny::new(&core, &all, &mut Pace::new(&Unwatched, None)).unwrap();
        let least = table.whole().map_or(u64::MAX, |draft| draft.cost);
        let most = 2_000_000 >> chance.below(12);
        let effort = 1 + up_to(&mut chance, most);
        let mut pace = Pace::new(&Unwatched, Some(effort));
        let mut search = Search::new(&core, &|_, _| {});
        search.at_once(&mut pace);
        search.by_mixes(&all, &mut chance, &mut pace);
        let said = format!(
            "{seed}: bound {}, least {least}, plan {}, {core:?}",
            search.bound,
            search.cost()
        );
        assert!(search.bound <= least && least <= search.cost(), "{said}");
        whole += u32::from(least < u64::MAX);
        proven += u32::from(search.proven());
    }
    assert!(proven * 4 > whole * 3, "{proven} of {whole} proven");
}

/// A bound that a plan refutes is a fault of ours: it is told while we build, and never a proof.
#[test]
#[cfg_attr(debug_assertions, should_panic(expected = "but there is a plan for"))]
fn a_refuted_bound_is_no_proof() {
    let core = any_core(&mut Chance::new(7));
    let mut search = Search::new(&core, &|_, _| {});
    search.offer(Draft {
        fills: Vec::new(),
        cost: 12,
    });
    search.raise(13);
    assert_eq!(search.bound, 0);
    assert!(!search.proven());
}

#[test]
#[cfg_attr(debug_assertions, should_panic(expected = "but the bound is 13"))]
fn a_plan_below_the_bound_takes_the_bound_away() {
    let core = any_core(&mut Chance::new(7));
    let mut search = Search::new(&core, &|_, _| {});
    search.raise(13);
    search.offer(Draft {
        fills: Vec::new(),
        cost: 12,
    });
    assert_eq!(search.bound, 0);
    assert!(!search.proven());
}
