//! Cut sheets, held to the laws they keep.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

mod laws;
mod plans;
mod refusals;
mod samples;

use drawing::{
    CutDrawing, CutSheet, CutStick, Ink, Look, Offcut, StickPiece, cut_sheet, cut_stick,
    sheet_work, stick_work, twin_text,
};

/// Every look a cut sheet has.
fn looks() -> [Look<'static>; 5] {
    [
        Look::page(&|_| None, Ink::Colour),
        Look::ticket(&|_| None, Ink::OneInk),
        Look::wide(Ink::Colour),
        Look::bench(Ink::OneInk),
        Look::bench(Ink::Colour),
    ]
}

fn sheets() -> [CutSheet; 4] {
    [
        samples::board(),
        samples::window(),
        samples::crowd(),
        samples::whole(),
    ]
}

/// Runs `check` on every sample in every look.
fn each(mut check: impl FnMut(&str, &CutDrawing)) {
    for look in looks() {
        for sheet in sheets() {
            let drawn = cut_sheet(&sheet, &look).unwrap();
            check(&format!("{} {:?}", sheet.stock, look.sheet), &drawn);
        }
        for stick in [samples::stick(), kindling()] {
            let drawn = cut_stick(&stick, &look).unwrap();
            check(&format!("{} {:?}", stick.stock, look.sheet), &drawn);
        }
    }
}

/// The reference pictures, looked at when they were made.
#[test]
fn drawings_are_what_they_were() {
    let sheet = cut_sheet(&samples::board(), &Look::wide(Ink::OneInk)).unwrap();
    golden(
        "cut-sheet.svg",
        &sheet.drawing.svg,
        include_str!("../golden/cut-sheet.svg"),
    );
    let stick = cut_stick(&samples::stick(), &Look::wide(Ink::OneInk)).unwrap();
    golden(
        "cut-stick.svg",
        &stick.drawing.svg,
        include_str!("../golden/cut-stick.svg"),
    );
    let words = twin_text(&sheet.drawing);
    golden(
        "cut-sheet.txt",
        &words,
        include_str!("../golden/cut-sheet.txt"),
    );
    let words = twin_text(&stick.drawing);
    golden(
        "cut-stick.txt",
        &words,
        include_str!("../golden/cut-stick.txt"),
    );
}

fn golden(name: &str, now: &str, expected: &str) {
    if now != expected {
        let place = std::env::temp_dir().join(name);
        std::fs::write(&place, now).unwrap();
        panic!(
            "{name} is drawn otherwise; look at {} and, where it is right, let it take the place of the reference",
            place.display()
        );
    }
}

/// Worked by hand from the board's sizes, in 1/64 in.
///
/// stock 3072 × 2304 = 7 077 888; trims 16 × 2304 + 3056 × 16 + 8 × 2288 = 104 064.
/// kerfs, 4 wide: 3 up × 2288; 2 across of 1292; 2 of 916; 2 of 612; 3 up of 128:
/// 4 × (6864 + 2584 + 1832 + 1224 + 384) = 51 552.
/// remnants: RB-117 1292 × 541 + RB-118 216 × 2288 = 1 193 180.
/// waste: 916 × 256 + 612 × 227 + 152 × 128 = 392 876.
/// pieces: 1292 × 1032 + 1292 × 707 + 916 × 1192 + 916 × 832 + 612 × 1925 + 2 × 64 × 128 + 320 × 128
/// = 5 336 216. The five add up to the stock.
#[test]
fn the_sum_is_the_one_worked_by_hand() {
    let sums = sheet_work(&samples::board()).unwrap().sums;
    assert_eq!(sums.stock, 7_077_888);
    assert_eq!(sums.trim, 104_064);
    assert_eq!(sums.kerf, 51_552);
    assert_eq!(sums.remnants, 1_193_180);
    assert_eq!(sums.waste, 392_876);
    assert_eq!(sums.pieces, 5_336_216);
    // 1 sq in = 4096; tenths: 13028, 126, 254, 2913, 959 of 17280.
    assert_eq!(
        sums.sentence(&samples::inches()).unwrap(),
        "pieces 1302.8 + kerf 12.6 + trim 25.4 + remnants 291.3 + waste 95.9 = stock 1728.0 sq in"
    );
}

/// Worked by hand, in 1/64 in: stock 7680 = pieces 1356 + 1128 + 1539 + 1356 + 135 = 5514,
/// kerf 8 × (4 neighbours and the cut on either side of the flaw) = 48, trim 32 + 16,
/// waste 128 − 2 × 8 = 112, and the rest, 1958, is the remnant.
#[test]
fn the_sticks_sum_is_the_one_worked_by_hand() {
    let work = stick_work(&samples::stick()).unwrap();
    assert_eq!(
        work.sums.sentence(&samples::inches()).unwrap(),
        "pieces 86 5/32 + kerf 3/4 + trim 3/4 + remnants 30 19/32 + waste 1 3/4 = stock 120 in"
    );
    let running: Vec<u64> = work.steps.iter().map(|step| step.running).collect();
    assert_eq!(running, [0, 1356, 2492, 4039, 4159, 5523, 5666]);
}

