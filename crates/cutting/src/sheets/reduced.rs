//! The problem as the searches see it: kerf and trim folded into the sizes, equal pieces merged.
//!
//! With every piece larger by the kerf on both axes, and every sheet its usable size plus one
//! kerf, blocks simply add up: a strip of n pieces needs Σ (piece + kerf) ≤ room + kerf.

use crate::Goal;

/// Kerf-free: sizes in `u32` so that areas fit `u64`.
#[derive(Clone, Debug)]
pub(crate) struct Reduced {
    pub(crate) goal: Goal,
    pub(crate) stages: Stages,
    /// Least extent of every block of a split, free ones included; 0: none.
    pub(crate) least_strip: u32,
    /// Stock that can take at least one part; with `Goal::Fewest` every cost is 1.
    pub(crate) stock: Vec<Stock>,
    /// Part types, different in size, turning, window or value; equal pieces are merged.
    pub(crate) parts: Vec<Part>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) struct Stages {
    /// At most so many directions in alternation; `u32::MAX`: no limit.
    pub(crate) most: u32,
    /// Axis of the first split; `None`: either. A first split along the other axis counts as the
    /// second stage.
    pub(crate) first: Option<super::Axis>,
    /// After the last stage one more split may take waste off a single part.
    pub(crate) final_trim: bool,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Stock {
    pub(crate) width: u32,
    pub(crate) height: u32,
    pub(crate) cost: u64,
    /// How many; `u64::MAX`: as many as needed.
    pub(crate) count: u64,
    /// Freed by each part of this type that is cut, at no cost; `count` is then that part's count.
    pub(crate) window_of: Option<usize>,
    /// Left over from earlier work.
    pub(crate) remnant: bool,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Part {
    pub(crate) width: u32,
    pub(crate) height: u32,
    /// Copies wanted; `u64::MAX` without end (`Goal::Value` only).
    pub(crate) count: u64,
    pub(crate) value: u64,
    /// May be turned; false also where turning changes nothing.
    pub(crate) turn: bool,
    /// Index of the stock that each copy frees.
    pub(crate) window: Option<usize>,
}

/// A plan in reduced terms.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Draft {
    pub(crate) sheets: Vec<DraftSheet>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct DraftSheet {
    /// Index into [`Reduced::stock`].
    pub(crate) stock: usize,
    pub(crate) copies: u64,
    /// As large as the stock.
    pub(crate) block: Block,
}

use super::Block;

impl Reduced {
    /// What a draft costs.
    pub(crate) fn cost(&self, draft: &Draft) -> u64 {
        let each = |sheet: &DraftSheet| self.stock[sheet.stock].cost * sheet.copies;
        draft.sheets.iter().map(each).sum()
    }

    /// The value of everything in a draft.
    pub(crate) fn value(&self, draft: &Draft) -> u64 {
        let mut sum = 0;
        for sheet in &draft.sheets {
            sheet
                .block
                .each_part(&mut |part| sum += self.parts[part].value * sheet.copies);
        }
        sum
    }
}
