use std::fs;

use crate::bench::Bench;

fn pdf(bench: &Bench, name: &str) -> Vec<u8> {
    let bytes = fs::read(bench.path(name)).expect("a ticket");
    assert!(
        bytes.starts_with(b"%PDF-") && bytes.trim_ascii_end().ends_with(b"%%EOF"),
        "{name} is no whole PDF"
    );
    bytes
}

#[test]
fn the_same_day_gives_the_same_bytes() {
    let bench = Bench::new();
    for name in ["one.pdf", "two.pdf"] {
        let ran = bench.run(&[
            "job",
            "ticket",
            "print.toml",
            "-o",
            name,
            "--date",
            "2030-11-25",
            "--shop-name",
            "A shop",
        ]);
        assert_eq!((ran.exit, ran.stdout.as_str()), (0, ""), "{ran}");
        assert_eq!(ran.stderr, format!("{name}: written\n"));
    }
    assert_eq!(pdf(&bench, "one.pdf"), pdf(&bench, "two.pdf"));
}

#[test]
fn the_paper_follows_the_job_or_the_flag() {
    let bench = Bench::new();
    let metric = bench.run(&["job", "new", "--units", "mm"]).stdout;
    bench.file("metric.toml", metric);
    let made = |args: &[&str]| {
        let ran = bench.run(
            &[
                &["job", "ticket", "-o", "x.pdf", "--date", "2030-11-25"],
                args,
            ]
            .concat(),
        );
        assert_eq!(ran.exit, 0, "{ran}");
        pdf(&bench, "x.pdf")
    };
    assert_eq!(
        made(&["print.toml"]),
        made(&["print.toml", "--paper", "letter"])
    );
    assert_eq!(
        made(&["metric.toml"]),
        made(&["metric.toml", "--paper", "a4"])
    );
    assert_ne!(
        made(&["print.toml"]),
        made(&["print.toml", "--paper", "a4"])
    );
}

#[test]
fn a_piece_that_cannot_be_made_gets_none_unless_it_must() {
    let bench = Bench::new();
    bench.too_deep("deep.toml");
    bench.file("x.pdf", "an older ticket");
    let args = ["job", "ticket", "deep.toml", "-o", "x.pdf"];
    let refused = bench.run(&args);
    insta::assert_snapshot!(refused);
    assert_eq!(bench.text("x.pdf"), "an older ticket");
    let anyway = bench.run(&[&args[..], &["--anyway"]].concat());
    assert_eq!(anyway.exit, 0, "{anyway}");
    assert!(anyway.stderr.contains("Stop: "), "{anyway}");
    pdf(&bench, "x.pdf");
}

#[test]
fn a_dry_run_writes_nothing() {
    let bench = Bench::new();
    let before = bench.names();
    let ran = bench.run(&["job", "ticket", "print.toml", "-o", "x.pdf", "--dry-run"]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(ran.stderr.starts_with("x.pdf: would be written, "), "{ran}");
    assert_eq!(bench.names(), before);
}

#[test]
fn a_day_off_the_calendar_is_told() {
    let bench = Bench::new();
    insta::assert_snapshot!(bench.run(&[
        "job",
        "ticket",
        "print.toml",
        "-o",
        "x.pdf",
        "--date",
        "2030-02-30"
    ]));
    assert!(!bench.path("x.pdf").exists());
}
