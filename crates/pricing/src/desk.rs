//! The desk where a piece is priced: which rule charges for what, and the shop's own side.

use std::collections::BTreeSet;
use std::sync::Arc;

use measure::Money;
use sizing::{Fault, Sizes};
use trade::{Catalogue, Date, Job, Supply};
use working::{Given, Round, Subject, Worked, Working};

use crate::charge::Charge;
use crate::cost::{Reckon, no_measure, too_large};
use crate::exact::Exact;
use crate::item::{Item, items};
use crate::laws;
use crate::priced::{PartCost, Priced, PricedLine, ShopSide};
use crate::rules::{Part, Piece, Rule, RuleSet};
use crate::scalar::Way;
use crate::totals;

/// What is asked for beside the piece itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asked {
    /// The day its costs are taken on.
    pub day: Date,
    /// Whether it is wanted sooner than usual.
    pub rush: bool,
    /// The discounts given, by id in the rule set.
    pub discounts: Vec<String>,
    /// Whether the customer is exempt from tax.
    pub exempt: bool,
}

impl Asked {
    /// Nothing but the price, on this day.
    pub const fn on(day: Date) -> Self {
        Self {
            day,
            rush: false,
            discounts: Vec::new(),
            exempt: false,
        }
    }
}

/// Prices a derived piece.
///
/// Shape:  lines front to back; what is asked for twice is charged once and is a fault.
/// Units:  the rule set's currency, each amount rounded where its rule says so.
/// Errors: none; what is missing or charged twice is a fault of the price, and a price with a fault that
///         refuses is not given to a customer.
pub fn price(
    job: &Job,
    sizes: &Sizes,
    catalogue: &Catalogue,
    rules: &RuleSet,
    asked: &Asked,
) -> Priced {
    let mut working = sizes.working.clone();
    let items = items(job, sizes, catalogue, &mut working);
    let mut desk = Desk {
        job,
        sizes,
        rules,
        day: asked.day,
        cent: rules.cent(),
        working,
        faults: Vec::new(),
        line: 0,
        minutes: None,
    };
    if asked.day < rules.holds_from {
        desk.faults.push(not_yet(rules, asked.day));
    }
    let mut lines = desk.lines(&items);
    let totals = totals::reckon(&mut desk, asked, &mut lines);
    let shop = desk.shop(&items, totals.net);
    let mut faults = desk.faults;
    faults.sort_by_key(|fault| std::cmp::Reverse(fault.severity));
    Priced {
        currency: rules.currency(),
        day: asked.day,
        lines,
        totals,
        shop,
        faults,
        working: desk.working,
    }
}

/// A piece being priced.
pub(crate) struct Desk<'a> {
    pub job: &'a Job,
    pub sizes: &'a Sizes,
    pub rules: &'a RuleSet,
    pub day: Date,
    pub cent: Money,
    pub working: Working,
    pub faults: Vec<Fault>,
    /// The line being charged, from 0.
    pub line: usize,
    minutes: Option<i64>,
}

impl<'a> Desk<'a> {
    /// How an amount is rounded.
    #[allow(clippy::unused_self, reason = "reads as the desk's own")]
    pub(crate) fn round(&self, way: Way) -> Round {
        way.into()
    }

    /// Minutes of the bench's checklist.
    pub(crate) fn minutes(&mut self) -> i64 {
        let (job, sizes) = (self.job, self.sizes);
        *self
            .minutes
            .get_or_insert_with(|| sizing::minutes(&sizing::steps(job, sizes)))
    }

