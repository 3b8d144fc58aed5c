//! Pieces of demo jobs, worked by hand from the job documents.

use demand::{Extent, Work};

use crate::bench::{batch, day, pieces};

/// Checks the pieces of one ware, in ticks of 1/64 in.
fn check(jobs: &[&str], changes: &[(&str, &str)], ware: &str, expected: &[&str]) {
    let day = day(jobs, "", changes);
    assert_eq!(pieces(batch(&day, ware)), expected);
}

/// Harbour: 16 × 12 in, covered by 1/8 in, borders 2 3/4 in.
///
/// window  = 16 − 1/4 by 12 − 1/4          = 15 3/4 × 11 3/4
/// package = window + 5 1/2                = 21 1/4 × 17 1/4   (1360 × 1104 in 1/64 in)
/// rabbet  = package + 1/8                 = 21 3/8 × 17 3/8
/// sight   = rabbet − 1/2                  = 20 7/8 × 16 7/8
/// outside = sight + 2                     = 22 7/8 × 18 7/8   (1464, 1208)
/// pairs   = 2 × 1464 + 8, 2 × 1208 + 8    = 2936, 2424        (1/8 in lost at a cut: 8)
#[test]
fn harbour_takes_two_pairs_of_oak() {
    let pairs = [
        "2026-411: Frame, top + bottom = 2936 × 1",
        "2026-411: Frame, left + right = 2424 × 1",
    ];
    check(&["harbour"], &[], "oak-square-1", &pairs);
    let legs = [
        "2026-411: Frame, top, bottom = 1464 × 2",
        "2026-411: Frame, left, right = 1208 × 2",
    ];
    check(
        &["harbour"],
        &[("moulding.match", "run")],
        "oak-square-1",
        &legs,
    );
}

/// foot   = 15 3/4 in − 2 × 1.4 mm by 11 3/4 in − 2 × 1.4 mm = 397.25 × 295.65 mm
/// usable = foot − 2 × 1/8 in                                = 390.9 × 289.3 mm
/// ticks  = 390.9 ÷ 0.396875, 289.3 ÷ 0.396875, rounded down = 984 (.94), 728 (.94)
#[test]
fn harbour_drops_a_piece_of_its_board() {
    let board = [
        "2026-411: Mat = 1360 1104 × 1, drops 984 728",
        "2026-411: Mount = 1360 1104 × 1",
    ];
    check(&["harbour"], &[], "mat-4-conservation", &board);
    let left = [
        "2026-411: Mat = 1360 1104 × 1",
        "2026-411: Mount = 1360 1104 × 1",
    ];
    check(
        &["harbour"],
        &[("board.fallouts", "leave")],
        "mat-4-conservation",
        &left,
    );
    check(
        &["harbour"],
        &[],
        "glass-uv-2.5",
        &["2026-411: Glazing = 1360 1104 × 1"],
    );
}

/// Fern: 9 × 13 in, covered by 1/8 in; reveal 1/4 in, borders 2 1/2 in and 1/2 in more below.
///
/// inner window = 8 3/4 × 12 3/4, outer = 9 1/4 × 13 1/4
/// outer mat    = 9 1/4 + 5 by 13 1/4 + 5 1/2 = 14 1/4 × 18 3/4 = 912 × 1200
/// inner mat    = outer − 1/4 (undermat)      = 14 × 18 1/2     = 896 × 1184
/// outer drops  : 9 1/4 in − 2.8 mm − 1/4 in = 225.8 mm, 13 1/4 in − 2.8 − 6.35 = 327.4 mm
///                = 568 (.94), 824 (.94)
/// inner drops  : 8 3/4 in − 9.15 mm = 213.1 mm, 12 3/4 in − 9.15 mm = 314.7 mm
///                = 536 (.94), 792 (.94)
#[test]
fn fern_takes_two_boards() {
    let white = [
        "2026-412: Mat 1 = 912 1200 × 1, drops 568 824",
        "2026-412: Mount = 912 1200 × 1",
    ];
    check(&["fern"], &[], "mat-4-conservation", &white);
    let green = ["2026-412: Mat 2 = 896 1184 × 1, drops 536 792"];
    check(&["fern"], &[], "mat-4-sea-green", &green);
}

