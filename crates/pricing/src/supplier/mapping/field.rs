//! What a column may hold.

use serde::Deserialize;

/// What a column may hold, beside prices.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Field {
    /// The supplier's code.
    Code,
    /// Name.
    Name,
    /// Description.
    Description,
    /// Kind, in the list's own words.
    Kind,
    /// Composition class of a board.
    Class,
    /// Wood of a moulding.
    Wood,
    /// Colour for drawings.
    Colour,
    /// Family of colours.
    ColourFamily,
    /// Further words for its look, parted by commas.
    ColourWords,
    /// Thickness.
    Thickness,
    /// Full width of a moulding.
    Face,
    /// Full height of a moulding.
    Height,
    /// Rabbet width.
    Lip,
    /// Rabbet depth.
    RabbetDepth,
    /// Sheet sizes: `32 x 40`, several parted by semicolons.
    Sheet,
    /// Width of the sheet.
    SheetWidth,
    /// Height of the sheet.
    SheetHeight,
    /// Stick lengths, several parted by semicolons.
    Stick,
    /// Numbers it is bought in, several parted by semicolons.
    Packs,
    /// Whether it is still sold, in the list's own words.
    Discontinued,
    /// The currency of this row's prices.
    Currency,
    /// What else must be known.
    Note,
}

impl Field {
    /// The word a mapping has for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Code => "code",
            Self::Name => "name",
            Self::Description => "description",
            Self::Kind => "kind",
            Self::Class => "class",
            Self::Wood => "wood",
            Self::Colour => "colour",
            Self::ColourFamily => "colour_family",
            Self::ColourWords => "colour_words",
            Self::Thickness => "thickness",
            Self::Face => "face",
            Self::Height => "height",
            Self::Lip => "lip",
            Self::RabbetDepth => "rabbet_depth",
            Self::Sheet => "sheet",
            Self::SheetWidth => "sheet_width",
            Self::SheetHeight => "sheet_height",
            Self::Stick => "stick",
            Self::Packs => "packs",
            Self::Discontinued => "discontinued",
            Self::Currency => "currency",
            Self::Note => "note",
        }
    }
}
