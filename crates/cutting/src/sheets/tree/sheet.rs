//! One sheet under the saw: a tree of splits that is added to and taken from in place.
//!
//! A split does not list its waste as a block but keeps it as slack at its far end. What holds
//! between calls:
//!
//! - a split's children lie along its axis; sizes and slack add up to its own;
//! - a child that is a split runs along the other axis;
//! - a split has two children, or one and some slack;
//! - a split one stage beyond the last holds a single part, and its slack is of no use.

mod exchange;
mod seek;
mod shrink;

use super::super::Axis;
use super::terms::Terms;

/// No node.
pub(super) const NONE: u32 = u32::MAX;
/// Instead of a part: the node is a split.
const SPLIT: u32 = u32::MAX;
/// Instead of a part: the node is not in use.
const VACANT: u32 = u32::MAX - 1;

#[derive(Clone, Copy, Debug)]
struct Node {
    width: u32,
    height: u32,
    /// Free extent along the axis.
    slack: u32,
    part: u32,
    parent: u32,
    child: u32,
    before: u32,
    after: u32,
    stage: u32,
    axis: Axis,
    turned: bool,
}

/// Free space that can take a part.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leaf {
    pub(super) width: u32,
    pub(super) height: u32,
    /// The split whose slack it is; [`NONE`] for a whole sheet.
    node: u32,
    stage: u32,
    axis: Axis,
    worth: f64,
}

/// How a part is cut out of free space.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Manner {
    /// It is as large as the space across the axis: one cut, or none.
    Flat,
    /// First a strip as wide as the part along the axis, then the part from the strip.
    Narrow,
    /// First a strip along the whole axis, as wide as the part across it.
    Wide,
}

/// Where a part could go.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    leaf: Leaf,
    /// Number of the leaf.
    at: usize,
    manner: Manner,
    pub(super) turned: bool,
    /// By how much the free space loses worth.
    pub(super) loss: f64,
}

#[derive(Debug, Default)]
pub(super) struct Sheet {
    pub(super) stock: usize,
    pub(super) open: bool,
    pub(super) width: u32,
    pub(super) height: u32,
    /// Area of the parts.
    pub(super) used: u64,
    /// Number of parts.
    pub(super) parts: u32,
    /// What its free space is worth.
    pub(super) worth: f64,
    nodes: Vec<Node>,
    root: u32,
    vacant: u32,
    leaves: Vec<Leaf>,
    /// No free space is wider or higher.
    widest: u32,
    highest: u32,
}

impl Clone for Sheet {
    fn clone(&self) -> Self {
        let mut copy = Self::default();
        copy.clone_from(self);
        copy
    }

    /// Without allocating where there is room enough.
    fn clone_from(&mut self, from: &Self) {
        self.nodes.clear();
        self.nodes.extend_from_slice(&from.nodes);
        self.leaves.clear();
        self.leaves.extend_from_slice(&from.leaves);
        self.stock = from.stock;
        self.open = from.open;
        self.width = from.width;
        self.height = from.height;
        self.used = from.used;
        self.parts = from.parts;
        self.worth = from.worth;
        self.root = from.root;
        self.vacant = from.vacant;
        self.widest = from.widest;
        self.highest = from.highest;
    }
}

impl Sheet {
    /// Makes this an empty sheet.
    pub(super) fn open(&mut self, terms: &Terms, stock: usize, width: u32, height: u32) {
        self.stock = stock;
        self.open = true;
        self.width = width;
        self.height = height;
        self.used = 0;
        self.parts = 0;
        self.nodes.clear();
        self.root = NONE;
        self.vacant = NONE;
        self.refresh(terms);
    }

    pub(super) fn close(&mut self) {
        self.open = false;
        self.used = 0;
        self.parts = 0;
        self.worth = 0.0;
        self.nodes.clear();
        self.leaves.clear();
        self.root = NONE;
        self.vacant = NONE;
        self.widest = 0;
        self.highest = 0;
    }

    /// How many places a search has to look at.
    pub(super) fn leaves(&self) -> usize {
        self.leaves.len()
    }

    /// The largest free area.
    pub(super) fn largest(&self) -> u64 {
        let area = |leaf: &Leaf| u64::from(leaf.width) * u64::from(leaf.height);
        self.leaves.iter().map(area).max().unwrap_or(0)
    }

