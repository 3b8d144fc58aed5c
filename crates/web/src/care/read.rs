//! Numbers of nature as people type them: `150`, `150 lx`, `14 fc`, `20 °C`, `68 F`.

use super::field::Choice;

/// Why a text can't be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Unread {
    pub code: &'static str,
    pub sentence: String,
    pub hint: String,
}

fn unread(code: &'static str, sentence: impl Into<String>, hint: impl Into<String>) -> Unread {
    Unread {
        code,
        sentence: sentence.into(),
        hint: hint.into(),
    }
}

/// The longest text that is read as a number.
const LONGEST: usize = 40;

/// A number and the unit typed behind it.
fn parts(text: &str) -> Result<(f64, &str), Unread> {
    let text = text.trim();
    if text.chars().count() > LONGEST {
        let sentence = format!("it is longer than {LONGEST} characters");
        return Err(unread("care.too_long", sentence, "type a number"));
    }
    let body = text.strip_prefix(['-', '−', '+']).unwrap_or(text);
    let negative = text.starts_with(['-', '−']);
    let end = body
        .find(|sign: char| !sign.is_ascii_digit() && sign != '.' && sign != ',')
        .unwrap_or(body.len());
    let (digits, unit) = body.split_at(end);
    if digits.is_empty() {
        let sentence = format!("“{text}” has no number");
        return Err(unread("care.number", sentence, "type a number such as 50"));
    }
    let value = decimal(digits)?;
    Ok((if negative { -value } else { value }, unit.trim()))
}

/// A decimal number with a point, or a comma that can only be one.
fn decimal(digits: &str) -> Result<f64, Unread> {
    let signs = digits
        .bytes()
        .filter(|sign| matches!(sign, b'.' | b','))
        .count();
    let whole = digits.split([',', '.']).next().unwrap_or_default();
    let after = digits.split([',', '.']).nth(1).unwrap_or_default();
    if digits.contains(',') && after.len() == 3 && signs == 1 {
        let hint = format!("type {whole}{after} or {whole}.{after}");
        return Err(unread(
            "care.number.comma",
            format!("“{digits}” has two readings"),
            hint,
        ));
    }
    let plain = digits.replace(',', ".");
    let value = (signs < 2).then(|| plain.parse::<f64>().ok()).flatten();
    let value = value.filter(|value| value.is_finite());
    value.ok_or_else(|| {
        unread(
            "care.number",
            format!("“{digits}” is no number"),
            "type a number such as 50 or 0.5",
        )
    })
}

/// A number with one of these units or none, in the first of them.
pub(super) fn number(text: &str, units: &[(&str, f64)]) -> Result<f64, Unread> {
    let (value, typed) = parts(text)?;
    if typed.is_empty() {
        return Ok(value);
    }
    let same = |unit: &&(&str, f64)| {
        squeezed(unit.0).eq_ignore_ascii_case(&squeezed(typed)) || unit.0 == typed
    };
    match units.iter().find(same) {
        Some((_, worth)) => Ok(value * worth),
        None if units.is_empty() => Err(unread(
            "care.unit",
            format!("the unit “{typed}” is one too many"),
            format!("type {value} alone"),
        )),
        None => {
            let known: Vec<&str> = units.iter().map(|unit| unit.0).collect();
            Err(unread(
                "care.unit",
                format!("the unit “{typed}” is not known here"),
                format!("type one of {} or none", known.join(", ")),
            ))
        }
    }
}

fn squeezed(unit: &str) -> String {
    unit.chars().filter(|sign| !sign.is_whitespace()).collect()
}

/// Units of temperature.
enum Scale {
    Celsius,
    Fahrenheit,
    Kelvin,
}

fn scale(typed: &str) -> Option<Scale> {
    match squeezed(typed).trim_start_matches(['°', 'º']) {
        "C" | "c" => Some(Scale::Celsius),
        "F" | "f" => Some(Scale::Fahrenheit),
        "K" | "k" => Some(Scale::Kelvin),
        _ => match typed.to_lowercase().as_str() {
            "celsius" => Some(Scale::Celsius),
            "fahrenheit" => Some(Scale::Fahrenheit),
            "kelvin" => Some(Scale::Kelvin),
            _ => None,
        },
    }
}

/// Freezing on the scale of Fahrenheit, its degrees to five of Celsius, and in kelvin.
const FREEZING_F: f64 = 32.0; // geometry: definition of the scale
const DEGREES: f64 = 1.8; // geometry: definition of the scale
const FREEZING_K: f64 = 273.15; // geometry: definition of the scale

/// A temperature, °C; a bare number has two readings and is refused.
pub(super) fn temperature(text: &str) -> Result<f64, Unread> {
    let (value, typed) = parts(text)?;
    match scale(typed) {
        Some(Scale::Celsius) => Ok(value),
        Some(Scale::Fahrenheit) => Ok((value - FREEZING_F) / DEGREES),
        Some(Scale::Kelvin) => Ok(value - FREEZING_K),
        None => Err(no_scale(
            value,
            typed,
            &format!("type {value} °C or {value} °F"),
        )),
    }
}

