//! What drops from a window, as stock for smaller parts of the same board.

use measure::{Length, Size};
use sizing::{Outline, Window};
use trade::{Key, Settings};

/// What makes a fallout usable.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Usable {
    edge: Length,
    short: Length,
    long: Length,
}

impl Usable {
    /// By the shop's habits.
    pub fn of(settings: &Settings) -> Self {
        Self {
            edge: settings.length(Key::FalloutEdge),
            short: settings.length(Key::FalloutShort),
            long: settings.length(Key::FalloutLong),
        }
    }

    /// The rectangle that drops from a window, with square edges.
    ///
    /// usable = the lesser of face and foot − 2 × edge
    ///
    /// Shape:  the board's grain keeps its direction. Curved and many-sided windows drop no
    ///         rectangle and count for none.
    /// Errors: none where it is smaller than the least that returns to stock.
    pub fn fallout(self, window: &Window) -> Option<Size> {
        if window.outline != Outline::Rectangle {
            return None;
        }
        let (face, foot) = (window.face.size(), window.foot.size());
        self.hole(Size::new(
            face.width.min(foot.width),
            face.height.min(foot.height),
        ))
    }

    /// The rectangle that drops from a hole cut square.
    pub fn hole(self, hole: Size) -> Option<Size> {
        let size = hole.shrink(self.edge);
        let (least_short, least_long) = (self.short.min(self.long), self.short.max(self.long));
        let kept = size.short_side() >= least_short && size.long_side() >= least_long;
        (kept && size.short_side().is_positive()).then_some(size)
    }
}
