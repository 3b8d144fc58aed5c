use measure::{Currency, Money};

use super::Price;

fn check(text: &str, millionths: u64, printed: &str) {
    let price = Price::read(text).unwrap_or_else(|fault| panic!("{fault}"));
    assert_eq!(price.millionths(), millionths, "{text}");
    assert_eq!(price.to_string(), printed);
    assert_eq!(Price::read(printed), Ok(price));
}

#[test]
fn prices_are_read_exactly_and_printed_to_read_back() {
    check("3.40 USD", 3_400_000, "3.40 USD");
    check("usd 3.4", 3_400_000, "3.40 USD");
    check("0.0345 EUR", 34_500, "0.0345 EUR");
    check("0.000001 GBP", 1, "0.000001 GBP");
    check("1200 JPY", 1_200_000_000, "1200 JPY");
    check("0.5 JPY", 500_000, "0.5 JPY");
    check("1.5 KWD", 1_500_000, "1.500 KWD");
    check("1000000000 USD", 1_000_000_000_000_000, "1000000000.00 USD");
}

#[test]
fn what_is_no_price_is_refused() {
    for text in [
        "",
        "3.40",
        "USD",
        "3.40 XXQ",
        "-3.40 USD",
        "3,40 USD",
        "3.4000001 USD",
        ".5 USD",
        "5. USD",
        "1e3 USD",
        "1000000001 USD",
        "3.40 USD USD",
        "99999999999999999999 USD",
        "3.40 XAU",
    ] {
        let fault = Price::read(text).expect_err(text).to_string();
        assert!(
            fault.contains("3.40 USD") && fault.contains(text),
            "{fault}"
        );
    }
}

#[test]
fn money_and_prices_are_one_another_where_they_can_be() {
    let dollars = Currency::from_code("USD").unwrap();
    let money = Money::new(1_369, dollars);
    let price = Price::of(money).unwrap();
    assert_eq!(price.to_string(), "13.69 USD");
    assert_eq!(price.as_money(), Some(money));
    assert_eq!(Price::read("0.0345 USD").unwrap().as_money(), None);
    assert_eq!(Price::of(Money::new(-1, dollars)), None);
}
