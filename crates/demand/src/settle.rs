//! Plans back to stock used, remnants and fallouts.

mod lengths;
mod sheets;

use crate::day::{Batch, Day, Work};
use crate::fault::Fault;
use crate::label::Labels;
use crate::outcome::{JobParts, Left, Outcome, Settled, Used};
use crate::source::Source;
use crate::stock::Extent;
use cutting::Plan;

impl Day {
    /// What these plans come to, one for each batch, in their order.
    ///
    /// Shape:  every stick and sheet by itself, parts named on it; remnants labelled where they
    ///         are worth keeping; fallouts that no part was cut from are free.
    /// Units:  exact.
    /// Errors: plans that do not hold (parts that overlap, are cut twice, or are not freed by the
    ///         cuts), and a broken law of conservation with both its sides; all together.
    pub fn settle(&self, plans: &[Plan]) -> Result<Outcome, Vec<Fault>> {
        if plans.len() != self.batches.len() {
            return Err(vec![Fault::PlanCount {
                given: plans.len(),
                wanted: self.batches.len(),
            }]);
        }
        let mut labels = Labels::after(&self.labels, self.next_label);
        let (mut settled, mut faults) = (Vec::with_capacity(plans.len()), Vec::new());
        for (batch, plan) in self.batches.iter().zip(plans) {
            match self.settle_one(batch, plan, &mut labels) {
                Ok(one) => settled.push(one),
                Err(fault) => faults.push(fault),
            }
        }
        if !faults.is_empty() {
            return Err(faults);
        }
        let jobs = job_parts(self.jobs.len(), &settled);
        Ok(Outcome { settled, jobs })
    }

    fn settle_one(
        &self,
        batch: &Batch,
        plan: &Plan,
        labels: &mut Labels,
    ) -> Result<Settled, Fault> {
        let held = match (&batch.work, plan) {
            (Work::Lengths { problem, parts }, Plan::Lengths(plan)) => {
                lengths::settle(batch, problem, parts, plan, self.tick)
            }
            (Work::Sheets { problem, parts }, Plan::Sheets(plan)) => {
                sheets::settle(batch, problem, parts, plan, self.tick)
            }
            _ => Err(
                "it is a plan of the other kind, sticks for sheets or sheets for sticks".to_owned(),
            ),
        };
        let mut settled = held.map_err(|why| Fault::Plan {
            ware: batch.ware.to_string(),
            why,
        })?;
        settled.account.check(&batch.ware.to_string(), self.unit)?;
        for remnant in &mut settled.remnants {
            let dropped = matches!(remnant.left, Left::Dropped { .. });
            if dropped || is_worth_keeping(batch, remnant.extent) {
                remnant.label = Some(labels.take(batch.ware.kind));
            }
        }
        Ok(settled)
    }
}

/// Whether a remnant is as large as the least worth keeping, turned or not.
fn is_worth_keeping(batch: &Batch, extent: Extent) -> bool {
    let [short, long] = batch.keep;
    match extent {
        Extent::Stick(length) => length >= long,
        Extent::Sheet(size) => size.short_side() >= short && size.long_side() >= long,
    }
}

/// Where every part of every job comes from.
fn job_parts(count: usize, settled: &[Settled]) -> Vec<JobParts> {
    let mut jobs = vec![JobParts::default(); count];
    for (s, one) in settled.iter().enumerate() {
        for (t, taken) in one.taken.iter().enumerate() {
            for (p, part) in taken.parts.iter().enumerate() {
                jobs[part.job].parts.push((s, t, p));
            }
        }
        for (m, missing) in one.missing.iter().enumerate() {
            jobs[missing.job].missing.push((s, m));
        }
    }
    jobs
}

/// How many copies of each piece are handed out, and how many a plan must hand out.
struct Ledger {
    wanted: Vec<u64>,
    given: Vec<u64>,
}

impl Ledger {
    /// Holds a plan's counts against what is wanted, before anything is spread out.
    ///
    /// `placed` and `uncut` pair a piece with how often; sources pair with how often, too.
    fn of(
        wanted: Vec<u64>,
        names: impl Fn(usize) -> String,
        placed: impl Iterator<Item = (usize, u64)>,
        uncut: &[(usize, u64)],
    ) -> Result<Self, String> {
        let mut counted = vec![0_u128; wanted.len()];
        for (piece, copies) in placed.chain(uncut.iter().copied()) {
            let Some(count) = counted.get_mut(piece) else {
                return Err(format!("it names piece {piece}, of which there is none"));
            };
            *count += u128::from(copies);
        }
        let differing = counted
            .iter()
            .zip(&wanted)
            .position(|(counted, wanted)| *counted != u128::from(*wanted));
        if let Some(piece) = differing {
            return Err(format!(
                "{} is cut or left out {} times, wanted {} times",
                names(piece),
                counted[piece],
                wanted[piece]
            ));
        }
        let given = vec![0; wanted.len()];
        Ok(Self { wanted, given })
    }

    /// The next copy of a piece, counted from 0.
    fn next(&mut self, piece: usize) -> Option<usize> {
        let copy = self.given[piece];
        if copy >= self.wanted[piece] {
            return None;
        }
        self.given[piece] += 1;
        usize::try_from(copy).ok()
    }
}

/// Holds the stock a plan takes to what there is, and counts it.
fn used(sources: &[Source], taken: &[(usize, u64)]) -> Result<Vec<Used>, String> {
    let mut counts = vec![0_u128; sources.len()];
    for (source, copies) in taken {
        let Some(count) = counts.get_mut(*source) else {
            return Err(format!("it takes stock {source}, of which there is none"));
        };
        *count += u128::from(*copies);
    }
    let mut all = Vec::new();
    for (i, (source, count)) in sources.iter().zip(counts).enumerate() {
        if source.count.is_some_and(|held| count > u128::from(held)) {
            return Err(format!(
                "it takes {count} of {}, there are {}",
                source.name,
                source.count.unwrap_or_default()
            ));
        }
        if count > 0 {
            all.push(Used {
                source: i,
                name: source.name.clone(),
                origin: source.origin,
                count: u64::try_from(count).unwrap_or(u64::MAX),
            });
        }
    }
    all.sort_by_key(|used| (used.origin, used.source));
    Ok(all)
}
