//! The material catalogue: what boards, glazing and mouldings are, each value with its source.

mod cost;
mod material;
mod sourced;

use std::collections::{BTreeMap, HashMap, HashSet};
use std::sync::Arc;

use measure::Unit;
use serde::Deserialize;

pub use cost::{Cost, Per, Price, PriceFault, Supply};
pub use material::{Coating, Kind, Material, Pane, Profile};
pub use sourced::{Sourced, Status as SourcedStatus};

use crate::reading;
use crate::written::with_bare;

/// Materials by code.
#[derive(Clone, Debug, Default)]
pub struct Catalogue {
    materials: BTreeMap<String, Arc<Material>>,
}

/// What is wrong with a catalogue or a reference into it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum CatalogueFault {
    /// The file can't be read as a catalogue.
    #[error("the catalogue can't be read: {0}")]
    Unreadable(String),
    /// Two materials share a code.
    #[error("two materials have the code {code}; give one of them another")]
    Twice {
        /// The shared code.
        code: String,
    },
    /// A code that no material has.
    #[error(
        "there is no material {code}{near}; list them with `rabbet material list`, or describe it in a [[material]] table of the job"
    )]
    Missing {
        /// The code as written.
        code: String,
        /// The nearest code, as a phrase.
        near: String,
    },
    /// A chain of `like` that comes back to itself.
    #[error("materials are like one another in a circle: {chain}; let one of them stand alone")]
    Circle {
        /// The chain, in order.
        chain: String,
    },
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    material: Vec<Material>,
}

impl Catalogue {
    /// The starter catalogue: generic materials with published or customary figures.
    pub fn starter() -> Self {
        Self::read(include_str!("catalogue/starter.toml")).expect("the starter catalogue reads")
    }

    /// Reads a catalogue file; bare lengths are millimetres.
    ///
    /// Errors: a file that can't be read, a code used twice, a circle of `like`.
    pub fn read(text: &str) -> Result<Self, CatalogueFault> {
        Self::default().under(text)
    }

    /// This catalogue with a catalogue file laid over it, as [`Self::with`] lays materials.
    ///
    /// Errors: as [`Self::read`].
    pub fn under(&self, text: &str) -> Result<Self, CatalogueFault> {
        let file: File = with_bare(Unit::Millimetre, || toml::from_str(text)).map_err(|error| {
            let (sentence, place) = reading::refusal(text, &error);
            CatalogueFault::Unreadable(match place.line {
                Some(line) => format!("line {line}: {sentence}"),
                None => sentence,
            })
        })?;
        self.with(&file.material)
    }

    /// This catalogue with `extra` materials laid over it; an extra one replaces its namesake, and one that is
    /// `like` its own code is laid over it: it says only what is new, such as a cost.
    ///
    /// Errors: a code used twice among the extra ones, a `like` that leads nowhere or in a circle.
    pub fn with(&self, extra: &[Material]) -> Result<Self, CatalogueFault> {
        let mut written: HashMap<&str, &Material> = HashMap::new();
        for material in extra {
            if written.insert(material.code.as_str(), material).is_some() {
                return Err(CatalogueFault::Twice {
                    code: material.code.clone(),
                });
            }
        }
        let mut whole = Self {
            materials: self.materials.clone(),
        };
        let mut done = HashSet::new();
        for material in extra {
            whole.settle(material, &written, &mut done)?;
        }
        Ok(whole)
    }

    /// Takes in a material and those it is like, the plainest first.
    fn settle<'a>(
        &mut self,
        material: &'a Material,
        written: &HashMap<&'a str, &'a Material>,
        done: &mut HashSet<&'a str>,
    ) -> Result<(), CatalogueFault> {
        let mut chain = vec![material];
        let mut seen = HashSet::from([material.code.as_str()]);
        while let Some(like) = chain[chain.len() - 1].like.as_deref() {
            let of_below = like == chain[chain.len() - 1].code && self.materials.contains_key(like);
            let Some(next) = written
                .get(like)
                .filter(|_| !of_below && !done.contains(like))
            else {
                break;
            };
            if !seen.insert(like) {
                return Err(circle(&chain, like));
            }
            chain.push(next);
        }
        for link in chain.into_iter().rev() {
            if !done.insert(link.code.as_str()) {
                continue;
            }
            let whole = match &link.like {
                Some(like) => link.over(self.find(like)?),
                None => link.clone(),
            };
            self.materials.insert(link.code.clone(), Arc::new(whole));
        }
        Ok(())
    }

    /// The material with this code.
    ///
    /// Errors: no such code; the nearest one is named.
    pub fn find(&self, code: &str) -> Result<&Arc<Material>, CatalogueFault> {
        self.materials
            .get(code)
            .ok_or_else(|| CatalogueFault::Missing {
                code: code.to_owned(),
                near: self.nearest(code),
            })
    }

    fn nearest(&self, code: &str) -> String {
        let shared = |known: &str| {
            known
                .chars()
                .zip(code.chars())
                .take_while(|(a, b)| a == b)
                .count()
        };
        self.materials
            .keys()
            .max_by_key(|known| shared(known))
            .filter(|known| shared(known) > 1)
            .map(|known| format!(" (the nearest code is {known})"))
            .unwrap_or_default()
    }

    /// Every material, by code.
    pub fn iter(&self) -> impl Iterator<Item = &Material> {
        self.materials.values().map(Arc::as_ref)
    }
}

/// The fault of a ring, with as much of it as is readable.
fn circle(chain: &[&Material], back_to: &str) -> CatalogueFault {
    const SHOWN: usize = 12;
    let from = chain.iter().position(|link| link.code == back_to);
    let ring = &chain[from.unwrap_or(0)..];
    let mut codes: Vec<&str> = ring
        .iter()
        .take(SHOWN)
        .map(|link| link.code.as_str())
        .collect();
    if ring.len() > SHOWN {
        codes.push("…");
    }
    codes.push(back_to);
    CatalogueFault::Circle {
        chain: codes.join(" → "),
    }
}
