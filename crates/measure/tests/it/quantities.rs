//! Areas, masses, angles and money.

use std::num::NonZeroU32;

use measure::{Angle, Area, ArealMass, Currency, Length, Mass, Money, MoneyError, Size};

fn currency(code: &str) -> Currency {
    Currency::from_code(code).expect("a listed code")
}

#[test]
fn areas_print_to_the_nearest() {
    let sheet = Size::new(Length::inches(32), Length::inches(40)).area();
    // 1 280 sq in; 1 280 / 144 = 8.888...; 1 280 × 6.4516 cm² = 0.8258048 m².
    assert_eq!(sheet.print_square_inches_nearest(0), "1280 sq in");
    assert_eq!(sheet.print_square_feet_nearest(2), "8.89 sq ft");
    assert_eq!(sheet.to_string(), "0.8258 m²");
    assert_eq!(sheet.print_m2_nearest(7), "0.8258048 m²");
    assert!((sheet.approx_m2() - 0.825_804_8).abs() < 1e-12);
    assert!((sheet.approx_square_inches() - 1_280.0).abs() < 1e-9);
    assert!((sheet.approx_square_feet() - 8.888_888_888).abs() < 1e-6);
    assert_eq!(
        (Area::ZERO - sheet).print_square_inches_nearest(1),
        "-1280.0 sq in"
    );
    assert_eq!([sheet, sheet].into_iter().sum::<Area>(), sheet.times(2));
    assert_eq!(Area::SQUARE_FOOT, Area::SQUARE_INCH.times(144));
}

#[test]
fn masses_are_read_and_printed() {
    // Source: 1 lb = 0.453 592 37 kg and 1 oz = 1/16 lb exactly (international yard and pound
    // agreement, 1959).
    assert_eq!(Mass::OUNCE.times(16), Mass::POUND);
    let check = |text: &str, nanograms: i64| {
        assert_eq!(
            Mass::read_nearest(text).map(Mass::nanograms),
            Ok(nanograms),
            "{text}"
        );
    };
    check("1 lb", 453_592_370_000);
    check("5 lb 4 oz", 2_381_359_942_500);
    check("5 lb 4", 2_381_359_942_500);
    check("5 1/4 lbs", 2_381_359_942_500);
    check("5lb4oz", 2_381_359_942_500);
    check("2.4 kg", 2_400_000_000_000);
    check("2,4 kg", 2_400_000_000_000);
    check("1 kg 500 g", 1_500_000_000_000);
    check("850 grams", 850_000_000_000);
    // 14 174 761 562.5 ng: the tie goes up, and the other way below zero.
    check("½ oz", 14_174_761_563);
    check("0.5 oz", 14_174_761_563);
    check("-½ oz", -14_174_761_563);
    // 151 197 456 666.6... ng.
    check("1/3 lb", 151_197_456_667);
    assert_eq!(
        Mass::read_nearest("5 lb 4 oz").map(|m| m.to_string()),
        Ok("2.38 kg (5.3 lb)".into())
    );
}

#[test]
fn masses_are_refused_like_lengths() {
    let code = |text: &str| Mass::read_nearest(text).expect_err("refused").code();
    assert_eq!(code("5"), "measure.unit.missing");
    assert_eq!(code("5 stone"), "measure.unit.unknown");
    assert_eq!(code("5 in"), "measure.unit.unknown");
    assert_eq!(code("4 oz 5 lb"), "measure.unit.order");
    assert_eq!(code("1,250 g"), "measure.number.comma");
    assert_eq!(code("1001 kg"), "measure.range");
    assert_eq!(code("1 kg x 2"), "measure.stray");
    let error = Mass::read_nearest("1,250 g").expect_err("refused");
    assert_eq!(error.readings(), ["1.25 g", "1250 g"]);
    let error = Mass::read_nearest("5").expect_err("refused");
    assert_eq!(
        (error.to_string().as_str(), error.hint().as_str()),
        ("“5” has no unit", "type 5 lb 4 oz, 2.4 kg or 850 g")
    );
}

#[test]
fn sheets_weigh_their_area() {
    // Glass of 2 500 kg/m³, 2 mm thick, half a square metre: 2.5 kg.
    let glass = ArealMass::of_slab_nearest(2_500, Length::mm(2));
    assert_eq!(glass.in_mg_per_m2(), 5_000_000);
    let pane = Area::of(Length::mm(500), Length::mm(1_000));
    assert_eq!(Mass::of_sheet_nearest(pane, glass), Mass::grams(2_500));
    // One square quantum of 1 g/m² is far below half a nanogram.
    let speck = Area::from_square_quanta(1);
    assert_eq!(
        Mass::of_sheet_nearest(speck, ArealMass::grams_per_m2(1)),
        Mass::ZERO
    );
    assert!((Mass::grams(2_500).approx_kg() - 2.5).abs() < 1e-12);
}

