//! Names that must differ.

use std::collections::{BTreeMap, BTreeSet};

/// Names given so far.
#[derive(Debug, Default)]
pub(crate) struct Names {
    given: BTreeSet<String>,
    /// The number a name takes when it comes once more.
    next: BTreeMap<String, u64>,
}

impl Names {
    /// The name itself where it is new, else with the least number that makes it so.
    pub fn unique(&mut self, name: String) -> String {
        if self.given.insert(name.clone()) {
            return name;
        }
        let next = self.next.entry(name.clone()).or_insert(2);
        loop {
            let numbered = format!("{name} ({next})");
            *next += 1;
            if self.given.insert(numbered.clone()) {
                return numbered;
            }
        }
    }
}

#[cfg(test)]
mod tests;
