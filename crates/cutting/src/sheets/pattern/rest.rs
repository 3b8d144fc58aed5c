//! A plan under way: what is still to be made, from what, and what is made already.

use super::super::{Block, Draft, DraftSheet, Kind, Reduced};
use super::columns::Layout;
use super::shape::block_uses;

/// What is still to be made, and from what.
#[derive(Clone)]
pub(super) struct Rest {
    /// Per part.
    pub(super) parts: Vec<u64>,
    /// Per stock.
    pub(super) stock: Vec<u64>,
    pub(super) sheets: Vec<DraftSheet>,
}

impl Rest {
    pub(super) fn whole(reduced: &Reduced) -> Self {
        Self {
            parts: reduced.parts.iter().map(|part| part.count).collect(),
            stock: reduced.stock.iter().map(|stock| stock.count).collect(),
            sheets: Vec::new(),
        }
    }

    pub(super) fn is_done(&self) -> bool {
        self.parts.iter().all(|&left| left == 0)
    }

    /// Cuts at most so many sheets by this layout: whole ones as often as the demands allow, or
    /// one without what is no longer wanted. Answers how many were cut.
    pub(super) fn cut(&mut self, layout: &Layout, most: u64) -> u64 {
        let most = most.min(self.stock[layout.stock]);
        if most == 0 {
            return 0;
        }
        let whole = layout
            .uses
            .iter()
            .map(|&(part, times)| self.parts[part] / times)
            .min();
        let copies = whole.unwrap_or(0).min(most);
        if copies > 0 {
            for &(part, times) in &layout.uses {
                self.parts[part] -= times * copies;
            }
            self.take(layout.stock, copies, layout.block.clone());
            return copies;
        }
        let mut block = layout.block.clone();
        trim(&mut block, &mut self.parts);
        if block_uses(&block).is_empty() {
            return 0;
        }
        self.take(layout.stock, 1, block);
        1
    }

    /// Cuts so many sheets, the last ones without what is no longer wanted.
    pub(super) fn cut_all(&mut self, layout: &Layout, copies: u64) {
        let mut left = copies;
        while left > 0 {
            let cut = self.cut(layout, left);
            if cut == 0 {
                break;
            }
            left -= cut;
        }
    }

    pub(super) fn take(&mut self, stock: usize, copies: u64, block: Block) {
        if self.stock[stock] != u64::MAX {
            self.stock[stock] -= copies;
        }
        match self
            .sheets
            .iter_mut()
            .find(|sheet| sheet.stock == stock && sheet.block == block)
        {
            Some(same) => same.copies += copies,
            None => self.sheets.push(DraftSheet {
                stock,
                copies,
                block,
            }),
        }
    }

    pub(super) fn draft(self) -> Draft {
        Draft {
            sheets: self.sheets,
        }
    }
}

/// Frees what is no longer wanted; takes the rest from what is left.
fn trim(block: &mut Block, left: &mut [u64]) {
    match &mut block.kind {
        Kind::Part { part, .. } => {
            if left[*part] == 0 {
                block.kind = Kind::Free;
            } else {
                left[*part] -= 1;
            }
        }
        Kind::Free => {}
        Kind::Split { blocks, .. } => {
            for inner in blocks.iter_mut() {
                trim(inner, left);
            }
            if blocks.iter().all(|inner| inner.kind == Kind::Free) {
                block.kind = Kind::Free;
            }
        }
    }
}

/// What sheets cost.
pub(super) fn cost_of(reduced: &Reduced, sheets: &[DraftSheet]) -> u64 {
    sheets
        .iter()
        .map(|sheet| reduced.stock[sheet.stock].cost * sheet.copies)
        .sum()
}
