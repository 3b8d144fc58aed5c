//! The cheapest choice of patterns that covers all wanted parts, or the proof that none is cheap
//! enough.
//!
//! Every pattern costs its parts' worth and a little over; so does every part that is covered more
//! often than wanted. A plan of cost z has in sum z − bound to spare for all that, so a branch ends
//! when it has spent more.

use std::collections::HashMap;

use super::hash::Quick;
use super::kinds::{Kind, Pattern};
use super::linear::Prices;
use super::relax::{Relax, State};
use crate::Pace;

/// How a run ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    /// The patterns of a cover that is cheap enough; lower the target and go on.
    Found(Vec<usize>),
    /// There is none.
    None,
    Paused,
}

/// A search that can be left and taken up again.
pub(super) struct Cover {
    patterns: Vec<Pattern>,
    /// Per pattern: parts and how many.
    counts: Vec<Vec<(usize, u32)>>,
    /// Per part: the patterns that hold it, the least over first.
    holding: Vec<Vec<usize>>,
    prices: Vec<u64>,
    /// Per kind.
    costs: Vec<u64>,
    /// The most a plan may cost, and what it may spend over the bound.
    target: u64,
    allowance: u64,
    /// Parts still to cover, and sheets left of limited kinds.
    wanted: Vec<u32>,
    sheets: Vec<Option<u32>>,
    stack: Vec<Frame>,
    spent: u64,
    relax: Relax,
    scale: u64,
    nodes: u64,
    /// States that failed with so much to spare.
    failed: HashMap<Vec<u8>, u64, Quick>,
}

struct Frame {
    part: usize,
    next: usize,
    trial: Option<Trial>,
}

/// A pattern on trial.
struct Trial {
    number: usize,
    /// Parts that were wanted, and how many of them it covers.
    covered: Vec<(usize, u32)>,
    spent: u64,
}

/// Bytes of the states kept, those of their places in the table included.
const MOST_FAILED: usize = 32 << 20;
/// Nodes after which the linear program is asked, and parts wanted that make it worth while; asked
/// soon where tests compare small problems with all there is.
const PATIENCE: u64 = if cfg!(test) { 2 } else { 1_000 };
const MUCH: u64 = if cfg!(test) { 2 } else { 6 };

impl Cover {
    pub(super) fn new(
        patterns: Vec<Pattern>,
        prices: &Prices,
        wanted: &[u64],
        kinds: &[Kind],
        (target, allowance): (u64, u64),
        scale: u64,
    ) -> Self {
        let relax = Relax::new(wanted, kinds, scale, patterns.len());
        let small = |count: u64| u32::try_from(count).unwrap_or(u32::MAX);
        let mut cover = Self {
            patterns: Vec::new(),
            counts: Vec::new(),
            holding: vec![Vec::new(); wanted.len()],
            prices: prices.parts.clone(),
            costs: kinds.iter().map(|kind| kind.cost).collect(),
            target,
            allowance,
            wanted: wanted.iter().map(|&count| small(count)).collect(),
            sheets: kinds.iter().map(|kind| kind.count.map(small)).collect(),
            stack: Vec::new(),
            spent: 0,
            relax,
            scale,
            nodes: 0,
            failed: HashMap::default(),
        };
        cover.take(patterns);
        cover
    }

    /// Puts others in the place of a pattern that is none, and begins anew. What has failed with
    /// it fails without it, too.
    pub(super) fn mend(&mut self, number: usize, others: Vec<Pattern>) {
        while let Some(mut frame) = self.stack.pop() {
            self.undo(&mut frame);
        }
        let mut patterns = std::mem::take(&mut self.patterns);
        patterns.swap_remove(number);
        patterns.extend(others);
        self.relax = self.relax.renewed(patterns.len());
        self.take(patterns);
    }

    fn take(&mut self, patterns: Vec<Pattern>) {
        let counts = patterns.iter().map(|pattern| pattern.group.counts());
        self.counts = counts.collect();
        self.holding.iter_mut().for_each(Vec::clear);
        for (number, counts) in self.counts.iter().enumerate() {
            for &(part, _) in counts {
                self.holding[part].push(number);
            }
        }
        for list in &mut self.holding {
            list.sort_by_key(|&number: &usize| (patterns[number].over, number));
        }
        self.patterns = patterns;
        self.deepen();
    }

    pub(super) fn run(&mut self, pace: &mut Pace) -> Outcome {
        while let Some(mut frame) = self.stack.pop() {
            if !pace.spend(2 + self.wanted.len() as u64 / 4) {
                self.stack.push(frame);
                return Outcome::Paused;
            }
            self.undo(&mut frame);
            let Some(number) = self.next_pattern(&mut frame) else {
                self.note_failure();
                continue;
            };
            self.apply(&mut frame, number);
            let within = self.spent <= self.allowance;
            self.stack.push(frame);
            self.nodes += 1;
            if !within || self.has_failed() || self.is_hopeless(pace) {
                continue;
            }
            if self.wanted.iter().any(|&count| count > 0) {
                self.deepen();
            } else if self.cost() <= self.target {
                // Limited sheets that hold more than they cost may have been left unused, so that
                // the allowance alone does not tell.
                let used = self.stack.iter().filter_map(|frame| frame.trial.as_ref());
                return Outcome::Found(used.map(|trial| trial.number).collect());
            }
        }
        Outcome::None
    }

