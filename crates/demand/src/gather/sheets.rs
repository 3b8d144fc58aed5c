//! Glazing, mats, walls and backs: rectangles of sheet.

use std::sync::Arc;

use measure::Size;
use sizing::{FilletUse, SheetSizes};
use trade::{Key, Material};

use super::sticks::Ring;
use super::{Desk, NO_CODE, ROLL, faces, numbered};
use crate::part::{Panel, named};
use crate::slant::across_corners_up;
use crate::ware::WareKind;

/// Sides of a rectangle.
const RECTANGLE: u32 = 4;

impl Desk<'_> {
    pub(super) fn glazing(&mut self) {
        let sizes = self.sizes;
        for (i, pane) in sizes.glazing.iter().enumerate() {
            let part = numbered("Glazing", i, sizes.glazing.len());
            let copies = faces(sizes.double_sided);
            self.sheet(&part, &pane.sheet, WareKind::Glazing, copies);
        }
    }

    pub(super) fn mats(&mut self) {
        let sizes = self.sizes;
        let copies = faces(sizes.double_sided);
        for (i, mat) in sizes.mats.iter().enumerate() {
            let part = numbered("Mat", i, sizes.mats.len());
            let size = self.rectangle_round(mat.sheet.size.size());
            let falls = mat.windows.iter().map(|window| self.usable.fallout(window));
            let falls = largest_first(falls.flatten().collect());
            let panel = self.panel(&part, size, copies.clone(), falls);
            let colour = mat.colour.as_ref();
            self.place(mat.sheet.material.as_ref(), WareKind::Board, colour, panel);
            for (w, fillet) in mat.fillets.iter().enumerate() {
                let name = numbered(&format!("{part}, fillet"), w, mat.fillets.len());
                for face in &copies {
                    self.mat_fillet(named(&name, face), fillet);
                }
            }
        }
    }

    fn mat_fillet(&mut self, part: String, fillet: &FilletUse) {
        let ring = Ring {
            long: fillet.long.size(),
            width: fillet.face + fillet.tuck,
            legs: None,
        };
        self.fillet(part, fillet.material.as_ref(), &ring);
    }

    pub(super) fn walls(&mut self) {
        let Some(walls) = self.sizes.walls else {
            return;
        };
        let material = self.sizes.wall_material.clone();
        for (part, long) in [("Wall, long", walls.long), ("Wall, short", walls.short)] {
            let size = Size::new(long.value, walls.height.value);
            let copies = vec!["1".to_owned(), "2".to_owned()];
            let panel = self.panel(part, size, copies, Vec::new());
            self.place(material.as_ref(), WareKind::Backing, None, panel);
        }
    }

    pub(super) fn back(&mut self) {
        let sizes = self.sizes;
        let one = || vec![String::new()];
        if let Some(sink) = &sizes.sink {
            let size = self.rectangle_round(sizes.package.size());
            let falls = self.usable.hole(sink.hollow.size()).into_iter().collect();
            let panel = self.panel("Sink", size, one(), falls);
            self.place(sink.material.as_ref(), WareKind::Board, None, panel);
        }
        if let Some(mount) = &sizes.mount {
            self.sheet("Mount", mount, WareKind::Board, one());
        }
        for (i, back) in sizes.backing.iter().enumerate() {
            let part = numbered("Backing", i, sizes.backing.len());
            self.sheet(&part, back, WareKind::Backing, one());
        }
        self.strainer();
    }

    /// What is torn or cut from a roll.
    pub(super) fn off_the_roll(&mut self) {
        if self.sizes.wrap.is_some() {
            self.leave("Cloth", ROLL);
        }
        if self.sizes.cover.is_some() {
            self.leave("Dust cover", ROLL);
        }
    }

    fn sheet(&mut self, part: &str, sheet: &SheetSizes, usual: WareKind, copies: Vec<String>) {
        let size = self.rectangle_round(sheet.size.size());
        let panel = self.panel(part, size, copies, Vec::new());
        self.place(sheet.material.as_ref(), usual, None, panel);
    }

    fn panel(&self, part: &str, size: Size, copies: Vec<String>, falls: Vec<Size>) -> Panel {
        Panel {
            job: self.job,
            part: part.to_owned(),
            copies,
            size,
            turn: true,
            falls,
        }
    }

    fn place(
        &mut self,
        material: Option<&Arc<Material>>,
        usual: WareKind,
        colour: Option<&String>,
        panel: Panel,
    ) {
        let Some(material) = material else {
            self.leave(panel.part, NO_CODE);
            return;
        };
        let use_falls = self.settings.choice(Key::UseFallouts) == "use";
        let panel = Panel {
            turn: material.one_way != Some(true),
            falls: if use_falls { panel.falls } else { Vec::new() },
            ..panel
        };
        self.heap(material, usual, colour).panels.push(panel);
    }

    /// The rectangle a part of the piece's shape is cut out of.
    ///
    /// Shape:  a polygon's bottom side lies level. With an even number of sides it is as high as
    ///         its flats are apart; with a multiple of four as wide, too; else as wide as across
    ///         its corners. With an odd number both measures are across its corners at most.
    fn rectangle_round(&self, size: Size) -> Size {
        let sides = self.sizes.sides;
        if sides.is_multiple_of(RECTANGLE) {
            return size;
        }
        let corners = across_corners_up(size.width, sides);
        if sides.is_multiple_of(2) {
            Size::new(corners, size.height)
        } else {
            Size::square(corners)
        }
    }
}

fn largest_first(mut falls: Vec<Size>) -> Vec<Size> {
    falls.sort_by_key(|size| std::cmp::Reverse(size.area()));
    falls
}
