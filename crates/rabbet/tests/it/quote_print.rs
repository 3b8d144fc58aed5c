use std::fs;

use crate::bench::{Bench, Ran};

/// The day all papers of these tests carry.
const DAY: [&str; 4] = ["--date", "2030-11-25", "--shop-name", "A shop"];
/// What makes an invoice.
const INVOICE: [&str; 6] = [
    "--invoice",
    "R-1",
    "--seller",
    "seller.toml",
    "--buyer",
    "buyer.toml",
];

fn print(bench: &Bench, args: &[&str]) -> Ran {
    bench.run(&[&["quote", "print"], args, &DAY].concat())
}

/// Prints to `name`, which must come out; its bytes.
fn made(bench: &Bench, args: &[&str], name: &str) -> Vec<u8> {
    let ran = print(bench, &[args, &["-o", name]].concat());
    assert_eq!((ran.exit, ran.stdout.as_str()), (0, ""), "{ran}");
    let bytes = fs::read(bench.path(name)).expect("a paper");
    assert!(bytes.starts_with(b"%PDF-") && bytes.trim_ascii_end().ends_with(b"%%EOF"));
    bytes
}

/// A quote of `print.toml` under other prices.
fn quoted(bench: &Bench, prices: &str, name: &str, more: &[&str]) {
    let own = bench.text("prices.toml");
    bench.file("prices.toml", prices);
    let make = ["quote", "make", "print.toml", "--number", name];
    let ran = bench.run(&[&make[..], &["--shop", ".", "-o", name], more].concat());
    assert_eq!(ran.exit, 0, "{ran}");
    bench.file("prices.toml", own);
}

#[test]
fn every_copy_and_paper_is_its_own_and_the_same_bytes_on_the_same_day() {
    let bench = Bench::new().shop();
    quoted(&bench, demo::PRICES, "second.json", &["--rush"]);
    quoted(&bench, demo::PRICES, "third.json", &["--exempt"]);
    let three = ["quote.json", "second.json", "third.json"];
    let invoice = [&["quote.json"], &INVOICE[..]].concat();
    let mut all = Vec::new();
    for args in [
        &["quote.json"][..],
        &["quote.json", "--copy", "shop"],
        &["quote.json", "--paper", "a4"],
        &invoice,
        &three,
        &[&three[..], &["--copy", "shop"]].concat(),
    ] {
        let once = made(&bench, args, "one.pdf");
        assert_eq!(once, made(&bench, args, "two.pdf"), "{args:?}");
        assert!(!all.contains(&once), "{args:?}");
        all.push(once);
    }
    // Inches go on letter.
    assert_eq!(
        made(&bench, &["quote.json", "--paper", "letter"], "x.pdf"),
        all[0]
    );
}

#[test]
fn nothing_is_written_in_a_dry_run() {
    let bench = Bench::new().shop();
    let before = bench.names();
    let ran = print(&bench, &["quote.json", "-o", "q.pdf", "--dry-run"]);
    let told = &ran.stderr;
    assert!(
        ran.exit == 0 && told.starts_with("q.pdf: would be written") && ran.stdout.is_empty(),
        "{ran}"
    );
    assert_eq!(bench.names(), before);
}

/// What stops a paper is told with what to do, and nothing is written.
#[test]
fn refusals_name_the_way_out() {
    let bench = Bench::new().shop();
    let silent = demo::PRICES.replace("untaxed = ", "# untaxed = ");
    quoted(&bench, &silent, "silent.json", &["--exempt"]);
    let catalogue = bench.text("catalogue.toml");
    bench.file("catalogue.toml", catalogue.replace("USD", "EUR"));
    let euro = demo::PRICES.replace("USD", "EUR");
    quoted(&bench, &euro, "euro.json", &[]);
    bench.file("catalogue.toml", catalogue);
    bench.file("words.json", "a shopping list\n");
    let before = bench.names();
    let one = |more: &[&'static str]| [&["quote.json"], &INVOICE[..], more].concat();
    for (name, args) in [
        ("no_file", vec!["missing.json"]),
        ("no_quote", vec!["words.json"]),
        ("two_currencies", vec!["quote.json", "euro.json"]),
        ("seven", vec!["quote.json"; 7]),
        ("invoice_of_two", one(&["quote.json"])),
        ("no_buyer", vec!["quote.json", "--invoice", "R-1"]),
        ("paid_more", one(&["--paid", "90000.00 USD"])),
        ("paid_otherwise", one(&["--paid", "1.00 EUR"])),
        ("no_reason", [&["silent.json"], &INVOICE[..]].concat()),
    ] {
        let ran = print(&bench, &[&args[..], &["-o", "q.pdf"]].concat());
        assert_ne!(ran.exit, 0, "{name}: {ran}");
        insta::assert_snapshot!(name, ran);
        assert_eq!(bench.names(), before, "{name}");
    }
    // A quote is never written over.
    let ran = print(&bench, &["quote.json", "-o", "quote.json"]);
    insta::assert_snapshot!("onto_itself", ran);
}

/// What was agreed is printed, and that it comes out otherwise today is told.
#[test]
fn a_quote_whose_numbers_moved_is_printed_as_given() {
    let bench = Bench::new().shop();
    let quote = bench.text("quote.json");
    let mut moved: serde_json::Value = serde_json::from_str(&quote).expect("a quote");
    moved["rules"]["minimum_order"] = "9000.00 USD".into();
    bench.file("moved.json", moved.to_string());
    let ran = print(&bench, &["moved.json", "-o", "moved.pdf"]);
    insta::assert_snapshot!("moved", ran);
    assert!(bench.names().contains(&"moved.pdf".to_owned()));
}
