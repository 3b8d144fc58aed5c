//! What the cutting room refuses, in lengths, areas and money instead of ticks.

use measure::{Area, Currency, Length, Money, Unit};

use crate::number::grouped;
use crate::source::Basis;
use crate::tick::Tick;

/// What the numbers of a problem stand for.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Counted {
    pub tick: Tick,
    pub unit: Unit,
    pub basis: Basis,
    /// Whether they count sheets; otherwise sticks.
    pub sheets: bool,
}

/// How the pieces and the stock of a problem are called, and where its rules are written.
pub(crate) trait Named {
    /// A piece, as a sentence can begin with it.
    fn piece(&self, name: &str) -> String;
    /// A kind of stock, and of which material.
    fn stock(&self, name: &str) -> String;
    /// Everything of the problem.
    fn whole(&self) -> String;
    /// Why a strip has a least width, and where it is changed.
    fn strip(&self, least: &str) -> String;
    /// What a person calls one job or one list: what is divided where there is too much of it.
    fn divide(&self) -> &'static str;
}

/// What a fault is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum About<'a> {
    Piece(&'a str),
    Stock(&'a str),
    Whole,
}

/// What a fault of a problem is about.
pub(crate) fn about(fault: &cutting::Fault) -> About<'_> {
    use cutting::Fault as F;
    match fault {
        F::TooLarge { piece, .. }
        | F::TooNarrow { piece, .. }
        | F::EndlessCount { piece }
        | F::WindowTooLarge { piece } => About::Piece(piece),
        F::AllTrimmed { stock } | F::OddFlaw { stock, .. } => About::Stock(stock),
        F::TwiceNamed { what, name } | F::NoSize { what, name } => match *what {
            "piece" => About::Piece(name),
            _ => About::Stock(name),
        },
        F::TooMuch { what, name, .. } if what.ends_with("piece") => About::Piece(name),
        F::TooMuch { what, name, .. } if of_stock(what) => About::Stock(name),
        F::NoStock
        | F::NoPieces
        | F::TooMuch { .. }
        | F::TooManyPieces { .. }
        | F::TooLongTogether { .. }
        | F::StripAndKerf
        | F::NoStages => About::Whole,
    }
}

/// Whether a number that is too large is one of stock; only stock has a cost.
fn of_stock(what: &str) -> bool {
    what.ends_with("stock") || what.contains("cost")
}

impl Counted {
    /// A fault as a sentence, with what to do.
    pub fn sentence(&self, fault: &cutting::Fault, named: &impl Named) -> String {
        use cutting::Fault as F;
        match fault {
            F::TooLarge { .. } => self.too_large(fault, named),
            F::TooNarrow { piece, side, least } => format!(
                "{} is {} on its short side; {}",
                named.piece(piece),
                self.length(*side),
                named.strip(&self.length(*least))
            ),
            F::TooLongTogether {
                group,
                length,
                room,
            } => format!(
                "the pieces of {group} must come from one stick and are {} long together with their cuts; the longest stick has room for {}: list a longer stick of {}, or let them come from more than one",
                self.length(*length),
                self.length(*room),
                named.whole()
            ),
            F::OddFlaw {
                stock,
                flaw: (from, to),
            } => format!(
                "the flaw from {} to {} does not lie on {}; write from before to, both on the stick",
                self.length(*from),
                self.length(*to),
                named.stock(stock)
            ),
            F::TooMuch {
                what,
                name,
                given,
                limit,
            } => self.too_much(what, name, *given, *limit, named),
            F::TooManyPieces { given, limit } => format!(
                "{}: {} pieces are more than one plan can hold; the most is {}: {}",
                named.whole(),
                grouped(*given),
                grouped(u128::from(*limit)),
                named.divide()
            ),
            _ => plainly(fault, named),
        }
    }

    /// What comes nearest, by how much it is too small, and what would do.
    fn too_large(&self, fault: &cutting::Fault, named: &impl Named) -> String {
        let cutting::Fault::TooLarge {
            piece,
            size,
            nearest,
            room,
            over,
            needed,
        } = fault
        else {
            return plainly(fault, named);
        };
        format!(
            "{} ({}) is larger than any stock; {} comes nearest with room for {}, too small by {}: stock of at least {} would do",
            named.piece(piece),
            self.size(size),
            named.stock(nearest),
            self.size(room),
            self.size(over),
            self.size(needed)
        )
    }

