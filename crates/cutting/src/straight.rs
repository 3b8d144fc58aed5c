//! Equal pieces from one sheet by straight cuts from edge to edge.

/// How many pieces of one size a sheet yields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Yield {
    /// Pieces side by side across the sheet, unturned.
    pub across: u64,
    /// Pieces one behind the other along the sheet, unturned.
    pub along: u64,
    /// All pieces, unturned: across times along.
    pub unturned: u128,
    /// Pieces side by side across the sheet, each turned a quarter.
    pub turned_across: u64,
    /// Pieces one behind the other along the sheet, each turned a quarter.
    pub turned_along: u64,
    /// All pieces, each turned a quarter.
    pub turned: u128,
    /// The most that two stages of cuts yield: the sheet into strips, all across it or all along
    /// it, then each strip into pieces as wide as itself, turned or not from strip to strip.
    pub best_two_stage: u128,
}

/// How many pieces of one size a sheet yields by straight cuts.
///
/// n pieces and the n − 1 cuts between them: n = ⌊(room + kerf) ÷ (piece + kerf)⌋
///
/// Shape:  `sheet` and `piece` are (across, along); `trim` is taken off every edge of the sheet,
///         so room = side − 2 × trim. A sheet smaller than its trim yields nothing.
/// Units:  any, the same for all four.
/// Errors: panics when a side of the piece is zero.
/// Source: arithmetic; the best of two stages is proven by trying every number of strips.
///
/// ```
/// let found = cutting::straight_yield((32, 40), (11, 14), 0, 0);
/// assert_eq!((found.unturned, found.turned, found.best_two_stage), (4, 6, 6));
/// ```
pub fn straight_yield(sheet: (u64, u64), piece: (u64, u64), kerf: u64, trim: u64) -> Yield {
    assert!(piece.0 > 0 && piece.1 > 0, "a piece has two sides");
    let room = |side: u64| side.saturating_sub(trim).saturating_sub(trim);
    let (width, height) = (room(sheet.0), room(sheet.1));
    let count = |room, part| fit(u128::from(room), part, kerf);
    let (across, along) = (count(width, piece.0), count(height, piece.1));
    let (turned_across, turned_along) = (count(width, piece.1), count(height, piece.0));
    let cut_along = best_strips(width, [(piece.0, along), (piece.1, turned_along)], kerf);
    let cut_across = best_strips(height, [(piece.1, across), (piece.0, turned_across)], kerf);
    Yield {
        across,
        along,
        unturned: u128::from(across) * u128::from(along),
        turned_across,
        turned_along,
        turned: u128::from(turned_across) * u128::from(turned_along),
        best_two_stage: cut_along.max(cut_across),
    }
}

/// How many parts of one length fit side by side, a cut between neighbours.
fn fit(room: u128, part: u64, kerf: u64) -> u64 {
    let kerf = u128::from(kerf);
    let parts = (room + kerf) / (u128::from(part) + kerf);
    u64::try_from(parts).expect("no more parts than units of room")
}

/// The most pieces out of strips of two widths, each yielding so many pieces.
fn best_strips(room: u64, kinds: [(u64, u64); 2], kerf: u64) -> u128 {
    // Fewer tries: count the wider strips, and fill up with the narrower.
    let [wide, narrow] = if kinds[0].0 >= kinds[1].0 {
        kinds
    } else {
        [kinds[1], kinds[0]]
    };
    let most = fit(u128::from(room), wide.0, kerf);
    let filled = |strips: u64| {
        let taken = u128::from(strips) * (u128::from(wide.0) + u128::from(kerf));
        // The cut behind the last wide strip may fall off the sheet's end; then nothing is left.
        let left = u128::from(room).saturating_sub(taken);
        let others = fit(left, narrow.0, kerf);
        u128::from(strips) * u128::from(wide.1) + u128::from(others) * u128::from(narrow.1)
    };
    (0..=most).map(filled).max().unwrap_or(0)
}

#[cfg(test)]
mod tests;