    /// Cost of the patterns on trial.
    fn cost(&self) -> u64 {
        let used = self.stack.iter().filter_map(|frame| frame.trial.as_ref());
        let kinds = used.map(|trial| self.patterns[trial.number].kind);
        kinds.map(|kind| self.costs[kind]).sum()
    }

    /// Looks for cheaper plans only.
    pub(super) fn lower(&mut self, target: u64, allowance: u64) {
        self.target = self.target.min(target);
        self.allowance = self.allowance.min(allowance);
    }

    pub(super) fn pattern(&self, number: usize) -> &Pattern {
        &self.patterns[number]
    }

    /// Opens a frame for the part with the fewest patterns to choose from.
    fn deepen(&mut self) {
        let spare = self.allowance.saturating_sub(self.spent);
        let mut best = None;
        for (part, &count) in self.wanted.iter().enumerate() {
            if count > 0 {
                let list = &self.holding[part];
                let choices = list.partition_point(|&number| self.patterns[number].over <= spare);
                if best.is_none_or(|(least, _)| choices < least) {
                    best = Some((choices, part));
                }
            }
        }
        if let Some((_, part)) = best {
            self.stack.push(Frame {
                part,
                next: 0,
                trial: None,
            });
        }
    }

    fn next_pattern(&self, frame: &mut Frame) -> Option<usize> {
        let spare = self.allowance.checked_sub(self.spent)?;
        loop {
            let &number = self.holding[frame.part].get(frame.next)?;
            let pattern = &self.patterns[number];
            if pattern.over > spare {
                return None;
            }
            frame.next += 1;
            if self.sheets[pattern.kind] != Some(0) {
                return Some(number);
            }
        }
    }

    fn apply(&mut self, frame: &mut Frame, number: usize) {
        let mut covered = Vec::with_capacity(self.counts[number].len());
        let mut spent = self.patterns[number].over;
        for &(part, count) in &self.counts[number] {
            let used = count.min(self.wanted[part]);
            self.wanted[part] -= used;
            spent += u64::from(count - used) * self.prices[part];
            covered.push((part, used));
        }
        if let Some(left) = &mut self.sheets[self.patterns[number].kind] {
            *left -= 1;
        }
        self.spent += spent;
        frame.trial = Some(Trial {
            number,
            covered,
            spent,
        });
    }

    fn undo(&mut self, frame: &mut Frame) {
        let Some(trial) = frame.trial.take() else {
            return;
        };
        for (part, used) in trial.covered {
            self.wanted[part] += used;
        }
        if let Some(left) = &mut self.sheets[self.patterns[trial.number].kind] {
            *left += 1;
        }
        self.spent -= trial.spent;
    }

    fn state(&self) -> Vec<u8> {
        let mut state = Vec::with_capacity(self.wanted.len());
        let sheets = self.sheets.iter().filter_map(Option::as_ref);
        for &number in self.wanted.iter().chain(sheets) {
            // The patterns that matter are few parts of few; larger numbers take five bytes.
            match u8::try_from(number) {
                Ok(byte) if byte < u8::MAX => state.push(byte),
                _ => {
                    state.push(u8::MAX);
                    state.extend_from_slice(&number.to_le_bytes());
                }
            }
        }
        state
    }

    /// Whether the parts still wanted cost too much by the linear program; asked where a search
    /// has proven long and much is still wanted.
    fn is_hopeless(&mut self, pace: &mut Pace) -> bool {
        let left: u64 = self.wanted.iter().map(|&count| u64::from(count)).sum();
        if self.nodes < PATIENCE || left < MUCH {
            return false;
        }
        let enough = self
            .target
            .saturating_sub(self.cost())
            .saturating_mul(self.scale);
        let state = State {
            wanted: &self.wanted,
            sheets: &self.sheets,
            most_over: self.allowance.saturating_sub(self.spent),
            enough,
        };
        let least = self.relax.least(&self.patterns, &self.counts, &state, pace);
        let hopeless = least > enough;
        if hopeless {
            self.note_failure();
        }
        hopeless
    }

    fn note_failure(&mut self) {
        let state = self.wanted.len() + self.sheets.len() + size_of::<(Vec<u8>, u64)>();
        if self.failed.len() < MOST_FAILED / state
            && let Some(spare) = self.allowance.checked_sub(self.spent)
        {
            let known = self.failed.entry(self.state()).or_default();
            *known = spare.max(*known);
        }
    }

    fn has_failed(&self) -> bool {
        let spare = self.allowance.saturating_sub(self.spent);
        self.failed
            .get(&self.state())
            .is_some_and(|&known| known >= spare)
    }
}
