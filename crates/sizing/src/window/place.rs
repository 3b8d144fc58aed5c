//! Where windows stand: arranged at one level, spread through the mats, framed by the borders.

mod arrange;

use measure::{Length, Size};
use trade::Arrangement;
use working::{Axis, Given, Rule, Subject, Worked, Working};

use super::{Loose, Window, above, innermost};
use crate::art::ArtSizes;
use crate::borders::{BorderSizes, Sides, borders};
use crate::brief::Brief;
use crate::fault::Fault;
use crate::trace::{WorkedSize, geometry};

static FIRST: Rule = geometry(
    "place.first",
    "windows start at the border, further in by what stands outside them",
    "place = border + inside + offset",
);
static INSIDE: Rule = geometry(
    "place.inside",
    "a window below is centred in the one above it",
    "place = above + half_down(outer - inner)",
);
static AROUND: Rule = geometry(
    "place.around",
    "a window above starts outside those below it",
    "place = min(below) - half_down(outer - span)",
);
static REST: Rule = geometry(
    "place.rest",
    "what is left beyond a window; on the side seen from the back, where it starts",
    "rest = package - place - window",
);
static PACKAGE: Rule = geometry(
    "package.mats",
    "the outermost mat is its windows and borders, and the package is as large as the mat",
    "package = before + windows + after",
);

/// All windows of all mats in their places, and the package they make.
pub(crate) struct Placed {
    /// Per mat, front to back.
    pub mats: Vec<Vec<Window>>,
    pub borders: BorderSizes,
    pub package: WorkedSize,
}

/// A rectangle without a trace, used while arranging.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Spot {
    pub x: Length,
    pub y: Length,
    pub size: Size,
}

impl Spot {
    /// The smallest rectangle round all of `spots`.
    pub fn round(spots: impl IntoIterator<Item = Self>) -> Option<Self> {
        spots.into_iter().reduce(|a, b| {
            let (x, y) = (a.x.min(b.x), a.y.min(b.y));
            let right = (a.x + a.size.width).max(b.x + b.size.width);
            let bottom = (a.y + a.size.height).max(b.y + b.size.height);
            Self {
                x,
                y,
                size: Size::new(right - x, bottom - y),
            }
        })
    }

    fn start(self, axis: Axis) -> Length {
        match axis {
            Axis::Width => self.x,
            Axis::Height => self.y,
        }
    }
}

/// One mat's windows while they are being arranged.
struct Level {
    windows: Vec<Loose>,
    /// For each window, the windows of the mat below that it spans.
    spans: Vec<Vec<usize>>,
    spots: Vec<Spot>,
}

/// Sizes and places every window.
///
/// `given` is the package where it is given instead of worked out.
pub(crate) fn place(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    slopes: &[Worked<Length>],
    lip_cover: Option<Worked<Length>>,
    given: Option<WorkedSize>,
    working: &mut Working,
    faults: &mut Vec<Fault>,
) -> Placed {
    let last = brief.mats.len() - 1;
    let windows: Vec<Loose> = (0..brief.openings.len())
        .map(|i| innermost(brief, art, slopes[last], i, working, faults))
        .collect();
    let arranged_at = (0..last)
        .rev()
        .find(|&i| !brief.mats[i].mat.around.is_empty())
        .map_or(0, |i| i + 1);
    let mut levels = vec![Level::single(windows)];
    for index in (arranged_at..last).rev() {
        let next = levels[levels.len() - 1].cover(brief, index, slopes, working, faults);
        levels.push(next);
    }
    let base = levels.len() - 1;
    let sizes: Vec<Size> = levels[base]
        .windows
        .iter()
        .map(|loose| loose.face.size())
        .collect();
    levels[base].spots = arrange::spots(brief, &sizes, faults);
    for index in (0..arranged_at).rev() {
        let next = levels[levels.len() - 1].cover(brief, index, slopes, working, faults);
        levels.push(next);
    }
    let whole = (arranged_at == 0)
        .then(|| arrange::cells(brief, &sizes))
        .flatten();
    let round = || Spot::round(levels[levels.len() - 1].spots.iter().copied());
    let Some(extent) = whole.or_else(round) else {
        unreachable!("a mat has at least one opening");
    };
    let top = &levels[levels.len() - 1].windows;
    let extent_size = arrange::extent(brief, top, extent.size, working);
    let layout = brief.job.layout.as_ref();
    let free = layout.is_some_and(|layout| layout.arrange == Arrangement::Free);
    let borders = borders(
        brief,
        extent_size,
        free.then_some(extent),
        lip_cover,
        given,
        working,
    );
    let package = given.unwrap_or_else(|| package(extent_size, &borders.cut, working));
    let mats = settle(levels, base, extent, &borders.cut, package, working);
    Placed {
        mats,
        borders,
        package,
    }
}

