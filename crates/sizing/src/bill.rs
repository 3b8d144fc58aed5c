//! The bill of materials: every part to cut, with its area or length.

use std::sync::Arc;

use measure::{Area, Length, Size};
use trade::Material;

use crate::brief::part_name;
use crate::sheets::{SheetSizes, stock_sheet};
use crate::sizes::Sizes;

/// One line of the bill.
#[derive(Clone, Debug)]
pub struct BillLine {
    /// The part: `Mat 1`, `Frame`.
    pub part: String,
    /// Its material, where it has a catalogue code.
    pub material: Option<Arc<Material>>,
    /// How many alike.
    pub count: u32,
    /// A sheet's size as cut, or a strip's length.
    pub takes: Takes,
}

/// What a part takes.
#[derive(Clone, Debug)]
pub enum Takes {
    /// A sheet.
    Sheet {
        /// As cut.
        size: Size,
        /// Of one such part; a polygon's true area.
        area: Area,
        /// The smallest stock sheet it fits, where the catalogue lists any.
        stock: Option<Size>,
    },
    /// A length of stick or strip, with its cuts.
    Strip {
        /// In all.
        length: Length,
    },
}

/// Gathers the bill.
pub(crate) fn bill(sizes: &Sizes) -> Vec<BillLine> {
    let mut list = List {
        sizes,
        lines: Vec::new(),
    };
    list.members();
    list.front();
    list.mats();
    list.walls();
    list.back();
    list.lines
}

/// A bill being written.
struct List<'a> {
    sizes: &'a Sizes,
    lines: Vec<BillLine>,
}

impl List<'_> {
    fn add(&mut self, part: String, material: Option<&Arc<Material>>, count: u32, takes: Takes) {
        self.lines.push(BillLine {
            part,
            material: material.cloned(),
            count,
            takes,
        });
    }

    fn strip(
        &mut self,
        part: String,
        material: Option<&Arc<Material>>,
        count: u32,
        length: Length,
    ) {
        self.add(part, material, count, Takes::Strip { length });
    }

    fn sheet(&mut self, part: String, sheet: &SheetSizes, count: u32) {
        let size = sheet.size.size();
        let takes = Takes::Sheet {
            size,
            area: self.sizes.shape_area(size),
            stock: stock_sheet(sheet.material.as_ref(), size),
        };
        self.add(part, sheet.material.as_ref(), count, takes);
    }

    /// A sheet that has no stock of its own: cloth, cover, wall.
    fn plain(
        &mut self,
        part: &str,
        material: Option<&Arc<Material>>,
        count: u32,
        size: Size,
        area: Area,
    ) {
        let takes = Takes::Sheet {
            size,
            area,
            stock: None,
        };
        self.add(part.to_owned(), material, count, takes);
    }

    /// How often what lies before the art is cut.
    fn faces(&self) -> u32 {
        if self.sizes.double_sided { 2 } else { 1 }
    }

    fn members(&mut self) {
        for member in &self.sizes.members {
            let material = member.material.as_ref();
            self.strip(member.name.clone(), material, 1, member.stick.used.value);
            if let Some(fillet) = &member.fillet {
                let part = format!("{}, fillet", member.name);
                self.strip(part, fillet.material.as_ref(), 1, fillet.stick.used.value);
            }
        }
    }

    fn front(&mut self) {
        let (sizes, faces) = (self.sizes, self.faces());
        for (i, pane) in sizes.glazing.iter().enumerate() {
            let part = part_name("Glazing", i, sizes.glazing.len());
            self.sheet(part, &pane.sheet, faces);
        }
        if let Some(spacer) = &sizes.spacer {
            let material = spacer.material.as_ref();
            self.strip("Spacer".to_owned(), material, faces, spacer.length);
        }
    }

    fn mats(&mut self) {
        let (sizes, faces) = (self.sizes, self.faces());
        for (i, mat) in sizes.mats.iter().enumerate() {
            let part = part_name("Mat", i, sizes.mats.len());
            self.sheet(part.clone(), &mat.sheet, faces);
            for fillet in &mat.fillets {
                let length = fillet.stick.used.value;
                self.strip(
                    format!("{part}, fillet"),
                    fillet.material.as_ref(),
                    faces,
                    length,
                );
            }
        }
    }

    fn walls(&mut self) {
        let Some(walls) = &self.sizes.walls else {
            return;
        };
        let material = self.sizes.wall_material.as_ref();
        for (part, long) in [("Wall, long", walls.long), ("Wall, short", walls.short)] {
            let size = Size::new(long.value, walls.height.value);
            self.plain(part, material, 2, size, size.area());
        }
    }

    fn back(&mut self) {
        let sizes = self.sizes;
        if let Some(sink) = &sizes.sink {
            let size = sizes.package.size();
            let area = sizes.shape_area(size);
            self.plain("Sink", sink.material.as_ref(), 1, size, area);
        }
        if let Some(mount) = &sizes.mount {
            self.sheet("Mount".to_owned(), mount, 1);
        }
        for (i, back) in sizes.backing.iter().enumerate() {
            self.sheet(part_name("Backing", i, sizes.backing.len()), back, 1);
        }
        if let Some(strainer) = &sizes.strainer {
            let length = strainer.length.value;
            self.strip("Strainer".to_owned(), None, 1, length);
        }
        if let Some(wrap) = &sizes.wrap {
            let size = wrap.cloth.size();
            self.plain("Cloth", None, 1, size, size.area());
        }
        if let Some(cover) = &sizes.cover {
            let size = cover.size();
            self.plain("Dust cover", None, 1, size, sizes.shape_area(size));
        }
    }
}
