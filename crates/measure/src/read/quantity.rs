//! One number of one unit: whole, decimal, fraction or mixed.

use std::ops::Range;

use super::number::{self, Plain, Reading};
use super::scale::Scale;
use super::token::{Kind, Token, extent};
use super::{ReadError, Refusal};

/// Most digits of a number in a fraction.
const FRACTION_DIGITS: usize = 12;
/// Most digits before the point; more are beyond every limit.
const WHOLE_DIGITS: usize = 12;

/// A value in quanta, rounded toward zero only where `exact` is false.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Held {
    pub quanta: i128,
    pub exact: bool,
}

/// What one number is read with.
#[derive(Clone, Copy)]
pub(super) struct Reader<'t, U> {
    pub text: &'t str,
    pub unit: U,
    /// Whether a minus stands before the number; only readings need it.
    pub negative: bool,
}

/// A fraction with the whole number before it.
#[derive(Clone, Copy)]
struct Mixed {
    whole: i128,
    top: i128,
    bottom: i128,
}

/// A fraction's tokens and what stands around it.
struct Found<'a, 't> {
    before: &'a [Token<'t>],
    fraction: &'a [Token<'t>],
    after: &'a [Token<'t>],
}

impl<U: Scale> Reader<'_, U> {
    /// The value of these tokens, none of which is a unit.
    pub fn value(&self, tokens: &[Token]) -> Result<Held, ReadError> {
        if let Some(stray) = tokens.iter().find(|token| is_stray(token)) {
            return self.stray(stray.span.clone());
        }
        match find_fraction(tokens) {
            Some(found) => self.with_fraction(&found),
            None => self.without_fraction(tokens),
        }
    }

    fn without_fraction(&self, tokens: &[Token]) -> Result<Held, ReadError> {
        match tokens {
            [
                Token {
                    kind: Kind::Number(typed),
                    span,
                    ..
                },
            ] => self.decimal(typed, span.clone()),
            [first, minus, second]
                if minus.kind == Kind::Minus && is_number(first) && is_number(second) =>
            {
                self.hyphen(
                    extent(tokens),
                    rational(&tokens[..1]),
                    rational(&tokens[2..]),
                    false,
                )
            }
            [first, second, ..] if is_number(first) && is_number(second) => self.pair(tokens),
            _ => self.out_of_place(tokens),
        }
    }

    fn with_fraction(&self, found: &Found) -> Result<Held, ReadError> {
        if let Some(next) = found.after.first() {
            if next.kind == Kind::Slash {
                return refuse::<U, _>(next.span.clone(), Refusal::SecondBottom);
            }
            let both = extent(found.fraction).start..extent(found.after).end;
            return match next.kind {
                Kind::Number(_) | Kind::Vulgar(..) => self.refuse(both, |typed| Refusal::Pair {
                    typed,
                    readings: Vec::new(),
                }),
                _ => self.out_of_place(found.after),
            };
        }
        let (top, bottom) = self.top_and_bottom(found.fraction)?;
        match found.before {
            [] => self.bare_fraction(found.fraction, top, bottom),
            [whole] if is_number(whole) => self.mixed(whole, found, top, bottom),
            [whole, joint] if is_number(whole) && joint.kind == Kind::And => {
                self.mixed(whole, found, top, bottom)
            }
            [whole, hyphen] if is_number(whole) && hyphen.kind == Kind::Minus => {
                let tight = !hyphen.gap && found.fraction.first().is_none_or(|token| !token.gap);
                if tight {
                    return self.mixed(whole, found, top, bottom);
                }
                let all = whole.span.start..extent(found.fraction).end;
                let left = rational(std::slice::from_ref(whole));
                self.hyphen(all, left, Some((top, bottom)), top < bottom)
            }
            [first, second, ..] if is_number(first) && is_number(second) => {
                self.pair(&found.before[..2])
            }
            _ => self.out_of_place(found.before),
        }
    }

    /// The two numbers of a fraction, each checked.
    fn top_and_bottom(&self, fraction: &[Token]) -> Result<(i128, i128), ReadError> {
        let all = extent(fraction);
        let (top, bottom) = match fraction {
            [
                Token {
                    kind: Kind::Vulgar(top, bottom),
                    ..
                },
            ] => return Ok((i128::from(*top), i128::from(*bottom))),
            [one, bottom] if one.kind == Kind::OneOver => (None, bottom),
            [slash, _] if slash.kind == Kind::Slash => return refuse::<U, _>(all, Refusal::NoTop),
            [top, slash, bottom] if slash.kind == Kind::Slash => (Some(top), bottom),
            [slash] if slash.kind == Kind::Slash => return refuse::<U, _>(all, Refusal::NoTop),
            _ => return refuse::<U, _>(all, Refusal::NoBottom),
        };
        let top = top.map_or(Ok(1), |token| self.part(token))?;
        let bottom_number = self.part(bottom)?;
        if bottom_number == 0 {
            return refuse::<U, _>(bottom.span.clone(), Refusal::ZeroBottom);
        }
        Ok((top, bottom_number))
    }

    /// One number of a fraction.
    fn part(&self, token: &Token) -> Result<i128, ReadError> {
        let digits = match &token.kind {
            Kind::Number(digits) => *digits,
            Kind::Raised(digits) | Kind::Lowered(digits) => digits,
            _ => return self.stray(token.span.clone()),
        };
        if digits.contains(['.', ',']) {
            let typed = (*digits).to_owned();
            return refuse::<U, _>(token.span.clone(), Refusal::FractionOfDecimals { typed });
        }
        let digits = digits.trim_start_matches('0');
        if digits.len() > FRACTION_DIGITS {
            return refuse::<U, _>(
                token.span.clone(),
                Refusal::LongFraction {
                    limit: FRACTION_DIGITS,
                },
            );
        }
        // No digits are left of zero.
        Ok(digits.parse().unwrap_or(0))
    }

    /// A fraction alone; a top whose digits split into a whole number and a fraction is refused.
    fn bare_fraction(&self, tokens: &[Token], top: i128, bottom: i128) -> Result<Held, ReadError> {
        if top >= bottom {
            let digits = top.to_string();
            let splits = (1..digits.len()).filter_map(|at| digits.split_at_checked(at));
            let mixed = splits
                .filter(|(_, part)| !part.starts_with('0'))
                .filter_map(|(whole, part)| {
                    let (whole, top) = (whole.parse().ok()?, part.parse().ok()?);
                    (top < bottom).then_some(Mixed { whole, top, bottom })
                });
            let mut readings: Vec<String> = mixed.map(|mixed| self.print(mixed)).collect();
            if !readings.is_empty() {
                readings.insert(
                    0,
                    self.print(Mixed {
                        whole: 0,
                        top,
                        bottom,
                    }),
                );
                return self.refuse(extent(tokens), |typed| Refusal::Improper {
                    typed,
                    readings,
                });
            }
        }
        Ok(self.hold(Mixed {
            whole: 0,
            top,
            bottom,
        }))
    }

    /// A whole number and a fraction.
    fn mixed(
        &self,
        whole: &Token,
        found: &Found,
        top: i128,
        bottom: i128,
    ) -> Result<Held, ReadError> {
        let all = whole.span.start..extent(found.fraction).end;
        let Kind::Number(typed) = whole.kind else {
            return self.out_of_place(found.before);
        };
        let plain = self.plain(typed, whole.span.clone())?;
        if !plain.is_whole() {
            let readings = self.after_decimals(&plain, top, bottom);
            return self.refuse(all, |typed| Refusal::DecimalAndFraction { typed, readings });
        }
        let sum = Mixed {
            whole: self.whole(&plain, whole.span.clone())?,
            top,
            bottom,
        };
        if top >= bottom {
            let joined = format!("{}{top}", plain.whole).parse().ok();
            let joined = joined.map(|top| Mixed {
                whole: 0,
                top,
                bottom,
            });
            let both = [Some(sum), joined].into_iter().flatten();
            let mut readings: Vec<String> = both.map(|mixed| self.print(mixed)).collect();
            readings.dedup();
            return self.refuse(all, |typed| Refusal::MixedImproper { typed, readings });
        }
        Ok(self.hold(sum))
    }

    /// The decimal alone, and with the fraction in place of its decimals.
    fn after_decimals(&self, plain: &Plain, top: i128, bottom: i128) -> Vec<String> {
        let whole = plain.whole.parse().unwrap_or(0);
        let instead = (top < bottom).then(|| self.print(Mixed { whole, top, bottom }));
        [Some(self.with_unit(&plain.print())), instead]
            .into_iter()
            .flatten()
            .collect()
    }

    /// Digits with points and commas, as one number.
    fn plain(&self, typed: &str, span: Range<usize>) -> Result<Plain, ReadError> {
        match number::read(typed) {
            Reading::One(plain) => Ok(plain),
            Reading::Two { decimal, grouped } => {
                let readings = [decimal, grouped]
                    .map(|plain| self.with_unit(&plain.print()))
                    .to_vec();
                self.refuse(span, |typed| Refusal::Comma { typed, readings })
            }
            Reading::Neither => self.refuse(span, |typed| Refusal::Separators { typed }),
        }
    }

    /// The digits before the point.
    fn whole(&self, plain: &Plain, span: Range<usize>) -> Result<i128, ReadError> {
        if plain.whole.len() > WHOLE_DIGITS {
            return self.refuse(span, |typed| Refusal::OutOfRange {
                typed,
                limit: U::LIMIT.1,
            });
        }
        // No digits are left of zero.
        Ok(plain.whole.parse().unwrap_or(0))
    }

    /// A whole or decimal number, multiplied out digit by digit so that no length of decimals is
    /// too long.
    fn decimal(&self, typed: &str, span: Range<usize>) -> Result<Held, ReadError> {
        let plain = self.plain(typed, span.clone())?;
        let one = i128::from(self.unit.quanta());
        let whole = self.whole(&plain, span)?.saturating_mul(one);
        let (mut carried, mut exact) = (0_i128, true);
        for digit in plain.decimals.chars().rev().filter_map(|c| c.to_digit(10)) {
            let sum = i128::from(digit)
                .saturating_mul(one)
                .saturating_add(carried);
            exact &= sum.rem_euclid(10) == 0;
            carried = sum.div_euclid(10);
        }
        Ok(Held {
            quanta: whole.saturating_add(carried),
            exact,
        })
    }

    fn hold(&self, Mixed { whole, top, bottom }: Mixed) -> Held {
        // Each number has at most 12 digits and a unit has at most 13.
        let one = i128::from(self.unit.quanta());
        let part = top.saturating_mul(one);
        let quanta = part.checked_div(bottom).unwrap_or(0);
        let exact = part.checked_rem(bottom) == Some(0);
        Held {
            quanta: whole.saturating_mul(one).saturating_add(quanta),
            exact,
        }
    }

    /// Two or more numbers side by side.
    fn pair(&self, tokens: &[Token]) -> Result<Held, ReadError> {
        let typed: Vec<&str> = tokens.iter().map_while(|token| digits(token)).collect();
        let end = typed.len().saturating_sub(1);
        let span = extent(tokens.get(..=end).unwrap_or(tokens));
        let mut readings = Vec::new();
        if let [first, rest @ ..] = typed.as_slice()
            && typed
                .iter()
                .all(|digits| digits.bytes().all(|b| b.is_ascii_digit()))
        {
            let joined = typed.concat();
            let grouped = first.len() <= 3 && rest.iter().all(|group| group.len() == 3);
            if let [second] = rest {
                readings.push(self.with_unit(&format!("{first}.{second}")));
                if !grouped && let Some(bottom) = bottom_above(second) {
                    readings.push(self.with_unit(&format!("{first} {second}/{bottom}")));
                }
            }
            if grouped {
                readings.push(self.with_unit(&joined));
            }
        }
        self.refuse(span, |typed| Refusal::Pair { typed, readings })
    }

    /// A hyphen that may join or subtract or, between whole numbers, span a range.
    fn hyphen(
        &self,
        span: Range<usize>,
        left: Option<(i128, i128)>,
        right: Option<(i128, i128)>,
        joins: bool,
    ) -> Result<Held, ReadError> {
        let both = left.zip(right);
        let sum = both.and_then(|(left, right)| combine(left, right, i128::checked_add));
        // Below zero, taking away more is adding to the size.
        let less = if self.negative {
            sum
        } else {
            both.and_then(|(left, right)| combine(left, right, i128::checked_sub))
        };
        let print = |ratio| self.print_ratio(ratio);
        let positive = Self {
            negative: false,
            ..*self
        };
        let to = right.map(|right| positive.print_ratio(right));
        match (left.map(print), to, less.map(print)) {
            (Some(from), Some(to), Some(less)) if !joins => {
                self.refuse(span, |typed| Refusal::Range {
                    typed,
                    from,
                    to,
                    less,
                })
            }
            (_, _, less) => {
                let mut readings: Vec<String> = sum.map(print).into_iter().chain(less).collect();
                readings.dedup();
                self.refuse(span, |typed| Refusal::Hyphen { typed, readings })
            }
        }
    }

    fn print(&self, Mixed { whole, top, bottom }: Mixed) -> String {
        let sum = whole
            .checked_mul(bottom)
            .and_then(|whole| whole.checked_add(top));
        self.print_ratio((sum.unwrap_or(top), bottom))
    }

    /// `5 1/2 in`, with the minus typed before the number.
    fn print_ratio(&self, (top, bottom): (i128, i128)) -> String {
        let shared = greatest_divisor(top.saturating_abs(), bottom);
        let size = top.saturating_abs().checked_div(shared).unwrap_or(0);
        let bottom = bottom.checked_div(shared).unwrap_or(1);
        let whole = size.checked_div(bottom).unwrap_or(0);
        let number = match (whole, size.checked_rem(bottom).unwrap_or(0)) {
            (whole, 0) => whole.to_string(),
            (0, top) => format!("{top}/{bottom}"),
            (whole, top) => format!("{whole} {top}/{bottom}"),
        };
        let sign = if (top < 0) == self.negative { "" } else { "-" };
        format!("{sign}{number} {}", self.unit.symbol())
    }

    fn with_unit(&self, number: &str) -> String {
        let sign = if self.negative { "-" } else { "" };
        format!("{sign}{number} {}", self.unit.symbol())
    }

    fn out_of_place<T>(&self, tokens: &[Token]) -> Result<T, ReadError> {
        // A number by itself is in place; what stands beside it is not.
        let first = tokens
            .iter()
            .find(|token| !is_number(token))
            .or(tokens.first());
        let span = first.map_or(0..self.text.len(), |token| token.span.clone());
        self.stray(span)
    }

    fn stray<T>(&self, span: Range<usize>) -> Result<T, ReadError> {
        let typed = self.text.get(span.clone()).unwrap_or(self.text).to_owned();
        refuse::<U, _>(span, Refusal::Stray { typed })
    }

    fn refuse<T>(
        &self,
        span: Range<usize>,
        refusal: impl FnOnce(String) -> Refusal,
    ) -> Result<T, ReadError> {
        // The sentence compares what is typed with its readings, which carry the sign.
        let sign = if self.negative { "-" } else { "" };
        let typed = self.text.get(span.clone()).unwrap_or(self.text);
        refuse::<U, _>(span, refusal(format!("{sign}{typed}")))
    }
}

