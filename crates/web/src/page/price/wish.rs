//! What is asked beside the piece: rush, discounts, exemption; carried from page to page.

#[cfg(test)]
mod tests;

use std::sync::Arc;

use maud::{Markup, html};
use pricing::{Asked, RuleSet};
use trade::Date;

use crate::clock;
use crate::desk::Desk;
use crate::problem::{Kind, Problem};

/// The controls of the price as they were sent.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(in crate::page) struct Wish {
    rush: bool,
    /// Ids of the rule set.
    discounts: Vec<String>,
    exempt: bool,
}

impl Wish {
    /// From the fields of a form.
    pub fn read(pairs: &[(String, String)]) -> Self {
        let ticked = |wanted: &str| pairs.iter().any(|(name, _)| name == wanted);
        let mut discounts: Vec<String> = Vec::new();
        for (name, id) in pairs {
            if name == "discount" && !id.is_empty() && !discounts.contains(id) {
                discounts.push(id.clone());
            }
        }
        Self {
            rush: ticked("rush"),
            discounts,
            exempt: ticked("exempt"),
        }
    }

    /// The shop's rules and what is asked of them today.
    ///
    /// Errors: a shop without prices, a clock that gives no day of the calendar.
    pub fn today(&self, desk: &Desk) -> Result<(Arc<RuleSet>, Asked), Problem> {
        self.on(desk.options.prices.as_ref(), clock::today())
    }

    fn on(
        &self,
        rules: Option<&Arc<RuleSet>>,
        day: Option<Date>,
    ) -> Result<(Arc<RuleSet>, Asked), Problem> {
        let Some(rules) = rules else {
            let detail = "The shop's prices are not given; start with rabbet serve --prices FILE.";
            return Err(Problem::plain(Kind::Input, detail));
        };
        let Some(day) = day else {
            return Err(Problem::plain(Kind::Input, clock::NO_DAY));
        };
        let asked = Asked {
            rush: self.rush,
            discounts: self.discounts.clone(),
            exempt: self.exempt,
            ..Asked::on(day)
        };
        Ok((Arc::clone(rules), asked))
    }

    /// As hidden fields.
    pub fn carried(&self) -> Markup {
        html! {
            @if self.rush { input type="hidden" name="rush" value="1"; }
            @for id in &self.discounts { input type="hidden" name="discount" value=(id); }
            @if self.exempt { input type="hidden" name="exempt" value="1"; }
        }
    }

    /// The controls, which belong to the piece's form; the price follows as they are ticked.
    pub fn controls(&self, rules: &RuleSet) -> Markup {
        html! {
            fieldset.wish {
                legend { "Asked beside the piece" }
                @if let Some(rush) = &rules.rush {
                    (tick("rush", "rush", "1", self.rush, &rush.says, "wanted sooner than usual"))
                }
                @for (at, discount) in rules.discount.iter().enumerate() {
                    @let id = format!("discount-{}", at + 1);
                    @let given = self.discounts.contains(&discount.id);
                    (tick(&id, "discount", &discount.id, given, &discount.says, &discount.id))
                }
                (tick("exempt", "exempt", "1", self.exempt, "The customer is exempt from tax", ""))
            }
        }
    }
}

fn tick(id: &str, name: &str, value: &str, ticked: bool, words: &str, beside: &str) -> Markup {
    html! {
        label.tick for=(id) {
            input id=(id) type="checkbox" name=(name) value=(value) form="piece" checked[ticked] data-redraws autocomplete="off";
            " " (words)
            @if !beside.is_empty() { " " span.beside { (beside) } }
        }
    }
}
