//! Checked by trying everything, one piece and one strip at a time.

use proptest::prelude::*;

use super::straight_yield;

/// Pieces laid one by one until the next would not fit.
fn laid(room: u64, part: u64, kerf: u64) -> u64 {
    let mut used = 0;
    let mut count = 0;
    loop {
        let next = used + part + if count > 0 { kerf } else { 0 };
        if next > room {
            return count;
        }
        used = next;
        count += 1;
    }
}

/// The most pieces out of `room`, trying both kinds as the next strip every time.
fn strips(room: u64, kinds: [(u64, u64); 2], kerf: u64) -> u64 {
    let one = |(width, pieces): (u64, u64)| {
        if width > room {
            return 0;
        }
        let rest = room - width;
        pieces
            + rest
                .checked_sub(kerf)
                .map_or(0, |rest| strips(rest, kinds, kerf))
    };
    kinds.into_iter().map(one).max().unwrap_or(0)
}

/// The most pieces by any number of edge-to-edge cuts without loss: every cut of every rest.
fn any_cuts(width: usize, height: usize, piece: (usize, usize)) -> u64 {
    let mut best = vec![vec![0_u64; height + 1]; width + 1];
    for w in 0..=width {
        for h in 0..=height {
            let fits = (w >= piece.0 && h >= piece.1) || (w >= piece.1 && h >= piece.0);
            let mut most = u64::from(fits);
            for x in 1..w {
                most = most.max(best[x][h] + best[w - x][h]);
            }
            for y in 1..h {
                most = most.max(best[w][y] + best[w][h - y]);
            }
            best[w][h] = most;
        }
    }
    best[width][height]
}

#[test]
fn pieces_of_eleven_by_fourteen_from_a_common_sheet() {
    let found = straight_yield((32, 40), (11, 14), 0, 0);
    assert_eq!((found.across, found.along, found.unturned), (2, 2, 4));
    let turned = (found.turned_across, found.turned_along, found.turned);
    assert_eq!(turned, (2, 3, 6));
    assert_eq!(found.best_two_stage, 6);
}

/// Across 25, strips of 10 and 15 together fill what neither fills alone.
#[test]
fn mixed_strips_beat_both_plain_ways() {
    let found = straight_yield((25, 30), (10, 15), 0, 0);
    assert_eq!((found.unturned, found.turned), (4, 3));
    assert_eq!(found.best_two_stage, 5);
}

#[test]
fn kerf_and_trim_take_their_share() {
    let exact = straight_yield((20, 10), (10, 10), 0, 0);
    assert_eq!(exact.unturned, 2);
    assert_eq!(straight_yield((20, 10), (10, 10), 1, 0).unturned, 1);
    assert_eq!(straight_yield((21, 10), (10, 10), 1, 0).unturned, 2);
    assert_eq!(straight_yield((23, 12), (10, 10), 1, 1).unturned, 2);
    assert_eq!(straight_yield((22, 12), (10, 10), 1, 1).unturned, 1);
    assert_eq!(straight_yield((20, 10), (10, 10), 0, 11).best_two_stage, 0);
}

#[test]
fn the_largest_numbers_are_held() {
    let found = straight_yield((u64::MAX, u64::MAX), (u64::MAX, u64::MAX), u64::MAX, 0);
    assert_eq!((found.unturned, found.best_two_stage), (1, 1));
}

#[test]
#[should_panic(expected = "a piece has two sides")]
fn a_piece_without_a_side_is_no_piece() {
    straight_yield((10, 10), (0, 5), 0, 0);
}

proptest! {
    #[test]
    fn as_many_as_by_trying(
        sheet in (1..40_u64, 1..40_u64),
        piece in (3..20_u64, 3..20_u64),
        kerf in 0..3_u64,
        trim in 0..3_u64,
    ) {
        let found = straight_yield(sheet, piece, kerf, trim);
        let (w, h) = (sheet.0.saturating_sub(2 * trim), sheet.1.saturating_sub(2 * trim));
        prop_assert_eq!(found.across, laid(w, piece.0, kerf));
        prop_assert_eq!(found.along, laid(h, piece.1, kerf));
        prop_assert_eq!(found.turned_across, laid(w, piece.1, kerf));
        prop_assert_eq!(found.turned_along, laid(h, piece.0, kerf));
        let along = [(piece.0, found.along), (piece.1, found.turned_along)];
        let across = [(piece.1, found.across), (piece.0, found.turned_across)];
        let best = strips(w, along, kerf).max(strips(h, across, kerf));
        prop_assert_eq!(found.best_two_stage, u128::from(best));
        prop_assert!(found.best_two_stage >= found.unturned.max(found.turned));
    }

    /// Two stages never yield more than any number of cuts, nor those more than the area.
    #[test]
    fn never_more_than_any_cuts(
        sheet in (1..24_usize, 1..24_usize),
        piece in (2..10_usize, 2..10_usize),
    ) {
        let wide = |n: usize| u64::try_from(n).expect("small");
        let (s, p) = ((wide(sheet.0), wide(sheet.1)), (wide(piece.0), wide(piece.1)));
        let most = any_cuts(sheet.0, sheet.1, piece);
        prop_assert!(straight_yield(s, p, 0, 0).best_two_stage <= u128::from(most));
        prop_assert!(most <= s.0 * s.1 / (p.0 * p.1));
    }
}
