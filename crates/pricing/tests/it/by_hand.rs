//! Prices worked out beforehand by the trade's order of reckoning (unit, line, sum, rush, discount, least, tax, shown
//! price, deposit) with a decimal library of another language (common practice, no source; the prices are invented).

use pricing::{Asked, Priced, RuleSet, price};
use sizing::derive;
use trade::{Catalogue, Job, Settings, Units};

use crate::worked_quotes::day;

/// A floater whose moulding is charged at 3.0 m.
fn floater(cost: &str) -> Job {
    let text = format!(
        "rabbet = 1\nunits = \"mm\"\n\
         [[art]]\nmedium = \"canvas\"\nwidth = \"600\"\nheight = \"800\"\nthickness = \"38\"\n\
         [[material]]\ncode = \"tray\"\nkind = \"moulding\"\n\
         [[material.cost]]\nprice = \"{cost}\"\nper = \"metre\"\nsince = \"2026-01-01\"\n\
         [[frame]]\nrole = \"floater\"\nmoulding = \"tray\"\ngap = \"8\"\nwall = \"8\"\nledge = \"28\"\n\
         rabbet_depth = \"41\"\n[attachment]\nhold = \"mechanical\"\n\
         [settings]\n\"moulding.charge_rule\" = \"cut list\"\n"
    );
    Job::read(text.as_bytes()).expect("the job reads")
}

/// Rules in a currency: the terms, then what is charged for frame, fitting and work.
fn rules(currency: &str, terms: &str, charged: &[(&str, &str)]) -> RuleSet {
    let mut text = format!(
        "prices = 1\nname = \"Test\"\ncurrency = \"{currency}\"\nholds_from = \"2026-01-01\"\n{terms}\n"
    );
    for (part, way) in charged {
        let rule = format!(
            "[[rule]]\nid = \"{part}\"\nsays = \"It\"\nwhy = \"so\"\ncharges = \"{part}\"\n{way}\n"
        );
        text.push_str(&rule);
    }
    RuleSet::read(&text).unwrap_or_else(|faults| panic!("{faults:?}\n{text}"))
}

fn priced(cost: &str, rules: &RuleSet, asked: &Asked) -> Priced {
    let (job, catalogue) = (floater(cost), Catalogue::starter());
    let settings = Settings::defaults(Units::Millimetres);
    let sizes = derive(&job, &catalogue, &settings).expect("it derives");
    price(&job, &sizes, &catalogue, rules, asked)
}

/// Lines, then sum, net, taxes, total, deposit.
fn check(priced: &Priced, lines: &[&str], rest: &str) {
    assert_eq!(priced.faults, []);
    let found: Vec<String> = { priced.lines.iter() }
        .map(|line| line.amount.value.number())
        .collect();
    assert_eq!(found, lines);
    let totals = &priced.totals;
    let sum = priced.working.find("price.sum").expect("the sum");
    let taxes: Vec<String> = { totals.taxes.iter() }
        .map(|tax| tax.amount.number())
        .collect();
    let deposit = totals.deposit.map(|deposit| deposit.value.number());
    let said = format!(
        "sum {}, net {}, tax {}, total {}, deposit {}",
        sum.value,
        totals.net.value.number(),
        taxes.join(" + "),
        totals.total.value.number(),
        deposit.unwrap_or_default()
    );
    assert_eq!(said, rest);
    assert_eq!(priced.working.recheck(), []);
}

fn each(price: &str) -> String {
    format!("each = {{ price = \"{price}\" }}")
}

const HALF: &str = "[deposit]\nshare = \"50 %\"\n";

