//! Quotes: frozen, opened, tampered with; alternatives, comparisons, budgets.

use measure::Money;
use pricing::{
    Asked, Budget, Heading, Past, Quote, QuoteFault, RuleSet, Saving, Verdict, alternatives,
    compare, price,
};
use sizing::{Severity, derive};
use trade::settings::Layer;
use trade::{Catalogue, Date, Settings, Units};

use crate::demo_jobs::{catalogue, job, rules, sizes};
use crate::worked_quotes::day;

fn heading() -> Heading {
    Heading {
        number: "2026-0117".to_owned(),
        given: day(),
    }
}

fn given(name: &str) -> Quote {
    let (job, catalogue) = (job(name), catalogue());
    let sizes = sizes(&job, &catalogue);
    let asked = Asked {
        discounts: vec!["series".to_owned()],
        ..Asked::on(day())
    };
    let given = Quote::give(&heading(), (&job, &sizes), &catalogue, &rules(), &asked);
    given.expect("it is priced").0
}

#[test]
fn every_demo_job_is_quoted_and_opens_the_same() {
    for job in demo::JOBS {
        let quote = given(job.name);
        let opened = Quote::open(&quote.to_json()).expect("it opens");
        assert_eq!(opened.verdict, Verdict::Same, "{}", job.name);
        assert_eq!(opened.quote, quote, "{}", job.name);
        assert_eq!(opened.quote.to_json(), quote.to_json());
    }
}

#[test]
fn a_quote_holds_what_the_day_held() {
    let quote = given("harbour");
    assert_eq!(quote.valid_to, Date::read("2026-12-24").ok());
    assert!(quote.stands_on(day()));
    assert!(!quote.stands_on(Date::read("2026-12-25").expect("a day")));
    // Its materials carry their costs, so a change of the catalogue does not touch it.
    let oak = quote
        .materials
        .iter()
        .find(|own| own.code == "oak-square-1");
    assert_eq!(oak.expect("the moulding").cost.len(), 1);
    assert!(quote.settings.contains_key("moulding.charge_rule"));
}

#[test]
fn a_quote_reckoned_otherwise_today_keeps_its_numbers() {
    let mut quote = given("harbour");
    // As if the program of that day had charged two cents less for the frame.
    let cents = |amount: &mut pricing::Amount, by: i64| amount.0.minor += by;
    cents(&mut quote.lines[0].amount, -2);
    cents(&mut quote.totals.subtotal, -2);
    cents(&mut quote.totals.net, -2);
    cents(&mut quote.totals.total, -2);
    if let Some(balance) = &mut quote.totals.balance {
        cents(balance, -2);
    }
    let opened = Quote::open(&quote.to_json()).expect("it opens");
    assert_eq!(opened.quote.total(), quote.total());
    let Verdict::Different(found) = opened.verdict else {
        panic!("it comes out otherwise");
    };
    let of: Vec<&str> = found.iter().map(|found| found.of.as_str()).collect();
    assert_eq!(of, ["line 1", "total"]);
}

#[test]
fn numbers_that_do_not_add_up_are_refused() {
    let mut quote = given("harbour");
    quote.lines[0].amount.0.minor -= 1;
    let refused = Quote::open(&quote.to_json()).expect_err("it was changed");
    assert!(matches!(refused, QuoteFault::Broken(_)), "{refused}");
    let newer = Quote::read("{\"quote\": 9}").expect_err("newer");
    assert_eq!(newer, QuoteFault::Newer { found: 9 });
    let stray = given("harbour")
        .to_json()
        .replacen("\"number\"", "\"nummer\"", 1);
    let refused = Quote::read(&stray).expect_err("an unknown field");
    assert!(refused.to_string().contains("nummer"), "{refused}");
}

