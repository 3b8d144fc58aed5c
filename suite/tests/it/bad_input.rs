//! Bad input: nothing panics, nothing takes long, and everything is told what to do.

use std::fmt::Write as _;
use std::time::{Duration, Instant};

use sizing::derive;
use trade::{Catalogue, Job, Settings};

/// The longest any of these may take, in a debug build on a busy machine.
const LONGEST: Duration = Duration::from_secs(20);

/// Codes and sentences of a document, whatever stage refuses it.
fn answers(bytes: &[u8]) -> Vec<(&'static str, String)> {
    let began = Instant::now();
    let answers = match Job::read(bytes) {
        Err(faults) => faults.iter().map(|f| (f.code(), f.to_string())).collect(),
        Ok(job) => {
            let settings = Settings::defaults(job.units);
            let faults = match derive(&job, &Catalogue::starter(), &settings) {
                Err(faults) => faults,
                Ok(sizes) => {
                    assert_eq!(sizes.working.recheck(), []);
                    sizes.faults
                }
            };
            faults
                .iter()
                .map(|f| (f.code, f.sentence()))
                .collect::<Vec<_>>()
        }
    };
    let took = began.elapsed();
    assert!(took < LONGEST, "it took {took:?}");
    answers
}

/// Refuses `bytes` with this code first, and says so in words.
fn check(bytes: impl AsRef<[u8]>, code: &str) {
    let answers = answers(bytes.as_ref());
    let codes: Vec<&str> = answers.iter().map(|(code, _)| *code).collect();
    assert!(codes.contains(&code), "{code} is not among {answers:#?}");
    for (code, sentence) in &answers {
        assert!(sentence.trim().len() > 10, "{code} says \"{sentence}\"");
        assert!(sentence.chars().count() < 1_000, "{code} says too much");
    }
}

const ART: &str = "[[art]]\nwidth = \"10\"\nheight = \"20\"\n";
const FRAME: &str = "[[frame]]\nface = \"1\"\nlip = \"1/4\"\n";

fn job(rest: &str) -> String {
    format!("rabbet = 1\n{ART}{FRAME}{rest}")
}

fn art(fields: &str) -> String {
    format!("rabbet = 1\n{FRAME}[[art]]\n{fields}")
}

#[test]
fn what_is_no_text() {
    check("", "document.empty");
    check(" \n\t\n", "document.empty");
    check("\u{feff}", "document.empty");
    check(b"rabbet = 1\n# caf\xe9\n", "document.not_text");
    check([0xff, 0xfe, 0x72, 0x00], "document.not_text");
    check("\u{0}\u{1}\u{2}", "document.field");
}

#[test]
fn ten_megabytes_of_noise() {
    // A linear congruential generator: any fixed bytes would do.
    let mut state = 1_u32;
    let noise: Vec<u8> = std::iter::repeat_with(|| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        state.to_be_bytes()[0]
    })
    .take(10_000_000)
    .collect();
    check(&noise, "document.too_long");
    check(&noise[..100_000], "document.not_text");
    let letters: Vec<u8> = noise[..1_000_000]
        .iter()
        .map(|byte| b'a' + byte % 26)
        .collect();
    check(letters, "document.field");
}

#[test]
fn deep_nesting() {
    check(
        format!("rabbet = 1\nart = {}", "[".repeat(100_000)),
        "document.field",
    );
    check(
        format!(
            "rabbet = 1\nart = {}1{}",
            "[".repeat(9_000),
            "]".repeat(9_000)
        ),
        "document.field",
    );
    check(
        format!("rabbet = 1\n[{}]\n", vec!["a"; 50_000].join(".")),
        "document.field",
    );
    check(
        format!("{{\"rabbet\": 1, \"art\": {}", "[".repeat(100_000)),
        "document.field",
    );
    check("{\"a\":".repeat(100_000), "document.field");
}

#[test]
fn broken_json() {
    check("{", "document.field");
    check("{}", "document.no_version");
    check("{\"rabbet\": \"1\"}", "document.field");
    check("{\"rabbet\": 1e400}", "document.field");
    check("{\"rabbet\": 99}", "document.newer");
    check(
        "{\"rabbet\": 1, \"rabbet\": 1, \"art\": [], \"art\": []}",
        "document.field",
    );
    check(
        "{\"rabbet\": 1, \"art\": [{\"width\": null, \"height\": 1}]}",
        "document.field",
    );
    check("{\"rabbet\": 1, \"colour\": \"red\"}", "document.field");
}

#[test]
fn fields_nobody_knows_or_twice() {
    check(job("[hat]\nsize = 7\n"), "document.field");
    check(format!("rabbet = 1\nrabbet = 1\n{ART}"), "document.field");
    check(art("width = 1\nwidth = 2\nheight = 1\n"), "document.field");
    check("rabbet = -1\n", "document.field");
    check("rabbet = 999999999999999999999999\n", "document.field");
}

#[test]
fn numbers_that_are_no_lengths() {
    for width in [
        "nan",
        "inf",
        "-inf",
        "1e300",
        "\"1e300\"",
        "true",
        "[1]",
        "\"\"",
        "\"🖼\"",
        "\"1/0\"",
    ] {
        check(
            art(&format!("width = {width}\nheight = 1\n")),
            "document.field",
        );
    }
    let digits = "9".repeat(100_000);
    check(
        art(&format!("width = \"{digits}\"\nheight = 1\n")),
        "document.field",
    );
}

