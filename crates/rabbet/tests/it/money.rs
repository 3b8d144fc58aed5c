//! Prices, alternatives, budgets, rule sets, quotes and invoices of the invented shop.

use crate::bench::{Bench, Ran};

/// A bench with the invented shop in `shop`.
fn bench() -> Bench {
    let bench = Bench::new();
    let ran = bench.run(&["demo", "write", "shop"]);
    assert_eq!(ran.exit, 0, "{ran}");
    bench
}

const DAY: [&str; 4] = ["--shop", "shop", "--on", "2026-11-25"];

fn run(bench: &Bench, args: &[&str]) -> Ran {
    bench.run(&[args, &DAY].concat())
}

fn quote(bench: &Bench) {
    let make = ["quote", "make", "shop/jobs/harbour.toml", "--number", "Q-1"];
    let ran = run(bench, &[&make[..], &["-o", "quote.json"]].concat());
    assert_eq!(ran.exit, 0, "{ran}");
}

#[test]
fn the_customers_price_and_the_shops() {
    let bench = bench();
    let job = ["job", "price", "shop/jobs/harbour.toml"];
    let customers = run(&bench, &job);
    insta::assert_snapshot!("money_price", customers);
    for word in ["Margin", "Cost", "Minutes"] {
        assert!(!customers.stdout.contains(word), "{customers}");
    }
    insta::assert_snapshot!(
        "money_price_shop",
        run(&bench, &[&job[..], &["--shop-copy"]].concat())
    );
}

#[test]
fn haste_discounts_and_exemption_are_told() {
    let bench = bench();
    let more = ["--rush", "--discount", "artist", "--exempt"];
    let job = ["job", "price", "shop/jobs/harbour.toml"];
    insta::assert_snapshot!(
        "money_price_asked",
        run(&bench, &[&job[..], &more].concat())
    );
    let unknown = run(&bench, &[&job[..], &["--discount", "artists"]].concat());
    assert!(unknown.stderr.contains("artist"), "{unknown}");
}

#[test]
fn an_amount_opens_its_working_down_to_the_art() {
    let bench = bench();
    let job = ["job", "price", "shop/jobs/harbour.toml"];
    let ran = run(&bench, &[&job[..], &["--why", "price.total"]].concat());
    assert_eq!(ran.exit, 0, "{ran}");
    insta::assert_snapshot!("money_price_why", ran);
}

#[test]
fn as_json_money_is_minor_units_with_text() {
    let bench = bench();
    let job = ["job", "price", "shop/jobs/harbour.toml", "--json"];
    let json = run(&bench, &job).json();
    let total = &json["totals"]["total"];
    assert!(total["minor"].is_i64(), "{json:#}");
    assert_eq!(total["currency"], "USD");
    assert!(json.get("shop").is_none(), "the customer's has no costs");
    let lines = json["lines"].as_array().expect("lines");
    let sum: i64 = lines
        .iter()
        .filter_map(|line| line["amount"]["minor"].as_i64())
        .sum();
    assert_eq!(Some(sum), json["totals"]["subtotal"]["minor"].as_i64());
    let shops = run(&bench, &[&job[..], &["--shop-copy"]].concat()).json();
    assert!(shops["shop"]["minutes"].is_i64(), "{shops:#}");
}

#[test]
fn without_prices_it_is_told_how_to_give_them() {
    let bench = Bench::new();
    insta::assert_snapshot!("money_none", bench.run(&["job", "price", "print.toml"]));
    insta::assert_snapshot!(
        "money_no_shop",
        bench.run(&["job", "price", "print.toml", "--shop", "nowhere"])
    );
}

#[test]
fn alternatives_stand_side_by_side() {
    let bench = bench();
    let text = bench.text("shop/jobs/harbour.toml");
    let job = run(
        &bench,
        &["job", "compare", "shop/jobs/harbour.toml", "print.toml"],
    );
    insta::assert_snapshot!("money_compare", job);
    bench.file("same.toml", text);
    let same = run(
        &bench,
        &[
            "job",
            "compare",
            "shop/jobs/harbour.toml",
            "same.toml",
            "--json",
        ],
    )
    .json();
    assert_eq!(
        same["alternatives"][1]["difference"]["minor"], 0,
        "{same:#}"
    );
    assert_eq!(same["alternatives"][1]["differs"], serde_json::json!([]));
    let seven = ["print.toml"; 7];
    let ran = run(&bench, &[&["job", "compare"], &seven[..]].concat());
    assert_eq!(ran.exit, 1, "{ran}");
    assert!(ran.stderr.contains("at most 6"), "{ran}");
}

#[test]
fn a_budget_is_met_by_the_smallest_change_and_the_changed_job_costs_that() {
    let bench = bench();
    let job = ["job", "budget", "shop/jobs/harbour.toml"];
    let price = run(
        &bench,
        &["job", "price", "shop/jobs/harbour.toml", "--json"],
    )
    .json();
    let before = price["totals"]["total"]["minor"].as_i64().expect("a total");
    let ceiling = format!("{}.00 USD", before / 100 - 5);
    let asked = [&job[..], &["--ceiling", &ceiling]].concat();
    insta::assert_snapshot!("money_budget", run(&bench, &asked));
    let json = run(&bench, &[&asked[..], &["--json"]].concat()).json();
    let total = json["proposals"][0]["total"]["minor"]
        .as_i64()
        .expect("one");
    let apply = [&asked[..], &["--apply", "1", "-o", "cheaper.toml"]].concat();
    let ran = run(&bench, &apply);
    assert_eq!(ran.exit, 0, "{ran}");
    let after = run(&bench, &["job", "price", "cheaper.toml", "--json"]).json();
    assert_eq!(after["totals"]["total"]["minor"].as_i64(), Some(total));
    assert!(total < before);
    let ran = run(&bench, &[&asked[..], &["--apply", "99"]].concat());
    assert_eq!(ran.exit, 1, "{ran}");
}

