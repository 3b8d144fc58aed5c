//! Laws that hold for every price: sums, deposits, discounts, order.

use std::sync::Arc;

use measure::Money;
use pricing::{
    Amount, Asked, Deposit, Discount, Priced, Rate, RuleSet, Shown, TaxRate, Way, price,
};
use proptest::prelude::*;
use sizing::Sizes;
use trade::{Catalogue, Job};
use working::Decimal;

use crate::demo_jobs::{catalogue, job, rules, sizes};
use crate::worked_quotes::day;

/// A rule set with terms drawn at random on the demo's rules.
#[derive(Clone, Debug)]
struct Terms {
    discounts: Vec<i64>,
    tax: Vec<i64>,
    /// Inside; line by line.
    tax_is: [bool; 2],
    shown: Option<i64>,
    deposit: i64,
    /// Rush; exempt.
    asked: [bool; 2],
    least: i64,
    way: Way,
}

fn way() -> impl Strategy<Value = Way> {
    prop_oneof![
        Just(Way::HalfAway),
        Just(Way::HalfEven),
        Just(Way::Up),
        Just(Way::Down),
        Just(Way::TowardZero),
    ]
}

fn terms() -> impl Strategy<Value = Terms> {
    (
        prop::collection::vec(0_i64..=1_000, 0..3),
        prop::collection::vec(0_i64..=300, 0..3),
        any::<[bool; 2]>(),
        prop::option::of(1_i64..=1_000),
        0_i64..=1_000,
        any::<[bool; 2]>(),
        0_i64..60_000,
        way(),
    )
        .prop_map(
            |(discounts, tax, tax_is, shown, deposit, asked, least, way)| Terms {
                discounts,
                tax,
                tax_is,
                shown,
                deposit,
                asked,
                least,
                way,
            },
        )
}

/// A share in thousandths.
fn share(thousandths: i64) -> Rate {
    Rate(Decimal::new(thousandths, 3))
}

fn with(terms: &Terms, rules: &RuleSet) -> (RuleSet, Asked) {
    let mut rules = rules.clone();
    let money = |minor: i64| Amount(Money::new(minor, rules.currency()));
    let step = terms.shown.map(money);
    let least = money(terms.least);
    rules.rounding.shown = step.map(|step| Shown {
        step,
        way: terms.way,
    });
    rules.rounding.discount = terms.way;
    rules.rounding.tax = terms.way;
    rules.minimum_order = Some(least);
    rules.deposit = Some(Deposit {
        share: share(terms.deposit),
        step: None,
        way: Way::Up,
    });
    rules.tax.inside = terms.tax_is[0];
    rules.tax.per_line = terms.tax_is[1];
    let rate = |(at, thousandths): (usize, &i64)| TaxRate {
        says: format!("Tax {at}"),
        share: share(*thousandths),
        on: if at == 0 {
            vec![pricing::Class::Goods, pricing::Class::Rush]
        } else {
            Vec::new()
        },
        category: pricing::TaxCategory::S,
    };
    rules.tax.rates = terms.tax.iter().enumerate().map(rate).collect();
    let discount = |(at, thousandths): (usize, &i64)| Discount {
        id: format!("d{at}"),
        says: "Less".to_owned(),
        share: share(*thousandths),
        on: Vec::new(),
    };
    rules.discount = terms.discounts.iter().enumerate().map(discount).collect();
    let asked = Asked {
        rush: terms.asked[0],
        exempt: terms.asked[1],
        discounts: (0..terms.discounts.len())
            .map(|at| format!("d{at}"))
            .collect(),
        ..Asked::on(day())
    };
    (rules, asked)
}

struct Piece {
    job: Job,
    sizes: Sizes,
    catalogue: Catalogue,
    rules: RuleSet,
}

impl Piece {
    fn named(name: &str) -> Self {
        let (job, catalogue) = (job(name), catalogue());
        let sizes = sizes(&job, &catalogue);
        Self {
            job,
            sizes,
            catalogue,
            rules: rules(),
        }
    }

    fn priced(&self, rules: &RuleSet, asked: &Asked) -> Priced {
        price(&self.job, &self.sizes, &self.catalogue, rules, asked)
    }
}

fn minor(money: Money) -> i64 {
    money.minor
}

