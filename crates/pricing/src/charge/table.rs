//! Tables: bands of size, and parts of a sheet.

use measure::{Length, Money};
use sizing::Fault;
use trade::Supply;
use working::{Given, Subject, Worked};

use super::{Charge, unlike};
use crate::cost::too_large;
use crate::desk::Desk;
use crate::exact::Exact;
use crate::item::Item;
use crate::laws;
use crate::priced::Quantity;
use crate::rules::{Bands, Beyond, Rule, Sheets};
use crate::scalar::Rate;

impl Desk<'_> {
    pub(super) fn band(
        &mut self,
        rule: &Rule,
        table: &Bands,
        item: &Item<'_>,
    ) -> Result<Charge, Box<Fault>> {
        let united = self.united(rule, table, item)?;
        let mut from = Length::ZERO;
        for band in &table.band {
            let starts = band.from.map_or(from, |from| *from);
            if starts < united.value && united.value <= *band.to {
                let count = Given::job(item.count);
                let line = band.price.0.checked_times(i64::from(item.count));
                let line = line.map_err(|_| too_large(item))?;
                let inputs = [
                    ("from", Given::prices(starts)),
                    ("united", united.into()),
                    ("to", Given::prices(*band.to)),
                    ("price", Given::prices(band.price.0)),
                    ("count", count),
                ];
                let subject = self.amount();
                let amount = self.working.by(&laws::LINE_BAND, subject, &inputs, line);
                return Ok(pieces(item, amount));
            }
            from = *band.to;
        }
        match (&table.beyond, table.band.last()) {
            (Some(beyond), Some(last)) if united.value > *last.to => {
                self.beyond(beyond, (*last.to, last.price.0), united, item)
            }
            _ => Err(no_band(rule, united.value, from, item).into()),
        }
    }

    /// Width and height together, rounded up as the table wants it.
    fn united(
        &mut self,
        rule: &Rule,
        table: &Bands,
        item: &Item<'_>,
    ) -> Result<Worked<Length>, Box<Fault>> {
        let size = item.size.ok_or_else(|| unlike(rule, item, "a size"))?;
        let subject = Subject::nth("price", self.line, "united");
        let plain = size.width.value + size.height.value;
        let sides = [("width", size.width.into()), ("height", size.height.into())];
        Ok(match table.step {
            Some(step) => {
                let [width, height] = sides;
                let inputs = [width, height, ("step", Given::prices(*step))];
                let up = plain.up_to(*step);
                self.working.by(&laws::UNITED_UP, subject, &inputs, up)
            }
            None => self.working.by(&laws::UNITED, subject, &sides, plain),
        })
    }

    fn beyond(
        &mut self,
        beyond: &Beyond,
        (last, price): (Length, Money),
        united: Worked<Length>,
        item: &Item<'_>,
    ) -> Result<Charge, Box<Fault>> {
        let count = i64::from(item.count);
        let line = Exact::from(united.value - last)
            .over(*beyond.each)
            .and_then(|steps| steps.to_whole(working::Round::TowardPositive))
            .and_then(|steps| beyond.add.checked_times(steps).ok())
            .and_then(|added| price.checked_add(added).ok())
            .and_then(|one| one.checked_times(count).ok())
            .ok_or_else(|| too_large(item))?;
        let inputs = [
            ("price", Given::prices(price)),
            ("add", Given::prices(beyond.add.0)),
            ("united", united.into()),
            ("last", Given::prices(last)),
            ("each", Given::prices(*beyond.each)),
            ("count", Given::job(count)),
        ];
        let subject = self.amount();
        let amount = self.working.by(&laws::LINE_BEYOND, subject, &inputs, line);
        Ok(pieces(item, amount))
    }

    pub(super) fn by_sheet(
        &mut self,
        rule: &Rule,
        way: &Sheets,
        item: &Item<'_>,
    ) -> Result<Charge, Box<Fault>> {
        let area = item.area.ok_or_else(|| unlike(rule, item, "an area"))?;
        let stock = item.stock.ok_or_else(|| no_sheet(item))?.area();
        let unit = if let Some(price) = way.price {
            self.stated(price)
        } else {
            let cost = self.cost(item, Supply::Length, self.cost_line())?;
            let factor = way.factor.unwrap_or(Rate::ONE).0;
            self.sheet_price(&cost, stock, factor, item)?
        };
        let whole = Exact::from(stock);
        let mut holding = None;
        for part in &way.parts {
            let held = whole.times(part.0);
            let holds = held.and_then(|held| Exact::from(area.value).at_most(held));
            if holds.ok_or_else(|| too_large(item))? {
                holding = Some(part.0);
                break;
            }
        }
        let part = holding.ok_or_else(|| no_part(rule, item))?;
        let round = self.round(self.rules.rounding.line);
        let exact = Exact::from(unit.value).times(part);
        let one = self.cents(exact, round, item)?;
        let line = one.checked_times(i64::from(item.count));
        let line = line.map_err(|_| too_large(item))?;
        let [cent, rounding] = self.closing(round);
        let inputs = [
            ("area", area.into()),
            ("stock", Given::material(stock)),
            ("part", Given::prices(part)),
            ("unit", unit.into()),
            ("count", Given::job(item.count)),
            cent,
            rounding,
        ];
        let subject = self.amount();
        let amount = self.working.by(&laws::LINE_SHEET, subject, &inputs, line);
        Ok(Charge {
            quantity: Quantity::Sheet {
                part,
                pieces: item.count,
            },
            unit: Some(unit),
            amount,
        })
    }

    /// The price of the whole stock sheet, from its cost.
    fn sheet_price(
        &mut self,
        cost: &crate::cost::UnitCost,
        stock: measure::Area,
        factor: working::Decimal,
        item: &Item<'_>,
    ) -> Result<Worked<Money>, Box<Fault>> {
        let round = self.round(self.rules.rounding.unit);
        let (held, given) = match cost.per {
            crate::cost::Share::Area(_) => (Exact::from(stock), Given::material(stock)),
            _ => (Exact::ONE, Given::material(1)),
        };
        let exact = Exact::from(cost.price)
            .times(held)
            .and_then(|all| all.over(cost.per.exact()))
            .and_then(|all| all.times(factor));
        let price = self.cents(exact, round, item)?;
        let [cent, way] = self.closing(round);
        let inputs = [
            ("cost", cost.given),
            ("stock", given),
            ("per", cost.per.given()),
            ("factor", Given::prices(factor)),
            cent,
            way,
        ];
        let subject = self.unit();
        Ok(self.working.by(&laws::UNIT_SHEET, subject, &inputs, price))
    }
}

