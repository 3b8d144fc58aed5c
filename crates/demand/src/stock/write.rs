//! Writing a stock document.

use measure::{Length, Unit};

use super::file::{Cut, File, Remnant, Sheet, Stick, Written};
use super::{CutStock, Extent, RemnantStock, STOCK_VERSION, SheetStock, StickStock, Stock};

impl Stock {
    /// Writes the document as TOML; reading it back gives the same stock.
    pub fn to_toml(&self) -> String {
        let pen = Pen(self.units.unit());
        let file = File {
            stock: STOCK_VERSION,
            units: self.units,
            buy: self.buy,
            next_label: self.next_label,
            stick: self.sticks.iter().map(|entry| pen.stick(entry)).collect(),
            sheet: self.sheets.iter().map(|entry| pen.sheet(entry)).collect(),
            remnant: self
                .remnants
                .iter()
                .map(|entry| pen.remnant(entry))
                .collect(),
            cut: self.cuts.iter().map(|entry| pen.cut(entry)).collect(),
        };
        toml::to_string_pretty(&file).expect("a stock document writes as TOML")
    }
}

/// Writes lengths in this unit.
struct Pen(Unit);

impl Pen {
    fn length(&self, length: Length) -> Written {
        Written(length.exact(self.0))
    }

    fn pair(&self, [a, b]: [Length; 2]) -> Vec<Written> {
        vec![self.length(a), self.length(b)]
    }

    fn pairs(&self, pairs: &[[Length; 2]]) -> Vec<Vec<Written>> {
        pairs.iter().map(|pair| self.pair(*pair)).collect()
    }

    fn stick(&self, entry: &StickStock) -> Stick {
        Stick {
            material: entry.material.clone(),
            colour: entry.colour.clone(),
            length: self.length(entry.length),
            count: entry.count,
            cost: entry.cost.map(|cost| cost.to_string()),
            run: entry.run.clone(),
            bin: entry.bin.clone(),
            trim: entry.trim.map(|trim| self.pair(trim)),
            flaws: self.pairs(&entry.flaws),
        }
    }

    fn sheet(&self, entry: &SheetStock) -> Sheet {
        Sheet {
            material: entry.material.clone(),
            colour: entry.colour.clone(),
            size: entry.size.exact(self.0),
            count: entry.count,
            cost: entry.cost.map(|cost| cost.to_string()),
            bin: entry.bin.clone(),
            trim: entry.trim.map(|trim| self.length(trim)),
        }
    }

    fn remnant(&self, entry: &RemnantStock) -> Remnant {
        let (length, size) = match entry.extent {
            Extent::Stick(length) => (Some(self.length(length)), None),
            Extent::Sheet(size) => (None, Some(size.exact(self.0))),
        };
        Remnant {
            label: entry.label.clone(),
            material: entry.material.clone(),
            colour: entry.colour.clone(),
            length,
            size,
            run: entry.run.clone(),
            bin: entry.bin.clone(),
            trim: entry.trim.map(|trim| self.pair(trim)),
            flaws: self.pairs(&entry.flaws),
        }
    }

    fn cut(&self, entry: &CutStock) -> Cut {
        let written = |length: Option<Length>| length.map(|length| self.length(length));
        Cut {
            material: entry.material.clone(),
            kerf: written(entry.kerf),
            trim: written(entry.trim),
            least_strip: written(entry.least_strip),
        }
    }
}