fn adds_up(priced: &Priced) {
    let totals = &priced.totals;
    let lines: i64 = priced.lines.iter().map(|line| line.amount.minor).sum();
    assert_eq!(lines, totals.subtotal.minor, "lines sum to the subtotal");
    let allotted: i64 = priced.lines.iter().map(|line| minor(line.discount)).sum();
    assert_eq!(
        allotted,
        minor(totals.discount()),
        "discounts are allotted whole"
    );
    for line in &priced.lines {
        assert!(
            minor(line.discount) >= 0 && minor(line.net()) >= 0,
            "{}",
            line.name
        );
    }
    for tax in &totals.taxes {
        assert!(minor(tax.amount) >= 0, "no discount makes tax negative");
    }
    let extra = |worked: Option<working::Worked<Money>>| worked.map_or(0, |own| own.minor);
    let mut net = lines + extra(totals.rush) + extra(totals.minimum) - allotted;
    net += totals.rounding.map_or(0, minor) - totals.relief.map_or(0, minor);
    if totals.tax_inside {
        net -= minor(totals.tax());
    }
    assert_eq!(net, totals.net.minor, "net");
    assert_eq!(net + minor(totals.tax()), totals.total.minor, "total");
    let paid = extra(totals.deposit) + extra(totals.balance);
    assert_eq!(paid, totals.total.minor, "a deposit loses nothing");
    let groups: i64 = totals.groups.iter().map(|group| minor(group.base)).sum();
    let held = if totals.tax_inside {
        minor(totals.tax())
    } else {
        0
    };
    assert_eq!(groups, net + held, "what is taxed alike sums to the net");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(120))]

    #[test]
    fn every_price_adds_up(terms in terms(), which in 0..demo::JOBS.len()) {
        let piece = Piece::named(demo::JOBS[which].name);
        let (rules, asked) = with(&terms, &piece.rules);
        let priced = piece.priced(&rules, &asked);
        prop_assert_eq!(&priced.faults, &[]);
        adds_up(&priced);
        prop_assert_eq!(priced.working.recheck(), []);
        if let Some(step) = terms.shown {
            prop_assert_eq!(priced.totals.total.minor % step, 0);
        }
    }

    #[test]
    fn the_order_of_rules_does_not_matter(terms in terms(), turn in 0_usize..30) {
        let piece = Piece::named("harbour");
        let (rules, asked) = with(&terms, &piece.rules);
        let mut turned = rules.clone();
        let by = turn % turned.rules.len();
        turned.rules.rotate_left(by);
        turned.rules.reverse();
        let (one, other) = (piece.priced(&rules, &asked), piece.priced(&turned, &asked));
        prop_assert_eq!(one.totals.total.value, other.totals.total.value);
        prop_assert_eq!(minor(one.totals.tax()), minor(other.totals.tax()));
        let discounts = |priced: &Priced| {
            let mut all: Vec<(String, i64)> = priced
                .lines
                .iter()
                .map(|line| (line.rule.id.clone(), minor(line.discount)))
                .collect();
            all.sort();
            all
        };
        prop_assert_eq!(discounts(&one), discounts(&other));
    }
}

#[test]
fn a_rule_that_would_charge_twice_is_a_fault() {
    let piece = Piece::named("harbour");
    let mut rules = piece.rules.clone();
    let mut second = rules.rule("glazing").expect("a rule").as_ref().clone();
    second.id = "glazing-again".to_owned();
    rules.rules.push(Arc::new(second));
    let priced = piece.priced(&rules, &Asked::on(day()));
    assert!(priced.is_refused());
    assert_eq!(
        priced.faults[0].sentence(),
        "Glazing: the rules glazing and glazing-again all charge for it. Narrow the `when` of all but one, or let one come on top with `on_top = true`."
    );
    let overlap = rules.check(day());
    assert_eq!(overlap[0].code, "rules.overlap");
}

#[test]
fn what_no_rule_charges_for_is_a_fault() {
    let piece = Piece::named("harbour");
    let mut rules = piece.rules.clone();
    rules.rules.retain(|rule| rule.id != "backing");
    let priced = piece.priced(&rules, &Asked::on(day()));
    assert_eq!(
        priced.faults[0].sentence(),
        "Backing: no rule charges for it (foam-5). Add a rule with `charges = \"backing\"` that applies to it, or name \"backing\" in the `includes` of another."
    );
}

#[test]
fn a_material_without_a_cost_is_a_fault() {
    let piece = Piece::named("harbour");
    let bare = Catalogue::starter();
    let sizes = sizes(&piece.job, &bare);
    let priced = price(&piece.job, &sizes, &bare, &piece.rules, &Asked::on(day()));
    assert!(priced.is_refused());
    assert_eq!(
        priced.faults[0].sentence(),
        "Frame: oak-square-1 has no cost on 2026-11-25; the rule that charges for it reckons from the cost. Add a [[material.cost]] to it in the catalogue, or give the rule a price."
    );
    assert!(priced.shop.cost.is_none() && priced.shop.margin.is_none());
}
