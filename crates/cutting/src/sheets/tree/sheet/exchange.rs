//! Sheets from drafts and for drafts.

use super::super::super::{Axis, Block, Kind};
use super::super::terms::Terms;
use super::{NONE, Node, SPLIT, Sheet, VACANT};

impl Sheet {
    /// The sheet as it is handed out.
    pub(in super::super) fn block(&self) -> Block {
        if self.root == NONE {
            return Block::free(self.width, self.height);
        }
        self.block_of(self.root)
    }

    fn block_of(&self, at: u32) -> Block {
        let node = &self.nodes[at as usize];
        let (width, height) = (node.width, node.height);
        if node.part != SPLIT {
            let kind = Kind::Part {
                part: node.part as usize,
                turned: node.turned,
            };
            return Block {
                width,
                height,
                kind,
            };
        }
        let mut blocks = Vec::new();
        let mut child = node.child;
        while child != NONE {
            blocks.push(self.block_of(child));
            child = self.nodes[child as usize].after;
        }
        if node.slack > 0 {
            let (wide, high) = match node.axis {
                Axis::X => (node.slack, height),
                Axis::Y => (width, node.slack),
            };
            blocks.push(Block::free(wide, high));
        }
        Block {
            width,
            height,
            kind: Kind::Split {
                axis: node.axis,
                blocks,
            },
        }
    }

    /// Takes over a sheet from a draft.
    pub(in super::super) fn load(&mut self, terms: &Terms, stock: usize, block: &Block) {
        self.open(terms, stock, block.width, block.height);
        match &block.kind {
            Kind::Free => {}
            Kind::Part { part, turned } => {
                self.root = self.load_part(*part, *turned, block);
            }
            Kind::Split { axis, blocks } => {
                let root = self.new_split(*axis, 1, (block.width, block.height));
                self.load_into(root, blocks);
                let Node { child, slack, .. } = self.nodes[root as usize];
                if child == NONE {
                    self.vacate(root);
                } else if slack == 0 && self.is_only(child) {
                    self.nodes[child as usize].parent = NONE;
                    self.vacate(root);
                    self.root = child;
                } else {
                    self.root = root;
                }
            }
        }
        if self.root != NONE && self.nodes[self.root as usize].part == SPLIT {
            let stage = terms.root_stage(self.nodes[self.root as usize].axis);
            self.restage(self.root, stage);
        }
        self.refresh(terms);
    }

    fn load_part(&mut self, part: usize, turned: bool, block: &Block) -> u32 {
        self.used += u64::from(block.width) * u64::from(block.height);
        self.parts += 1;
        let part = u32::try_from(part).unwrap_or(VACANT - 1);
        self.new_part(part, turned, (block.width, block.height))
    }

    fn load_into(&mut self, split: u32, blocks: &[Block]) {
        let axis = self.nodes[split as usize].axis;
        for block in blocks {
            match &block.kind {
                Kind::Free => {}
                Kind::Part { part, turned } => {
                    let leaf = self.load_part(*part, *turned, block);
                    self.append(split, leaf);
                }
                Kind::Split { axis: same, blocks } if *same == axis => {
                    self.load_into(split, blocks);
                }
                Kind::Split {
                    axis: other,
                    blocks,
                } => {
                    let inner = self.new_split(*other, 1, (block.width, block.height));
                    self.load_into(inner, blocks);
                    let Node { child, slack, .. } = self.nodes[inner as usize];
                    if child == NONE {
                        self.vacate(inner);
                        continue;
                    }
                    self.append(split, inner);
                    if slack == 0 && self.is_only(child) {
                        self.collapse(inner);
                    }
                }
            }
        }
    }
}
