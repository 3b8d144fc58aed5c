//! Files nobody should have to give, and what is said of them.

use std::fmt::Write as _;

use crate::bench::{Bench, Ran};

/// Every command that reads a job.
const READERS: [&[&str]; 5] = [
    &["job", "sizes"],
    &["job", "check"],
    &["job", "draw", "--view", "elevation"],
    &["job", "largest-art"],
    &["job", "convert", "--to", "json"],
];

/// Runs every reader; the last answer, after checking that none fell over or kept silent.
fn read_by_all(bench: &Bench, file: &str, exit: i32) -> Ran {
    let ran: Vec<Ran> = READERS
        .iter()
        .map(|words| bench.run(&[words, &[file][..]].concat()))
        .collect();
    for (words, ran) in READERS.iter().zip(&ran) {
        assert_eq!(ran.exit, exit, "{words:?} {file}: {ran}");
        assert!(ran.stderr.contains("code: "), "{words:?} {file}: {ran}");
        for word in ["invalid", "illegal", "please", "sorry", "oops", "panicked"] {
            assert!(
                !ran.stderr.to_lowercase().contains(word),
                "{words:?} {file}: {ran}"
            );
        }
    }
    bench.run(&["job", "sizes", file])
}

#[test]
fn files_that_are_no_documents() {
    let bench = Bench::new();
    let noise: Vec<u8> = (0..10 << 20)
        .map(|at: u32| at.wrapping_mul(2_654_435_761).to_be_bytes()[0])
        .collect();
    let cases: [(&str, &[u8]); 9] = [
        ("empty", b""),
        ("blank", b" \n\t\n"),
        ("utf16", b"\xff\xfer\0a\0"),
        ("noise", &noise),
        ("prose", b"A frame for my aunt, about this big.\n"),
        ("no_version", b"units = \"in\"\n"),
        ("newer", b"rabbet = 99\n"),
        ("broken_json", b"{ \"rabbet\": 1, \"art\": [ }"),
        ("json_list", b"[1, 2]"),
    ];
    for (name, bytes) in cases {
        bench.file("bad", bytes);
        insta::assert_snapshot!(name, read_by_all(&bench, "bad", 1));
    }
}

#[test]
fn fields_that_are_not_as_they_should_be() {
    let bench = Bench::new();
    let head = "rabbet = 1\n[[art]]\n";
    let cases = [
        ("no_bottom", "width = \"16 7/\"\nheight = \"11/2\"\n"),
        ("unknown_field", "width = 8\nheight = 10\nwitdh = 8\n"),
        (
            "unknown_choice",
            "width = 8\nheight = 10\nmedium = \"cheese\"\n",
        ),
        ("wrong_type", "width = [8]\nheight = 10\n"),
        ("lacks", "height = 10\n"),
        ("odd_letters", "width = \"8 \u{7}\u{1f5bc}\"\nheight = 10\n"),
    ];
    for (name, body) in cases {
        bench.file("bad.toml", format!("{head}{body}"));
        insta::assert_snapshot!(name, read_by_all(&bench, "bad.toml", 1));
    }
}

#[test]
fn files_that_cannot_be_reached() {
    let bench = Bench::new();
    insta::assert_snapshot!("missing", read_by_all(&bench, "missing.toml", 3));
    insta::assert_snapshot!("folder", read_by_all(&bench, ".", 3));
    let json = bench.run(&["job", "sizes", "missing.toml", "--json"]);
    let problem = json.problem();
    assert_eq!(problem["type"], "urn:rabbet:problem:file");
    assert_eq!(
        (&problem["status"], &problem["errors"][0]["code"]),
        (&503.into(), &"file.missing".into())
    );
}

/// Commands that need the piece to be derived; converting and checking form do not.
fn derived_by_all(bench: &Bench, text: &str) -> Ran {
    bench.file("bad.toml", text);
    for words in &READERS[..3] {
        let ran = bench.run(&[words, &["bad.toml"][..]].concat());
        assert_eq!(ran.exit, 1, "{words:?}: {ran}");
        assert!(ran.stderr.contains("Stop: "), "{words:?}: {ran}");
    }
    bench.run(&["job", "check", "bad.toml"])
}

#[test]
fn pieces_that_are_none() {
    let bench = Bench::new();
    let print = bench.text("print.toml");
    let loud = |from: &str, to: &str| {
        assert!(print.contains(from), "{from}");
        print.replace(from, to)
    };
    let cases = [
        ("negative", loud("width = \"8\"", "width = \"-8\"")),
        ("zero", loud("width = \"8\"", "width = \"0\"")),
        ("astronomical", loud("width = \"8\"", "width = \"999 m\"")),
        ("border_too_wide", loud("all = \"2 1/2\"", "all = \"-40\"")),
        ("no_moulding", loud("oak-square-1", "oak-square-9")),
        ("wrong_kind", loud("oak-square-1", "foam-3")),
        ("no_art", "rabbet = 1\n".to_owned()),
        (
            "two_sides",
            loud("units = \"in\"", "sides = 2\nunits = \"in\""),
        ),
        (
            "setting",
            format!("{print}\n[settings]\n\"mat.overlop\" = \"1/4\"\n\"mat.overlap\" = \"9 ft\"\n"),
        ),
        (
            "like_in_a_circle",
            format!(
                "{print}\n[[material]]\ncode = \"a\"\nlike = \"b\"\n[[material]]\ncode = \"b\"\nlike = \"a\"\n"
            ),
        ),
    ];
    for (name, text) in cases {
        insta::assert_snapshot!(name, derived_by_all(&bench, &text));
    }
}

#[test]
fn a_length_beyond_what_is_read_is_refused_as_it_is_read() {
    let bench = Bench::new();
    bench.file(
        "bad.toml",
        bench
            .text("print.toml")
            .replace("width = \"8\"", "width = \"99999999999999999999 m\""),
    );
    insta::assert_snapshot!(read_by_all(&bench, "bad.toml", 1));
}

#[test]
fn ten_thousand_openings() {
    let bench = Bench::new();
    let mut job = bench.text("print.toml");
    for _ in 0..10_000 {
        job.push_str("\n[[opening]]\nempty = true\nwindow = \"1 x 1\"\n");
    }
    let ran = derived_by_all(&bench, &job);
    assert!(
        ran.stderr.contains("10000 openings") && ran.stderr.contains("limit.openings"),
        "{ran}"
    );
}

#[test]
fn deep_nesting() {
    let bench = Bench::new();
    bench.file(
        "deep.json",
        format!("{}{}", "{\"a\":".repeat(50_000), "}".repeat(50_000)),
    );
    read_by_all(&bench, "deep.json", 1);
    bench.file(
        "deep.toml",
        format!(
            "rabbet = 1\na = {}{}\n",
            "[".repeat(50_000),
            "]".repeat(50_000)
        ),
    );
    read_by_all(&bench, "deep.toml", 1);
}

#[test]
fn a_long_chain_of_like() {
    let bench = Bench::new();
    let mut own = String::new();
    for at in 0..300 {
        write!(
            own,
            "[[material]]\ncode = \"m{at}\"\nlike = \"m{}\"\n",
            at + 1
        )
        .expect("writing to a string");
    }
    own.push_str("[[material]]\ncode = \"m300\"\nkind = \"moulding\"\n");
    bench.file("own.toml", own);
    let ran = bench.run(&["material", "show", "m0", "--materials", "own.toml"]);
    assert_eq!(ran.exit, 0, "{ran}");
    assert!(ran.stdout.contains("moulding"), "{ran}");
}
