//! Plans that do not hold together are refused with the sheet, the part and what to do.

use drawing::{CutSheet, CutStick, Ink, Look, cut_sheet, cut_stick};

use super::samples;

fn sheet(spoil: impl Fn(&mut CutSheet), expected: &str) {
    let mut sheet = samples::board();
    spoil(&mut sheet);
    let said = cut_sheet(&sheet, &Look::bench(Ink::OneInk)).unwrap_err();
    assert_eq!(said.to_string(), expected);
}

fn stick(spoil: impl Fn(&mut CutStick), expected: &str) {
    let mut stick = samples::stick();
    spoil(&mut stick);
    let said = cut_stick(&stick, &Look::bench(Ink::OneInk)).unwrap_err();
    assert_eq!(said.to_string(), expected);
}

#[test]
fn each_refusal_names_the_sheet_and_the_part() {
    sheet(
        |sheet| sheet.width = 24,
        "Sheet 1 of 2: the stock has no extent; give it a size and plan again",
    );
    sheet(
        |sheet| sheet.trim.left = u64::MAX,
        "Sheet 1 of 2: the stock has no extent; give it a size and plan again",
    );
    sheet(
        |sheet| sheet.height = u64::MAX,
        "Sheet 1 of 2: a size is longer than 1000 m; check the unit of the list and plan again",
    );
    sheet(
        |sheet| sheet.cuts.swap(0, 1),
        "Sheet 1 of 2: cut 4 does not go through a part that the cuts before it made; plan again",
    );
    sheet(
        |sheet| sheet.cuts[2].at = sheet.cuts[2].of.x,
        "Sheet 1 of 2: cut 6 does not go through a part that the cuts before it made; plan again",
    );
    sheet(
        |sheet| sheet.pieces[2].area.width += 1,
        "Sheet 1 of 2: no cut frees Job 2419, backing; plan again",
    );
    sheet(
        |sheet| sheet.remnants[1].place.height -= 1,
        "Sheet 1 of 2: no cut frees RB-118; plan again",
    );
    sheet(
        |sheet| sheet.pieces[1].area = sheet.pieces[0].area,
        "Sheet 1 of 2: Job 2417, top mat overlaps another part or leaves the stock; plan again",
    );
}

#[test]
fn each_refusal_names_the_stick_and_the_part() {
    stick(
        |stick| stick.trim.1 = stick.length,
        "Stick 1 of 4: the stock has no extent; give it a size and plan again",
    );
    stick(
        |stick| stick.length = u64::MAX,
        "Stick 1 of 4: a size is longer than 1000 m; check the unit of the list and plan again",
    );
    stick(
        |stick| stick.pieces[1].at -= 9,
        "Stick 1 of 4: Job 2417, left overlaps another part or leaves the stock; plan again",
    );
    stick(
        |stick| stick.pieces[4].length = u64::MAX,
        "Stick 1 of 4: Job 2433, corner block overlaps another part or leaves the stock; plan again",
    );
}
