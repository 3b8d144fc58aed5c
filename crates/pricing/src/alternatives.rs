//! Up to six ways of framing one piece, side by side.

use measure::Money;
use sizing::{Fault, Sizes, Takes, derive};
use trade::{Catalogue, Job, Settings};

use crate::desk::{Asked, price};
use crate::priced::Priced;
use crate::rules::RuleSet;

/// The most that stand side by side.
pub const MOST_ALTERNATIVES: usize = 6; // geometry: what fits a page and a customer's patience

/// One way of framing the piece.
#[derive(Clone, Debug)]
pub struct Alternative {
    /// What it is called.
    pub name: String,
    /// Its sizes.
    pub sizes: Sizes,
    /// Its price.
    pub priced: Priced,
    /// How much more than the first it costs; below zero where less.
    pub difference: Money,
    /// What is another than in the first.
    pub differs: Vec<Differs>,
}

/// Something that is another than in the first alternative.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Differs {
    /// Which part.
    pub part: String,
    /// In the first; none where it has no such part.
    pub first: Option<String>,
    /// In this one; none where it has no such part.
    pub this: Option<String>,
}

/// Why alternatives can't be set side by side.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum AlternativesFault {
    /// None at all.
    #[error("there is nothing to compare; name at least one job")]
    None,
    /// More than fit.
    #[error("{given} alternatives were given; at most {MOST_ALTERNATIVES} stand side by side")]
    TooMany {
        /// How many.
        given: usize,
    },
    /// One that can't be derived.
    #[error("{name}: {}", sentences(faults))]
    NotDerived {
        /// Which.
        name: String,
        /// Why.
        faults: Vec<Fault>,
    },
}

fn sentences(faults: &[Fault]) -> String {
    let sentences: Vec<String> = faults.iter().map(Fault::sentence).collect();
    sentences.join(" ")
}

/// Derives and prices each, and says what differs from the first and by how much.
///
/// Errors: none, more than six, or one that can't be derived.
pub fn alternatives(
    choices: &[(&str, &Job)],
    catalogue: &Catalogue,
    shop: &Settings,
    rules: &RuleSet,
    asked: &Asked,
) -> Result<Vec<Alternative>, AlternativesFault> {
    if choices.is_empty() {
        return Err(AlternativesFault::None);
    }
    if choices.len() > MOST_ALTERNATIVES {
        let given = choices.len();
        return Err(AlternativesFault::TooMany { given });
    }
    let mut found: Vec<Alternative> = Vec::with_capacity(choices.len());
    for (name, job) in choices {
        let sizes =
            derive(job, catalogue, shop).map_err(|faults| AlternativesFault::NotDerived {
                name: (*name).to_owned(),
                faults,
            })?;
        let priced = price(job, &sizes, catalogue, rules, asked);
        let (difference, differs) = match found.first() {
            Some(first) => (
                less(priced.totals.total.value, first.priced.totals.total.value),
                differs(&first.sizes, &sizes),
            ),
            None => (Money::zero(priced.currency), Vec::new()),
        };
        found.push(Alternative {
            name: (*name).to_owned(),
            sizes,
            priced,
            difference,
            differs,
        });
    }
    Ok(found)
}

/// `one − other`; both are totals of one rule set.
pub(crate) fn less(one: Money, other: Money) -> Money {
    Money {
        minor: one.minor.saturating_sub(other.minor),
        ..one
    }
}

/// What is another: materials and sizes of the bill, and the outside.
pub(crate) fn differs(first: &Sizes, this: &Sizes) -> Vec<Differs> {
    let (before, after) = (parts(first), parts(this));
    let mut names: Vec<&String> = before.iter().map(|(name, _)| name).collect();
    for (name, _) in &after {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let of = |parts: &[(String, String)], name: &String| {
        let part = parts.iter().find(|(part, _)| part == name);
        part.map(|(_, words)| words.clone())
    };
    let found = names.into_iter().map(|name| Differs {
        part: name.clone(),
        first: of(&before, name),
        this: of(&after, name),
    });
    found.filter(|part| part.first != part.this).collect()
}

/// Every part with its material and size, in words.
pub(crate) fn parts(sizes: &Sizes) -> Vec<(String, String)> {
    let unit = sizes.unit();
    let of_bill = sizes.bill.iter().map(|line| {
        let size = match &line.takes {
            Takes::Sheet { size, .. } => size.exact(unit),
            Takes::Strip { length } => length.exact(unit),
        };
        let count = match line.count {
            1 => String::new(),
            count => format!("{count} × "),
        };
        let words = match &line.material {
            Some(material) => format!("{count}{}, {size}", material.title()),
            None => format!("{count}{size}"),
        };
        (line.part.clone(), words)
    });
    let outside = sizes.outside.size().exact(unit);
    of_bill.chain([("Outside".to_owned(), outside)]).collect()
}
