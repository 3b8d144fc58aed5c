//! How long a search may go on, and how its progress is heard.

use std::sync::atomic::{AtomicBool, Ordering};

/// Whoever waits for a plan: says when it is enough, hears of every improvement.
///
/// The room itself reads no clock. A caller with a deadline looks at its own clock in
/// [`Watch::enough`]; a caller that wants the same answer every time says nothing here and gives
/// an effort instead.
pub trait Watch: Sync {
    /// True when the best plan so far will do. Asked often; must be cheap.
    fn enough(&self) -> bool {
        false
    }

    /// A better plan or a better bound for the problem with this name.
    fn news(&self, _news: News<'_>) {}
}

/// What a search has reached. Costs and bounds in the caller's unit of money or count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct News<'a> {
    /// The problem's name.
    pub problem: &'a str,
    /// The objective of the best plan found; `None` before the first.
    pub objective: Option<u64>,
    /// The proven bound.
    pub bound: u64,
}

/// Nobody waits: only the effort ends the search.
#[derive(Clone, Copy, Debug, Default)]
pub struct Unwatched;

impl Watch for Unwatched {}

/// Can be set from another thread or from a signal: the search then ends with its best plan.
#[derive(Debug, Default)]
pub struct Halt(AtomicBool);

impl Halt {
    /// Asks the search to end.
    pub fn halt(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    /// True once asked.
    pub fn halted(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}

impl Watch for Halt {
    fn enough(&self) -> bool {
        self.halted()
    }
}

/// How hard to try, and with which seed.
///
/// An effort is a count of elementary search steps (a table cell looked at, a piece tried in a
/// place), so that the same problem, seed and effort give the same plan on every machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trying {
    /// Elementary steps allowed; `None` goes on until proven or told to stop.
    pub effort: Option<u64>,
    /// Seed of every random choice.
    pub seed: u64,
}

impl Default for Trying {
    fn default() -> Self {
        Self {
            effort: None,
            seed: 1,
        }
    }
}

/// The steps left to one search, and the ear of whoever waits for it.
pub struct Pace<'a> {
    watch: &'a dyn Watch,
    left: u64,
    unasked: u64,
    over: bool,
}

/// Steps between two questions to the watch: well under a millisecond.
const ASK_EVERY: u64 = 20_000;

impl<'a> Pace<'a> {
    /// A pace with so many steps.
    pub fn new(watch: &'a dyn Watch, effort: Option<u64>) -> Self {
        Self {
            watch,
            left: effort.unwrap_or(u64::MAX),
            unasked: 0,
            over: false,
        }
    }

    /// A part of this pace: at most `steps` of what is left. Give it back with [`Pace::rejoin`].
    #[must_use]
    pub fn slice(&self, steps: u64) -> Pace<'a> {
        Pace {
            watch: self.watch,
            left: steps.min(self.left),
            unasked: self.unasked,
            over: self.over,
        }
    }

    /// Takes what a slice has used from this pace.
    pub fn rejoin(&mut self, given: u64, slice: &Pace<'a>) {
        let given = given.min(self.left);
        self.left -= given - slice.left.min(given);
        self.unasked = slice.unasked;
        if self.left == 0 || slice.told() {
            self.over = true;
        }
    }

    /// Counts steps; false when the search must end.
    pub fn spend(&mut self, steps: u64) -> bool {
        if self.over {
            return false;
        }
        self.unasked += steps;
        if self.left != u64::MAX {
            self.left = self.left.saturating_sub(steps);
            if self.left == 0 {
                self.over = true;
                return false;
            }
        }
        if self.unasked >= ASK_EVERY {
            self.unasked = 0;
            self.over = self.watch.enough();
        }
        !self.over
    }

    /// True when the search must end.
    pub fn is_over(&self) -> bool {
        self.over
    }

    /// Steps left.
    pub fn left(&self) -> u64 {
        self.left
    }

    /// True when the watch, not the effort, ended it.
    fn told(&self) -> bool {
        self.over && self.left > 0
    }
}