    pub(super) fn may_take(&self, width: u32, height: u32) -> bool {
        width <= self.widest && height <= self.highest
    }

    /// Cuts a part out of free space found by [`Sheet::seek`].
    pub(super) fn place(&mut self, terms: &Terms, place: Place, part: u32, size: (u32, u32)) {
        let (width, height) = size;
        let Leaf { node, axis, .. } = place.leaf;
        let leaf = self.new_part(part, place.turned, size);
        self.worth -= place.leaf.worth;
        self.leaves.swap_remove(place.at);
        if node == NONE {
            if width == self.width && height == self.height {
                self.root = leaf;
            } else {
                let stage = terms.root_stage(axis);
                self.root = self.new_split(axis, stage, (self.width, self.height));
                self.set_in(terms, self.root, place.manner, leaf);
            }
        } else {
            self.set_in(terms, node, place.manner, leaf);
        }
        self.used += u64::from(width) * u64::from(height);
        self.parts += 1;
    }

    fn set_in(&mut self, terms: &Terms, split: u32, manner: Manner, leaf: u32) {
        let Node {
            axis,
            stage,
            slack,
            width,
            height,
            ..
        } = self.nodes[split as usize];
        let other = axis.other();
        let part = self.nodes[leaf as usize];
        let (along, across) = (along(&part, axis), along(&part, other));
        let whole = if axis == Axis::X { height } else { width };
        match manner {
            Manner::Flat => self.append(split, leaf),
            Manner::Narrow => {
                let strip = self.new_split(other, stage + 1, oriented(axis, along, whole));
                self.append(strip, leaf);
                self.append(split, strip);
                self.see(terms, strip);
            }
            Manner::Wide => {
                let strip = self.new_split(other, stage + 1, oriented(axis, slack, whole));
                let inner = self.new_split(axis, stage + 2, oriented(axis, slack, across));
                self.append(inner, leaf);
                self.append(strip, inner);
                self.append(split, strip);
                self.see(terms, strip);
                self.see(terms, inner);
            }
        }
        self.see(terms, split);
    }

    /// Lists a split's slack where a part may go into it.
    fn see(&mut self, terms: &Terms, split: u32) {
        let node = self.nodes[split as usize];
        if node.part != SPLIT || node.slack == 0 || !terms.splits(node.stage) {
            return;
        }
        let size = match node.axis {
            Axis::X => (node.slack, node.height),
            Axis::Y => (node.width, node.slack),
        };
        self.add_leaf(terms, split, size, node.stage, node.axis);
    }

    /// A node in use, by lot.
    pub(super) fn any_node(&self, lot: usize) -> u32 {
        let count = self.nodes.len();
        for step in 0..count {
            let at = (lot + step) % count;
            if self.nodes[at].part != VACANT {
                return u32::try_from(at).unwrap_or(NONE);
            }
        }
        NONE
    }

    /// How many nodes there are, used or not.
    pub(super) fn nodes(&self) -> usize {
        self.nodes.len()
    }

    /// All parts in a subtree.
    pub(super) fn parts_in(&self, node: u32, found: &mut Vec<u32>) {
        if node == NONE {
            return;
        }
        let top = self.nodes[node as usize];
        if top.part != SPLIT {
            found.push(top.part);
            return;
        }
        let mut child = top.child;
        while child != NONE {
            self.parts_in(child, found);
            child = self.nodes[child as usize].after;
        }
    }

    /// All parts.
    pub(super) fn all_parts(&self, found: &mut Vec<u32>) {
        self.parts_in(self.root, found);
    }

    /// Takes a subtree out and moves waste up to where it makes larger pieces. The caller calls
    /// [`Sheet::refresh`] in the end.
    pub(super) fn remove(&mut self, terms: &Terms, node: u32) {
        let mut node = node;
        loop {
            let parent = self.nodes[node as usize].parent;
            self.drop_subtree(node);
            if parent == NONE {
                self.root = NONE;
                return;
            }
            if self.nodes[parent as usize].child != NONE {
                self.shrink_up(terms, parent);
                return;
            }
            node = parent;
        }
    }

