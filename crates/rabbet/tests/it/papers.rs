use std::fs;

use crate::bench::Bench;

/// The day all papers of these tests carry.
const DAY: [&str; 4] = ["--date", "2030-11-25", "--shop-name", "A shop"];

fn made(bench: &Bench, args: &[&str], name: &str) -> Vec<u8> {
    let ran = bench.run(&[args, &["-o", name], &DAY[..]].concat());
    assert_eq!((ran.exit, ran.stdout.as_str()), (0, ""), "{ran}");
    let bytes = fs::read(bench.path(name)).expect("a paper");
    assert!(bytes.starts_with(b"%PDF-") && bytes.trim_ascii_end().ends_with(b"%%EOF"));
    bytes
}

#[test]
fn every_paper_is_the_same_bytes_on_the_same_day() {
    let bench = Bench::new();
    for args in [
        &["label", "print", "print.toml", "--key", "shop.key"][..],
        &["card", "print", "print.toml"],
        &["condition", "print", "print.toml"],
        &["wall", "map", "wall.toml"],
        &["wall", "template", "wall.toml"],
    ] {
        let once = made(&bench, args, "one.pdf");
        assert_eq!(once, made(&bench, args, "two.pdf"), "{args:?}");
        let a4 = made(&bench, &[args, &["--paper", "a4"]].concat(), "a4.pdf");
        assert_ne!(once, a4, "{args:?}");
    }
}

#[test]
fn a_record_is_written_read_and_verified() {
    let bench = Bench::new();
    let args = [
        "record",
        "write",
        "print.toml",
        "--key",
        "shop.key",
        "-o",
        "own.txt",
    ];
    let ran = bench.run(&[&args[..], &DAY].concat());
    assert_eq!(ran.exit, 0, "{ran}");
    insta::assert_snapshot!("verified", bench.run(&["record", "verify", "own.txt"]));
    let read = bench.run(&["record", "read", "own.txt", "--json"]).json();
    assert_eq!(read["signature_holds"], true);
    assert_eq!(read["record"]["shop"], "A shop");
    assert_eq!(read["record"]["date"], "2030-11-25");
    // The job inside is the job it was made from.
    let inside = bench.run(&["record", "read", "--job", "own.txt"]);
    bench.file("inside.toml", &inside.stdout);
    let sizes = |file: &str| bench.run(&["job", "sizes", file, "--json"]).stdout;
    assert_eq!(sizes("inside.toml"), sizes("print.toml"));
}

/// A record of the first form still opens, whatever the program has become.
#[test]
fn the_first_record_that_was_shipped_still_opens() {
    let bench = Bench::new();
    insta::assert_snapshot!("first_record", bench.run(&["record", "read", "record.txt"]));
}

#[test]
fn another_key_or_a_changed_letter_fails_the_check() {
    let bench = Bench::new();
    let other = "0".repeat(64);
    let ran = bench.run(&[
        "record",
        "verify",
        "record.txt",
        "--signed-by",
        &other,
        "--json",
    ]);
    assert_eq!(ran.exit, 1, "{ran}");
    assert_eq!(ran.json()["signed_by_named_key"], false);
    assert_eq!(ran.json()["signature_holds"], true);
    // The first letters after the heading are the public key.
    let text = bench.text("record.txt");
    let (head, letters) = text.split_once(':').expect("a heading");
    let first = if letters.starts_with('0') { "1" } else { "0" };
    bench.file("changed.txt", format!("{head}:{first}{}", &letters[1..]));
    let ran = bench.run(&["record", "verify", "changed.txt"]);
    assert_eq!(ran.exit, 1, "{ran}");
    assert!(ran.stdout.contains("does not hold"), "{ran}");
}

#[test]
fn a_missing_part_is_named() {
    let bench = Bench::new();
    let text = bench.text("record.txt");
    let first = text.lines().next().expect("a part");
    bench.file("part.txt", first);
    insta::assert_snapshot!("missing_part", bench.run(&["record", "read", "part.txt"]));
    bench.file("none.txt", "a shopping list\n");
    insta::assert_snapshot!("no_record", bench.run(&["record", "read", "none.txt"]));
}

#[test]
fn a_key_is_made_once_and_kept_for_this_account() {
    let bench = Bench::new();
    let made = bench.run(&["record", "key", "new.key"]);
    assert_eq!(made.exit, 0, "{made}");
    let again = bench.run(&["record", "key", "new.key", "--json"]).json();
    assert_eq!(again["public"].as_str(), Some(made.stdout.trim()));
    assert_eq!(again["made"], false);
    let second = bench.run(&["record", "key", "second.key"]);
    assert_ne!(second.stdout, made.stdout, "two keys differ");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        let rights = fs::metadata(bench.path("new.key"))
            .expect("a key")
            .permissions()
            .mode();
        assert_eq!(rights & 0o777, 0o600);
    }
    let ran = bench.run(&[
        "label",
        "print",
        "print.toml",
        "--key",
        "no.key",
        "-o",
        "x.pdf",
    ]);
    insta::assert_snapshot!("no_key", ran);
}

#[test]
fn a_wall_is_shown_piece_by_piece() {
    let bench = Bench::new();
    insta::assert_snapshot!("wall", bench.run(&["wall", "show", "wall.toml"]));
    let json = bench.run(&["wall", "show", "wall.toml", "--json"]).json();
    assert_eq!(json["pieces"][1]["name"], "Mirror");
    let svg = bench.run(&["wall", "map", "wall.toml", "-o", "map.svg"]);
    assert_eq!(svg.exit, 0, "{svg}");
    assert!(bench.text("map.svg").starts_with("<svg "));
    let text = bench.run(&["wall", "map", "wall.toml", "--text", "-o", "-"]);
    assert!(
        text.stdout.contains("2 Mirror, nail above the floor: "),
        "{text}"
    );
}

#[test]
fn walls_that_do_not_do_are_told_with_their_place() {
    let bench = Bench::new();
    for (name, wall) in [
        (
            "narrow",
            "width = 10\n[[piece]]\nwidth = 16\nheight = 20\nseat = 5\n",
        ),
        ("bad_length", "width = \"10 7/\"\n"),
        ("no_pieces", "width = 100\n"),
        (
            "no_columns",
            "width = 100\nlayout = \"grid\"\n[[piece]]\nwidth = 16\nheight = 20\nseat = 5\n",
        ),
        ("unknown_field", "width = 100\nheigth = 90\n"),
    ] {
        bench.file("bad.toml", wall);
        let ran = bench.run(&["wall", "show", "bad.toml"]);
        assert_eq!(ran.exit, 1, "{name}: {ran}");
        insta::assert_snapshot!(name, ran);
    }
}
