//! The rack as a day's plans leave it.

use crate::day::Day;
use crate::outcome::Outcome;
use crate::source::Origin;
use crate::stock::{RemnantStock, Stock};

impl Day {
    /// The stock once everything is cut: what was taken is gone, what is worth keeping is there
    /// under its new label, in no bin yet. What had to be bought is used up with its remnants.
    ///
    /// Shape:  `stock` is what the day was made with, `outcome` what its plans came to.
    pub fn stock_after(&self, outcome: &Outcome, stock: &Stock) -> Stock {
        let mut after = stock.clone();
        let mut gone = Vec::new();
        for (batch, settled) in self.batches.iter().zip(&outcome.settled) {
            for used in &settled.used {
                let source = &batch.sources[used.source];
                match (source.origin, source.entry) {
                    (Origin::Remnant, Some(entry)) => gone.push(entry),
                    (Origin::Rack, Some(entry)) => {
                        let sticks = batch.ware.kind.in_sticks();
                        let count = if sticks {
                            &mut after.sticks[entry].count
                        } else {
                            &mut after.sheets[entry].count
                        };
                        *count = count.map(|count| count.saturating_sub(used.count));
                    }
                    _ => {}
                }
            }
        }
        let kept = after.remnants.into_iter().enumerate();
        let kept = kept.filter(|(i, _)| !gone.contains(i));
        after.remnants = kept.map(|(_, remnant)| remnant).collect();
        after.remnants.extend(new_remnants(outcome));
        if after.next_label.is_some() {
            let numbers = after
                .remnants
                .iter()
                .filter_map(|r| r.label.get(1..)?.parse().ok());
            let highest: Option<u32> = numbers.max();
            let free = highest.and_then(|highest| highest.checked_add(1));
            after.next_label = after.next_label.max(free);
        }
        after
    }
}

fn new_remnants(outcome: &Outcome) -> impl Iterator<Item = RemnantStock> {
    outcome.settled.iter().flat_map(|settled| {
        settled.remnants.iter().filter_map(|remnant| {
            Some(RemnantStock {
                label: remnant.label.clone()?,
                material: settled.ware.code.clone(),
                colour: settled.ware.colour.clone(),
                extent: remnant.extent,
                run: remnant.run.clone(),
                bin: None,
                trim: None,
                flaws: remnant.flaws.clone(),
            })
        })
    })
}
