//! Prices of a row.

use measure::Currency;
use trade::{Cost, Kind, Per, Price};

use super::{Cell, Field, Reading, Value, same_word};
use crate::supplier::Numbers;
use crate::supplier::columns::PriceAt;
use crate::supplier::mapping::PriceColumn;
use crate::supplier::numbers::{NoNumber, PLACES, Plain};
use crate::supplier::rejected::{Reason, clipped};

impl<'a> Reading<'a> {
    /// Every price of the row.
    pub(super) fn costs(&mut self, kind: Option<Kind>) -> Vec<Cost> {
        let Some(currency) = self.currency() else {
            return Vec::new();
        };
        let list = self.list;
        let before = self.faults.len();
        let columns = list.mapping.price.iter().zip(&list.columns.prices);
        let costs: Vec<Cost> = columns
            .filter_map(|(price, at)| self.cost(price, at, kind, currency))
            .collect();
        if costs.is_empty() && self.faults.len() == before {
            let first = list.columns.prices.first().map_or(0, |at| at.price);
            let row = self.row.number;
            self.refuse(list.columns.name(first), "", Reason::NoPriceAtAll { row });
        }
        costs
    }

    fn cost(
        &mut self,
        price: &PriceColumn,
        at: &PriceAt,
        kind: Option<Kind>,
        currency: Currency,
    ) -> Option<Cost> {
        let Some(value) = self.cell(at.price).ok()? else {
            if !price.optional {
                self.refuse(self.list.columns.name(at.price), "", Reason::NoPrice);
            }
            return None;
        };
        let amount = self.price(&value, currency);
        let per = self.per(price, at);
        let pack = self.pack(price, at);
        let (amount, per, pack) = (amount?, per?, pack?);
        if let Some(kind) = kind.filter(|kind| !goes_with(*kind, per)) {
            self.reject(&value, Reason::Unfit { kind, per });
            return None;
        }
        if per == Per::Box && pack.is_none() {
            self.reject(&value, Reason::NoPack);
            return None;
        }
        Some(Cost {
            price: amount,
            per,
            supply: price.supply,
            pack,
            since: self.list.on,
        })
    }

    fn price(&mut self, value: &Value<'_>, currency: Currency) -> Option<Price> {
        match self.amount(value, currency) {
            Ok(price) => Some(price),
            Err(reason) => {
                self.reject(value, reason);
                None
            }
        }
    }

    /// The amount of a cell.
    ///
    /// Errors: why it is none.
    fn amount(&self, value: &Value<'_>, currency: Currency) -> Result<Price, Reason> {
        let row = self.row.number;
        let habit = if value.number {
            Numbers::Point
        } else {
            self.list.mapping.numbers
        };
        let example = habit.example();
        let text = without_currency(&value.text, currency)?;
        let plain: Plain = habit.read(text).map_err(|fault| match fault {
            NoNumber::NotDigits => Reason::NotAmount { example, row },
            NoNumber::Signs => Reason::Signs { example },
        })?;
        if plain.is_zero() {
            return Err(Reason::Zero { row });
        }
        if plain.negative {
            return Err(Reason::Negative);
        }
        let round = self.list.mapping.round;
        if round.is_none() && plain.is_too_fine() {
            return Err(Reason::TooFine);
        }
        let places = round.map_or(PLACES, usize::from);
        let millionths = plain.millionths_to(places).ok_or(Reason::TooLarge)?;
        if millionths == 0 {
            return Err(Reason::Zero { row });
        }
        Price::new(millionths, currency).ok_or(Reason::TooLarge)
    }

    fn currency(&mut self) -> Option<Currency> {
        let Some(value) = self.value(Field::Currency) else {
            return Some(self.list.mapping.currency);
        };
        let currency = Currency::from_code(&value.text);
        if currency.is_none() {
            self.reject(&value, Reason::NoCurrency);
        }
        currency
    }

    fn per(&mut self, price: &PriceColumn, at: &PriceAt) -> Option<Per> {
        let value = match at.per {
            Some(place) => self.cell(place).ok()?,
            None => None,
        };
        let (Some(value), words) = (value, &self.list.mapping.words.per) else {
            if price.per.is_none() {
                let row = self.row.number;
                let place = at.per.unwrap_or(at.price);
                self.refuse(self.list.columns.name(place), "", Reason::Blank { row });
            }
            return price.per;
        };
        let known = words
            .iter()
            .find(|(word, _)| same_word(word, &value.text))
            .map(|(_, per)| *per)
            .or_else(|| {
                Per::ALL
                    .into_iter()
                    .find(|per| same_word(per.word(), &value.text))
            });
        if known.is_none() {
            let word = clipped(&value.text);
            self.reject(&value, Reason::Word { word, list: "per" });
        }
        known
    }

