//! Labels of remnants: a letter for the form of stock, and a running number.

use std::collections::BTreeMap;

use crate::ware::WareKind;

/// The labels still free.
///
/// Shape:  `B14`: the letter of the ware, and the number after the highest that stands on a remnant
///         with that letter, or the number the stock document says is next. The same day gives the
///         same labels.
#[derive(Debug)]
pub(crate) struct Labels {
    next: Option<u64>,
    last: BTreeMap<char, u64>,
}

impl Labels {
    /// After the labels that stand on remnants already.
    pub fn after(labels: &[String], next: Option<u32>) -> Self {
        let mut last = BTreeMap::new();
        for label in labels {
            let mut signs = label.trim().chars();
            let letter = signs.next().map(|letter| letter.to_ascii_uppercase());
            let number = signs.as_str().parse::<u32>().ok().map(u64::from);
            if let (Some(letter), Some(number)) = (letter, number) {
                let highest = last.entry(letter).or_insert(number);
                *highest = number.max(*highest);
            }
        }
        Self {
            next: next.map(u64::from),
            last,
        }
    }

    /// The next label of a ware.
    pub fn take(&mut self, kind: WareKind) -> String {
        let letter = kind.letter();
        let last = self.last.entry(letter).or_insert(0);
        *last = (*last + 1).max(self.next.unwrap_or(0));
        format!("{letter}{last}")
    }
}

#[cfg(test)]
mod tests;
