use crate::bench::Bench;

const KINDS: [&str; 12] = [
    "single-mat",
    "double-mat",
    "multi",
    "float",
    "canvas",
    "floater",
    "shadowbox",
    "textile",
    "liner",
    "double-sided",
    "polygon",
    "fit-frame",
];

#[test]
fn every_kind_can_be_made_and_needs_no_minding() {
    let bench = Bench::new();
    for kind in KINDS {
        for units in ["in", "mm"] {
            let new = bench.run(&["job", "new", "--kind", kind, "--units", units]);
            assert_eq!((new.exit, new.stderr.as_str()), (0, ""), "{new}");
            let check = bench.run_with(&["job", "check", "-"], new.stdout.as_bytes());
            assert_eq!(check.exit, 0, "{kind} {units}: {check}");
            assert_eq!(
                check.stderr, "stdin: nothing stands in the way\n",
                "{kind} {units}"
            );
        }
    }
}

#[test]
fn every_kind_the_help_names_is_tested() {
    let help = Bench::new().run(&["job", "new", "--help"]).stdout;
    let kinds = help
        .lines()
        .filter(|line| line.trim_start().starts_with("- "))
        .count();
    assert_eq!(kinds, KINDS.len() + 2, "kinds and two units:\n{help}");
    assert!(KINDS.iter().all(|kind| help.contains(kind)), "{help}");
}

#[test]
fn templates_explain_themselves() {
    let bench = Bench::new();
    let new = bench.run(&["job", "new"]);
    insta::assert_snapshot!(new);
    for kind in KINDS {
        let new = bench.run(&["job", "new", "--kind", kind]);
        let remarks = new.stdout.lines().filter(|line| line.contains('#')).count();
        assert!(remarks >= 10, "{kind} has {remarks} remarks");
        assert!(!new.stdout.contains("{{"), "{new}");
    }
}

#[test]
fn a_file_that_is_there_stays() {
    let bench = Bench::new();
    bench.file("mine.toml", "my own words");
    let refused = bench.run(&["job", "new", "-o", "mine.toml"]);
    insta::assert_snapshot!(refused);
    assert_eq!(bench.text("mine.toml"), "my own words");
    let forced = bench.run(&["job", "new", "-o", "mine.toml", "--force"]);
    assert_eq!(forced.exit, 0, "{forced}");
    assert!(bench.text("mine.toml").contains("rabbet = 1"));
}

#[test]
fn a_dry_run_writes_nothing() {
    let bench = Bench::new();
    let before = bench.names();
    let dry = bench.run(&["job", "new", "-o", "new.toml", "--dry-run"]);
    assert_eq!(dry.exit, 0, "{dry}");
    assert!(
        dry.stderr.starts_with("new.toml: would be written, "),
        "{dry}"
    );
    assert_eq!(bench.names(), before);
}

#[test]
fn nothing_is_left_behind_where_it_cannot_be_written() {
    let bench = Bench::new();
    let before = bench.names();
    let missing = bench.run(&["job", "new", "-o", "no/such/new.toml"]);
    insta::assert_snapshot!(missing);
    let folder = bench.run(&["job", "new", "-o", ".", "--force"]);
    assert_eq!(folder.exit, 3, "{folder}");
    assert_eq!(bench.names(), before);
}

#[cfg(unix)]
#[test]
fn a_new_file_is_as_open_as_any_other_of_the_account() {
    use std::os::unix::fs::PermissionsExt as _;
    let bench = Bench::new();
    bench.file("other", "");
    let mode = |name: &str| {
        std::fs::metadata(bench.path(name))
            .expect("it is there")
            .permissions()
            .mode()
    };
    assert_eq!(mode("print.toml"), mode("other"));
}

#[cfg(unix)]
#[test]
fn a_device_takes_the_bytes_and_stays_a_device() {
    use std::os::unix::fs::FileTypeExt as _;
    let bench = Bench::new();
    let ran = bench.run(&["job", "new", "-o", "/dev/null", "--force"]);
    assert_eq!(ran.exit, 0, "{ran}");
    let kind = std::fs::metadata("/dev/null")
        .expect("it is there")
        .file_type();
    assert!(kind.is_char_device());
}