fn refuse<U: Scale, T>(span: Range<usize>, refusal: Refusal) -> Result<T, ReadError> {
    Err(ReadError::new(U::WANTED, span, refusal))
}

/// The one fraction among the tokens: from its top number, or from its stroke, to its bottom.
fn find_fraction<'a, 't>(tokens: &'a [Token<'t>]) -> Option<Found<'a, 't>> {
    let at = tokens
        .iter()
        .position(|t| matches!(t.kind, Kind::Slash | Kind::Vulgar(..) | Kind::OneOver))?;
    let is_part = |token: &Token| {
        matches!(
            token.kind,
            Kind::Number(_) | Kind::Raised(_) | Kind::Lowered(_)
        )
    };
    let (before, rest) = tokens.split_at(at);
    let (before, top) = match before.split_last() {
        Some((top, _)) if rest[0].kind == Kind::Slash && is_part(top) => {
            (before.len().saturating_sub(1), 1)
        }
        _ => (before.len(), 0),
    };
    let wants_bottom = !matches!(rest[0].kind, Kind::Vulgar(..));
    let bottom = usize::from(wants_bottom && rest.get(1).is_some_and(is_part));
    let length = [top, 1, bottom].into_iter().fold(0, usize::saturating_add);
    let (before, rest) = tokens.split_at(before);
    let (fraction, after) = rest.split_at(length);
    Some(Found {
        before,
        fraction,
        after,
    })
}

