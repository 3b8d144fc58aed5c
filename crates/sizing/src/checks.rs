//! Every mistake that sizes can reveal, gathered in one pass.

mod boards;
mod boxed;
mod depth;
mod frame;
mod glazing;
mod mats;
mod measured;

use crate::brief::Brief;
use crate::fault::Fault;
use crate::sizes::Sizes;

/// Adds what is wrong to `faults`.
pub(crate) fn check(brief: &Brief<'_>, sizes: &Sizes, faults: &mut Vec<Fault>) {
    let mut bench = Bench {
        brief,
        sizes,
        faults,
    };
    bench.measured();
    bench.mats();
    bench.boards();
    bench.glazing();
    bench.boxed();
    bench.depth();
    bench.frame();
}

/// A piece so large that lengths worked out from it can't be held.
pub(crate) fn beyond_holding(brief: &Brief<'_>, sizes: &Sizes) -> Option<Fault> {
    let longest = sizes
        .outside
        .size()
        .long_side()
        .max(sizes.package.size().long_side());
    (longest > measure::Length::LIMIT).then(|| {
        Fault::refuse(
            "limit.length",
            "Piece",
            format!("its parts add up to {}", brief.say(longest)),
            format!(
                "the longest that is worked with is {}",
                brief.say(measure::Length::LIMIT)
            ),
            "Check the units and the number of openings",
        )
    })
}

/// Where a piece is looked over.
struct Bench<'a, 'b, 'f> {
    brief: &'a Brief<'b>,
    sizes: &'a Sizes,
    faults: &'f mut Vec<Fault>,
}

impl Bench<'_, '_, '_> {
    fn say(&self, length: measure::Length) -> String {
        self.brief.say(length)
    }

    /// A length as it would be typed back into the job.
    fn typed(&self, length: measure::Length) -> String {
        length.exact(self.brief.unit())
    }
}