    fn lines(&mut self, items: &[Item<'a>]) -> Vec<PricedLine> {
        let rules = self.rules;
        let claims: Vec<Vec<&'a Arc<Rule>>> = items.iter().map(|item| self.claims(item)).collect();
        let bases = claims.iter().flatten().filter(|rule| !rule.on_top);
        let included: BTreeSet<Part> = bases
            .flat_map(|rule| rule.includes.iter().copied())
            .collect();
        let mut lines = Vec::with_capacity(rules.rules.len());
        for (item, claims) in items.iter().zip(&claims) {
            self.look_for_faults(item, claims, &included);
            let mut charged = false;
            for rule in claims {
                if !rule.on_top && std::mem::replace(&mut charged, true) {
                    continue;
                }
                match self.charge(rule, item) {
                    Ok(charge) => {
                        lines.push(line(rule, item, charge));
                        self.line += 1;
                    }
                    Err(fault) => self.faults.push(*fault),
                }
            }
        }
        lines
    }

    /// The rules that charge for a part, in the order of their ids.
    fn claims(&self, item: &Item<'_>) -> Vec<&'a Arc<Rule>> {
        let piece = Piece {
            sides: self.sizes.sides,
            double_sided: self.sizes.double_sided,
            level: self.job.identity.level,
        };
        let rules = self.rules.rules.iter();
        let claims = rules.filter(|rule| rule.charges == item.part && rule.when.holds(item, piece));
        let mut claims: Vec<&Arc<Rule>> = claims.collect();
        claims.sort_by(|one, other| (one.on_top, &one.id).cmp(&(other.on_top, &other.id)));
        claims
    }

    fn look_for_faults(
        &mut self,
        item: &Item<'_>,
        claims: &[&Arc<Rule>],
        included: &BTreeSet<Part>,
    ) {
        let bases: Vec<&str> = claims
            .iter()
            .filter(|rule| !rule.on_top)
            .map(|rule| rule.id.as_str())
            .collect();
        let is_included = included.contains(&item.part);
        match bases[..] {
            [] if is_included || !item.part.is_material() => {}
            [] => self.faults.push(not_charged(item)),
            [_] if !is_included => {}
            [rule] => self.faults.push(twice(item, rule)),
            _ => self.faults.push(same_claim(item, &bases)),
        }
    }

    /// What only the shop sees.
    fn shop(&mut self, items: &[Item<'a>], net: Worked<Money>) -> ShopSide {
        let mut parts = Vec::with_capacity(items.len());
        for (at, item) in items.iter().enumerate() {
            if !item.part.is_material() {
                continue;
            }
            let (cost, unknown) = match self.part_cost(item, at) {
                Ok(cost) => (Some(cost), None),
                Err(fault) => (None, item.material.map(|_| *fault)),
            };
            parts.push(PartCost {
                name: item.name.as_ref().to_owned(),
                material: item.material.map(|material| material.code.clone()),
                cost,
                unknown,
            });
        }
        let minutes = self.minutes();
        let labour = self
            .rules
            .wage
            .and_then(|wage| self.labour_cost(wage.0, minutes));
        let cost = self.whole_cost(&parts, labour);
        let margin = cost.and_then(|cost| {
            let margin = net.value.checked_sub(cost.value).ok()?;
            let inputs = [("net", net.into()), ("cost", cost.into())];
            let subject = Subject::of("price", "margin");
            Some(self.working.by(&laws::MARGIN, subject, &inputs, margin))
        });
        ShopSide {
            cost,
            margin,
            parts,
            minutes,
            labour,
        }
    }

    /// What a part costs; why it is not known is a fault of the price only where a rule needs it.
    fn part_cost(&mut self, item: &Item<'_>, at: usize) -> Result<Worked<Money>, Box<Fault>> {
        let subject = Subject::nth("cost", at, "unit");
        let cost = self.cost(item, Supply::Length, subject)?;
        let (used, given) =
            Self::taken(item, cost.per, Reckon::Used).ok_or_else(|| no_measure(item))?;
        let round = self.round(self.rules.rounding.line);
        let count = i64::from(item.count);
        let amount = Exact::from(cost.price)
            .times(used)
            .and_then(|exact| exact.times(count)?.over(cost.per.exact()))
            .and_then(|exact| exact.to_money(self.cent, round))
            .ok_or_else(|| too_large(item))?;
        let inputs = [
            ("price", cost.given),
            ("used", given),
            ("count", Given::job(count)),
            ("per", cost.per.given()),
            ("cent", Given::prices(self.cent)),
            ("way", Given::prices(round)),
        ];
        let subject = Subject::nth("cost", at, "part");
        Ok(self
            .working
            .by(&laws::COST_MATERIAL, subject, &inputs, amount))
    }

    fn labour_cost(&mut self, wage: Money, minutes: i64) -> Option<Worked<Money>> {
        let round = self.round(self.rules.rounding.line);
        let exact = Exact::from(wage).times(minutes)?.over(HOUR)?;
        let amount = exact.to_money(self.cent, round)?;
        let inputs = [
            ("minutes", Given::job(minutes)),
            ("wage", Given::prices(wage)),
            ("cent", Given::prices(self.cent)),
            ("way", Given::prices(round)),
        ];
        let subject = Subject::of("cost", "labour");
        Some(
            self.working
                .by(&laws::COST_LABOUR, subject, &inputs, amount),
        )
    }

    /// What the piece costs; none while the cost of a part with a material is unknown.
    fn whole_cost(
        &mut self,
        parts: &[PartCost],
        labour: Option<Worked<Money>>,
    ) -> Option<Worked<Money>> {
        let known = |part: &PartCost| part.cost.is_some() || part.material.is_none();
        if !parts.iter().all(known) {
            return None;
        }
        let costs: Vec<Worked<Money>> = parts.iter().filter_map(|part| part.cost).collect();
        let mut total = Money::zero(self.cent.currency);
        for cost in costs.iter().chain(&labour) {
            total = total.checked_add(cost.value).ok()?;
        }
        let parts = costs.into_iter().map(|cost| ("part", cost.into()));
        let labour = labour.map(|labour| ("labour", labour.into()));
        let inputs: Vec<(&'static str, Given)> = parts.chain(labour).collect();
        let subject = Subject::of("price", "cost");
        Some(self.working.by(&laws::COST, subject, &inputs, total))
    }
}

/// Minutes in an hour.
const HOUR: i64 = 60; // geometry: minutes in an hour

fn line(rule: &Arc<Rule>, item: &Item<'_>, charge: Charge) -> PricedLine {
    PricedLine {
        rule: Arc::clone(rule),
        part: item.part,
        name: item.name.as_ref().to_owned(),
        material: item.material.cloned(),
        quantity: charge.quantity,
        unit: charge.unit,
        amount: charge.amount,
        discount: Money::zero(charge.amount.value.currency),
    }
}

fn not_charged(item: &Item<'_>) -> Fault {
    let material = item.material.map(|material| material.code.as_str());
    let of = material.map_or(String::new(), |code| format!(" ({code})"));
    Fault::refuse(
        "pricing.not_charged",
        item.name.as_ref(),
        format!("no rule charges for it{of}"),
        "",
        format!(
            "Add a rule with `charges = \"{0}\"` that applies to it, or name \"{0}\" in the `includes` of another",
            item.part.word()
        ),
    )
}

fn same_claim(item: &Item<'_>, rules: &[&str]) -> Fault {
    Fault::refuse(
        "pricing.same_claim",
        item.name.as_ref(),
        format!("the rules {} all charge for it", rules.join(" and ")),
        "",
        "Narrow the `when` of all but one, or let one come on top with `on_top = true`",
    )
}

fn twice(item: &Item<'_>, rule: &str) -> Fault {
    Fault::warn(
        "pricing.included_too",
        item.name.as_ref(),
        format!("the rule {rule} charges for it, and another rule's price includes it"),
        "",
        format!(
            "Take \"{}\" out of that rule's `includes`, or narrow {rule}",
            item.part.word()
        ),
    )
}

fn not_yet(rules: &RuleSet, day: Date) -> Fault {
    Fault::warn(
        "pricing.not_yet",
        "Prices",
        format!(
            "“{}” holds from {}, and the price is for {day}",
            rules.name, rules.holds_from
        ),
        "",
        "Price it by the rule set that held on that day",
    )
}
