use std::sync::Arc;

use pricing::RuleSet;
use trade::Date;

use super::Wish;

fn rules() -> Arc<RuleSet> {
    Arc::new(RuleSet::read(demo::PRICES).expect("the invented shop's prices"))
}

fn pairs(all: &[(&str, &str)]) -> Vec<(String, String)> {
    let owned = all
        .iter()
        .map(|(name, value)| ((*name).to_owned(), (*value).to_owned()));
    owned.collect()
}

#[test]
fn a_clock_without_a_day_and_a_shop_without_prices_are_told_apart() {
    let (wish, day) = (Wish::default(), Date::read("2026-11-25").expect("a day"));
    let dayless = wish.on(Some(&rules()), None).expect_err("no day");
    assert!(dayless.detail.contains("clock"), "{}", dayless.detail);
    assert!(!dayless.detail.contains("--prices"), "{}", dayless.detail);
    let unruled = wish.on(None, Some(day)).expect_err("no prices");
    assert!(unruled.detail.contains("--prices"), "{}", unruled.detail);
    assert!(wish.on(Some(&rules()), Some(day)).is_ok());
}

#[test]
fn every_field_is_read_once_and_carried_on() {
    let sent = pairs(&[
        ("job", ""),
        ("discount", "trade"),
        ("rush", "1"),
        ("discount", "trade"),
        ("discount", "show"),
    ]);
    let wish = Wish::read(&sent);
    let day = Date::read("2026-11-25").expect("a day");
    let (_, asked) = wish.on(Some(&rules()), Some(day)).expect("asked");
    assert!(asked.rush && !asked.exempt);
    assert_eq!(asked.discounts, ["trade", "show"]);
    let carried = wish.carried().into_string();
    assert_eq!(carried.matches("name=\"discount\"").count(), 2, "{carried}");
    assert!(carried.contains("name=\"rush\"") && !carried.contains("exempt"));
}
