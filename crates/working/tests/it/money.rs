//! Money, decimals and ways of rounding in a working.

use measure::{Currency, Length, Money};
use working::{
    Decimal, FinePrice, Given, Round, Rule, Source, Status, Subject, Value, Why, Working,
};

static UNIT: Rule = Rule {
    id: "test.unit",
    words: "a foot sells for its cost with waste, times the factor",
    formula: "unit = round_to(cost × foot ÷ per × (1 + waste) × factor, cent, way)",
    source: Source::CommonPractice,
    status: Status::CommonPractice,
};

static MIXED: Rule = Rule {
    id: "test.mixed",
    words: "money and a length do not add",
    formula: "sum = money + length",
    source: Source::Geometry,
    status: Status::Geometry,
};

fn dollars() -> Currency {
    Currency::from_code("USD").expect("USD is listed")
}

fn decimal(text: &str) -> Decimal {
    Decimal::read(text).expect("a number")
}

/// 3.40 a foot with 15 % waste times 3.5 is 13.685.
fn worked(way: Round, minor: i64) -> Working {
    let mut working = Working::new();
    let foot = Length::inches(12);
    let inputs = [
        (
            "cost",
            Given::material(FinePrice::new(3_400_000, dollars())),
        ),
        ("foot", Given::prices(foot)),
        ("per", Given::material(foot)),
        ("waste", Given::prices(decimal("15 %"))),
        ("factor", Given::prices(decimal("3.5"))),
        ("cent", Given::prices(Money::new(1, dollars()))),
        ("way", Given::prices(way)),
    ];
    let unit = Money::new(minor, dollars());
    working.by(&UNIT, Subject::of("price", "unit"), &inputs, unit);
    working
}

#[test]
fn an_amount_is_rounded_the_way_that_is_recorded() {
    for (way, minor) in [
        (Round::TiesToAway, 1_369),
        (Round::TiesToEven, 1_368),
        (Round::TowardPositive, 1_369),
        (Round::TowardNegative, 1_368),
        (Round::TowardZero, 1_368),
    ] {
        assert_eq!(worked(way, minor).recheck(), [], "{}", way.ieee());
    }
}

#[test]
fn a_cent_too_much_is_found() {
    let found = worked(Round::TiesToAway, 1_370).recheck();
    assert_eq!(found.len(), 1);
    assert!(matches!(found[0].why, Why::Differs { .. }), "{}", found[0]);
}

#[test]
fn money_and_a_length_do_not_add() {
    let mut working = Working::new();
    let money = Money::new(100, dollars());
    let inputs = [
        ("money", Given::job(money)),
        ("length", Given::job(Length::INCH)),
    ];
    working.by(&MIXED, Subject::of("price", "sum"), &inputs, money);
    let found = working.recheck();
    assert!(
        found[0]
            .to_string()
            .ends_with("+ stands between money and a length"),
        "{}",
        found[0]
    );
}

#[test]
fn they_are_printed_as_people_read_them() {
    let check = |value: Value, text: &str| assert_eq!(value.to_string(), text);
    check(Money::new(1_250, dollars()).into(), "12.50 USD");
    check(FinePrice::new(12_345, dollars()).into(), "0.012345 USD");
    check(decimal("-0.0825").into(), "-0.0825");
    check(Round::TowardPositive.into(), "up");
    assert_eq!(decimal("0.0825").percent(), "8.25 %");
    assert_eq!(decimal("0.5").percent(), "50 %");
    assert_eq!(decimal("2").percent(), "200 %");
}

#[test]
fn decimals_are_read_exactly_or_not_at_all() {
    for text in [
        "",
        ".",
        "1.",
        ".5",
        "1,5",
        "1e3",
        "12345678901234567890",
        "0.0000000001",
    ] {
        assert_eq!(Decimal::read(text), None, "{text}");
    }
    assert_eq!(decimal("1.50"), Decimal::new(15, 1));
    assert!(decimal("0.3") < decimal("0.31") && decimal("-1") < decimal("0"));
}
