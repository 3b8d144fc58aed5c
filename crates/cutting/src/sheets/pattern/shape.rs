//! A layout as an order of parts, before it is given sizes.

use super::super::{Axis, Block, Kind, Reduced};

/// Parts and rows of them; where the waste lies follows when it is dressed in a block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Shape {
    Part {
        part: usize,
        turned: bool,
    },
    /// Shapes along the axis, in a block at least `across` the other way.
    Row {
        axis: Axis,
        across: u32,
        shapes: Vec<Shape>,
    },
}

/// A part as it may lie, with what it is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Lying {
    pub(super) part: usize,
    pub(super) turned: bool,
    pub(super) width: u32,
    pub(super) height: u32,
    /// Width and height before they were counted in a coarser grid.
    pub(super) true_size: (u32, u32),
    pub(super) worth: u64,
    /// How many there may be.
    pub(super) count: u64,
}

impl Lying {
    pub(super) fn shape(&self) -> Shape {
        Shape::Part {
            part: self.part,
            turned: self.turned,
        }
    }

    /// The same on a sheet that is turned.
    pub(super) fn transposed(self) -> Self {
        Self {
            width: self.height,
            height: self.width,
            true_size: (self.true_size.1, self.true_size.0),
            ..self
        }
    }
}

impl Shape {
    /// A row of shapes; rows along the same axis within it are dissolved.
    pub(super) fn row(axis: Axis, shapes: Vec<Shape>) -> Self {
        let mut flat = Vec::with_capacity(shapes.len());
        for shape in shapes {
            match shape {
                Shape::Row {
                    axis: same,
                    across: 0,
                    shapes,
                } if same == axis => flat.extend(shapes),
                other => flat.push(other),
            }
        }
        Shape::Row {
            axis,
            across: 0,
            shapes: flat,
        }
    }

    /// Axes exchanged; what is turned stays turned.
    pub(super) fn transposed(self) -> Self {
        match self {
            Self::Part { .. } => self,
            Self::Row {
                axis,
                across,
                shapes,
            } => Self::Row {
                axis: axis.other(),
                across,
                shapes: shapes.into_iter().map(Self::transposed).collect(),
            },
        }
    }

    /// Least width and height.
    pub(super) fn size(&self, reduced: &Reduced) -> (u32, u32) {
        match self {
            Self::Part { part, turned } => {
                let part = &reduced.parts[*part];
                if *turned {
                    (part.height, part.width)
                } else {
                    (part.width, part.height)
                }
            }
            Self::Row {
                axis,
                across,
                shapes,
            } => {
                let (mut width, mut height) = (0_u32, 0_u32);
                for shape in shapes {
                    let (w, h) = shape.size(reduced);
                    match axis {
                        Axis::X => {
                            width = width.saturating_add(w);
                            height = height.max(h);
                        }
                        Axis::Y => {
                            width = width.max(w);
                            height = height.saturating_add(h);
                        }
                    }
                }
                match axis {
                    Axis::X => (width, height.max(*across)),
                    Axis::Y => (width.max(*across), height),
                }
            }
        }
    }

    /// Calls for every part.
    pub(super) fn each_part(&self, found: &mut impl FnMut(usize)) {
        match self {
            Self::Part { part, .. } => found(*part),
            Self::Row { shapes, .. } => {
                for shape in shapes {
                    shape.each_part(found);
                }
            }
        }
    }

    /// How many of each part it holds: part and number, ascending.
    pub(super) fn uses(&self) -> Vec<(usize, u64)> {
        let mut parts = Vec::new();
        self.each_part(&mut |part| parts.push(part));
        tally(parts)
    }

    /// Without what `keep` refuses; `None` when nothing stays.
    pub(super) fn kept(self, keep: &mut impl FnMut(usize) -> bool) -> Option<Self> {
        match self {
            Self::Part { part, .. } => keep(part).then_some(self),
            Self::Row {
                axis,
                across,
                shapes,
            } => {
                let shapes: Vec<Shape> = shapes
                    .into_iter()
                    .filter_map(|shape| shape.kept(keep))
                    .collect();
                (!shapes.is_empty()).then_some(Self::Row {
                    axis,
                    across,
                    shapes,
                })
            }
        }
    }

