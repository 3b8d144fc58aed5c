//! What another rule set would have done to pieces already priced.

use std::collections::BTreeSet;

use measure::Money;
use sizing::Sizes;
use trade::{Catalogue, Job};

use crate::alternatives::less;
use crate::desk::{Asked, price};
use crate::priced::Priced;
use crate::rules::RuleSet;

/// A piece to price twice.
#[derive(Clone, Copy, Debug)]
pub struct Past<'a> {
    /// What it is called: the quote's number.
    pub name: &'a str,
    /// The job.
    pub job: &'a Job,
    /// Its sizes.
    pub sizes: &'a Sizes,
    /// What was asked.
    pub asked: &'a Asked,
}

/// What the change does.
#[derive(Clone, Debug)]
pub struct Comparison {
    /// Each piece.
    pub pieces: Vec<Compared>,
    /// Rules of the new set that charged for nothing in any of them.
    pub idle: Vec<String>,
}

/// One piece, priced by both.
#[derive(Clone, Debug)]
pub struct Compared {
    /// What it is called.
    pub name: String,
    /// Its total by the old rules, and by the new.
    pub totals: [Money; 2],
    /// The new less the old; none where they are in two currencies.
    pub difference: Option<Money>,
    /// The lines that change.
    pub lines: Vec<LineChange>,
    /// What is wrong with it by the new rules.
    pub faults: Vec<sizing::Fault>,
}

/// A line that changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineChange {
    /// Which part.
    pub part: String,
    /// The rule's id.
    pub rule: String,
    /// By the old rules; none where they do not charge it.
    pub before: Option<Money>,
    /// By the new rules; none where they do not charge it.
    pub after: Option<Money>,
}

/// Prices each piece by both rule sets, on its own day.
///
/// Errors: none; what the new rules can't price is a fault of its piece.
pub fn compare(
    old: &RuleSet,
    new: &RuleSet,
    catalogue: &Catalogue,
    pieces: &[Past<'_>],
) -> Comparison {
    let mut used: BTreeSet<String> = BTreeSet::new();
    let mut compared = Vec::with_capacity(pieces.len());
    for piece in pieces {
        let by = |rules: &RuleSet| price(piece.job, piece.sizes, catalogue, rules, piece.asked);
        let (before, after) = (by(old), by(new));
        used.extend(after.lines.iter().map(|line| line.rule.id.clone()));
        compared.push(one(piece.name, &before, after));
    }
    let ids = new.rules.iter().map(|rule| rule.id.clone());
    Comparison {
        pieces: compared,
        idle: ids.filter(|id| !used.contains(id)).collect(),
    }
}

fn one(name: &str, before: &Priced, after: Priced) -> Compared {
    let totals = [before.totals.total.value, after.totals.total.value];
    let same = before.currency == after.currency;
    Compared {
        name: name.to_owned(),
        totals,
        difference: same.then(|| less(totals[1], totals[0])),
        lines: changes(before, &after),
        faults: after.faults,
    }
}

fn changes(before: &Priced, after: &Priced) -> Vec<LineChange> {
    let mut keys: Vec<(&str, &str)> = Vec::new();
    for line in before.lines.iter().chain(&after.lines) {
        let key = (line.name.as_str(), line.rule.id.as_str());
        if !keys.contains(&key) {
            keys.push(key);
        }
    }
    let of = |priced: &Priced, (part, rule): (&str, &str)| {
        let mut alike = priced
            .lines
            .iter()
            .filter(|line| line.name == part && line.rule.id == rule)
            .map(|line| line.amount.value);
        let first = alike.next()?;
        Some(alike.fold(first, |sum, line| Money {
            minor: sum.minor.saturating_add(line.minor),
            ..sum
        }))
    };
    let found = keys.into_iter().map(|key| LineChange {
        part: key.0.to_owned(),
        rule: key.1.to_owned(),
        before: of(before, key),
        after: of(after, key),
    });
    found.filter(|line| line.before != line.after).collect()
}
