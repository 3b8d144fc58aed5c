//! Whole commands, each a process of its own: what a person at the bench waits for.
//!
//! `cargo bench -p rabbet` prints each against its promise. Run as a test it does nothing.
#![allow(clippy::print_stdout, reason = "a bench prints what it measured")]

use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

/// How often each command is run; the median counts.
const RUNS: usize = 21;

fn main() {
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder for the job");
    let job = folder.path().join("print.toml");
    let job = job.to_str().expect("a path in letters");
    run(&["job", "new", "--kind", "double-mat", "-o", job]);
    let ticket = folder.path().join("ticket.pdf");
    let ticket = ticket.to_str().expect("a path in letters");
    promise("rabbet --help", 20, &["--help"]);
    promise("rabbet job sizes", 100, &["job", "sizes", job]);
    promise(
        "rabbet job ticket, cold process",
        500,
        &["job", "ticket", job, "-o", ticket],
    );
    assert!(Path::new(ticket).exists(), "the ticket was written");
}

/// Prints the median of the command's times and its share of what was promised.
fn promise(name: &str, promised_ms: u64, words: &[&str]) {
    let mut times: Vec<Duration> = (0..RUNS).map(|_| run(words)).collect();
    times.sort_unstable();
    let median = times[RUNS / 2];
    let share = median.as_secs_f64() / Duration::from_millis(promised_ms).as_secs_f64();
    println!(
        "{name}: median {:.1} ms, {share:.2} of the {promised_ms} ms promised",
        median.as_secs_f64() * 1e3
    );
}

fn run(words: &[&str]) -> Duration {
    let began = Instant::now();
    let output = Command::new(env!("CARGO_BIN_EXE_rabbet"))
        .args(words)
        .output()
        .expect("the program starts");
    assert!(output.status.success(), "{words:?}: {output:?}");
    began.elapsed()
}
