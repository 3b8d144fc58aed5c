use cutting::sheets::{Area, Cut, From, Layout, Way};

use super::{Replayed, replay};

fn area(x: u64, y: u64, width: u64, height: u64) -> Area {
    Area {
        x,
        y,
        width,
        height,
    }
}

/// Cuts across a sheet of 100 × 60 at these places, one after the other, and what is wanted of it.
fn check(at: &[u64], kerf: u64, remnants: &[Area], expected: Result<[u128; 2], &str>) {
    let whole = area(0, 0, 100, 60);
    let mut left = whole;
    let mut cuts = Vec::new();
    for at in at {
        cuts.push(Cut {
            of: left,
            way: Way::Upright,
            at: *at,
        });
        let after = at + kerf;
        left = area(after, 0, 100_u64.saturating_sub(after), 60);
    }
    let layout = Layout {
        from: From::Stock(0),
        copies: 1,
        pieces: Vec::new(),
        cuts,
        remnants: remnants.to_vec(),
    };
    let found = replay(whole, &layout, kerf);
    let expected = expected.map(|[cuts, waste]| Replayed {
        root: 6000,
        cuts,
        waste,
    });
    assert_eq!(found, expected.map_err(str::to_owned));
}

#[test]
fn cuts_part_a_sheet() {
    // 40 | 4 | 56: the cut takes 4 × 60.
    check(&[40], 4, &[area(0, 0, 40, 60)], Ok([240, 56 * 60]));
    check(
        &[40],
        4,
        &[area(0, 0, 40, 60), area(44, 0, 56, 60)],
        Ok([240, 0]),
    );
    // 40 | 4 | 20 | 4 | 32.
    check(&[40, 64], 4, &[area(44, 0, 20, 60)], Ok([480, 72 * 60]));
}

#[test]
fn a_saw_may_take_what_is_narrower_than_itself() {
    // 98 | 2 of 4.
    check(&[98], 4, &[area(0, 0, 98, 60)], Ok([120, 0]));
    check(&[0], 4, &[area(4, 0, 96, 60)], Ok([240, 0]));
}

#[test]
fn cuts_that_part_nothing_are_refused() {
    check(&[100], 4, &[], Err("a cut at 100 lies outside its part"));
    check(&[0], 0, &[], Err("a cut at 0 lies outside its part"));
    check(&[40, 40], 0, &[], Err("a cut at 40 lies outside its part"));
    let twice = [area(0, 0, 40, 60), area(0, 0, 40, 60)];
    check(
        &[40],
        4,
        &twice,
        Err("the cuts do not free the remnant of 40 × 60 at 0, 0"),
    );
}
