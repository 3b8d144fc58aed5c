//! Sheet sizes of the ISO series.

use measure::{Length, Size};

/// A series of sheet sizes: each next size is the last one cut in half.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetSeries {
    /// A0 is a square metre.
    A,
    /// Between two A sizes.
    B,
    /// Envelopes, between A and B.
    C,
}

impl SheetSeries {
    /// The series of this letter.
    pub fn named(letter: &str) -> Option<Self> {
        match letter {
            "A" => Some(Self::A),
            "B" => Some(Self::B),
            "C" => Some(Self::C),
            _ => None,
        }
    }

    /// Width and height of its largest sheet, millimetres.
    const fn first(self) -> (i64, i64) {
        match self {
            Self::A => (841, 1189),
            Self::B => (1000, 1414),
            Self::C => (917, 1297),
        }
    }

    /// The sheet of this number, upright.
    ///
    /// next = (half of the long side, down to a millimetre) × the short side
    ///
    /// Units:  whole millimetres; a sheet may be off by 1.5 to 3 mm (from memory).
    /// Source: ISO 216 and ISO 269 (from memory).
    /// Example: A4 is 210 × 297 mm. A number past 10 gives none: the series end there.
    pub fn sheet(self, number: u32) -> Option<Size> {
        let (mut width, mut height) = self.first();
        if number > LAST {
            return None;
        }
        for _ in 0..number {
            (width, height) = (height.div_euclid(2), width);
        }
        Some(Size::new(Length::mm(width), Length::mm(height)))
    }
}

/// The last number of every series.
const LAST: u32 = 10;