#[test]
fn numbers_no_piece_has() {
    check(art("width = 0\nheight = 20\n"), "art.no_size");
    check(art("width = \"-10\"\nheight = 20\n"), "length.negative");
    check(art("width = \"999 m\"\nheight = 20\n"), "limit.length");
    check(job("[fit]\noutside = \"999 m x 999 m\"\n"), "limit.length");
    check(
        job("[fit]\noutside = \"1/128 in x 1/128 in\"\n"),
        "fit.too_small",
    );
    check(format!("sides = 4294967295\n{}", job("")), "limit.count");
    check(format!("sides = 0\n{}", job("")), "frame.sides");
    check(format!("sides = -4\n{}", job("")), "document.field");
    check(
        job("[settings]\n\"limit.largest\" = \"999 m\"\n"),
        "setting.refused",
    );
}

#[test]
fn more_parts_than_a_piece_has() {
    let openings = "[[opening]]\nwindow = \"1 x 1\"\n".repeat(10_000);
    check(
        job(&format!("[[mat]]\nthickness = \"1/16\"\n{openings}")),
        "limit.count",
    );
    check(
        job(&"[[mat]]\nthickness = \"1/16\"\n".repeat(10_000)),
        "limit.count",
    );
    check(
        format!("rabbet = 1\n{FRAME}{}", ART.repeat(10_000)),
        "limit.count",
    );
    let refused = "[[opening]]\nwindow = \"1 x\"\n".repeat(10_000);
    check(
        job(&format!("[[mat]]\nthickness = \"1/16\"\n{refused}")),
        "document.more",
    );
}

#[test]
fn four_hundred_openings_on_one_spot() {
    let openings = "[[opening]]\nwindow = \"1 x 1\"\nx = \"3\"\ny = \"3\"\n".repeat(400);
    let mat = "[[mat]]\nthickness = \"1/16\"\n[layout]\narrange = \"free\"\n";
    check(job(&format!("{mat}{openings}")), "opening.overlap");
}

#[test]
fn materials_that_lead_nowhere() {
    let mat = "[[mat]]\nboard = \"mine\"\n";
    check(job(mat), "material.missing");
    check(
        job(&format!(
            "{mat}[[material]]\ncode = \"mine\"\nlike = \"mine\"\n"
        )),
        "material.catalogue",
    );
    check(
        job(&format!(
            "{mat}[[material]]\ncode = \"mine\"\nlike = \"yours\"\n"
        )),
        "material.catalogue",
    );
    check(
        job(&format!(
            "{mat}[[material]]\ncode = \"mine\"\nkind = \"board\"\n"
        )),
        "part.lacks",
    );
    // A thousand materials, each like the next, the last like the first.
    let ring = (0..1_000).fold(String::new(), |mut ring, i| {
        let next = (i + 1) % 1_000;
        writeln!(ring, "[[material]]\ncode = \"m{i}\"\nlike = \"m{next}\"").expect("a string");
        ring
    });
    check(job(&ring), "material.catalogue");
}

#[test]
fn a_package_longer_than_can_be_held_is_refused() {
    let settings = "[settings]\n\"limit.largest\" = \"6000 in\"\n\"limit.openings\" = \"2000\"\n";
    let mats = "[[mat]]\nthickness = \"6000\"\nreveal = \"6000\"\n".repeat(40);
    let openings = "[[opening]]\nwindow = \"6000 x 6000\"\n".repeat(60);
    let layout = "[layout]\narrange = \"row\"\ngutter_x = \"6000\"\n";
    check(
        job(&format!("{mats}{openings}{layout}{settings}")),
        "limit.length",
    );
}

/// Whether a job is refused, with whatever code.
fn is_refused(text: &str) -> bool {
    let Ok(job) = Job::read(text.as_bytes()) else {
        return true;
    };
    let settings = Settings::defaults(job.units);
    let sizes = derive(&job, &Catalogue::starter(), &settings);
    sizes.map_or(true, |sizes| sizes.is_refused())
}

#[test]
fn contradictions_are_not_settled_in_silence() {
    let mat = "[[mat]]\nthickness = \"1/16\"\n";
    let own = "[[mat]]\nboard = \"mine\"\n[[material]]\ncode = \"mine\"\nthickness = \"-1\"\n";
    let small = ART.replace("10", "2").replace("20", "2");
    let broad = "[[frame]]\nface = \"3\"\nlip = \"2\"\n";
    let fit = "[fit]\noutside = \"20 x 30\"\n";
    let cases = [
        ("a board of negative thickness", job(own)),
        (
            "two sizes to fit",
            job(&format!("{fit}rabbet = \"30 x 40\"\n")),
        ),
        (
            "a hexagon taller than wide",
            format!("rabbet = 1\nsides = 6\n{ART}{FRAME}{mat}"),
        ),
        (
            "borders that do not add up",
            job(&format!("{mat}{fit}[borders]\nleft = 2\nright = 2\n")),
        ),
        (
            "a grid of no columns",
            job(&format!("{mat}[layout]\narrange = \"grid\"\ncolumns = 0\n")),
        ),
        ("a sight below zero", format!("rabbet = 1\n{small}{broad}")),
    ];
    let silent: Vec<&str> = cases
        .iter()
        .filter(|(_, text)| !is_refused(text))
        .map(|(name, _)| *name)
        .collect();
    assert!(silent.is_empty(), "these were not refused: {silent:#?}");
}
