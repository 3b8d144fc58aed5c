//! Windows: their size at face and foot in every mat, and where they stand.

mod place;

use measure::{Length, Size};
use trade::{Bevel, Key};
use working::{Axis, Given, Rule, Subject, Worked, Working};

use crate::art::ArtSizes;
use crate::brief::{Brief, FilletBrief, MatBrief};
use crate::fault::Fault;
use crate::outline::{Misfit, Outline};
use crate::trace::{Fact, WorkedSize, along, both, custom, geometry};
use crate::turn::bevel_run_nearest;

pub(crate) use place::{Placed, Spot, place};

pub(crate) static COVERED: Rule = geometry(
    "window.covered",
    "a window that covers the art is smaller than it by the overlap on each side",
    "window = art - 2 × overlap",
);
pub(crate) static FLOATED: Rule = geometry(
    "window.floated",
    "a window round floated art is larger than it by the margin on each side",
    "window = art + 2 × margin",
);
static STATED: Rule = geometry(
    "window.stated",
    "the window is as the job says",
    "window = stated",
);
static FACE_FROM_FOOT: Rule = geometry(
    "window.face_from_foot",
    "measured at the foot, the face stands outside it by the bevel",
    "face = foot + 2 × slope",
);
static FACE_FROM_FOOT_REVERSE: Rule = geometry(
    "window.face_from_foot_reverse",
    "measured at the foot of a reverse bevel, the face stands inside it",
    "face = foot - 2 × slope",
);
static FOOT: Rule = geometry(
    "window.foot",
    "the foot of the bevel stands inside the face edge by the slope on each side",
    "foot = face - 2 × slope",
);
static FOOT_REVERSE: Rule = geometry(
    "window.foot_reverse",
    "a reverse bevel opens towards the back",
    "foot = face + 2 × slope",
);
static SLOPE: Rule = geometry(
    "window.slope",
    "how far a bevel runs in plan: the board's thickness at 45°, else thickness over the tangent",
    "slope = thickness ÷ tan(bevel)",
);
static SLOPE_45: Rule = geometry(
    "window.slope_45",
    "at 45° a bevel runs as far in plan as the board is thick",
    "slope = thickness",
);
static REVEALED: Rule = geometry(
    "window.revealed",
    "each mat's window stands back from the one below by the reveal on each side",
    "window = below + 2 × reveal",
);
static REVEAL_FROM_SEEN: Rule = custom(
    "reveal.from_seen",
    "a reveal measured as the colour seen is that and the slope of the mat above",
    "reveal = seen + slope",
);
static REVEAL_SEEN: Rule = geometry(
    "reveal.seen",
    "the colour seen is the reveal less the slope of the mat above",
    "seen = reveal - slope",
);
static FILLET_WINDOW: Rule = geometry(
    "fillet.window",
    "a fillet's window is its sight and its face on each side",
    "window = fillet_sight + 2 × fillet_face",
);
static FILLET_LONG: Rule = geometry(
    "fillet.long",
    "a fillet's long points are the window and its tuck on each side",
    "long = window + 2 × tuck",
);

/// The window of one mat over one or several openings.
#[derive(Clone, Debug)]
pub struct Window {
    /// Indexes of the openings seen through it.
    pub openings: Vec<usize>,
    /// Size at the face of the board.
    pub face: WorkedSize,
    /// Size at the foot of the bevel.
    pub foot: WorkedSize,
    /// Its outline at the face.
    pub outline: Outline,
    /// Left edge at the face, from the package's left edge, front view.
    pub x: Worked<Length>,
    /// Top edge at the face, from the package's top edge.
    pub y: Worked<Length>,
    /// From its right edge to the package's: seen from the back, where its left edge stands.
    pub right: Worked<Length>,
    /// From its bottom edge to the package's.
    pub bottom: Worked<Length>,
    /// The fillet inside it.
    pub fillet: Option<WindowFillet>,
}

impl Window {
    /// Left edge of the window seen from the back, from the package's edge.
    pub fn back_x(&self) -> Worked<Length> {
        self.right
    }

    /// The edge next to the art: the fillet's sight, or the narrower of face and foot.
    pub fn edge(&self) -> WorkedSize {
        if let Some(fillet) = &self.fillet {
            return fillet.sight;
        }
        if self.foot.width.value < self.face.width.value {
            self.foot
        } else {
            self.face
        }
    }
}

/// A fillet in a mat window.
#[derive(Clone, Copy, Debug)]
pub struct WindowFillet {
    /// Its sight: the opening it leaves.
    pub sight: WorkedSize,
    /// Its long points, hidden behind the mat.
    pub long: WorkedSize,
}

/// A window before it has a place.
#[derive(Clone, Debug)]
pub(crate) struct Loose {
    pub openings: Vec<usize>,
    pub face: WorkedSize,
    pub foot: WorkedSize,
    pub outline: Outline,
    pub fillet: Option<WindowFillet>,
}

