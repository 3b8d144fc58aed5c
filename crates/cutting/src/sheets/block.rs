//! A cut-up sheet as a tree: every block is a piece, free, or split from edge to edge.
//!
//! In reduced units (see [`super::reduced`]): the kerf behind a block belongs to the block.

/// What a split divides.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(crate) enum Axis {
    /// Widths: the blocks stand side by side, the cuts run up.
    X,
    /// Heights: the blocks lie one on another, the cuts run across.
    Y,
}

impl Axis {
    pub(crate) fn other(self) -> Self {
        match self {
            Self::X => Self::Y,
            Self::Y => Self::X,
        }
    }
}

/// A rectangle of a sheet and what becomes of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Block {
    pub(crate) width: u32,
    pub(crate) height: u32,
    pub(crate) kind: Kind,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Exactly one piece of this part type, exactly as large as the block.
    Part { part: usize, turned: bool },
    /// Nothing.
    Free,
    /// Blocks from low to high: along the axis their sizes add up to this block's exactly,
    /// across it each is as large as this block. Free blocks stand for waste.
    Split { axis: Axis, blocks: Vec<Block> },
}

impl Block {
    pub(crate) fn free(width: u32, height: u32) -> Self {
        Self {
            width,
            height,
            kind: Kind::Free,
        }
    }

    /// Size along the axis.
    pub(crate) fn along(&self, axis: Axis) -> u32 {
        match axis {
            Axis::X => self.width,
            Axis::Y => self.height,
        }
    }

    /// How many blocks the tree has, itself among them.
    pub(crate) fn count(&self) -> usize {
        match &self.kind {
            Kind::Part { .. } | Kind::Free => 1,
            Kind::Split { blocks, .. } => 1 + blocks.iter().map(Self::count).sum::<usize>(),
        }
    }

    /// Calls for every part in the tree.
    pub(crate) fn each_part(&self, found: &mut impl FnMut(usize)) {
        match &self.kind {
            Kind::Part { part, .. } => found(*part),
            Kind::Free => {}
            Kind::Split { blocks, .. } => {
                for block in blocks {
                    block.each_part(found);
                }
            }
        }
    }
}