/// What is changed in a quote's document without touching a sum shows when it is opened.
#[test]
fn what_was_changed_beside_the_numbers_is_told() {
    let told = |change: fn(&mut Quote)| {
        let mut quote = given("harbour");
        change(&mut quote);
        match Quote::open(&quote.to_json()).expect("it opens").verdict {
            Verdict::Different(found) => found.into_iter().map(|own| own.of).collect(),
            Verdict::Unknown(why) => why,
            Verdict::Same => Vec::new(),
        }
    };
    assert_eq!(told(|quote| quote.valid_to = None), ["last day"]);
    assert_eq!(told(|quote| quote.terms.clear()), ["terms"]);
    assert_eq!(told(|quote| quote.sizes[0].is.push('0')), ["sizes"]);
    assert_eq!(told(|quote| quote.shop.minutes += 1), ["shop"]);
    let text = |quote: &mut Quote| {
        let text = "as long as it takes".to_owned();
        quote
            .settings
            .insert("moulding.charge_rule".to_owned(), text);
    };
    assert_eq!(
        told(text),
        ["the setting moulding.charge_rule it holds can't be read"]
    );
    let why = told(|quote| quote.asked.discounts.push("none such".to_owned()));
    assert!(why[0].contains("no discount none such"), "{why:?}");
}

#[test]
fn rules_and_currencies_that_can_not_be_are_refused() {
    let refused = |change: fn(&mut Quote)| {
        let mut quote = given("harbour");
        change(&mut quote);
        let refused = Quote::read(&quote.to_json()).expect_err("it was changed");
        refused.to_string()
    };
    let said = refused(|quote| {
        let share = working::Decimal::whole(2);
        quote.rules.discount[0].share = pricing::Rate(share);
    });
    assert!(said.contains("share lies between 0 % and 100 %"), "{said}");
    let said = refused(|quote| {
        quote.totals.total.0.currency = measure::Currency::from_code("JPY").expect("listed");
    });
    assert!(said.contains("JPY is not in"), "{said}");
    let said = refused(|quote| quote.totals.balance = None);
    assert!(said.contains("deposit and balance"), "{said}");
}

#[test]
fn alternatives_say_what_differs_and_by_how_much() {
    let first = job("harbour");
    let mut second = first.clone();
    second.frame[0].moulding = Some("walnut-1".to_owned());
    let settings = Settings::defaults(Units::Inches);
    let found = alternatives(
        &[("as drawn", &first), ("walnut", &second)],
        &catalogue(),
        &settings,
        &rules(),
        &Asked::on(day()),
    )
    .expect("both derive");
    assert_eq!(found[0].difference.minor, 0);
    assert_eq!(found[0].differs, []);
    let totals = [0, 1].map(|at| found[at].priced.totals.total.value.minor);
    assert_eq!(found[1].difference.minor, totals[1] - totals[0]);
    assert!(found[1].difference.minor > 0);
    let parts: Vec<&str> = found[1]
        .differs
        .iter()
        .map(|own| own.part.as_str())
        .collect();
    assert!(parts.contains(&"Frame"), "{parts:?}");
    let seven = vec![("x", &first); 7];
    let asked = Asked::on(day());
    let refused = alternatives(&seven, &catalogue(), &settings, &rules(), &asked);
    assert_eq!(
        refused.expect_err("too many").to_string(),
        "7 alternatives were given; at most 6 stand side by side"
    );
}

#[test]
fn a_change_of_rules_shows_what_it_would_have_done() {
    let catalogue = catalogue();
    let text = demo::PRICES.replacen("minutes = { each = 17 }", "minutes = { each = 27 }", 1);
    let new = RuleSet::read(&text).expect("the rules read");
    let (job, asked) = (job("harbour"), Asked::on(day()));
    let sizes = sizes(&job, &catalogue);
    let piece = Past {
        name: "2026-411",
        job: &job,
        sizes: &sizes,
        asked: &asked,
    };
    let comparison = compare(&rules(), &new, &catalogue, &[piece]);
    let harbour = &comparison.pieces[0];
    // Ten minutes more at 66.00 an hour; labour is taxed at nothing.
    assert_eq!(harbour.difference.map(|more| more.minor), Some(1_100));
    assert_eq!(harbour.lines.len(), 1);
    assert_eq!(harbour.lines[0].rule, "join");
    assert!(comparison.idle.contains(&"walls".to_owned()));
    assert!(!comparison.idle.contains(&"join".to_owned()));
}

