use measure::{Length, Unit};

use super::{Account, Share};

fn quanta(inches: i64) -> i128 {
    i128::from(Length::inches(inches).quanta())
}

#[test]
fn a_broken_law_shows_both_sides_and_the_gap() {
    let mut account = Account {
        stock: quanta(120),
        pieces: quanta(90),
        cuts: quanta(1),
        trim: quanta(1),
        remnants: quanta(26),
        ..Account::default()
    };
    let said = account
        .check("oak", Unit::Inch)
        .expect_err("2 in are lost")
        .to_string();
    assert_eq!(
        said,
        "oak: pieces + cuts + trim + remnants + waste + rounding = 118 in, stock is 120 in; 2 in unaccounted for"
    );
    account.waste = quanta(2);
    assert_eq!(account.check("oak", Unit::Inch), Ok(()));
    // Neither a part nor kept: 1 + 1 + 2 of 120; parts: 90 of 120.
    assert_eq!(account.lost().percent_nearest(), "3.3 %");
    assert_eq!(account.used().percent_nearest(), "75.0 %");
}

#[test]
fn shares_are_rounded_to_the_nearest_tenth() {
    let check = |part, whole, expected: &str| {
        assert_eq!(Share { part, whole }.percent_nearest(), expected);
    };
    check(1, 3, "33.3 %");
    check(2, 3, "66.7 %");
    check(1, 2000, "0.1 %");
    check(0, 5, "0.0 %");
    check(0, 0, "0.0 %");
}
