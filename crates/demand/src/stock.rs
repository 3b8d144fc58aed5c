//! The stock document: what lies on the rack, what can be bought, what is left over.

mod file;
mod read;
mod write;

use measure::{Length, Money, Size};
use trade::Units;

pub use read::StockFault;

/// The version of the document's form that this program reads.
pub const STOCK_VERSION: u32 = 1;

/// What there is to cut from.
///
/// Shape:  an entry with a count lies on the rack; one without can be bought, as many as needed.
/// Units:  exact lengths; costs in one currency for each material.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stock {
    /// What a bare number in the document meant.
    pub units: Units,
    /// What may be bought beside the entries that say so.
    pub buy: Buy,
    /// The number the next label takes; left out: one more than the highest of its letter.
    pub next_label: Option<u32>,
    /// Whole sticks.
    pub sticks: Vec<StickStock>,
    /// Whole sheets.
    pub sheets: Vec<SheetStock>,
    /// Remnants.
    pub remnants: Vec<RemnantStock>,
    /// How materials are cut, where it is not as the shop's settings say.
    pub cuts: Vec<CutStock>,
}

/// What may be bought for a material of which no entry can be bought.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Buy {
    /// New stock in the catalogue's sizes.
    #[default]
    Catalogue,
    /// Nothing: the plan makes do with what is listed.
    Listed,
}

/// Whole sticks of one length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StickStock {
    /// Catalogue code.
    pub material: String,
    /// Colour, where it is another than the catalogue's.
    pub colour: Option<String>,
    /// From end to end.
    pub length: Length,
    /// How many lie on the rack; none: bought as needed.
    pub count: Option<u64>,
    /// What one costs.
    pub cost: Option<Money>,
    /// Sticks of one run match; none: unknown, each its own.
    pub run: Option<String>,
    /// Where they lie.
    pub bin: Option<String>,
    /// Cut off at the start and the end; none: the shop's habit.
    pub trim: Option<[Length; 2]>,
    /// Stretches that no part may touch, from the start.
    pub flaws: Vec<[Length; 2]>,
}

/// Whole sheets of one size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetStock {
    /// Catalogue code.
    pub material: String,
    /// Colour, where it is another than the catalogue's.
    pub colour: Option<String>,
    /// Width along the grain's or pattern's level, by height.
    pub size: Size,
    /// How many lie on the rack; none: bought as needed.
    pub count: Option<u64>,
    /// What one costs.
    pub cost: Option<Money>,
    /// Where they lie.
    pub bin: Option<String>,
    /// Cut off every edge; none: the shop's habit.
    pub trim: Option<Length>,
}

/// One remnant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RemnantStock {
    /// What is written on it.
    pub label: String,
    /// Catalogue code.
    pub material: String,
    /// Colour, where it is another than the catalogue's.
    pub colour: Option<String>,
    /// How large it is.
    pub extent: Extent,
    /// The run of a stick.
    pub run: Option<String>,
    /// Where it lies.
    pub bin: Option<String>,
    /// Cut off a stick's start and end; none: the shop's habit.
    pub trim: Option<[Length; 2]>,
    /// Stretches of a stick that no part may touch, from the start.
    pub flaws: Vec<[Length; 2]>,
}

/// How one material is cut.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutStock {
    /// Catalogue code.
    pub material: String,
    /// Width lost at each cut.
    pub kerf: Option<Length>,
    /// Cut off every edge of a new sheet.
    pub trim: Option<Length>,
    /// Narrowest strip that comes off cleanly; only where nothing is lost at a cut.
    pub least_strip: Option<Length>,
}

/// How large a piece of stock, a part or a remnant is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Extent {
    /// From end to end.
    Stick(Length),
    /// Width and height.
    Sheet(Size),
}

impl Extent {
    /// The exact size as text that reads back.
    pub fn exact(self, unit: measure::Unit) -> String {
        match self {
            Self::Stick(length) => length.exact(unit),
            Self::Sheet(size) => size.exact(unit),
        }
    }
}