fn package(extent: WorkedSize, cut: &Sides<Worked<Length>>, working: &mut Working) -> WorkedSize {
    let mut one = |axis: Axis, before: Worked<Length>, after: Worked<Length>| {
        let windows = extent.along(axis);
        let inputs = [
            ("before", before.into()),
            ("windows", windows.into()),
            ("after", after.into()),
        ];
        let value = before.value + windows.value + after.value;
        working.by(
            &PACKAGE,
            Subject::of("package", "size").along(axis),
            &inputs,
            value,
        )
    };
    WorkedSize {
        width: one(Axis::Width, cut.left, cut.right),
        height: one(Axis::Height, cut.top, cut.bottom),
    }
}

impl Level {
    fn single(windows: Vec<Loose>) -> Self {
        let count = windows.len();
        Self {
            windows,
            spans: (0..count).map(|i| vec![i]).collect(),
            spots: Vec::new(),
        }
    }

    /// The windows of the mat of `index`, over this level's.
    fn cover(
        &self,
        brief: &Brief<'_>,
        index: usize,
        slopes: &[Worked<Length>],
        working: &mut Working,
        faults: &mut Vec<Fault>,
    ) -> Self {
        let spans = groups(brief, index, &self.windows, faults);
        let mut windows = Vec::with_capacity(spans.len());
        let mut spots = Vec::new();
        for (w, span) in spans.iter().enumerate() {
            let below: Vec<&Loose> = span.iter().map(|&i| &self.windows[i]).collect();
            let round = Spot::round(span.iter().filter_map(|&i| self.spots.get(i).copied()));
            let size = match (below.len(), round) {
                (1, _) | (_, None) => below[0].face.size(),
                (_, Some(round)) => round.size,
            };
            let loose = above(brief, index, &below, size, slopes, (w, working));
            if let Some(round) = round {
                let out = |outer: Length, inner: Length| (outer - inner).half_down();
                let face = loose.face.size();
                spots.push(Spot {
                    x: round.x - out(face.width, round.size.width),
                    y: round.y - out(face.height, round.size.height),
                    size: face,
                });
            }
            windows.push(loose);
        }
        Self {
            windows,
            spans,
            spots,
        }
    }
}

/// Which windows of the mat below each window of this mat spans.
fn groups(
    brief: &Brief<'_>,
    index: usize,
    below: &[Loose],
    faults: &mut Vec<Fault>,
) -> Vec<Vec<usize>> {
    let around = &brief.mats[index].mat.around;
    let mut taken = vec![false; below.len()];
    let mut spans = Vec::new();
    for names in around {
        let mut span = Vec::new();
        for name in names {
            let found = below.iter().position(|loose| {
                loose
                    .openings
                    .iter()
                    .any(|&o| brief.openings[o].name == *name)
            });
            match found {
                Some(i) if !taken[i] => {
                    taken[i] = true;
                    span.push(i);
                }
                Some(_)
                    if span.iter().any(|&i| {
                        below[i]
                            .openings
                            .iter()
                            .any(|&o| brief.openings[o].name == *name)
                    }) => {}
                Some(_) => faults.push(around_fault(
                    index,
                    name,
                    "is in two groups",
                    "Name it once",
                )),
                None => faults.push(around_fault(
                    index,
                    name,
                    "is the name of no opening",
                    "Give an [[opening]] that name",
                )),
            }
        }
        if !span.is_empty() {
            spans.push(span);
        }
    }
    spans.extend((0..below.len()).filter(|&i| !taken[i]).map(|i| vec![i]));
    spans
}

fn around_fault(index: usize, name: &str, found: &str, cure: &str) -> Fault {
    Fault::refuse(
        "mat.around",
        format!("Mat {}, around", index + 1),
        format!("\"{name}\" {found}"),
        "",
        cure,
    )
}

/// A level in its place: per window, x and y.
type Places = Vec<[Worked<Length>; 2]>;

/// Gives every window its worked place, from the arranged level outwards and inwards.
fn settle(
    levels: Vec<Level>,
    base: usize,
    extent: Spot,
    cut: &Sides<Worked<Length>>,
    package: WorkedSize,
    working: &mut Working,
) -> Vec<Vec<Window>> {
    let last = levels.len() - 1;
    // Levels run from the innermost mat up; mats are numbered front to back.
    let mat = |level: usize| last - level;
    let mut places: Vec<Places> = vec![Vec::new(); levels.len()];
    places[base] = first_places(&levels[base], mat(base), extent, cut, working);
    for level in base + 1..levels.len() {
        places[level] = outer_places(&levels, level, mat(level), &places[level - 1], working);
    }
    for level in (0..base).rev() {
        places[level] = inner_places(&levels, level, mat(level), &places[level + 1], working);
    }
    let mut mats: Vec<Vec<Window>> = levels
        .into_iter()
        .zip(places)
        .enumerate()
        .map(|(level, (windows, places))| {
            finished(windows.windows, &places, mat(level), package, working)
        })
        .collect();
    mats.reverse();
    mats
}

