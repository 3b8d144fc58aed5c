//! The sum that proves a cut sheet: pieces + kerf + trim + remnants + waste = stock.

use crate::cuts::{Counting, CutError};

/// What is added up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Extent {
    /// Lengths of a stick.
    Length,
    /// Areas of a sheet.
    Area,
}

/// Where the stock went.
///
/// Shape:  found one by one, none of them by subtraction.
/// Units:  counts, or squares of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutSums {
    /// What is added up.
    pub extent: Extent,
    /// The whole sheet or stick.
    pub stock: u128,
    /// What was wanted.
    pub pieces: u128,
    /// Gone into dust or the scored line.
    pub kerf: u128,
    /// Unusable edges.
    pub trim: u128,
    /// Kept.
    pub remnants: u128,
    /// Thrown away.
    pub waste: u128,
}

impl CutSums {
    /// Nothing yet.
    pub const fn none(extent: Extent) -> Self {
        Self {
            extent,
            stock: 0,
            pieces: 0,
            kerf: 0,
            trim: 0,
            remnants: 0,
            waste: 0,
        }
    }

    /// The sum of several sheets or sticks; none where it can't be held.
    #[must_use]
    pub fn with(self, other: Self, copies: u64) -> Option<Self> {
        let add = |sum: u128, more: u128| sum.checked_add(more.checked_mul(u128::from(copies))?);
        Some(Self {
            extent: self.extent,
            stock: add(self.stock, other.stock)?,
            pieces: add(self.pieces, other.pieces)?,
            kerf: add(self.kerf, other.kerf)?,
            trim: add(self.trim, other.trim)?,
            remnants: add(self.remnants, other.remnants)?,
            waste: add(self.waste, other.waste)?,
        })
    }

    /// The sum in the shop's units: `pieces 1 + kerf 2 + … = stock 9 sq in`.
    ///
    /// Units: areas to 0.1 sq in or 0.0001 m², rounded so that the printed numbers add up; lengths exact.
    /// Errors: none where a number can't be printed.
    pub fn sentence(&self, counting: &Counting) -> Option<String> {
        let parts = [self.pieces, self.kerf, self.trim, self.remnants, self.waste];
        let (printed, total, unit) = match self.extent {
            Extent::Area => {
                let total = counting.areas(&[parts.iter().sum()])?;
                (counting.areas(&parts)?, total, counting.area_unit())
            }
            Extent::Length => {
                let total = parts.iter().sum();
                let all: Vec<u128> = parts.into_iter().chain([total]).collect();
                let (mut all, unit) = counting.stretches(&all)?;
                let total = all.split_off(parts.len());
                (all, total, unit)
            }
        };
        let named = ["pieces", "kerf", "trim", "remnants", "waste"];
        let terms: Vec<String> = named
            .iter()
            .zip(&printed)
            .map(|(name, value)| format!("{name} {value}"))
            .collect();
        let sum = format!("{} = stock {} {unit}", terms.join(" + "), total.concat());
        Some(sum.trim_end().to_owned())
    }

    /// Refuses a sum that leaves something out, or cannot be printed.
    pub(crate) fn proven(self, on: &str, counting: &Counting) -> Result<Self, CutError> {
        let parts = self.pieces + self.kerf + self.trim + self.remnants + self.waste;
        if self.sentence(counting).is_none() {
            return Err(CutError::TooLong { on: on.to_owned() });
        }
        if parts == self.stock {
            return Ok(self);
        }
        let both = [parts, self.stock];
        let words = match self.extent {
            Extent::Area => counting.areas(&both),
            Extent::Length => counting.stretches(&both).map(|(words, _)| words),
        };
        match words.as_deref() {
            Some([parts, stock]) => Err(CutError::Unaccounted {
                on: on.to_owned(),
                parts: parts.clone(),
                stock: stock.clone(),
            }),
            _ => Err(CutError::TooLong { on: on.to_owned() }),
        }
    }
}