#[test]
fn a_rule_set_is_looked_over() {
    let bench = bench();
    let check = |file: &str| bench.run(&["prices", "check", file, "--on", "2026-09-01"]);
    insta::assert_snapshot!("money_check", check("shop/prices.toml"));
    let rules = bench.text("shop/prices.toml");
    bench.file(
        "broken.toml",
        rules.replace("share = \"25 %\"", "share = 0.25"),
    );
    insta::assert_snapshot!("money_check_broken", check("broken.toml"));
}

#[test]
fn new_rules_are_tried_on_jobs_and_on_quotes_given() {
    let bench = bench();
    quote(&bench);
    let rules = bench.text("shop/prices.toml");
    bench.file(
        "new.toml",
        rules.replace("hour = \"66.00 USD\"", "hour = \"72.00 USD\""),
    );
    let files = ["shop/jobs/harbour.toml", "quote.json"];
    let args = [
        &["prices", "compare", "shop/prices.toml", "new.toml"],
        &files[..],
    ]
    .concat();
    let ran = run(&bench, &args);
    insta::assert_snapshot!("money_rules_compared", ran);
    let json = run(&bench, &[&args[..], &["--json"]].concat()).json();
    let differences: Vec<_> = (0..2)
        .map(|at| json["pieces"][at]["difference"]["minor"].as_i64())
        .collect();
    assert!(differences[0] > Some(0), "dearer hours: {json:#}");
    assert_eq!(
        differences[0], differences[1],
        "the same piece, asked alike"
    );
}

#[test]
fn a_quote_stays_what_it_is_when_the_shop_becomes_dearer() {
    let bench = bench();
    quote(&bench);
    let show = bench.run(&["quote", "show", "quote.json"]);
    insta::assert_snapshot!("money_quote", show);
    let costs = bench.text("shop/catalogue.toml");
    bench.file("shop/catalogue.toml", costs.replace("0.95 USD", "9.95 USD"));
    let later = bench.run(&["quote", "show", "quote.json", "--shop", "shop"]);
    assert_eq!(later.stdout, show.stdout);
    let json = bench.run(&["quote", "show", "quote.json", "--json"]).json();
    assert_eq!(json["verdict"]["word"], "same");
    assert!(
        json["quote"].get("shop").is_none(),
        "the customer's has no costs"
    );
    let why = bench.run(&["quote", "show", "quote.json", "--why", "price.total"]);
    assert_eq!(why.exit, 0, "{why}");
    let text = bench.text("quote.json");
    bench.file(
        "changed.json",
        text.replacen("\"amount\": \"", "\"amount\": \"1", 1),
    );
    insta::assert_snapshot!(
        "money_quote_changed",
        bench.run(&["quote", "show", "changed.json"])
    );
}

#[test]
fn a_piece_that_can_not_be_made_is_not_quoted() {
    let bench = bench();
    bench.too_deep("deep.toml");
    bench.file("prices.toml", bench.text("shop/prices.toml"));
    let make = [
        "quote",
        "make",
        "deep.toml",
        "--number",
        "Q-2",
        "-o",
        "deep.json",
    ];
    let ran = run(&bench, &make);
    let refused = run(&bench, &["job", "price", "deep.toml"]);
    assert_eq!(refused.exit, ran.exit, "{ran}\n{refused}");
    assert_eq!(bench.path("deep.json").exists(), ran.exit == 0, "{ran}");
}

#[test]
fn an_invoice_is_written_from_a_quote() {
    let bench = bench();
    quote(&bench);
    let seller = "name = \"Lanternfield Frames\"\ncountry = \"IE\"\nvat_number = \"IE0000000A\"\n";
    bench.file("seller.toml", seller);
    bench.file("buyer.toml", "name = \"A customer\"\ncountry = \"IE\"\n");
    let args = [
        "quote",
        "invoice",
        "quote.json",
        "--number",
        "1",
        "--seller",
        "seller.toml",
        "--buyer",
        "buyer.toml",
        "--on",
        "2026-12-01",
        "-o",
        "invoice.xml",
    ];
    let ran = bench.run(&args);
    assert_eq!(ran.exit, 0, "{ran}");
    let xml = bench.text("invoice.xml");
    let json = bench.run(&["quote", "show", "quote.json", "--json"]).json();
    let total = json["quote"]["totals"]["total"].as_str().expect("a total");
    let number = total.trim_end_matches(" USD");
    assert!(
        xml.contains("urn:oasis:names:specification:ubl:schema:xsd:Invoice-2"),
        "{xml}"
    );
    assert!(
        xml.contains(&format!("<cbc:PayableAmount currencyID=\"USD\">{number}<")),
        "{number}: {xml}"
    );
    bench.file("buyer.toml", "name = \"A customer\"\nland = \"IE\"\n");
    let ran = bench.run(&args);
    assert_eq!(ran.exit, 1, "{ran}");
    assert!(ran.stderr.contains("buyer.toml:2"), "{ran}");
}
