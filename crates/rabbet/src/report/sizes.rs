//! Every size of a piece.

use sizing::Sizes;

use super::words::numbered;
use super::{Report, Words, bench, boards, members};

/// The table of every size, from the art outwards and on to the bench.
pub fn of_sizes(sizes: &Sizes) -> Report {
    let words = Words::of(sizes);
    let mut report = Report::default();
    whole(sizes, words, &mut report);
    art(sizes, words, &mut report);
    boards::mats(sizes, words, &mut report);
    boards::sheets(sizes, words, &mut report);
    members::members(sizes, words, &mut report);
    bench::setups(sizes, words, &mut report);
    bench::marks(sizes, words, &mut report);
    bench::bill(sizes, words, &mut report);
    report
}

fn whole(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    let group = report.group("Piece");
    if sizes.sides == FOUR {
        group.row("sizes", "width × height, seen from the front".to_owned());
    } else {
        group.row(
            "sizes",
            format!("across the flats of {} sides", sizes.sides),
        );
    }
    words.worked_size(group, "outside", sizes.outside);
    words.worked_size(group, "package", sizes.package);
    words.worked_size(group, "seen", sizes.seen());
    words.some(group, "air before the art", sizes.air);
    if sizes.double_sided {
        group.row(
            "double-sided",
            "mats, spacer and glazing are cut twice".to_owned(),
        );
    }
}

/// Sides of an ordinary frame.
const FOUR: u32 = 4;

fn art(sizes: &Sizes, words: Words<'_>, report: &mut Report) {
    for (i, art) in sizes.art.iter().enumerate() {
        let group = report.group(numbered("Art", i, sizes.art.len()));
        words.worked_size(group, "largest", art.largest);
        words.worked_size(group, "smallest", art.smallest);
        group.some("sheet", art.sheet.map(|sheet| words.size(sheet)));
        group.row("thickness", words.thickness(art.thickness));
        words.some(group, "leans by", art.lean);
    }
}
