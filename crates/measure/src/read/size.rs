//! A width and a height.

use std::ops::Range;

use crate::{Length, Size, Unit};

use super::terms::{Sum, check_words, only_unit};
use super::token::{Kind, Token, extent, tokens};
use super::{ReadError, Refusal, Wanted};

pub(super) fn read(text: &str, bare: Unit) -> Result<Size, ReadError> {
    let tokens = tokens(text, Wanted::Size)?;
    check_words::<Unit>(text, &tokens).map_err(ReadError::of_size)?;
    let mut sides = tokens.split(|token| token.kind == Kind::Times);
    let (first, second, third) = (sides.next().unwrap_or(&[]), sides.next(), sides.next());
    let Some(second) = second else {
        return refuse(extent(&tokens), Refusal::OneLength);
    };
    if third.is_some() {
        let beyond = tokens
            .iter()
            .filter(|token| token.kind == Kind::Times)
            .nth(1);
        let span = beyond.map_or(extent(&tokens), |token| token.span.clone());
        return refuse(span, Refusal::ThreeLengths);
    }
    if first.is_empty() || second.is_empty() {
        let times = tokens.iter().find(|token| token.kind == Kind::Times);
        return refuse(
            times.map_or(extent(&tokens), |token| token.span.clone()),
            Refusal::OneLength,
        );
    }
    let (first_bare, second_bare) = units(text, bare, first, second)?;
    let width = side(text, first_bare, first)?;
    let height = side(text, second_bare, second)?;
    Ok(Size::new(width, height))
}

/// The unit of a number without one, on each side.
fn units(
    text: &str,
    bare: Unit,
    first: &[Token],
    second: &[Token],
) -> Result<(Unit, Unit), ReadError> {
    let (has_first, has_second) = (
        first.iter().any(Token::is_unit),
        second.iter().any(Token::is_unit),
    );
    match (has_first, has_second) {
        (false, false) | (true, true) => Ok((bare, bare)),
        // 8 x 10 in: the one unit is that of both.
        (false, true) => match only_unit(second) {
            Some(unit) => Ok((unit, bare)),
            None => missing(text, first, &[bare]),
        },
        // 8 in x 10 leaves nothing to choose where bare numbers are inches.
        (true, false) => match only_unit(first) {
            Some(unit) if unit == bare => Ok((bare, bare)),
            Some(unit) => missing(text, second, &[unit, bare]),
            None => missing(text, second, &[bare]),
        },
    }
}

fn missing<T>(text: &str, side: &[Token], units: &[Unit]) -> Result<T, ReadError> {
    let span = extent(side);
    let typed = text.get(span.clone()).unwrap_or(text).to_owned();
    let readings = units.iter().map(|unit| format!("{typed} {unit}")).collect();
    refuse(span, Refusal::UnitMissing { typed, readings })
}

fn side(text: &str, bare: Unit, tokens: &[Token]) -> Result<Length, ReadError> {
    let quanta = Sum::new(text, Some(bare), tokens)
        .read()
        .map_err(ReadError::of_size)?;
    if quanta < 0 {
        let span = extent(tokens);
        let typed = text.get(span.clone()).unwrap_or(text).to_owned();
        return refuse(span, Refusal::NegativeSide { typed });
    }
    Ok(Length::from_quanta(quanta))
}

fn refuse<T>(span: Range<usize>, refusal: Refusal) -> Result<T, ReadError> {
    Err(ReadError::new(Wanted::Size, span, refusal))
}