    /// The block tree on a sheet of this size; `None` where it does not fit.
    pub(super) fn dressed(&self, width: u32, height: u32, reduced: &Reduced) -> Option<Block> {
        let (own_width, own_height) = self.size(reduced);
        if own_width > width || own_height > height {
            return None;
        }
        let kind = match self {
            Self::Part { part, turned } => {
                if own_width < width {
                    return cut_off(self, Axis::X, own_width, (width, height), reduced);
                }
                if own_height < height {
                    return cut_off(self, Axis::Y, own_height, (width, height), reduced);
                }
                Kind::Part {
                    part: *part,
                    turned: *turned,
                }
            }
            Self::Row { axis, shapes, .. } => {
                return dressed_row(*axis, shapes, (width, height), reduced);
            }
        };
        Some(Block {
            width,
            height,
            kind,
        })
    }
}

fn dressed_row(
    axis: Axis,
    shapes: &[Shape],
    whole: (u32, u32),
    reduced: &Reduced,
) -> Option<Block> {
    let room = along(whole, axis);
    let own = |shape: &Shape| along(shape.size(reduced), axis);
    if let [only] = shapes
        && own(only) == room
    {
        return only.dressed(whole.0, whole.1, reduced);
    }
    let mut blocks = Vec::with_capacity(shapes.len() + 1);
    let mut left = room;
    for shape in shapes {
        let size = own(shape);
        left -= size;
        let (w, h) = sized(axis, size, whole);
        blocks.push(shape.dressed(w, h, reduced)?);
    }
    if left > 0 {
        let (w, h) = sized(axis, left, whole);
        blocks.push(Block::free(w, h));
    }
    Some(Block {
        width: whole.0,
        height: whole.1,
        kind: Kind::Split { axis, blocks },
    })
}

fn along(size: (u32, u32), axis: Axis) -> u32 {
    match axis {
        Axis::X => size.0,
        Axis::Y => size.1,
    }
}

fn sized(axis: Axis, along: u32, whole: (u32, u32)) -> (u32, u32) {
    match axis {
        Axis::X => (along, whole.1),
        Axis::Y => (whole.0, along),
    }
}

/// A shape and the waste beyond it along one axis.
fn cut_off(
    shape: &Shape,
    axis: Axis,
    own: u32,
    whole: (u32, u32),
    reduced: &Reduced,
) -> Option<Block> {
    let (w, h) = sized(axis, own, whole);
    let inner = shape.dressed(w, h, reduced)?;
    let rest = along(whole, axis) - own;
    let (free_w, free_h) = sized(axis, rest, whole);
    Some(Block {
        width: whole.0,
        height: whole.1,
        kind: Kind::Split {
            axis,
            blocks: vec![inner, Block::free(free_w, free_h)],
        },
    })
}

/// Things and how often each occurs, ascending.
pub(super) fn tally(mut parts: Vec<usize>) -> Vec<(usize, u64)> {
    parts.sort_unstable();
    let mut uses: Vec<(usize, u64)> = Vec::new();
    for part in parts {
        match uses.last_mut() {
            Some((last, times)) if *last == part => *times += 1,
            _ => uses.push((part, 1)),
        }
    }
    uses
}

/// How many of each part a block holds.
pub(super) fn block_uses(block: &Block) -> Vec<(usize, u64)> {
    let mut parts = Vec::new();
    block.each_part(&mut |part| parts.push(part));
    tally(parts)
}

/// Whether a block keeps to the stages and the least strip.
pub(super) fn lawful(block: &Block, reduced: &Reduced) -> bool {
    strips_wide_enough(block, reduced.least_strip) && staged(block, None, 0, reduced)
}

fn strips_wide_enough(block: &Block, least: u32) -> bool {
    match &block.kind {
        Kind::Split { axis, blocks } => blocks
            .iter()
            .all(|inner| inner.along(*axis) >= least && strips_wide_enough(inner, least)),
        _ => true,
    }
}

fn staged(block: &Block, last: Option<Axis>, stage: u32, reduced: &Reduced) -> bool {
    let Kind::Split { axis, blocks } = &block.kind else {
        return true;
    };
    let stages = reduced.stages;
    let stage = match last {
        None if stages.first.is_some_and(|first| first != *axis) => 2,
        None => 1,
        Some(last) if last == *axis => stage,
        Some(_) => stage.saturating_add(1),
    };
    if stage <= stages.most {
        return blocks
            .iter()
            .all(|inner| staged(inner, Some(*axis), stage, reduced));
    }
    let parts = blocks
        .iter()
        .filter(|inner| matches!(inner.kind, Kind::Part { .. }));
    let free = blocks.iter().filter(|inner| inner.kind == Kind::Free);
    stages.final_trim
        && stage == stages.most + 1
        && parts.count() == 1
        && free.count() == blocks.len() - 1
}