#[test]
fn currencies_without_and_with_three_decimals() {
    let terms = format!(
        "hour = \"6333 JPY\"\n[rounding]\nshown = {{ step = \"10 JPY\", way = \"up\" }}\n{HALF}\
         [[tax.rate]]\nsays = \"Tax\"\nshare = \"10 %\"\n"
    );
    let labour = ("fitting", "minutes = { each = 50 }");
    let length = ("frame", "length = { waste = \"12 %\", factor = \"2.75\" }");
    let yen = rules("JPY", &terms, &[length, labour]);
    check(
        &priced("812 JPY", &yen, &Asked::on(day())),
        &["7503", "5278"],
        "sum 12781 JPY, net 12782, tax 1278, total 14060, deposit 7030",
    );
    let terms = "hour = \"9.125 KWD\"\n[deposit]\nshare = \"33 %\"\n[[tax.rate]]\nsays = \"Tax\"\nshare = \"5 %\"\n";
    let cost = ("frame", "cost = { waste = \"15 %\", factor = \"2.6\" }");
    let dinars = rules("KWD", terms, &[cost, labour]);
    check(
        &priced("1.2345 KWD", &dinars, &Asked::on(day())),
        &["11.073", "7.604"],
        "sum 18.677 KWD, net 18.677, tax 0.934, total 19.611, deposit 6.472",
    );
}

/// The tax inside a shown price is that of the shown price, also where the tax before it fell on half a cent.
#[test]
fn tax_inside_a_shown_price() {
    let terms = "[rounding]\nshown = { step = \"0.50 GBP\", way = \"up\" }\n\
                 [tax]\ninside = true\n[[tax.rate]]\nsays = \"VAT\"\nshare = \"20 %\"\n";
    let pounds = rules("GBP", terms, &[("frame", &each("12.33 GBP"))]);
    check(
        &priced("5.20 GBP", &pounds, &Asked::on(day())),
        &["12.33"],
        "sum 12.33 GBP, net 10.42, tax 2.08, total 12.50, deposit ",
    );
}

#[test]
fn two_rates_inside() {
    let rates = "[tax]\ninside = true\n[[tax.rate]]\nsays = \"A\"\nshare = \"5 %\"\n\
                 [[tax.rate]]\nsays = \"B\"\nshare = \"9.975 %\"\n";
    let plain = rules("CAD", rates, &[("frame", &each("100.01 CAD"))]);
    check(
        &priced("5.20 CAD", &plain, &Asked::on(day())),
        &["100.01"],
        "sum 100.01 CAD, net 86.98, tax 4.35 + 8.68, total 100.01, deposit ",
    );
    let shown =
        format!("[rounding]\nshown = {{ step = \"1.00 CAD\", way = \"half-away\" }}\n{rates}");
    let shown = rules("CAD", &shown, &[("frame", &each("100.53 CAD"))]);
    check(
        &priced("5.20 CAD", &shown, &Asked::on(day())),
        &["100.53"],
        "sum 100.53 CAD, net 87.85, tax 4.39 + 8.76, total 101.00, deposit ",
    );
}

#[test]
fn tax_line_by_line() {
    let terms = "[tax]\nper_line = true\n[[tax.rate]]\nsays = \"Tax\"\nshare = \"8.25 %\"\n";
    // On the whole it would be 2.50.
    let each = each("10.10 USD");
    let charged = [("frame", &*each), ("fitting", &each), ("work", &each)];
    check(
        &priced(
            "5.20 USD",
            &rules("USD", terms, &charged),
            &Asked::on(day()),
        ),
        &["10.10", "10.10", "10.10"],
        "sum 30.30 USD, net 30.30, tax 2.49, total 32.79, deposit ",
    );
}

#[test]
fn rush_discount_least_and_untaxed_labour() {
    let terms = "minimum_order = \"150.00 GBP\"\n[rush]\nsays = \"Rush\"\nwhy = \"so\"\nshare = \"25 %\"\n\
                 [[discount]]\nid = \"less\"\nsays = \"Less\"\nshare = \"15 %\"\non = [\"frame\"]\n\
                 [[tax.rate]]\nsays = \"VAT\"\nshare = \"20 %\"\non = [\"goods\", \"rush\"]\n";
    let (frame, fitting) = (each("80.05 GBP"), each("37.50 GBP"));
    let fitting = format!("class = \"labour\"\n{fitting}");
    let rules = rules("GBP", terms, &[("frame", &frame), ("fitting", &fitting)]);
    let asked = Asked {
        rush: true,
        discounts: vec!["less".to_owned(), "less".to_owned()],
        ..Asked::on(day())
    };
    check(
        &priced("5.20 GBP", &rules, &asked),
        &["80.05", "37.50"],
        "sum 150.00 GBP, net 150.00, tax 19.49, total 169.49, deposit ",
    );
}

