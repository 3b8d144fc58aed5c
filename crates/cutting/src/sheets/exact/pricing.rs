//! The groups of one sheet that are worth the most at given prices.
//!
//! Depth first: part after part is added to a group as long as the group comes out of the sheet,
//! in the order of worth for area. A branch ends when the parts that go pair by pair with all it
//! holds, filled in by area and the last in fraction, cannot lift it above what counts.

use super::group::Group;
use super::kinds::{Kind, Pairs};
use super::reach::{Fits, Reach};
use crate::Pace;

/// A part on offer.
#[derive(Clone, Copy, Debug)]
pub(super) struct Offer {
    pub(super) part: usize,
    pub(super) price: u64,
    pub(super) area: u64,
    pub(super) count: u64,
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    /// Everything has been looked at.
    Done,
    /// Something was found, and more may be left.
    Enough,
    /// The pace has ended; go on later.
    Paused,
    /// More groups than can be kept.
    TooMany,
}

/// A search for one kind of sheet, which can be left and taken up again.
pub(super) struct Pricing {
    size: (u32, u32),
    /// The best worth for area first.
    offers: Vec<Offer>,
    /// Only groups worth this or more count.
    least: u64,
    /// All groups worth enough that cannot be added to, at most so many; not only the best.
    all: Option<usize>,
    /// Per part: which parts go with it.
    pairs: Vec<Pairs>,
    stack: Vec<Frame>,
    /// The most worth met.
    best: u64,
    found: Vec<(u64, Group)>,
    nodes: u64,
    /// Nodes after which a find is enough.
    patience: u64,
}

struct Frame {
    group: Group,
    worth: u64,
    /// Area of the sheet not yet taken.
    left: u64,
    /// Place among the offers, and how many more of it.
    choices: Vec<(usize, u64)>,
    next: usize,
    /// Something could be added.
    extended: bool,
}

impl Pricing {
    /// The best group worth more than the floor; after `patience` nodes any will do.
    pub(super) fn best(kind: &Kind, offers: &[Offer], floor: u64, patience: u64) -> Self {
        Self::new(kind, offers, floor + 1, None, patience)
    }

    /// All groups worth the least or more to which nothing can be added, at most so many.
    pub(super) fn all(kind: &Kind, offers: &[Offer], least: u64, most: usize) -> Self {
        Self::new(kind, offers, least, Some(most), u64::MAX)
    }

    fn new(kind: &Kind, offers: &[Offer], least: u64, all: Option<usize>, patience: u64) -> Self {
        let mut offers = offers.to_vec();
        let dear = |offer: &Offer| u128::from(offer.price);
        offers.sort_by(|a, b| {
            let left = dear(b) * u128::from(a.area);
            let right = dear(a) * u128::from(b.area);
            left.cmp(&right)
                .then(b.area.cmp(&a.area))
                .then(a.part.cmp(&b.part))
        });
        let mut pricing = Self {
            size: kind.size,
            offers,
            least,
            all,
            pairs: kind.pairs.clone(),
            stack: Vec::new(),
            best: 0,
            found: Vec::new(),
            nodes: 0,
            patience,
        };
        let choices = pricing.offers.iter().map(|offer| offer.count).enumerate();
        pricing.stack.push(Frame {
            group: Group::default(),
            worth: 0,
            left: kind.area(),
            choices: choices.collect(),
            next: usize::MAX,
            extended: false,
        });
        pricing
    }

    /// What no group is worth more than, once done.
    pub(super) fn ceiling(&self) -> u64 {
        self.best.max(self.least.saturating_sub(1))
    }

    /// Worth and group of what was found.
    pub(super) fn found(&self) -> &[(u64, Group)] {
        &self.found
    }

    pub(super) fn run(&mut self, reach: &mut Reach, pace: &mut Pace) -> Outcome {
        while let Some(mut frame) = self.stack.pop() {
            let going = pace.spend(1 + frame.choices.len() as u64 / 4 + reach.steps());
            if !going {
                self.stack.push(frame);
                return Outcome::Paused;
            }
            if frame.next == usize::MAX {
                self.open(&mut frame, reach);
            }
            let rest = &frame.choices[frame.next..];
            let ceiling = self.filled(frame.worth, frame.left, rest);
            if rest.is_empty() || ceiling < self.threshold() {
                if self.close(reach, &frame) {
                    return Outcome::TooMany;
                }
                continue;
            }
            let full = frame.group.len() == super::group::MOST;
            let child = if full {
                None
            } else {
                self.child(reach, &frame)
            };
            frame.next += 1;
            frame.extended |= child.is_some();
            if full {
                if self.all.is_some() {
                    return Outcome::TooMany;
                }
                self.best = self.best.max(ceiling);
                continue;
            }
            self.stack.push(frame);
            if let Some(child) = child {
                self.meet(&child);
                self.stack.push(child);
            }
            self.nodes += 1;
            if self.nodes > self.patience && !self.found.is_empty() {
                return Outcome::Enough;
            }
        }
        Outcome::Done
    }

