//! A handful of pieces: every way to share them out, by a table over what is still wanted.
//!
//! A state counts how many of each item are cut; for each state the table keeps the least cost,
//! and at equal cost the longest stretch left on one stick. Both can be put together stick by
//! stick, so the table is exact in both, unless the search for an arrangement between flaws gave
//! up somewhere: then its plans still hold, but there may be better ones.

use std::cmp::Reverse;

use super::core::{Core, Draft, ENDLESS, Fill, Fit};
use super::start::Rest;
use crate::pace::Pace;

/// States of a table at most.
const MOST_STATES: u64 = 60_000;
/// Pairs of a state and a part of it, times sticks, at most.
const MOST_WORK: u64 = 60_000_000;

/// Least cost first, then longest stretch left.
type Score = (u64, Reverse<u64>);

const NEVER: Score = (u64::MAX, Reverse(0));

/// All states of what can be cut, with the best way to cut each.
pub(super) struct Tiny<'a> {
    core: &'a Core,
    demands: Vec<u64>,
    /// Step of each item in the number of a state.
    steps: Vec<usize>,
    /// Single sticks held with a count, and last `None` for the endless ones together.
    rounds: Vec<usize>,
    /// Per endless round and stick round: what was cut from that stick, per state.
    choices: Vec<Vec<u32>>,
    endless: Vec<Option<(usize, Score)>>,
    scores: Vec<Score>,
    /// Whether it was left open somewhere if parts fit on a stick.
    open: bool,
}

/// Whether the tables for these demands are small; the work they cost.
pub(super) fn work(rest: &Rest) -> Option<u64> {
    let (mut states, mut pairs) = (1_u64, 1_u64);
    for &demand in &rest.demands {
        states = states.checked_mul(demand.checked_add(1)?)?;
        pairs = pairs.checked_mul((demand + 1).checked_mul(demand + 2)? / 2)?;
        if states > MOST_STATES {
            return None;
        }
    }
    let pieces: u64 = rest.demands.iter().sum();
    let sticks = |&count: &u64| {
        if count == ENDLESS {
            0
        } else {
            count.min(pieces)
        }
    };
    let rounds: u64 = rest.counts.iter().map(sticks).sum();
    let work = pairs.checked_mul(rounds + 1)?;
    (work <= MOST_WORK).then_some(work)
}

impl<'a> Tiny<'a> {
    /// Builds the table; `None` when the search must end first.
    pub(super) fn new(core: &'a Core, rest: &Rest, pace: &mut Pace<'_>) -> Option<Self> {
        let mut steps = Vec::new();
        let mut states = 1;
        for &demand in &rest.demands {
            steps.push(states);
            states *= usize::try_from(demand).ok()? + 1;
        }
        let pieces: u64 = rest.demands.iter().sum();
        let mut rounds = Vec::new();
        for (kind, &count) in rest.counts.iter().enumerate() {
            if count != ENDLESS {
                rounds.extend((0..count.min(pieces)).map(|_| kind));
            }
        }
        let mut tiny = Self {
            core,
            demands: rest.demands.clone(),
            steps,
            rounds,
            choices: Vec::new(),
            endless: Vec::new(),
            scores: vec![NEVER; states],
            open: false,
        };
        tiny.by_endless(rest, pace)?;
        for round in 0..tiny.rounds.len() {
            tiny.by_one_more(tiny.rounds[round], pace)?;
        }
        Some(tiny)
    }

    /// Whether no plan is better than the table's.
    pub(super) fn is_exact(&self) -> bool {
        !self.open
    }

    /// Draft for all that is wanted; `None` where the table knows none.
    pub(super) fn whole(&self) -> Option<Draft> {
        let all = self.scores.len() - 1;
        (self.scores[all] != NEVER).then(|| self.draft(all))
    }

    /// The state that can be cut and that is best by a measure of how many of each item it has,
    /// and how it is cut.
    pub(super) fn most<K: Ord>(&self, measure: impl Fn(&[u64]) -> K) -> (Vec<u64>, Draft) {
        let reachable = (0..self.scores.len()).filter(|&state| self.scores[state] != NEVER);
        let rank = |&state: &usize| {
            (
                measure(&self.counted(state)),
                Reverse(self.scores[state]),
                Reverse(state),
            )
        };
        let best = reachable.max_by_key(rank).unwrap_or(0);
        (self.counted(best), self.draft(best))
    }

    fn counted(&self, state: usize) -> Vec<u64> {
        let each = |(&step, &demand): (&usize, &u64)| {
            let count = u64::try_from(state / step).unwrap_or(0);
            count % (demand + 1)
        };
        self.steps.iter().zip(&self.demands).map(each).collect()
    }

    fn parts(&self, state: usize) -> Vec<(usize, u64)> {
        let counted = self.counted(state).into_iter().enumerate();
        counted.filter(|&(_, times)| times > 0).collect()
    }