#[test]
fn half_to_even_exempt_and_a_deposit_beyond_the_total() {
    let terms = "[rounding]\ndiscount = \"half-even\"\n[deposit]\nshare = \"50 %\"\nstep = \"50.00 USD\"\n\
                 [[discount]]\nid = \"less\"\nsays = \"Less\"\nshare = \"10 %\"\n";
    let asked = Asked {
        discounts: vec!["less".to_owned()],
        ..Asked::on(day())
    };
    check(
        &priced(
            "5.20 USD",
            &rules("USD", terms, &[("frame", &each("0.25 USD"))]),
            &asked,
        ),
        &["0.25"],
        "sum 0.23 USD, net 0.23, tax , total 0.23, deposit 0.23",
    );
    let terms = "[rounding]\nshown = { step = \"0.05 GBP\", way = \"half-away\" }\n\
                 [tax]\ninside = true\n[[tax.rate]]\nsays = \"VAT\"\nshare = \"20 %\"\n";
    let asked = Asked {
        exempt: true,
        ..Asked::on(day())
    };
    check(
        &priced(
            "5.20 GBP",
            &rules("GBP", terms, &[("frame", &each("99.99 GBP"))]),
            &asked,
        ),
        &["99.99"],
        "sum 99.99 GBP, net 83.30, tax , total 83.30, deposit ",
    );
}

#[test]
fn an_exchanged_cost_at_the_top_of_its_tier() {
    let terms = "[[exchange]]\nfrom = \"EUR\"\nrate = \"0.8533\"\n";
    let tiers = "cost = { waste = \"10 %\", factors = [{ to = \"4.44 GBP\", factor = \"3\" }, { factor = \"2\" }] }";
    check(
        &priced(
            "5.20 EUR",
            &rules("GBP", terms, &[("frame", tiers)]),
            &Asked::on(day()),
        ),
        &["43.93"],
        "sum 43.93 GBP, net 43.93, tax , total 43.93, deposit ",
    );
}

/// Else the tax of one of the sums would fall below zero.
#[test]
fn a_price_shown_as_nothing_is_refused() {
    let terms = "[rounding]\nshown = { step = \"1.00 GBP\", way = \"down\" }\n\
                 [[tax.rate]]\nsays = \"VAT\"\nshare = \"20 %\"\n";
    let pounds = rules("GBP", terms, &[("frame", &each("0.40 GBP"))]);
    let small = priced("5.20 GBP", &pounds, &Asked::on(day()));
    assert!(small.is_refused());
    assert_eq!(small.faults[0].code, "pricing.shown_nothing");
    let pounds = rules("GBP", terms, &[("frame", &each("0.90 GBP"))]);
    assert!(!priced("5.20 GBP", &pounds, &Asked::on(day())).is_refused());
    // Three sums, each taxed its own way, the largest 0.67; 0.99 would be taken off it.
    let terms = "[rounding]\nshown = { step = \"1.00 GBP\", way = \"down\" }\n\
                 [tax]\ninside = true\n[[tax.rate]]\nsays = \"A\"\nshare = \"20 %\"\non = [\"goods\"]\n\
                 [[tax.rate]]\nsays = \"B\"\nshare = \"5 %\"\non = [\"labour\"]\n";
    let of = |class: &str, price: &str| format!("class = \"{class}\"\n{}", each(price));
    let (goods, labour) = (of("goods", "0.66 GBP"), of("labour", "0.66 GBP"));
    let rush = of("rush", "0.67 GBP");
    let charged = [("frame", &*goods), ("fitting", &labour), ("work", &rush)];
    let three = priced(
        "5.20 GBP",
        &rules("GBP", terms, &charged),
        &Asked::on(day()),
    );
    assert_eq!(three.faults[0].code, "pricing.shown_nothing");
}