/// How far each mat's bevel runs in plan, front to back; zero for a square cut.
pub(crate) fn slopes(brief: &Brief<'_>, working: &mut Working) -> Vec<Worked<Length>> {
    let bevel = brief.settings.angle(Key::BevelAngle);
    brief
        .mats
        .iter()
        .enumerate()
        .map(|(i, mat)| {
            let subject = Subject::nth("mat", i, "slope");
            let thickness = ("thickness", mat.thickness_given());
            if !mat.slopes() {
                return working.by(
                    &STATED_SLOPE,
                    subject,
                    &[("stated", Given::job(Length::ZERO))],
                    Length::ZERO,
                );
            }
            if bevel == measure::Angle::degrees(45) {
                // geometry: the bevel whose run equals its rise
                return working.by(&SLOPE_45, subject, &[thickness], mat.thickness.value);
            }
            let run = bevel_run_nearest(mat.thickness.value, bevel);
            let bevel = ("bevel", Given::setting(Key::BevelAngle.id(), bevel));
            working.by(&SLOPE, subject, &[thickness, bevel], run)
        })
        .collect()
}

static STATED_SLOPE: Rule = geometry(
    "window.square",
    "a square cut does not slope",
    "slope = stated",
);

/// The window over one opening in the mat nearest the art.
pub(crate) fn innermost(
    brief: &Brief<'_>,
    art: &[ArtSizes],
    slope: Worked<Length>,
    index: usize,
    working: &mut Working,
    faults: &mut Vec<Fault>,
) -> Loose {
    let opening = &brief.openings[index];
    let last = brief.mats.len() - 1;
    let mat = &brief.mats[last];
    let subject = |quantity| Subject::nth("opening", index, quantity);
    let at_foot = brief.settings.choice(Key::WindowAt) == "foot" && mat.fillet.is_none();
    let named = subject(if at_foot {
        "foot"
    } else if mat.fillet.is_some() {
        "fillet_sight"
    } else {
        "window"
    });
    let base = match (opening.opening.window, opening.art) {
        (Some(window), _) => both(working, &STATED, named, *window, |axis| {
            [("stated", Given::job(along(*window, axis)))]
        }),
        (None, Some(piece)) if opening.floats => {
            let (art, margin) = (art[piece].largest, opening.margin);
            both(
                working,
                &FLOATED,
                named,
                art.size().grow(margin.value),
                |axis| [("art", art.along(axis).into()), ("margin", margin.into())],
            )
        }
        (None, piece) => {
            let (art, overlap) = (art[piece.unwrap_or_default()].smallest, opening.overlap);
            both(
                working,
                &COVERED,
                named,
                art.size().shrink(overlap.value),
                |axis| [("art", art.along(axis).into()), ("overlap", overlap.into())],
            )
        }
    };
    let base = if at_foot {
        from_foot(mat, base, slope, index, working)
    } else {
        base
    };
    let outline = outline_of(brief, index, base.size(), faults);
    finish(brief, last, vec![index], base, outline, slope, working)
}

fn from_foot(
    mat: &MatBrief<'_>,
    foot: WorkedSize,
    slope: Worked<Length>,
    index: usize,
    working: &mut Working,
) -> WorkedSize {
    let (rule, size) = if mat.mat.bevel == Bevel::Reverse {
        (&FACE_FROM_FOOT_REVERSE, foot.size().shrink(slope.value))
    } else {
        (&FACE_FROM_FOOT, foot.size().grow(slope.value))
    };
    let subject = Subject::nth("opening", index, "window");
    both(working, rule, subject, size, |axis| {
        [("foot", foot.along(axis).into()), ("slope", slope.into())]
    })
}

fn outline_of(brief: &Brief<'_>, index: usize, size: Size, faults: &mut Vec<Fault>) -> Outline {
    let opening = &brief.openings[index];
    Outline::of(&opening.opening, size).unwrap_or_else(|misfit| {
        faults.push(misfit_fault(brief, &opening.name, size, &misfit));
        Outline::Rectangle
    })
}

fn misfit_fault(brief: &Brief<'_>, name: &str, size: Size, misfit: &Misfit) -> Fault {
    let (found, allowed, cure) = match misfit {
        Misfit::Lacks(what) => (
            format!("its {what} is not given"),
            String::new(),
            format!("Write `{what} = …` in its table"),
        ),
        Misfit::NotRound => (
            format!(
                "it is {} wide and {} high",
                brief.say(size.width),
                brief.say(size.height)
            ),
            "a circle is as wide as it is high".to_owned(),
            format!(
                "Make it an oval, or give `window = \"{0} x {0}\"`",
                size.short_side().exact(brief.unit())
            ),
        ),
        Misfit::TooLarge(what, most) => (
            format!("its {what} does not fit the window"),
            format!("it may be {} at most", brief.say(*most)),
            format!("Write {} or less", most.exact(brief.unit())),
        ),
        Misfit::TooFewSides => (
            "it has too few corners".to_owned(),
            "a shape has three or more".to_owned(),
            "Give three corners or more".to_owned(),
        ),
    };
    Fault::refuse("opening.shape", name, found, allowed, cure)
}

