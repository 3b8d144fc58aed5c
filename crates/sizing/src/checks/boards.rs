//! Boards and panes against the sheets they are cut from.

use std::sync::Arc;

use measure::Size;
use trade::{Key, Material};

use super::Bench;
use crate::brief::part_name;
use crate::fault::Fault;
use crate::sheets::{SheetSizes, stock_sheet};
use crate::sizes::Sizes;

impl Bench<'_, '_, '_> {
    /// Sheets larger than any in stock, or just over a smaller one.
    pub(super) fn boards(&mut self) {
        for (part, sheet) in sheets(self.sizes) {
            let stocked = |material: &&Arc<Material>| !material.sheets.is_empty();
            let Some(material) = sheet.material.as_ref().filter(stocked) else {
                continue;
            };
            let size = sheet.size.size();
            match stock_sheet(Some(material), size) {
                Some(found) => self.just_over(part, material, size, found),
                None => self.over_stock(part, material, size),
            }
        }
    }

    fn over_stock(&mut self, part: String, material: &Material, size: Size) {
        let largest = material
            .sheets
            .iter()
            .max_by_key(|sheet| sheet.area())
            .map(|sheet| **sheet)
            .unwrap_or_default();
        self.faults.push(Fault::refuse(
            "sheet.too_large",
            part,
            format!("it is {}", self.sides(size)),
            format!(
                "the largest sheet of {} is {}",
                material.title(),
                self.sides(largest)
            ),
            "Choose a material with larger sheets, or narrow the borders",
        ));
    }

    fn just_over(&mut self, part: String, material: &Arc<Material>, size: Size, found: Size) {
        let trim = self.brief.settings.length(Key::SheetTrim);
        let trimmed = stock_sheet(Some(material), size.narrow(trim));
        if let Some(smaller) = trimmed.filter(|sheet| sheet.area() < found.area()) {
            self.faults.push(Fault::warn(
                "sheet.just_over",
                part,
                format!("it is {}", self.sides(size)),
                format!("it just misses the {} sheet", self.sides(smaller)),
                format!("{} less would save a larger sheet", self.say(trim)),
            ));
        }
    }

    fn sides(&self, size: Size) -> String {
        format!("{} × {}", self.say(size.width), self.say(size.height))
    }
}

/// Every sheet of the piece with the name of its part, front to back within each kind.
fn sheets(sizes: &Sizes) -> impl Iterator<Item = (String, &SheetSizes)> {
    let mats = numbered("Mat", sizes.mats.iter().map(|mat| &mat.sheet));
    let mount = sizes.mount.iter().map(|mount| ("Mount".to_owned(), mount));
    let backing = numbered("Backing", sizes.backing.iter());
    let glazing = numbered("Glazing", sizes.glazing.iter().map(|pane| &pane.sheet));
    mats.chain(mount).chain(backing).chain(glazing)
}

fn numbered<'a>(
    kind: &'static str,
    sheets: impl ExactSizeIterator<Item = &'a SheetSizes>,
) -> impl Iterator<Item = (String, &'a SheetSizes)> {
    let count = sheets.len();
    sheets
        .enumerate()
        .map(move |(i, sheet)| (part_name(kind, i, count), sheet))
}