/// Steps are numbered from 1, and no part is cut before it was made.
#[test]
fn cuts_come_in_an_order_a_person_can_make_them_in() {
    for sheet in sheets() {
        let work = sheet_work(&sheet).unwrap();
        let mut there = vec!["the sheet".to_owned()];
        let mut freed = 0;
        for (k, step) in work.steps.iter().enumerate() {
            assert_eq!(step.number, k + 1);
            assert!(there.contains(&step.part.name), "{}: {step:?}", sheet.stock);
            for off in &step.off {
                match &off.what {
                    Offcut::Part(name) => there.push(name.clone()),
                    Offcut::Piece(_) => freed += 1,
                    _ => {}
                }
            }
        }
        let whole = usize::from(sheet.cuts.is_empty());
        assert_eq!(freed + whole, sheet.pieces.len(), "{}", sheet.stock);
    }
}

/// Trims come first, reference edges before the others.
#[test]
fn edges_are_trimmed_before_anything_else() {
    let work = sheet_work(&samples::board()).unwrap();
    let edges: Vec<&str> = work.steps[..3]
        .iter()
        .map(|step| step.edge.word())
        .collect();
    assert_eq!(edges, ["left", "bottom", "right"]);
    assert_eq!(work.steps[3].running, Some(20 * 64 + 12));
}

/// The twin names every cut, piece and remnant, and gives the sum.
#[test]
fn the_twin_is_complete() {
    for sheet in sheets() {
        let work = sheet_work(&sheet).unwrap();
        let drawn = cut_sheet(&sheet, &Look::bench(Ink::OneInk)).unwrap();
        let said = twin_text(&drawn.drawing);
        for step in &work.steps {
            assert!(said.contains(&format!("\nCut {}: ", step.number)), "{said}");
        }
        for piece in &sheet.pieces {
            let size = sheet.counting.exact_size(piece.own_size());
            let line = format!(": {}, {size}, ", piece.name());
            assert!(said.contains(&line), "{line} is not in {said}");
        }
        for kept in &sheet.remnants {
            assert!(said.contains(&format!(": {}, ", kept.label)), "{said}");
        }
        assert!(said.contains("\nSum: pieces "), "{said}");
    }
    let drawn = cut_stick(&samples::stick(), &Look::bench(Ink::OneInk)).unwrap();
    let said = twin_text(&drawn.drawing);
    for line in [
        "Flaw 1: 63 3/8 in (1609.725 mm) to 64 17/32 in",
        "Cut 2: at 21 3/16 in (538.1625 mm) from the reference end, once trimmed; Job 2417, top, 21 3/16 in",
        "mitred, shorter in front by 1 1/2 in (38.1 mm) and 1 1/2 in (38.1 mm)",
        "Remnant 1: ASH-31, 30 19/32 in",
    ] {
        assert!(said.contains(line), "{line} is not in {said}");
    }
}

/// What carries a tag is in the key, and everything else is lettered.
#[test]
fn every_piece_is_named_on_the_drawing_or_in_its_key() {
    for sheet in sheets() {
        let drawn = cut_sheet(&sheet, &Look::bench(Ink::OneInk)).unwrap();
        let text = laws::text_of(&drawn.drawing.svg).join(" ");
        for (piece, tag) in sheet.pieces.iter().zip(&drawn.piece_tags) {
            match tag {
                Some(tag) => {
                    let line = drawn.key.iter().find(|line| line.tag == *tag).unwrap();
                    assert!(line.words.starts_with(&piece.name()), "{line:?}");
                }
                None => {
                    for word in piece.name().replace(',', "").split(' ') {
                        assert!(text.contains(word), "{word} is not in {text}");
                    }
                }
            }
        }
        let tagged = drawn.piece_tags.iter().flatten().count();
        let counted: usize = drawn
            .key
            .iter()
            .filter(|line| line.tag.starts_with(|c: char| c.is_ascii_lowercase()))
            .map(|line| line.count)
            .sum();
        assert_eq!(tagged, counted, "{}", sheet.stock);
    }
}

/// Turned pieces, grain, windows, copies and flaws are said in words or signs, not in colour.
#[test]
fn marks_are_there() {
    let drawn = cut_sheet(&samples::board(), &Look::wide(Ink::OneInk)).unwrap();
    let text = laws::text_of(&drawn.drawing.svg).join(" ");
    for said in [
        "turned",
        "Keep: RB-117",
        "W-5 fallout",
        "× 3, cut alike",
        "Arrow: the way of the grain",
        "Measure from the heavy edges, left and bottom, once trimmed.",
        "1 : 11 · inches",
    ] {
        assert!(text.contains(said), "{said} is not in {text}");
    }
    assert!(
        drawn.drawing.svg.contains("stroke-dasharray"),
        "the window is dashed"
    );
    let drawn = cut_stick(&samples::stick(), &Look::wide(Ink::OneInk)).unwrap();
    let text = laws::text_of(&drawn.drawing.svg).join(" ");
    for said in [
        "flaw",
        "Keep: ASH-31",
        "the long edge, drawn above, is the back",
    ] {
        assert!(text.contains(said), "{said} is not in {text}");
    }
}

/// A stick cut into forty short pieces: more than there is room to letter.
fn kindling() -> CutStick {
    let piece = |k: u64| StickPiece {
        lines: vec![format!("corner block {k}")],
        at: k * 31,
        length: 29,
        exact: None,
        mitre: None,
    };
    CutStick {
        title: "Stick 1 of 1".to_owned(),
        stock: "offcut".to_owned(),
        counting: samples::plain(),
        length: 1250,
        trim: (0, 0),
        kerf: 2,
        copies: 1,
        flaws: Vec::new(),
        pieces: (0..40).map(piece).collect(),
        remnants: Vec::new(),
    }
}
