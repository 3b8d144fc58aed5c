//! A mat on a package, digits chosen so that each term shows in the total.

use measure::Length;
use working::{Citation, Given, Rule, Seen, Source, Status, Subject, Worked, Working};

pub static WINDOW: Rule = Rule {
    id: "test.window",
    words: "the window hides an overlap on both sides of the art",
    formula: "window = art − 2 × overlap",
    source: Source::CommonPractice,
    status: Status::CommonPractice,
};

pub static OUTSIDE: Rule = Rule {
    id: "test.outside",
    words: "a mat is as wide as its window and both borders",
    formula: "outside = window + left + right",
    source: Source::Geometry,
    status: Status::Geometry,
};

/// Invented, as everything here.
pub static BOOK: Citation = Citation {
    code: "T-1",
    title: "A made-up book of clearances",
    publisher: "Nobody",
    year: "1901",
    seen: Seen::InPart,
};

pub static BLANK: Rule = Rule {
    id: "test.blank",
    words: "the blank is cut clear of the rabbet",
    formula: "blank = outside + clearance",
    source: Source::Cited(&BOOK),
    status: Status::Published,
};

pub static FITS: Rule = Rule {
    id: "test.fits",
    words: "the blank comes out of one sheet",
    formula: "fits = blank ≤ sheet and outside ≤ sheet",
    source: Source::Geometry,
    status: Status::Geometry,
};

/// So many half inches.
pub fn halves(n: i64) -> Length {
    Length::inch_128ths(n * 64)
}

/// The lines of one job.
pub struct Job {
    pub working: Working,
    pub window: Worked<Length>,
    pub outside: Worked<Length>,
    pub blank: Worked<Length>,
    pub fits: Worked<bool>,
}

pub fn job() -> Job {
    let mut working = Working::with_capacity(4, 10);
    let window = window(&mut working);
    let outside = outside(&mut working, window);
    let blank = blank(&mut working, outside);
    let fits = fits(&mut working, outside, blank);
    Job {
        working,
        window,
        outside,
        blank,
        fits,
    }
}

fn window(working: &mut Working) -> Worked<Length> {
    let subject = Subject::nth("mat", 0, "window")
        .within("opening", 1)
        .width();
    let overlap = Given::setting("window.overlap", Length::inch_128ths(32));
    let inputs = [("art", Given::job(halves(17))), ("overlap", overlap)];
    working.by(&WINDOW, subject, &inputs, halves(16))
}

fn outside(working: &mut Working, window: Worked<Length>) -> Worked<Length> {
    let (left, right) = (halves(4), halves(5));
    let subject = Subject::nth("mat", 0, "outside").width();
    let inputs = [
        ("window", window.into()),
        ("left", Given::job(left)),
        ("right", Given::job(right)),
    ];
    working.by(&OUTSIDE, subject, &inputs, *window + left + right)
}

fn blank(working: &mut Working, outside: Worked<Length>) -> Worked<Length> {
    let clearance = Length::inch_128ths(16);
    let inputs = [
        ("outside", outside.into()),
        ("clearance", Given::setting("blank.clearance", clearance)),
    ];
    working.by(
        &BLANK,
        Subject::of("package", "blank").width(),
        &inputs,
        *outside + clearance,
    )
}

fn fits(working: &mut Working, outside: Worked<Length>, blank: Worked<Length>) -> Worked<bool> {
    let sheet = halves(64);
    let inputs = [
        ("blank", blank.into()),
        ("outside", outside.into()),
        ("sheet", Given::material(sheet)),
    ];
    let fits = *blank <= sheet && *outside <= sheet;
    working.by(&FITS, Subject::of("package", "fits"), &inputs, fits)
}
