//! What lies in a rabbet, one layer behind the other.

use std::sync::Arc;

use measure::Length;
use sizing::{LayerKind, SheetSizes, Sizes};
use trade::Material;

use crate::piece::Piece;

/// A layer where it lies, in millimetres behind the rabbet's front.
pub(super) struct Layer {
    pub what: LayerKind,
    pub index: usize,
    pub material: Option<Arc<Material>>,
    pub thickness: Length,
    pub top: f64,
    pub bottom: f64,
}

/// The layers in a member's rabbet: of its stack, else (its depth not being known) as they are sized.
pub(super) fn in_rabbet(piece: Piece<'_>, index: usize) -> Vec<Layer> {
    let Some(stack) = &piece.sizes.members[index].stack else {
        return unstacked(piece.sizes, index);
    };
    stack
        .layers
        .iter()
        .map(|layer| Layer {
            what: layer.what,
            index: layer.index,
            material: layer.material.clone(),
            thickness: layer.thickness.value,
            top: (layer.behind - layer.thickness.value).approx_mm(),
            bottom: layer.behind.approx_mm(),
        })
        .collect()
}

/// Layers one behind the other.
#[derive(Default)]
struct Pile(Vec<Layer>);

impl Pile {
    fn sheet(&mut self, what: LayerKind, index: usize, sheet: &SheetSizes) {
        self.lay(what, index, sheet.material.as_ref(), sheet.thickness);
    }

    fn lay(
        &mut self,
        what: LayerKind,
        index: usize,
        material: Option<&Arc<Material>>,
        thickness: Length,
    ) {
        let top = self.0.last().map_or(0.0, |layer| layer.bottom);
        let bottom = top + thickness.approx_mm();
        self.0.push(Layer {
            what,
            index,
            material: material.cloned(),
            thickness,
            top,
            bottom,
        });
    }
}

fn unstacked(sizes: &Sizes, index: usize) -> Vec<Layer> {
    let mut pile = Pile::default();
    for (i, pane) in sizes.glazing.iter().enumerate() {
        if pane.held_in == index {
            pile.sheet(LayerKind::Glazing, i, &pane.sheet);
        }
    }
    if let Some(within) = sizes.members.get(index + 1) {
        let height = within.height.unwrap_or_default();
        let material = within.material.as_ref();
        pile.lay(LayerKind::Member, index + 1, material, height);
    } else {
        package(sizes, &mut pile);
    }
    pile.0
}

/// What lies behind the glazing of the innermost member.
fn package(sizes: &Sizes, pile: &mut Pile) {
    if let Some(spacer) = &sizes.spacer {
        let material = spacer.material.as_ref();
        pile.lay(LayerKind::Spacer, 0, material, spacer.thickness);
    }
    if let Some(walls) = &sizes.walls {
        let material = sizes.wall_material.as_ref();
        pile.lay(LayerKind::Walls, 0, material, walls.height.value);
    }
    for (i, mat) in sizes.mats.iter().enumerate() {
        pile.sheet(LayerKind::Mat, i, &mat.sheet);
    }
    match &sizes.sink {
        Some(sink) => pile.lay(LayerKind::Sink, 0, sink.material.as_ref(), sink.depth),
        None if sizes.walls.is_none() => pile.lay(LayerKind::Art, 0, None, sizes.art[0].thickness),
        None => {}
    }
    if let Some(mount) = &sizes.mount {
        pile.sheet(LayerKind::Mount, 0, mount);
    }
    for (i, back) in sizes.backing.iter().enumerate() {
        pile.sheet(LayerKind::Backing, i, back);
    }
}

/// Where the front of the member within lies behind the rabbet's front.
pub(super) fn front_of_within(layers: &[Layer]) -> f64 {
    layers
        .iter()
        .find(|layer| layer.what == LayerKind::Member)
        .map_or(0.0, |layer| layer.top)
}

/// Where art without thickness, or standing free, rests: before the mount, the backing, or the mats
/// of the back.
pub(super) fn art_plane(layers: &[Layer]) -> f64 {
    let mut seen = Vec::new();
    for layer in layers {
        let behind = matches!(layer.what, LayerKind::Mount | LayerKind::Backing)
            || (layer.what == LayerKind::Mat && seen.contains(&layer.index));
        if behind {
            return layer.top;
        }
        if layer.what == LayerKind::Mat {
            seen.push(layer.index);
        }
    }
    layers.last().map_or(0.0, |layer| layer.bottom)
}
