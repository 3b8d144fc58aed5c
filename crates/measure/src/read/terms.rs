//! Numbers with their units, larger first, summed.

use std::ops::Range;

use super::quantity::{Held, Reader};
use super::scale::Scale;
use super::token::{Kind, Mark, Token, extent, tokens};
use super::{ReadError, Refusal, Wanted};

/// Reads a text as a sum of numbers with units, in quanta; `bare` is the unit of a number alone.
pub(super) fn read<U: Scale>(text: &str, bare: Option<U>) -> Result<i64, ReadError> {
    let tokens = tokens(text, U::WANTED)?;
    check_words::<U>(text, &tokens)?;
    if let Some(times) = tokens.iter().find(|token| token.kind == Kind::Times) {
        let typed = text.get(times.span.clone()).unwrap_or(text).to_owned();
        let refusal = match U::WANTED {
            Wanted::Length => Refusal::TwoLengths { typed },
            _ => Refusal::Stray { typed },
        };
        return Err(ReadError::new(U::WANTED, times.span.clone(), refusal));
    }
    Sum::new(text, bare, &tokens).read()
}

/// Every word and mark is a unit.
pub(super) fn check_words<U: Scale>(text: &str, tokens: &[Token]) -> Result<(), ReadError> {
    let Some(unknown) = tokens
        .iter()
        .find(|token| token.is_unit() && unit_of::<U>(token).is_none())
    else {
        return Ok(());
    };
    let typed = text.get(unknown.span.clone()).unwrap_or(text).to_owned();
    let near = nearest_word::<U>(&typed);
    let refusal = Refusal::UnknownUnit {
        typed,
        near,
        wanted: U::WANTED,
    };
    Err(ReadError::new(U::WANTED, unknown.span.clone(), refusal))
}

/// The unit a word or mark names.
pub(super) fn unit_of<U: Scale>(token: &Token) -> Option<U> {
    match token.kind {
        Kind::Word(word) => U::of_word(word),
        Kind::Mark(mark) => U::of_mark(mark),
        _ => None,
    }
}

/// A sum being read: what is typed, and what came before the number at hand.
pub(super) struct Sum<'a, 't, U> {
    text: &'t str,
    bare: Option<U>,
    tokens: &'a [Token<'t>],
    negative: bool,
}

/// The numbers read so far.
struct Before<'a, 't, U> {
    /// The last unit.
    unit: U,
    /// The last number, without its unit.
    number: &'a [Token<'t>],
    /// Their sum in quanta, without the sign.
    quanta: i128,
    /// All that was read.
    span: Range<usize>,
}