    fn too_much(
        &self,
        what: &str,
        name: &str,
        given: u64,
        limit: u64,
        named: &impl Named,
    ) -> String {
        let whose = if what.ends_with("piece") {
            named.piece(name)
        } else if of_stock(what) {
            named.stock(name)
        } else {
            named.whole()
        };
        if what.contains("area") {
            let (given, limit) = (self.area(given), self.area(limit));
            let divide = named.divide();
            return format!(
                "{whose}: all pieces together are {given} or more, the most one plan can hold is {limit}: {divide}"
            );
        }
        let (quantity, given, limit) = if what.contains("cost") {
            ("costs", self.cost(given), self.cost(limit))
        } else if what.contains("count") || what.contains("value") {
            let [given, limit] = [given, limit].map(|number| grouped(u128::from(number)));
            ("counts", given, limit)
        } else if what.contains("kerf") {
            ("has a kerf of", self.length(given), self.length(limit))
        } else {
            ("measures", self.length(given), self.length(limit))
        };
        format!(
            "{whose} {quantity} {given}, the most that can be planned with is {limit}; is it what you meant?"
        )
    }

    /// So many ticks.
    pub fn length(&self, ticks: u64) -> String {
        let step = i128::from(self.tick.step().quanta());
        let quanta = step * i128::from(ticks);
        match i64::try_from(quanta) {
            Ok(quanta) if quanta <= Length::LIMIT.quanta() => {
                Length::from_quanta(quanta).exact(self.unit)
            }
            _ => format!(
                "{} steps of {}",
                grouped(u128::from(ticks)),
                self.tick.name()
            ),
        }
    }

    fn size(&self, ticks: &[u64]) -> String {
        let sides: Vec<String> = ticks.iter().map(|side| self.length(*side)).collect();
        sides.join(" x ")
    }

    /// So many square ticks.
    fn area(&self, ticks: u64) -> String {
        let step = i128::from(self.tick.step().quanta());
        let area = Area::from_square_quanta(step * step * i128::from(ticks));
        if self.unit.is_inch_family() {
            area.print_square_feet_nearest(0)
        } else {
            area.print_m2_nearest(0)
        }
    }

    fn cost(&self, counted: u64) -> String {
        match self.basis {
            Basis::Money(currency) => money(counted, currency),
            Basis::Measure if self.sheets => self.area(counted),
            Basis::Measure => self.length(counted),
        }
    }
}

fn money(minor: u64, currency: Currency) -> String {
    match i64::try_from(minor) {
        Ok(minor) => Money::new(minor, currency).to_string(),
        Err(_) => format!(
            "{} of the least coin of {currency}",
            grouped(u128::from(minor))
        ),
    }
}

/// Faults without a number of ticks in them.
fn plainly(fault: &cutting::Fault, named: &impl Named) -> String {
    use cutting::Fault as F;
    match fault {
        F::AllTrimmed { stock } => format!(
            "the trim leaves nothing of {}; make the trim smaller",
            named.stock(stock)
        ),
        F::WindowTooLarge { piece } => format!(
            "{}: its window is not smaller than the piece itself; give the window's true size",
            named.piece(piece)
        ),
        F::NoSize {
            what: "piece",
            name,
        } => format!(
            "{} has a side of nothing; give its true size",
            named.piece(name)
        ),
        F::NoSize { name, .. } => format!(
            "{} is smaller than one step that lengths are counted in; give its true size",
            named.stock(name)
        ),
        F::EndlessCount { piece } => format!(
            "{} has no count; write how many are wanted",
            named.piece(piece)
        ),
        F::NoStock => format!(
            "there is nothing to cut {} from; list its stock",
            named.whole()
        ),
        F::NoPieces => format!("there is nothing to cut of {}", named.whole()),
        F::StripAndKerf => format!(
            "{} has a kerf and a least strip; a least strip is for what is scored and broken, where a cut takes nothing: leave out one of the two",
            named.whole()
        ),
        other => format!("{}: {other}", named.whole()),
    }
}

#[cfg(test)]
mod tests;
