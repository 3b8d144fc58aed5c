//! From a rule and a part to a line.

mod table;

use measure::Money;
use sizing::{ChargeStep, Fault};
use trade::Supply;
use working::{Decimal, Given, Round, Subject, Worked};

use crate::cost::{Reckon, UnitCost, too_large};
use crate::desk::Desk;
use crate::exact::Exact;
use crate::item::{Item, Strip};
use crate::laws;
use crate::priced::Quantity;
use crate::rules::{Areas, Chop, Cost, Each, Lengths, Minutes, Per, Rule, Tier};
use crate::scalar::{Amount, Rate};

/// What a rule charges for a part.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Charge {
    pub quantity: Quantity,
    pub unit: Option<Worked<Money>>,
    pub amount: Worked<Money>,
}

impl Desk<'_> {
    /// What a rule charges for a part.
    ///
    /// Errors: a fault that says what is missing, or that no band or sheet reaches.
    pub(crate) fn charge(&mut self, rule: &Rule, item: &Item<'_>) -> Result<Charge, Box<Fault>> {
        let charge = if let Some(way) = &rule.length {
            self.by_length(rule, way, item)
        } else if let Some(way) = &rule.chop {
            self.chop(rule, way, item)
        } else if let Some(way) = &rule.cost {
            self.cost_plus(rule, way, item)
        } else if let Some(way) = &rule.bands {
            self.band(rule, way, item)
        } else if let Some(way) = &rule.area {
            self.by_area(rule, way, item)
        } else if let Some(way) = &rule.sheet {
            self.by_sheet(rule, way, item)
        } else if let Some(way) = &rule.each {
            self.by_piece(way, item)
        } else if let Some(way) = &rule.minutes {
            self.by_minutes(rule, way, item)
        } else {
            Err(no_way(rule, item).into())
        }?;
        let Some(least) = rule.least.map(|least| least.0) else {
            return Ok(charge);
        };
        let most = if least.minor > charge.amount.value.minor {
            least
        } else {
            charge.amount.value
        };
        let inputs = [
            ("line", charge.amount.into()),
            ("least", Given::prices(least)),
        ];
        let amount = self
            .working
            .by(&laws::LINE_LEAST, self.amount(), &inputs, most);
        Ok(Charge { amount, ..charge })
    }

    fn amount(&self) -> Subject {
        Subject::nth("price", self.line, "amount")
    }

    fn unit(&self) -> Subject {
        Subject::nth("price", self.line, "unit")
    }

    fn cost_line(&self) -> Subject {
        Subject::nth("price", self.line, "unit_cost")
    }

    /// Rounds an exact amount to the cent.
    fn cents(
        &self,
        exact: Option<Exact>,
        way: Round,
        item: &Item<'_>,
    ) -> Result<Money, Box<Fault>> {
        exact
            .and_then(|exact| exact.to_money(self.cent, way))
            .ok_or_else(|| too_large(item).into())
    }

    fn closing(&self, way: Round) -> [(&'static str, Given); 2] {
        [
            ("cent", Given::prices(self.cent)),
            ("way", Given::prices(way)),
        ]
    }

    fn by_length(
        &mut self,
        rule: &Rule,
        way: &Lengths,
        item: &Item<'_>,
    ) -> Result<Charge, Box<Fault>> {
        let strip = item.strip.ok_or_else(|| unlike(rule, item, "a length"))?;
        let per = way.per.unwrap_or_else(|| usual(&strip));
        let one = per.length();
        let unit = if let Some(price) = way.price {
            self.stated(price)
        } else {
            let cost = self.cost(item, Supply::Length, self.cost_line())?;
            let factor = Self::factor(way.factor, &way.factors, &cost, one.into(), item)?;
            let waste = way.waste.unwrap_or(Rate::ZERO).0;
            let unit = ("unit_length", Given::prices(one), Exact::from(one));
            self.unit_price(&laws::UNIT_LENGTH, &cost, unit, (waste, factor), item)?
        };
        let charged = strip.charged;
        let round = self.round(self.rules.rounding.line);
        let exact = Exact::from(unit.value)
            .times(charged.value)
            .and_then(|all| all.times(i64::from(item.count)))
            .and_then(|all| all.over(one));
        let line = self.cents(exact, round, item)?;
        let [cent, way] = self.closing(round);
        let inputs = [
            ("unit", unit.into()),
            ("charged", charged.into()),
            ("count", Given::job(item.count)),
            ("unit_length", Given::prices(one)),
            cent,
            way,
        ];
        let amount = self
            .working
            .by(&laws::LINE_LENGTH, self.amount(), &inputs, line);
        let length = charged.value.times(i64::from(item.count));
        Ok(Charge {
            quantity: Quantity::Length { length, per },
            unit: Some(unit),
            amount,
        })
    }

    /// A price the rule set states, as a line of its own.
    fn stated(&mut self, price: Amount) -> Worked<Money> {
        let inputs = [
            ("price", Given::prices(price.0)),
            ("count", Given::prices(1)),
        ];
        self.working
            .by(&laws::LINE_EACH, self.unit(), &inputs, price.0)
    }

    /// The price of a unit of length or area, from its cost.
    fn unit_price(
        &mut self,
        law: &'static working::Rule,
        cost: &UnitCost,
        (name, given, unit): (&'static str, Given, Exact),
        (waste, factor): (Decimal, Decimal),
        item: &Item<'_>,
    ) -> Result<Worked<Money>, Box<Fault>> {
        let round = self.round(self.rules.rounding.unit);
        let exact = Exact::from(cost.price)
            .times(unit)
            .and_then(|all| all.over(cost.per.exact()))
            .and_then(|all| all.times(Exact::ONE.plus(waste)?))
            .and_then(|all| all.times(factor));
        let price = self.cents(exact, round, item)?;
        let [cent, way] = self.closing(round);
        let inputs = [
            ("cost", cost.given),
            (name, given),
            ("per", cost.per.given()),
            ("waste", Given::prices(waste)),
            ("factor", Given::prices(factor)),
            cent,
            way,
        ];
        Ok(self.working.by(law, self.unit(), &inputs, price))
    }

    /// The factor: the one for all, or the one of the tier that the cost of a unit falls in.
    fn factor(
        one: Option<Rate>,
        tiers: &[Tier],
        cost: &UnitCost,
        unit: Exact,
        item: &Item<'_>,
    ) -> Result<Decimal, Box<Fault>> {
        if tiers.is_empty() {
            return Ok(one.unwrap_or(Rate::ONE).0);
        }
        let of_unit = Exact::from(cost.price)
            .times(unit)
            .and_then(|all| all.over(cost.per.exact()))
            .ok_or_else(|| too_large(item))?;
        for tier in tiers {
            let reaches = match tier.to {
                Some(to) => of_unit.at_most(to.0).ok_or_else(|| too_large(item))?,
                None => true,
            };
            if reaches {
                return Ok(tier.factor.0);
            }
        }
        Err(Box::new(Fault::refuse(
            "pricing.no_tier",
            item.name.as_ref(),
            format!("no tier of factors reaches its cost, {}", cost.price),
            "",
            "Leave `to` out of the last tier",
        )))
    }

    fn chop(&mut self, rule: &Rule, way: &Chop, item: &Item<'_>) -> Result<Charge, Box<Fault>> {
        let strip = item.strip.ok_or_else(|| unlike(rule, item, "a length"))?;
        let (cost, premium) = match self.cost(item, Supply::Chop, self.cost_line()) {
            Ok(cost) => (cost, Decimal::ZERO),
            Err(fault) if fault.code != "pricing.no_cost" => return Err(fault),
            Err(_) => (
                self.cost(item, Supply::Length, self.cost_line())?,
                way.premium.unwrap_or(Rate::ZERO).0,
            ),
        };
        let factor = way.factor.unwrap_or(Rate::ONE).0;
        let handling = way
            .handling
            .map_or(Money::zero(self.cent.currency), |h| h.0);
        let round = self.round(self.rules.rounding.line);
        let count = i64::from(item.count);
        let (charged, given) = Self::taken(item, cost.per, Reckon::Charged)
            .ok_or_else(|| unlike(rule, item, "a length"))?;
        let exact = Exact::from(cost.price)
            .times(Exact::ONE.plus(premium).ok_or_else(|| too_large(item))?)
            .and_then(|all| all.times(charged))
            .and_then(|all| all.times(count))
            .and_then(|all| all.over(cost.per.exact()))
            .and_then(|all| all.times(factor));
        let line = self.cents(exact, round, item)?;
        let line = sum(line, handling, count).ok_or_else(|| too_large(item))?;
        let [cent, rounding] = self.closing(round);
        let inputs = [
            ("cost", cost.given),
            ("premium", Given::prices(premium)),
            ("charged", given),
            ("count", Given::job(count)),
            ("per", cost.per.given()),
            ("factor", Given::prices(factor)),
            ("handling", Given::prices(handling)),
            cent,
            rounding,
        ];
        let amount = self
            .working
            .by(&laws::LINE_CHOP, self.amount(), &inputs, line);
        Ok(Charge {
            quantity: Quantity::Length {
                length: strip.charged.value.times(count),
                per: usual(&strip),
            },
            unit: None,
            amount,
        })
    }

    fn cost_plus(
        &mut self,
        rule: &Rule,
        way: &Cost,
        item: &Item<'_>,
    ) -> Result<Charge, Box<Fault>> {
        let cost = self.cost(item, Supply::Length, self.cost_line())?;
        let (used, given) = Self::taken(item, cost.per, Reckon::Charged)
            .ok_or_else(|| unlike(rule, item, "what its cost is for"))?;
        let waste = way.waste.unwrap_or(Rate::ZERO).0;
        let factor = Self::factor(way.factor, &way.factors, &cost, cost.per.exact(), item)?;
        let plus = way
            .plus
            .map_or(Money::zero(self.cent.currency), |plus| plus.0);
        let round = self.round(self.rules.rounding.line);
        let count = i64::from(item.count);
        let exact = Exact::from(cost.price)
            .times(used)
            .and_then(|all| all.times(count))
            .and_then(|all| all.over(cost.per.exact()))
            .and_then(|all| all.times(Exact::ONE.plus(waste)?))
            .and_then(|all| all.times(factor));
        let line = self.cents(exact, round, item)?;
        let line = sum(line, plus, count).ok_or_else(|| too_large(item))?;
        let [cent, rounding] = self.closing(round);
        let inputs = [
            ("cost", cost.given),
            ("used", given),
            ("count", Given::job(count)),
            ("per", cost.per.given()),
            ("waste", Given::prices(waste)),
            ("factor", Given::prices(factor)),
            ("plus", Given::prices(plus)),
            cent,
            rounding,
        ];
        let amount = self
            .working
            .by(&laws::LINE_COST, self.amount(), &inputs, line);
        Ok(Charge {
            quantity: self.quantity_of(item, &cost),
            unit: None,
            amount,
        })
    }

    /// How much of a part there is, in the measure of its cost.
    fn quantity_of(&self, item: &Item<'_>, cost: &UnitCost) -> Quantity {
        let count = i64::from(item.count);
        match (cost.per, item.strip, item.area) {
            (crate::cost::Share::Length(_), Some(strip), _) => Quantity::Length {
                length: strip.charged.value.times(count),
                per: usual(&strip),
            },
            (crate::cost::Share::Area(_), _, Some(area)) => Quantity::Area {
                area: area.value.times(count),
                per: if self.sizes.unit().is_inch_family() {
                    crate::rules::PerArea::Foot
                } else {
                    crate::rules::PerArea::Metre
                },
            },
            _ => Quantity::Pieces(item.count),
        }
    }

    fn by_area(&mut self, rule: &Rule, way: &Areas, item: &Item<'_>) -> Result<Charge, Box<Fault>> {
        let area = item.area.ok_or_else(|| unlike(rule, item, "an area"))?;
        let one = way.per.area();
        let unit = if let Some(price) = way.price {
            self.stated(price)
        } else {
            let cost = self.cost(item, Supply::Length, self.cost_line())?;
            let factor = way.factor.unwrap_or(Rate::ONE).0;
            let waste = way.waste.unwrap_or(Rate::ZERO).0;
            let unit = ("unit_area", Given::prices(one), Exact::from(one));
            self.unit_price(&laws::UNIT_AREA, &cost, unit, (waste, factor), item)?
        };
        let least = way.least.unwrap_or(Rate::ZERO).0;
        let round = self.round(self.rules.rounding.line);
        let share = Exact::from(area.value)
            .over(one)
            .ok_or_else(|| too_large(item))?;
        let is_least = share.at_most(least).ok_or_else(|| too_large(item))?;
        let exact = if is_least { least.into() } else { share }
            .times(unit.value)
            .and_then(|all| all.times(i64::from(item.count)));
        let line = self.cents(exact, round, item)?;
        let [cent, rounding] = self.closing(round);
        let inputs = [
            ("unit", unit.into()),
            ("area", area.into()),
            ("unit_area", Given::prices(one)),
            ("least", Given::prices(least)),
            ("count", Given::job(item.count)),
            cent,
            rounding,
        ];
        let amount = self
            .working
            .by(&laws::LINE_AREA, self.amount(), &inputs, line);
        Ok(Charge {
            quantity: Quantity::Area {
                area: area.value.times(i64::from(item.count)),
                per: way.per,
            },
            unit: Some(unit),
            amount,
        })
    }

    fn by_piece(&mut self, way: &Each, item: &Item<'_>) -> Result<Charge, Box<Fault>> {
        let price = way.price.0;
        let line = price
            .checked_times(i64::from(item.count))
            .map_err(|_| too_large(item))?;
        let unit = self.stated(way.price);
        let inputs = [("price", unit.into()), ("count", Given::job(item.count))];
        let amount = self
            .working
            .by(&laws::LINE_EACH, self.amount(), &inputs, line);
        Ok(Charge {
            quantity: Quantity::Pieces(item.count),
            unit: Some(unit),
            amount,
        })
    }

    fn by_minutes(
        &mut self,
        rule: &Rule,
        way: &Minutes,
        item: &Item<'_>,
    ) -> Result<Charge, Box<Fault>> {
        let hour = way.hour.or(self.rules.hour).map(|hour| hour.0);
        let hour = hour.ok_or_else(|| no_hour(rule, item))?;
        let minutes = match way.each {
            Some(each) => Given::prices(each),
            None => Given::job(self.minutes()),
        };
        let each = way.each.map_or_else(|| self.minutes(), i64::from);
        let count = i64::from(item.count);
        let round = self.round(self.rules.rounding.line);
        let exact = Exact::from(hour)
            .times(each)
            .and_then(|all| all.times(count))
            .and_then(|all| all.over(HOUR));
        let line = self.cents(exact, round, item)?;
        let [cent, rounding] = self.closing(round);
        let inputs = [
            ("minutes", minutes),
            ("hour", Given::prices(hour)),
            ("count", Given::job(count)),
            cent,
            rounding,
        ];
        let amount = self
            .working
            .by(&laws::LINE_MINUTES, self.amount(), &inputs, line);
        Ok(Charge {
            quantity: Quantity::Minutes(each.saturating_mul(count)),
            unit: None,
            amount,
        })
    }
}

/// Minutes in an hour.
const HOUR: i64 = 60; // geometry: minutes in an hour

/// The unit a length is usually priced in, by the step it is rounded up to.
fn usual(strip: &Strip) -> Per {
    match strip.step {
        ChargeStep::Foot | ChargeStep::HalfFoot => Per::Foot,
        ChargeStep::Decimetre | ChargeStep::Exact => Per::Metre,
    }
}

/// `line + each × count`.
fn sum(line: Money, each: Money, count: i64) -> Option<Money> {
    line.checked_add(each.checked_times(count).ok()?).ok()
}

/// A rule of a way that doesn't suit the part.
pub(super) fn unlike(rule: &Rule, item: &Item<'_>, wants: &str) -> Fault {
    Fault::refuse(
        "pricing.unlike",
        item.name.as_ref(),
        format!("the rule {} reckons by {wants}, which it has not", rule.id),
        "",
        "Charge for it another way: by the piece, by a table of sizes, by time",
    )
}

fn no_way(rule: &Rule, item: &Item<'_>) -> Fault {
    Fault::refuse(
        "pricing.no_way",
        item.name.as_ref(),
        format!("the rule {} does not say how it charges", rule.id),
        "",
        "Give it one of length, chop, cost, bands, area, sheet, each, minutes",
    )
}

fn no_hour(rule: &Rule, item: &Item<'_>) -> Fault {
    Fault::refuse(
        "pricing.no_hour",
        item.name.as_ref(),
        format!(
            "the rule {} charges by time, and no hour has a price",
            rule.id
        ),
        "",
        "State `hour` in the rule set or in the rule",
    )
}
