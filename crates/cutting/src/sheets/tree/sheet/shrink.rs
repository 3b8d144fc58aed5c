//! Waste that lies side by side is made one.

use super::super::terms::Terms;
use super::{NONE, Node, SPLIT, Sheet, reduce};

impl Sheet {
    /// From this split to the root: where every child has slack to spare across a split, the split
    /// is made so much smaller and its parent has the slack in one piece.
    pub(super) fn shrink_up(&mut self, terms: &Terms, from: u32) {
        let mut split = from;
        while split != NONE {
            let parent = self.nodes[split as usize].parent;
            if parent != NONE || terms.endless() {
                let spare = self.spare(terms, split);
                if spare > 0 {
                    self.shrink(terms, split, parent, spare);
                }
            }
            split = parent;
        }
    }

    /// By how much a split can be made smaller across its axis.
    fn spare(&self, terms: &Terms, split: u32) -> u32 {
        let node = &self.nodes[split as usize];
        let mut spare = u32::MAX;
        let mut child = node.child;
        while child != NONE {
            let inner = &self.nodes[child as usize];
            if inner.part != SPLIT || inner.slack == 0 {
                return 0;
            }
            spare = spare.min(inner.slack);
            child = inner.after;
        }
        if terms.least() > 1 && !self.spares(terms, split, spare) {
            return 0;
        }
        spare
    }

    /// Whether no strip becomes too narrow.
    fn spares(&self, terms: &Terms, split: u32, spare: u32) -> bool {
        let node = &self.nodes[split as usize];
        let above = match node.parent {
            NONE => spare,
            parent => self.nodes[parent as usize].slack + spare,
        };
        let mut good = terms.strip(above);
        let mut child = node.child;
        while child != NONE && good {
            let inner = &self.nodes[child as usize];
            good = terms.strip(inner.slack - spare);
            child = inner.after;
        }
        good
    }

    fn shrink(&mut self, terms: &Terms, split: u32, parent: u32, spare: u32) {
        let other = self.nodes[split as usize].axis.other();
        reduce(&mut self.nodes[split as usize], other, spare);
        let mut child = self.nodes[split as usize].child;
        while child != NONE {
            let inner = &mut self.nodes[child as usize];
            let after = inner.after;
            reduce(inner, other, spare);
            inner.slack -= spare;
            let (slack, grandchild) = (inner.slack, inner.child);
            if slack == 0 && self.is_only(grandchild) {
                self.collapse(child);
            }
            child = after;
        }
        if parent != NONE {
            self.nodes[parent as usize].slack += spare;
            return;
        }
        let root = self.new_split(other, terms.root_stage(other), (self.width, self.height));
        self.append(root, split);
        self.root = root;
        self.restage(split, terms.root_stage(other) + 1);
    }

    pub(super) fn is_only(&self, child: u32) -> bool {
        self.nodes[child as usize].after == NONE
    }

    /// Replaces a split without slack by its only child, or by that child's children.
    pub(super) fn collapse(&mut self, split: u32) {
        let Node { parent, child, .. } = self.nodes[split as usize];
        self.unlink(split);
        self.vacate(split);
        let inner = self.nodes[child as usize];
        if inner.part != SPLIT {
            self.link(parent, child);
            return;
        }
        self.nodes[parent as usize].slack += inner.slack;
        let stage = self.nodes[parent as usize].stage + 1;
        let mut grandchild = inner.child;
        while grandchild != NONE {
            let after = self.nodes[grandchild as usize].after;
            self.link(parent, grandchild);
            self.restage(grandchild, stage);
            grandchild = after;
        }
        self.vacate(child);
    }

    pub(super) fn restage(&mut self, node: u32, stage: u32) {
        if self.nodes[node as usize].part != SPLIT {
            return;
        }
        self.nodes[node as usize].stage = stage;
        let mut child = self.nodes[node as usize].child;
        while child != NONE {
            self.restage(child, stage + 1);
            child = self.nodes[child as usize].after;
        }
    }
}
