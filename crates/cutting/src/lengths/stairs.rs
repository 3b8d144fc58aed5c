//! Step by step up the costs that sticks can have: which sticks would cost just so much, and can
//! they hold everything?
//!
//! With the sticks given, hardly any room is left over, so that the linear program and the list
//! of fills say far more than they do while the sticks are open.

use super::bound::{least_held, need};
use super::closed::{Answer, Closed, list};
use super::columns::{Depth, Mix, Reached};
use super::core::{Core, Fill};
use super::dive::{Style, dive};
use super::start::Rest;
use crate::chance::Chance;
use crate::pace::Pace;

/// Choices of sticks for one cost, at most.
const MOST_CHOICES: usize = 200;
/// Steps of the search for them, at most.
const MOST_STEPS: u32 = 200_000;

/// Every choice of sticks (how many of each kind) that costs the target and can hold the need by
/// the worths; `None` when they are too many, or the search must end.
pub(super) fn choices(
    core: &Core,
    reached: &Reached,
    target: u64,
    pace: &mut Pace<'_>,
) -> Option<Vec<Vec<u64>>> {
    let mut choosing = Choosing {
        core,
        most: &reached.most,
        need: need(&reached.worth, &core.demands()),
        taken: vec![0; core.kinds.len()],
        found: Vec::new(),
        steps: 0,
    };
    let all = choosing.go(0, target, 0);
    (pace.spend(u64::from(choosing.steps)) && all).then_some(choosing.found)
}

struct Choosing<'a> {
    core: &'a Core,
    most: &'a [u64],
    need: u128,
    taken: Vec<u64>,
    found: Vec<Vec<u64>>,
    steps: u32,
}

impl Choosing<'_> {
    fn go(&mut self, kind: usize, left: u64, held: u128) -> bool {
        self.steps += 1;
        if self.steps > MOST_STEPS || self.found.len() > MOST_CHOICES {
            return false;
        }
        let Some(stick) = self.core.kinds.get(kind) else {
            if left == 0 && held >= self.need {
                self.found.push(self.taken.clone());
            }
            return true;
        };
        let most = left
            .checked_div(stick.cost)
            .unwrap_or(stick.count)
            .min(stick.count);
        let last = kind + 1 == self.core.kinds.len();
        // The last kind pays for all that is left.
        let first = if last && stick.cost > 0 { most } else { 0 };
        for count in first..=most {
            self.taken[kind] = count;
            let more = u128::from(count) * u128::from(self.most[kind]);
            if !self.go(kind + 1, left - count * stick.cost, held + more) {
                return false;
            }
        }
        self.taken[kind] = 0;
        true
    }
}

/// Whether sticks chosen so can hold everything.
pub(super) fn hold(
    core: &Core,
    choice: &[u64],
    target: u64,
    known: &Mix<'_>,
    chance: &mut Chance,
    pace: &mut Pace<'_>,
) -> Answer {
    let mut given = core.clone();
    for (kind, &count) in given.kinds.iter_mut().zip(choice) {
        kind.count = count;
    }
    let mut mix = Mix::new(&given);
    for fill in known.fills.iter().filter(|fill| choice[fill.kind] > 0) {
        mix.add(fill);
    }
    let all = Rest::new(&given);
    let above = target.saturating_add(1);
    let Some(reached) = mix.generate(&all, above, Depth::SETTLED, pace) else {
        return Answer::Open;
    };
    if reached.bound > target {
        return Answer::Never;
    }
    let need = need(&reached.worth, &all.demands);
    let Some(least) = least_held(&given, &all.counts, need, &reached.most, target) else {
        return Answer::Never;
    };
    let mut style = Style::STRAIGHT;
    if let Some(draft) = dive(&mut mix, above, style, chance, pace) {
        return Answer::Found(draft);
    }
    if let Some(fills) = list(&given, &reached.worth, &least, pace) {
        let first = |fill: &Fill| mix.knows(fill);
        return Closed::new(&given, &fills, first, target).run(chance, pace);
    }
    while !pace.is_over() {
        style.stray = 4 + chance.below(12);
        if let Some(draft) = dive(&mut mix, above, style, chance, pace) {
            return Answer::Found(draft);
        }
    }
    Answer::Open
}