impl<'a, 't, U: Scale> Sum<'a, 't, U> {
    /// The tokens must hold no unknown word.
    pub fn new(text: &'t str, bare: Option<U>, tokens: &'a [Token<'t>]) -> Self {
        match tokens.split_first() {
            Some((sign, rest)) if !rest.is_empty() && is_sign(text, sign) => Self {
                text,
                bare,
                tokens: rest,
                negative: sign.kind == Kind::Minus,
            },
            _ => Self {
                text,
                bare,
                tokens,
                negative: false,
            },
        }
    }

    pub fn read(&self) -> Result<i64, ReadError> {
        self.check_apostrophe()?;
        let mut before: Option<Before<'a, 't, U>> = None;
        for term in self.tokens.split_inclusive(Token::is_unit) {
            before = Some(self.add(before, term)?);
        }
        let quanta = before.map_or(0, |before| before.quanta);
        let whole = self.typed(extent(self.tokens));
        let quanta = i64::try_from(quanta).ok().filter(|_| quanta <= U::LIMIT.0);
        let Some(quanta) = quanta else {
            let refusal = Refusal::OutOfRange {
                typed: whole,
                limit: U::LIMIT.1,
            };
            return Err(ReadError::new(U::WANTED, extent(self.tokens), refusal));
        };
        Ok(if self.negative {
            quanta.saturating_neg()
        } else {
            quanta
        })
    }

    /// A foot mark close before three digits may be an apostrophe between thousands.
    fn check_apostrophe(&self) -> Result<(), ReadError> {
        let Some(foot) = U::of_mark(Mark::Foot) else {
            return Ok(());
        };
        let found = self.tokens.windows(3).enumerate().find_map(|(at, three)| {
            let [first, mark, second] = three else {
                return None;
            };
            let (Kind::Number(first), Kind::Number(second)) = (&first.kind, &second.kind) else {
                return None;
            };
            let tight = mark.kind == Kind::Mark(Mark::Foot) && !mark.gap && !three[2].gap;
            let grouped =
                (1..=3).contains(&first.len()) && !first.starts_with('0') && second.len() == 3;
            let plain = !first.contains(['.', ',']) && !second.contains(['.', ',']);
            (tight && grouped && plain).then_some((at, extent(three), *first, *second))
        });
        let Some((at, span, first, second)) = found else {
            return Ok(());
        };
        let named = self.tokens.get(at.saturating_add(3)).and_then(unit_of);
        let symbol = |unit: Option<U>| unit.map_or("", U::symbol);
        let (sign, whole) = (if self.negative { "-" } else { "" }, named.or(self.bare));
        let (feet, inches) = (foot.symbol(), symbol(named.or(foot.next())));
        let mut readings = vec![
            format!("{sign}{first} {feet} {second} {inches}"),
            format!("{sign}{first}{second} {}", symbol(whole)),
        ];
        readings.retain(|reading| read(reading, self.bare).is_ok());
        self.refuse(span, |typed| Refusal::Apostrophe { typed, readings })
    }

    /// One more number with its unit.
    fn add(
        &self,
        before: Option<Before<'a, 't, U>>,
        term: &'a [Token<'t>],
    ) -> Result<Before<'a, 't, U>, ReadError> {
        let (number, named) = match term.split_last() {
            Some((last, number)) if last.is_unit() => (number, Some(last)),
            _ => (term, None),
        };
        let number = self.after_joint(before.as_ref(), number, named)?;
        if let (
            Some(named),
            []
            | [
                Token {
                    kind: Kind::Minus | Kind::And,
                    ..
                },
            ],
        ) = (named, number)
        {
            return self.refuse(named.span.clone(), |typed| Refusal::NoNumber { typed });
        }
        let unit = match named.and_then(unit_of) {
            Some(unit) => unit,
            None => self.unit_of_bare(before.as_ref(), number)?,
        };
        if let Some(before) = before
            .as_ref()
            .filter(|before| named.is_none() && carries_on(before, number))
        {
            self.check_proper(before, number)?;
        }
        let place = extent(named.map_or(number, std::slice::from_ref));
        check_order(before.as_ref(), number, named.is_none(), unit, place)?;
        let negative = self.negative && before.is_none();
        let held = Reader {
            text: self.text,
            unit,
            negative,
        }
        .value(number)?;
        let quanta = self.held(held, extent(number).start..extent(term).end, negative)?;
        let (earlier, start) = before.map_or((0, extent(term).start), |before| {
            (before.quanta, before.span.start)
        });
        let quanta = quanta.saturating_add(earlier);
        Ok(Before {
            unit,
            number,
            quanta,
            span: start..extent(term).end,
        })
    }

    /// A fraction that carries on is below one, as it is beside a whole number.
    fn check_proper(&self, before: &Before<'a, 't, U>, number: &[Token]) -> Result<(), ReadError> {
        let reader = Reader {
            text: self.text,
            unit: before.unit,
            negative: false,
        };
        let held = reader.value(number)?;
        if held.quanta < i128::from(before.unit.quanta()) {
            return Ok(());
        }
        let span = extent(before.number).start..extent(number).end;
        self.refuse(span, |typed| Refusal::MixedImproper {
            typed,
            readings: Vec::new(),
        })
    }

