//! A plan of sticks, stick by stick.

use std::collections::BTreeMap;

use cutting::lengths::{Layout, Plan, Problem, Stick, Together};
use measure::Length;

use super::{Ledger, used};
use crate::account::Account;
use crate::day::Batch;
use crate::outcome::{From, Left, Missing, PartAt, Remnant, Settled, Spot, Taken};
use crate::part::{Rails, named};
use crate::stock::Extent;
use crate::tick::Tick;

/// Settles a plan of sticks.
///
/// Errors: a sentence on what does not hold.
pub(super) fn settle(
    batch: &Batch,
    problem: &Problem,
    parts: &[Rails],
    plan: &Plan,
    tick: Tick,
) -> Result<Settled, String> {
    let wanted = problem.pieces.iter().map(|p| p.count.unwrap_or(0));
    let placed = plan
        .layouts
        .iter()
        .flat_map(|layout| layout.pieces.iter().map(|p| (p.piece, layout.copies)));
    let name = |piece: usize| problem.pieces[piece].name.clone();
    let mut ledger = Ledger::of(wanted.collect(), name, placed, &plan.uncut)?;
    let taken: Vec<_> = plan.layouts.iter().map(|l| (l.stock, l.copies)).collect();
    let used = used(&batch.sources, &taken)?;
    let mut bench = Bench {
        batch,
        problem,
        parts,
        tick,
        taken: Vec::new(),
        remnants: Vec::new(),
        account: Account::default(),
    };
    for (i, layout) in plan.layouts.iter().enumerate() {
        bench.check(i, layout)?;
        for _ in 0..layout.copies {
            bench.cut(i, layout, &mut ledger)?;
        }
    }
    bench.hold_together(plan)?;
    let missing = missing(parts, plan, &mut ledger);
    Ok(Settled {
        ware: batch.ware.clone(),
        taken: bench.taken,
        used,
        remnants: bench.remnants,
        missing,
        account: bench.account,
        objective: plan.objective,
        bound: plan.bound,
        proven: plan.proven(),
    })
}

fn missing(parts: &[Rails], plan: &Plan, ledger: &mut Ledger) -> Vec<Missing> {
    let mut missing = Vec::new();
    for (piece, count) in &plan.uncut {
        let rails = &parts[*piece];
        for _ in 0..*count {
            let copy = ledger.next(*piece).and_then(|copy| rails.copies.get(copy));
            for strip in copy.into_iter().flatten() {
                missing.push(Missing {
                    job: rails.job,
                    part: named(&rails.part, &strip.side),
                    exact: Extent::Stick(strip.length),
                });
            }
        }
    }
    missing
}

struct Bench<'a> {
    batch: &'a Batch,
    problem: &'a Problem,
    parts: &'a [Rails],
    tick: Tick,
    taken: Vec<Taken>,
    remnants: Vec<Remnant>,
    account: Account,
}

