//! Golden jobs: `suite/sizes/ok/NAME.job.toml` beside its `NAME.ref.sizes`, and
//! `suite/sizes/ex/NAME.job.toml` beside the exact messages in `NAME.ref.faults`.
//!
//! A job whose name starts with `largest` is asked for the largest art instead of its sizes.
//! With `RABBET_BLESS=1` the references are written anew; read the difference before keeping it.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use sizing::{Fault, Sizes, derive, largest_art};
use suite::print::{document_faults_text, faults_text, sizes_text};
use trade::{Catalogue, Job, Settings};

/// What came of a job.
pub enum Came {
    /// It was sized.
    Sized(Box<Sizes>),
    /// The largest art was found; as text.
    Largest(String),
    /// Something is missing or unknown.
    Faults(Vec<Fault>),
    /// The document can't be read.
    Unread(Vec<trade::DocumentFault>),
}

/// The folder of golden jobs.
pub fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("sizes")
        .join(name)
}

/// Reads and sizes the job of this file.
pub fn run(file: &Path) -> Came {
    let bytes = fs::read(file).expect("the job is there");
    let job = match Job::read(&bytes) {
        Ok(job) => job,
        Err(faults) => return Came::Unread(faults),
    };
    let (catalogue, settings) = (Catalogue::starter(), Settings::defaults(job.units));
    if stem(file).starts_with("largest") {
        return match largest_art(&job, &catalogue, &settings) {
            Ok(largest) => {
                assert!(largest.working.recheck().is_empty());
                let size = largest.art.size().exact(job.units.unit());
                Came::Largest(format!("largest art: {size}\n"))
            }
            Err(faults) => Came::Faults(faults),
        };
    }
    match derive(&job, &catalogue, &settings) {
        Ok(sizes) => {
            let amiss = sizes.working.recheck();
            assert!(amiss.is_empty(), "{}: {amiss:#?}", file.display());
            Came::Sized(Box::new(sizes))
        }
        Err(faults) => Came::Faults(faults),
    }
}

fn stem(file: &Path) -> &str {
    let name = file
        .file_name()
        .and_then(|name| name.to_str())
        .unwrap_or_default();
    name.split('.').next().unwrap_or_default()
}

/// Files of a golden folder with this ending, in order.
fn files(name: &str, ending: &str) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder(name)).expect("the folder is there");
    let mut files: Vec<PathBuf> = entries
        .map(|entry| entry.expect("a file").path())
        .filter(|path| path.to_string_lossy().ends_with(ending))
        .collect();
    files.sort();
    files
}

/// Compares each job of a folder with its reference, or writes the reference.
fn compare(name: &str, ending: &str, text_of: impl Fn(&Path) -> String) {
    let bless = std::env::var("RABBET_BLESS").is_ok_and(|value| value == "1");
    let mut amiss = Vec::new();
    let jobs = files(name, ".job.toml");
    assert!(!jobs.is_empty(), "there are golden jobs in {name}");
    for job in &jobs {
        let reference = job.with_file_name(format!("{}{ending}", stem(job)));
        let text = text_of(job);
        if bless {
            fs::write(&reference, &text).expect("the reference is written");
        } else if fs::read_to_string(&reference).unwrap_or_default() != text {
            amiss.push(format!("{}:\n{text}", reference.display()));
        }
    }
    let hint = "RABBET_BLESS=1 writes references anew";
    assert!(
        amiss.is_empty(),
        "{hint}; these differ:\n{}",
        amiss.join("\n")
    );
    let stems: BTreeSet<&str> = jobs.iter().map(|job| stem(job)).collect();
    for reference in files(name, "")
        .iter()
        .filter(|path| !path.ends_with(".job.toml"))
    {
        assert!(
            stems.contains(stem(reference)),
            "{} has no job",
            reference.display()
        );
    }
}

#[test]
fn pieces_that_can_be_made_have_their_sizes() {
    compare("ok", ".ref.sizes", |file| match run(file) {
        Came::Sized(sizes) => {
            assert!(
                !sizes.is_refused(),
                "{}\n{}",
                file.display(),
                sizes_text(&sizes)
            );
            sizes_text(&sizes)
        }
        Came::Largest(text) => text,
        Came::Faults(faults) => panic!("{}\n{}", file.display(), faults_text(&faults)),
        Came::Unread(faults) => panic!("{}\n{}", file.display(), document_faults_text(&faults)),
    });
}

#[test]
fn faults_say_what_is_wrong_and_what_cures_it() {
    compare("ex", ".ref.faults", |file| {
        let text = match run(file) {
            Came::Sized(sizes) => faults_text(&sizes.faults),
            Came::Largest(text) => panic!("{}: {text}", file.display()),
            Came::Faults(faults) => faults_text(&faults),
            Came::Unread(faults) => document_faults_text(&faults),
        };
        assert!(!text.is_empty(), "{} has no fault", file.display());
        text
    });
}

const UNSAID: &str = "invalid illegal please sorry oops"; // not said: what the test looks for

#[test]
fn no_message_blames_or_begs() {
    for file in files("ex", ".ref.faults") {
        let text = fs::read_to_string(&file)
            .expect("the reference is there")
            .to_lowercase();
        for word in UNSAID.split(' ') {
            assert!(!text.contains(word), "{} says {word}", file.display());
        }
    }
}

#[test]
fn every_fault_has_a_golden_case() {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates");
    let mut codes = BTreeSet::new();
    collect(
        &crates.join("sizing/src"),
        &["Fault::refuse(", "Fault::warn("],
        &mut codes,
    );
    collect(&crates.join("trade/src"), &["=> \"document."], &mut codes);
    assert!(codes.len() > 70, "the sources name their codes: {codes:?}");
    // A document over a megabyte is made in `bad_input`, not kept.
    codes.remove("document.too_long");
    let texts: Vec<String> = files("ex", ".ref.faults")
        .iter()
        .map(|file| fs::read_to_string(file).expect("the reference is there"))
        .collect();
    let met = |code: &str| {
        let lines = texts.iter().flat_map(|text| text.lines());
        lines
            .into_iter()
            .any(|line| line.split_once(' ').is_some_and(|(_, rest)| rest == code))
    };
    let unmet: Vec<&String> = codes.iter().filter(|code| !met(code)).collect();
    assert!(
        unmet.is_empty(),
        "no case in suite/sizes/ex meets {unmet:?}"
    );
}

/// Codes in the sources below `folder`: the first text after each of `marks` that looks like one.
fn collect(folder: &Path, marks: &[&str], codes: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).expect("the sources are there") {
        let path = entry.expect("a file").path();
        if path.is_dir() {
            collect(&path, marks, codes);
            continue;
        }
        if path.file_name().is_some_and(|name| name == "tests.rs") {
            continue;
        }
        let text = fs::read_to_string(&path).expect("sources are text");
        for mark in marks {
            for (at, _) in text.match_indices(mark) {
                codes.extend(code_in(&text[at..]));
            }
        }
    }
}

/// The first quoted text, where it is two words joined by a dot.
fn code_in(text: &str) -> Option<String> {
    let quoted = text.split('"').nth(1)?;
    let plain =
        |word: &str| !word.is_empty() && word.chars().all(|c| c.is_ascii_lowercase() || c == '_');
    let (part, what) = quoted.split_once('.')?;
    (plain(part) && plain(what)).then(|| quoted.to_owned())
}