    /// The number without the `and`, plus or hyphen that joins it to the one before.
    fn after_joint(
        &self,
        before: Option<&Before<'a, 't, U>>,
        number: &'a [Token<'t>],
        named: Option<&Token>,
    ) -> Result<&'a [Token<'t>], ReadError> {
        let (Some(before), [joint, rest @ ..]) = (before, number) else {
            return Ok(number);
        };
        match (&joint.kind, rest.first()) {
            (Kind::And, Some(_)) => Ok(rest),
            (Kind::Minus, Some(next)) => {
                let has_next = before.unit.next().is_some();
                if has_next && !joint.gap && !next.gap {
                    return Ok(rest);
                }
                let end = named.map_or(extent(rest).end, |named| named.span.end);
                self.hyphen(
                    before,
                    rest,
                    named.and_then(unit_of),
                    before.span.start..end,
                )
            }
            _ => Ok(number),
        }
    }

    /// A hyphen between two numbers with units, which may join, subtract or span a range.
    fn hyphen<T>(
        &self,
        before: &Before<U>,
        rest: &[Token],
        unit: Option<U>,
        span: Range<usize>,
    ) -> Result<T, ReadError> {
        let usual = before.unit.next();
        let sign = if self.negative { -1 } else { 1 };
        let left = before.quanta.saturating_mul(sign);
        let right = unit.or(usual).and_then(|unit| {
            let reader = Reader {
                text: self.text,
                unit,
                negative: false,
            };
            let held = reader
                .value(rest)
                .ok()
                .filter(|held| held.exact || !U::EXACT)?;
            Some((unit, held.quanta))
        });
        let print =
            |unit: U, quanta: i128| i64::try_from(quanta).ok().map(|quanta| unit.print(quanta));
        let less = right.and_then(|(unit, right)| print(unit, left.saturating_sub(right)));
        let to = right.and_then(|(unit, right)| print(unit, right));
        match (print(before.unit, left), to, less) {
            (Some(from), Some(to), Some(less)) if usual.is_none() => {
                self.refuse(span, |typed| Refusal::Range {
                    typed,
                    from,
                    to,
                    less,
                })
            }
            (_, _, less) => {
                let sum = right.and_then(|(unit, right)| {
                    print(
                        unit,
                        before.quanta.saturating_add(right).saturating_mul(sign),
                    )
                });
                let mut readings: Vec<String> = sum.into_iter().chain(less).collect();
                readings.dedup();
                self.refuse(span, |typed| Refusal::Hyphen { typed, readings })
            }
        }
    }

    /// The unit of a number typed without one.
    fn unit_of_bare(
        &self,
        before: Option<&Before<'a, 't, U>>,
        number: &[Token],
    ) -> Result<U, ReadError> {
        let usual = match before {
            None => self.bare,
            Some(before) if carries_on(before, number) => Some(before.unit),
            Some(before) => before.unit.next().filter(|_| !is_fraction(number)),
        };
        if let Some(unit) = usual {
            return Ok(unit);
        }
        // What is no number at all is refused as that.
        if let Some(unit) = before.map(|before| before.unit) {
            Reader {
                text: self.text,
                unit,
                negative: false,
            }
            .value(number)?;
        }
        let readings = before.map_or_else(Vec::new, |before| self.bare_readings(before, number));
        self.refuse(extent(number), |typed| Refusal::UnitMissing {
            typed,
            readings,
        })
    }

    /// What a number without a unit may mean after `before`.
    fn bare_readings(&self, before: &Before<'a, 't, U>, number: &[Token]) -> Vec<String> {
        let (typed, so_far) = (self.typed(extent(number)), self.typed(before.span.clone()));
        // A fraction after inches is of inches, if it is of anything.
        let smaller = if before.unit.takes_fraction() && is_fraction(number) {
            &[]
        } else {
            before.unit.smaller()
        };
        let with_unit = |unit: &U| format!("{so_far} {typed} {}", unit.symbol());
        let mut readings: Vec<String> = smaller.iter().map(with_unit).collect();
        let alone = before.span.start == extent(before.number).start;
        if let (true, Some(whole)) = (alone, whole_digits(before.number)) {
            let symbol = before.unit.symbol();
            if let Some(decimals) = whole_digits(number) {
                readings.push(format!("{whole}.{decimals} {symbol}"));
            } else if is_fraction(number) {
                readings.push(format!("{whole} {typed} {symbol}"));
            }
        }
        // Only what is read in its turn is offered.
        readings.retain(|reading| read(reading, self.bare).is_ok());
        readings
    }

    /// The quanta, where they are whole.
    fn held(&self, held: Held, span: Range<usize>, negative: bool) -> Result<i128, ReadError> {
        if held.quanta > U::LIMIT.0 {
            return self.refuse(span, |typed| Refusal::OutOfRange {
                typed,
                limit: U::LIMIT.1,
            });
        }
        if held.exact || !U::EXACT {
            return Ok(held.quanta);
        }
        let (sign, minus) = if negative { (-1, "-") } else { (1, "") };
        let signed = |quanta: i128| i64::try_from(quanta.saturating_mul(sign)).unwrap_or(0);
        let (inner, outer) = (signed(held.quanta), signed(held.quanta.saturating_add(1)));
        let (below, above) = (inner.min(outer), inner.max(outer));
        self.refuse(span, |typed| Refusal::NotHeld {
            typed: format!("{minus}{typed}"),
            below: U::finest().print(below),
            above: U::finest().print(above),
            near: U::near(inner),
        })
    }

    fn typed(&self, span: Range<usize>) -> String {
        self.text.get(span).unwrap_or(self.text).to_owned()
    }

    fn refuse<T>(
        &self,
        span: Range<usize>,
        refusal: impl FnOnce(String) -> Refusal,
    ) -> Result<T, ReadError> {
        let typed = self.typed(span.clone());
        Err(ReadError::new(U::WANTED, span, refusal(typed)))
    }
}

