use crate::bench::Bench;

const VIEWS: [&str; 3] = ["elevation", "section", "back"];

#[test]
fn every_view_is_drawn() {
    let bench = Bench::new();
    for view in VIEWS {
        for more in [&[][..], &["--one-ink"]] {
            let args = [&["job", "draw", "print.toml", "--view", view], more].concat();
            let ran = bench.run(&args);
            assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""), "{view}");
            assert!(
                ran.stdout.starts_with("<svg") || ran.stdout.starts_with("<?xml"),
                "{view}: {ran}"
            );
        }
    }
}

#[test]
fn the_text_says_what_the_drawing_shows() {
    let bench = Bench::new();
    let ran = bench.run(&["job", "draw", "print.toml", "--view", "elevation", "--text"]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(
        ran.stdout.contains("Scale: 1 : ") && ran.stdout.contains("14 3/8 in (365.125 mm)"),
        "{ran}"
    );
}

#[test]
fn a_drawing_is_written_whole_and_replaces_an_older_one() {
    let bench = Bench::new();
    bench.file("x.svg", "an older drawing");
    let args = [
        "job",
        "draw",
        "print.toml",
        "--view",
        "elevation",
        "-o",
        "x.svg",
    ];
    let dry = bench.run(&[&args[..], &["--dry-run"]].concat());
    assert_eq!(
        (dry.exit, bench.text("x.svg").as_str()),
        (0, "an older drawing"),
        "{dry}"
    );
    let ran = bench.run(&args);
    assert_eq!(
        (ran.exit, ran.stderr.as_str()),
        (0, "x.svg: written\n"),
        "{ran}"
    );
    assert!(bench.text("x.svg").contains("</svg>"));
    assert_eq!(
        bench.names(),
        [
            "canvas.toml",
            "fit.toml",
            "list.toml",
            "print.toml",
            "record.txt",
            "shop.key",
            "wall.toml",
            "x.svg"
        ]
    );
}

#[test]
fn a_failure_leaves_an_older_drawing_as_it_was() {
    let bench = Bench::new();
    bench.file("x.svg", "an older drawing");
    bench.file(
        "none.toml",
        bench
            .text("print.toml")
            .replace("oak-square-1", "oak-circle-1"),
    );
    let ran = bench.run(&[
        "job",
        "draw",
        "none.toml",
        "--view",
        "elevation",
        "-o",
        "x.svg",
    ]);
    assert_eq!(ran.exit, 1, "{ran}");
    assert_eq!(bench.text("x.svg"), "an older drawing");
}

#[test]
fn the_job_itself_is_never_drawn_over() {
    let bench = Bench::new();
    let before = bench.text("print.toml");
    let ran = bench.run(&[
        "job",
        "draw",
        "print.toml",
        "--view",
        "back",
        "-o",
        "./print.toml",
    ]);
    insta::assert_snapshot!(ran);
    assert_eq!(bench.text("print.toml"), before);
}

#[test]
fn pictures_are_looked_up_beside_the_job() {
    let bench = Bench::new();
    let job = bench
        .text("print.toml")
        .replace("medium =", "picture = \"art.svg\"\nmedium =");
    bench.file(
        "art.svg",
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"8\" height=\"10\"/>",
    );
    bench.file("pictured.toml", &job);
    let with = bench.run(&["job", "draw", "pictured.toml", "--view", "elevation"]);
    assert_eq!((with.exit, with.stderr.as_str()), (0, ""));
    assert!(with.stdout.contains("data:image/svg+xml"), "{with}");
    for (name, why) in [
        (
            "../art.svg",
            "only the name of a file beside the job is followed",
        ),
        (
            "/etc/hosts",
            "only the name of a file beside the job is followed",
        ),
        ("art.gif", "it ends in neither"),
        ("none.png", "no such file"),
    ] {
        bench.file("pictured.toml", job.replace("art.svg", name));
        let without = bench.run(&["job", "draw", "pictured.toml", "--view", "elevation"]);
        assert_eq!(without.exit, 0, "{without}");
        assert!(without.stderr.contains(why), "{name}: {}", without.stderr);
        assert!(!without.stdout.contains("data:image"), "{name}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_out_of_the_folder_is_not_followed() {
    let bench = Bench::new();
    let elsewhere = tempfile::tempdir().expect("another folder");
    let secret = elsewhere.path().join("secret.svg");
    std::fs::write(&secret, "<svg/>").expect("a file there");
    std::os::unix::fs::symlink(&secret, bench.path("art.svg")).expect("a link to it");
    bench.file(
        "pictured.toml",
        bench
            .text("print.toml")
            .replace("medium =", "picture = \"art.svg\"\nmedium ="),
    );
    let ran = bench.run(&["job", "draw", "pictured.toml", "--view", "elevation"]);
    assert!(
        ran.stderr.contains("it leads out of the job's folder"),
        "{}",
        ran.stderr
    );
    assert!(!ran.stdout.contains("data:image"));
}
