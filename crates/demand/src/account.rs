//! Where all of the stock went.

use std::fmt;

use measure::{Area, Length, Unit};

use crate::fault::Fault;

/// The account of one material: everything that was cut up, and what became of it.
///
/// pieces + cuts + trim + remnants + waste + rounding = stock
///
/// Shape:  a part counts whole, what drops from its window included; a fallout that is cut up
///         counts as stock once more. Remnants not worth keeping are waste. Each side is summed on its own: stock from what was taken, pieces from the exact sizes
///         of the parts, the rest from where they lie.
/// Units:  quanta of 1/16 000 mm for sticks, square quanta for sheets; exact.
/// Source: conservation.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Account {
    /// Whether it counts areas.
    pub of_sheets: bool,
    /// All sticks or sheets taken, and all fallouts cut up.
    pub stock: i128,
    /// All parts, at their exact sizes.
    pub pieces: i128,
    /// Lost at cuts.
    pub cuts: i128,
    /// Ends and edges trimmed off.
    pub trim: i128,
    /// Worth keeping.
    pub remnants: i128,
    /// Everything else.
    pub waste: i128,
    /// What parts were rounded up and stock was rounded down by.
    pub rounding: i128,
}

impl Account {
    /// Everything that became of the stock.
    pub fn parts(&self) -> i128 {
        self.pieces + self.cuts + self.trim + self.remnants + self.waste + self.rounding
    }

    /// Of all stock taken, what neither became a part nor is worth keeping.
    pub fn lost(&self) -> Share {
        Share {
            part: self.stock - self.pieces - self.remnants,
            whole: self.stock,
        }
    }

    /// Of all stock taken, what became parts.
    pub fn used(&self) -> Share {
        Share {
            part: self.pieces,
            whole: self.stock,
        }
    }

    /// An amount of this account as people read it: `118 7/8 in`, `5.38 sq ft`.
    ///
    /// Units:  lengths exact; areas to the nearest hundredth of a square foot, or
    ///         ten-thousandth of a square metre.
    pub fn say(&self, amount: i128, unit: Unit) -> String {
        const OF_FEET: u32 = 2;
        const OF_METRES: u32 = 4;
        if self.of_sheets {
            let area = Area::from_square_quanta(amount);
            return if unit.is_inch_family() {
                area.print_square_feet_nearest(OF_FEET)
            } else {
                area.print_m2_nearest(OF_METRES)
            };
        }
        i64::try_from(amount).map_or_else(
            |_| format!("{amount} quanta"),
            |quanta| Length::from_quanta(quanta).exact(unit),
        )
    }

    /// Holds the account to its law.
    ///
    /// Errors: both sides and the gap between them.
    pub(crate) fn check(&self, ware: &str, unit: Unit) -> Result<(), Fault> {
        let gap = self.stock - self.parts();
        if gap == 0 {
            return Ok(());
        }
        Err(Fault::Unbalanced {
            ware: ware.to_owned(),
            parts: self.say(self.parts(), unit),
            stock: self.say(self.stock, unit),
            gap: self.say(gap, unit),
        })
    }
}

/// An exact ratio.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Share {
    /// The part.
    pub part: i128,
    /// The whole; nothing where no stock was taken.
    pub whole: i128,
}

impl Share {
    /// `17.4 %`: to the nearest tenth of a hundredth, ties up; `0.0 %` of nothing.
    pub fn percent_nearest(self) -> String {
        const TENTHS: i128 = 1000;
        if self.whole <= 0 {
            return "0.0 %".to_owned();
        }
        let doubled = self.part * TENTHS * 2 + self.whole;
        let tenths = doubled.div_euclid(self.whole * 2);
        format!("{}.{} %", tenths.div_euclid(10), tenths.rem_euclid(10))
    }
}

impl fmt::Display for Share {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.percent_nearest())
    }
}

#[cfg(test)]
mod tests;
