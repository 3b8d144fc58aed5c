//! Reading and writing a rule set.

use std::collections::HashSet;

use measure::{Currency, Money};
use serde::Deserialize;
use trade::Place;
use trade::reading::refusal;
use working::Decimal;

use super::{RULES_VERSION, Rule, RuleSet};
use crate::scalar::{Amount, Rate};

/// Why a rule set can't be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum RulesFault {
    /// Something in it is not as it should be.
    #[error("{sentence}")]
    Field {
        /// What is wrong and what would do.
        sentence: String,
        /// Where.
        place: Place,
    },
    /// It does not say which version it is.
    #[error(
        "the rule set does not say `prices = {RULES_VERSION}` on its first line; add that line"
    )]
    NoVersion,
    /// It was written by a newer program.
    #[error(
        "the rule set says `prices = {found}`, this program reads up to {RULES_VERSION}; update the program to open it"
    )]
    Newer {
        /// The version it names.
        found: i64,
    },
    /// Something in it contradicts the rest.
    #[error("{of}: {what}")]
    Contradicts {
        /// Which rule or table.
        of: String,
        /// What is wrong and what would do.
        what: String,
    },
}

#[derive(Deserialize)]
struct Head {
    prices: Option<i64>,
}

impl RuleSet {
    /// Reads a rule set, TOML.
    ///
    /// Errors: the first fault of form with its line, else everything that contradicts itself.
    pub fn read(text: &str) -> Result<Self, Vec<RulesFault>> {
        let of_form = |error: &toml::de::Error| {
            let (sentence, place) = refusal(text, error);
            vec![RulesFault::Field { sentence, place }]
        };
        let head: Head = toml::from_str(text).map_err(|error| of_form(&error))?;
        match head.prices {
            None => return Err(vec![RulesFault::NoVersion]),
            Some(found) if found > i64::from(RULES_VERSION) => {
                return Err(vec![RulesFault::Newer { found }]);
            }
            Some(_) => {}
        }
        let rules: Self = toml::from_str(text).map_err(|error| of_form(&error))?;
        rules.sound()?;
        Ok(rules)
    }

    /// Whether nothing in it contradicts the rest.
    ///
    /// Errors: everything that does.
    pub(crate) fn sound(&self) -> Result<(), Vec<RulesFault>> {
        let faults = self.contradictions();
        if faults.is_empty() {
            Ok(())
        } else {
            Err(faults)
        }
    }

    /// Writes it as TOML; reading it back gives the same rule set.
    pub fn to_toml(&self) -> String {
        toml::to_string_pretty(self).expect("a rule set writes as TOML")
    }

    /// The JSON Schema (2020-12) of the document.
    pub fn schema() -> serde_json::Value {
        schemars::schema_for!(Self).to_value()
    }

    fn contradictions(&self) -> Vec<RulesFault> {
        let mut list = List {
            currency: self.currency(),
            faults: Vec::new(),
        };
        let mut seen = HashSet::new();
        for rule in &self.rules {
            if !seen.insert(rule.id.as_str()) {
                list.add(&rule.id, "two rules have this id; give one of them another");
            }
            list.rule(rule);
        }
        let mut seen = HashSet::new();
        for discount in &self.discount {
            if !seen.insert(discount.id.as_str()) {
                list.add(
                    &discount.id,
                    "two discounts have this id; give one of them another",
                );
            }
            list.share(&discount.id, "share", discount.share);
            for id in &discount.on {
                if self.rule(id).is_none() {
                    list.add(
                        &discount.id,
                        &format!("it is on “{id}”, which is no rule's id"),
                    );
                }
            }
        }
        list.terms(self);
        list.faults
    }
}

/// Contradictions being gathered.
struct List {
    currency: Currency,
    faults: Vec<RulesFault>,
}

impl List {
    fn add(&mut self, of: &str, what: &str) {
        self.faults.push(RulesFault::Contradicts {
            of: of.to_owned(),
            what: what.to_owned(),
        });
    }

    fn amount(&mut self, of: &str, amount: Option<Amount>) {
        let Some(Amount(Money { minor, currency })) = amount else {
            return;
        };
        if currency != self.currency {
            let what = format!(
                "{} is not in {}, the currency of the rule set",
                Money::new(minor, currency),
                self.currency
            );
            self.add(of, &what);
        }
        if minor < 0 {
            self.add(of, "an amount is below zero; write it without the sign");
        }
    }

    fn not_below(&mut self, of: &str, name: &str, rate: Option<Rate>) {
        if rate.is_some_and(|rate| rate.is_negative()) {
            self.add(
                of,
                &format!("{name} is below zero; write it without the sign"),
            );
        }
    }

    /// A share from nothing to the whole.
    fn share(&mut self, of: &str, name: &str, rate: Rate) {
        if rate.0 < Decimal::ZERO || rate.0 > Decimal::ONE {
            self.add(of, &format!("{name} lies between 0 % and 100 %"));
        }
    }