#[test]
fn a_budget_is_met_by_the_fewest_changes_that_harm_nothing() {
    let (catalogue, settings) = (catalogue(), Settings::defaults(Units::Inches));
    let (rules, asked) = (rules(), Asked::on(day()));
    let mut found = 0;
    for name in ["harbour", "fern", "seascape", "evening"] {
        let job = job(name);
        let sizes = sizes(&job, &catalogue);
        let before = price(&job, &sizes, &catalogue, &rules, &asked)
            .totals
            .total
            .value;
        let ceiling = Money {
            minor: before.minor - 500,
            ..before
        };
        let budget = Budget {
            job: &job,
            catalogue: &catalogue,
            shop: &settings,
            rules: &rules,
            asked: &asked,
            ceiling,
        };
        let proposed = budget.propose().expect("it is priced");
        assert_eq!(proposed.before, before);
        for pair in proposed.proposals.windows(2) {
            assert!(pair[0].total.minor >= pair[1].total.minor, "{name}");
        }
        found += proposed.proposals.len();
        for proposal in &proposed.proposals {
            assert!(proposal.total.minor <= ceiling.minor);
            assert_eq!(proposal.saving.minor, before.minor - proposal.total.minor);
            let changed = proposal.applied(&job);
            let sizes = derive(&changed, &catalogue, &settings).expect("it derives");
            let again = price(&changed, &sizes, &catalogue, &rules, &asked);
            assert_eq!(again.totals.total.value, proposal.total, "{name}");
            assert!(no_new_harm(&job, &changed, &catalogue, &settings), "{name}");
        }
    }
    assert!(found > 3, "most of them can be made cheaper: {found}");
}

fn no_new_harm(
    before: &trade::Job,
    after: &trade::Job,
    catalogue: &Catalogue,
    settings: &Settings,
) -> bool {
    let harm = |job: &trade::Job| {
        let sizes = derive(job, catalogue, settings).expect("it derives");
        let looked = conservation::advice::looked_over(job, &sizes, catalogue);
        let mut found = sizes.faults.clone();
        found.extend(looked.faults());
        let known = |fault: sizing::Fault| (fault.code, fault.part, fault.severity);
        found.into_iter().map(known).collect::<Vec<_>>()
    };
    let had: Vec<(&str, String, Severity)> = harm(before);
    harm(after).iter().all(|(code, part, severity)| {
        had.iter()
            .any(|(own, of, worst)| own == code && of == part && worst >= severity)
    })
}

#[test]
fn a_sensitive_print_keeps_its_ultraviolet_glass() {
    let (catalogue, settings) = (catalogue(), Settings::defaults(Units::Inches));
    let (rules, asked) = (rules(), Asked::on(day()));
    let job = job("harbour");
    let budget = Budget {
        job: &job,
        catalogue: &catalogue,
        shop: &settings,
        rules: &rules,
        asked: &asked,
        ceiling: Money::new(1, rules.currency()),
    };
    let proposed = budget.propose().expect("it is priced");
    assert_eq!(proposed.proposals.len(), 0, "nothing frames it for a cent");
    let cheapest = proposed.cheapest.expect("something is cheaper");
    let plain = |(change, _): &(Saving, Money)| matches!(change, Saving::Glazing { code, .. } if code == "glass-2.5" || code == "glass-2");
    assert!(!cheapest.changes.iter().any(plain), "{cheapest:?}");
    assert_eq!(proposed.deepest, 2);
    assert_eq!(proposed.put_together, proposed.looked_at);
}

/// A large catalogue has millions of pairs: only some changes are put together, and that is told.
#[test]
fn what_is_put_together_is_bounded_and_told() {
    let catalogue = catalogue();
    let (rules, asked) = (rules(), Asked::on(day()));
    let few = [("budget.put_together".to_owned(), "3".to_owned())].into();
    let settings = Settings::defaults(Units::Inches)
        .with(&few, Layer::Shop, Units::Inches.unit())
        .expect("a setting");
    let job = job("harbour");
    let budget = Budget {
        job: &job,
        catalogue: &catalogue,
        shop: &settings,
        rules: &rules,
        asked: &asked,
        ceiling: Money::new(1, rules.currency()),
    };
    let proposed = budget.propose().expect("it is priced");
    assert!(proposed.looked_at > 3, "{}", proposed.looked_at);
    assert_eq!(proposed.put_together, 3);
}
