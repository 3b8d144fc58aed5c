use std::fs;

use crate::bench::{Bench, Ran};

/// Writes the shop into `shop`.
fn write(bench: &Bench, more: &[&str]) -> Ran {
    bench.run(&[&["demo", "write", "shop"], more].concat())
}

/// Names of the shop's jobs and pictures, in the order of the alphabet.
fn names(bench: &Bench) -> Vec<String> {
    let entries = fs::read_dir(bench.path("shop/jobs")).expect("the folder of the jobs");
    let mut names: Vec<String> = entries
        .map(|entry| entry.expect("an entry").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

#[test]
fn every_job_and_every_picture_is_written() {
    let bench = Bench::new();
    let ran = write(&bench, &[]);
    assert_eq!((ran.exit, ran.stdout.as_str()), (0, ""), "{ran}");
    let (jobs, pictures) = (demo::JOBS.len(), demo::PICTURES.len());
    assert_eq!(
        ran.stderr,
        format!(
            "shop: {jobs} jobs, {pictures} pictures, the stock, costs, prices and a cut list written\n"
        )
    );
    let toml = demo::JOBS.iter().map(|job| format!("{}.toml", job.name));
    let svg = demo::PICTURES.iter().map(|name| (*name).to_owned());
    let mut expected: Vec<String> = toml.chain(svg).collect();
    expected.sort();
    assert_eq!(names(&bench), expected);
    for job in demo::JOBS {
        assert_eq!(
            bench.text(&format!("shop/jobs/{}.toml", job.name)),
            job.toml
        );
    }
    for name in demo::PICTURES {
        let drawn = demo::picture(name).expect("it is drawn");
        let written = fs::read(bench.path("shop/jobs").join(name)).expect("it is written");
        assert!(drawn == written, "{name}");
    }
    assert_eq!(bench.text("shop/stock.toml"), demo::STOCK);
    assert_eq!(bench.text("shop/cut-list.toml"), demo::CUT_LIST);
    assert_eq!(bench.text("shop/catalogue.toml"), demo::CATALOGUE);
    assert_eq!(bench.text("shop/prices.toml"), demo::PRICES);
}

#[test]
fn every_job_written_can_be_made() {
    let bench = Bench::new();
    assert_eq!(write(&bench, &[]).exit, 0);
    let files: Vec<String> = demo::JOBS
        .iter()
        .map(|job| format!("shop/jobs/{}.toml", job.name))
        .collect();
    let files: Vec<&str> = files.iter().map(String::as_str).collect();
    let ran = bench.run(&[&["job", "check"], files.as_slice()].concat());
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(!ran.stderr.contains("Stop: "), "{ran}");
    for file in files {
        assert!(ran.stderr.contains(&format!("{file}: ")), "{file}: {ran}");
    }
}

#[test]
fn drawings_and_tickets_find_their_pictures() {
    let bench = Bench::new();
    assert_eq!(write(&bench, &[]).exit, 0);
    let draw = [
        "job",
        "draw",
        "shop/jobs/harbour.toml",
        "--view",
        "elevation",
    ];
    let drawn = bench.run(&draw);
    assert_eq!((drawn.exit, drawn.stderr.as_str()), (0, ""));
    assert!(drawn.stdout.contains("data:image/svg+xml"));
    let ticket = |name: &str| {
        let args = ["job", "ticket", "shop/jobs/harbour.toml", "-o", name];
        let ran = bench.run(&[&args[..], &["--date", "2030-11-25"]].concat());
        assert_eq!(ran.exit, 0, "{ran}");
        let bytes = fs::read(bench.path(name)).expect("a ticket");
        (ran.stderr, bytes.len())
    };
    let (said, with) = ticket("with.pdf");
    assert!(!said.contains("it is drawn without"), "{said}");
    fs::remove_file(bench.path("shop/jobs/harbour.svg")).expect("its picture was there");
    let (said, without) = ticket("without.pdf");
    assert!(said.contains("picture harbour.svg: "), "{said}");
    assert!(with > without, "{with} bytes with it, {without} without");
}

#[test]
fn files_that_are_there_stay_unless_they_may_go() {
    let bench = Bench::new();
    fs::create_dir_all(bench.path("shop/jobs")).expect("a folder");
    bench.file("shop/jobs/pears.toml", "mine");
    insta::assert_snapshot!("one_there", write(&bench, &[]));
    assert_eq!(names(&bench), ["pears.toml"]);
    bench.file("shop/jobs/pears.svg", "mine too");
    insta::assert_snapshot!("two_there", write(&bench, &[]));
    assert_eq!(names(&bench), ["pears.svg", "pears.toml"]);
    assert_eq!(bench.text("shop/jobs/pears.toml"), "mine");
    let ran = write(&bench, &["--force"]);
    assert_eq!(ran.exit, 0, "{ran}");
    let pears = demo::job("pears").expect("it is a job of the shop");
    assert_eq!(bench.text("shop/jobs/pears.toml"), pears.toml);
    // Nothing else is left beside what is written.
    assert_eq!(names(&bench).len(), demo::JOBS.len() + demo::PICTURES.len());
}

#[test]
fn a_dry_run_writes_nothing() {
    let bench = Bench::new();
    let before = bench.names();
    let ran = write(&bench, &["--dry-run"]);
    assert_eq!((ran.exit, ran.stdout.as_str()), (0, ""), "{ran}");
    assert!(
        ran.stderr.ends_with(
            "the stock, costs, prices and a cut list would be written; nothing is (--dry-run)\n"
        ),
        "{ran}"
    );
    assert_eq!(bench.names(), before);
}

#[test]
fn a_folder_that_cannot_be_made_is_told() {
    let bench = Bench::new();
    bench.file("shop", "a file, not a folder");
    insta::assert_snapshot!(write(&bench, &[]));
    assert_eq!(bench.text("shop"), "a file, not a folder");
}
