//! What one line of working costs.

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use measure::Length;
use working::{Given, Rule, Source, Status, Subject, Working};

static OUTSIDE: Rule = Rule {
    id: "bench.outside",
    words: "a mat is as wide as its window and both borders",
    formula: "outside = window + left + right",
    source: Source::Geometry,
    status: Status::Geometry,
};

/// About what one piece takes.
const LINES: usize = 500;

fn main() {
    divan::main();
}

/// Records [`LINES`] lines of three inputs, each reading the one before.
fn work(mut working: Working) -> Working {
    let left = Given::setting("mat.border", black_box(Length::INCH));
    let mut window = working.by(&OUTSIDE, Subject::of("art", "size"), &[], Length::ZERO);
    for at in 0..LINES {
        let outside = *window + Length::INCH + Length::INCH;
        let inputs = [
            ("window", window.into()),
            ("left", left),
            ("right", Given::job(Length::INCH)),
        ];
        window = working.by(
            &OUTSIDE,
            Subject::nth("mat", at, "outside").width(),
            &inputs,
            outside,
        );
    }
    working
}

/// With room made beforehand.
#[divan::bench]
fn with_room(bencher: Bencher) {
    bencher
        .counter(ItemsCount::new(LINES))
        .with_inputs(|| Working::with_capacity(LINES + 1, 3 * LINES))
        .bench_values(work);
}

/// Growing from nothing.
#[divan::bench]
fn growing(bencher: Bencher) {
    bencher
        .counter(ItemsCount::new(LINES))
        .bench(|| work(Working::new()));
}

/// Reading every formula once and working every line out again.
#[divan::bench]
fn rechecked(bencher: Bencher) {
    let working = work(Working::new());
    bencher
        .counter(ItemsCount::new(LINES))
        .bench(|| working.recheck());
}
