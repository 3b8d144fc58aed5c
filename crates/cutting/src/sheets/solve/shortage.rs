//! Stock that does not reach: the most urgent pieces are cut, the rest is told.

use super::super::reduce::{Origin, urgency};
use super::super::tree::Tree;
use super::super::{Draft, Problem, Reduced};
use crate::Pace;

/// A plan for what can be cut.
pub(crate) struct Short {
    pub(crate) draft: Draft,
    /// Pieces, and how many of each are left.
    pub(crate) uncut: Vec<(usize, u64)>,
}

/// Steps for one try.
const TRY: u64 = 1 << 22;

/// Takes the pieces in the order of their urgency, larger ones first among equals: first the
/// longest run of whole entries that leads to a plan, then of each further entry as many as do.
/// Of pieces that are cut alike the most urgent are named first in any plan, so that only their
/// number counts here. Whether a plan exists is the tree search's word, not a proof; when the pace
/// ends, what has not been tried is left as well.
pub(crate) fn cut_what_can_be(
    problem: &Problem,
    reduced: &Reduced,
    origin: &Origin,
    seed: u64,
    pace: &mut Pace<'_>,
) -> Short {
    let order = by_urgency(problem, reduced, origin);
    let wanted = |piece: usize| problem.pieces[piece].count.unwrap_or(0);
    let mut trial = Trial::new(reduced, seed);
    let mut draft = Draft::default();
    let (mut sure, mut over) = (0, order.len());
    while sure < over && !pace.is_over() {
        let middle = usize::midpoint(sure, over) + usize::from((over - sure) % 2 == 1);
        trial.set_none();
        for &(part, piece) in &order[..middle] {
            trial.add(part, wanted(piece));
        }
        match trial.planned(pace) {
            Some(found) => (sure, draft) = (middle, found),
            None => over = middle - 1,
        }
    }
    trial.set_none();
    for &(part, piece) in &order[..sure] {
        trial.add(part, wanted(piece));
    }
    let mut uncut = Vec::new();
    for &(part, piece) in &order[sure..] {
        let (taken, found) = trial.most_of(part, wanted(piece), pace);
        if let Some(found) = found {
            draft = found;
        }
        if taken < wanted(piece) {
            uncut.push((piece, wanted(piece) - taken));
        }
    }
    uncut.sort_unstable();
    Short { draft, uncut }
}

/// Parts and pieces, the most urgent first.
fn by_urgency(problem: &Problem, reduced: &Reduced, origin: &Origin) -> Vec<(usize, usize)> {
    let mut order: Vec<(usize, usize)> = Vec::new();
    for (part, pieces) in origin.parts.iter().enumerate() {
        order.extend(pieces.iter().map(|&piece| (part, piece)));
    }
    order.sort_by_key(|&(part, piece)| {
        let size = u64::from(reduced.parts[part].width) * u64::from(reduced.parts[part].height);
        let urgency = urgency(&problem.pieces[piece]);
        (urgency, std::cmp::Reverse(size), piece)
    });
    order
}

/// The problem with fewer pieces.
struct Trial {
    reduced: Reduced,
    seed: u64,
}

impl Trial {
    fn new(reduced: &Reduced, seed: u64) -> Self {
        Self {
            reduced: reduced.clone(),
            seed,
        }
    }

    fn set_none(&mut self) {
        for part in 0..self.reduced.parts.len() {
            self.set(part, 0);
        }
    }

    fn add(&mut self, part: usize, count: u64) {
        self.set(part, self.reduced.parts[part].count + count);
    }

    fn set(&mut self, part: usize, count: u64) {
        self.reduced.parts[part].count = count;
        if let Some(window) = self.reduced.parts[part].window {
            self.reduced.stock[window].count = count;
        }
    }

    /// How many more of a part lead to a plan, by halving; they are added. With that plan.
    fn most_of(&mut self, part: usize, wanted: u64, pace: &mut Pace<'_>) -> (u64, Option<Draft>) {
        let before = self.reduced.parts[part].count;
        let (mut sure, mut over, mut best) = (0, wanted, None);
        let mut next = wanted;
        while sure < over && !pace.is_over() {
            self.set(part, before + next);
            match self.planned(pace) {
                Some(draft) => (sure, best) = (next, Some(draft)),
                None => over = next - 1,
            }
            next = sure + (over - sure).div_ceil(2);
        }
        self.set(part, before + sure);
        (sure, best)
    }

    /// A plan for the parts with a count, in terms of all parts.
    fn planned(&mut self, pace: &mut Pace<'_>) -> Option<Draft> {
        let mut slice = pace.slice(TRY);
        let draft = Tree::new(&self.reduced, self.seed).first(&mut slice);
        pace.rejoin(TRY, &slice);
        draft
    }
}