fn subject(mat: usize, window: usize, axis: Axis) -> Subject {
    let quantity = match axis {
        Axis::Width => "x",
        Axis::Height => "y",
    };
    Subject::nth("mat", mat, quantity).within("window", window)
}

fn first_places(
    level: &Level,
    mat: usize,
    extent: Spot,
    cut: &Sides<Worked<Length>>,
    working: &mut Working,
) -> Places {
    let round = Spot::round(level.spots.iter().copied()).unwrap_or(extent);
    level
        .spots
        .iter()
        .enumerate()
        .map(|(w, spot)| {
            [(Axis::Width, cut.left), (Axis::Height, cut.top)].map(|(axis, border)| {
                let inside = round.start(axis) - extent.start(axis);
                let offset = spot.start(axis) - round.start(axis);
                let inputs = [
                    ("border", border.into()),
                    ("inside", Given::job(inside)),
                    ("offset", Given::job(offset)),
                ];
                working.by(
                    &FIRST,
                    subject(mat, w, axis),
                    &inputs,
                    border.value + inside + offset,
                )
            })
        })
        .collect()
}

fn outer_places(
    levels: &[Level],
    level: usize,
    mat: usize,
    below: &Places,
    working: &mut Working,
) -> Places {
    let this = &levels[level];
    this.spans
        .iter()
        .enumerate()
        .map(|(w, span)| {
            let round = Spot::round(span.iter().map(|&i| levels[level - 1].spots[i]));
            let face = this.windows[w].face;
            [Axis::Width, Axis::Height].map(|axis| {
                let pick = usize::from(axis == Axis::Height);
                let starts = span.iter().map(|&i| below[i][pick]);
                let first = starts
                    .clone()
                    .map(|start| start.value)
                    .min()
                    .unwrap_or_default();
                let spanned = round.map_or_else(Length::default, |round| {
                    crate::trace::along(round.size, axis)
                });
                let outer = face.along(axis);
                let mut inputs: Vec<(&'static str, Given)> =
                    starts.map(|start| ("below", start.into())).collect();
                inputs.push(("outer", outer.into()));
                inputs.push(("span", Given::job(spanned)));
                let value = first - (outer.value - spanned).half_down();
                working.by(&AROUND, subject(mat, w, axis), &inputs, value)
            })
        })
        .collect()
}

fn inner_places(
    levels: &[Level],
    level: usize,
    mat: usize,
    above: &Places,
    working: &mut Working,
) -> Places {
    let upper = &levels[level + 1];
    (0..levels[level].windows.len())
        .map(|w| {
            // Below the arranged level every window has exactly one above it.
            let over = upper
                .spans
                .iter()
                .position(|span| span.contains(&w))
                .unwrap_or_default();
            [Axis::Width, Axis::Height].map(|axis| {
                let start = above[over][usize::from(axis == Axis::Height)];
                let outer = upper.windows[over].face.along(axis);
                let inner = levels[level].windows[w].face.along(axis);
                let inputs = [
                    ("above", start.into()),
                    ("outer", outer.into()),
                    ("inner", inner.into()),
                ];
                let value = start.value + (outer.value - inner.value).half_down();
                working.by(&INSIDE, subject(mat, w, axis), &inputs, value)
            })
        })
        .collect()
}

fn finished(
    windows: Vec<Loose>,
    places: &Places,
    mat: usize,
    package: WorkedSize,
    working: &mut Working,
) -> Vec<Window> {
    let finish = |(w, (loose, [x, y])): (usize, (Loose, &[Worked<Length>; 2]))| {
        let mut rest = |quantity, axis: Axis, place: Worked<Length>| {
            let (whole, window) = (package.along(axis), loose.face.along(axis));
            let inputs = [
                ("package", whole.into()),
                ("place", place.into()),
                ("window", window.into()),
            ];
            let subject = Subject::nth("mat", mat, quantity).within("window", w);
            working.by(
                &REST,
                subject,
                &inputs,
                whole.value - place.value - window.value,
            )
        };
        let (right, bottom) = (
            rest("right", Axis::Width, *x),
            rest("bottom", Axis::Height, *y),
        );
        Window {
            openings: loose.openings,
            face: loose.face,
            foot: loose.foot,
            outline: loose.outline,
            x: *x,
            y: *y,
            right,
            bottom,
            fillet: loose.fillet,
        }
    };
    windows
        .into_iter()
        .zip(places)
        .enumerate()
        .map(finish)
        .collect()
}