/// Hall glass: a hexagon 14 in across its flats, moulding 1 1/4 in, lip 1/4 in.
///
/// outside across flats = 14 + 1/8 − 1/2 + 2 1/2 = 16 1/8
/// leg   = 16 1/8 in × tan 30° = 9.30977… in = 595.83 ticks, up to 596; a pair 2 × 596 + 8 = 1200
/// back  = as high as the flats, 14 in = 896; as wide as the corners, 14 ÷ cos 30° = 16.16580… in
///         = 1034.61 ticks, up to 1035
#[test]
fn a_hexagon_is_cut_out_of_a_rectangle() {
    let sides = "2026-437: Frame, side 1 + side 2, side 3 + side 4, side 5 + side 6 = 1200 × 3";
    check(&["hall-glass"], &[], "poplar-black-1.25", &[sides]);
    let back = ["2026-437: Backing = 1035 896 × 1"];
    check(&["hall-glass"], &[], "hardboard-3", &back);
}

/// Letter, seen from both sides: 8 1/2 × 11 in, covered by 1/4 in, borders 2 in:
/// mat 12 × 14 1/2 = 768 × 928, twice. It drops 8 in − 9.15 mm by 10 1/2 in − 9.15 mm
/// = 194.05 × 257.55 mm = 488 (.94) × 648 (.94).
#[test]
fn what_lies_before_the_art_is_cut_twice_for_two_faces() {
    let mats = ["2026-439: Mat = 768 928 × 2, drops 488 648"];
    check(&["letter"], &[], "mat-4-conservation", &mats);
    check(
        &["letter"],
        &[],
        "glass-uv-2.5",
        &["2026-439: Glazing = 768 928 × 2"],
    );
}

/// Summer, a shadowbox: display 12 × 10 in between walls of foam board 4.8 mm thick.
///
/// package = 12 in + 9.6 mm by 10 in + 9.6 mm = 314.4 × 263.6 mm = 793 (792.19), 665 (664.19)
/// walls   = two 314.4 mm, two 263.6 − 9.6 = 254 mm = 640; as high as the deepest object and
///           1/4 in of air: 1 3/8 in = 88
#[test]
fn walls_of_a_box_are_cut_from_board() {
    let foam = [
        "2026-435: Wall, long = 793 88 × 2",
        "2026-435: Wall, short = 640 88 × 2",
        "2026-435: Backing = 793 665 × 1",
    ];
    check(&["summer"], &[], "foam-5", &foam);
}

#[test]
fn each_piece_keeps_its_exact_size_beside_its_count() {
    let day = day(&["summer"], "", &[]);
    let Work::Sheets { parts, .. } = &batch(&day, "foam-5").work else {
        panic!("foam board comes in sheets");
    };
    let exact = Extent::Sheet(parts[0].size).exact(measure::Unit::Millimetre);
    assert_eq!(exact, "314.4 mm x 34.925 mm");
}

#[test]
fn a_frame_at_hand_and_what_comes_off_a_roll_are_named_and_not_planned() {
    let day = day(&["poppies"], "", &[]);
    let parts: Vec<&str> = day.unplanned.iter().map(|u| u.part.as_str()).collect();
    assert_eq!(parts, ["the customer's frame", "Dust cover"]);
}

#[test]
fn sticks_and_sheets_of_the_catalogue_are_bought_where_no_stock_is_given() {
    let day = day(&["harbour"], "", &[]);
    let Work::Lengths { problem, .. } = &batch(&day, "oak-square-1").work else {
        panic!("oak comes in sticks");
    };
    // 9 and 10 ft; half an inch trimmed at each end; without a price a stick counts its length.
    let sticks: Vec<_> = problem
        .stock
        .iter()
        .map(|s| (s.name.as_str(), s.length, s.cost, s.count, s.trim))
        .collect();
    assert_eq!(
        sticks,
        [
            ("108 in new", 6912, 6912, None, (32, 32)),
            ("120 in new", 7680, 7680, None, (32, 32))
        ]
    );
    assert_eq!(problem.kerf, 8);
    let Work::Sheets { problem, .. } = &batch(&day, "glass-uv-2.5").work else {
        panic!("glass comes in sheets");
    };
    assert_eq!((problem.rules.kerf, problem.rules.least_strip), (0, 32));
    assert_eq!(problem.stock.len(), 6);
}
