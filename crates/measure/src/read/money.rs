//! An amount of money with its currency code.

use std::ops::Range;

use crate::{Currency, Money};

use super::number::{self, Plain, Reading};
use super::token::{Kind, Token, extent, tokens};
use super::{ReadError, Refusal, Wanted};

/// The most minor units that are read.
const LIMIT: i64 = 1_000_000_000_000_000;
const LIMIT_TEXT: &str = "1000000000000000 minor units";

pub(super) fn read(text: &str) -> Result<Money, ReadError> {
    let tokens = tokens(text, Wanted::Money)?;
    let typed = |span: Range<usize>| text.get(span).unwrap_or(text).to_owned();
    let (negative, rest) = match tokens.split_first() {
        Some((sign, rest)) if sign.kind == Kind::Minus => (true, rest),
        _ => (false, tokens.as_slice()),
    };
    let (number, code) = match rest {
        [number, code] | [code, number] if is_number(number) && is_word(code) => (number, code),
        [number] if is_number(number) => {
            let typed = typed(number.span.clone());
            return refuse(number.span.clone(), Refusal::NoCurrency { typed });
        }
        [code] if is_word(code) => {
            let typed = typed(code.span.clone());
            return refuse(code.span.clone(), Refusal::NoNumber { typed });
        }
        _ => {
            let stray = rest
                .iter()
                .find(|token| !is_number(token) && !is_word(token));
            let span = stray.map_or(extent(&tokens), |token| token.span.clone());
            let typed = typed(span.clone());
            return refuse(span, Refusal::Stray { typed });
        }
    };
    let word = typed(code.span.clone());
    let Some(currency) = Currency::from_code(&word) else {
        return refuse(code.span.clone(), Refusal::UnknownCurrency { typed: word });
    };
    let plain = plain(typed(number.span.clone()), number.span.clone(), currency)?;
    let minor = minor(
        &plain,
        number.span.clone(),
        &typed(number.span.clone()),
        currency,
    )?;
    Ok(Money::new(
        if negative {
            minor.saturating_neg()
        } else {
            minor
        },
        currency,
    ))
}

fn plain(typed: String, span: Range<usize>, currency: Currency) -> Result<Plain, ReadError> {
    match number::read(&typed) {
        Reading::One(plain) => Ok(plain),
        // Three decimals that the currency does not have leave one reading, but a slip of the
        // finger is as likely, and money is not guessed at.
        Reading::Two { decimal, grouped } => {
            let readings = [decimal, grouped].map(|plain| format!("{} {currency}", plain.print()));
            refuse(
                span,
                Refusal::Comma {
                    typed,
                    readings: readings.to_vec(),
                },
            )
        }
        Reading::Neither => refuse(span, Refusal::Separators { typed }),
    }
}

fn minor(
    plain: &Plain,
    span: Range<usize>,
    typed: &str,
    currency: Currency,
) -> Result<i64, ReadError> {
    let places = currency.places();
    let width = usize::try_from(places).unwrap_or(0);
    if plain.decimals.len() > width {
        let (typed, code) = (typed.to_owned(), currency.code());
        return refuse(
            span,
            Refusal::SmallerThanMinor {
                typed,
                code,
                places,
            },
        );
    }
    let digits = format!("0{}{:0<width$}", plain.whole, plain.decimals);
    let minor = digits.parse().ok().filter(|minor| *minor <= LIMIT);
    minor.map_or_else(
        || {
            refuse(
                span,
                Refusal::OutOfRange {
                    typed: typed.to_owned(),
                    limit: LIMIT_TEXT,
                },
            )
        },
        Ok,
    )
}

fn is_number(token: &Token) -> bool {
    matches!(token.kind, Kind::Number(_))
}

fn is_word(token: &Token) -> bool {
    matches!(token.kind, Kind::Word(_))
}

fn refuse<T>(span: Range<usize>, refusal: Refusal) -> Result<T, ReadError> {
    Err(ReadError::new(Wanted::Money, span, refusal))
}
