//! The problem as it is searched: lengths with the kerf taken in, equal pieces counted together.
//!
//! With one kerf added to every piece and one to the room of every stick, n pieces and their
//! n − 1 cuts fit exactly when the sum of the lengthened pieces is within the lengthened room.

use super::flaws::{self, Laid};

/// A count without end.
pub(super) const ENDLESS: u64 = u64::MAX;

/// Equal pieces, or equal bundles of pieces that must come from one stick.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Item {
    /// Sum over the parts of length + kerf.
    pub(super) length: u64,
    pub(super) demand: u64,
    /// The only run it may come from.
    pub(super) run: Option<usize>,
    /// Lengths of the parts without kerf, longest first; one for a plain piece.
    pub(super) parts: Vec<u64>,
}

/// Equal sticks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Kind {
    /// Entry of the problem's stock.
    pub(super) stock: usize,
    pub(super) cost: u64,
    pub(super) count: u64,
    pub(super) run: usize,
    /// So many of its sticks may each serve a group as a run of its own, numbered from `run` on;
    /// 0 once it is settled which of them do.
    pub(super) own: usize,
    /// Whether all its sticks are of one run.
    pub(super) shared: bool,
    /// Clear stretches: from, to.
    pub(super) stretches: Vec<(u64, u64)>,
    /// Sum over the stretches of length + kerf.
    pub(super) room: u64,
}

impl Kind {
    /// True without flaws.
    pub(super) fn is_clear(&self) -> bool {
        self.stretches.len() == 1
    }
}

/// What is to be cut from what; items longest first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Core {
    pub(super) kerf: u64,
    pub(super) items: Vec<Item>,
    pub(super) kinds: Vec<Kind>,
}

/// What is cut from one stick.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Fill {
    pub(super) kind: usize,
    /// Item and how often, items ascending.
    pub(super) parts: Vec<(usize, u64)>,
}

/// Fills and how often each; together they hold at least what is wanted.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub(super) struct Draft {
    pub(super) fills: Vec<(Fill, u64)>,
    pub(super) cost: u64,
}

/// Whether parts fit on a stick.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    Known,
    Never,
    /// The search for an arrangement gave up.
    Open,
}

impl Draft {
    pub(super) fn push(&mut self, core: &Core, fill: Fill, copies: u64) {
        self.cost += core.kinds[fill.kind].cost * copies;
        self.fills.push((fill, copies));
    }
}

impl Core {
    /// Whether a stick of this kind is known to hold the item.
    pub(super) fn takes(&self, kind: usize, item: usize) -> bool {
        self.matches(kind, item) && self.fits(kind, &[(item, 1)])
    }

    /// False when a stick of this kind cannot hold the item at all.
    pub(super) fn may_take(&self, kind: usize, item: usize) -> bool {
        let (stick, piece) = (&self.kinds[kind], &self.items[item]);
        self.matches(kind, item)
            && piece.length <= stick.room
            && (stick.is_clear() || flaws::arrange(self, kind, &[(item, 1)]).0 != Laid::Never)
    }

    /// Whether the item may come from the run of this kind.
    fn matches(&self, kind: usize, item: usize) -> bool {
        let run = self.items[item].run;
        run.is_none_or(|run| run == self.kinds[kind].run)
    }

    /// The length a fill takes, kerfs included.
    pub(super) fn taken(&self, parts: &[(usize, u64)]) -> u64 {
        let each = |&(item, times): &(usize, u64)| self.items[item].length.saturating_mul(times);
        parts.iter().map(each).fold(0, u64::saturating_add)
    }

    /// Whether the parts are known to fit; runs are not looked at.
    pub(super) fn fits(&self, kind: usize, parts: &[(usize, u64)]) -> bool {
        let laid = || matches!(flaws::arrange(self, kind, parts).0, Laid::Spots(_));
        self.taken(parts) <= self.kinds[kind].room && (self.kinds[kind].is_clear() || laid())
    }

    /// The same with the third answer, and the steps it took.
    pub(super) fn may_fit(&self, kind: usize, parts: &[(usize, u64)]) -> (Fit, u64) {
        if self.taken(parts) > self.kinds[kind].room {
            return (Fit::Never, 1);
        }
        if self.kinds[kind].is_clear() {
            return (Fit::Known, 1);
        }
        let (laid, steps) = flaws::arrange(self, kind, parts);
        let fit = match laid {
            Laid::Spots(_) => Fit::Known,
            Laid::Never => Fit::Never,
            Laid::Open => Fit::Open,
        };
        (fit, steps)
    }

    pub(super) fn demands(&self) -> Vec<u64> {
        self.items.iter().map(|item| item.demand).collect()
    }

    pub(super) fn counts(&self) -> Vec<u64> {
        self.kinds.iter().map(|kind| kind.count).collect()
    }
}

/// The greatest common divisor; of 0 and n it is n.
pub(super) fn common(a: u64, b: u64) -> u64 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a
}