    /// The root: which offers fit at all.
    fn open(&mut self, frame: &mut Frame, reach: &mut Reach) {
        frame.choices = self.fitting(reach, frame.group, frame.left, &frame.choices);
        frame.next = 0;
    }

    /// The least a branch must be able to be worth.
    fn threshold(&self) -> u64 {
        if self.all.is_some() {
            self.least
        } else {
            self.ceiling() + 1
        }
    }

    fn child(&self, reach: &mut Reach, frame: &Frame) -> Option<Frame> {
        let choices = &frame.choices[frame.next..];
        let place = choices[0].0;
        let offer = self.offers[place];
        let worth = frame.worth + offer.price;
        let left = frame.left - offer.area;
        let mut rest = Vec::with_capacity(choices.len());
        for (at, &(other, count)) in choices.iter().enumerate() {
            let count = count - u64::from(at == 0);
            let part = self.offers[other].part;
            let goes = self.pairs[offer.part][part / 64] >> (part % 64) & 1 == 1;
            if count > 0 && goes && self.offers[other].area <= left {
                rest.push((other, count));
            }
        }
        if self.filled(worth, left, &rest) < self.threshold() {
            return None;
        }
        let group = frame.group.with(offer.part)?;
        if reach.fits(group, self.size) == Fits::No {
            return None;
        }
        Some(Frame {
            group,
            worth,
            left,
            choices: rest,
            next: 0,
            extended: false,
        })
    }

    /// Of the choices, those that can be added.
    fn fitting(
        &self,
        reach: &mut Reach,
        group: Group,
        left: u64,
        choices: &[(usize, u64)],
    ) -> Vec<(usize, u64)> {
        let mut kept = Vec::with_capacity(choices.len());
        for &(place, count) in choices {
            let offer = &self.offers[place];
            if count == 0 || offer.area > left {
                continue;
            }
            let fits = match group.with(offer.part) {
                Some(more) => reach.fits(more, self.size) != Fits::No,
                None => true,
            };
            if fits {
                kept.push((place, count));
            }
        }
        kept
    }

    /// Worth with the rest of the area filled from the choices in order, the last in fraction.
    fn filled(&self, worth: u64, mut left: u64, choices: &[(usize, u64)]) -> u64 {
        let mut sum = worth;
        for &(place, count) in choices {
            let offer = &self.offers[place];
            let whole = count.min(left / offer.area);
            sum += whole * offer.price;
            left -= whole * offer.area;
            if whole < count {
                let part = u128::from(offer.price) * u128::from(left) / u128::from(offer.area);
                return sum + u64::try_from(part).unwrap_or(offer.price) + 1;
            }
        }
        sum
    }

    /// Notes a group that is worth more than all before.
    fn meet(&mut self, frame: &Frame) {
        if self.all.is_none() && frame.worth > self.ceiling() {
            self.best = frame.worth;
            self.found.push((frame.worth, frame.group));
        }
    }

    /// Notes a group to which nothing can be added; true when there are too many.
    fn close(&mut self, reach: &mut Reach, frame: &Frame) -> bool {
        let Some(most) = self.all else {
            return false;
        };
        if frame.worth < self.least || frame.extended || frame.group.is_empty() {
            return false;
        }
        // Only what is known to fit makes it superfluous: then all within that fits, too, and the
        // larger group has been or will be met. One that nobody can tell of may not be.
        let goes = |offer: &Offer| {
            offer.count > frame.group.count(offer.part)
                && offer.area <= frame.left
                && frame
                    .group
                    .with(offer.part)
                    .is_some_and(|more| reach.fits(more, self.size) == Fits::Yes)
        };
        if !self.offers.iter().any(goes) {
            self.found.push((frame.worth, frame.group));
        }
        self.found.len() > most
    }
}
