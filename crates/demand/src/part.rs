//! Parts to cut, each with its exact size and a name that leads back to its job.

use measure::{Length, Size};

/// Strips of one job that are cut as one kind of piece.
///
/// Shape:  as many copies as the cutting room's piece has; the strips of one copy are cut side by
///         side from one stretch, a cut between neighbours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rails {
    /// Which job, counted from 0.
    pub job: usize,
    /// Which part: `Frame`, `Mat 1, fillet`.
    pub part: String,
    /// The strips of each copy.
    pub copies: Vec<Vec<Strip>>,
}

/// One strip, exactly.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Strip {
    /// Which side: `left`, `top`, `side 3`.
    pub side: String,
    /// Its longest edge, without what is lost at the cut.
    pub length: Length,
}

/// Sheets of one job that are cut as one kind of piece.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Panel {
    /// Which job, counted from 0.
    pub job: usize,
    /// Which part: `Mat 1`, `Backing`.
    pub part: String,
    /// What tells the copies apart: `front`, `back`; empty for the only one.
    pub copies: Vec<String>,
    /// The rectangle that is cut; a polygon is cut out of it.
    pub size: Size,
    /// Whether grain and pattern let it lie turned.
    pub turn: bool,
    /// What drops from each window, bevel and edges taken off, the largest first.
    pub falls: Vec<Size>,
}

/// A part that no stock is planned for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unplanned {
    /// Which job, counted from 0.
    pub job: usize,
    /// Which part.
    pub part: String,
    /// Why not, and what would change it.
    pub why: &'static str,
}

/// A name with the side or copy it is of.
pub(crate) fn named(part: &str, side: &str) -> String {
    if side.is_empty() {
        part.to_owned()
    } else {
        format!("{part}, {side}")
    }
}
