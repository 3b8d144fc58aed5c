//! What a measured thickness of glass is called.

use std::sync::LazyLock;

use measure::Length;
use serde::Deserialize;
use trade::SourcedStatus;

use crate::table::{Text, Trust, lasting, rows, status};

/// A thickness of ASTM C1036. Neighbouring ranges do not touch.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct AstmGlass {
    /// As the standard names it.
    #[serde(deserialize_with = "lasting")]
    pub designation: Text,
    /// As the trade does.
    #[serde(deserialize_with = "lasting")]
    pub traditional_name: Text,
    /// Nominal, mm.
    pub nominal_mm: f64,
    /// True thickness at least, mm.
    pub true_min_mm: f64,
    /// True thickness at most, mm.
    pub true_max_mm: f64,
    #[serde(deserialize_with = "status")]
    max_status: SourcedStatus,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
}

/// A thickness of EN 572-2.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct EnGlass {
    /// Nominal, mm.
    pub nominal_mm: f64,
    /// How far it may be off either way, mm.
    pub tolerance_mm: f64,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    status: SourcedStatus,
}

/// The thicknesses of ASTM C1036.
pub static ASTM: LazyLock<Vec<AstmGlass>> =
    LazyLock::new(|| rows(include_str!("../../data/glass_thickness_astm.csv")));
/// The thicknesses of EN 572-2.
pub static EN: LazyLock<Vec<EnGlass>> =
    LazyLock::new(|| rows(include_str!("../../data/glass_thickness_en.csv")));

impl AstmGlass {
    /// Where its range is from; the weaker of its two ends.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.max_status,
        }
    }
}

impl EnGlass {
    /// Where it is from.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.status,
        }
    }
}

/// What ASTM C1036 calls a sheet of this true thickness; none between its ranges.
///
/// Shape:  limits included, to the nearest quantum.
pub fn astm_designation(thickness: Length) -> Option<&'static AstmGlass> {
    ASTM.iter()
        .find(|glass| lies_between(thickness, glass.true_min_mm, glass.true_max_mm))
}

/// The nominal thickness of EN 572-2 that a sheet of this true thickness meets; none between them.
pub fn en_nominal(thickness: Length) -> Option<&'static EnGlass> {
    EN.iter().find(|glass| {
        let (from, to) = (
            glass.nominal_mm - glass.tolerance_mm,
            glass.nominal_mm + glass.tolerance_mm,
        );
        lies_between(thickness, from, to)
    })
}

fn lies_between(thickness: Length, from_mm: f64, to_mm: f64) -> bool {
    let [from, to] = [from_mm, to_mm].map(|mm| Length::nearest_from_mm(mm).unwrap_or_default());
    (from..=to).contains(&thickness)
}
