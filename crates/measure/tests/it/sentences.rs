//! What a refusal says, and what it says to type.

use measure::{Angle, Money, Unit, read_length, read_size};

#[test]
fn sentences_name_what_was_typed() {
    let says = |text| {
        read_length(text, Unit::Inch)
            .expect_err("refused")
            .to_string()
    };
    assert_eq!(says("1,250"), "“1,250” is either 1.25 in or 1250 in");
    assert_eq!(says("16 7/"), "the fraction has no bottom number");
    assert_eq!(says("16 inchs"), "“inchs” is not a unit of length");
    assert_eq!(
        says("1 m 5"),
        "“5” has no unit; it may be 1 m 5 cm, 1 m 5 mm or 1.5 m"
    );
    assert_eq!(
        says("3-4"),
        "“3-4” is either a range from 3 in to 4 in or the difference -1 in"
    );
}

#[test]
fn hints_say_what_to_type() {
    let hint = |text| read_length(text, Unit::Inch).expect_err("refused").hint();
    assert_eq!(hint("1,250"), "type 1.25 in or 1250 in");
    assert_eq!(hint("16 7/"), "type 16 7/8, 16.875 or 428.6 mm");
    assert_eq!(hint("16 inchs"), "type inch");
    assert_eq!(hint("16 furlong"), "type in, ft, mm, cm or m");
    assert_eq!(hint("4 in 1 ft"), "type the ft before the in");
    assert_eq!(
        hint("1001 m"),
        "type a number within 1000 m, or check its unit"
    );
}

#[test]
fn other_quantities_hint_in_their_own_units() {
    let hint = read_size("8", Unit::Inch).expect_err("refused").hint();
    assert_eq!(hint, "type 8 x 10, 8 1/2 x 11 or 200 x 250 mm");
    let hint = read_size("8 x 16 7/", Unit::Inch)
        .expect_err("refused")
        .hint();
    assert_eq!(hint, "type 8 x 10, 8 1/2 x 11 or 200 x 250 mm");
    let hint = Angle::read("/").expect_err("refused").hint();
    assert_eq!(hint, "type 45, 22.5 or 22 1/2 deg");
    let hint = Money::read("12.505 USD").expect_err("refused").hint();
    assert_eq!(hint, "type at most 2 decimals");
    let hint = Money::read("12.5 JPY").expect_err("refused").hint();
    assert_eq!(hint, "type a whole number of JPY");
}

#[test]
fn marks_stand_under_characters_of_more_than_one_byte() {
    let typed = "⅞ 7/0";
    let error = read_length(typed, Unit::Inch)
        .map_err(|e| e.caret(typed))
        .expect_err("refused");
    assert_eq!(error, "⅞ 7/0\n^^^^^");
    let typed = "⅞\t7/0";
    let caret = read_length(typed, Unit::Inch).map_err(|e| e.caret(typed));
    assert_eq!(caret, Err("⅞ 7/0\n^^^^^".into()));
}
