//! Art as measured: the smallest and the largest rectangle it can be taken for.

use measure::{Length, Size};
use trade::{Art, Job};
use working::{Axis, Given, Rule, Subject, Worked, Working};

use crate::trace::{WorkedSize, custom, geometry};

static SMALLEST: Rule = custom(
    "art.smallest",
    "covered edges are taken from the smallest reading, behind the deckle's valleys",
    "smallest = min(reading) - sum(valley)",
);
static LARGEST: Rule = custom(
    "art.largest",
    "floats and rabbets are taken from the largest reading, tip to tip",
    "largest = max(reading)",
);
static LEAN: Rule = geometry(
    "art.lean",
    "how far the art leans over its height, from its diagonals",
    "lean = half_down(abs(first × first - second × second) ÷ (2 × width))",
);

/// One piece of art, measured.
#[derive(Clone, Debug)]
pub struct ArtSizes {
    /// The rectangle a window must lie inside.
    pub smallest: WorkedSize,
    /// The rectangle a rabbet or a float must leave room for.
    pub largest: WorkedSize,
    /// Front to back.
    pub thickness: Length,
    /// The whole sheet where it is larger than the rectangle that matters.
    pub sheet: Option<Size>,
    /// How far it leans, where diagonals were taken.
    pub lean: Option<Worked<Length>>,
}

impl ArtSizes {
    /// The paper behind a window: the sheet, else the art at its smallest.
    pub fn behind_window(&self) -> Size {
        self.sheet.unwrap_or_else(|| self.smallest.size())
    }
}

/// Measures every piece of art of the job.
pub(crate) fn measure(job: &Job, working: &mut Working) -> Vec<ArtSizes> {
    job.art
        .iter()
        .enumerate()
        .map(|(i, art)| one(art, i, working))
        .collect()
}

fn one(art: &Art, index: usize, working: &mut Working) -> ArtSizes {
    let axes = [Axis::Width, Axis::Height].map(|axis| extremes(art, index, axis, working));
    let [width, height] = axes;
    let smallest = WorkedSize {
        width: width.0,
        height: height.0,
    };
    let largest = WorkedSize {
        width: width.1,
        height: height.1,
    };
    ArtSizes {
        smallest,
        largest,
        thickness: *art.thickness,
        sheet: art.sheet.map(|sheet| *sheet),
        lean: art
            .diagonals
            .map(|[a, b]| lean(index, *a, *b, smallest.width, working)),
    }
}

/// Smallest and largest along one axis.
fn extremes(
    art: &Art,
    index: usize,
    axis: Axis,
    working: &mut Working,
) -> (Worked<Length>, Worked<Length>) {
    let stated = match axis {
        Axis::Width => art.width,
        Axis::Height => art.height.unwrap_or(art.width),
    };
    let further = match axis {
        Axis::Width => &art.width_readings,
        Axis::Height => &art.height_readings,
    };
    let readings = || std::iter::once(*stated).chain(further.iter().map(|reading| **reading));
    let deckle = art.deckle.unwrap_or_default();
    let valleys = match axis {
        Axis::Width => [*deckle.left, *deckle.right],
        Axis::Height => [*deckle.top, *deckle.bottom],
    };
    let mut inputs: Vec<(&'static str, Given)> = readings()
        .map(|reading| ("reading", Given::job(reading)))
        .collect();
    let largest = readings().fold(*stated, Ord::max);
    let subject = |quantity| Subject::nth("art", index, quantity).along(axis);
    let largest = working.by(&LARGEST, subject("largest"), &inputs, largest);
    inputs.extend(valleys.map(|valley| ("valley", Given::job(valley))));
    let smallest = readings().fold(*stated, Ord::min) - valleys.into_iter().sum();
    (
        working.by(&SMALLEST, subject("smallest"), &inputs, smallest),
        largest,
    )
}

fn lean(
    index: usize,
    first: Length,
    second: Length,
    width: Worked<Length>,
    working: &mut Working,
) -> Worked<Length> {
    let square = |length: Length| i128::from(length.quanta()) * i128::from(length.quanta());
    let difference = (square(first) - square(second)).abs();
    let quanta = difference.div_euclid(i128::from(width.value.quanta().max(1)) * 2 * 2);
    let lean = i64::try_from(quanta).map_or(first.abs().max(second.abs()), Length::from_quanta);
    working.by(
        &LEAN,
        Subject::nth("art", index, "lean"),
        &[
            ("first", Given::job(first)),
            ("second", Given::job(second)),
            ("width", width.into()),
        ],
        lean,
    )
}
