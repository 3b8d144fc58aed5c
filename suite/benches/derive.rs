//! How long it takes to read and to size jobs.

use divan::{Bencher, black_box};
use sizing::derive;
use trade::{Catalogue, Job, Settings, Units};

const DOUBLE: &str = include_str!("../sizes/ok/double.job.toml");

fn main() {
    divan::main();
}

/// A double-mat job with its full working; wanted below 50 µs.
#[divan::bench]
fn one_double_mat_job(bencher: Bencher) {
    let job = Job::read(DOUBLE.as_bytes()).expect("the job reads");
    let (catalogue, settings) = (Catalogue::starter(), Settings::defaults(Units::Inches));
    bencher.bench(|| derive(black_box(&job), &catalogue, &settings));
}

/// A thousand jobs, no two alike; wanted below 60 ms.
#[divan::bench]
fn a_thousand_jobs(bencher: Bencher) {
    let jobs: Vec<Job> = (0..1000)
        .map(|n| {
            let width = format!("width = \"{}.{} mm\"", 200 + n / 10, n % 10);
            let text = DOUBLE.replacen("width = \"11\"", &width, 1);
            assert_ne!(text, DOUBLE, "the width is changed");
            Job::read(text.as_bytes()).expect("the job reads")
        })
        .collect();
    let (catalogue, settings) = (Catalogue::starter(), Settings::defaults(Units::Inches));
    bencher.bench(|| {
        let sized = jobs.iter().map(|job| derive(job, &catalogue, &settings));
        sized.flatten().count()
    });
}

/// Reading a document.
#[divan::bench]
fn one_document() -> Job {
    Job::read(black_box(DOUBLE.as_bytes())).expect("the job reads")
}