/// A number as a ratio, where it has one reading and few digits.
fn rational(tokens: &[Token]) -> Option<(i128, i128)> {
    let [
        Token {
            kind: Kind::Number(typed),
            ..
        },
    ] = tokens
    else {
        return None;
    };
    let Reading::One(plain) = number::read(typed) else {
        return None;
    };
    if plain.whole.len().saturating_add(plain.decimals.len()) > FRACTION_DIGITS {
        return None;
    }
    let places = u32::try_from(plain.decimals.len()).ok()?;
    let digits = format!("0{}{}", plain.whole, plain.decimals);
    Some((digits.parse().ok()?, 10_i128.checked_pow(places)?))
}

fn is_number(token: &Token) -> bool {
    matches!(token.kind, Kind::Number(_))
}

fn is_stray(token: &Token) -> bool {
    matches!(token.kind, Kind::Other | Kind::Times)
}

fn digits<'t>(token: &Token<'t>) -> Option<&'t str> {
    match token.kind {
        Kind::Number(digits) => Some(digits),
        _ => None,
    }
}

/// The coarsest bottom number of a tape above a typed top number.
fn bottom_above(top: &str) -> Option<u32> {
    let top: u32 = top.parse().ok()?;
    [8, 16, 32, 64, 128]
        .into_iter()
        .find(|bottom| *bottom > top && top > 0)
}

fn combine(
    (top, bottom): (i128, i128),
    (other_top, other_bottom): (i128, i128),
    join: fn(i128, i128) -> Option<i128>,
) -> Option<(i128, i128)> {
    let top = join(
        top.checked_mul(other_bottom)?,
        other_top.checked_mul(bottom)?,
    )?;
    Some((top, bottom.checked_mul(other_bottom)?))
}

/// Euclid's greatest common divisor; at least 1.
fn greatest_divisor(mut a: i128, mut b: i128) -> i128 {
    while let Some(left) = a.checked_rem(b) {
        (a, b) = (b, left);
    }
    a.max(1)
}