    /// Finds the free spaces anew.
    pub(super) fn refresh(&mut self, terms: &Terms) {
        self.leaves.clear();
        (self.widest, self.highest, self.worth) = (0, 0, 0.0);
        if self.root == NONE {
            let (width, height) = (self.width, self.height);
            self.add_leaf(terms, NONE, (width, height), 0, Axis::X);
            return;
        }
        for at in 0..self.nodes.len() {
            self.see(terms, u32::try_from(at).unwrap_or(NONE));
        }
    }

    fn add_leaf(&mut self, terms: &Terms, node: u32, size: (u32, u32), stage: u32, axis: Axis) {
        let (width, height) = size;
        let worth = terms.worth(width, height);
        self.worth += worth;
        self.widest = self.widest.max(width);
        self.highest = self.highest.max(height);
        self.leaves.push(Leaf {
            width,
            height,
            node,
            stage,
            axis,
            worth,
        });
    }

    fn new_node(&mut self, node: Node) -> u32 {
        if self.vacant == NONE {
            self.nodes.push(node);
            return u32::try_from(self.nodes.len() - 1).unwrap_or(NONE);
        }
        let at = self.vacant;
        self.vacant = self.nodes[at as usize].after;
        self.nodes[at as usize] = node;
        at
    }

    fn new_part(&mut self, part: u32, turned: bool, (width, height): (u32, u32)) -> u32 {
        self.new_node(Node {
            width,
            height,
            slack: 0,
            part,
            parent: NONE,
            child: NONE,
            before: NONE,
            after: NONE,
            stage: 0,
            axis: Axis::X,
            turned,
        })
    }

    fn new_split(&mut self, axis: Axis, stage: u32, (width, height): (u32, u32)) -> u32 {
        self.new_node(Node {
            width,
            height,
            slack: if axis == Axis::X { width } else { height },
            part: SPLIT,
            parent: NONE,
            child: NONE,
            before: NONE,
            after: NONE,
            stage,
            axis,
            turned: false,
        })
    }

    /// Puts a loose node into a split's slack.
    fn append(&mut self, split: u32, node: u32) {
        let extent = along(&self.nodes[node as usize], self.nodes[split as usize].axis);
        self.nodes[split as usize].slack -= extent;
        self.link(split, node);
    }

    fn link(&mut self, split: u32, node: u32) {
        let first = self.nodes[split as usize].child;
        self.nodes[node as usize].parent = split;
        self.nodes[node as usize].before = NONE;
        self.nodes[node as usize].after = first;
        if first != NONE {
            self.nodes[first as usize].before = node;
        }
        self.nodes[split as usize].child = node;
    }

    fn unlink(&mut self, node: u32) {
        let Node {
            parent,
            before,
            after,
            ..
        } = self.nodes[node as usize];
        if before != NONE {
            self.nodes[before as usize].after = after;
        } else if parent != NONE {
            self.nodes[parent as usize].child = after;
        }
        if after != NONE {
            self.nodes[after as usize].before = before;
        }
    }

    fn vacate(&mut self, node: u32) {
        self.nodes[node as usize].part = VACANT;
        self.nodes[node as usize].after = self.vacant;
        self.vacant = node;
    }

    /// Unlinks a subtree, gives its extent to its parent's slack, and forgets it.
    fn drop_subtree(&mut self, node: u32) {
        let parent = self.nodes[node as usize].parent;
        if parent != NONE {
            let extent = along(&self.nodes[node as usize], self.nodes[parent as usize].axis);
            self.unlink(node);
            self.nodes[parent as usize].slack += extent;
        }
        self.forget(node);
    }

    fn forget(&mut self, node: u32) {
        let top = self.nodes[node as usize];
        if top.part == SPLIT {
            let mut child = top.child;
            while child != NONE {
                let after = self.nodes[child as usize].after;
                self.forget(child);
                child = after;
            }
        } else {
            self.used -= u64::from(top.width) * u64::from(top.height);
            self.parts -= 1;
        }
        self.vacate(node);
    }
}

fn along(node: &Node, axis: Axis) -> u32 {
    match axis {
        Axis::X => node.width,
        Axis::Y => node.height,
    }
}

/// Width and height of what is so large along the axis and so large across it.
fn oriented(axis: Axis, along: u32, across: u32) -> (u32, u32) {
    match axis {
        Axis::X => (along, across),
        Axis::Y => (across, along),
    }
}

fn reduce(node: &mut Node, axis: Axis, by: u32) {
    match axis {
        Axis::X => node.width -= by,
        Axis::Y => node.height -= by,
    }
}