    fn rule(&mut self, rule: &Rule) {
        let ways = [
            rule.length.is_some(),
            rule.chop.is_some(),
            rule.cost.is_some(),
            rule.bands.is_some(),
            rule.area.is_some(),
            rule.sheet.is_some(),
            rule.each.is_some(),
            rule.minutes.is_some(),
        ];
        if ways.iter().filter(|way| **way).count() != 1 {
            self.add(
                &rule.id,
                "it says exactly one way of charging: length, chop, cost, bands, area, sheet, each or minutes",
            );
        }
        self.amount(&rule.id, rule.least);
        self.lengths(rule);
        self.sheets(rule);
        if let Some(minutes) = &rule.minutes {
            self.amount(&rule.id, minutes.hour);
            if minutes.each.is_none() && rule.charges != super::Part::Work {
                self.add(&rule.id, "only `work` has minutes of its own; state `each`");
            }
        }
    }

    fn lengths(&mut self, rule: &Rule) {
        let id = &rule.id;
        if let Some(way) = &rule.length {
            self.amount(id, way.price);
            self.not_below(id, "waste", way.waste);
            self.not_below(id, "factor", way.factor);
            self.tiers(id, &way.factors);
        }
        if let Some(way) = &rule.chop {
            self.amount(id, way.handling);
            self.not_below(id, "premium", way.premium);
            self.not_below(id, "factor", way.factor);
        }
        if let Some(way) = &rule.cost {
            self.amount(id, way.plus);
            self.not_below(id, "waste", way.waste);
            self.not_below(id, "factor", way.factor);
            self.tiers(id, &way.factors);
        }
    }

    fn tiers(&mut self, id: &str, tiers: &[super::Tier]) {
        for tier in tiers {
            self.amount(id, tier.to);
            self.not_below(id, "factor", Some(tier.factor));
        }
    }

    fn sheets(&mut self, rule: &Rule) {
        let id = &rule.id;
        if let Some(way) = &rule.bands {
            for band in &way.band {
                self.amount(id, Some(band.price));
            }
            self.amount(id, way.beyond.as_ref().map(|beyond| beyond.add));
            let steps = way
                .step
                .into_iter()
                .chain(way.beyond.as_ref().map(|b| b.each));
            if steps.into_iter().any(|step| !step.is_positive()) {
                self.add(id, "a step is above zero");
            }
        }
        if let Some(way) = &rule.area {
            self.amount(id, way.price);
            self.not_below(id, "waste", way.waste);
            self.not_below(id, "factor", way.factor);
            self.not_below(id, "least", way.least);
        }
        if let Some(way) = &rule.sheet {
            self.amount(id, way.price);
            self.not_below(id, "factor", way.factor);
        }
        if let Some(way) = &rule.each {
            self.amount(id, Some(way.price));
        }
    }

    fn terms(&mut self, rules: &RuleSet) {
        for amount in [rules.hour, rules.wage, rules.minimum_order] {
            self.amount("the rule set", amount);
        }
        if let Some(shown) = &rules.rounding.shown {
            self.step("rounding.shown", shown.step);
        }
        if let Some(deposit) = &rules.deposit {
            self.share("deposit", "share", deposit.share);
            if let Some(step) = deposit.step {
                self.step("deposit", step);
            }
        }
        self.not_below("rush", "share", rules.rush.as_ref().map(|rush| rush.share));
        for rate in &rules.tax.rates {
            self.not_below(&rate.says, "the rate", Some(rate.share));
        }
        let mut seen = HashSet::new();
        for rate in &rules.tax.rates {
            if !seen.insert(rate.says.as_str()) {
                self.add(
                    &rate.says,
                    "two rates of tax have this name; give one of them another",
                );
            }
        }
        if rules
            .valid_days
            .is_some_and(|days| days == 0 || rules.holds_from.after(days).is_none())
        {
            self.add(
                "the rule set",
                "a quote stands for one day or more, within the calendar; leave `valid_days` out if it stands until it is withdrawn",
            );
        }
        self.exchanges(rules);
    }

    fn exchanges(&mut self, rules: &RuleSet) {
        let mut seen = HashSet::from([self.currency]);
        for exchange in &rules.exchange {
            if !seen.insert(exchange.from.0) {
                let of = format!("exchange from {}", exchange.from.0);
                self.add(&of, "its rate is known already; leave one of them out");
            }
            if exchange.rate.0 <= Decimal::ZERO {
                let of = format!("exchange from {}", exchange.from.0);
                self.add(&of, "the rate is above zero");
            }
        }
    }

    fn step(&mut self, of: &str, step: Amount) {
        self.amount(of, Some(step));
        if step.minor <= 0 {
            self.add(of, "a step is above zero");
        }
    }
}