fn pieces(item: &Item<'_>, amount: Worked<Money>) -> Charge {
    Charge {
        quantity: Quantity::Pieces(item.count),
        unit: None,
        amount,
    }
}

fn no_band(rule: &Rule, united: Length, last: Length, item: &Item<'_>) -> Fault {
    let say = |length: Length| length.in_both(measure::Unit::Inch);
    Fault::refuse(
        "pricing.no_band",
        item.name.as_ref(),
        format!(
            "width and height together come to {}, which no band of the rule {} holds",
            say(united),
            rule.id
        ),
        format!("its bands end at {}", say(last)),
        "Add a band, or a `beyond` step above the last",
    )
}

fn no_sheet(item: &Item<'_>) -> Fault {
    Fault::refuse(
        "pricing.no_sheet",
        item.name.as_ref(),
        "no stock sheet of its material is known to hold it",
        "the rule that charges for it reckons by the part of a sheet",
        "List a larger sheet with the material, or charge by area",
    )
}

fn no_part(rule: &Rule, item: &Item<'_>) -> Fault {
    Fault::refuse(
        "pricing.no_part",
        item.name.as_ref(),
        format!(
            "no part of a sheet that the rule {} sells holds it",
            rule.id
        ),
        "",
        "End its parts with the whole sheet, \"1\"",
    )
}
