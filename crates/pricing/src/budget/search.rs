//! Looking for changes: singly, then two and three together.

use std::collections::BTreeMap;

use measure::Money;
use sizing::{Fault, Severity, derive};
use trade::Key;

use super::change::{Saving, applied, candidates};
use super::{Budget, BudgetFault, Proposal, Proposed};
use crate::alternatives::less;
use crate::desk::price;

/// Every fault of a piece, by code and part, with the worst it is.
type Harm = BTreeMap<(&'static str, String), Severity>;

struct Search<'a> {
    budget: &'a Budget<'a>,
    before: Money,
    harm: Harm,
}

pub(super) fn propose(budget: &Budget<'_>) -> Result<Proposed, BudgetFault> {
    let currency = budget.rules.currency();
    if budget.ceiling.currency != currency {
        return Err(BudgetFault::Currency {
            ceiling: budget.ceiling,
            currency,
        });
    }
    let sizes =
        derive(budget.job, budget.catalogue, budget.shop).map_err(|_| BudgetFault::NotDerived)?;
    let priced = price(
        budget.job,
        &sizes,
        budget.catalogue,
        budget.rules,
        budget.asked,
    );
    if let Some(fault) = priced.faults.first().filter(|_| priced.is_refused()) {
        return Err(BudgetFault::NotPriced(fault.sentence()));
    }
    let search = Search {
        budget,
        before: priced.totals.total.value,
        harm: harm(budget, budget.job, &sizes),
    };
    Ok(search.run())
}

impl Search<'_> {
    fn run(&self) -> Proposed {
        let budget = self.budget;
        let mut proposed = Proposed {
            before: self.before,
            proposals: Vec::new(),
            looked_at: 0,
            put_together: 0,
            deepest: 0,
            cheapest: None,
        };
        if self.before.minor <= budget.ceiling.minor {
            return proposed;
        }
        let mut singles = self.singles();
        proposed.looked_at = singles.len();
        let count = |key| usize::try_from(budget.shop.count(key)).unwrap_or(1);
        let most = count(Key::BudgetMostChanges);
        let mut sets: Vec<Vec<usize>> = (0..singles.len()).map(|at| vec![at]).collect();
        for depth in 1..=most {
            proposed.deepest = depth;
            let mut tried: Vec<Proposal> = Vec::new();
            for set in &sets {
                tried.extend(self.together(set, &singles));
            }
            let cheaper = tried.iter().min_by_key(|tried| tried.total.minor).cloned();
            let (best, cheaper) = (proposed.cheapest.take(), cheaper);
            let both = best.into_iter().chain(cheaper);
            proposed.cheapest = both.min_by_key(|tried| tried.total.minor);
            tried.retain(|tried| tried.total.minor <= budget.ceiling.minor);
            tried.sort_by_key(|tried| std::cmp::Reverse(tried.total.minor));
            if !tried.is_empty() {
                proposed.cheapest = None;
                proposed.proposals = tried;
                return proposed;
            }
            if depth == 1 && depth < most {
                singles = spread(singles, count(Key::BudgetPutTogether));
                proposed.put_together = singles.len();
                sets = (0..singles.len()).map(|at| vec![at]).collect();
            }
            if depth < most {
                sets = grown(&sets, &singles);
            }
        }
        proposed
    }

    /// Single changes that save something and harm nothing, each with what it saves.
    fn singles(&self) -> Vec<(Saving, Money)> {
        let budget = self.budget;
        let all = candidates(budget.job, budget.catalogue, budget.shop, budget.asked.day);
        let saved = all.into_iter().filter_map(|change| {
            let total = self.tried(&[&change])?;
            let saving = less(self.before, total);
            (saving.minor > 0).then_some((change, saving))
        });
        saved.collect()
    }

    fn together(&self, set: &[usize], singles: &[(Saving, Money)]) -> Option<Proposal> {
        let changes: Vec<(Saving, Money)> = set.iter().map(|at| singles[*at].clone()).collect();
        let total = if let [(_, saving)] = &changes[..] {
            less(self.before, *saving)
        } else {
            let changes: Vec<&Saving> = changes.iter().map(|(change, _)| change).collect();
            self.tried(&changes)?
        };
        Some(Proposal {
            changes,
            total,
            saving: less(self.before, total),
        })
    }

    /// What the piece costs with changes; none where they harm it or it can't be made or priced.
    fn tried(&self, changes: &[&Saving]) -> Option<Money> {
        let budget = self.budget;
        let job = applied(budget.job, changes.iter().copied());
        let sizes = derive(&job, budget.catalogue, budget.shop).ok()?;
        let priced = price(&job, &sizes, budget.catalogue, budget.rules, budget.asked);
        if priced.is_refused() || priced.totals.total.value.minor >= self.before.minor {
            return None;
        }
        let after = harm(budget, &job, &sizes);
        let none_new = after
            .iter()
            .all(|(key, severity)| self.harm.get(key).is_some_and(|had| had >= severity));
        none_new.then_some(priced.totals.total.value)
    }
}

/// At most so many changes, evenly spread over what they save, the one that saves most among them: a catalogue of
/// thousands has millions of pairs.
fn spread(mut singles: Vec<(Saving, Money)>, most: usize) -> Vec<(Saving, Money)> {
    if singles.len() <= most {
        return singles;
    }
    singles.sort_by_key(|(_, saving)| std::cmp::Reverse(saving.minor));
    let all = singles.len();
    let mut at = 0;
    singles.retain(|_| {
        // Each of the `most` steps keeps the first of its share.
        let kept = (at * most) % all < most;
        at += 1;
        kept
    });
    singles
}

/// Every set with one more change that clashes with none of it.
fn grown(sets: &[Vec<usize>], singles: &[(Saving, Money)]) -> Vec<Vec<usize>> {
    let mut found = Vec::new();
    for set in sets {
        let from = set.last().map_or(0, |last| last + 1);
        for at in from..singles.len() {
            let clashes = |own: &usize| singles[*own].0.clashes(&singles[at].0);
            if !set.iter().any(clashes) {
                let mut longer = set.clone();
                longer.push(at);
                found.push(longer);
            }
        }
    }
    found
}

fn harm(budget: &Budget<'_>, job: &trade::Job, sizes: &sizing::Sizes) -> Harm {
    let looked = conservation::advice::looked_over(job, sizes, budget.catalogue);
    let found: Vec<Fault> = looked.faults();
    let mut harm = Harm::new();
    for fault in sizes.faults.iter().chain(&found) {
        let key = (fault.code, fault.part.clone());
        let worst = harm.entry(key).or_insert(fault.severity);
        *worst = fault.severity.max(*worst);
    }
    harm
}