    /// What one stick of a kind costs for a state, and what is left of it.
    fn score(&mut self, kind: usize, state: usize, pace: &mut Pace<'_>) -> Option<Score> {
        let parts = self.parts(state);
        let stick = &self.core.kinds[kind];
        let run = |&(item, _): &(usize, u64)| {
            let own = self.core.items[item].run;
            own.is_none_or(|own| own == stick.run)
        };
        if !parts.iter().all(run) {
            return None;
        }
        let (fit, steps) = self.core.may_fit(kind, &parts);
        pace.spend(steps / 2);
        self.open |= fit == Fit::Open;
        if fit != Fit::Known {
            return None;
        }
        let left = if stick.is_clear() {
            stick.room - self.core.taken(&parts)
        } else {
            0
        };
        Some((stick.cost, Reverse(left)))
    }

    /// States cut from sticks without a count: the next stick takes the first item that is left.
    fn by_endless(&mut self, rest: &Rest, pace: &mut Pace<'_>) -> Option<()> {
        let states = self.scores.len();
        let kinds: Vec<usize> = (0..self.core.kinds.len())
            .filter(|&kind| rest.counts[kind] == ENDLESS)
            .collect();
        self.endless = vec![None; states];
        for state in 1..states {
            let mut best: Option<(usize, Score)> = None;
            for &kind in &kinds {
                let score = self.score(kind, state, pace);
                let better = |score: &Score| best.is_none_or(|best| *score < best.1);
                if let Some(score) = score.filter(better) {
                    best = Some((kind, score));
                }
            }
            self.endless[state] = best;
            (!pace.is_over()).then_some(())?;
        }
        self.scores[0] = (0, Reverse(0));
        let mut choice = vec![0; states];
        for (state, choice) in choice.iter_mut().enumerate().skip(1) {
            let first = self.steps.partition_point(|&step| step <= state);
            let lead = (0..first).find(|&item| {
                let count = state / self.steps[item];
                !u64::try_from(count)
                    .unwrap_or(0)
                    .is_multiple_of(self.demands[item] + 1)
            })?;
            let mut best = NEVER;
            let mut seen = 0;
            self.each_part(state, |part| {
                seen += 1;
                let leads = !u64::try_from(part / self.steps[lead])
                    .unwrap_or(0)
                    .is_multiple_of(self.demands[lead] + 1);
                if let Some((_, score)) = self.endless[part].filter(|_| leads) {
                    let sum = joined(self.scores[state - part], score);
                    if sum < best {
                        best = sum;
                        *choice = u32::try_from(part).unwrap_or(0);
                    }
                }
            });
            pace.spend(seen).then_some(())?;
            self.scores[state] = best;
        }
        self.choices.push(choice);
        Some(())
    }

    /// Lets one more stick of a kind be used.
    fn by_one_more(&mut self, kind: usize, pace: &mut Pace<'_>) -> Option<()> {
        let states = self.scores.len();
        let mut alone: Vec<Option<Score>> = vec![None; states];
        for (state, alone) in alone.iter_mut().enumerate().skip(1) {
            *alone = self.score(kind, state, pace);
            (!pace.is_over()).then_some(())?;
        }
        let mut choice = vec![0; states];
        let mut scores = self.scores.clone();
        for state in 1..states {
            let mut seen = 0;
            self.each_part(state, |part| {
                seen += 1;
                if let Some(score) = alone[part] {
                    let sum = joined(self.scores[state - part], score);
                    if sum < scores[state] {
                        scores[state] = sum;
                        choice[state] = u32::try_from(part).unwrap_or(0);
                    }
                }
            });
            pace.spend(seen).then_some(())?;
        }
        self.scores = scores;
        self.choices.push(choice);
        Some(())
    }

    /// Every non-empty part of a state.
    fn each_part(&self, state: usize, mut visit: impl FnMut(usize)) {
        let most: Vec<(usize, usize)> = self
            .parts(state)
            .into_iter()
            .map(|(item, times)| (self.steps[item], usize::try_from(times).unwrap_or(0)))
            .collect();
        let mut digits = vec![0; most.len()];
        let mut part = 0;
        loop {
            let mut at = 0;
            while at < most.len() && digits[at] == most[at].1 {
                part -= digits[at] * most[at].0;
                digits[at] = 0;
                at += 1;
            }
            if at == most.len() {
                return;
            }
            digits[at] += 1;
            part += most[at].0;
            visit(part);
        }
    }

    fn draft(&self, mut state: usize) -> Draft {
        let mut draft = Draft::default();
        for (round, &kind) in self.rounds.iter().enumerate().rev() {
            let part = usize::try_from(self.choices[round + 1][state]).unwrap_or(0);
            if part > 0 {
                let parts = self.parts(part);
                draft.push(self.core, Fill { kind, parts }, 1);
                state -= part;
            }
        }
        while state > 0 {
            let part = usize::try_from(self.choices[0][state]).unwrap_or(0);
            let Some((kind, _)) = self.endless[part] else {
                break;
            };
            let parts = self.parts(part);
            draft.push(self.core, Fill { kind, parts }, 1);
            state -= part;
        }
        draft
    }
}

fn joined(rest: Score, stick: Score) -> Score {
    if rest == NEVER {
        return NEVER;
    }
    (rest.0 + stick.0, rest.1.min(stick.1))
}