impl Bench<'_> {
    /// Holds one layout to its stick: in order, apart by a cut, clear of trims and flaws.
    fn check(&self, index: usize, layout: &Layout) -> Result<(), String> {
        let stick = &self.problem.stock[layout.stock];
        if layout.pieces.is_empty() {
            return Err(format!("layout {} cuts nothing", index + 1));
        }
        let mut items = self.items(layout);
        items.sort_unstable();
        let last = stick.length.saturating_sub(stick.trim.1);
        let mut before: Option<u64> = None;
        for (from, to, piece) in items {
            let earliest = before.map_or(stick.trim.0, |end| end + self.problem.kerf);
            let flawed = piece.is_some()
                && stick
                    .flaws
                    .iter()
                    .any(|(start, end)| *start < to && from < *end);
            if from < earliest || to > last || from >= to || flawed {
                let name = piece.map_or("a remnant", |p| self.problem.pieces[p].name.as_str());
                return Err(format!(
                    "on layout {} {name} does not lie clear at {from} to {to}",
                    index + 1
                ));
            }
            before = Some(to);
        }
        Ok(())
    }

    /// Holds pieces that must match to one stick or one run.
    fn hold_together(&self, plan: &Plan) -> Result<(), String> {
        let mut first: BTreeMap<&str, Run<'_>> = BTreeMap::new();
        for (stick, taken) in self.taken.iter().enumerate() {
            let layout = &plan.layouts[taken.layout];
            for placed in &layout.pieces {
                let (group, run) = match &self.problem.pieces[placed.piece].together {
                    None => continue,
                    Some(Together::Stick(group)) => (group, Run::Own(stick)),
                    Some(Together::Run(group)) => (group, self.run(layout.stock, stick)),
                };
                if *first.entry(group.as_str()).or_insert(run) != run {
                    return Err(format!(
                        "{group} is cut from sticks that need not match: all must come from one stick or one run"
                    ));
                }
            }
        }
        Ok(())
    }

    /// The run of a stick: as named, else its own where it is held, one for all that is bought.
    fn run(&self, source: usize, stick: usize) -> Run<'_> {
        let source = &self.batch.sources[source];
        match (&source.run, source.count) {
            (Some(run), _) => Run::Named(run),
            (None, Some(_)) => Run::Own(stick),
            (None, None) => Run::Bought,
        }
    }

    /// Pieces and remnants: from, to, which piece.
    fn items(&self, layout: &Layout) -> Vec<(u64, u64, Option<usize>)> {
        let pieces = layout.pieces.iter().map(|placed| {
            let long = self.problem.pieces[placed.piece].length;
            (
                placed.at,
                placed.at.saturating_add(long),
                Some(placed.piece),
            )
        });
        let remnants = layout.remnants.iter().map(|(from, to)| (*from, *to, None));
        pieces.chain(remnants).collect()
    }

    /// Cuts one stick by a layout that holds.
    fn cut(&mut self, index: usize, layout: &Layout, ledger: &mut Ledger) -> Result<(), String> {
        let source = &self.batch.sources[layout.stock];
        let mut parts = Vec::new();
        let mut pieces = Vec::with_capacity(layout.pieces.len());
        for placed in &layout.pieces {
            let rails = &self.parts[placed.piece];
            let copy = ledger
                .next(placed.piece)
                .and_then(|copy| rails.copies.get(copy));
            let copy = copy.ok_or("it cuts a piece more often than it is wanted")?;
            let first = parts.len();
            let mut at = placed.at;
            for strip in copy {
                let long = self.tick.up(strip.length);
                parts.push(PartAt {
                    job: rails.job,
                    part: named(&rails.part, &strip.side),
                    exact: Extent::Stick(strip.length),
                    at: Spot::Along {
                        at: self.tick.length(at),
                        length: self.tick.length(long),
                    },
                });
                at += long + self.problem.kerf;
            }
            pieces.push(first..parts.len());
        }
        let number = self.taken.len();
        for (from, to) in &layout.remnants {
            let remnant = self.remnant(number, layout.stock, (*from, *to));
            self.remnants.push(remnant);
        }
        self.enter(layout, &parts);
        self.taken.push(Taken {
            name: format!("{}, stick {}", self.batch.ware, number + 1),
            from: From::Source(layout.stock),
            extent: source.extent,
            layout: index,
            parts,
            pieces,
        });
        Ok(())
    }

    fn remnant(&self, taken: usize, source: usize, (from, to): (u64, u64)) -> Remnant {
        let stick = &self.problem.stock[source];
        let length = self.tick.length(to - from);
        let on_it = stick
            .flaws
            .iter()
            .filter(|(start, end)| *start < to && from < *end);
        let own = |at: u64| self.tick.length(at.clamp(from, to) - from);
        Remnant {
            label: None,
            left: Left::Of(
                taken,
                Spot::Along {
                    at: self.tick.length(from),
                    length,
                },
            ),
            extent: Extent::Stick(length),
            run: self.batch.sources[source].run.clone(),
            flaws: on_it.map(|(start, end)| [own(*start), own(*end)]).collect(),
        }
    }

    /// Enters one stick into the account.
    fn enter(&mut self, layout: &Layout, parts: &[PartAt]) {
        let stick = &self.problem.stock[layout.stock];
        let ticks = |count: u64| i128::from(self.tick.length(count).quanta());
        let quanta = |extent: Extent| match extent {
            Extent::Stick(length) => i128::from(length.quanta()),
            Extent::Sheet(_) => 0,
        };
        let held = quanta(self.batch.sources[layout.stock].extent);
        let exact: i128 = parts.iter().map(|part| quanta(part.exact)).sum();
        let rounded: Length = parts
            .iter()
            .map(|part| match part.at {
                Spot::Along { length, .. } => length,
                Spot::On { .. } => Length::ZERO,
            })
            .sum();
        let walked = self.walk(stick, layout, parts.len());
        let account = &mut self.account;
        account.stock += held;
        account.pieces += exact;
        account.rounding += i128::from(rounded.quanta()) - exact + held - ticks(stick.length);
        account.trim += ticks(stick.trim.0 + stick.trim.1);
        account.cuts += ticks(walked.cuts);
        account.remnants += ticks(walked.kept);
        account.waste += ticks(walked.waste);
    }

    /// Walks along a stick and tells cuts, what is kept and waste apart.
    ///
    /// Shape:  a gap before the first item or behind the last takes one cut, a gap between two
    ///         takes one or, where a scrap lies in it, two; what is left of it is waste.
    fn walk(&self, stick: &Stick, layout: &Layout, parts: usize) -> Walked {
        let mut items = self.items(layout);
        items.sort_unstable();
        let kerf = self.problem.kerf;
        let within = u64::try_from(parts - layout.pieces.len()).unwrap_or(0) * kerf;
        let mut walked = Walked {
            cuts: within,
            kept: 0,
            waste: 0,
        };
        let mut end = stick.trim.0;
        for (i, (from, to, piece)) in items.iter().enumerate() {
            let gap = from - end;
            let most = if i > 0 && gap > kerf { kerf * 2 } else { kerf };
            walked.gap(gap, most);
            if piece.is_none() {
                let extent = Extent::Stick(self.tick.length(to - from));
                if super::is_worth_keeping(self.batch, extent) {
                    walked.kept += to - from;
                } else {
                    walked.waste += to - from;
                }
            }
            end = *to;
        }
        let last = stick.length.saturating_sub(stick.trim.1);
        walked.gap(last - end, kerf);
        walked
    }
}

/// What makes sticks match.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Run<'a> {
    Named(&'a str),
    Bought,
    Own(usize),
}

struct Walked {
    cuts: u64,
    kept: u64,
    waste: u64,
}

impl Walked {
    fn gap(&mut self, gap: u64, most: u64) {
        self.cuts += gap.min(most);
        self.waste += gap - gap.min(most);
    }
}