    /// The number in the pack, where one is said; none outside where it is refused.
    #[allow(clippy::option_option, reason = "outside: refused; inside: not said")]
    fn pack(&mut self, price: &PriceColumn, at: &PriceAt) -> Option<Option<u32>> {
        let value = match at.pack {
            Some(place) => self.cell(place).ok()?,
            None => None,
        };
        match value {
            Some(value) => self.count(&value).map(Some),
            None => Some(price.pack),
        }
    }

    /// A whole number from 1 on.
    pub(super) fn count(&mut self, value: &Value<'a>) -> Option<u32> {
        let habit = if value.number {
            Numbers::Point
        } else {
            self.list.mapping.numbers
        };
        let plain = habit.read(&value.text).ok();
        let plain = plain.filter(|plain| !plain.negative && plain.decimals.is_empty());
        let count = plain.and_then(|plain| plain.whole.parse().ok());
        let count = count.filter(|count| (1..=MOST).contains(count));
        if count.is_none() {
            self.reject(value, Reason::Count);
        }
        count
    }

    /// Whether a place of the row holds anything.
    pub(super) fn is_blank(&self, place: usize) -> bool {
        self.row
            .cells
            .get(place)
            .is_none_or(|cell| *cell == Cell::Blank)
    }
}

/// The most pieces in a pack.
const MOST: u32 = 1_000_000; // geometry: beyond any pack

/// Whether a kind of material is sold by this unit.
///
/// Shape:  sheets are not sold by length nor sticks by area; a piece, a box goes with everything
///         but a service, which is done once.
const fn goes_with(kind: Kind, per: Per) -> bool {
    match kind {
        Kind::Moulding | Kind::Fillet | Kind::Spacer => {
            !matches!(per, Per::Sheet | Per::SquareMetre | Per::SquareFoot)
        }
        Kind::Board | Kind::Backing | Kind::Glazing => {
            !matches!(per, Per::Foot | Per::Metre | Per::Stick)
        }
        Kind::Hardware => !matches!(per, Per::Sheet | Per::Stick),
        Kind::Service => !matches!(per, Per::Sheet | Per::Stick | Per::Box),
    }
}

/// Signs of currencies, and the codes each may stand for; one that is many's goes with any other.
const SIGNS: [(char, &[&str]); 4] = [
    ('€', &["EUR"]),
    (
        '£',
        &[
            "GBP", "GIP", "FKP", "SHP", "EGP", "LBP", "SYP", "SDG", "SSP",
        ],
    ),
    ('¥', &["JPY", "CNY"]),
    ('$', &[]),
];

/// Codes that `$` never stands for.
const NO_DOLLAR: [&str; 3] = ["EUR", "GBP", "JPY"];

/// The amount without the sign or code of its currency.
fn without_currency(text: &str, currency: Currency) -> Result<&str, Reason> {
    let text = text.trim();
    let code = currency.code();
    let head = text
        .get(..code.len())
        .filter(|head| head.eq_ignore_ascii_case(code));
    if head.is_some() {
        return Ok(text.get(code.len()..).unwrap_or_default().trim());
    }
    let tail = text.len().checked_sub(code.len());
    if let Some(at) = tail.filter(|at| {
        text.get(*at..)
            .is_some_and(|tail| tail.eq_ignore_ascii_case(code))
    }) {
        return Ok(text.get(..at).unwrap_or_default().trim());
    }
    for (sign, codes) in SIGNS {
        let Some(rest) = text.strip_prefix(sign).or_else(|| text.strip_suffix(sign)) else {
            continue;
        };
        let fits = if codes.is_empty() {
            !NO_DOLLAR.contains(&code)
        } else {
            codes.contains(&code)
        };
        if !fits {
            return Err(Reason::OtherCurrency {
                sign: sign.to_string(),
                currency,
            });
        }
        return Ok(rest.trim());
    }
    Ok(text)
}
