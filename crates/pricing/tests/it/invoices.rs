//! Structured invoices, by the calculation rules of EN 16931-1:2017 (BR-CO-10 to BR-CO-17 and the rules of the
//! categories of tax; wording from memory). The XML is read back by an XML reader; the suite holds it against the
//! published schema of UBL 2.1 and the published rules of EN 16931.

use measure::Money;
use pricing::invoice::{Invoice, InvoiceFault, InvoiceHeading, Party, invoice};
use pricing::{Asked, Priced, Rate, RuleSet, TaxCategory, TaxRate, Untaxed, price};
use roxmltree::Document;
use working::Decimal;

use crate::demo_jobs::{catalogue, job, rules, sizes};
use crate::worked_quotes::day;

fn heading(paid: i64, rules: &RuleSet) -> InvoiceHeading {
    InvoiceHeading {
        number: "R-2026-0117".to_owned(),
        given: day(),
        due: day().after(14).expect("a day"),
        note: Some("Framing & glazing <by hand>".to_owned()),
        buyer_reference: None,
        seller: Party {
            name: "Lanternfield Frames".to_owned(),
            street: Some("4 Tallow Yard".to_owned()),
            town: Some("Lanternfield".to_owned()),
            country: "GB".to_owned(),
            vat_number: Some("GB000000000".to_owned()),
            ..Party::default()
        },
        buyer: Party {
            name: "Saltmarrow Harbour Office".to_owned(),
            country: "GB".to_owned(),
            ..Party::default()
        },
        paid: Money::new(paid, rules.currency()),
    }
}

/// The demo's rules under a plain value added tax.
fn taxed(share: i64, inside: bool) -> RuleSet {
    let mut rules = rules();
    rules.tax.inside = inside;
    rules.tax.rates = vec![TaxRate {
        says: "VAT".to_owned(),
        share: Rate(Decimal::new(share, 2)),
        on: Vec::new(),
        category: TaxCategory::S,
    }];
    rules.rounding.shown = Some(pricing::Shown {
        step: pricing::Amount(Money::new(50, rules.currency())),
        way: pricing::Way::Up,
    });
    rules
}

fn priced(name: &str, rules: &RuleSet, exempt: bool) -> Priced {
    let (job, catalogue) = (job(name), catalogue());
    let sizes = sizes(&job, &catalogue);
    let asked = Asked {
        rush: true,
        exempt,
        discounts: vec!["series".to_owned()],
        ..Asked::on(day())
    };
    price(&job, &sizes, &catalogue, rules, &asked)
}

fn holds(invoice: &Invoice, priced: &Priced, name: &str) {
    for law in invoice.laws() {
        assert_eq!(law.stated, law.given, "{name}: {}", law.name);
    }
    let due = invoice.sums.due.minor + invoice.sums.paid.minor;
    assert_eq!(
        due, priced.totals.total.minor,
        "{name}: what is due is the price"
    );
    for line in &invoice.lines {
        let quantity = Decimal::read(&line.quantity).expect("a number");
        let exact = i128::from(line.price.minor) * i128::from(quantity.top());
        let stated = i128::from(line.net.minor) * i128::from(quantity.bottom());
        assert_eq!(exact, stated, "{name}: {} × {}", line.quantity, line.price);
    }
    assert!(
        invoice.sums.rounding.minor.abs() <= 2,
        "{name}: a cent or two"
    );
}

#[test]
fn every_demo_job_is_invoiced_by_the_rules() {
    for (share, inside) in [(20, false), (20, true), (19, false), (7, true)] {
        let rules = taxed(share, inside);
        for job in demo::JOBS {
            let priced = priced(job.name, &rules, false);
            let made = invoice(&priced, &rules, heading(1_000, &rules)).expect(job.name);
            holds(&made, &priced, job.name);
        }
    }
}

#[test]
fn two_rates_and_an_exempt_buyer() {
    let mut rules = rules();
    rules.tax.untaxed = Some(Untaxed {
        category: TaxCategory::E,
        reason: Some("Exempt".to_owned()),
    });
    let two = priced("harbour", &rules, false);
    let made = invoice(&two, &rules, heading(0, &rules)).expect("two rates, one on each line");
    holds(&made, &two, "two rates");
    assert_eq!(made.breakdown.len(), 2);
    for inside in [false, true] {
        rules.tax.inside = inside;
        let exempt = priced("harbour", &rules, true);
        let made = invoice(&exempt, &rules, heading(0, &rules)).expect("exempt");
        holds(&made, &exempt, "exempt");
        assert_eq!(made.breakdown.len(), 1);
        assert_eq!(made.sums.tax.minor, 0);
    }
}

#[test]
fn what_an_invoice_can_not_say_is_refused() {
    let mut rules = taxed(20, false);
    let priced_once = priced("harbour", &rules, false);
    let refused =
        |heading: InvoiceHeading| invoice(&priced_once, &rules, heading).expect_err("refused");
    let mut nameless = heading(0, &rules);
    nameless.buyer.name = " ".to_owned();
    assert_eq!(
        refused(nameless),
        InvoiceFault::Missing {
            what: "who buys",
            term: "BT-44"
        }
    );
    let mut unnumbered = heading(0, &rules);
    unnumbered.seller.vat_number = None;
    assert_eq!(refused(unnumbered), InvoiceFault::NoVatNumber);
    let second = TaxRate {
        says: "City".to_owned(),
        ..rules.tax.rates[0].clone()
    };
    rules.tax.rates.push(second);
    let stacked = priced("harbour", &rules, false);
    let refused = invoice(&stacked, &rules, heading(0, &rules)).expect_err("stacked");
    assert!(matches!(refused, InvoiceFault::Stacked { .. }), "{refused}");
}

/// The elements of an invoice in the order of UBL 2.1.
const ORDER: [&str; 14] = [
    "CustomizationID",
    "ID",
    "IssueDate",
    "DueDate",
    "InvoiceTypeCode",
    "Note",
    "DocumentCurrencyCode",
    "BuyerReference",
    "AccountingSupplierParty",
    "AccountingCustomerParty",
    "AllowanceCharge",
    "TaxTotal",
    "LegalMonetaryTotal",
    "InvoiceLine",
];

#[test]
fn the_xml_reads_back_with_its_totals() {
    let rules = taxed(20, false);
    let priced = priced("harbour", &rules, false);
    let made = invoice(&priced, &rules, heading(1_000, &rules)).expect("it is made");
    let text = made.to_ubl();
    let document = Document::parse(&text).expect("it is XML");
    let root = document.root_element();
    assert_eq!(root.tag_name().name(), "Invoice");
    let children: Vec<&str> = root
        .children()
        .filter(roxmltree::Node::is_element)
        .map(|node| node.tag_name().name())
        .collect();
    let places: Vec<usize> = children
        .iter()
        .map(|name| ORDER.iter().position(|known| known == name).expect(name))
        .collect();
    assert!(places.is_sorted(), "{children:?}");
    let text_of = |name: &str| {
        let found = document
            .descendants()
            .find(|node| node.tag_name().name() == name);
        found.and_then(|node| node.text()).expect(name).to_owned()
    };
    assert_eq!(text_of("Note"), "Framing & glazing <by hand>");
    assert_eq!(text_of("PayableAmount"), made.sums.due.number());
    assert_eq!(text_of("TaxInclusiveAmount"), made.sums.with_tax.number());
    assert_eq!(text_of("Percent"), "20");
    let lines = children
        .iter()
        .filter(|name| **name == "InvoiceLine")
        .count();
    assert_eq!(lines, made.lines.len());
}
