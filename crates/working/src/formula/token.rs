//! A formula's text, cut into words and signs.

use super::Fault;
use super::number::Number;
use super::ratio::Ratio;

/// One word or sign.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Token {
    Number(Number),
    Name(String),
    Sign(Sign),
    Open,
    Close,
    Comma,
    Square,
    Cube,
    Degree,
    End,
}

/// A sign between two values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sign {
    Plus,
    Minus,
    Times,
    Over,
    Less,
    AtMost,
    More,
    AtLeast,
    Equal,
    Unequal,
    And,
    Or,
}

impl Sign {
    /// As formulas are printed.
    pub(crate) const fn text(self) -> &'static str {
        match self {
            Self::Plus => "+",
            Self::Minus => "−",
            Self::Times => "×",
            Self::Over => "÷",
            Self::Less => "<",
            Self::AtMost => "≤",
            Self::More => ">",
            Self::AtLeast => "≥",
            Self::Equal => "=",
            Self::Unequal => "≠",
            Self::And => "and",
            Self::Or => "or",
        }
    }
}

/// The tokens of `text`, each with the byte it starts at, [`Token::End`] last.
pub(crate) fn tokens(text: &str) -> Result<Vec<(Token, usize)>, Fault> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(first) = text[at..].chars().next() {
        if first.is_whitespace() {
            at += first.len_utf8();
            continue;
        }
        let (token, length) = token(&text[at..], first, at)?;
        found.push((token, at));
        at += length;
    }
    found.push((Token::End, at));
    Ok(found)
}

/// The token that `rest` starts with and its length in bytes.
fn token(rest: &str, first: char, at: usize) -> Result<(Token, usize), Fault> {
    if first.is_ascii_digit() {
        let length = rest
            .find(|c: char| !c.is_ascii_digit() && c != '.')
            .unwrap_or(rest.len());
        return Ok((Token::Number(decimal(&rest[..length], at)?), length));
    }
    if first.is_alphabetic() || first == '_' {
        let length = rest
            .find(|c: char| !c.is_alphabetic() && !c.is_ascii_digit() && c != '_')
            .unwrap_or(rest.len());
        return Ok((word(&rest[..length]), length));
    }
    for (text, sign) in [("<=", Sign::AtMost), (">=", Sign::AtLeast)] {
        if rest.starts_with(text) {
            return Ok((Token::Sign(sign), text.len()));
        }
    }
    let token = match first {
        '(' => Token::Open,
        ')' => Token::Close,
        ',' => Token::Comma,
        '²' => Token::Square,
        '³' => Token::Cube,
        '°' => Token::Degree,
        '+' => Token::Sign(Sign::Plus),
        '-' | '−' => Token::Sign(Sign::Minus),
        '×' | '*' => Token::Sign(Sign::Times),
        '÷' | '/' => Token::Sign(Sign::Over),
        '<' => Token::Sign(Sign::Less),
        '≤' => Token::Sign(Sign::AtMost),
        '>' => Token::Sign(Sign::More),
        '≥' => Token::Sign(Sign::AtLeast),
        '=' => Token::Sign(Sign::Equal),
        '≠' => Token::Sign(Sign::Unequal),
        character => return Err(Fault::Character { character, at }),
    };
    Ok((token, first.len_utf8()))
}

fn word(text: &str) -> Token {
    match text {
        "and" => Token::Sign(Sign::And),
        "or" => Token::Sign(Sign::Or),
        name => Token::Name(name.to_owned()),
    }
}

/// `12` or `12.75`, exactly.
fn decimal(text: &str, at: usize) -> Result<Number, Fault> {
    let number = || Fault::Number {
        text: text.to_owned(),
        at,
    };
    let (whole, decimals) = text.split_once('.').unwrap_or((text, "0"));
    if decimals.is_empty() {
        return Err(number());
    }
    let places = u32::try_from(decimals.len())
        .ok()
        .filter(|_| text.contains('.'))
        .unwrap_or(0);
    let bottom = 10_i128.checked_pow(places).ok_or_else(number)?;
    let whole = whole.parse::<i128>().map_err(|_| number())?;
    let decimals = decimals.parse::<i128>().map_err(|_| number())?;
    let top = whole
        .checked_mul(bottom)
        .and_then(|top| top.checked_add(decimals))
        .ok_or_else(number)?;
    Ratio::new(top, bottom)
        .map(Number::Exact)
        .ok_or_else(number)
}
