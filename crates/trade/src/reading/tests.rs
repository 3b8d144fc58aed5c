//! A reader's words name what was found and what to write, and no type of a program.

use super::{in_words, refusal};

#[derive(Debug, serde::Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(dead_code, reason = "only read")]
struct File {
    #[serde(default)]
    piece: Vec<Piece>,
}

#[derive(Debug, serde::Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(dead_code, reason = "only read")]
struct Piece {
    length: Option<f64>,
    count: Option<u64>,
    most: Option<i64>,
    turn: Option<bool>,
    cost: Option<String>,
    size: Option<String>,
    name: Option<String>,
}

fn check(text: &str, expected: &str) {
    let error = toml::from_str::<File>(text).expect_err(text);
    let (said, place) = refusal(text, &error);
    let at = (place.line.unwrap_or(0), place.column.unwrap_or(0));
    assert_eq!(format!("{}:{}: {said}", at.0, at.1), expected, "{text}");
}

#[test]
fn every_slip_says_what_to_write() {
    check(
        "[piece]\nlength = 9\n",
        "1:1: piece: found a table; write [[piece]], with two brackets, on a line of its own",
    );
    check(
        "[[pieces]]\nlength = 9\n",
        "1:3: there is no field `pieces`; did you mean `piece`?",
    );
    check(
        "[[piece]]\ncount = \"2\"\n",
        "2:9: count: found \"2\"; write a whole number, such as 2",
    );
    check(
        "[[piece]]\ncount = -2\n",
        "2:9: count: found -2; write a whole number, 0 or more",
    );
    check(
        "[[piece]]\nmost = 99999999999999999999\n",
        "2:8: most: found 99999999999999999999; write a smaller whole number, such as 2",
    );
    check(
        "[[piece]]\nturn = \"true\"\n",
        "2:8: turn: found \"true\"; write true or false, without quotes",
    );
    check(
        "[[piece]]\ncost = 6.4\n",
        "2:8: cost: found 6.4; write the amount and currency in quotes, \"6.40 USD\"",
    );
    check(
        "piece = [{ name = \"a\", size = 22 }]\n",
        "1:31: size: found 22; write width x height in quotes, \"22 x 30\"",
    );
    check(
        "[[piece]]\nname = 7\n",
        "2:8: name: found 7; write it in quotes, \"7\"",
    );
}

#[test]
fn every_slip_of_the_pen_says_where_it_is() {
    check(
        "[[piece]]\nlength = 9\nlength = 8\n",
        "3:1: length is written twice in this entry; keep one",
    );
    check(
        "[[piece]]\nlength = 9 in\n",
        "2:10: a text, and a length with a fraction or a unit, stands in quotes: write \"22 7/8\"",
    );
    check(
        "[[piece]]\nlength 9\n",
        "2:8: an equals sign belongs between a field and its value: write length = \"22 7/8\"",
    );
    check(
        "[[piece]\nlength = 9\n",
        "1:9: close the brackets: write [[piece]], with two on either side",
    );
    check(
        "[[piece]]\nname = \"9\n",
        "2:10: a quote is not closed on this line; close it with \"",
    );
}

#[test]
fn choices_are_listed_where_none_is_near() {
    assert_eq!(
        in_words("unknown variant `cm`, expected `in` or `mm`", Some("units")),
        "there is no choice `cm`; there are `in`, `mm`"
    );
    assert_eq!(
        in_words("missing field `length`", None),
        "it lacks the field `length`; write it"
    );
}