/// The window over `below` in the mat of `index`, one reveal further out.
pub(crate) fn above(
    brief: &Brief<'_>,
    index: usize,
    below: &[&Loose],
    span: Size,
    slopes: &[Worked<Length>],
    (window, working): (usize, &mut Working),
) -> Loose {
    let reveal = reveal(brief, index, slopes[index], working);
    let subject = Subject::nth("mat", index, "window").within("window", window);
    let openings: Vec<usize> = below
        .iter()
        .flat_map(|loose| loose.openings.iter().copied())
        .collect();
    let single = below.len() == 1;
    let base = both(
        working,
        &REVEALED,
        subject,
        span.grow(reveal.value),
        |axis| {
            let under = if single {
                below[0].face.along(axis).into()
            } else {
                Given::job(along(span, axis))
            };
            [("below", under), ("reveal", reveal.into())]
        },
    );
    let outline = if single {
        below[0]
            .outline
            .grown_nearest(below[0].face.size(), reveal.value)
    } else {
        Outline::Rectangle
    };
    finish(
        brief,
        index,
        openings,
        base,
        outline,
        slopes[index],
        working,
    )
}

/// The reveal of a mat, from face edge to face edge.
fn reveal(brief: &Brief<'_>, index: usize, slope: Worked<Length>, working: &mut Working) -> Fact {
    let stated = brief.mats[index].reveal;
    if brief.settings.choice(Key::RevealMeasured) == "nominal" {
        return stated;
    }
    let subject = Subject::nth("mat", index, "reveal");
    let inputs = [("seen", stated.into()), ("slope", slope.into())];
    working
        .by(
            &REVEAL_FROM_SEEN,
            subject,
            &inputs,
            stated.value + slope.value,
        )
        .into()
}

/// The colour seen inside a mat's bevel: reveal less slope.
pub(crate) fn reveal_seen(
    brief: &Brief<'_>,
    index: usize,
    slope: Worked<Length>,
    working: &mut Working,
) -> Worked<Length> {
    let stated = brief.mats[index].reveal;
    let reveal = if brief.settings.choice(Key::RevealMeasured) == "nominal" {
        stated.value
    } else {
        stated.value + slope.value
    };
    let inputs = [("reveal", Given::job(reveal)), ("slope", slope.into())];
    working.by(
        &REVEAL_SEEN,
        Subject::nth("mat", index, "reveal_seen"),
        &inputs,
        reveal - slope.value,
    )
}

/// Fits the fillet, if there is one, and finds the foot.
fn finish(
    brief: &Brief<'_>,
    index: usize,
    openings: Vec<usize>,
    base: WorkedSize,
    outline: Outline,
    slope: Worked<Length>,
    working: &mut Working,
) -> Loose {
    let mat = &brief.mats[index];
    let subject = |quantity| Subject::nth("mat", index, quantity).within("window", openings[0]);
    let (face, outline, fillet) = match &mat.fillet {
        None => (base, outline, None),
        Some(fillet) => {
            let face_width = fillet.face.value;
            let face = both(
                working,
                &FILLET_WINDOW,
                subject("window"),
                base.size().grow(face_width),
                |axis| {
                    [
                        ("fillet_sight", base.along(axis).into()),
                        ("fillet_face", fillet.face.into()),
                    ]
                },
            );
            let long = fillet_long(fillet, face, subject("fillet_long"), working);
            let outline = outline.grown_nearest(base.size(), face_width);
            (face, outline, Some(WindowFillet { sight: base, long }))
        }
    };
    let (rule, size) = if mat.mat.bevel == Bevel::Reverse {
        (&FOOT_REVERSE, face.size().grow(slope.value))
    } else {
        (&FOOT, face.size().shrink(slope.value))
    };
    let foot = both(working, rule, subject("foot"), size, |axis| {
        [("face", face.along(axis).into()), ("slope", slope.into())]
    });
    Loose {
        openings,
        face,
        foot,
        outline,
        fillet,
    }
}

fn fillet_long(
    fillet: &FilletBrief,
    window: WorkedSize,
    subject: Subject,
    working: &mut Working,
) -> WorkedSize {
    both(
        working,
        &FILLET_LONG,
        subject,
        window.size().grow(fillet.tuck.value),
        |axis: Axis| {
            [
                ("window", window.along(axis).into()),
                ("tuck", fillet.tuck.into()),
            ]
        },
    )
}