/// A minus or plus that may stand before a number; `&` and `and` may not.
fn is_sign(text: &str, token: &Token) -> bool {
    token.kind == Kind::Minus
        || token.kind == Kind::And && text.get(token.span.clone()) == Some("+")
}

/// The larger unit comes first, each once, but for a fraction that carries on.
fn check_order<U: Scale>(
    before: Option<&Before<U>>,
    number: &[Token],
    is_bare: bool,
    unit: U,
    place: Range<usize>,
) -> Result<(), ReadError> {
    match before {
        Some(before) if is_bare && carries_on(before, number) => Ok(()),
        Some(before) if unit.quanta() >= before.unit.quanta() => {
            let refusal = Refusal::UnitOrder {
                first: before.unit.symbol(),
                second: unit.symbol(),
            };
            Err(ReadError::new(U::WANTED, place, refusal))
        }
        _ => Ok(()),
    }
}

/// Whether the number is a fraction that carries on the one before, as in `3" 1/2`.
fn carries_on<U: Scale>(before: &Before<U>, number: &[Token]) -> bool {
    before.unit.takes_fraction() && whole_digits(before.number).is_some() && is_fraction(number)
}

/// The digits of a number without points, commas or a fraction.
fn whole_digits<'t>(number: &[Token<'t>]) -> Option<&'t str> {
    match number {
        [
            Token {
                kind: Kind::Number(digits),
                ..
            },
        ] if !digits.contains(['.', ',']) => Some(digits),
        _ => None,
    }
}

/// Whether the tokens are a fraction with no whole number before it.
fn is_fraction(number: &[Token]) -> bool {
    matches!(
        number,
        [
            Token {
                kind: Kind::Vulgar(..) | Kind::OneOver,
                ..
            },
            ..
        ] | [
            _,
            Token {
                kind: Kind::Slash,
                ..
            },
            ..
        ]
    )
}

/// The spelling nearest to a word that is no unit: one letter off, or two in a long word.
fn nearest_word<U: Scale>(typed: &str) -> Option<&'static str> {
    let typed = typed.to_lowercase();
    let typed = typed.trim_end_matches('.');
    let allowed = match typed.chars().count() {
        0..=2 => 0,
        3..=5 => 1,
        _ => 2,
    };
    let spelled = U::WORDS
        .iter()
        .map(|(word, _)| (distance(typed, word), *word));
    let near = spelled
        .filter(|(off, _)| *off <= allowed)
        .min_by_key(|(off, _)| *off);
    near.map(|(_, word)| word)
}

/// How many letters must be added, dropped or changed (Levenshtein's distance).
fn distance(typed: &str, word: &str) -> usize {
    let word: Vec<char> = word.chars().collect();
    let mut row: Vec<usize> = (0..=word.len()).collect();
    for (down, letter) in typed.chars().enumerate() {
        let mut diagonal = std::mem::replace(&mut row[0], down.saturating_add(1));
        for (across, other) in word.iter().enumerate() {
            let left = row[across].saturating_add(1);
            let above = row[across.saturating_add(1)];
            let changed = diagonal.saturating_add(usize::from(letter != *other));
            diagonal = above;
            row[across.saturating_add(1)] = changed.min(left).min(above.saturating_add(1));
        }
    }
    row[word.len()]
}

/// Whether every unit named among the tokens is one and the same; `None` where none is.
pub(super) fn only_unit<U: Scale>(tokens: &[Token]) -> Option<U> {
    let mut units = tokens.iter().filter_map(unit_of);
    let first = units.next()?;
    units.next().is_none().then_some(first)
}
