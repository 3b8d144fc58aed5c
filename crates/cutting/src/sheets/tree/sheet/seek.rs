//! Where a part would lose least.

use super::super::super::Axis;
use super::super::terms::Terms;
use super::{Leaf, Manner, NONE, Place, Sheet};

impl Sheet {
    /// Looks for the place with the least loss, if it is less than what was found before.
    pub(in super::super) fn seek(
        &self,
        terms: &Terms,
        (width, height): (u32, u32),
        turned: bool,
        best: &mut Option<Place>,
    ) -> bool {
        let mut better = false;
        for (at, leaf) in self.leaves.iter().enumerate() {
            if width > leaf.width || height > leaf.height {
                continue;
            }
            let mut seen = Seen {
                terms,
                turned,
                at,
                best,
                better: false,
            };
            if leaf.node == NONE {
                seen.whole(leaf, width, height);
            } else {
                seen.slack(leaf, width, height);
            }
            better |= seen.better;
        }
        better
    }
}

/// Tries one free space; keeps the best.
struct Seen<'a> {
    terms: &'a Terms,
    turned: bool,
    at: usize,
    best: &'a mut Option<Place>,
    better: bool,
}

impl Seen<'_> {
    fn offer(&mut self, leaf: &Leaf, axis: Axis, manner: Manner, left: f64) {
        let loss = leaf.worth - left;
        if self.best.is_none_or(|best| loss < best.loss) {
            let leaf = Leaf { axis, ..*leaf };
            *self.best = Some(Place {
                leaf,
                at: self.at,
                manner,
                turned: self.turned,
                loss,
            });
            self.better = true;
        }
    }

    fn useful(&self, stage: u32, width: u32, height: u32) -> f64 {
        if self.terms.splits(stage) {
            self.terms.worth(width, height)
        } else {
            0.0
        }
    }

    /// In the slack of a split that may hold anything.
    fn slack(&mut self, leaf: &Leaf, width: u32, height: u32) {
        let stage = leaf.stage;
        let (along, across, own, other) = match leaf.axis {
            Axis::X => (leaf.width, leaf.height, width, height),
            Axis::Y => (leaf.height, leaf.width, height, width),
        };
        let (beside, above) = (along - own, across - other);
        let least = self.terms.least();
        if own < least
            || above > 0 && other < least
            || !self.terms.strip(beside)
            || !self.terms.strip(above)
        {
            return;
        }
        if above == 0 {
            self.offer(
                leaf,
                leaf.axis,
                Manner::Flat,
                self.terms.worth(beside, across),
            );
            return;
        }
        if self.terms.trims(stage + 1) {
            let left = self.terms.worth(beside, across) + self.useful(stage + 1, own, above);
            self.offer(leaf, leaf.axis, Manner::Narrow, left);
        }
        if beside > 0 && self.terms.splits(stage + 1) && self.terms.trims(stage + 2) {
            let left = self.terms.worth(along, above) + self.useful(stage + 2, beside, other);
            self.offer(leaf, leaf.axis, Manner::Wide, left);
        }
    }

    /// In a whole sheet.
    fn whole(&mut self, leaf: &Leaf, width: u32, height: u32) {
        let (right, top) = (leaf.width - width, leaf.height - height);
        let least = self.terms.least();
        if right > 0 && width < least
            || top > 0 && height < least
            || !self.terms.strip(right)
            || !self.terms.strip(top)
        {
            return;
        }
        if right == 0 && top == 0 {
            self.offer(leaf, Axis::X, Manner::Flat, 0.0);
            return;
        }
        for axis in [Axis::X, Axis::Y] {
            let stage = self.terms.root_stage(axis);
            let (beside, above, across, own) = match axis {
                Axis::X => (right, top, leaf.height, width),
                Axis::Y => (top, right, leaf.width, height),
            };
            if beside == 0 {
                continue;
            }
            let first = self.useful(stage, beside, across);
            if above == 0 {
                if self.terms.trims(stage) {
                    self.offer(leaf, axis, Manner::Flat, first);
                }
            } else if self.terms.splits(stage) && self.terms.trims(stage + 1) {
                let left = first + self.useful(stage + 1, own, above);
                self.offer(leaf, axis, Manner::Narrow, left);
            }
        }
    }
}
