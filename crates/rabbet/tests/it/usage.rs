use crate::bench::Bench;

/// Each of these is typed wrongly: exit 2, nothing on stdout, a sentence, a hint and a code.
const WRONG: &[(&str, &[&str])] = &[
    ("no_command", &["jub"]),
    ("near_command", &["job", "sises", "print.toml"]),
    ("near_flag", &["job", "sizes", "print.toml", "--jsn"]),
    ("missing_file", &["job", "sizes"]),
    ("missing_view", &["job", "draw", "print.toml"]),
    ("no_such_kind", &["job", "new", "--kind", "sngle-mat"]),
    ("no_value", &["job", "new", "--kind"]),
    ("no_such_shell", &["completions", "tcl"]),
    (
        "one_too_many",
        &["job", "sizes", "print.toml", "canvas.toml"],
    ),
    (
        "not_together",
        &["job", "sizes", "print.toml", "--why", "x", "--working"],
    ),
    ("twice", &["job", "sizes", "print.toml", "--json", "--json"]),
];

#[test]
fn what_is_typed_wrongly_is_answered_with_what_to_type() {
    let bench = Bench::new();
    for (name, args) in WRONG.iter().filter(|(name, _)| *name != "twice") {
        let ran = bench.run(args);
        assert_eq!((ran.exit, ran.stdout.as_str()), (2, ""), "{ran}");
        assert!(
            ran.stderr.contains("  hint: ") && ran.stderr.contains("code: usage."),
            "{ran}"
        );
        insta::assert_snapshot!(*name, ran);
    }
}

#[test]
fn with_json_it_is_a_problem_object() {
    let bench = Bench::new();
    let ran = bench.run(&["job", "sizes", "--json"]);
    assert_eq!(ran.exit, 2, "{ran}");
    let problem = ran.problem();
    assert_eq!(problem["type"], "urn:rabbet:problem:usage");
    assert_eq!(
        (&problem["status"], &problem["exit"]),
        (&400.into(), &2.into())
    );
    assert_eq!(problem["errors"][0]["code"], "usage.missing");
    let twice = bench.run(WRONG.last().expect("the last").1);
    assert_eq!(
        (twice.exit, &twice.problem()["errors"][0]["code"]),
        (2, &"usage.conflict".into()),
        "{twice}"
    );
}

#[test]
fn a_command_left_unfinished_shows_its_help() {
    let bench = Bench::new();
    for command in [&[][..], &["job"], &["setting"]] {
        let ran = bench.run(command);
        assert_eq!((ran.exit, ran.stdout.as_str()), (2, ""), "{ran}");
        assert!(ran.stderr.starts_with("Example: rabbet "), "{ran}");
    }
}

#[test]
fn house_words_only() {
    let bench = Bench::new();
    for (_, args) in WRONG {
        let said = bench.run(args).stderr.to_lowercase();
        for word in ["invalid", "illegal", "please", "sorry", "oops"] {
            assert!(!said.contains(word), "{args:?}: {said}");
        }
    }
}

#[test]
fn colour_stays_away_from_pipes() {
    let bench = Bench::new();
    for args in [
        &["job", "sizes", "print.toml"][..],
        &["--help"],
        &["job", "sizes", "none.toml"],
    ] {
        let ran = bench.run(args);
        assert!(!format!("{ran}").contains('\u{1b}'), "{args:?}");
    }
}

#[cfg(unix)]
#[test]
fn an_argument_that_is_not_text_is_told() {
    use std::os::unix::ffi::OsStringExt as _;
    let bench = Bench::new();
    let odd = std::ffi::OsString::from_vec(vec![b'a', 0xff]);
    let done = bench
        .command(&["job", "sizes"])
        .arg(odd)
        .output()
        .expect("it runs");
    assert_eq!(done.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&done.stderr).contains("code: usage.not_text"));
}
