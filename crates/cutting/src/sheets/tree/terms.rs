//! The rules as the tree search asks for them, and what waste is worth.

use super::super::{Axis, Reduced};

#[derive(Clone, Copy, Debug)]
pub(super) struct Terms {
    most: u32,
    first: Option<Axis>,
    trim: bool,
    least: u32,
    /// One over the area of the largest sheet.
    unit: f64,
    /// Areas are divided by so many twos before they are summed up.
    coarse: u32,
}

/// No tree is deeper, so that what walks it needs little room.
const DEEPEST: u32 = 250;
/// Bits of the largest area that is summed up.
const FINE: u32 = 30;

impl Terms {
    pub(super) fn new(reduced: &Reduced) -> Self {
        let area = |width: u32, height: u32| u64::from(width) * u64::from(height);
        let sizes = reduced.stock.iter().map(|s| area(s.width, s.height));
        let largest = sizes.max().unwrap_or(1).max(1);
        Self {
            most: reduced.stages.most,
            first: reduced.stages.first,
            trim: reduced.stages.final_trim,
            least: reduced.least_strip,
            unit: 1.0 / rounded(largest),
            coarse: (u64::BITS - largest.leading_zeros()).saturating_sub(FINE),
        }
    }

    /// The stage of a sheet's first split along this axis.
    pub(super) fn root_stage(&self, axis: Axis) -> u32 {
        match self.first {
            Some(first) if first != axis => 2,
            _ => 1,
        }
    }

    /// A split of this stage may hold anything, and its waste is of use.
    pub(super) fn splits(&self, stage: u32) -> bool {
        stage <= self.most.min(DEEPEST)
    }

    /// A split of this stage may at least take waste off a single part.
    pub(super) fn trims(&self, stage: u32) -> bool {
        self.splits(stage) || self.trim && stage - 1 == self.most
    }

    /// No limit to stages.
    pub(super) fn endless(&self) -> bool {
        self.most == u32::MAX
    }

    /// What is left over may be so wide.
    pub(super) fn strip(&self, extent: u32) -> bool {
        extent == 0 || extent >= self.least
    }

    /// A part can be cut from an empty sheet on its own.
    pub(super) fn cuts(&self, sheet: (u32, u32), part: (u32, u32)) -> bool {
        if part.0 > sheet.0 || part.1 > sheet.1 {
            return false;
        }
        let (right, top) = (sheet.0 - part.0, sheet.1 - part.1);
        if right > 0 && part.0 < self.least || top > 0 && part.1 < self.least {
            return false;
        }
        let one = |axis| self.trims(self.root_stage(axis));
        let both = |axis| {
            let stage = self.root_stage(axis);
            self.splits(stage) && self.trims(stage + 1)
        };
        self.strip(right)
            && self.strip(top)
            && match (right, top) {
                (0, 0) => true,
                (_, 0) => one(Axis::X),
                (0, _) => one(Axis::Y),
                _ => both(Axis::X) || both(Axis::Y),
            }
    }

    /// The least a cut may leave.
    pub(super) fn least(&self) -> u32 {
        self.least.max(1)
    }

    /// An area in largest sheets.
    pub(super) fn share(&self, area: u64) -> f64 {
        rounded(area) * self.unit
    }

    /// An area as it is summed up: even so many copies that no list holds more stay in bounds.
    pub(super) fn weight(&self, (width, height): (u32, u32)) -> u64 {
        ((u64::from(width) * u64::from(height)) >> self.coarse).max(1)
    }

    /// A sum of weights in largest sheets.
    pub(super) fn share_of_weight(&self, weight: u64) -> f64 {
        rounded(weight) * self.unit * rounded(1 << self.coarse)
    }

    /// What free space is worth: one large piece is worth more than two halves.
    pub(super) fn worth(&self, width: u32, height: u32) -> f64 {
        let share = f64::from(width) * f64::from(height) * self.unit;
        share * share
    }
}

/// Only the searches' own liking depends on it, nothing that is proven.
#[allow(clippy::cast_precision_loss)]
pub(super) fn rounded(number: u64) -> f64 {
    number as f64
}