/// A difference of temperature, K; a bare number has two readings and is refused.
pub(super) fn difference(text: &str) -> Result<f64, Unread> {
    let (value, typed) = parts(text)?;
    match scale(typed) {
        Some(Scale::Celsius | Scale::Kelvin) => Ok(value),
        Some(Scale::Fahrenheit) => Ok(value / DEGREES),
        None => Err(no_scale(
            value,
            typed,
            &format!("type {value} K or {value} °F"),
        )),
    }
}

fn no_scale(value: f64, typed: &str, hint: &str) -> Unread {
    if typed.is_empty() {
        let sentence = format!("{value} has two readings, for its unit is left out");
        return unread("care.unit.missing", sentence, hint);
    }
    let sentence = format!("the unit “{typed}” is no unit of temperature");
    unread("care.unit", sentence, hint)
}

/// How many choices a refusal names.
const NAMED: usize = 8;

/// The one that was meant: its word, else the only one that has all the words typed.
pub(super) fn chosen(text: &str, list: &[Choice]) -> Result<Choice, Unread> {
    let wanted = text.trim().to_lowercase();
    let exact = list
        .iter()
        .find(|choice| choice.word.to_lowercase() == wanted);
    if let Some(choice) = exact {
        return Ok(*choice);
    }
    let words: Vec<&str> = wanted
        .split(|sign: char| !sign.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let has_all = |choice: &&Choice| {
        let whole = choice.word.to_lowercase();
        let own: Vec<&str> = whole.split(|sign: char| !sign.is_alphanumeric()).collect();
        !words.is_empty()
            && words
                .iter()
                .all(|word| own.iter().any(|own| own.starts_with(word)))
    };
    let found: Vec<&Choice> = list.iter().filter(has_all).collect();
    match found.as_slice() {
        [one] => Ok(**one),
        [] => Err(unread(
            "care.choice.unknown",
            format!("“{}” is not on the list", short(text)),
            named(list.iter()),
        )),
        several => Err(unread(
            "care.choice.several",
            format!("“{}” may be several", short(text)),
            named(several.iter().copied()),
        )),
    }
}

fn short(text: &str) -> String {
    text.chars().take(LONGEST).collect()
}

fn named<'a>(choices: impl Iterator<Item = &'a Choice>) -> String {
    let words: Vec<&str> = choices.map(|choice| choice.word).collect();
    let first: Vec<String> = words
        .iter()
        .take(NAMED)
        .map(|word| format!("“{word}”"))
        .collect();
    let more = words.len().saturating_sub(NAMED);
    let rest = if more > 0 {
        format!(", or one of {more} more")
    } else {
        String::new()
    };
    format!("choose {}{rest}", first.join(", "))
}

#[cfg(test)]
mod tests {
    use super::super::field::Choice;
    use super::{chosen, difference, number, temperature};

    const LUX: &[(&str, f64)] = &[("lx", 1.0), ("fc", 10.0)];

    fn close(found: Result<f64, super::Unread>, wanted: f64) {
        let found = found.expect("it reads");
        assert!((found - wanted).abs() < 1e-9, "{found} is not {wanted}");
    }

    #[test]
    fn numbers_are_read_with_and_without_a_unit() {
        for (text, wanted) in [
            ("150", 150.0),
            (" 150 lx ", 150.0),
            ("150LX", 150.0),
            ("0.5", 0.5),
            ("0,5", 0.5),
            (".5", 0.5),
            ("-4", -4.0),
            ("2 fc", 20.0),
        ] {
            close(number(text, LUX), wanted);
        }
    }

    #[test]
    fn what_is_no_number_is_told_with_what_to_type() {
        for (text, code) in [
            ("", "care.number"),
            ("bright", "care.number"),
            ("1.2.3", "care.number"),
            (".", "care.number"),
            ("1e9", "care.unit"),
            ("1,500", "care.number.comma"),
            ("50 lumens", "care.unit"),
            (
                "9999999999999999999999999999999999999999999",
                "care.too_long",
            ),
        ] {
            let unread = number(text, LUX).expect_err(text);
            assert_eq!(unread.code, code, "{text}: {unread:?}");
            assert!(!unread.hint.is_empty(), "{text}");
        }
    }

    #[test]
    fn temperatures_need_their_unit() {
        close(temperature("20 °C"), 20.0);
        close(temperature("-5C"), -5.0);
        close(temperature("−5 °C"), -5.0);
        close(temperature("68 F"), 20.0);
        close(temperature("293.15 K"), 20.0);
        close(difference("18 °F"), 10.0);
        close(difference("10 K"), 10.0);
        let bare = temperature("68").expect_err("two readings");
        assert_eq!(bare.code, "care.unit.missing");
        assert_eq!(bare.hint, "type 68 °C or 68 °F");
    }

    #[test]
    fn a_choice_is_found_by_words_only_it_has() {
        let list = ["oak, white", "oak, northern red", "obeche"].map(Choice::plain);
        let word = |text: &str| chosen(text, &list).map(|choice| choice.word);
        assert_eq!(word("OAK, WHITE"), Ok("oak, white"));
        assert_eq!(word("white oak"), Ok("oak, white"));
        assert_eq!(word("obe"), Ok("obeche"));
        assert_eq!(word("oak").expect_err("two").code, "care.choice.several");
        assert_eq!(word("elm").expect_err("none").code, "care.choice.unknown");
        assert_eq!(word("!").expect_err("none").code, "care.choice.unknown");
    }
}
