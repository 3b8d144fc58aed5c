//! Reading a formula: operator precedence by binding strength.

use super::expression::{Expression, Function};
use super::quantity::{Quantity, Unit};
use super::token::{Sign, Token, tokens};
use super::{Fault, Formula};

/// Reads `result = expression`.
pub(crate) fn parse(text: &str) -> Result<Formula, Fault> {
    let mut reader = Reader {
        tokens: tokens(text)?,
        next: 0,
    };
    let result = match reader.take() {
        (Token::Name(name), _) => name,
        found => return Err(wanted("the name of the result", &found)),
    };
    reader.expect(&Token::Sign(Sign::Equal), "=")?;
    let expression = reader.expression(0)?;
    reader.expect(&Token::End, "an operator or the end")?;
    Ok(Formula {
        text: text.to_owned(),
        result,
        expression,
    })
}

struct Reader {
    tokens: Vec<(Token, usize)>,
    next: usize,
}

impl Reader {
    fn peek(&self) -> &(Token, usize) {
        &self.tokens[self.next.min(self.tokens.len() - 1)]
    }

    fn take(&mut self) -> (Token, usize) {
        let taken = self.peek().clone();
        self.next += 1;
        taken
    }

    fn takes(&mut self, token: &Token) -> bool {
        let found = self.peek().0 == *token;
        if found {
            self.next += 1;
        }
        found
    }

    fn expect(&mut self, token: &Token, words: &'static str) -> Result<(), Fault> {
        let found = self.take();
        if found.0 == *token {
            Ok(())
        } else {
            Err(wanted(words, &found))
        }
    }

    /// An expression whose operators all bind more strongly than `floor`.
    fn expression(&mut self, floor: u8) -> Result<Expression, Fault> {
        let mut left = self.operand()?;
        let mut compared = false;
        while let (Token::Sign(sign), at) = *self.peek() {
            let strength = strength(sign);
            if strength <= floor {
                break;
            }
            if strength == COMPARISON && compared {
                return Err(Fault::Chained { at });
            }
            compared = strength == COMPARISON;
            self.next += 1;
            let right = self.expression(strength)?;
            left = Expression::Pair(sign, Box::new(left), Box::new(right));
        }
        Ok(left)
    }

    fn operand(&mut self) -> Result<Expression, Fault> {
        if self.takes(&Token::Sign(Sign::Minus)) {
            let operand = self.operand()?;
            return Ok(Expression::Negative(Box::new(operand)));
        }
        let mut operand = self.atom()?;
        while self.takes(&Token::Square) {
            operand = Expression::Pair(Sign::Times, Box::new(operand.clone()), Box::new(operand));
        }
        Ok(operand)
    }

    fn atom(&mut self) -> Result<Expression, Fault> {
        match self.take() {
            (Token::Number(number), _) => {
                let unit = self.unit()?;
                Quantity::literal(number, unit).map(Expression::Literal)
            }
            (Token::Open, _) => {
                let inside = self.expression(0)?;
                self.expect(&Token::Close, ")")?;
                Ok(inside)
            }
            (Token::Name(name), at) => self.named(name, at),
            found => Err(wanted("a number, a name or (", &found)),
        }
    }

    /// A unit right after a number, with its power: `mm`, `m²`, `°`.
    fn unit(&mut self) -> Result<Option<Quantity>, Fault> {
        if self.takes(&Token::Degree) {
            return Ok(Some(Quantity::unit("degrees").expect("degrees are a unit")));
        }
        let (Token::Name(name), at) = self.peek().clone() else {
            return Ok(None);
        };
        let unit = Quantity::unit(&name).ok_or(Fault::UnknownUnit { name, at })?;
        self.next += 1;
        if self.takes(&Token::Square) {
            return unit.times(unit).map(Some);
        }
        if self.takes(&Token::Cube) {
            return unit.times(unit)?.times(unit).map(Some);
        }
        Ok(Some(unit))
    }

    /// A name, or a function with its arguments.
    fn named(&mut self, name: String, at: usize) -> Result<Expression, Fault> {
        if !self.takes(&Token::Open) {
            return Ok(if name == "pi" {
                Expression::Literal(Quantity::pi())
            } else {
                Expression::Name(name)
            });
        }
        let Some(function) = Function::named(&name) else {
            return Err(Fault::UnknownFunction { name, at });
        };
        let mut arguments = vec![self.expression(0)?];
        while self.takes(&Token::Comma) {
            arguments.push(self.expression(0)?);
        }
        self.expect(&Token::Close, ") or ,")?;
        let given = arguments.len();
        if function.arguments().is_some_and(|wanted| wanted != given) {
            return Err(Fault::Arguments {
                function: function.name(),
                wanted: function.arguments().unwrap_or(1),
                given,
                at,
            });
        }
        if function.takes_names()
            && !arguments
                .iter()
                .all(|argument| matches!(argument, Expression::Name(_)))
        {
            return Err(Fault::NamesOnly {
                function: function.name(),
                at,
            });
        }
        Ok(Expression::Call(function, arguments))
    }
}

const COMPARISON: u8 = 3;

/// How strongly a sign holds what is beside it.
const fn strength(sign: Sign) -> u8 {
    match sign {
        Sign::Or => 1,
        Sign::And => 2,
        Sign::Less | Sign::AtMost | Sign::More | Sign::AtLeast | Sign::Equal | Sign::Unequal => {
            COMPARISON
        }
        Sign::Plus | Sign::Minus => 4,
        Sign::Times | Sign::Over => 5,
    }
}

fn wanted(wanted: &'static str, (found, at): &(Token, usize)) -> Fault {
    let found = match found {
        Token::Number(number) => format!("the number {}", Quantity::new(*number, Unit::NUMBER)),
        Token::Name(name) => name.clone(),
        Token::Sign(sign) => sign.text().to_owned(),
        Token::Open => "(".to_owned(),
        Token::Close => ")".to_owned(),
        Token::Comma => ",".to_owned(),
        Token::Square => "²".to_owned(),
        Token::Cube => "³".to_owned(),
        Token::Degree => "°".to_owned(),
        Token::End => "the end".to_owned(),
    };
    Fault::Wanted {
        wanted,
        found,
        at: *at,
    }
}
