//! Whether parts can lie between flaws: yes, no, or left open.

use super::super::core::{Core, Item, Kind};
use super::{Laid, arrange};

/// So many clear stretches of one length, a flaw of 1 between them, and items without kerf.
fn flawed(stretches: u64, length: u64, items: &[u64]) -> Core {
    let item = |&length: &u64| Item {
        length,
        demand: 100,
        run: None,
        parts: vec![length],
    };
    let stretch = |number: u64| {
        let from = number * (length + 1);
        (from, from + length)
    };
    Core {
        kerf: 0,
        items: items.iter().map(item).collect(),
        kinds: vec![Kind {
            stock: 0,
            cost: 1,
            count: 1,
            run: 0,
            own: 0,
            shared: true,
            stretches: (0..stretches).map(stretch).collect(),
            room: stretches * length,
        }],
    }
}

#[test]
fn what_fits_and_what_does_not() {
    let core = flawed(2, 10, &[6, 4]);
    assert!(matches!(
        arrange(&core, 0, &[(0, 2), (1, 2)]).0,
        Laid::Spots(_)
    ));
    assert_eq!(arrange(&core, 0, &[(0, 3)]).0, Laid::Never);
    assert_eq!(
        arrange(&core, 0, &[(1, 5)]).0,
        Laid::Never,
        "two and a half each"
    );
}

#[test]
fn a_search_that_gives_up_does_not_say_no() {
    // 14 stretches of 100 against 40 pieces of 26 to 33: only three go on each, 42 in all would
    // need every place; that 43 of at most 33 do not fit takes very long to see.
    let items: Vec<u64> = (26..34).rev().collect();
    let core = flawed(14, 100, &items);
    let parts: Vec<(usize, u64)> = (0..8)
        .map(|item| (item, if item < 3 { 6 } else { 5 }))
        .collect();
    let taken: u64 = parts.iter().map(|&(item, times)| items[item] * times).sum();
    assert!(taken <= 1400);
    assert_eq!(arrange(&core, 0, &parts).0, Laid::Open);
    assert!(core.may_take(0, 0));
}

#[test]
fn more_parts_than_are_looked_at_are_left_open() {
    let core = flawed(2, 1_000, &[1]);
    assert_eq!(arrange(&core, 0, &[(0, 1_500)]).0, Laid::Open);
    assert_eq!(arrange(&core, 0, &[(0, 2_001)]).0, Laid::Never);
}