#[test]
fn angles_are_read_and_printed() {
    let check = |text: &str, millionths: i64| {
        assert_eq!(
            Angle::read(text).map(Angle::millionths),
            Ok(millionths),
            "{text}"
        );
    };
    check("45", 45_000_000);
    check("45.5°", 45_500_000);
    check("45 deg", 45_000_000);
    check("45 degrees", 45_000_000);
    check("22 1/2", 22_500_000);
    check("22½°", 22_500_000);
    check("-0.000001", -1);
    let code = |text: &str| Angle::read(text).expect_err("refused").code();
    assert_eq!(code("1/3"), "measure.not_held");
    assert_eq!(code("45 in"), "measure.unit.unknown");
    assert_eq!(code("45'"), "measure.unit.unknown");
    assert_eq!(code("45 30"), "measure.number.pair");
    assert_eq!(Angle::from_millionths(22_500_000).to_string(), "22.5°");
    assert_eq!(
        Angle::from_millionths(-35_264_390).print_four_decimals_nearest(),
        "-35.2644°"
    );
    assert!((Angle::degrees(180).approx_radians() - std::f64::consts::PI).abs() < 1e-12);
    assert_eq!(
        Angle::nearest_from_degrees(35.264_389_682_754_654),
        Some(Angle::from_millionths(35_264_390))
    );
    assert_eq!(Angle::nearest_from_degrees(f64::NAN), None);
    assert_eq!(Angle::RIGHT - Angle::degrees(45), Angle::degrees(45));
}

#[test]
fn money_is_read_and_printed() {
    let check = |text: &str, minor: i64, code: &str, printed: &str| {
        let money = Money::read(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(money, Money::new(minor, currency(code)), "{text}");
        assert_eq!(money.to_string(), printed);
    };
    check("12.50 USD", 1_250, "USD", "12.50 USD");
    check("USD 12.5", 1_250, "USD", "12.50 USD");
    check("12,50 eur", 1_250, "EUR", "12.50 EUR");
    check("-0.05 GBP", -5, "GBP", "-0.05 GBP");
    check("1250 JPY", 1_250, "JPY", "1250 JPY");
    check("1.250 KWD", 1_250, "KWD", "1.250 KWD");
    check("1,250.00 USD", 125_000, "USD", "1250.00 USD");
    check("1.250,00 EUR", 125_000, "EUR", "1250.00 EUR");
}

#[test]
fn money_is_refused_with_its_place() {
    let check = |text: &str, code: &str, spot: &str| {
        let error = Money::read(text).expect_err("refused");
        assert_eq!(
            (error.code(), &text[error.span()]),
            (code, spot),
            "{text}: {error}"
        );
    };
    check("12.50", "measure.money.no_currency", "12.50");
    check("USD", "measure.number.missing", "USD");
    check("12.505 USD", "measure.money.decimals", "12.505");
    check("12.5 JPY", "measure.money.decimals", "12.5");
    check("12.50 XAU", "measure.money.currency", "XAU");
    check("12.50 qqq", "measure.money.currency", "qqq");
    check("1,250 USD", "measure.number.comma", "1,250");
    check("$12.50", "measure.stray", "$");
    check("1 2 USD", "measure.stray", "1 2 USD");
    check(
        "99999999999999999999 USD",
        "measure.range",
        "99999999999999999999",
    );
    check("", "measure.empty", "");
}

#[test]
fn currencies_never_mix() {
    let (dollars, yen) = (currency("USD"), currency("JPY"));
    let (price, other) = (Money::new(1_250, dollars), Money::new(5, yen));
    let mixed = MoneyError::Mixed {
        first: dollars,
        second: yen,
    };
    assert_eq!(price.checked_add(other), Err(mixed));
    assert_eq!(price.checked_sub(other), Err(mixed));
    assert_eq!(
        mixed.to_string(),
        "USD and JPY are added only after one is exchanged into the other"
    );
    assert_eq!(price.checked_add(price), price.checked_times(2));
    assert_eq!(price.checked_sub(price), Ok(Money::zero(dollars)));
    assert_eq!(
        Money::new(i64::MAX, yen).checked_add(other),
        Err(MoneyError::OutOfRange)
    );
    assert_eq!(
        Money::new(i64::MAX, yen).checked_times(2),
        Err(MoneyError::OutOfRange)
    );
}

#[test]
fn parts_of_an_amount_sum_to_it() {
    let price = Money::new(1_000, currency("USD"));
    let parts = price.split(NonZeroU32::new(3).expect("three is not zero"));
    assert_eq!(
        parts.map(|part| part.minor).collect::<Vec<_>>(),
        [334, 333, 333]
    );
}
