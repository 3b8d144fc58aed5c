//! Thickness and density of boards.

use std::sync::LazyLock;

use serde::Deserialize;
use trade::SourcedStatus;

use crate::refusal::Refusal;
use crate::table::{Text, Trust, lasting, rows, status};

/// A board of the table.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct BoardMass {
    /// What it is.
    #[serde(deserialize_with = "lasting")]
    pub board: Text,
    /// Thickness, mm.
    pub thickness_mm: f64,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Mass of a square metre, kg.
    pub area_mass_kg_m2: f64,
    #[serde(deserialize_with = "lasting")]
    source_id: Text,
    #[serde(deserialize_with = "status")]
    density_status: SourcedStatus,
}

/// The table of boards.
pub static BOARDS: LazyLock<Vec<BoardMass>> =
    LazyLock::new(|| rows(include_str!("../../data/board_mass.csv")));

impl BoardMass {
    /// Where its density is from; that of paper boards is typical, give or take 12 %.
    pub const fn trust(&self) -> Trust {
        Trust {
            source: self.source_id,
            status: self.density_status,
        }
    }
}

/// The board of this name.
///
/// Errors: no such board; those there are.
pub fn board_mass(name: &str) -> Result<&'static BoardMass, Refusal> {
    let found = BOARDS.iter().find(|board| board.board == name);
    found.ok_or_else(|| Refusal::unknown("board", name, BOARDS.iter().map(|board| board.board)))
}
